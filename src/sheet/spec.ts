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
  /** One sentence, put as a note on the heading cell. */
  readonly help: string;
}

export interface TabSpec {
  readonly name: TabName;
  readonly aliases?: readonly string[];
  /** The column whose last filled cell ends the list. */
  readonly key: string;
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
  "Claims",
  "Trials",
  "Settings",
] as const;

export type TabName = (typeof TAB_NAMES)[number];
