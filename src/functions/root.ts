/** Custom functions on roots left alone: the last disturbance, the days since, the board of all plants. */

import { nameKey } from "../core/cell.ts";
import { readRestRule, restNeeded, restSettings } from "../core/rest-rule.ts";
import { restWord, rootBoard } from "../core/roots.ts";
import { badRow } from "./answers.ts";
import type { Answer, Argument, FunctionRecord, Table } from "./record.ts";
import { readEvents, readRootLog } from "./root-log.ts";

const LOG_COLUMNS = ["Date", "Plant", "Event"];
const EVENT_COLUMNS = ["Event", "Disturbs roots"];

const plants = {
  name: "plants",
  kind: "key",
} as const satisfies Argument;
const log = {
  name: "log",
  kind: "table",
  columns: LOG_COLUMNS,
} as const satisfies Argument;
const asOf = {
  name: "asOf",
  kind: "day",
} as const satisfies Argument;
const heading = {
  name: "heading",
  kind: "heading",
  optional: true,
} as const satisfies Argument;
const events = {
  name: "events",
  kind: "table",
  columns: EVENT_COLUMNS,
  optional: true,
} as const satisfies Argument;

const rules = {
  name: "rules",
  kind: "table",
  columns: ["Setting", "Value"],
  optional: true,
} as const satisfies Argument;

/** Days of rest that the household's rules ask for on a day; null without rules. */
function restDays(table: Table | null, asOfDay: number): number | null {
  if (table === null) return null;
  const [nameColumn, valueColumn] = [table.column("Setting"), table.column("Value")];
  const texts = new Map<string, string>();
  for (let at = 0; at < table.rowCount; at++) {
    const [name, value] = [table.cell(at, nameColumn), table.cell(at, valueColumn)];
    if (name.kind !== "text" || texts.has(nameKey(name.value))) continue;
    texts.set(nameKey(name.value), value.kind === "text" || value.kind === "number" ? String(value.value) : "");
  }
  const text = (setting: string) => texts.get(nameKey(setting)) ?? "";
  return restNeeded(readRestRule(restSettings(text)), asOfDay);
}

export const ROOT_RECORDS = [
  {
    name: "ROOT_LAST",
    group: "ROOT",
    args: [plants, log, heading, events],
    compute: {
      kind: "rows",
      prepare: (fixed) => {
        const known = readRootLog(fixed.table("log"), readEvents(fixed.optionalTable("events")));
        return (row) => {
          const last = known.last(row.text("plants"), null);
          return last === null ? null : { day: last.day };
        };
      },
    },
  },
  {
    name: "ROOT_REST",
    group: "ROOT",
    args: [plants, log, asOf, heading, events],
    compute: {
      kind: "rows",
      prepare: (fixed) => {
        const known = readRootLog(fixed.table("log"), readEvents(fixed.optionalTable("events")));
        return (row) => {
          const day = row.day("asOf");
          const last = known.last(row.text("plants"), day);
          return last === null ? null : day - last.day;
        };
      },
    },
  },
  {
    name: "ROOT_BOARD",
    group: "ROOT",
    args: [plants, log, asOf, events, rules],
    compute: {
      kind: "whole",
      answer: (fixed, row) => {
        const known = readRootLog(fixed.table("log"), readEvents(fixed.optionalTable("events")));
        const keys = fixed.keys("plants");
        const names = keys.flatMap((key) => (key.name === null ? [] : [key.name]));
        const needed = restDays(fixed.optionalTable("rules"), row.day("asOf"));
        const word = (rest: number | null) => (needed === null ? [] : [restWord(rest, needed)]);
        const headings = ["Plant", "Days at rest", "Last event", "Date", ...(needed === null ? [] : ["Roots"])];
        const board: (readonly Answer[])[] = [headings];
        const unreadable: (readonly Answer[])[] = [];
        for (const { plant, restDays: rest, event, day } of rootBoard(names, known.index, row.day("asOf"))) {
          const why = known.unreadable.get(nameKey(plant));
          if (why !== undefined) unreadable.push([plant, badRow(why)]);
          else board.push([plant, rest, event, day === null ? null : { day }, ...word(rest)]);
        }
        for (const key of keys) if (key.name === null) unreadable.push([badRow(key.reason)]);
        return [...board, ...unreadable];
      },
    },
  },
] as const satisfies readonly FunctionRecord[];
