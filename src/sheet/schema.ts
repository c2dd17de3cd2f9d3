/** Which version of its columns a tab was set up with: an older one is brought up to date, a newer one left alone. */

import { BadInput } from "../core/errors.ts";
import { type Book, type Columns, findColumns, findTab, openBook, schemaMark } from "./find.ts";
import type { TabPort, WorkbookPort } from "./port.ts";
import { TAB_NAMES, type TabName, type TabSpec } from "./spec.ts";
import { TABS } from "./tabs.ts";

/**
 * 1: tabs as first published, which bear no version. 2: rows that correct or take back others (Corrects), planned
 * batches (State), Purchases and Meter log, further forms on labels.
 */
export const SCHEMA = 2;

/** The highest version on the tab; 1 where none is. */
export function schemaOf(book: Book, tab: TabPort, name: TabName): number {
  const start = schemaMark(name, "");
  const versions = book.marks.flatMap(({ tabId, column, text }) => {
    const version =
      tabId === tab.id && column === null && text.startsWith(start) ? Number(text.slice(start.length)) : 0;
    return Number.isInteger(version) ? [version] : [];
  });
  return Math.max(1, ...versions);
}

/** Why a tab of a newer version is not written to, or null. */
export function newerTab(book: Book, tab: TabPort, name: TabName): string | null {
  const version = schemaOf(book, tab, name);
  if (version <= SCHEMA) return null;
  return `“${tab.name}” was set up by a newer Stillroot (its columns are of version ${version}, this one knows ${SCHEMA}). It is left alone. Take the newer script, then reload the browser page.`;
}

export function refuseNewer(book: Book, tab: TabPort, name: TabName): void {
  const sentence = newerTab(book, tab, name);
  if (sentence !== null) throw new BadInput("newer-tab", `${sentence} Nothing was written.`);
}

/** What the set-up would do to tabs that are there. */
export interface SetupPlan {
  readonly newTabs: readonly TabName[];
  readonly older: readonly { readonly tab: string; readonly version: number; readonly headings: readonly string[] }[];
}

function missingHeadings(spec: TabSpec, { at, doubts }: Columns): string[] {
  return spec.columns.map(({ heading }) => heading).filter((heading) => !at.has(heading) && !doubts.has(heading));
}

/** Reads and changes nothing. `leaveOut`: tabs that the set-up passes over. */
export function planSetUp(workbook: WorkbookPort, leaveOut: ReadonlySet<TabName>): SetupPlan {
  const book = openBook(workbook, TAB_NAMES);
  const newTabs: TabName[] = [];
  const older: SetupPlan["older"][number][] = [];
  for (const spec of TABS) {
    if (leaveOut.has(spec.name)) continue;
    const tab = findTab(book, spec);
    if (!tab) {
      newTabs.push(spec.name);
      continue;
    }
    const version = schemaOf(book, tab, spec.name);
    if (version > SCHEMA) continue;
    const [headingRow = []] = tab.readAll();
    const headings = missingHeadings(spec, findColumns(book, spec, tab, headingRow));
    if (version < SCHEMA || headings.length > 0) older.push({ tab: tab.name, version, headings });
  }
  return { newTabs, older };
}

/** The plan in words, to be agreed to; "" when nothing that is there would be changed. */
export function planWords({ newTabs, older }: SetupPlan): string {
  if (older.length === 0) return "";
  const lines = older.map(({ tab, headings }) =>
    headings.length === 0
      ? `“${tab}”: no new headings, only the version of its columns is noted.`
      : `“${tab}”: the headings ${headings.join(", ")} go to the right of what is there.`,
  );
  const added = newTabs.length === 0 ? [] : [`New tabs: ${newTabs.join(", ")}.`];
  return [
    "These tabs are of an older version and would be brought up to date:",
    ...lines,
    ...added,
    "Cells that hold something stay as they are, and rows keep their places. Go on?",
  ].join("\n\n");
}
