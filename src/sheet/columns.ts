/** Columns as one line each: what is written over them, what the note on the heading says, and what else there is. */

import type { ColumnKind, ColumnSpec, TabName } from "./spec.ts";

/** The heading, and after it other headings that people use for the same thing. */
export type Names = string | readonly [heading: string, ...aliases: string[]];

/** What else there is to say of a column. */
export type Others = Partial<Pick<ColumnSpec, "unit" | "choices" | "refersTo" | "format" | "aside">>;

function columnOf(kind: ColumnKind, names: Names, rest: Others & Pick<ColumnSpec, "help">): ColumnSpec {
  const [heading, ...aliases] = typeof names === "string" ? [names] : names;
  return { heading, kind, ...(aliases.length > 0 ? { aliases } : {}), ...rest };
}

export function text(names: Names, help: string, others: Others = {}): ColumnSpec {
  return columnOf("text", names, { help, ...others });
}

export function number(names: Names, help: string, others: Others = {}): ColumnSpec {
  return columnOf("number", names, { help, ...others });
}

export function day(names: Names, help: string, others: Others = {}): ColumnSpec {
  return columnOf("day", names, { help, ...others });
}

export function choice(names: Names, help: string, choices: readonly string[]): ColumnSpec {
  return columnOf("choice", names, { help, choices });
}

export function yesNo(names: Names, help: string): ColumnSpec {
  return columnOf("yes-no", names, { help, choices: ["yes", "no"] });
}

/** A name out of the key column of the tab `refersTo`. */
export function nameOf(refersTo: TabName, names: Names, help: string): ColumnSpec {
  return columnOf("name", names, { help, refersTo });
}

/** Made by the add-on. */
export function id(names: Names, help: string): ColumnSpec {
  return columnOf("id", names, { help });
}

export const CORRECTS = text(
  ["Corrects", "Corrects id"],
  "Id of an earlier row that this one replaces or takes back; that row no longer counts. Written by the add-on.",
);

export const NOTE = text(["Note", "Notes", "Remark", "Remarks", "Comment"], "Anything else.");
