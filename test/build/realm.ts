/** A realm as bare as the host's: the language and Intl, one service, no Node globals. */

import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import vm from "node:vm";

export const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");
export const DIST = path.join(ROOT, "dist");
export const CODE = readFileSync(path.join(DIST, "Code.js"), "utf8");

export interface Realm {
  readonly context: vm.Context;
  /** How often the spreadsheet was asked for its time zone. */
  zoneCalls(): number;
  call(name: string, ...args: unknown[]): unknown;
  /** A Date made inside, as the host hands it over: the first instant of the day in the spreadsheet's zone. */
  date(iso: string): unknown;
}

/** Loads the shipped script. Dates of `date` are right for zones without summer time and for `Etc/UTC`. */
export function shippedRealm(timeZone: string, offsetHours = 0): Realm {
  let asked = 0;
  const context = vm.createContext({
    SpreadsheetApp: {
      getActive: () => ({
        getSpreadsheetTimeZone: () => {
          asked += 1;
          return timeZone;
        },
      }),
    },
  });
  vm.runInContext(CODE, context);
  const makeDate = vm.runInContext("(ms) => new Date(ms)", context) as (ms: number) => unknown;
  return {
    context,
    zoneCalls: () => asked,
    call: (name, ...args) => (vm.runInContext(name, context) as (...args: unknown[]) => unknown)(...args),
    date: (iso) => makeDate(Date.parse(`${iso}T00:00:00Z`) - offsetHours * 3_600_000),
  };
}
