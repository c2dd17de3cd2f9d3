/** Reads a number written as text, with a decimal point or comma, and refuses what can be read in two ways. */

import { BadInput } from "./errors.ts";

export interface NumberTextWords {
  /** What the number is, as a sentence begins. */
  readonly what: string;
  readonly unit?: string | undefined;
  /** When the reading with thousands lies outside these, only the other reading is left. */
  readonly min?: number | undefined;
  readonly max?: number | undefined;
}

const unitKey = (text: string) => text.replace(/\s+/g, "").toLowerCase();

/** What the digits would be with the marks between thousands left out: "1,234.5" → "1234.5". */
function ungrouped(digits: string): string {
  const marks = digits.replace(/[\d+-]/g, "");
  const last = marks.slice(-1);
  const isDecimal = /[.,]/.test(last) && marks.indexOf(last) === marks.length - 1;
  const at = isDecimal ? digits.lastIndexOf(last) : digits.length;
  const bare = (part: string) => part.replace(/[^\d+-]/g, "");
  return isDecimal ? `${bare(digits.slice(0, at))}.${bare(digits.slice(at + 1))}` : bare(digits);
}

/**
 * "1.2", "1,2", " 1.2 g/L" (when g/L is the unit asked for), "−0.125". Throws BadInput for "1,234.5" and
 * "1 234" (marks between thousands), "1.234" and "1,234" (two readings, unless `min` and `max` leave only one),
 * "1e3", another unit, and anything that is no number.
 */
export function readNumberText(text: string, words: NumberTextWords): number {
  const { what, unit, min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = words;
  const typed = text.trim();
  const asUnit = unit === undefined ? "a plain number like 1.2" : `a plain number in ${unit}, like 1.2`;
  const [, digits = "", rest = ""] = /^([+-]?(?:[\d.,'’]|\s(?=\d))*)\s*([\s\S]*)$/.exec(typed.replace(/−/g, "-")) ?? [];
  if (!/\d/.test(digits)) throw new BadInput("not-a-number", `${what} is "${typed}". Give ${asUnit}.`);
  if (/^e[+-]?\d/i.test(rest)) {
    throw new BadInput("power-of-ten", `${what} is "${typed}". Write the number out, without a power of ten.`);
  }
  if (rest !== "" && (unit === undefined || unitKey(rest) !== unitKey(unit))) {
    throw new BadInput("other-unit", `${what} is "${typed}". Give ${asUnit}.`);
  }
  if (!/^[+-]?(?:\d+[.,]?\d*|[.,]\d+)$/.test(digits)) {
    throw new BadInput(
      "grouped",
      `${what} is "${typed}". Leave out marks and spaces between the digits, and use one decimal point: ${ungrouped(digits)}.`,
    );
  }
  const [, sign = "", whole = "", decimals = ""] = /^([+-]?)(\d*)[.,]?(\d*)$/.exec(digits) ?? [];
  const value = Number(digits.replace(",", "."));
  if (decimals.length === 3 && /^[1-9]\d{0,2}$/.test(whole)) {
    const thousands = Number(sign + whole + decimals);
    if (thousands >= min && thousands <= max) {
      throw new BadInput(
        "two-readings",
        `${what} is "${typed}", which can be read in two ways. Type ${sign}${whole}.${decimals}0 or ${thousands}.`,
      );
    }
  }
  if (!Number.isFinite(value)) throw new BadInput("not-a-number", `${what} has too many digits. Give ${asUnit}.`);
  return value;
}
