/** What every object of the stand-in shares, and how a cell's content passes to a script and back. */

import type { KeptChart } from "./charts.ts";
import type { Gate } from "./gate.ts";
import {
  type CellChange,
  type CellValue,
  type Grid,
  type GridCell,
  type GridTab,
  isCellError,
  isDateFormat,
} from "./grid.ts";
import { typedAs, waysOf } from "./typed.ts";
import { civilOfSerial, instantOfSerial, serialOfInstant } from "./zone.ts";

export type Host = typeof GoogleAppsScript.Spreadsheet;
export type Range = GoogleAppsScript.Spreadsheet.Range;
export type Sheet = GoogleAppsScript.Spreadsheet.Sheet;
export type Spreadsheet = GoogleAppsScript.Spreadsheet.Spreadsheet;

export interface Book {
  readonly grid: Grid;
  readonly gate: Gate;
  readonly timeZone: string;
  readonly locale: string;
  /** Makes a Date of the script's own realm, which is another one than the stand-in's. */
  readonly makeDate: (instantMs: number) => Date;
  readonly now: () => number;
  /** By the id of their tab; no grid at hand draws them. */
  readonly charts: Map<number, readonly KeptChart[]>;
  /** Ids of developer metadata and protections. */
  readonly newId: () => number;
}

export function tabById(book: Book, id: number): GridTab {
  const tab = book.grid.tabs().find((each) => each.id === id);
  if (!tab) throw new Error("The sheet was deleted: it is no longer part of the spreadsheet.");
  return tab;
}

/** Dates of any realm: `instanceof` fails across realms. */
export function isDate(value: unknown): value is Date {
  return Object.prototype.toString.call(value) === "[object Date]";
}

/** What a thrown value says; an Error of another realm is no instance of this one's. */
export function messageOf(thrown: unknown): string {
  if (typeof thrown === "object" && thrown !== null && "message" in thrown) return String(thrown.message);
  return String(thrown);
}

/** The value as getValues hands it over. */
export function outgoing(book: Book, cell: GridCell): unknown {
  const { value } = cell;
  if (value === null) return "";
  if (isCellError(value)) return value.error;
  if (typeof value === "number" && isDateFormat(cell.format))
    return book.makeDate(instantOfSerial(value, book.timeZone));
  return value;
}

/** The cell as setValue, setValues and appendRow leave it. */
export function incoming(book: Book, value: unknown, format: string): CellChange {
  if (value === null || value === undefined || value === "") return { value: null };
  if (typeof value === "boolean") return { value };
  if (typeof value === "number") return { value: Number.isFinite(value) ? value : { error: "#NUM!" } };
  if (isDate(value)) {
    const instant = value.getTime();
    if (!Number.isFinite(instant)) return { value: { error: "#NUM!" } };
    const serial = serialOfInstant(instant, book.timeZone);
    return isDateFormat(format) ? { value: serial } : { value: serial, format: waysOf(book.locale).datePattern };
  }
  const today = Math.floor(serialOfInstant(book.now(), book.timeZone));
  const change = typedAs(String(value), format, { locale: book.locale, today });
  if (change.format !== undefined && format !== "" && !isDateFormat(change.format)) return { value: change.value };
  return change;
}

function shownDate(serial: number, format: string): string {
  const { year, month, day } = civilOfSerial(serial);
  const seconds = Math.round((serial - Math.floor(serial)) * 86_400);
  const two = (value: number): string => String(value).padStart(2, "0");
  const clock: Record<string, string> = {
    h: two(Math.floor(seconds / 3600)),
    m: two(Math.floor(seconds / 60) % 60),
    s: two(seconds % 60),
  };
  const withClock = format.replace(/[hH]{1,2}(:mm)?(:ss)?/g, (match) =>
    match
      .split(":")
      .map((part) => clock[part.charAt(0).toLowerCase()] ?? "")
      .join(":"),
  );
  return withClock
    .replace(/y+/gi, (match) => (match.length > 2 ? String(year) : two(year % 100)))
    .replace(/m+/gi, (match) => (match.length > 1 ? two(month) : String(month)))
    .replace(/d+/gi, (match) => (match.length > 1 ? two(day) : String(day)));
}

/** The text a person sees in the cell: dates, fixed decimals and percent; other number formats show plainly. */
export function shown(cell: GridCell): string {
  const value: CellValue = cell.value;
  if (value === null) return "";
  if (isCellError(value)) return value.error;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "string") return value;
  if (isDateFormat(cell.format)) return shownDate(value, cell.format);
  const decimals = /^[#0,]*0(?:\.(0+))?(%?)$/.exec(cell.format);
  if (!decimals) return String(value);
  const size = decimals[2] === "%" ? value * 100 : value;
  return size.toFixed(decimals[1]?.length ?? 0) + (decimals[2] ?? "");
}
