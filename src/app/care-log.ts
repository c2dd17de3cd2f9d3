/** The Care log of the panel: when roots were disturbed, from every row, and the newest rows themselves. */

import { nameKey, readCell } from "../core/cell.ts";
import { isBadInput } from "../core/errors.ts";
import { TAKEN_BACK } from "../core/events.ts";
import { readDay } from "../core/reading.ts";
import { type EventKind, eventRule, indexDisturbances, type LogEntry, type RootIndex } from "../core/roots.ts";
import { CARE_LOG } from "../sheet/log-tabs.ts";
import type { OpenTab } from "../sheet/open.ts";
import { readRows } from "../sheet/rows.ts";
import type { CareRow, Loaded } from "./contract.ts";
import { type Loading, openTab } from "./loading.ts";
import { voidPlaces } from "./standing.ts";

/** Two years of a household's log; more would make the answer slow to travel. */
export const CARE_ROWS_SENT = 4000;

export interface CareLog {
  readonly index: RootIndex;
  readonly care: Loaded["care"];
}

export const NO_CARE: CareLog = {
  index: { byPlant: new Map(), unknownEvents: [] },
  care: { rows: [], from: null, all: true },
};

interface Placed extends LogEntry {
  /** Place in the tab's values. */
  readonly at: number;
}

/** Needs Date, Plant and Event; a row without a date that can be read is told and not counted. */
export function readCareLog(loading: Loading, events: readonly EventKind[]): CareLog {
  const needed = ["Date", "Plant", "Event"];
  const open = openTab(loading, CARE_LOG, needed);
  if (!open || needed.some((heading) => !open.columns.at.has(heading))) return NO_CARE;
  const entries = standingEntries(loading, open);
  const index = indexDisturbances(entries, eventRule(events));
  if (index.unknownEvents.length > 0) {
    const names = index.unknownEvents.slice(0, 8).join(", ");
    loading.say.add(
      "Care log",
      `“${open.columns.tabName}” has events that Events does not list: ${names}. They count as leaving the roots alone; add them to Events if they do not.`,
    );
  }
  return { index, care: newestRows(loading, open, entries) };
}

/** One pass; only Date, Plant and Event are looked at, since the log may have 100,000 rows. */
function standingEntries(loading: Loading, { values, columns }: OpenTab): Placed[] {
  const at = (heading: string) => (columns.at.get(heading) ?? 0) - 1;
  const [dateAt, plantAt, eventAt] = [at("Date"), at("Plant"), at("Event")];
  const { dayOf } = loading.book.workbook;
  const gone = voidPlaces(values, columns);
  const takenBack = nameKey(TAKEN_BACK);
  const entries: Placed[] = [];
  for (let index = 1; index < values.length; index++) {
    const row = values[index] ?? [];
    const plant = row[plantAt];
    const event = row[eventAt];
    if (plant === "" || event === "" || plant === undefined || event === undefined || gone.has(index)) continue;
    const raw = row[dateAt];
    let day = dayOf(raw);
    if (day === null) {
      try {
        day = readDay(readCell(raw, dayOf), `Date in row ${index + 1} of ${columns.tabName}`);
      } catch (error) {
        if (!isBadInput(error)) throw error;
        loading.say.add("Care log", `${error.message} Until then that row is not counted.`);
        continue;
      }
    }
    if (day === null) {
      loading.say.add(
        "Care log",
        `There is no date in row ${index + 1} of ${columns.tabName}, so that row is not counted.`,
      );
    } else if (nameKey(String(event)) !== takenBack) {
      entries.push({ day, plant: String(plant), event: String(event), at: index });
    }
  }
  return entries;
}

/** Newest first; of one day, the one further down first. A cell that cannot be read is told and counts as blank. */
function newestRows(loading: Loading, { values, columns }: OpenTab, entries: readonly Placed[]): Loaded["care"] {
  const newest = [...entries].sort((a, b) => b.day - a.day || b.at - a.at).slice(0, CARE_ROWS_SENT);
  const read = readRows(
    values,
    CARE_LOG,
    columns,
    loading.book.workbook.dayOf,
    newest.map(({ at }) => at),
  );
  for (const { problems } of read) for (const { sentence } of problems) loading.say.add("Care log", sentence);
  const rows = read.map(({ fields }): CareRow => {
    const text = (heading: string) => String(fields[heading] ?? "");
    const number = (heading: string) => {
      const value = fields[heading];
      return typeof value === "number" ? value : null;
    };
    return {
      id: text("Id"),
      day: text("Date"),
      plant: text("Plant"),
      event: text("Event"),
      amountMl: number("Amount mL"),
      solution: text("Solution"),
      ecMsCm: number("EC"),
      pH: number("pH"),
      who: text("Who"),
      reason: text("Reason"),
      note: text("Note"),
    };
  });
  return { rows, from: rows[rows.length - 1]?.day ?? null, all: newest.length === entries.length };
}
