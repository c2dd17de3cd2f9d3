/** What was poured, from the name in the log: its EC and the sodium and chloride of its water. */

import type { BatchRow, Loaded } from "../src/app/contract.ts";
import { dayFromIso } from "../src/core/calendar.ts";
import { nameKey } from "../src/core/cell.ts";

/** Levels by the name of what was poured: a batch by its Id (measured, else predicted EC) or a water. */
export interface Poured {
  readonly ecMsCm: number | null;
  /** mg/L from the water in it; null where its report does not say. */
  readonly Na: number | null;
  readonly Cl: number | null;
}

export const UNKNOWN: Poured = { ecMsCm: null, Na: null, Cl: null };

function numberIn(value: unknown): number | null {
  return typeof value === "number" && Number.isFinite(value) ? value : null;
}

/** Tells what was poured from the name in the log: a batch by its Id, a water, or a target, then the newest batch for it by that day. */
export type Levels = (name: string, day: number) => Poured;

export function pouredBy({ batches, waters }: Pick<Loaded, "batches" | "waters">): Levels {
  const waterOf = new Map(waters.map(({ fields }) => [nameKey(String(fields.Water ?? "")), fields]));
  const mixed = batches.filter(({ state }) => state === "mixed");
  const byId = new Map<string, BatchRow>(mixed.map((batch) => [nameKey(batch.id), batch]));
  const ions = (water: string): Pick<Poured, "Na" | "Cl"> => {
    const fields = waterOf.get(nameKey(water)) ?? {};
    return { Na: numberIn(fields.Na), Cl: numberIn(fields.Cl) };
  };
  const newestFor = (target: string, day: number): BatchRow | undefined =>
    mixed
      .filter(
        (batch) => nameKey(batch.target) === target && batch.day !== null && (dayFromIso(batch.day) ?? day + 1) <= day,
      )
      .sort((one, other) => ((one.day as string) < (other.day as string) ? 1 : -1))[0];
  return (name, day) => {
    const key = nameKey(name);
    if (key === "") return UNKNOWN;
    const water = waterOf.get(key);
    const batch = byId.get(key) ?? (water === undefined ? newestFor(key, day) : undefined);
    if (batch !== undefined) {
      return { ecMsCm: batch.measuredEcMsCm ?? batch.predictedEcMsCm, ...ions(batch.water) };
    }
    return water === undefined ? UNKNOWN : { ecMsCm: numberIn(water.EC), ...ions(key) };
  };
}
