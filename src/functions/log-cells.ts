/** Cells of a log of 100,000 rows: each spelling of a text looked at once, days read straight from the host's dates. */

import { readCell } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { type NumberWords, readDay, readNumber, readText } from "../core/reading.ts";
import type { Table } from "./record.ts";

export interface LogCells {
  /** Null for a blank cell; throws BadInput for one that holds no text, naming heading and row. */
  text(row: number, heading: string): string | null;
  /** The cell under Date; throws BadInput when it is blank or no day. */
  day(row: number): number;
  /** Null for a blank cell or a column that is not there; throws BadInput for what is no number within the bounds. */
  number(row: number, heading: string, words: Omit<NumberWords, "what">): number | null;
}

export function logCells(table: Table): LogCells {
  const known = new Map<string, Map<unknown, string | null>>();
  const dayColumn = table.column("Date");
  const what = (row: number, heading: string) => `${heading} in ${table.where(row)}`;
  return {
    text(row, heading) {
      let texts = known.get(heading);
      if (texts === undefined) {
        texts = new Map();
        known.set(heading, texts);
      }
      const column = table.column(heading);
      const raw = table.raw(row, column);
      let text = texts.get(raw);
      if (text === undefined) {
        text = readText(table.cell(row, column), what(row, heading));
        texts.set(raw, text);
      }
      return text;
    },
    day(row) {
      const raw = table.raw(row, dayColumn);
      const day = typeof raw === "object" ? table.dayOf(raw) : null;
      if (day !== null) return day;
      const read = readDay(readCell(raw, table.dayOf), what(row, "Date"));
      if (read === null) throw new BadInput("blank", `${what(row, "Date")} is blank. Give the day it was done.`);
      return read;
    },
    number(row, heading, words) {
      return readNumber(table.cell(row, table.column(heading)), { ...words, what: what(row, heading) });
    },
  };
}
