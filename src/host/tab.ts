/** One tab of the workbook port over a Sheet: values out, literal values in. */

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

/** `dateOf` gives the first instant of a day in the spreadsheet's time zone. */
export function tabOf(sheet: Sheet, dateOf: (day: number) => Date): TabPort {
  /** The part of the grid known to exist, so that a write within it need not measure. */
  let knownRows = 0;
  let knownColumns = 0;

  function rangeOf(block: Block): GoogleAppsScript.Spreadsheet.Range {
    return sheet.getRange(block.row, block.column, block.rows, block.columns);
  }

  function growTo(rows: number, columns: number): void {
    if (rows > knownRows) {
      const there = sheet.getMaxRows();
      if (rows > there) sheet.insertRowsAfter(there, rows - there);
      knownRows = Math.max(rows, there);
    }
    if (columns > knownColumns) {
      const there = sheet.getMaxColumns();
      if (columns > there) sheet.insertColumnsAfter(there, columns - there);
      knownColumns = Math.max(columns, there);
    }
  }

  return {
    id: sheet.getSheetId(),
    name: sheet.getName(),
    readAll() {
      const values = sheet.getDataRange().getValues() as unknown[][];
      knownRows = Math.max(knownRows, values.length);
      knownColumns = Math.max(knownColumns, values[0]?.length ?? 0);
      const { rows, columns } = extent(values);
      if (rows === values.length && columns === values[0]?.length) return values;
      return values.slice(0, rows).map((row) => row.slice(0, columns));
    },
    readFormulas: (block) => rangeOf(block).getFormulas(),
    mergedIn: (block) => rangeOf(block).getMergedRanges().map(blockOf),
    write(row, column, values) {
      const columns = values[0]?.length ?? 0;
      if (values.length === 0 || columns === 0) return;
      const written = values.map((cells) => cells.map((cell) => asWritten(cell, dateOf)));
      growTo(row + values.length - 1, column + columns - 1);
      rangeOf({ row, column, rows: values.length, columns }).setValues(written);
    },
  };
}
