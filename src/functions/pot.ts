/** Custom functions on reservoirs: how fast each plant drinks, whether that changes, and the salt that stays behind. */

import { nameKey } from "../core/cell.ts";
import { meanUse, trendPercentWeek, type Uptake, uptakes } from "../core/drinking.ts";
import { indexFills } from "../core/fills.ts";
import { levelAfterUse } from "../core/reservoir-salt.ts";
import { POT_DUE_RECORD } from "./pot-due.ts";
import { needReadable, readPotLog } from "./pot-log.ts";
import type { Argument, FixedArguments, FunctionRecord } from "./record.ts";
import { readEvents } from "./root-log.ts";

const plants = { name: "plants", kind: "key" } as const satisfies Argument;
const log = {
  name: "log",
  kind: "table",
  columns: ["Date", "Plant", "Event", "Amount mL"],
} as const satisfies Argument;
const asOf = { name: "asOf", kind: "day" } as const satisfies Argument;
const days = {
  name: "days",
  kind: "number",
  unit: "days",
  min: 1,
  max: 3650,
  optional: true,
} as const satisfies Argument;
const heading = { name: "heading", kind: "heading", optional: true } as const satisfies Argument;
const events = {
  name: "events",
  kind: "table",
  columns: ["Event", "Disturbs roots"],
  optional: true,
} as const satisfies Argument;

/** Four weeks for a mean, eight for a trend. */
const USE_DAYS = 28;
const TREND_DAYS = 56;

/** What each plant drank up to a day; throws BadInput for a plant whose rows cannot be read. */
function drinkers(fixed: FixedArguments): (plant: string, asOfDay: number) => readonly Uptake[] {
  const rule = readEvents(fixed.optionalTable("events"));
  const read = readPotLog(fixed.table("log"), rule, "fills");
  const fills = indexFills(read.rows, rule);
  return (plant, asOfDay) => {
    needReadable(read, plant);
    return uptakes(fills.get(nameKey(plant)) ?? [], asOfDay);
  };
}

/** One answer a plant, from what it drank in the usual days before the day asked for, or in as many as are given. */
function perPlant(
  answer: (drunk: readonly Uptake[], asOfDay: number, days: number) => number | null,
  usualDays: number,
): FunctionRecord["compute"] {
  return {
    kind: "rows",
    prepare: (fixed) => {
      const drunk = drinkers(fixed);
      return (row) => {
        const day = row.day("asOf");
        return answer(drunk(row.text("plants"), day), day, row.optionalNumber("days") ?? usualDays);
      };
    },
  };
}

const level = { kind: "number", min: 0, max: 1_000_000 } as const;

export const POT_RECORDS = [
  {
    name: "POT_USE",
    group: "POT",
    args: [plants, log, asOf, days, heading, events],
    compute: perPlant(meanUse, USE_DAYS),
  },
  {
    name: "POT_TREND",
    group: "POT",
    args: [plants, log, asOf, days, heading, events],
    compute: perPlant(trendPercentWeek, TREND_DAYS),
  },
  {
    name: "POT_SALT",
    group: "POT",
    args: [
      { ...level, name: "fill" },
      { ...level, name: "topup" },
      { ...level, name: "used" },
      { name: "volume", kind: "number", min: 0.000001, max: 1_000_000 },
    ],
    compute: {
      kind: "rows",
      prepare: () => (row) =>
        levelAfterUse({
          fill: row.number("fill"),
          topUp: row.number("topup"),
          used: row.number("used"),
          volume: row.number("volume"),
        }),
    },
  },
  POT_DUE_RECORD,
] as const satisfies readonly FunctionRecord[];
