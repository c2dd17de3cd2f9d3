/** Reads a tab as far as its marked columns go, which costs one call instead of two. */

import { type Book, type Columns, findColumns } from "./find.ts";
import type { TabPort } from "./port.ts";
import type { TabSpec } from "./spec.ts";

export interface OpenTab {
  readonly tab: TabPort;
  readonly values: readonly (readonly unknown[])[];
  readonly columns: Columns;
}

/**
 * Reads up to the last marked column of the tab; when `find` does not find all it looks for there, or nothing
 * is marked, reads everything. So a tab as the set-up left it costs one call, in whatever order its columns
 * stand, and any other tab up to three.
 */
export function readMarked(
  book: Book,
  tab: TabPort,
  find: (headingRow: readonly unknown[]) => { readonly columns: Columns; readonly complete: boolean },
): OpenTab {
  const marked = Math.max(0, ...book.marks.map((mark) => (mark.tabId === tab.id ? (mark.column ?? 0) : 0)));
  if (marked > 0) {
    const values = tab.readColumns(marked);
    const { columns, complete } = find(values[0] ?? []);
    if (complete) return { tab, values, columns };
  }
  const values = tab.readAll();
  return { tab, values, columns: find(values[0] ?? []).columns };
}

/** A tab of the add-on with its rows. */
export function readTab(book: Book, spec: TabSpec, tab: TabPort): OpenTab {
  return readMarked(book, tab, (headingRow) => {
    const columns = findColumns(book, spec, tab, headingRow);
    return { columns, complete: columns.at.size === spec.columns.length };
  });
}
