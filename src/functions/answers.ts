/** From plain answers to what the host puts into cells: days as its dates, no NaN, rows of one width. */

import { BadInput } from "../core/errors.ts";
import type { Answer } from "./record.ts";

/** Makes the host's own date of a calendar day. */
export type DateMaker = (day: number) => unknown;

/** In front of the sentence of a bad row, so that a later formula sees a text and a reader a question. */
const BAD_ROW = "? ";

/** Throws BadInput for a number that is none: it must never look like an answer. */
function hostCell(answer: Answer, dateOf: DateMaker): unknown {
  if (answer === null) return "";
  if (typeof answer === "object") return dateOf(answer.day);
  if (typeof answer === "number" && !Number.isFinite(answer)) {
    throw new BadInput("not-finite", "The result is too large for a number. Check the values it is made from.");
  }
  return answer;
}

/** One row's answer, a cell or a row of cells, as the host's cells. */
export function hostRow(answer: Answer | readonly Answer[], dateOf: DateMaker): readonly unknown[] {
  return isRow(answer) ? answer.map((cell) => hostCell(cell, dateOf)) : [hostCell(answer, dateOf)];
}

function isRow(answer: Answer | readonly Answer[]): answer is readonly Answer[] {
  return Array.isArray(answer);
}

/** The text of a bad row. */
export function badRow(sentence: string): string {
  return BAD_ROW + sentence;
}

/**
 * Rows of one width. A row that ends in the text of a bad row says "? see left" in every further column,
 * because a blank there would be counted as 0 by the next formula.
 */
export function rectangle(rows: readonly (readonly unknown[])[]): unknown[][] {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 1);
  return rows.map((row) => {
    const last = row[row.length - 1];
    const filler = typeof last === "string" && last.startsWith(BAD_ROW) ? badRow("see left") : "";
    return [...row, ...Array.from({ length: width - row.length }, () => filler)];
  });
}
