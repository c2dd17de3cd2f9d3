/** The care log as the reservoir functions read it: a pass over 100,000 rows that keeps what is wrong for the plant it is about. */

import { nameKey } from "../core/cell.ts";
import type { WatchedRow } from "../core/due.ts";
import { BadInput, isBadInput } from "../core/errors.ts";
import type { EventRule } from "../core/events.ts";
import { fillKind } from "../core/fills.ts";
import { logCells } from "./log-cells.ts";
import type { Table } from "./record.ts";
import { voidRowsOf } from "./void-rows.ts";

/** What one row may hold at most; more than a bathtub is a slip of the pen. */
const MOST_ML = 1_000_000;

export interface PotLog {
  readonly rows: readonly WatchedRow[];
  /** By nameKey: why nothing can be told of this plant's reservoir. */
  readonly unreadable: ReadonlyMap<string, string>;
}

/**
 * Reads Date, Plant, Event, Amount mL and, where they are there, Who and EC; rows may stand in any order. Rows that a
 * later one corrects or takes back (columns Id, Corrects) are left out. With `only` "fills" just the rows that fill a
 * reservoir are read, with "all" every known event. A row that cannot be read makes the answer for its plant
 * unreadable; one whose plant cannot be read could be about any plant: BadInput.
 */
export function readPotLog(table: Table, rule: EventRule, only: "fills" | "all"): PotLog {
  const cells = logCells(table);
  const amountColumn = table.column("Amount mL");
  const wanted = new Map<string, boolean>();
  const isWanted = (event: string): boolean => {
    let answer = wanted.get(event);
    if (answer === undefined) {
      answer = only === "all" ? rule.find(event) !== null : fillKind(event, rule) !== null;
      wanted.set(event, answer);
    }
    return answer;
  };
  const amount = (row: number): number | null => {
    const raw = table.raw(row, amountColumn);
    if (typeof raw === "number" && raw >= 0 && raw <= MOST_ML) return raw;
    return cells.number(row, "Amount mL", { unit: "mL", min: 0, max: MOST_ML });
  };
  const gone = voidRowsOf(table);
  const rows: WatchedRow[] = [];
  const unreadable = new Map<string, string>();
  for (let row = 0; row < table.rowCount; row++) {
    if (gone.has(row)) continue;
    let broken = "";
    let event: string | null = null;
    try {
      event = cells.text(row, "Event");
      if (event === null || !isWanted(event)) continue;
    } catch (error) {
      if (!isBadInput(error)) throw error;
      broken = error.message;
    }
    const plant = cells.text(row, "Plant");
    if (plant === null) continue;
    if (event !== null) {
      try {
        rows.push({
          day: cells.day(row),
          plant,
          event,
          amountMl: amount(row),
          who: cells.text(row, "Who") ?? "",
          ecMsCm: only === "fills" ? null : cells.number(row, "EC", { unit: "mS/cm", min: 0 }),
        });
        continue;
      } catch (error) {
        if (!isBadInput(error)) throw error;
        broken = error.message;
      }
    }
    const key = nameKey(plant);
    if (!unreadable.has(key)) unreadable.set(key, broken);
  }
  return { rows, unreadable };
}

/** Throws BadInput for a plant whose rows cannot be read. */
export function needReadable({ unreadable }: PotLog, plant: string): void {
  const why = unreadable.get(nameKey(plant));
  if (why !== undefined) throw new BadInput("log-unreadable", why);
}
