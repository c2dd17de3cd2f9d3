/**
 * Looks after a write whether it landed where it belongs: our lock holds other scripts back, not people's hands,
 * and a column inserted or rows sorted between two of our calls shift what a row and a column number mean.
 */

import { BadInput } from "../core/errors.ts";
import type { Log, SheetRecord } from "./append.ts";
import { findColumns, openBook, someByMark } from "./find.ts";
import type { PlainCell, TabPort } from "./port.ts";
import { type CellToMend, type Repair, repairOf } from "./repair.ts";
import { isBlank, sameCell, sameRaw } from "./stored.ts";

/** What was written. */
export interface Landing {
  readonly records: readonly SheetRecord[];
  /** The row each record was written to, counted from 1. */
  readonly rows: readonly number[];
  /** Headings whose cells were written; for rows that were there already, those that hold something in a record. */
  readonly headings: readonly string[];
  /** False where cells of rows that were there already were filled. */
  readonly fresh: boolean;
}

/** Down to this row it costs less to read all that is above than to read the headings apart. */
const FEW_ROWS = 100;

/** More than this, and people are rearranging the tab faster than it can be put right. */
const ROUNDS = 8;

/**
 * One call, or two on a long tab, when nothing moved. Otherwise puts right what landed elsewhere, and gives the records that have to be
 * appended again because their row was somebody else's. `log` is the tab as it was read before the write. Throws
 * BadInput when it cannot be made sure.
 */
export function settle(log: Log, landing: Landing): readonly SheetRecord[] {
  if (landed(log, landing)) return [];
  const put: PlainCell[] = [];
  const restored = new Set<number>();
  for (let round = 0; round < ROUNDS; round++) {
    const now = readAgain(log);
    const repair = repairOf(log, landing, { now, put, restored });
    mend(now, repair, put);
    if (repair.cells.length > 0) continue;
    if (repair.refused) break;
    return repair.again;
  }
  throw rearranged(log);
}

export function rearranged({ tab }: Log): BadInput {
  return new BadInput(
    "moved",
    `“${tab.name}” was being rearranged while this was written. Look at its last rows, then try again: what is there already is not written twice.`,
  );
}

/**
 * Marks are read in one call and headings in the next. A column that was found by its mark alone is sure when the
 * marks still are where they were; one call, and none where every column bears a heading of its own.
 */
export function marksHold({ book, spec, tab, values, columns }: Log): boolean {
  if (!someByMark(spec, columns, values[0] ?? [])) return true;
  const now = placesOf(openBook(book.workbook, [spec.name]).marks, tab);
  return placesOf(book.marks, tab).every((place) => now.includes(place));
}

/**
 * Whether the rows about to be written, and the one above, still are as they were read, which on a long log is some
 * seconds ago. One call.
 */
export function stillFree({ tab, values, columns }: Log, row: number, count: number): boolean {
  const width = Math.max(values[0]?.length ?? 0, ...columns.at.values());
  const first = row <= FEW_ROWS ? 1 : row - 1;
  const now = tab.readBlock({ row: first, column: 1, rows: row + count - first, columns: width });
  // Somebody else's formula may show something else at any time.
  const ours = new Set(columns.at.values());
  for (let at = Math.max(first, row - 1); at < row + count; at++) {
    for (let column = 1; column <= width; column++) {
      const was = values[at - 1]?.[column - 1];
      const matters = ours.has(column) || (at >= row && isBlank(was));
      if (matters && !sameRaw(now[at - first]?.[column - 1], was)) return false;
    }
  }
  return [...ours].every((column) => first > 1 || sameRaw(now[0]?.[column - 1], values[0]?.[column - 1]));
}

function landed({ tab, spec, values, columns, book }: Log, { records, rows, headings, fresh }: Landing): boolean {
  const width = Math.max(values[0]?.length ?? 0, ...columns.at.values());
  const top = Math.min(...rows);
  const first = Math.max(2, fresh ? top - 1 : top);
  const last = Math.max(...rows);
  const from = first <= FEW_ROWS ? 1 : first;
  const read = tab.readBlock({ row: from, column: 1, rows: last - from + 1, columns: width });
  const [headingRow = []] = from === 1 ? read : tab.readBlock({ row: 1, column: 1, rows: 1, columns: width });
  for (let at = 0; at < width; at++) if (!sameRaw(headingRow[at], values[0]?.[at])) return false;
  const block = read.slice(first - from);
  // The row above shows whether rows were inserted further up.
  const isShifted = [...columns.at.values()].some((at) => !sameRaw(block[0]?.[at - 1], values[first - 1]?.[at - 1]));
  if (first < top && isShifted) return false;
  return records.every((record, index) => {
    const cells = block[(rows[index] ?? 0) - first] ?? [];
    return [spec.key, ...headings].every((heading) =>
      sameCell(cells[(columns.at.get(heading) ?? 0) - 1], record[heading] ?? null, book.workbook),
    );
  });
}

/**
 * The tab as it is now; the same tab, whatever it is called by now. Marks are read before and after the cells, until
 * they agree: a heading that was deleted leaves nothing but its mark to go by.
 */
function readAgain(log: Log): Log {
  const { spec, tab } = log;
  const { workbook } = log.book;
  let book = openBook(workbook, [spec.name]);
  for (let round = 0; round < ROUNDS; round++) {
    const values = tab.readAll();
    const after = openBook(workbook, [spec.name]);
    const agree = String(placesOf(book.marks, tab)) === String(placesOf(after.marks, tab));
    book = after;
    if (agree) return { book, spec, tab, values, columns: findColumns(book, spec, tab, values[0] ?? []) };
  }
  throw rearranged(log);
}

/** Where the marks of a tab are. */
function placesOf(marks: Log["book"]["marks"], tab: TabPort): string[] {
  return marks.flatMap(({ tabId, column, text }) => (tabId === tab.id ? [`${column} ${text}`] : [])).sort();
}

/**
 * One write for cells of a row that lie side by side, so that as little as possible can come in between, and a look at
 * the row before each: when it has moved on, the next round sees to it.
 */
function mend({ tab, values, book }: Log, { cells }: Repair, put: PlainCell[]): void {
  const width = values[0]?.length ?? 0;
  const wrote = new Map<string, PlainCell>();
  const isAsRead = (row: number) => {
    const [there = []] = tab.readBlock({ row, column: 1, rows: 1, columns: width });
    return Array.from({ length: width }, (_, at) => at).every((at) => {
      const ours = wrote.get(`${row},${at + 1}`);
      return ours === undefined ? sameRaw(there[at], values[row - 1]?.[at]) : sameCell(there[at], ours, book.workbook);
    });
  };
  const sorted = [...cells].sort((a, b) => a.row - b.row || a.column - b.column);
  let run: CellToMend[] = [];
  for (const [index, cell] of sorted.entries()) {
    run.push(cell);
    const next = sorted[index + 1];
    if (next && next.row === cell.row && next.column === cell.column + 1) continue;
    if (!isAsRead(cell.row)) return;
    for (const { row, column, value } of run) {
      put.push(value);
      wrote.set(`${row},${column}`, value);
    }
    tab.write(cell.row, cell.column - run.length + 1, [run.map(({ value }) => value)]);
    run = [];
  }
}
