/** Finds the add-on's tabs and columns in a workbook that people rearrange: by mark, then heading, then alias. */

import { headingKey, nameKey } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { sayList } from "../core/saying.ts";
import type { Mark, TabPort, WorkbookPort } from "./port.ts";
import type { ColumnSpec, TabName, TabSpec } from "./spec.ts";

/** A workbook with its tabs and marks as they were at the start of a request. */
export interface Book {
  readonly workbook: WorkbookPort;
  readonly tabs: readonly TabPort[];
  readonly marks: readonly Mark[];
}

export const tabMark = (tab: TabName): string => `tab:${tab}`;
/** "schema:Plants/2": the version of the columns that the tab was set up with. */
export const schemaMark = (tab: TabName, version: number | ""): string => `schema:${tab}/${version}`;
/** On a plant list of one's own, with the name and heading it was chosen by. */
export const listMark = (tab: string): string => `list:${tab}`;
export const listColumnMark = (tab: string, ours: string, theirs: string): string => `list:${tab}/${ours}=${theirs}`;
export const columnMark = (tab: TabName, heading: string): string => `column:${tab}/${heading}`;

/** Reads the tabs and the marks of the `names` tabs, and those `also` wanted; those of Plants include a list of one's own. Two calls. */
export function openBook(
  workbook: WorkbookPort,
  names: readonly TabName[],
  also: (text: string) => boolean = () => false,
): Book {
  const tabs = workbook.tabs();
  const starts = names.flatMap((name) => [columnMark(name, ""), schemaMark(name, "")]);
  if (names.includes("Plants")) starts.push(listMark(""));
  const marks = workbook.marks(
    (text) =>
      names.some((name) => text === tabMark(name)) || starts.some((start) => text.startsWith(start)) || also(text),
  );
  return { workbook, tabs, marks };
}

/** The tab of `spec`, or null when there is none. Throws BadInput when two tabs could be meant. */
export function findTab(book: Book, spec: TabSpec): TabPort | null {
  const marked = book.tabs.filter((tab) =>
    book.marks.some((mark) => mark.tabId === tab.id && mark.column === null && mark.text === tabMark(spec.name)),
  );
  const named = (tabs: readonly TabPort[]) => tabs.find((tab) => nameKey(tab.name) === nameKey(spec.name));
  if (marked.length === 1) return marked[0] ?? null;
  if (marked.length > 1) {
    // A copied tab may carry its original's marks: then the one that bears the name is meant.
    const original = named(marked);
    if (!original) throw twoTabs(spec, marked);
    return original;
  }
  const byName = named(book.tabs);
  if (byName) return byName;
  const byAlias = book.tabs.filter((tab) => (spec.aliases ?? []).some((alias) => nameKey(alias) === nameKey(tab.name)));
  if (byAlias.length > 1) throw twoTabs(spec, byAlias);
  return byAlias[0] ?? null;
}

function twoTabs(spec: TabSpec, tabs: readonly TabPort[]): BadInput {
  const names = tabs.map((tab) => `“${tab.name}”`).join(" and ");
  return new BadInput("two-tabs", `Both tabs ${names} could be ${spec.name}. Name the right one “${spec.name}”.`);
}

export function noTab(spec: TabSpec): BadInput {
  return new BadInput(
    "no-tab",
    `There is no tab “${spec.name}”. Choose “Set up tabs” from the Stillroot menu: it adds what is missing and leaves all else as it is.`,
  );
}

/** Where the columns of a tab are. */
export interface Columns {
  /** The tab as sentences call it: the name it has now. */
  readonly tabName: string;
  /** Column numbers from 1 by our own heading; a column in doubt or not there is left out. */
  readonly at: ReadonlyMap<string, number>;
  /** Headings that cannot be told, with the sentence why. */
  readonly doubts: ReadonlyMap<string, string>;
}

/** The column of a heading of ours; throws BadInput with what to do when it is missing or in doubt. */
export function columnAt(columns: Columns, heading: string): number {
  const column = columns.at.get(heading);
  if (column !== undefined) return column;
  throw new BadInput(
    columns.doubts.has(heading) ? "column-in-doubt" : "no-column",
    columns.doubts.get(heading) ?? noColumns(columns.tabName, [heading]),
  );
}

export function noColumns(tabName: string, headings: readonly string[]): string {
  const quoted = sayList(
    headings.map((heading) => `“${heading}”`),
    "or",
  );
  return `“${tabName}” has no column ${quoted}. Type the heading over the right column in row 1, or choose “Set up tabs” from the Stillroot menu to have it added.`;
}

