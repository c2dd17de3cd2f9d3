/** Going through the plants of a place one by one, in the order of the plant list: one press a plant. */

import type { Loaded, PlantRow } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { type CareDraft, choosePlants, shownPlants } from "./care.ts";
import type { NewId } from "./ids.ts";

export interface Round {
  /** In the order of the plant list. */
  readonly plants: readonly PlantRow[];
  /** Place in `plants`, from 0. */
  readonly at: number;
  /** The plant that is shown; null once all were gone through. */
  readonly plant: PlantRow | null;
}

export function roundOf(draft: CareDraft, plants: readonly PlantRow[]): Round {
  const shown = shownPlants(draft, plants);
  if (draft.oneByOne === "done") return { plants: shown, at: shown.length, plant: null };
  // A plant that left the list, or the place, meanwhile: begin at the first.
  const at = Math.max(
    0,
    shown.findIndex(({ plant }) => plant === draft.at),
  );
  return { plants: shown, at, plant: shown[at] ?? null };
}

function goTo(draft: CareDraft, { plants }: Round, at: number): CareDraft {
  const next = plants[at];
  return { ...draft, at: next?.plant ?? "", oneByOne: next === undefined ? "done" : "yes" };
}

/** The draft after the shown plant was done, or passed over: then it is not chosen. */
export function stepRound(draft: CareDraft, plants: readonly PlantRow[], did: boolean, newId: NewId): CareDraft {
  const round = roundOf(draft, plants);
  if (round.plant === null) return draft;
  return goTo(choosePlants(draft, [round.plant.plant], did, newId), round, round.at + 1);
}

/** Back to the plant before; from the first one the draft stays as it is. */
export function backRound(draft: CareDraft, plants: readonly PlantRow[]): CareDraft {
  const round = roundOf(draft, plants);
  return round.at === 0 ? draft : goTo(draft, round, round.at - 1);
}

/** The shown plants that had this event on the last day before today; null where that were fewer than two. */
export function lastRound(
  draft: CareDraft,
  shown: readonly PlantRow[],
  { care, today }: Pick<Loaded, "care" | "today">,
): { readonly day: string; readonly plants: readonly string[] } | null {
  const event = nameKey(draft.event);
  const shownNames = new Map(shown.map(({ plant }) => [nameKey(plant), plant]));
  const rows = care.rows.filter((row) => nameKey(row.event) === event && row.day < today);
  const last = rows.find((row) => shownNames.has(nameKey(row.plant)));
  if (last === undefined) return null;
  const had = new Set(rows.filter(({ day }) => day === last.day).map(({ plant }) => nameKey(plant)));
  const plants = [...shownNames].flatMap(([key, plant]) => (had.has(key) ? [plant] : []));
  return plants.length < 2 ? null : { day: last.day, plants };
}
