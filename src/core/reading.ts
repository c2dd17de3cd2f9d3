/** Reads what a person put into a cell: numbers in their own way of writing, days, yes or no, choices. */

import { dayFromIso, isoFromDay } from "./calendar.ts";
import { type Cell, headingKey } from "./cell.ts";
import { BadInput } from "./errors.ts";
import { readNumberText } from "./number-text.ts";
import { sayGiven, sayList } from "./saying.ts";

export { readNumberText } from "./number-text.ts";

export interface NumberWords {
  /** What the number is, as a sentence begins: "Ca in row 7 of Waters". */
  readonly what: string;
  /** As written after a number, "mg/L"; a text that ends in it is accepted. */
  readonly unit?: string | undefined;
  readonly min?: number | undefined;
  readonly max?: number | undefined;
}

function accepted({ unit, min, max }: NumberWords): string {
  const after = unit === undefined ? "" : ` ${unit}`;
  if (min !== undefined && max !== undefined) return `a number from ${min} to ${max}${after}`;
  if (min !== undefined) return `a number of ${min}${after} or more`;
  if (max !== undefined) return `a number of at most ${max}${after}`;
  return unit === undefined ? "a number" : `a number in ${unit}`;
}

/** Refuses a number outside its bounds, naming it and them; gives it back otherwise. */
export function checkNumber(value: number, words: NumberWords): number {
  const { what, min, max } = words;
  if (!Number.isFinite(value)) throw new BadInput("not-a-number", `${what} is no number. Give ${accepted(words)}.`);
  if ((min !== undefined && value < min) || (max !== undefined && value > max)) {
    const unit = words.unit === undefined ? "" : ` ${words.unit}`;
    throw new BadInput("out-of-bounds", `${what} is ${sayGiven(value)}${unit}. Give ${accepted(words)}.`);
  }
  return value;
}

function errorCell(what: string, text: string): BadInput {
  return new BadInput("error-cell", `${what} is an error cell (${text}). Mend that cell or clear it.`);
}

/** A number, or null for a blank cell. Throws BadInput for anything else, and for a number outside its bounds. */
export function readNumber(cell: Cell, words: NumberWords): number | null {
  const { what } = words;
  switch (cell.kind) {
    case "blank":
      return null;
    case "number":
      return checkNumber(cell.value, words);
    case "text":
      return checkNumber(readNumberText(cell.value, words), words);
    case "boolean":
      throw new BadInput("not-a-number", `${what} is ${cell.value ? "yes" : "no"}. Give ${accepted(words)}.`);
    case "day":
      throw new BadInput(
        "date-for-number",
        `${what} is the date ${isoFromDay(cell.day)}. Give ${accepted(words)}; if you typed one, the sheet took it for a date: set the cell's format to number and type it again.`,
      );
    case "error":
      throw errorCell(what, cell.text);
  }
}

/**
 * A day number, or null for a blank cell. Takes a date cell or an ISO text; a text that only looks like a
 * date could be read in two ways (3/4 is March or April) and is refused.
 */
export function readDay(cell: Cell, what: string): number | null {
  switch (cell.kind) {
    case "blank":
      return null;
    case "day":
      return cell.day;
    case "text": {
      const day = dayFromIso(cell.value);
      if (day !== null) return day;
      const why = /^\d{4}-\d{2}-\d{2}$/.test(cell.value) ? ", a day that does not exist" : "";
      throw new BadInput(
        "not-a-day",
        `${what} is "${cell.value}"${why}. Give a date, or a text like 2026-03-01 (year, month, day).`,
      );
    }
    case "number":
      throw new BadInput(
        "not-a-day",
        `${what} is the number ${sayGiven(cell.value)}. Give a date: set the cell's format to date, or type it like 2026-03-01.`,
      );
    case "boolean":
      throw new BadInput("not-a-day", `${what} is ${cell.value ? "yes" : "no"}. Give a date like 2026-03-01.`);
    case "error":
      throw errorCell(what, cell.text);
  }
}

/** Yes or no from a tick box or a word, or null for a blank cell. Throws BadInput for anything else. */
export function readYesNo(cell: Cell, what: string): boolean | null {
  if (cell.kind === "blank") return null;
  if (cell.kind === "boolean") return cell.value;
  if (cell.kind === "error") throw errorCell(what, cell.text);
  if (cell.kind === "text") {
    const word = cell.value.trim().toLowerCase();
    if (word === "yes" || word === "y" || word === "true") return true;
    if (word === "no" || word === "n" || word === "false") return false;
  }
  throw new BadInput("not-yes-or-no", `${what} is ${quoted(cell)}. Write yes or no.`);
}

export interface ChoiceWords<Choice extends string> {
  readonly what: string;
  readonly choices: readonly Choice[];
}

/** One of the choices, case and spaces ignored, or null for a blank cell. Throws BadInput naming all choices. */
export function readChoice<Choice extends string>(cell: Cell, words: ChoiceWords<Choice>): Choice | null {
  if (cell.kind === "blank") return null;
  if (cell.kind === "error") throw errorCell(words.what, cell.text);
  if (cell.kind === "text" || cell.kind === "number") {
    const key = headingKey(String(cell.value));
    for (const choice of words.choices) if (headingKey(choice) === key) return choice;
  }
  throw new BadInput("unknown-choice", `${words.what} is ${quoted(cell)}. Give ${sayList(words.choices, "or")}.`);
}

/** A text, or null for a blank cell; a number stands as it is written (a plant may be called 12). */
export function readText(cell: Cell, what: string): string | null {
  switch (cell.kind) {
    case "blank":
      return null;
    case "text":
      return cell.value;
    case "number":
      return String(cell.value);
    case "error":
      throw errorCell(what, cell.text);
    default:
      throw new BadInput("not-a-text", `${what} is ${quoted(cell)}. Give it as text, with ' in front if need be.`);
  }
}

function quoted(cell: Cell): string {
  switch (cell.kind) {
    case "day":
      return `the date ${isoFromDay(cell.day)}`;
    case "text":
      return `"${cell.value}"`;
    case "number":
      return sayGiven(cell.value);
    case "boolean":
      return cell.value ? "a ticked box" : "an empty tick box";
    case "error":
      return cell.text;
    case "blank":
      return "blank";
  }
}
