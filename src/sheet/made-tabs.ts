/** Tabs that the add-on makes besides those it keeps records on: boards, and pages to print. Found by a mark. */

import { nameKey } from "../core/cell.ts";
import { columnLetters } from "./find.ts";
import type { Mark, TabPort, WorkbookPort } from "./port.ts";

const MADE = "made:";

export const madeMark = (name: string): string => `${MADE}${name}`;
export const isMadeMark = (text: string): boolean => text.startsWith(MADE);

/** A workbook with its tabs and the marks of those that the add-on made. */
export interface MadeBook {
  readonly workbook: WorkbookPort;
  readonly tabs: readonly TabPort[];
  readonly marks: readonly Mark[];
}

/** The tab made under this name, however it is called or placed now; else one that bears the name; else null. */
export function findMade({ tabs, marks }: MadeBook, name: string): { tab: TabPort; marked: boolean } | null {
  const marked = tabs.filter(({ id }) =>
    marks.some((mark) => mark.tabId === id && mark.column === null && mark.text === madeMark(name)),
  );
  const named = (among: readonly TabPort[]) => among.find((tab) => nameKey(tab.name) === nameKey(name));
  // A copied tab may carry its original's mark: then the one that still bears the name is meant.
  const ours = named(marked) ?? marked[0];
  if (ours) return { tab: ours, marked: true };
  const there = named(tabs);
  return there ? { tab: there, marked: false } : null;
}

/** A tab's name as a formula writes it. */
export function quotedTab(name: string): string {
  return `'${name.split("'").join("''")}'`;
}

/** "'Care log'!A1:L": columns of a tab from `firstRow` to its end. */
export function openRange(tabName: string, columns: readonly number[], firstRow: number): string {
  const [from, to] = [columnLetters(Math.min(...columns)), columnLetters(Math.max(...columns))];
  return `${quotedTab(tabName)}!${from}${firstRow}:${to}`;
}

/** "Settings!$B$2". */
export function fixedCell(tabName: string, column: number, row: number): string {
  return `${quotedTab(tabName)}!$${columnLetters(column)}$${row}`;
}
