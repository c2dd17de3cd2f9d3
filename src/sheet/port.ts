/**
 * The port to a workbook: all the add-on ever asks of a spreadsheet. Rows and columns count from 1.
 * Each method says how many calls to the spreadsheet it costs; a test counts them per action.
 */

/** A value to write. Text is always stored as text, whatever it looks like. A day becomes a date cell. */
export type PlainCell = string | number | boolean | null | { readonly day: number };

/** A rectangle of cells. */
export interface Block {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** A mark (developer metadata) that stays with its tab or column through renames, moves and inserts. */
export interface Mark {
  readonly tabId: number;
  /** null: the mark is on the tab itself. */
  readonly column: number | null;
  /** "tab:Plants" or "column:Plants/Plant". */
  readonly text: string;
}

/** Blocks may reach beyond the grid; for rows and columns beyond what was read, it is measured once: a call each. */
export interface TabPort {
  readonly id: number;
  readonly name: string;
  /** Everything from A1 to the last row and column with content, untouched values; [] for an empty tab. Two calls. */
  readAll(): readonly (readonly unknown[])[];
  /** The first `columns` columns, which must be on the grid, down to the last row with content in them. One call. */
  readColumns(columns: number): readonly (readonly unknown[])[];
  /** Values of a block, without the rows and columns that lie beyond the grid. One call. */
  readBlock(block: Block): readonly (readonly unknown[])[];
  /** Formulas of a block, "" where there is none (also in cells that a formula elsewhere fills). One call. */
  readFormulas(block: Block): readonly (readonly string[])[];
  /** Merged areas that touch the block. One call. */
  mergedIn(block: Block): readonly Block[];
  /** Deletes whole rows, whatever stands in them. One call, two when no other row would be left. */
  removeRows(row: number, count: number): void;
  /** Writes a block: text literally, days as date cells, null as blank. Grows the grid where it has to. One call. */
  write(row: number, column: number, values: readonly (readonly PlainCell[])[]): void;
  /** Writes one formula of the add-on's own making, arguments parted by commas; its answer spills from there. Nothing typed by anybody comes this way. One call. */
  writeFormula(row: number, column: number, formula: string): void;
}

/** Rows in which `column` holds just this word get these colours, from column 1 to `columns`. */
export interface WordColour {
  readonly column: number;
  readonly columns: number;
  readonly word: string;
  /** "#rrggbb". */
  readonly background: string;
  readonly ink: string;
}

/** How a page to print is laid out. */
export interface PageLook {
  /** Pixels, from column 1 on. */
  readonly widths: readonly number[];
  readonly rows: number;
  readonly boldRows: readonly number[];
  /** Rows whose cells break into lines; the lines of the others run on over blank cells. */
  readonly wrapped: { readonly from: number; readonly to: number } | null;
}

/** A warning before editing a block; never a lock. */
export interface Warning {
  readonly text: string;
  readonly block: Block;
  /** Makes the warning cover another block. */
  stretch(block: Block): void;
}

export interface ChartLine {
  readonly column: number;
  readonly axis: "left" | "right";
  /** Readings joined by a line, a limit, or marks that stand alone. */
  readonly look: "readings" | "limit" | "marks";
}

/** A line chart over whole columns, heading row included; days along the bottom. */
export interface ColumnChart {
  readonly title: string;
  readonly dayColumn: number;
  readonly lines: readonly ChartLine[];
  readonly leftTitle: string;
  readonly rightTitle: string;
  /** Column at whose left edge a new one goes, if the grid reaches that far. */
  readonly beside: number;
}

/** What is on a tab besides values, for its first `columns` columns. */
export interface TabLook {
  readonly frozenRows: number;
  /** Notes of the heading cells. */
  readonly notes: readonly string[];
  /** Number formats of row 2. */
  readonly formats: readonly string[];
  /** Whether row 2 has a validation rule. */
  readonly ruled: readonly boolean[];
  readonly warnings: readonly Warning[];
}

/** What the set-up does to a tab, apart from writing cells. Column-wide things reach from row 2 to the end. */
export interface TabSetup {
  look(columns: number): TabLook;
  freezeHeading(): void;
  mark(column: number | null, text: string): void;
  note(column: number, text: string): void;
  /** A list to pick from; a person may still type other values, the cell is only flagged. */
  offerChoices(column: number, choices: readonly string[]): void;
  /** The same, from the cells of another tab's column. */
  offerNames(column: number, fromTab: TabPort, fromColumn: number): void;
  format(column: number, pattern: string): void;
  warnOnEdit(block: Block, text: string): void;
  /** Adds the colours that are not there yet and leaves every other rule of the tab as it is. Up to three calls. */
  colourWords(colours: readonly WordColour[]): void;
  /** Shows every formula in these columns, from row 2 on, on a ground of its own; once. */
  flagFormulas(columns: readonly number[]): void;
  /** Draws it, or brings up to date the one of that title or of those columns, where it stands. Two or three calls. */
  drawChart(chart: ColumnChart): "drawn" | "renewed";
  /** One call for each width, and two or three more. */
  layOut(look: PageLook): void;
}

export interface WorkbookPort {
  /** In the order of the workbook, hidden ones too. One call. */
  tabs(): readonly TabPort[];
  /** Marks whose text is `wanted`. One call. */
  marks(wanted: (text: string) => boolean): readonly Mark[];
  /** Calendar day of a value read from a cell, null when it is no date; one call in all for the time zone. */
  dayOf(value: unknown): number | null;
  /** The calendar day it is now in the spreadsheet's time zone; shares its one call with dayOf. */
  today(): number;
  /** An empty tab after the last one. */
  addTab(name: string): TabPort;
  setup(tab: TabPort): TabSetup;
  /** Runs `work` under the document lock; BadInput "busy" when the lock is not had in time. Flushes before it releases. One call. */
  locked<T>(work: () => T): T;
  /** Whether a write was sent through this port, whatever became of it. */
  begun(): boolean;
}
