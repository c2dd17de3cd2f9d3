/**
 * Looks after a write whether it landed where it belongs: our lock holds other scripts back, not people's hands,
 * and a column inserted or rows sorted between two of our calls shift what a row and a column number mean.
 */

import { BadInput } from "../core/errors.ts";
import type { Log, SheetRecord } from "./append.ts";
import { findColumns, openBook } from "./find.ts";
import type { PlainCell } from "./port.ts";
import { type Repair, repairOf } from "./repair.ts";
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
const ROUNDS = 5;

/**
 * One call, or two on a long tab, when nothing moved. Otherwise puts right what landed elsewhere, and gives the records that have to be
 * appended again because their row was somebody else's. `log` is the tab as it was read before the write. Throws
 * BadInput when it cannot be made sure.
 */
export function settle(log: Log, landing: Landing): readonly SheetRecord[] {
  if (landed(log, landing)) return [];
  const put: PlainCell[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const repair = repairOf(log, landing, { now: readAgain(log), put });
    mend(log, repair, put);
    if (repair.refused) break;
    if (repair.cells.length === 0) return repair.again;
  }
  throw new BadInput(
    "moved",
    `“${log.tab.name}” was being rearranged while this was written. Look at its last rows, then try again: what is there already is not written twice.`,
  );
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

/** The tab as it is now; the same tab, whatever it is called by now. */
function readAgain({ book: { workbook }, spec, tab }: Log): Log {
  const book = openBook(workbook, [spec.name]);
  const values = tab.readAll();
  return { book, spec, tab, values, columns: findColumns(book, spec, tab, values[0] ?? []) };
}

function mend({ tab }: Log, { cells }: Repair, put: PlainCell[]): void {
  for (const { row, column, value } of cells) {
    if (!isBlank(value)) put.push(value);
    tab.write(row, column, [[value]]);
  }
}
