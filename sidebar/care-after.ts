/** "Log care" once rows are in the log: what stays typed for the next plants, and the loaded sheet with those rows. */

import type { CareEntry, CareRow, Loaded, PlantRow } from "../src/app/contract.ts";
import { dayFromIso } from "../src/core/calendar.ts";
import { nameKey } from "../src/core/cell.ts";
import type { CareDraft } from "./care.ts";

/**
 * The draft once its rows are in the log: their plants are no longer chosen. What belongs to one act is cleared,
 * unless it was changed while the request was under way, or `keep` is set since the log holds something else.
 * Event, solution and date stay, for the next plants of the same round.
 */
export function careDone(
  draft: CareDraft,
  sent: CareDraft,
  { ids, keep }: { ids: ReadonlySet<string>; keep: boolean },
): CareDraft {
  const chosen = Object.fromEntries(Object.entries(draft.chosen).filter(([, id]) => !ids.has(id)));
  const amounts = Object.fromEntries(
    Object.entries(draft.amounts).filter(
      ([plant, text]) => chosen[plant] !== undefined || text !== sent.amounts[plant],
    ),
  );
  const cleared = (key: "amountMl" | "ec" | "pH" | "why" | "reason" | "note"): string =>
    draft[key] === sent[key] && !keep ? "" : draft[key];
  return {
    ...draft,
    chosen,
    amounts,
    amountMl: cleared("amountMl"),
    ec: cleared("ec"),
    pH: cleared("pH"),
    why: cleared("why"),
    reason: cleared("reason"),
    note: cleared("note"),
    corrects: "",
    oneByOne: draft.oneByOne === "done" ? "" : draft.oneByOne,
  };
}

/** The loaded plants once `entries` are in the log: rest is counted anew where roots were disturbed. */
export function plantsAfter(loaded: Loaded, entries: readonly CareEntry[]): readonly PlantRow[] {
  const disturbs = new Set(
    loaded.events.filter(({ disturbsRoots }) => disturbsRoots).map(({ event }) => nameKey(event)),
  );
  const today = dayFromIso(loaded.today);
  const byPlant = new Map(
    entries.filter(({ event }) => disturbs.has(nameKey(event))).map((entry) => [nameKey(entry.plant), entry]),
  );
  return loaded.plants.map((row) => {
    const entry = byPlant.get(nameKey(row.plant));
    const day = entry === undefined ? null : dayFromIso(entry.day);
    if (entry === undefined || day === null || today === null || day > today) return row;
    const restDays = today - day;
    return row.restDays !== null && row.restDays < restDays ? row : { ...row, restDays, lastEvent: entry.event };
  });
}

/** The loaded care rows with those just logged before the others of their day. */
function careAfter(loaded: Loaded, entries: readonly CareEntry[], who: string): Loaded["care"] {
  const known = new Set(loaded.care.rows.map(({ id }) => id));
  const fresh = entries
    .filter(({ id }) => !known.has(id))
    .map(({ corrects: _, ...entry }): CareRow => ({ ...entry, who }))
    .reverse();
  const rows = [...fresh, ...loaded.care.rows].sort((a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : 0));
  return { ...loaded.care, rows, from: rows[rows.length - 1]?.day ?? null };
}

/** The loaded sheet once `entries` are in the log under this name. */
export function loadedAfter(loaded: Loaded, entries: readonly CareEntry[], who: string): Loaded {
  return { ...loaded, plants: [...plantsAfter(loaded, entries)], care: careAfter(loaded, entries, who) };
}
