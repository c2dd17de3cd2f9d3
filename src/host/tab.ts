/** One tab of the workbook port over a Sheet: values out, literal values in. */

import { columnLetters } from "../sheet/find.ts";
import type { Block, PlainCell, TabPort } from "../sheet/port.ts";

type Sheet = GoogleAppsScript.Spreadsheet.Sheet;

/**
 * What setValues has to be given so that the cell holds exactly `cell`. setValues reads a text as if it had
 * been typed; a leading apostrophe, which is not part of the stored text, stops that.
 */
function asWritten(cell: PlainCell, dateOf: (day: number) => Date): string | number | boolean | Date {
  if (cell === null || cell === "") return "";
  if (typeof cell === "string") return `'${cell}`;
  if (typeof cell === "number") {
    if (!Number.isFinite(cell)) throw new Error(`A cell cannot hold the number ${cell}.`);
    return cell;
  }
  return typeof cell === "boolean" ? cell : dateOf(cell.day);
}

/**
 * Arguments parted by semicolons, which every locale takes; where a comma is the decimal sign, one between arguments
 * makes the formula an error. Texts and tab names in quotes stay as they are.
 */
function withSemicolons(formula: string): string {
  const parts = formula.split(/("(?:[^"]|"")*"|'(?:[^']|'')*')/);
  return parts.map((part, index) => (index % 2 === 1 ? part : part.split(",").join(";"))).join("");
}

/** Where the last row and the last column with content are; a blank cell is "". */
function extent(values: readonly (readonly unknown[])[]): { rows: number; columns: number } {
  let rows = 0;
  let columns = 0;
  values.forEach((row, index) => {
    for (let column = row.length; column > 0; column--) {
      const value = row[column - 1];
      if (value === "" || value === null || value === undefined) continue;
      rows = index + 1;
      if (column > columns) columns = column;
      break;
    }
  });
  return { rows, columns };
}

export function blockOf(range: GoogleAppsScript.Spreadsheet.Range): Block {
  return {
    row: range.getRow(),
    column: range.getColumn(),
    rows: range.getNumRows(),
    columns: range.getNumColumns(),
  };
}

export interface TabWays {
  /** The first instant of a day in the spreadsheet's time zone. */
  readonly dateOf: (day: number) => Date;
  /** Called before anything is changed. */
  readonly begin: () => void;
}

export function tabOf(sheet: Sheet, { dateOf, begin }: TabWays): TabPort {
  /** The part of the grid known to exist, so that a block within it need not be measured against the grid. */
  const known = { rows: 0, columns: 0 };
  /** The size of the grid where it had to be measured. */
  const size: { rows: number | null; columns: number | null } = { rows: null, columns: null };

  function rangeOf(block: Block): GoogleAppsScript.Spreadsheet.Range {
    return sheet.getRange(block.row, block.column, block.rows, block.columns);
  }

  /** The last row or column of the grid that a block up to `wanted` can have. */
  function available(side: "rows" | "columns", wanted: number): number {
    if (wanted <= known[side]) return wanted;
    size[side] ??= side === "rows" ? sheet.getMaxRows() : sheet.getMaxColumns();
    const there = size[side] ?? 0;
    known[side] = Math.max(known[side], Math.min(wanted, there));
    return Math.min(wanted, there);
  }

  /** The part of a block that lies on the grid, or null. */
  function onGrid(block: Block): Block | null {
    const rows = available("rows", block.row + block.rows - 1) - block.row + 1;
    const columns = available("columns", block.column + block.columns - 1) - block.column + 1;
    return rows < 1 || columns < 1 ? null : { ...block, rows, columns };
  }

  function growTo(rows: number, columns: number): void {
    const lastRow = available("rows", rows);
    if (rows > lastRow) sheet.insertRowsAfter(lastRow, rows - lastRow);
    const lastColumn = available("columns", columns);
    if (columns > lastColumn) sheet.insertColumnsAfter(lastColumn, columns - lastColumn);
    known.rows = Math.max(known.rows, rows);
    known.columns = Math.max(known.columns, columns);
    if (size.rows !== null) size.rows = Math.max(size.rows, rows);
    if (size.columns !== null) size.columns = Math.max(size.columns, columns);
  }

  /** Notes how much of the grid is there, and drops blank rows at the end and blank columns on the right. */
  function seen(values: unknown[][]): unknown[][] {
    known.rows = Math.max(known.rows, values.length);
    known.columns = Math.max(known.columns, values[0]?.length ?? 0);
    const { rows, columns } = extent(values);
    if (rows === values.length && columns === values[0]?.length) return values;
    return values.slice(0, rows).map((row) => row.slice(0, columns));
  }

  function readColumns(columns: number): unknown[][] {
    // Whole columns need no measuring, and show how many rows the grid has.
    const values = sheet.getRange(`A:${columnLetters(columns)}`).getValues();
    size.rows = values.length;
    return seen(values);
  }

  return {
    id: sheet.getSheetId(),
    name: sheet.getName(),
    readAll() {
      // A range measured first would lose its last row to a row that somebody inserts before it is read.
      size.columns = sheet.getMaxColumns();
      return readColumns(size.columns);
    },
    readColumns,
    readBlock(block) {
      const there = onGrid(block);
      return there === null ? [] : rangeOf(there).getValues();
    },
    readFormulas(block) {
      const there = onGrid(block);
      const formulas = there === null ? [] : rangeOf(there).getFormulas();
      return Array.from({ length: block.rows }, (_, row) =>
        Array.from({ length: block.columns }, (_, column) => formulas[row]?.[column] ?? ""),
      );
    },
    mergedIn(block) {
      const there = onGrid(block);
      return there === null ? [] : rangeOf(there).getMergedRanges().map(blockOf);
    },
    write(row, column, values) {
      const columns = values[0]?.length ?? 0;
      if (values.length === 0 || columns === 0) return;
      const written = values.map((cells) => cells.map((cell) => asWritten(cell, dateOf)));
      begin();
      growTo(row + values.length - 1, column + columns - 1);
      rangeOf({ row, column, rows: values.length, columns }).setValues(written);
    },
    removeRows(row, count) {
      begin();
      // The host keeps at least one row below a frozen heading.
      const rows = sheet.getMaxRows();
      if (count >= rows - 1) sheet.insertRowsAfter(rows, 1);
      sheet.deleteRows(row, count);
      known.rows = 0;
      size.rows = null;
    },
    writeFormula(row, column, formula) {
      begin();
      growTo(row, column);
      rangeOf({ row, column, rows: 1, columns: 1 }).setFormula(withSemicolons(formula));
    },
  };
}
