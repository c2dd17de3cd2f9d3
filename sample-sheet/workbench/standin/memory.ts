/** A grid of cells in memory, for tests in Node. It works out no formula itself: give it a `calculate`. */

import { widened } from "./a1.ts";
import type {
  Area,
  CellChange,
  CellValue,
  ConditionalRule,
  Grid,
  GridCell,
  GridMark,
  GridProtection,
  GridTab,
  Look,
  Validation,
} from "./grid.ts";
import {
  blockFilling,
  type Calculate,
  compareCells,
  fill,
  type Stored,
  takeBack,
  UNKNOWN_NAME,
} from "./memory-cells.ts";

/** Rows of a new tab, as the host makes it. */
const NEW_TAB_ROWS = 1000;

const EMPTY: GridCell = { value: null, formula: "", format: "" };

export interface MemoryTabOptions {
  readonly rows?: number;
  readonly columns?: number;
  readonly merges?: readonly Area[];
  /** Content from A1: a text is put as it is, never parsed; "=…" only with a `formula` of its own. */
  readonly cells?: readonly (readonly (CellValue | CellChange)[])[];
}

export interface MemoryGridOptions {
  readonly name?: string;
  readonly calculate?: Calculate;
  readonly tabs?: Readonly<Record<string, MemoryTabOptions>>;
  /** Rows of a tab that is not given any; 1,000 as the host makes it. */
  readonly newTabRows?: number;
}

function isChange(cell: CellValue | CellChange): cell is CellChange {
  return typeof cell === "object" && cell !== null && "value" in cell;
}

class MemoryTab implements GridTab {
  readonly id: number;
  private title: string;
  private readonly cells: (Stored | undefined)[][] = [];
  private rowCount: number;
  private columnCount: number;
  private frozen = 0;
  private merged: Area[];
  private markList: GridMark[] = [];
  private protectionList: GridProtection[] = [];
  private ruleList: readonly ConditionalRule[] = [];
  private readonly calculate: Calculate;

  constructor(id: number, title: string, calculate: Calculate, options: MemoryTabOptions) {
    this.id = id;
    this.title = title;
    this.calculate = calculate;
    this.rowCount = options.rows ?? NEW_TAB_ROWS;
    this.columnCount = options.columns ?? Math.max(26, ...(options.cells ?? []).map((row) => row.length));
    this.merged = [...(options.merges ?? [])];
    const changes = (options.cells ?? []).map((row) => row.map((cell) => (isChange(cell) ? cell : { value: cell })));
    for (const [index, row] of changes.entries()) this.write(index + 1, 1, [row]);
  }

  name(): string {
    return this.title;
  }
  rename(name: string): void {
    this.title = name;
  }
  rows(): number {
    return this.rowCount;
  }
  columns(): number {
    return this.columnCount;
  }

  extent(): { row: number; column: number } {
    let lastRow = 0;
    let lastColumn = 0;
    for (const [r, row] of this.cells.entries()) {
      for (const [c, cell] of (row ?? []).entries()) {
        if (!cell || (cell.value === null && cell.formula === "")) continue;
        lastRow = Math.max(lastRow, r + 1);
        lastColumn = Math.max(lastColumn, c + 1);
      }
    }
    return { row: lastRow, column: lastColumn };
  }

  private peek(row: number, column: number): Stored | undefined {
    return this.cells[row - 1]?.[column - 1];
  }
  private open(row: number, column: number): Stored {
    let line = this.cells[row - 1];
    if (!line) {
      line = [];
      this.cells[row - 1] = line;
    }
    let cell = line[column - 1];
    if (!cell) {
      cell = { value: null, formula: "", format: "", note: "", validation: null };
      line[column - 1] = cell;
    }
    return cell;
  }

  read(area: Area): GridCell[][] {
    return Array.from({ length: area.rows }, (_r, r) =>
      Array.from({ length: area.columns }, (_c, c) => this.peek(area.row + r, area.column + c) ?? EMPTY),
    );
  }

  write(row: number, column: number, changes: readonly (readonly (CellChange | null)[])[]): void {
    for (const [r, line] of changes.entries()) {
      for (const [c, change] of line.entries()) {
        if (change === null) continue;
        const cell = this.open(row + r, column + c);
        if (change.format !== undefined) cell.format = change.format;
        const blank = change.value === null && !change.formula;
        // A blank written where a formula elsewhere fills in leaves the filling as it is.
        if (blank && cell.filledBy) continue;
        blockFilling(cell);
        takeBack(cell);
        cell.formula = change.formula ?? "";
        cell.value = change.value;
        if (cell.formula !== "" && cell.value === null) {
          const at = (down: number, right: number) => this.open(row + r + down, column + c + right);
          fill(cell, this.calculate(cell.formula, this.title), at);
        }
      }
    }
  }

  private each(area: Area, act: (cell: Stored) => void): void {
    for (let r = 0; r < area.rows; r++) {
      for (let c = 0; c < area.columns; c++) act(this.open(area.row + r, area.column + c));
    }
  }
  setFormat(area: Area, format: string): void {
    this.each(area, (cell) => {
      cell.format = format;
    });
  }

  /** A grid without a screen: a look changes nothing that can be read back. */
  setLook(_area: Area, _look: Look): void {}
  setColumnWidth(_column: number, _width: number): void {}

