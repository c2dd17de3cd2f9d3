/** Where a formula's stub comes in: the runner, wired to this host's dates. */

import { createRunner } from "../functions/runner.ts";
import { type Days, daysIn } from "./days.ts";

let known: { readonly timeZone: string; readonly days: Days } | null = null;

/** Days in the spreadsheet's zone; the days worked out so far are kept as long as the zone stays. */
export function spreadsheetDays(): Days {
  const timeZone = SpreadsheetApp.getActive().getSpreadsheetTimeZone();
  if (known?.timeZone !== timeZone) known = { timeZone, days: daysIn(timeZone) };
  return known.days;
}

/**
 * Answers the custom function `name`; `args` is the stub's own arguments object. The spreadsheet is asked
 * for its zone at most once a call, and only when a date comes in or goes out. Throws Errors whose message
 * is shown in the cell.
 */
export function call(name: string, args: ArrayLike<unknown>): unknown {
  let days: Days | null = null;
  const zoned = (): Days => {
    days ??= spreadsheetDays();
    return days;
  };
  const isDate = (value: unknown) => Object.prototype.toString.call(value) === "[object Date]";
  const run = createRunner({
    dayOf: (value) => (isDate(value) ? zoned().dayOf(value) : null),
    dateOf: (day) => zoned().dateOf(day),
  });
  return run(name, Array.from(args));
}
