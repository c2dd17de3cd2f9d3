/** The shape of a registry record: one custom function in words, argument kinds and one line into core. */

import type { Cell, DayReader } from "../core/cell.ts";

/** One plain answer cell. A day stands for a date; the host turns it into its own kind. Null shows as "". */
export type Answer = number | string | boolean | null | { readonly day: number };

interface ArgumentWords {
  /** As it stands in the formula's help: `ec`, `tempC`. */
  readonly name: string;
  /** One line for the person typing the formula; an optional argument begins with "Optional" and says its default. */
  readonly help: string;
  readonly optional?: boolean;
}

/** A scalar that also takes a range and maps over it. */
export interface NumberArgument extends ArgumentWords {
  readonly kind: "number";
  /** Unit as written after a number, "mg/L"; a text ending in it is accepted. */
  readonly unit?: string;
  /** The choice that says the unit instead, when it is the person's to choose. */
  readonly unitFrom?: string;
  readonly min?: number;
  readonly max?: number;
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
/** A feed's label: a text, which maps like any scalar, or a table of feeds, one row each. */
export interface LabelArgument extends ArgumentWords {
  readonly kind: "label";
}
/** A key range: with a heading its first cell is its own heading. */
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

export type ScalarArgument = NumberArgument | ChoiceArgument | TextArgument | DayArgument | LabelArgument | KeyArgument;
export type Argument = ScalarArgument | TableArgument | HeadingArgument;

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

/** What a label argument holds in one row: a cell, or a row of a table of feeds. */
export type LabelSource =
  | { readonly kind: "cell"; readonly cell: Cell }
  | { readonly kind: "row"; readonly table: Table; readonly row: number };

/** A date cell in an example, written as an ISO day. */
export interface ExampleDay {
  readonly day: string;
}
export type ExampleCell = number | string | boolean | ExampleDay;
/** One cell, or a range as rows of cells. */
export type ExampleValue = ExampleCell | readonly (readonly ExampleCell[])[];

export interface Example {
  /** The call as a person types it: literals as in `args`, a reference such as A2:A5 where `args` holds a range. */
  readonly formula: string;
  readonly args: readonly ExampleValue[];
  /** What comes out. Numbers are compared within `within` (relative, default 1e-6). */
  readonly gives: ExampleValue;
  readonly within?: number;
  /** Where the expected value comes from. */
  readonly source: string;
}

/** What the README prints besides and the tests try; kept apart, so that it is not shipped with every call. */
export interface FunctionReference {
  /** Name of the function it belongs to. */
  readonly name: string;
  readonly examples: readonly Example[];
  readonly sources: readonly string[];
  readonly seeAlso: readonly string[];
}

export interface FunctionRecord {
  readonly name: string;
  readonly group: "FEED" | "WATER" | "METER" | "ROOT";
  /** One sentence, starts with a verb. */
  readonly summary: string;
  readonly args: readonly Argument[];
  /** What comes back, with its unit. */
  readonly result: string;
  /** Calls as a person types them; each is tried as an example in the group's reference. */
  readonly formulas: readonly string[];
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
  /** All names of a key range; only for `whole`. */
  keys(name: string): readonly Key[];
}
/** The scalars of one row, already read and checked against kind, unit and bounds. */
export interface RowArguments {
  number(name: string): number;
  optionalNumber(name: string): number | null;
  /** A text or a key; a choice as its text. */
  text(name: string): string;
  /** A choice; `choices` are those that the record declares for it. */
  choice<Choice extends string>(name: string, choices: readonly Choice[]): Choice;
  day(name: string): number;
  label(name: string): LabelSource;
}
