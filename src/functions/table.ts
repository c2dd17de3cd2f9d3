/** A range with a heading row: columns found by heading, in any order, unknown ones left alone. */

import type { Cell, DayReader } from "../core/cell.ts";
import { headingKey, readCell } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { readNumber } from "../core/reading.ts";
import type { NumbersArgument, Table } from "./record.ts";

export type Rows = readonly (readonly unknown[])[];

/** Whether a raw value is a blank cell. */
export function isBlankCell(raw: unknown): boolean {
  return raw === "" || raw === null || raw === undefined || (typeof raw === "string" && raw.trim() === "");
}

/** The rows of a range without the blank rows at its end; open ranges come with every row of the grid. */
export function withoutBlankEnd(rows: Rows): Rows {
  let count = rows.length;
  while (count > 0 && (rows[count - 1] as readonly unknown[]).every(isBlankCell)) count -= 1;
  return count === rows.length ? rows : rows.slice(0, count);
}

/** A raw argument as rows of cells; null when it is one value and no range. */
export function rowsOf(raw: unknown): Rows | null {
  if (!Array.isArray(raw)) return null;
  return raw.map((row: unknown): readonly unknown[] => (Array.isArray(row) ? row : [row]));
}

function quoted(headings: readonly string[]): string {
  return headings.map((heading) => `"${heading}"`).join(", ");
}

/**
 * Reads numbers in one column or one row, in their order, without the blank cells. Throws BadInput for a wider range
 * and for a cell that is no number, naming where it stands in the range.
 */
export function readNumbers(raw: unknown, { name, min, max }: NumbersArgument, dayOf: DayReader): number[] {
  const rows = withoutBlankEnd(rowsOf(raw) ?? [[raw]]);
  const width = rows.reduce((most, row) => Math.max(most, withoutBlankEnd(row.map((cell) => [cell])).length), 0);
  if (rows.length > 1 && width > 1) {
    throw new BadInput(
      "not-one-column",
      `${name} is a range of ${rows.length} rows and ${width} columns. Give one column or one row.`,
    );
  }
  const cells = rows.length > 1 ? rows.map((row) => row[0]) : (rows[0] ?? []);
  const along = rows.length > 1 ? "row" : "column";
  return cells.flatMap((cell, at) => {
    const what = cells.length === 1 ? name : `${name}, in ${along} ${at + 1},`;
    const number = readNumber(readCell(cell, dayOf), { what, min, max });
    return number === null ? [] : [number];
  });
}

/**
 * Reads a table argument. Throws BadInput when it is no range, when a column of `needed` is missing, or
 * when one of them stands there twice.
 */
export function readTable(raw: unknown, name: string, needed: readonly string[], dayOf: DayReader): Table {
  const all = rowsOf(raw);
  if (all === null) {
    throw new BadInput(
      "not-a-table",
      `${name} is one value; give a range with a heading row${needed.length > 0 ? ` (${needed.join(", ")})` : ""}.`,
    );
  }
  const [headingRow = [], ...rows] = withoutBlankEnd(all);
  const headings = headingRow.map((cell) => (typeof cell === "string" ? cell.trim() : ""));
  const keys = headings.map(headingKey);

  const known = new Map<string, number>();
  function column(heading: string): number {
    let at = known.get(heading);
    if (at === undefined) {
      const key = headingKey(heading);
      at = keys.indexOf(key);
      if (keys.indexOf(key, at + 1) !== -1) {
        throw new BadInput("heading-twice", `${name} has two columns headed "${heading}"; rename one of them.`);
      }
      known.set(heading, at);
    }
    return at;
  }

  const missing = needed.filter((heading) => column(heading) === -1);
  if (missing.length > 0) {
    const found = headings.filter((heading) => heading !== "").slice(0, 12);
    throw new BadInput(
      "column-missing",
      `${name} has no column headed ${quoted(missing)}; ` +
        (found.length > 0 ? `its first row reads ${quoted(found)}.` : "its first row must hold the headings."),
    );
  }
  const cellAt = (row: number, at: number): unknown => rows[row]?.[at];
  return {
    name,
    rowCount: rows.length,
    column,
    raw: cellAt,
    cell: (row, at): Cell => readCell(cellAt(row, at), dayOf),
    isBlank: (row) => (rows[row] ?? []).every(isBlankCell),
    where: (row) => `row ${row + 2} of ${name}`,
    dayOf,
  };
}

/** Throws BadInput for a table without any of these columns: nothing in it could be read. */
export function needOneColumn(table: Table, headings: readonly string[]): void {
  if (headings.some((heading) => table.column(heading) !== -1)) return;
  throw new BadInput("column-missing", `${table.name} has none of the columns ${headings.join(", ")}.`);
}

/** The one row of a table that stands for one thing (a water, a target); BadInput when there is none or more. */
export function onlyRow(table: Table): number {
  const filled: number[] = [];
  for (let row = 0; row < table.rowCount; row++) if (!table.isBlank(row)) filled.push(row);
  const [only] = filled;
  if (only === undefined || filled.length > 1) {
    throw new BadInput(
      "not-one-row",
      `${table.name} holds ${filled.length} rows below its heading row; give the heading row and just one row.`,
    );
  }
  return only;
}
