/** The care log as the root functions read it: a pass over 100,000 rows that keeps what is wrong for the plant it is about. */

import { nameKey, readCell } from "../core/cell.ts";
import { BadInput, isBadInput } from "../core/errors.ts";
import { readDay, readText, readYesNo } from "../core/reading.ts";
import {
  type Disturbance,
  type EventKind,
  type EventRule,
  eventRule,
  indexDisturbances,
  type LogEntry,
  lastDisturbance,
  type RootIndex,
} from "../core/roots.ts";
import type { Table } from "./record.ts";
import { voidRowsOf } from "./void-rows.ts";

export interface RootLog {
  readonly index: RootIndex;
  /** By nameKey: why the last disturbance of this plant cannot be told. */
  readonly unreadable: ReadonlyMap<string, string>;
  /** Throws BadInput for a plant whose rows cannot be read. */
  last(plant: string, asOfDay: number | null): Disturbance | null;
}

/** The built-in events, overridden by a table Event, Disturbs roots. A row without an event is passed over. */
export function readEvents(table: Table | null): EventRule {
  if (table === null) return eventRule();
  const [eventColumn, disturbsColumn] = [table.column("Event"), table.column("Disturbs roots")];
  const kinds: EventKind[] = [];
  for (let row = 0; row < table.rowCount; row++) {
    const event = readText(table.cell(row, eventColumn), `Event in ${table.where(row)}`);
    if (event === null) continue;
    const what = `Disturbs roots in ${table.where(row)}`;
    const disturbsRoots = readYesNo(table.cell(row, disturbsColumn), what);
    if (disturbsRoots === null) throw new BadInput("blank", `${what} is blank. Write yes or no for "${event}".`);
    kinds.push({ event, disturbsRoots });
  }
  return eventRule(kinds);
}

/**
 * Reads Date, Plant and Event of a log; rows may stand in any order. A disturbing row whose date cannot be read
 * makes the answer for its plant unreadable; a row whose event is an error cell does so too, for nobody can tell
 * what it was. Rows that a later one corrects or takes back (columns Id, Corrects) are not counted. A disturbing row whose plant cannot be read could be about any plant: BadInput.
 */
export function readRootLog(table: Table, rule: EventRule): RootLog {
  const [dayColumn, plantColumn, eventColumn] = [table.column("Date"), table.column("Plant"), table.column("Event")];
  const unreadable = new Map<string, string>();
  const plants = new Map<unknown, string | null>();
  const events = new Map<unknown, string | null>();
  const entries: LogEntry[] = [];

  /** Each spelling is looked at once; null for a blank cell. */
  function textAt(row: number, column: number, known: Map<unknown, string | null>, heading: string): string | null {
    const raw = table.raw(row, column);
    let text = known.get(raw);
    if (text === undefined) {
      text = readText(table.cell(row, column), `${heading} in ${table.where(row)}`);
      known.set(raw, text);
    }
    return text;
  }

  function dayAt(row: number): number {
    const raw = table.raw(row, dayColumn);
    const day = typeof raw === "object" ? table.dayOf(raw) : null;
    if (day !== null) return day;
    const what = `Date in ${table.where(row)}`;
    const read = readDay(readCell(raw, table.dayOf), what);
    if (read === null) throw new BadInput("blank", `${what} is blank. Give the day it was done.`);
    return read;
  }

  const gone = voidRowsOf(table);
  for (let row = 0; row < table.rowCount; row++) {
    if (gone.has(row)) continue;
    let broken: string | null = null;
    let event: string | null = null;
    try {
      event = textAt(row, eventColumn, events, "Event");
      if (event === null || rule.find(event)?.disturbsRoots !== true) continue;
    } catch (error) {
      if (!isBadInput(error)) throw error;
      broken = error.message;
    }
    const plant = textAt(row, plantColumn, plants, "Plant");
    if (plant === null) continue;
    if (broken === null && event !== null) {
      try {
        entries.push({ day: dayAt(row), plant, event });
        continue;
      } catch (error) {
        if (!isBadInput(error)) throw error;
        broken = error.message;
      }
    }
    const key = nameKey(plant);
    if (broken !== null && !unreadable.has(key)) unreadable.set(key, broken);
  }

  const index = indexDisturbances(entries, rule);
  return {
    index,
    unreadable,
    last(plant, asOfDay) {
      const why = unreadable.get(nameKey(plant));
      if (why !== undefined) throw new BadInput("log-unreadable", why);
      return lastDisturbance(index, plant, asOfDay);
    },
  };
}
