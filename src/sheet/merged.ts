/** Merged cells keep only what is written to their first cell, so nothing is written into them. */

import { BadInput } from "../core/errors.ts";
import { columnLetters } from "./find.ts";
import type { Block, TabPort } from "./port.ts";
import type { Segment } from "./segments.ts";

/** Throws BadInput when cells of the block that lie in one of the column ranges are merged. One call. */
export function refuseMerged(tab: TabPort, block: Block, ranges: readonly Segment[]): void {
  const inTheWay = tab
    .mergedIn(block)
    .find((merged) => ranges.some(({ from, to }) => merged.column <= to && merged.column + merged.columns - 1 >= from));
  if (!inTheWay) return;
  const { row, column, rows, columns } = inTheWay;
  const name = `${columnLetters(column)}${row}:${columnLetters(column + columns - 1)}${row + rows - 1}`;
  throw new BadInput(
    "merged",
    `The cells ${name} of “${tab.name}” are merged, just where something has to be written. Unmerge them, then try again; nothing was written.`,
  );
}