  insertRows(before: number, count: number): void {
    this.rowCount += count;
    if (before - 1 < this.cells.length) {
      this.cells.splice(before - 1, 0, ...Array.from({ length: count }, (): (Stored | undefined)[] => []));
    }
  }
  deleteRows(first: number, count: number): void {
    this.rowCount -= count;
    this.cells.splice(first - 1, count);
  }
  insertColumns(before: number, count: number): void {
    this.columnCount += count;
    for (const row of this.cells) {
      if (row && before - 1 < row.length) row.splice(before - 1, 0, ...Array.from({ length: count }, () => undefined));
    }
    this.markList = this.markList.map((mark) =>
      mark.column !== null && mark.column >= before ? { ...mark, column: mark.column + count } : mark,
    );
    this.protectionList = this.protectionList.map((each) => ({ ...each, area: widened(each.area, before, count) }));
  }
  deleteColumns(first: number, count: number): void {
    this.columnCount -= count;
    for (const row of this.cells) row?.splice(first - 1, count);
    this.markList = this.markList
      .filter((mark) => mark.column === null || mark.column < first || mark.column >= first + count)
      .map((mark) => (mark.column !== null && mark.column >= first ? { ...mark, column: mark.column - count } : mark));
  }
  /** Moves one column so that it then stands at `to`; its mark goes with it. */
  moveColumn(from: number, to: number): void {
    for (const row of this.cells) {
      if (!row) continue;
      while (row.length < Math.max(from, to)) row.push(undefined);
      row.splice(to - 1, 0, ...row.splice(from - 1, 1));
    }
    const order = Array.from({ length: this.columnCount }, (_v, index) => index + 1);
    order.splice(to - 1, 0, ...order.splice(from - 1, 1));
    this.markList = this.markList.map((mark) =>
      mark.column === null ? mark : { ...mark, column: order.indexOf(mark.column) + 1 },
    );
  }

  frozenRows(): number {
    return this.frozen;
  }
  freezeRows(count: number): void {
    this.frozen = count;
  }
  merges(): readonly Area[] {
    return this.merged;
  }
  note(row: number, column: number): string {
    return this.peek(row, column)?.note ?? "";
  }
  setNote(row: number, column: number, text: string): void {
    this.open(row, column).note = text;
  }
  marks(): readonly GridMark[] {
    return this.markList;
  }
  putMark(mark: GridMark): void {
    this.removeMark(mark.id);
    this.markList.push(mark);
  }
  removeMark(id: number): void {
    this.markList = this.markList.filter((mark) => mark.id !== id);
  }
  validation(row: number, column: number): Validation | null {
    return this.peek(row, column)?.validation ?? null;
  }
  setValidation(area: Area, rule: Validation | null): void {
    this.each(area, (cell) => {
      cell.validation = rule;
      if (rule?.kind === "checkbox" && cell.value === null) cell.value = false;
    });
  }
  protections(): readonly GridProtection[] {
    return this.protectionList;
  }
  putProtection(protection: GridProtection): void {
    this.removeProtection(protection.id);
    this.protectionList.push(protection);
  }
  removeProtection(id: number): void {
    this.protectionList = this.protectionList.filter((protection) => protection.id !== id);
  }
  conditionalRules(): readonly ConditionalRule[] {
    return this.ruleList;
  }
  setConditionalRules(rules: readonly ConditionalRule[]): void {
    this.ruleList = rules;
  }

  sortRows(area: Area, column: number, ascending: boolean): void {
    const lines = Array.from({ length: area.rows }, (_v, r) =>
      Array.from({ length: area.columns }, (_w, c) => this.peek(area.row + r, area.column + c)),
    );
    const at = column - area.column;
    lines.sort((left, right) => compareCells(left[at]?.value ?? null, right[at]?.value ?? null, ascending));
    for (const [r, line] of lines.entries()) {
      for (const [c, cell] of line.entries()) {
        const row = this.cells[area.row + r - 1] ?? [];
        row[area.column + c - 1] = cell;
        this.cells[area.row + r - 1] = row;
      }
    }
  }
}

export class MemoryGrid implements Grid {
  readonly name: string;
  private list: MemoryTab[] = [];
  private nextId = 1000;
  private active = 0;
  private readonly calculate: Calculate;
  private readonly newTabRows: number;

  constructor(options: MemoryGridOptions = {}) {
    this.name = options.name ?? "Test sheet";
    this.newTabRows = options.newTabRows ?? NEW_TAB_ROWS;
    this.calculate = options.calculate ?? UNKNOWN_NAME;
    for (const [name, tab] of Object.entries(options.tabs ?? {})) this.addTab(name, tab);
  }

  tabs(): readonly MemoryTab[] {
    return this.list;
  }
  tab(name: string): MemoryTab {
    const found = this.list.find((tab) => tab.name() === name);
    if (!found) throw new Error(`No tab named "${name}".`);
    return found;
  }
  addTab(name: string, options: MemoryTabOptions = {}): MemoryTab {
    const tab = new MemoryTab(this.nextId++, name, this.calculate, {
      ...options,
      rows: options.rows ?? Math.max(this.newTabRows, options.cells?.length ?? 0),
    });
    this.list.push(tab);
    if (this.active === 0) this.active = tab.id;
    return tab;
  }
  removeTab(id: number): void {
    this.list = this.list.filter((tab) => tab.id !== id);
  }
  activeTabId(): number {
    return this.active;
  }
  activate(id: number): void {
    this.active = id;
  }
}
