/** Reads whole tabs out of the sheet, a page at a time. */

import type { RequestFor } from "../src/app/contract.ts";
import { PAGE_ROWS } from "../src/app/requests.ts";
import type { AskSheet } from "./calls.ts";
import type { FileTab } from "./export-file.ts";
import { count } from "./show.ts";

export type TabName = RequestFor<"read page">["tab"];

/** The tabs that hold records, in the order in which they are read and brought back. */
export const RECORD_TABS: readonly TabName[] = [
  "Plants",
  "Events",
  "Feeds",
  "Waters",
  "Targets",
  "Purchases",
  "Batch log",
  "Care log",
  "Meter log",
  "Trials",
  "Claims",
  "Settings",
];

export const CHANGED_MEANWHILE =
  "Somebody changed the sheet while it was being read, so rows could be missing. Nothing was saved; try again.";

/** Tabs that are not there are left out. Throws an Error with a sentence when a page cannot be had. */
export async function readTabs(ask: AskSheet, say: (progress: string) => void): Promise<FileTab[]> {
  const tabs: FileTab[] = [];
  for (const tab of RECORD_TABS) {
    const read = await readTab(ask, tab, (rows) => say(`${tab}, ${count(rows, "row")} so far`));
    if (read !== null) tabs.push(read);
  }
  return tabs;
}

async function page(ask: AskSheet, tab: TabName, from: number) {
  const answer = await ask<"read page">({ ask: "read page", tab, from, rows: PAGE_ROWS });
  if (!answer.ok) throw new Error(answer.sentence);
  return answer.reply;
}

async function readTab(ask: AskSheet, tab: TabName, say: (rows: number) => void): Promise<FileTab | null> {
  say(0);
  const first = await page(ask, tab, 2);
  if (first.tab === null) return null;
  const rows = [...first.rows];
  for (let from = first.next; from !== null; ) {
    say(rows.length);
    const more = await page(ask, tab, from);
    if (JSON.stringify(more.columns) !== JSON.stringify(first.columns)) throw new Error(CHANGED_MEANWHILE);
    rows.push(...more.rows);
    from = more.next;
  }
  if (first.next !== null && JSON.stringify(await page(ask, tab, 2)) !== JSON.stringify(first)) {
    // Sorted, say: then some rows came twice and others not at all.
    throw new Error(CHANGED_MEANWHILE);
  }
  return tableOf(tab, first.columns, rows);
}

/** Columns without heading and content are dropped; one with content only gets a name. */
function tableOf(
  tab: TabName,
  columns: readonly { readonly heading: string; readonly computed: boolean }[],
  rows: readonly FileTab["rows"][number][],
): FileTab {
  const kept = columns.flatMap(({ heading, computed }, index) => {
    const filled = heading !== "" || rows.some((row) => (row[index] ?? null) !== null);
    return filled ? [{ index, computed, heading: heading === "" ? `Column ${index + 1}` : heading }] : [];
  });
  return {
    tab,
    headings: kept.map(({ heading }) => heading),
    rows: rows.map((row) => kept.map(({ index }) => row[index] ?? null)),
    computed: kept.filter(({ computed }) => computed).map(({ heading }) => heading),
  };
}
