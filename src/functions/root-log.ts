/** The care log as the root functions read it: a pass over 100,000 rows that keeps what is wrong for the plant it is about. */

import { nameKey } from "../core/cell.ts";
import { BadInput, isBadInput } from "../core/errors.ts";
import { readText, readYesNo } from "../core/reading.ts";
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
import { logCells } from "./log-cells.ts";
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
  const cells = logCells(table);
  const unreadable = new Map<string, string>();
  const entries: LogEntry[] = [];

  const gone = voidRowsOf(table);
  for (let row = 0; row < table.rowCount; row++) {
    if (gone.has(row)) continue;
    let broken = "";
    let event: string | null = null;
    try {
      event = cells.text(row, "Event");
      if (event === null || rule.find(event)?.disturbsRoots !== true) continue;
    } catch (error) {
      if (!isBadInput(error)) throw error;
      broken = error.message;
    }
    const plant = cells.text(row, "Plant");
    if (plant === null) continue;
    if (event !== null) {
      try {
        entries.push({ day: cells.day(row), plant, event });
        continue;
      } catch (error) {
        if (!isBadInput(error)) throw error;
        broken = error.message;
      }
    }
    const key = nameKey(plant);
    if (!unreadable.has(key)) unreadable.set(key, broken);
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
