/** The digits of a label as numbers, with every reading that they allow. */

import { isBadInput } from "./errors.ts";
import { readNumberText } from "./number-text.ts";

export interface Figures {
  /** The numbers that a text may be; none when it is no number at all. */
  readonly values: readonly number[];
  /** There is one reading, and it needs no marks between thousands. */
  readonly sure: boolean;
}

/** Reads the digits of a label. A percent is never above 100, which settles "1,234". */
export function figuresOf(text: string, percent: boolean): Figures {
  const words = { what: "", ...(percent ? { max: 100 } : {}) };
  try {
    return { values: [readNumberText(text, words)], sure: true };
  } catch (error) {
    if (!isBadInput(error)) throw error;
    const unsure = (...values: number[]): Figures => ({ values, sure: false });
    const spaced = text.replace(/[ '’]/g, "");
    if (spaced !== text) return unsure(...figuresOf(spaced, percent).values);
    if (error.code === "two-readings") return unsure(Number(text.replace(",", ".")), Number(text.replace(/[.,]/g, "")));
    // The last mark is the decimal one when it differs from those before it: 1,234.5 and 1.234,5.
    const found = /^(\d{1,3}([.,])\d{3}(?:\2\d{3})*)(?!\2)[.,](\d+)$/.exec(text);
    if (found !== null) return unsure(Number(`${(found[1] as string).replace(/[.,]/g, "")}.${found[3]}`));
    return /^\d{1,3}([.,])\d{3}(?:\1\d{3})+$/.test(text) ? unsure(Number(text.replace(/[.,]/g, ""))) : unsure();
  }
}
