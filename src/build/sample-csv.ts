/** Tabs as CSV texts (RFC 4180, UTF-8, line feeds): days in ISO, numbers with a point, formulas with their "=". */

import Papa from "papaparse";
import { isoFromDay } from "../core/calendar.ts";
import type { SampleCell, SampleTab } from "./sample-cell.ts";

/** Texts that a reader of CSV would take for a number or a day; the sample holds none, so that nothing is guessed. */
const LOOKS_TYPED = /^(?:=|[-+]?\d+(?:[.,]\d+)?$|\d{1,4}[-./]\d{1,2}[-./]\d{1,4}$|(?:true|false)$)/i;

function fieldOf(cell: SampleCell): string {
  if (cell === null) return "";
  if (typeof cell === "number") return String(cell);
  if (typeof cell === "string") {
    if (LOOKS_TYPED.test(cell)) throw new Error(`The text "${cell}" would not be read as a text.`);
    return cell;
  }
  return "day" in cell ? isoFromDay(cell.day) : cell.formula;
}

export function csvOf(tab: SampleTab): string {
  const rows = tab.rows.map((row) => row.map(fieldOf));
  return `${Papa.unparse(rows, { newline: "\n" })}\n`;
}
