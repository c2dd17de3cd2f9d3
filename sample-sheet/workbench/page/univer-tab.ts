/** One sheet of Univer as a tab of the stand-in's grid: 1-based outside, 0-based inside, everything through commands. */

import type { ICellData, Worksheet } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { SetRangeValuesCommand } from "@univerjs/preset-sheets-core";
import type {
  Area,
  CellChange,
  ConditionalRule,
  GridCell,
  GridMark,
  GridProtection,
  GridTab,
  Look,
  Validation,
} from "../standin/grid.ts";
import { type CellReader, cellDataFor } from "./cells.ts";
import { orderBy, reorder } from "./sorting.ts";
import { readRule, writeRule } from "./validation-rules.ts";

type FWorkbook = ReturnType<FUniver["createWorkbook"]>;
type FSheet = ReturnType<FWorkbook["getActiveSheet"]>;

/** What Univer has no place for, kept with the sheet's own data. */
interface SheetCustom {
  readonly marks?: readonly GridMark[];
  readonly protections?: readonly GridProtection[];
  readonly conditional?: readonly ConditionalRule[];
}

/** The host numbers its tabs; Univer names them by text. */
export function tabIdOf(sheetId: string): number {
  if (/^\d{1,9}$/.test(sheetId)) return Number(sheetId);
  let hash = 7;
  for (const letter of sheetId) hash = (hash * 31 + letter.charCodeAt(0)) % 2_000_000_011;
  return hash;
}

export interface TabParts {
  readonly api: FUniver;
  readonly workbook: FWorkbook;
  readonly sheet: FSheet;
  readonly reader: CellReader;
  /** Tells that something was changed outside Univer's own commands. */
  readonly touched: () => void;
}

export class UniverTab implements GridTab {
  readonly id: number;
  private readonly parts: TabParts;
  private readonly inner: Worksheet;

  constructor(parts: TabParts) {
    this.parts = parts;
    this.inner = parts.sheet.getSheet();
    this.id = tabIdOf(parts.sheet.getSheetId());
  }

  name(): string {
    return this.parts.sheet.getSheetName();
  }
  rename(name: string): void {
    this.parts.sheet.setName(name);
  }
  rows(): number {
    return this.parts.sheet.getMaxRows();
  }
  columns(): number {
    return this.parts.sheet.getMaxColumns();
  }
  extent(): { row: number; column: number } {
    return this.parts.reader.extent(this.inner);
  }

  private range(area: Area) {
    return this.parts.sheet.getRange(area.row - 1, area.column - 1, area.rows, area.columns);
  }

  read(area: Area): GridCell[][] {
    const { reader } = this.parts;
    return Array.from({ length: area.rows }, (_r, r) =>
      Array.from({ length: area.columns }, (_c, c) => reader.read(this.inner, area.row - 1 + r, area.column - 1 + c)),
    );
  }

  private put(cells: Record<number, Record<number, ICellData>>): void {
    if (Object.keys(cells).length === 0) return;
    this.parts.api.syncExecuteCommand(SetRangeValuesCommand.id, {
      unitId: this.parts.workbook.getId(),
      subUnitId: this.parts.sheet.getSheetId(),
      value: cells,
    });
  }

  write(row: number, column: number, changes: readonly (readonly (CellChange | null)[])[]): void {
    const cells: Record<number, Record<number, ICellData>> = {};
    for (const [r, line] of changes.entries()) {
      for (const [c, change] of line.entries()) {
        if (change === null) continue;
        cells[row - 1 + r] = { ...cells[row - 1 + r], [column - 1 + c]: cellDataFor(change) };
      }
    }
    this.put(cells);
  }

  setFormat(area: Area, format: string): void {
    const cells: Record<number, Record<number, ICellData>> = {};
    for (let r = 0; r < area.rows; r++) {
      const line: Record<number, ICellData> = {};
      for (let c = 0; c < area.columns; c++) line[area.column - 1 + c] = { s: { n: { pattern: format } } };
      cells[area.row - 1 + r] = line;
    }
    this.put(cells);
  }

  setLook(area: Area, look: Look): void {
    const range = this.range(area);
    if (look.bold !== undefined) range.setFontWeight(look.bold ? "bold" : "normal");
    if (look.background !== undefined) range.setBackground(look.background ?? "");
    if (look.fontColor !== undefined) range.setFontColor(look.fontColor);
    if (look.wrap !== undefined) range.setWrap(look.wrap);
  }
  setColumnWidth(column: number, width: number): void {
    this.parts.sheet.setColumnWidth(column - 1, width);
  }

