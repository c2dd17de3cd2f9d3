/** How much each plant gets: what was typed for it alone, else for all, else what it got the last time. */

import type { Loaded, PlantRow } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import type { CareDraft } from "./care.ts";
import { disturbs } from "./care-early.ts";
import { type Typed, typedNumber } from "./typed.ts";

export const MOST_ML = 100_000;

/** By nameKey of the plant: its newest amount for this event. */
export function lastAmounts(loaded: Pick<Loaded, "care" | "events">, event: string): ReadonlyMap<string, number> {
  const wanted = nameKey(event);
  const amounts = new Map<string, number>();
  if (disturbs(event, loaded)) return amounts;
  // Newest first.
  for (const row of loaded.care.rows) {
    if (row.amountMl === null || nameKey(row.event) !== wanted) continue;
    const key = nameKey(row.plant);
    if (!amounts.has(key)) amounts.set(key, row.amountMl);
  }
  return amounts;
}

/** What was typed for one plant alone; null where nothing was, so that the others count. */
export function ownAmount(draft: Pick<CareDraft, "amounts">, plant: string): Typed | null {
  const text = draft.amounts[plant];
  return text === undefined
    ? null
    : typedNumber(text, { what: `Amount for ${plant}`, unit: "mL", min: 0, max: MOST_ML });
}

/** The first amount of one of these plants that cannot be used, as a sentence, or null. */
export function amountProblem(draft: Pick<CareDraft, "amounts">, plants: readonly PlantRow[]): string | null {
  for (const { plant } of plants) {
    const problem = ownAmount(draft, plant)?.problem ?? null;
    if (problem !== null) return problem;
  }
  return null;
}

/** Plant → mL; null where none is typed and none remembered. A disturbance has no usual amount. */
export function amountsFor(
  draft: Pick<CareDraft, "amounts" | "amountMl" | "event">,
  plants: readonly PlantRow[],
  loaded: Pick<Loaded, "care" | "events">,
): ReadonlyMap<string, number | null> {
  const last = lastAmounts(loaded, draft.event);
  const all = typedNumber(draft.amountMl, { what: "Amount", unit: "mL", min: 0, max: MOST_ML });
  const blank = draft.amountMl.trim() === "";
  return new Map(
    plants.map(({ plant }) => {
      const own = ownAmount(draft, plant);
      if (own !== null) return [plant, own.value];
      return [plant, blank ? (last.get(nameKey(plant)) ?? null) : all.value];
    }),
  );
}
