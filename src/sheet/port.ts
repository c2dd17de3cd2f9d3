/**
 * The port to a workbook: all the add-on ever asks of a spreadsheet. Rows and columns count from 1.
 * Each method says how many calls to the spreadsheet it costs; a test counts them per action.
 */

/** A value to write. Text is always stored as text, whatever it looks like. A day becomes a date cell. */
export type PlainCell = string | number | boolean | null | { readonly day: number };

/** A mark (developer metadata) that stays with its tab or column through renames, moves and inserts. */
export interface Mark {
  readonly tabId: number;
  /** null: the mark is on the tab itself. */
  readonly column: number | null;
  /** "tab:Plants" or "column:Plants/Plant". */
  readonly text: string;
}

export interface TabPort {
  readonly id: number;
  readonly name: string;
  /** Everything on the tab from A1 to the last row and column with content, untouched values. One call. */
  readAll(): readonly (readonly unknown[])[];
  /** A block, untouched values. One call. */
  read(row: number, column: number, rows: number, columns: number): readonly (readonly unknown[])[];
  /** Formulas of a block, "" where there is none. One call. */
  readFormulas(row: number, column: number, rows: number, columns: number): readonly (readonly string[])[];
  /** Last row with any content, 0 for an empty tab. One call. */
  lastRow(): number;
  /** Last column with any content, 0 for an empty tab. One call. */
  lastColumn(): number;
  /** Rows of the grid, filled or not. One call. */
  gridRows(): number;
  /** One write; text literally, days as date cells. Grows the grid when the block lies below it. */
  write(row: number, column: number, values: readonly (readonly PlainCell[])[]): void;
}

/** What the set-up does to a tab, apart from writing cells. Every method may be called again without harm. */
export interface TabSetup {
  freezeHeading(): void;
  mark(column: number | null, text: string): void;
  note(column: number, text: string): void;
  /** Cells from row 2 down; a person may still type other values, the cell is only flagged. */
  offerChoices(column: number, choices: readonly string[]): void;
  offerNames(column: number, fromTab: TabPort, fromColumn: number): void;
  format(column: number, pattern: string): void;
  /** A warning before editing, never a lock. */
  warnOnEdit(row: number, column: number, rows: number, columns: number, why: string): void;
}

export interface WorkbookPort {
  /** One call. */
  tabs(): readonly TabPort[];
  /** One call. */
  marks(): readonly Mark[];
  /** Calendar day of a value read from a cell, null when it is no date; one call in all for the time zone. */
  dayOf(value: unknown): number | null;
  addTab(name: string): TabPort;
  setup(tab: TabPort): TabSetup;
  /** Runs `work` under the document lock; BadInput "busy" when the lock is not had in time. Flushes before it releases. */
  locked<T>(work: () => T): T;
}
