/** A log of five weeks of one reservoir: 500 mL, then 70 mL a week. */

import { date } from "./cells.ts";

export const column = (...values: unknown[]): unknown[][] => values.map((value) => [value]);
export const HEADINGS = ["Id", "Date", "Plant", "Event", "Amount mL", "EC", "Who", "Corrects"];
export const logOf = (...rows: unknown[][]): unknown[][] => [HEADINGS, ...rows];
let made = 0;
export function row(
  on: string,
  event: string,
  amount: unknown = "",
  more: { plant?: unknown; ec?: unknown } = {},
): unknown[] {
  made += 1;
  return [`r${made}`, date(on), more.plant ?? "Fern", event, amount, more.ec ?? "", "Ines", ""];
}
export const WEEKS = [
  row("2026-03-01", "Solution change", 500),
  row("2026-03-08", "Top up", 70),
  row("2026-03-15", "Top up", "70 mL"),
  row("2026-03-22", "top UP ", 70),
  row("2026-03-29", "Top up", 70),
];
export const asOf = date("2026-03-29");
