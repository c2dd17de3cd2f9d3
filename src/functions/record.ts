/** The shape of a registry record: one custom function as its name, its argument kinds and one line into core. */

import type { Cell, DayReader } from "../core/cell.ts";

/** One plain answer cell. A day stands for a date; the host turns it into its own kind. Null shows as "". */
export type Answer = number | string | boolean | null | { readonly day: number };

interface ArgumentBase {
  /** As it stands in the formula's help: `ec`, `tempC`. */
  readonly name: string;
  readonly optional?: boolean;
}

/** A scalar that also takes a range and maps over it. */
export interface NumberArgument extends ArgumentBase {
  readonly kind: "number";
  /** Unit as written after a number, "mg/L"; a text ending in it is accepted. */
  readonly unit?: string;
  /** The choice that says the unit instead, when it is the person's to choose. */
  readonly unitFrom?: string;
  readonly min?: number;
  readonly max?: number;
  /** A word that may stand instead of the number, case and spaces ignored: "balance". */
  readonly word?: string;
}
export interface YesNoArgument extends ArgumentBase {
  readonly kind: "yesNo";
  readonly fallback: boolean;
}
export interface ChoiceArgument extends ArgumentBase {
  readonly kind: "choice";
  readonly choices: readonly string[];
  readonly fallback?: string;
}
export interface TextArgument extends ArgumentBase {
  readonly kind: "text";
  readonly fallback?: string;
}
export interface DayArgument extends ArgumentBase {
  readonly kind: "day";
}
/** A feed's label: a text, which maps like any scalar, or a table of feeds, one row each. */
export interface LabelArgument extends ArgumentBase {
  readonly kind: "label";
}
/** A table that is answered row by row, like a key range. At least one of the columns `anyOf` must be there. */
export interface RowsArgument extends ArgumentBase {
  readonly kind: "rows";
  readonly anyOf: readonly string[];
}
/** A key range: with a heading its first cell is its own heading. */
export interface KeyArgument extends ArgumentBase {
  readonly kind: "key";
}
/** A range with a heading row, read once for all rows. `columns` names those that must be there. */
export interface TableArgument extends ArgumentBase {
  readonly kind: "table";
  readonly columns: readonly string[];
}
/** Numbers in one column or one row, read as a whole: blank cells are passed over, anything else is refused. */
export interface NumbersArgument extends ArgumentBase {
  readonly kind: "numbers";
  readonly min?: number;
  readonly max?: number;
}
export interface HeadingArgument extends ArgumentBase {
  readonly kind: "heading";
}

export type ScalarArgument =
  | NumberArgument
  | YesNoArgument
  | ChoiceArgument
  | TextArgument
  | DayArgument
  | LabelArgument
  | RowsArgument
  | KeyArgument;
export type Argument = ScalarArgument | TableArgument | NumbersArgument | HeadingArgument;

/** A table as records get it: rows below the heading row, cells found by heading. Rows count from 0. */
export interface Table {
  /** Name of the argument it came in. */
  readonly name: string;
  readonly rowCount: number;
  /** Index of the column under this heading, or -1. Refuses a heading that stands twice. */
  column(heading: string): number;
  cell(row: number, column: number): Cell;
  /** The untouched value, for columns of 100,000 rows where a Cell object per row would cost too much. */
  raw(row: number, column: number): unknown;
  /** Whether every cell of the row is blank. */
  isBlank(row: number): boolean;
  /** Where the row stands for the reader, the heading row being row 1: "row 7 of log". */
  where(row: number): string;
  readonly dayOf: DayReader;
}

/** One row of a table. */
export interface TableRow {
  readonly kind: "row";
  readonly table: Table;
  readonly row: number;
}

/** What a label argument holds in one row: a cell, or a row of a table of feeds. */
export type LabelSource = { readonly kind: "cell"; readonly cell: Cell } | TableRow;

export interface FunctionRecord {
  readonly name: string;
  readonly group: "FEED" | "WATER" | "METER" | "ROOT" | "POT" | "CHECK" | "TRIAL";
  readonly args: readonly Argument[];
  /**
   * `rows`: tables are read once and come in `fixed`; what `prepare` returns is called for each row with the
   * scalars of that row and answers with one cell or a row of cells. `whole`: called once, answers with a
   * table of its own; its scalars take no ranges.
   */
  readonly compute:
    | {
        readonly kind: "rows";
        readonly prepare: (fixed: FixedArguments) => (row: RowArguments) => Answer | readonly Answer[];
      }
    | {
        readonly kind: "whole";
        readonly answer: (fixed: FixedArguments, row: RowArguments) => readonly (readonly Answer[])[];
      };
}

/** One name of a key range, or why its cell holds none. Blank cells are left out. */
export type Key = { readonly name: string } | { readonly name: null; readonly reason: string };

/** Arguments read once. Asking for a name the record does not declare as such is a mistake in the record and throws. */
export interface FixedArguments {
  table(name: string): Table;
  /** Null when the table is left out. */
  optionalTable(name: string): Table | null;
  numbers(name: string): readonly number[];
  /** All names of a key range; only for `whole`. */
  keys(name: string): readonly Key[];
}
/** The scalars of one row, already read and checked against kind, unit and bounds. */
export interface RowArguments {
  number(name: string): number;
  optionalNumber(name: string): number | null;
  /** A number that declares this `word`, or the word. */
  numberOr<Word extends string>(name: string, word: Word): number | Word;
  yesNo(name: string): boolean;
  /** A text or a key; a choice as its text. */
  text(name: string): string;
  /** A choice; `choices` are those that the record declares for it. */
  choice<Choice extends string>(name: string, choices: readonly Choice[]): Choice;
  /** Null where it is left out or its cell is blank. */
  optionalChoice<Choice extends string>(name: string, choices: readonly Choice[]): Choice | null;
  day(name: string): number;
  optionalDay(name: string): number | null;
  label(name: string): LabelSource;
  tableRow(name: string): TableRow;
}
