/** A tab that holds a page to print: made over as long as nobody typed on it, otherwise kept, and another one made. */

import { fnv1a64 } from "../core/fnv.ts";
import { openBook } from "./find.ts";
import { isMadeMark, madeMark } from "./made-tabs.ts";
import type { PageLook, PlainCell, TabPort, WorkbookPort } from "./port.ts";
import { isBlank } from "./stored.ts";

export const SITTERS_PAGE = "Sitter’s page";

export interface PageContent {
  readonly cells: readonly (readonly PlainCell[])[];
  readonly widths: PageLook["widths"];
  readonly boldRows: PageLook["boldRows"];
  readonly wrapped: PageLook["wrapped"];
}

export interface WrittenPage {
  /** The tab that holds the page now. */
  readonly tab: string;
  /** An earlier one that somebody had typed on, and that was kept; null for none. */
  readonly kept: string | null;
}

interface Pages {
  /** The newest that was made, and its number. */
  readonly newest: { readonly tab: TabPort; readonly number: number } | null;
  readonly tabs: readonly TabPort[];
}

const numbered = (number: number): string => (number === 1 ? SITTERS_PAGE : `${SITTERS_PAGE} ${number}`);

function findPages(workbook: WorkbookPort): Pages {
  const { tabs, marks } = openBook(workbook, [], (text) => isMadeMark(text) && text.startsWith(madeMark(SITTERS_PAGE)));
  let newest: Pages["newest"] = null;
  for (const { tabId, column, text } of marks) {
    const tab = tabs.find(({ id }) => id === tabId);
    const number = text === madeMark(SITTERS_PAGE) ? 1 : Number(text.slice(madeMark(SITTERS_PAGE).length));
    if (tab && column === null && number > (newest?.number ?? 0)) newest = { tab, number };
  }
  return { newest, tabs };
}

/** Values as one text, whatever blank cells stand at their ends. */
function contentMark(values: readonly (readonly unknown[])[]): string {
  const rows = values.map((row) => {
    const cells = row.map((cell) => (isBlank(cell) ? "" : cell));
    while (cells.length > 0 && cells[cells.length - 1] === "") cells.pop();
    return cells;
  });
  while (rows.length > 0 && rows[rows.length - 1]?.length === 0) rows.pop();
  const text = JSON.stringify(rows);
  const codes = Array.from({ length: text.length }, (_, at) => text.charCodeAt(at));
  return fnv1a64(codes.flatMap((code) => [code & 0xff, code >> 8]));
}

const NOTE_START =
  "Made by Stillroot, and made over as long as nobody types on this tab. Otherwise it is kept, and another is made.";

/** Marks of the content in the note on A1: of what is to be written and of what stood there before, in case the writing fails. */
const noteWith = (marks: readonly string[]): string => `${NOTE_START} ${[...new Set(marks)].join(" ")}`;

const blankTab = (values: readonly (readonly unknown[])[]): boolean => values.every((row) => row.every(isBlank));

/** Throws BadInput "busy" only. What somebody typed is never written over. */
export function writeSittersPage(workbook: WorkbookPort, page: PageContent): WrittenPage {
  return workbook.locked(() => {
    const { newest, tabs } = findPages(workbook);
    const before = newest?.tab.readAll() ?? [];
    const note = newest ? (workbook.setup(newest.tab).look(1).notes[0] ?? "") : "";
    const untouched = newest !== null && (blankTab(before) || note.split(" ").includes(contentMark(before)));
    let target = newest?.tab;
    if (!target || !untouched) {
      const made = freshTab(workbook, tabs, (newest?.number ?? 0) + 1);
      target = made.tab;
      workbook.setup(target).mark(null, madeMark(made.name));
    }
    const old = untouched ? before : [];
    const setup = workbook.setup(target);
    setup.note(1, noteWith([contentMark(page.cells), ...(old.length === 0 ? [] : [contentMark(old)])]));
    const columns = Math.max(
      page.widths.length,
      ...page.cells.map((row) => row.length),
      ...old.map((row) => row.length),
    );
    const rows = Math.max(page.cells.length, old.length);
    const cells = Array.from({ length: rows }, (_, row) =>
      Array.from({ length: columns }, (_, column): PlainCell => page.cells[row]?.[column] ?? null),
    );
    target.write(1, 1, cells);
    setup.layOut({ widths: page.widths, rows, boldRows: page.boldRows, wrapped: page.wrapped });
    return { tab: target.name, kept: newest !== null && !untouched ? newest.tab.name : null };
  });
}

/** A new tab under the first free name; one of that name that was left empty by an earlier try is taken. */
function freshTab(workbook: WorkbookPort, tabs: readonly TabPort[], from: number): { tab: TabPort; name: string } {
  for (let number = from; ; number++) {
    const name = numbered(number);
    const there = tabs.find((tab) => tab.name.toLowerCase() === name.toLowerCase());
    if (!there) return { tab: workbook.addTab(name), name };
    if (blankTab(there.readAll())) return { tab: there, name };
  }
}

/** The newest page as it stands now, with what was typed on it; null where there is none. */
export function readSittersPage(workbook: WorkbookPort): { tab: string; rows: readonly (readonly unknown[])[] } | null {
  const { newest } = findPages(workbook);
  return newest && { tab: newest.tab.name, rows: newest.tab.readAll() };
}
