/** A text as the host takes it when a script writes it: parsed as if a person had typed it into the cell. */

import type { CellChange } from "./grid.ts";
import { civilOfSerial, serialOfCivil } from "./zone.ts";

export interface Reading {
  /** The spreadsheet's locale as the host names it, "en_GB". */
  readonly locale: string;
  /** Today in the spreadsheet's zone, as a serial: "3/4" means this year. */
  readonly today: number;
}

interface Ways {
  readonly order: readonly string[];
  readonly decimal: string;
  readonly datePattern: string;
}

const ways = new Map<string, Ways>();

/** How a locale writes numbers and dates, from Intl (CLDR). */
export function waysOf(locale: string): Ways {
  let known = ways.get(locale);
  if (known === undefined) {
    const tag = locale.replace("_", "-");
    const parts = new Intl.DateTimeFormat(tag, { timeZone: "UTC" }).formatToParts(0);
    const order = parts.map((part) => part.type).filter((type) => type !== "literal");
    const letters: Record<string, string> = { year: "yyyy", month: "MM", day: "dd" };
    const datePattern = parts.map((part) => letters[part.type] ?? part.value).join("");
    const decimal = new Intl.NumberFormat(tag).formatToParts(1.5).find((part) => part.type === "decimal")?.value ?? ".";
    known = { order, decimal, datePattern };
    ways.set(locale, known);
  }
  return known;
}

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

function fullYear(text: string | undefined, today: number): number {
  if (text === undefined) return civilOfSerial(today).year;
  const year = Number(text);
  return text.length > 2 ? year : year + (year < 30 ? 2000 : 1900);
}

function asDate(text: string, { locale, today }: Reading): number | null {
  const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(text);
  if (iso) return serialOfCivil(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const named = /^(\d{1,2})[ -]([a-z]{3,9})\.?(?:[ -,]+(\d{2}|\d{4}))?$/i.exec(text);
  if (named) {
    const month = MONTHS.indexOf((named[2] ?? "").slice(0, 3).toLowerCase()) + 1;
    return month === 0 ? null : serialOfCivil(fullYear(named[3], today), month, Number(named[1]));
  }
  const { order, decimal } = waysOf(locale);
  const numeric = /^(\d{1,2})([-/.])(\d{1,2})(?:\2(\d{1,2}|\d{4}))?\.?$/.exec(text);
  if (!numeric || (numeric[2] === "." && decimal === "." && numeric[4] === undefined)) return null;
  const monthFirst = order.indexOf("month") < order.indexOf("day");
  const [day, month] = monthFirst ? [numeric[3], numeric[1]] : [numeric[1], numeric[3]];
  return serialOfCivil(fullYear(numeric[4], today), Number(month), Number(day));
}

function asNumber(text: string, locale: string): CellChange | null {
  const { decimal } = waysOf(locale);
  const group = decimal === "," ? "[.'’ ]" : "[,'’]";
  const point = decimal === "," ? "," : "\\.";
  const pattern = new RegExp(
    `^([+-]?)((?:\\d{1,3}(?:${group}\\d{3})+|\\d+)(?:${point}\\d*)?|${point}\\d+)(e[+-]?\\d+)?(\\s?%)?$`,
    "i",
  );
  const match = pattern.exec(text);
  if (!match) return null;
  const digits = (match[2] ?? "").replace(new RegExp(group, "g"), "").replace(decimal, ".");
  const size = Number(digits + (match[3] ?? ""));
  if (!Number.isFinite(size)) return null;
  const value = match[1] === "-" ? -size : size;
  return match[4] === undefined ? { value } : { value: value / 100, format: "0%" };
}

/**
 * What a cell gets from a written text. `format` is the cell's own number format: under "@" a text stays a
 * text, but not one that starts with "=" (whether the host spares those is not settled; the worse is taken).
 */
export function typedAs(text: string, format: string, reading: Reading): CellChange {
  if (text === "") return { value: null };
  if (text.startsWith("'")) return { value: text.slice(1) };
  if (text.startsWith("=") && text.length > 1) return { value: null, formula: text };
  if (format === "@") return { value: text };
  const trimmed = text.trim();
  if (/^(true|false)$/i.test(trimmed)) return { value: trimmed.toLowerCase() === "true" };
  const number = asNumber(trimmed, reading.locale);
  if (number !== null) return number;
  const date = asDate(trimmed, reading);
  if (date !== null) return { value: date, format: waysOf(reading.locale).datePattern };
  const clock = /^(\d{1,2}):([0-5]\d)(?::([0-5]\d))?$/.exec(trimmed);
  if (clock) {
    const seconds = Number(clock[1]) * 3600 + Number(clock[2]) * 60 + Number(clock[3] ?? 0);
    return { value: seconds / 86_400, format: "HH:mm:ss" };
  }
  if (/^\+./.test(trimmed)) return { value: null, formula: `=${trimmed}` };
  return { value: text };
}

/** Texts and tab names in quotes hold no separators. */
const QUOTED = /("(?:[^"]|"")*"|'(?:[^']|'')*')/;

/**
 * What a cell gets from a formula that a script sets. Semicolons part arguments in every locale and are shown as
 * commas where those do; a comma does so only where it is not the decimal sign, and is an error elsewhere.
 */
export function formulaAs(formula: string, locale: string): CellChange {
  const parts = formula.split(QUOTED);
  const outside = (change: (part: string) => string) =>
    parts.map((part, at) => (at % 2 === 1 ? part : change(part))).join("");
  if (waysOf(locale).decimal !== ",") return { value: null, formula: outside((part) => part.replace(/;/g, ",")) };
  const hasComma = parts.some((part, at) => at % 2 === 0 && part.includes(","));
  return hasComma ? { value: { error: "#ERROR!" }, formula } : { value: null, formula };
}
