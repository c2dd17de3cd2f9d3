/** What the stand-in for the host's services needs of a grid of cells; rows and columns count from 1, as on the host. */

/** An error cell: "#N/A", "#REF!" … */
export interface CellError {
  readonly error: string;
}

/** What a cell holds. A date is a number of days since 1899-12-30 under a date format, as in every spreadsheet. */
export type CellValue = string | number | boolean | null | CellError;

export interface GridCell {
  readonly value: CellValue;
  /** With its leading "=", or "". */
  readonly formula: string;
  /** Number format, "" where none was set. */
  readonly format: string;
}

/** What a write changes of a cell; a format left out stays. A formula makes the grid work out the value. */
export interface CellChange {
  readonly value: CellValue;
  readonly formula?: string;
  readonly format?: string;
}

export interface Area {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** Developer metadata on a tab (column null), or on a column, with which it travels. */
export interface GridMark {
  readonly id: number;
  readonly column: number | null;
  readonly key: string;
  readonly value: string;
  readonly visibility: "DOCUMENT" | "PROJECT";
}

export interface Validation {
  readonly kind: "list" | "range" | "checkbox";
  /** Choices of a list; for "range" the one reference, "'Feeds'!A2:A900". */
  readonly values: readonly string[];
  /** false: a value outside is refused, and a write of one throws. */
  readonly allowInvalid: boolean;
  readonly help: string;
}

export interface GridProtection {
  readonly id: number;
  readonly area: Area;
  readonly description: string;
  readonly warningOnly: boolean;
}

/** How cells look; what is left out stays. */
export interface Look {
  readonly bold?: boolean;
  readonly background?: string | null;
  readonly fontColor?: string | null;
  /** Whether a long text breaks into lines. */
  readonly wrap?: boolean;
}

/** A conditional rule as data: the formula, where it holds, and how the cell then looks. */
export interface ConditionalRule {
  readonly formula: string;
  readonly areas: readonly Area[];
  readonly background: string | null;
  readonly fontColor: string | null;
}

export interface GridTab {
  readonly id: number;
  name(): string;
  rename(name: string): void;
  /** Size of the grid, filled or not. */
  rows(): number;
  columns(): number;
  /** Last row and column with any content: a value, a formula, a checkbox, a spilled cell. 0 where none. */
  extent(): { readonly row: number; readonly column: number };
  read(area: Area): GridCell[][];
  /** null leaves a cell as it is. */
  write(row: number, column: number, changes: readonly (readonly (CellChange | null)[])[]): void;
  setFormat(area: Area, format: string): void;
  setLook(area: Area, look: Look): void;
  /** In pixels. */
  setColumnWidth(column: number, width: number): void;
  insertRows(before: number, count: number): void;
  insertColumns(before: number, count: number): void;
  deleteRows(first: number, count: number): void;
  deleteColumns(first: number, count: number): void;
  frozenRows(): number;
  freezeRows(count: number): void;
  merges(): readonly Area[];
  note(row: number, column: number): string;
  setNote(row: number, column: number, text: string): void;
  marks(): readonly GridMark[];
  /** Adds a mark, or replaces the one with this id. */
  putMark(mark: GridMark): void;
  removeMark(id: number): void;
  validation(row: number, column: number): Validation | null;
  setValidation(area: Area, rule: Validation | null): void;
  protections(): readonly GridProtection[];
  putProtection(protection: GridProtection): void;
  removeProtection(id: number): void;
  conditionalRules(): readonly ConditionalRule[];
  /** Replaces every rule of the tab. */
  setConditionalRules(rules: readonly ConditionalRule[]): void;
  sortRows(area: Area, column: number, ascending: boolean): void;
}

export interface Grid {
  readonly name: string;
  tabs(): readonly GridTab[];
  addTab(name: string): GridTab;
  removeTab(id: number): void;
  activeTabId(): number;
  activate(id: number): void;
}

export function isCellError(value: CellValue): value is CellError {
  return typeof value === "object" && value !== null;
}

/** True for a number format that shows a date or a time. Quoted text, colours and escaped letters do not count. */
export function isDateFormat(format: string): boolean {
  if (format === "" || format === "@" || /^general$/i.test(format)) return false;
  return /[ymdhs]/i.test(format.replace(/"[^"]*"|\\.|_.|\[(?!h+\]|m+\]|s+\])[^\]]*\]/gi, ""));
}