  /** At the bottom Univer inserts nothing: there the sheet is made longer. */
  insertRows(before: number, count: number): void {
    if (before > this.rows()) this.parts.sheet.setRowCount(this.rows() + count);
    else this.parts.sheet.insertRows(before - 1, count);
  }
  insertColumns(before: number, count: number): void {
    if (before > this.columns()) this.parts.sheet.setColumnCount(this.columns() + count);
    else this.parts.sheet.insertColumns(before - 1, count);
  }
  deleteRows(first: number, count: number): void {
    this.parts.sheet.deleteRows(first - 1, count);
  }
  deleteColumns(first: number, count: number): void {
    this.parts.sheet.deleteColumns(first - 1, count);
  }
  frozenRows(): number {
    return this.parts.sheet.getFrozenRows();
  }
  freezeRows(count: number): void {
    this.parts.sheet.setFrozenRows(count);
  }
  merges(): readonly Area[] {
    return this.inner.getMergeData().map((range) => ({
      row: range.startRow + 1,
      column: range.startColumn + 1,
      rows: range.endRow - range.startRow + 1,
      columns: range.endColumn - range.startColumn + 1,
    }));
  }

  note(row: number, column: number): string {
    const note: unknown = this.inner.getCellRaw(row - 1, column - 1)?.custom?.note;
    return typeof note === "string" ? note : "";
  }
  setNote(row: number, column: number, text: string): void {
    const custom: Record<string, unknown> = { ...this.inner.getCellRaw(row - 1, column - 1)?.custom };
    if (text === "") delete custom.note;
    else custom.note = text;
    this.put({ [row - 1]: { [column - 1]: { custom } } });
  }

  private custom(): SheetCustom {
    return (this.parts.sheet.getCustomMetadata() ?? {}) as SheetCustom;
  }
  private setCustom(patch: SheetCustom): void {
    this.parts.sheet.setCustomMetadata({ ...this.custom(), ...patch });
    this.parts.touched();
  }
  private columnMarks(column: number): readonly GridMark[] {
    const marks: unknown = this.parts.sheet.getColumnCustomMetadata(column - 1)?.marks;
    return Array.isArray(marks) ? (marks as GridMark[]) : [];
  }
  private setColumnMarks(column: number, marks: readonly GridMark[]): void {
    const custom = this.parts.sheet.getColumnCustomMetadata(column - 1);
    this.parts.sheet.setColumnCustomMetadata(column - 1, { ...custom, marks });
    this.parts.touched();
  }

  /** Marks of columns lie in the columns' own data, so Univer itself moves, copies and deletes them. */
  marks(): readonly GridMark[] {
    const found = [...(this.custom().marks ?? [])];
    for (let column = 1; column <= this.columns(); column++) {
      found.push(...this.columnMarks(column).map((mark) => ({ ...mark, column })));
    }
    return found;
  }
  putMark(mark: GridMark): void {
    this.removeMark(mark.id);
    if (mark.column === null) this.setCustom({ marks: [...(this.custom().marks ?? []), mark] });
    else this.setColumnMarks(mark.column, [...this.columnMarks(mark.column), mark]);
  }
  removeMark(id: number): void {
    const found = this.marks().find((mark) => mark.id === id);
    if (!found) return;
    const others = (marks: readonly GridMark[]): GridMark[] => marks.filter((mark) => mark.id !== id);
    if (found.column === null) this.setCustom({ marks: others(this.custom().marks ?? []) });
    else this.setColumnMarks(found.column, others(this.columnMarks(found.column)));
  }

  validation(row: number, column: number): Validation | null {
    return readRule(this.parts.sheet.getRange(row - 1, column - 1));
  }
  setValidation(area: Area, rule: Validation | null): void {
    const { api, workbook } = this.parts;
    this.range(area).setDataValidation(rule === null ? null : writeRule(api, workbook, rule));
  }

  protections(): readonly GridProtection[] {
    return this.custom().protections ?? [];
  }
  putProtection(protection: GridProtection): void {
    const others = this.protections().filter(({ id }) => id !== protection.id);
    this.setCustom({ protections: [...others, protection] });
  }
  removeProtection(id: number): void {
    this.setCustom({ protections: this.protections().filter((each) => each.id !== id) });
  }

  conditionalRules(): readonly ConditionalRule[] {
    return this.custom().conditional ?? [];
  }
  setConditionalRules(rules: readonly ConditionalRule[]): void {
    const { sheet } = this.parts;
    sheet.clearConditionalFormatRules();
    for (const rule of rules) {
      let builder = sheet.newConditionalFormattingRule().whenFormulaSatisfied(rule.formula);
      if (rule.background !== null) builder = builder.setBackground(rule.background);
      if (rule.fontColor !== null) builder = builder.setFontColor(rule.fontColor);
      const ranges = rule.areas.map((area) => this.range(area).getRange());
      sheet.addConditionalFormattingRule(builder.setRanges(ranges).build());
    }
    this.setCustom({ conditional: rules });
  }

  sortRows(area: Area, column: number, ascending: boolean): void {
    const { api, workbook, sheet, reader } = this.parts;
    const range = this.range(area).getRange();
    const order = orderBy(this.inner, reader, range, [{ column: column - 1, ascending }]);
    reorder(api, { unitId: workbook.getId(), subUnitId: sheet.getSheetId(), range, order });
  }
}
