/** The shape of a registry record: one custom function in words, argument kinds and one line into core. */

import type { Cell } from "../core/cell.ts";

/** One plain answer cell. A day stands for a date; the host turns it into its own kind. Null shows as "". */
export type Answer = number | string | boolean | null | { readonly day: number };

interface ArgumentWords {
  /** As it stands in the formula's help: `ec`, `tempC`. */
  readonly name: string;
  /** One sentence for the person typing the formula; an optional argument says "optional" and its default. */
  readonly help: string;
  readonly optional?: boolean;
}

/** A scalar that also takes a range and maps over it. */
export interface NumberArgument extends ArgumentWords {
  readonly kind: "number";
  /** Unit as written after a number, "mg/L"; a text ending in it is accepted. */
  readonly unit?: string;
  readonly min?: number;
  readonly max?: number;
  readonly fallback?: number;
}
export interface ChoiceArgument extends ArgumentWords {
  readonly kind: "choice";
  readonly choices: readonly string[];
  readonly fallback?: string;
}
export interface TextArgument extends ArgumentWords {
  readonly kind: "text";
  readonly fallback?: string;
}
export interface DayArgument extends ArgumentWords {
  readonly kind: "day";
}
/** A scalar the record itself reads from its cell: a label may be a text, a Date by accident, or a table. */
export interface CellArgument extends ArgumentWords {
  readonly kind: "cell";
}
/** A key range: a blank cell gives "" in its row; with a heading its first cell is its own heading. */
export interface KeyArgument extends ArgumentWords {
  readonly kind: "key";
}
/** A range with a heading row, read once for all rows. `columns` names those that must be there. */
export interface TableArgument extends ArgumentWords {
  readonly kind: "table";
  readonly columns: readonly string[];
}
export interface HeadingArgument extends ArgumentWords {
  readonly kind: "heading";
}
export interface FlagArgument extends ArgumentWords {
  readonly kind: "flag";
  readonly fallback?: boolean;
}

export type Argument =
  | NumberArgument
  | ChoiceArgument
  | TextArgument
  | DayArgument
  | CellArgument
  | KeyArgument
  | TableArgument
  | HeadingArgument
  | FlagArgument;

/** A table as records get it: rows below the heading, cells found by heading. */
export interface Table {
  /** Index of a column, or -1. */
  column(heading: string): number;
  readonly headings: readonly string[];
  readonly rowCount: number;
  cell(row: number, column: number): Cell;
  /** The untouched value, for columns of 100,000 rows where a Cell object per row would cost too much. */
  raw(row: number, column: number): unknown;
  /** Where the row stands for the reader: "row 7 of log". */
  where(row: number): string;
}

export interface Example {
  /** The arguments as plain values; a nested array is a range; { day: "2026-03-01" } is a date cell. */
  readonly args: readonly unknown[];
  /** The call as a person types it, for the reference. */
  readonly formula: string;
  /** What comes out: a value, or rows. Numbers are compared within `within` (relative, default 1e-6). */
  readonly gives: unknown;
  readonly within?: number;
  /** Where the expected value comes from. */
  readonly source: string;
}

export interface FunctionRecord {
  readonly name: string;
  readonly group: "FEED" | "WATER" | "METER" | "ROOT" | "POT" | "CHECK" | "TRIAL";
  /** One sentence, starts with a verb. */
  readonly summary: string;
  readonly args: readonly Argument[];
  /** What comes back, with its unit. */
  readonly result: string;
  readonly examples: readonly Example[];
  readonly sources: readonly string[];
  readonly seeAlso?: readonly string[];
  /**
   * Tables and flags are read once and come in `fixed`; what it returns is called for each row with the
   * scalars of that row. A row's answer is one cell or a row of cells. A function whose answer is a table
   * of its own (`whole`) is called once.
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

/** Arguments read once: tables (null when an optional one is left out) and flags. */
export interface FixedArguments {
  table(name: string): Table;
  optionalTable(name: string): Table | null;
  flag(name: string): boolean;
}
/** The scalars of one row, already read and checked against kind, unit and bounds. */
export interface RowArguments {
  number(name: string): number;
  optionalNumber(name: string): number | null;
  text(name: string): string;
  optionalText(name: string): string | null;
  day(name: string): number;
  cell(name: string): Cell;
  key(name: string): string;
}
