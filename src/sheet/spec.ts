/** What a tab and a column are, as data: everything the set-up, the readers and the writers need to know. */

export type ColumnKind = "id" | "text" | "number" | "day" | "choice" | "name" | "yes-no";

export interface ColumnSpec {
  /** The heading, as the add-on writes it; also the column's name in the code. */
  readonly heading: string;
  readonly kind: ColumnKind;
  /** Other headings people use for the same thing. */
  readonly aliases?: readonly string[];
  /** Unit of the numbers, shown in the heading's note. */
  readonly unit?: string;
  /** Allowed values of a choice; a person may type others, the cell is only marked. */
  readonly choices?: readonly string[];
  /** For `name`: the tab whose key column this refers to. */
  readonly refersTo?: TabName;
  /** Number format of the cells; days have their own, other cells none. */
  readonly format?: string;
  /** No arithmetic needs it: a cell here that cannot be read is reported, and its row is used all the same. */
  readonly aside?: boolean;
  /** One sentence, put as a note on the heading cell. */
  readonly help: string;
}

export interface TabSpec {
  readonly name: TabName;
  readonly aliases?: readonly string[];
  /** The column that names a row; a row without it is not a record, and the last filled cell of it ends the list. */
  readonly key: string;
  /** Columns that also make a row a record when the key is blank: a log row typed by hand has no Id. */
  readonly alsoKeys?: readonly string[];
  readonly columns: readonly ColumnSpec[];
  readonly help: string;
}

export const TAB_NAMES = [
  "Plants",
  "Care log",
  "Events",
  "Feeds",
  "Waters",
  "Targets",
  "Batch log",
  "Purchases",
  "Meter log",
  "Claims",
  "Trials",
  "Settings",
] as const;

export type TabName = (typeof TAB_NAMES)[number];

/** Days are shown so that nobody has to guess which number is the month. */
export const DAY_FORMAT = "yyyy-mm-dd";

/** The number format a column gets, or null. */
export function formatOf(column: ColumnSpec): string | null {
  return column.format ?? (column.kind === "day" ? DAY_FORMAT : null);
}
