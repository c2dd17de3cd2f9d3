/** The custom function that lists what is due: its tables of rules and claims, and the answer row by row. */

import { nameKey } from "../core/cell.ts";
import { type Claim, dueList } from "../core/due.ts";
import { type DueRules, dueRules, dueSetting } from "../core/due-rules.ts";
import { readDay, readNumber, readText } from "../core/reading.ts";
import { badRow } from "./answers.ts";
import { readPotLog } from "./pot-log.ts";
import type { Answer, FunctionRecord, Table } from "./record.ts";
import { readEvents } from "./root-log.ts";

/** The rules from a table Setting, Value. A blank value or a missing row keeps the default, "off" means never. */
function readRules(table: Table | null): DueRules {
  const own = new Map<string, number | "off">();
  if (table !== null) {
    const [nameColumn, valueColumn] = [table.column("Setting"), table.column("Value")];
    for (let row = 0; row < table.rowCount; row++) {
      const name = table.cell(row, nameColumn);
      const setting = name.kind === "text" ? dueSetting(name.value) : null;
      if (setting === null) continue;
      const cell = table.cell(row, valueColumn);
      const off = cell.kind === "text" && /^(?:off|never|no)$/i.test(cell.value);
      const { unit, max } = setting;
      const value = off
        ? "off"
        : readNumber(cell, { what: `${setting.setting} in ${table.where(row)}`, unit, min: 0, max });
      if (value !== null && !own.has(setting.rule)) own.set(setting.rule, value);
    }
  }
  return dueRules(({ rule }) => own.get(rule) ?? null);
}

/** Claims with a day to look again; those kept or dropped are settled. */
function readClaims(table: Table | null): Claim[] {
  if (table === null) return [];
  const columns = ["Claim", "Look again", "Status"].map((heading) => table.column(heading));
  const [claimColumn, dayColumn, statusColumn] = columns as [number, number, number];
  const claims: Claim[] = [];
  for (let row = 0; row < table.rowCount; row++) {
    const claim = readText(table.cell(row, claimColumn), `Claim in ${table.where(row)}`);
    const status = readText(table.cell(row, statusColumn), `Status in ${table.where(row)}`);
    if (claim === null || /^(?:kept|dropped)$/i.test(status ?? "")) continue;
    const lookAgainDay = readDay(table.cell(row, dayColumn), `Look again in ${table.where(row)}`);
    if (lookAgainDay !== null) claims.push({ claim, lookAgainDay });
  }
  return claims;
}

export const POT_DUE_RECORD = {
  name: "POT_DUE",
  group: "POT",
  args: [
    { name: "plants", kind: "key" },
    { name: "log", kind: "table", columns: ["Date", "Plant", "Event", "Amount mL"] },
    { name: "asOf", kind: "day" },
    { name: "events", kind: "table", columns: ["Event", "Disturbs roots"], optional: true },
    { name: "rules", kind: "table", columns: ["Setting", "Value"], optional: true },
    { name: "claims", kind: "table", columns: ["Claim", "Look again"], optional: true },
  ],
  compute: {
    kind: "whole",
    answer: (fixed, row) => {
      const rule = readEvents(fixed.optionalTable("events"));
      const { rows, unreadable } = readPotLog(fixed.table("log"), rule, "all");
      const keys = fixed.keys("plants");
      const names = keys.flatMap((key) => (key.name === null ? [] : [key.name]));
      const told = dueList({
        plants: names.filter((name) => !unreadable.has(nameKey(name))),
        rows,
        events: rule,
        asOfDay: row.day("asOf"),
        rules: readRules(fixed.optionalTable("rules")),
        claims: readClaims(fixed.optionalTable("claims")),
      });
      const list: (readonly Answer[])[] = [["Plant", "Due", "Since", "Why"]];
      for (const { plant, due, sinceDay, why } of told) list.push([plant, due, { day: sinceDay }, why]);
      const seen = new Set<string>();
      for (const key of keys) {
        if (key.name === null) list.push([badRow(key.reason)]);
        else {
          const why = unreadable.get(nameKey(key.name));
          if (why === undefined || seen.has(nameKey(key.name))) continue;
          seen.add(nameKey(key.name));
          list.push([key.name, badRow(why)]);
        }
      }
      return list;
    },
  },
} as const satisfies FunctionRecord;
