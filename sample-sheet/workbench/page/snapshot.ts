/** The samples as a workbook for the grid: kinds, date formats, bold headings, widths, frozen heading rows. */

import { BooleanNumber, CellValueType, type ICellData, type IWorkbookData, LocaleType } from "@univerjs/core";
import type { SampleCell, SampleTab, SampleWorkbook } from "../samples.ts";
import { serialOfCivil } from "../standin/zone.ts";
import { closeRanges } from "./open-ranges.ts";

const HEADING = "heading";
const DAY = "day";
const ROWS_TO_SPARE = 200;
const LEAST_ROWS = 1000;
const LEAST_COLUMNS = 26;

function cellOf(cell: SampleCell, heading: boolean): ICellData | null {
  if (cell === null) return null;
  const style = heading ? { s: HEADING } : {};
  if ("formula" in cell) return { f: closeRanges(cell.formula), ...style };
  if ("number" in cell) return { v: cell.number, t: CellValueType.NUMBER, ...style };
  if ("text" in cell) return { v: cell.text, t: CellValueType.STRING, ...style };
  const [year = 0, month = 0, day = 0] = cell.day.split("-").map(Number);
  const serial = serialOfCivil(year, month, day);
  if (serial === null) return { v: cell.day, t: CellValueType.STRING, ...style };
  return { v: serial, t: CellValueType.NUMBER, s: DAY };
}

function shownLength(cell: SampleCell): number {
  if (cell === null) return 0;
  if ("formula" in cell) return 18;
  return "number" in cell ? String(cell.number).length : "day" in cell ? cell.day.length : cell.text.length;
}

/** Pixels for the longest of the first rows, within bounds that keep a screen readable. */
function widthOf(tab: SampleTab, column: number): number {
  const lengths = tab.rows.slice(0, 60).map((row) => shownLength(row[column] ?? null));
  return Math.min(220, Math.max(64, 24 + 7 * Math.max(0, ...lengths)));
}

function sheetOf(tab: SampleTab, id: string) {
  const columns = Math.max(0, ...tab.rows.map((row) => row.length));
  const cellData: Record<number, Record<number, ICellData>> = {};
  for (const [r, row] of tab.rows.entries()) {
    const line: Record<number, ICellData> = {};
    for (const [c, cell] of row.entries()) {
      const data = cellOf(cell, r === 0);
      if (data !== null) line[c] = data;
    }
    cellData[r] = line;
  }
  return {
    id,
    name: tab.name,
    rowCount: Math.max(LEAST_ROWS, tab.rows.length + ROWS_TO_SPARE),
    columnCount: Math.max(LEAST_COLUMNS, columns + 4),
    freeze: { startRow: 1, startColumn: 0, ySplit: 1, xSplit: 0 },
    cellData,
    defaultColumnWidth: 120,
    // What spills into the heading row is a heading too.
    rowData: { 0: { s: HEADING } },
    columnData: Object.fromEntries(Array.from({ length: columns }, (_v, c) => [c, { w: widthOf(tab, c) }])),
    showGridlines: BooleanNumber.TRUE,
  };
}

/** `id`: the workbook's own, the same for ever so that kept sheets fit. */
export function snapshotOf(samples: SampleWorkbook, id: string): IWorkbookData {
  const sheets = samples.tabs.map((tab, index) => sheetOf(tab, String(1001 + index)));
  return {
    id,
    name: samples.name,
    appVersion: "",
    locale: LocaleType.EN_US,
    styles: {
      [HEADING]: { bl: BooleanNumber.TRUE },
      [DAY]: { n: { pattern: "yyyy-mm-dd" } },
    },
    sheetOrder: sheets.map((sheet) => sheet.id),
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
  };
}