/** "A", "Z", "AA". */
export function columnLetters(column: number): string {
  let letters = "";
  for (let rest = column; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}

function textOf(value: unknown): string {
  return typeof value === "string" ? value : typeof value === "number" ? String(value) : "";
}

/** Finds the columns of `spec` on `tab`, whose row 1 is `headingRow`. */
export function findColumns(book: Book, spec: TabSpec, tab: TabPort, headingRow: readonly unknown[]): Columns {
  const keys = headingRow.map((value) => headingKey(textOf(value)));
  const marksHere = book.marks.filter((mark) => mark.tabId === tab.id && mark.column !== null);
  const at = new Map<string, number>();
  const doubts = new Map<string, string>();
  for (const column of spec.columns) {
    const found = findColumn({ spec, column, tabName: tab.name, headingRow, keys, marks: marksHere });
    if (typeof found === "number") at.set(column.heading, found);
    else if (found !== null) doubts.set(column.heading, found);
  }
  doubtShared(tab.name, at, doubts);
  return { tabName: tab.name, at, doubts };
}

/** Whether one of the columns bears none of its own headings, and so was found by its mark alone. */
export function someByMark(spec: TabSpec, { at }: Columns, headingRow: readonly unknown[]): boolean {
  return spec.columns.some(({ heading, aliases = [] }) => {
    const column = at.get(heading);
    const key = headingKey(textOf(headingRow[(column ?? 0) - 1]));
    return column !== undefined && ![heading, ...aliases].some((each) => headingKey(each) === key);
  });
}

interface Search {
  readonly spec: TabSpec;
  readonly column: ColumnSpec;
  readonly tabName: string;
  readonly headingRow: readonly unknown[];
  /** Heading keys of row 1. */
  readonly keys: readonly string[];
  readonly marks: readonly Mark[];
}

/** A column number, a sentence when it is in doubt, or null when there is none. */
function findColumn({ spec, column, tabName, headingRow, keys, marks }: Search): number | string | null {
  const show = (at: number) => `${columnLetters(at)} (“${textOf(headingRow[at - 1])}”)`;
  const withKey = (wanted: readonly string[]) =>
    keys.flatMap((key, index) => (wanted.includes(key) ? [index + 1] : []));
  const ownKeys = [column.heading, ...(column.aliases ?? [])].map(headingKey);
  const othersKeys = spec.columns
    .filter((other) => other !== column)
    .flatMap((other) => [other.heading, ...(other.aliases ?? [])].map(headingKey));
  const ownMark = columnMark(spec.name, column.heading);

  const headed = withKey([headingKey(column.heading)]);
  const marked = marks.flatMap((mark) => (mark.text === ownMark && mark.column !== null ? [mark.column] : []));
  const both = headed.filter((at) => marked.includes(at));
  if (both.length === 1) return both[0] ?? null;
  const same = both.length > 1 ? both : headed;
  if (same.length > 1) {
    return `“${tabName}” has the heading “${column.heading}” in columns ${same.map(columnLetters).join(" and ")}. Rename the one that is not meant.`;
  }
  // A renamed column is still ours, unless its new heading is blank or that of another column of ours.
  const renamed = marked.filter((at) => {
    const key = keys[at - 1] ?? "";
    return key !== "" && (ownKeys.includes(key) || !othersKeys.includes(key));
  });
  const candidates = [...headed, ...renamed];
  if (candidates.length > 1) {
    return `In “${tabName}”, both columns ${candidates.map(show).join(" and ")} could be “${column.heading}”. Give the right one the heading ${column.heading}, and the other a different one.`;
  }
  if (candidates.length === 1) return candidates[0] ?? null;

  const aliased = withKey(ownKeys).filter((at) => !marks.some((mark) => mark.column === at && mark.text !== ownMark));
  if (aliased.length > 1) {
    return `In “${tabName}”, columns ${aliased.map(show).join(" and ")} could all be “${column.heading}”. Give the right one the heading ${column.heading}.`;
  }
  if (aliased.length === 1) return aliased[0] ?? null;
  const lost = marked[0];
  if (lost === undefined) return null;
  const now = textOf(headingRow[lost - 1]);
  return now === ""
    ? `Column ${columnLetters(lost)} of “${tabName}” was “${column.heading}” and has lost its heading. Type ${column.heading} in cell ${columnLetters(lost)}1.`
    : `Column ${columnLetters(lost)} of “${tabName}” was “${column.heading}” and is now headed “${now}”. Type ${column.heading} over the column that holds it.`;
}

/** One column of the sheet cannot be two of ours. */
function doubtShared(tabName: string, at: Map<string, number>, doubts: Map<string, string>): void {
  const headingsAt = new Map<number, string[]>();
  for (const [heading, column] of at) headingsAt.set(column, [...(headingsAt.get(column) ?? []), heading]);
  for (const [column, headings] of headingsAt) {
    if (headings.length < 2) continue;
    for (const heading of headings) {
      at.delete(heading);
      doubts.set(
        heading,
        `Column ${columnLetters(column)} of “${tabName}” could be ${headings.map((each) => `“${each}”`).join(" or ")}. Give each its own column and heading.`,
      );
    }
  }
}
