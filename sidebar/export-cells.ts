/**
 * Cells as CSV fields and back. A text is written so that no program that opens the file takes it for a formula,
 * a number or a date: with an apostrophe in front, as OWASP advises against formula injection ("CSV Injection",
 * owasp.org: = + - @, tab and carriage return at the start, also after spaces and in full width). The apostrophe
 * is taken off again on the way back, so every cell comes back as it was.
 */

import { dayFromIso } from "../src/core/calendar.ts";

/** As cells travel between sheet and panel. */
export type Travelling = string | number | boolean | null | { readonly day: string };

/** U+FF1D, U+FF0B, U+FF0D and U+FF20 are the same signs in full width, which some programs read alike. */
const STARTS_FORMULA = /^\s*[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]/;
const NUMBER = /^-?\d+(?:\.\d+)?(?:e[+-]?\d+)?$/i;
const DAY = /^\d{4}-\d{2}-\d{2}$/;
const YES_NO = /^(?:true|false)$/i;

function looksOtherwise(text: string): boolean {
  return (
    text.startsWith("'") ||
    STARTS_FORMULA.test(text) ||
    /^[\t\r\n]/.test(text) ||
    NUMBER.test(text) ||
    DAY.test(text) ||
    YES_NO.test(text)
  );
}

export function fieldText(cell: Travelling): string {
  if (cell === null) return "";
  if (typeof cell === "number") return String(cell);
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  if (typeof cell === "object") return cell.day;
  return looksOtherwise(cell) ? `'${cell}` : cell;
}

export function fieldCell(text: string): Travelling {
  if (text === "") return null;
  if (text.startsWith("'")) return text.slice(1);
  if (DAY.test(text) && dayFromIso(text) !== null) return { day: text };
  if (NUMBER.test(text) && Number.isFinite(Number(text))) return Number(text);
  return YES_NO.test(text) ? text.toLowerCase() === "true" : text;
}
