/** What a cell of the sample sheet can hold, and a tab as rows of such cells. */

import { dayFromIso } from "../core/calendar.ts";

/** Null is a blank cell. A formula's text starts with "=". */
export type SampleCell = string | number | null | { readonly day: number } | { readonly formula: string };

export type SampleRow = readonly SampleCell[];

export interface SampleTab {
  readonly name: string;
  /** Heading row first; every row as long as the longest. */
  readonly rows: readonly SampleRow[];
}

/** A calendar day as a number, from a text that is known to be right. */
export function day(iso: string): number {
  const found = dayFromIso(iso);
  if (found === null) throw new Error(`"${iso}" is not a day.`);
  return found;
}

/** Rows by heading become rows of cells; a heading that is not a column of the tab is a mistake here, so it throws. */
export function rowsByHeading(
  headings: readonly string[],
  records: readonly Readonly<Record<string, SampleCell>>[],
): SampleRow[] {
  const known = new Set(headings);
  return records.map((record) => {
    const stray = Object.keys(record).find((heading) => !known.has(heading));
    if (stray !== undefined) throw new Error(`"${stray}" is not among ${headings.join(", ")}.`);
    return headings.map((heading) => record[heading] ?? null);
  });
}

/** Rounded to so many decimals, as a person writes a reading down. */
export function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
