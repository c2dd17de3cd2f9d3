/** Ranges of the sample sheet written down by tab and heading, so that a moved column moves in every formula. */

import type { TabName } from "../sheet/spec.ts";
import { tabSpec } from "../sheet/tabs.ts";

/** "A" for 0, "AA" for 26. */
export function columnLetters(index: number): string {
  const rest = Math.floor(index / 26);
  return (rest > 0 ? columnLetters(rest - 1) : "") + String.fromCharCode(65 + (index % 26));
}

function letters(tab: TabName, heading: string): string {
  const at = tabSpec(tab).columns.findIndex((column) => column.heading === heading);
  if (at === -1) throw new Error(`${tab} has no column ${heading}.`);
  return columnLetters(at);
}

/** A tab's name as a formula writes it. */
export function quotedTab(tab: string): string {
  return /^[A-Za-z]+$/.test(tab) ? tab : `'${tab}'`;
}

export interface Span {
  readonly from: string;
  readonly to: string;
  /** Rows from 1; without `lastRow` the range is open at the bottom. */
  readonly firstRow?: number;
  readonly lastRow?: number;
}

/** "'Care log'!B1:D" from { from: "Date", to: "Event" }. */
export function rangeOn(tab: TabName, { from, to, firstRow = 1, lastRow }: Span): string {
  return `${quotedTab(tab)}!${letters(tab, from)}${firstRow}:${letters(tab, to)}${lastRow ?? ""}`;
}

/** All columns of a tab. */
export function wholeTab(tab: TabName, lastRow?: number): string {
  const { columns } = tabSpec(tab);
  const [first, last] = [columns[0], columns[columns.length - 1]];
  if (first === undefined || last === undefined) throw new Error(`${tab} has no columns.`);
  return rangeOn(tab, { from: first.heading, to: last.heading, ...(lastRow === undefined ? {} : { lastRow }) });
}
