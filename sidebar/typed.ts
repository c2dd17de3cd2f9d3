/** Numbers and days as typed into a field: the value, or the sentence that says what is wrong. */

import { dayFromIso } from "../src/core/calendar.ts";
import type { Cell } from "../src/core/cell.ts";
import { isBadInput } from "../src/core/errors.ts";
import { readNumber } from "../src/core/reading.ts";

export interface Typed {
  /** null when the field is blank or cannot be read. */
  readonly value: number | null;
  readonly problem: string | null;
}

type NumberRule = Parameters<typeof readNumber>[1];

/** Reads a number in the person's own way of writing it; bounds and unit as in `rule`. */
export function typedNumber(text: string, rule: NumberRule): Typed {
  const cell: Cell = text.trim() === "" ? { kind: "blank" } : { kind: "text", value: text.trim() };
  try {
    return { value: readNumber(cell, rule), problem: null };
  } catch (error) {
    if (isBadInput(error)) return { value: null, problem: error.message };
    throw error;
  }
}

/** The ISO day of a date field, `today` while nothing else was chosen; null when it is no day. */
export function typedDay(text: string, today: string): string | null {
  if (text === "") return today;
  return dayFromIso(text) === null ? null : text;
}
