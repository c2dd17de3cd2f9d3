/** The tab before a write, the tab now, and what a repair makes of it. */

import type { Log, SheetRecord } from "../../src/sheet/append.ts";
import type { Mark, PlainCell } from "../../src/sheet/port.ts";
import { repairOf } from "../../src/sheet/repair.ts";
import type { Landing } from "../../src/sheet/settle.ts";
import { isBlank } from "../../src/sheet/stored.ts";

export type Row = readonly unknown[];
export const HEAD: Row = ["Id", "Plant", "Note", "Mine"];
export const A: Row = ["a-1", "Fern", "one", "x"];
export const B: Row = ["b-1", "Ivy", "two", "y"];
export const C: Row = ["c-1", "Moss", "three", "z"];
/** Typed by hand, without an Id. */
export const TYPED: Row = ["", "Hoya", "by hand", ""];
export const BLANK: Row = ["", "", "", ""];
export const PALM: SheetRecord = { Id: "new-1", Plant: "Palm", Note: "new" };
export const LIME: SheetRecord = { Id: "new-2", Plant: "Lime", Note: "newer" };
export const OURS = ["Id", "Plant", "Note"];

export interface Sheet {
  readonly rows: readonly Row[];
  /** Of row 1; HEAD when absent. */
  readonly head?: Row;
  readonly marks?: readonly Mark[];
}

function logOf({ rows, head = HEAD, marks = [] }: Sheet): Log {
  const at = new Map(
    OURS.flatMap((heading) => (head.includes(heading) ? [[heading, head.indexOf(heading) + 1]] : [])) as [
      string,
      number,
    ][],
  );
  return {
    book: { workbook: { dayOf: (raw: unknown) => (raw instanceof Date ? raw.getTime() : null) }, tabs: [], marks },
    spec: { name: "Care log", key: "Id", columns: OURS.map((heading) => ({ heading })) },
    tab: { id: 1, name: "Care log" },
    values: [head, ...rows],
    columns: { tabName: "Care log", at, doubts: new Map() },
  } as unknown as Log;
}

export interface Case {
  readonly before: Sheet;
  readonly now: Sheet;
  readonly landing: Landing;
  readonly put?: readonly PlainCell[];
  readonly restored?: readonly number[];
}

/** The rows as the repair leaves them, and what is to be written again. */
export function mended({ before, now, landing, put = [], restored = [] }: Case) {
  const back = new Set(restored);
  const { cells, again, refused } = repairOf(logOf(before), landing, { now: logOf(now), put, restored: back });
  const width = Math.max(...[now.head ?? HEAD, ...now.rows].map((row) => row.length));
  const rows = [now.head ?? HEAD, ...now.rows].map((row) =>
    Array.from({ length: width }, (_, at): unknown => row[at] ?? ""),
  );
  for (const { row, column, value } of cells) {
    const line = rows[row - 1];
    if (!line || column < 1 || column > width) throw new Error(`There is no cell ${row},${column}.`);
    line[column - 1] = isBlank(value) ? "" : value;
  }
  return { rows: rows.slice(1), again: again.map(({ Id }) => Id), refused, restored: [...back] };
}

/** A new row below the last of `before`. */
export const appended = (below: readonly Row[], ...records: SheetRecord[]): Landing => ({
  records,
  rows: records.map((_, at) => below.length + 2 + at),
  headings: OURS,
  fresh: true,
});
/** The note of the row b-1 in row 3. */
export const FILLED: Landing = {
  records: [{ Id: "b-1", Note: "filled" }],
  rows: [3],
  headings: ["Note"],
  fresh: false,
};

export const fine = { again: [], refused: false, restored: [] };

/** The cells a repair would write. */
export const toMend = ({ before, now, landing, put = [], restored = [] }: Case) =>
  repairOf(logOf(before), landing, { now: logOf(now), put, restored: new Set(restored) }).cells;
