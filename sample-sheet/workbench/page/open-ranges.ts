/**
 * Open ranges (A2:A), which the grid's engine does not know: closed at a row no sheet reaches when a formula
 * enters, read by the engine as "to the bottom of the sheet", and shown to a person in their open form.
 */

import { BaseReferenceObject } from "@univerjs/preset-sheets-core";

/** The last row the engine can name; a range that ends past FAR_ROW is an open one, moved by inserts or not. */
const LAST_ROW = 1_048_576;
const FAR_ROW = 1_000_000;

/** Texts and quoted tab names of a formula are not references. */
const QUOTED = /("(?:[^"]|"")*"|'(?:[^']|'')*')/;

function outsideQuotes(formula: string, change: (part: string) => string): string {
  return formula
    .split(QUOTED)
    .map((part, index) => (index % 2 === 1 ? part : change(part)))
    .join("");
}

export function closeRanges(formula: string): string {
  return outsideQuotes(formula, (part) =>
    part
      .replace(/(?<![\w.$])(\$?[A-Z]{1,3}\$?\d+:\$?[A-Z]{1,3})(?![\w.$(])/gi, (_all, open: string) => open + LAST_ROW)
      .replace(/(:\$?[A-Z]{1,3}\$?)(\d{7,})(?!\w)/gi, (all, start: string, row: string) =>
        Number(row) >= FAR_ROW ? start + LAST_ROW : all,
      ),
  );
}

export function openRanges(formula: string): string {
  return outsideQuotes(formula, (part) =>
    part.replace(/(:\$?[A-Z]{1,3})\$?(\d{7,})(?!\w)/gi, (all, start: string, row: string) =>
      Number(row) >= FAR_ROW ? start : all,
    ),
  );
}

/** Teaches the engine's references to end an open range at the bottom of its sheet. Once, before any formula runs. */
export function readOpenRangesToTheBottom(): void {
  const prototype = BaseReferenceObject.prototype;
  const position = prototype.getRangePosition;
  const rowCount = prototype.getRowCount;
  prototype.getRangePosition = function (this: BaseReferenceObject) {
    const range = position.call(this);
    if (range.endRow + 1 < FAR_ROW) return range;
    return { ...range, endRow: Math.max(range.startRow, this.getActiveSheetRowCount() - 1) };
  };
  prototype.getRowCount = function (this: BaseReferenceObject) {
    if (this.getRangeData().endRow + 1 < FAR_ROW) return rowCount.call(this);
    const { startRow, endRow } = this.getRangePosition();
    return endRow - startRow + 1;
  };
}
