/** Cells of Univer as the stand-in sees them, spilled ones and number formats included, and back. */

import { CellValueType, type ICellData, type Nullable, type Workbook, type Worksheet } from "@univerjs/core";
import type { FormulaDataModel } from "@univerjs/preset-sheets-core";
import type { CellChange, CellValue, GridCell } from "../standin/grid.ts";
import { closeRanges, openRanges } from "./open-ranges.ts";

const ERRORS = new Set([
  "#DIV/0!",
  "#NAME?",
  "#VALUE!",
  "#NUM!",
  "#N/A",
  "#CYCLE!",
  "#REF!",
  "#SPILL!",
  "#CALC!",
  "#ERROR!",
  "#NULL!",
]);
/** The host's word for a result that has no room. */
const HOST_ERRORS: Readonly<Record<string, string>> = { "#SPILL!": "#REF!", "#CYCLE!": "#REF!", "#CALC!": "#ERROR!" };

export function cellValueOf(cell: Nullable<ICellData>): CellValue {
  if (!cell) return null;
  const rich = cell.p?.body?.dataStream;
  if (rich !== undefined) return rich.replace(/\r?\n?$/, "").replace(/\r/g, "\n");
  const { v, t } = cell;
  if (v === null || v === undefined || v === "") return null;
  if (t === CellValueType.BOOLEAN) return v === true || v === 1 || v === "1" || v === "TRUE";
  if (t === CellValueType.NUMBER) return Number(v);
  if (typeof v === "string" && t !== CellValueType.FORCE_STRING && ERRORS.has(v)) return { error: HOST_ERRORS[v] ?? v };
  if (t === CellValueType.STRING || t === CellValueType.FORCE_STRING) return String(v);
  return v;
}

/** A cell that says nothing of its own: what spills into it shows. */
function isOpenToSpill(cell: Nullable<ICellData>): boolean {
  return !cell || ((cell.v === null || cell.v === undefined || cell.v === "") && !cell.f && !cell.si && !cell.p);
}

/** Reads cells of one workbook; rows and columns count from 0, as in Univer. */
export class CellReader {
  private readonly workbook: Workbook;
  private readonly formulas: FormulaDataModel;

  constructor(workbook: Workbook, formulas: FormulaDataModel) {
    this.workbook = workbook;
    this.formulas = formulas;
  }

  /** Cells that formulas elsewhere spilled onto a sheet, by row and column. */
  spilled(sheetId: string): Readonly<Record<number, Readonly<Record<number, Nullable<ICellData>>> | undefined>> {
    return this.formulas.getArrayFormulaCellData()[this.workbook.getUnitId()]?.[sheetId] ?? {};
  }

  formula(sheet: Worksheet, row: number, column: number): string {
    const cell = sheet.getCellRaw(row, column);
    if (!cell?.f && !cell?.si) return "";
    const text = this.formulas.getFormulaStringByCell(row, column, sheet.getSheetId(), this.workbook.getUnitId());
    return openRanges(text ?? cell.f ?? "");
  }

  private pattern(cell: Nullable<ICellData>): string {
    return (cell && this.workbook.getStyles().getStyleByCell(cell)?.n?.pattern) || "";
  }

  read(sheet: Worksheet, row: number, column: number): GridCell {
    const own = sheet.getCellRaw(row, column);
    const spill = this.spilled(sheet.getSheetId())[row]?.[column];
    const shown = isOpenToSpill(own) ? (spill ?? own) : own;
    const format = this.pattern(own) || this.pattern(shown);
    return { value: cellValueOf(shown), formula: this.formula(sheet, row, column), format: hostFormat(format) };
  }

  /** Last row and column with content, spilled cells included; counted from 1, 0 where there is none. */
  extent(sheet: Worksheet): { row: number; column: number } {
    let lastRow = 0;
    let lastColumn = 0;
    const count = (row: number, column: number): void => {
      lastRow = Math.max(lastRow, row + 1);
      lastColumn = Math.max(lastColumn, column + 1);
    };
    sheet.getCellMatrix().forValue((row, column, cell) => {
      if (!isOpenToSpill(cell)) count(row, column);
    });
    for (const [row, line] of Object.entries(this.spilled(sheet.getSheetId()))) {
      for (const [column, cell] of Object.entries(line ?? {})) {
        if (cellValueOf(cell) !== null) count(Number(row), Number(column));
      }
    }
    return { row: lastRow, column: lastColumn };
  }
}

function hostFormat(pattern: string): string {
  return /^general$/i.test(pattern) ? "" : pattern;
}

function typeOf(value: CellValue): CellValueType | null {
  if (typeof value === "number") return CellValueType.NUMBER;
  if (typeof value === "boolean") return CellValueType.BOOLEAN;
  return value === null ? null : CellValueType.STRING;
}

/** The cell to write: a formula closed, a text as a text whatever it looks like. */
export function cellDataFor(change: CellChange): ICellData {
  const style = change.format === undefined ? {} : { s: { n: { pattern: change.format } } };
  if (change.formula) return { f: closeRanges(change.formula), v: null, t: null, si: null, p: null, ...style };
  const { value } = change;
  const plain = typeof value === "object" && value !== null ? value.error : value;
  const looksTyped =
    typeof plain === "string" && (/^[=+\-'\d.,@]/.test(plain) || ERRORS.has(plain) || /^(true|false)$/i.test(plain));
  const t = looksTyped && typeof value === "string" ? CellValueType.FORCE_STRING : typeOf(value);
  return { v: typeof plain === "boolean" ? Number(plain) : plain, t, f: null, si: null, p: null, ...style };
}
