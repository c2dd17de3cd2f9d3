/** Cuts the cells of new rows into blocks that hold nothing but our own columns and blank cells. */

import { BadInput } from "../core/errors.ts";
import { type Columns, columnLetters } from "./find.ts";
import type { PlainCell, TabPort } from "./port.ts";
import type { TabSpec } from "./spec.ts";
import { isBlank } from "./stored.ts";

/** Columns `from` to `to`, both included. */
export interface Segment {
  readonly from: number;
  readonly to: number;
}

export interface Layout {
  readonly log: {
    readonly spec: TabSpec;
    readonly tab: TabPort;
    readonly values: readonly (readonly unknown[])[];
    readonly columns: Columns;
    /** Our columns that may be written. */
    readonly ours: readonly number[];
  };
  readonly writing: {
    readonly records: readonly Readonly<Record<string, PlainCell>>[];
    /** Columns filled by a formula in their heading. */
    readonly computed: ReadonlySet<number>;
  };
  /** The first row to write to. */
  readonly row: number;
  readonly hasFormula: (row: number, column: number) => boolean;
}

/**
 * The blocks, the one with the key column last. A foreign column whose cells in these rows are blank and hold
 * no formula is written along as blank, so that most often there is one block. A formula filled in ahead in a
 * column of ours stays when there is nothing to write over it; otherwise throws BadInput.
 */
export function segmentsOf({ log, writing, row, hasFormula }: Layout): Segment[] {
  const { values, columns, spec } = log;
  const rows = writing.records.map((_, index) => row + index);
  const headingAt = new Map([...columns.at].map(([heading, column]) => [column, heading]));
  const isFree = (column: number) =>
    !writing.computed.has(column) &&
    rows.every((each) => isBlank(values[each - 1]?.[column - 1]) && !hasFormula(each, column));

  const writable = (column: number): "ours" | "blank" | "not" => {
    if (!log.ours.includes(column)) return isFree(column) ? "blank" : "not";
    const planted = rows.find((each) => hasFormula(each, column));
    if (planted === undefined) return "ours";
    const heading = headingAt.get(column) ?? "";
    if (writing.records.every((record) => isBlank(record[heading] ?? null))) return "not";
    throw new BadInput(
      "formula-in-the-way",
      `Cell ${columnLetters(column)}${planted} of “${log.tab.name}” holds a formula where the next “${heading}” belongs. Clear the formulas below the last row of that column, or move them to a column of your own; nothing was written.`,
    );
  };

  const segments: Segment[] = [];
  let open: { from: number; to: number } | null = null;
  for (let column = Math.min(...log.ours); column <= Math.max(...log.ours); column++) {
    const may = writable(column);
    if (may === "not") open = null;
    else if (may === "ours") {
      if (open) open.to = column;
      else {
        open = { from: column, to: column };
        segments.push(open);
      }
    }
  }
  const keyAt = columns.at.get(spec.key) ?? 0;
  const hasKey = (segment: Segment) => (segment.from <= keyAt && keyAt <= segment.to ? 1 : 0);
  return segments.sort((a, b) => hasKey(a) - hasKey(b));
}
