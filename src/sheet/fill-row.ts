/** Fills cells of one row that stands in a log already: never over a formula, never into merged cells. */

import { BadInput } from "../core/errors.ts";
import type { Log } from "./append.ts";
import { columnLetters } from "./find.ts";
import { refuseMerged } from "./merged.ts";
import { marksHold, rearranged, settle, stillFree } from "./settle.ts";

export interface Filling {
  readonly heading: string;
  /** From 1. */
  readonly column: number;
  readonly value: number | string;
}

export interface FilledRow {
  /** From 1. */
  readonly row: number;
  /** What stands under the key of the tab in that row. */
  readonly id: string;
  readonly fillings: readonly Filling[];
}

/**
 * Throws BadInput before anything is written. Whoever calls has seen that the cells are blank, in the log as it was read
 * within the same lock. What landed elsewhere, since somebody sorted meanwhile, is put right.
 */
export function fillRow(log: Log, { row, id, fillings }: FilledRow): void {
  const { tab, spec } = log;
  const sorted = [...fillings].sort((a, b) => a.column - b.column);
  const first = sorted[0];
  const last = sorted[sorted.length - 1];
  if (!first || !last) return;
  const columns = last.column - first.column + 1;
  const formulas = tab.readFormulas({ row, column: first.column, rows: 1, columns })[0] ?? [];
  const planted = sorted.find(({ column }) => (formulas[column - first.column] ?? "") !== "");
  if (planted) {
    throw new BadInput(
      "formula-in-the-way",
      `Cell ${columnLetters(planted.column)}${row} of “${tab.name}” holds a formula where “${planted.heading}” belongs. Clear it, then try again; nothing was written.`,
    );
  }
  refuseMerged(
    tab,
    { row, column: first.column, rows: 1, columns },
    sorted.map(({ column }) => ({ from: column, to: column })),
  );
  if (!marksHold(log) || !stillFree(log, row, 1)) throw rearranged(log);
  if (columns === sorted.length) tab.write(row, first.column, [sorted.map(({ value }) => value)]);
  else for (const { column, value } of sorted) tab.write(row, column, [[value]]);
  const record = Object.fromEntries(fillings.map(({ heading, value }) => [heading, value]));
  settle(log, { records: [{ ...record, [spec.key]: id }], rows: [row], headings: Object.keys(record), fresh: false });
}
