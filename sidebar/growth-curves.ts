/** Recovery as curves: how long plants took to their first new growth after a disturbance, by event, season or medium. */

import type { Loaded } from "../src/app/contract.ts";
import { civilFromDay, dayFromIso } from "../src/core/calendar.ts";
import { nameKey } from "../src/core/cell.ts";
import { eventRule } from "../src/core/events.ts";
import { type Recovery, recoveries } from "../src/core/recovery.ts";
import { sayList } from "../src/core/saying.ts";
import {
  type LogRank,
  logRank,
  type SurvivalCurve,
  survivalCurve,
  TOO_FEW,
  type Waiting,
} from "../src/core/survival.ts";
import { count } from "./show.ts";

export const SORTS = ["event", "season", "medium"] as const;
export type Sort = (typeof SORTS)[number];

export interface Choice {
  readonly sort: Sort;
  /** One kind of disturbance, "" for all. */
  readonly after: string;
}

export const SORT_WORDS: Readonly<Record<Sort, string>> = {
  event: "Kind of disturbance",
  season: "Half of the year",
  medium: "Medium",
};

export interface Curve {
  readonly name: string;
  readonly curve: SurvivalCurve;
  readonly waits: readonly Waiting[];
  /** Enough of them grew again for a curve to say something. */
  readonly enough: boolean;
  /** "Repot: 12 of 13 grew again; half had within 109 days." */
  readonly sentence: string;
}

export interface Growth {
  /** Most disturbances first. */
  readonly curves: readonly Curve[];
  /** Between those with enough; null for fewer than two of them. */
  readonly test: LogRank | null;
  /** What the comparison says, "" when there is nothing to compare. */
  readonly sentence: string;
}

interface Group {
  readonly name: string;
  readonly waits: Waiting[];
}

/** Disturbances copied in from before the log was kept are left out: nobody wrote down when those plants grew again. */
const LEAD_DAYS = 7;

/** Light halves of the year, the same names north and south. */
function halfOf(day: number): string {
  const { month } = civilFromDay(day);
  return month >= 4 && month <= 9 ? "April to September" : "October to March";
}

/** Every disturbance of the care log as it was sent, in groups. */
function groupsBy({ sort, after }: Choice, loaded: Loaded, today: number): Group[] {
  const rows = loaded.care.rows.flatMap(({ day, plant, event }) => {
    const number = dayFromIso(day);
    return number === null ? [] : [{ day: number, plant, event }];
  });
  const mediumOf = new Map(loaded.plants.map(({ plant, medium }) => [nameKey(plant), medium.trim()]));
  const groups = new Map<string, Group>();
  const add = (name: string, { days, recoveredDay }: Recovery): void => {
    const key = nameKey(name);
    const group = groups.get(key) ?? { name, waits: [] };
    group.waits.push({ days, happened: recoveredDay !== null });
    groups.set(key, group);
  };
  const rule = eventRule(loaded.events);
  const looked = rows.filter(({ event }) => rule.find(event)?.disturbsRoots === false).map(({ day }) => day);
  const from = Math.min(...looked) - LEAD_DAYS;
  for (const [plant, all] of recoveries(rows, rule, today)) {
    for (const one of all) {
      if (one.day < from || (after !== "" && nameKey(one.event) !== nameKey(after))) continue;
      if (sort === "event") add(one.event, one);
      else if (sort === "season") add(halfOf(one.day), one);
      else add(mediumOf.get(plant) || "Medium not known", one);
    }
  }
  return [...groups.values()].sort((a, b) => b.waits.length - a.waits.length);
}

function sayCurve({ name, curve, enough }: Omit<Curve, "sentence">): string {
  const of = `${name}: ${curve.happened} of ${curve.count} grew again`;
  if (!enough) return `${of}, too few to tell.`;
  return curve.median === null
    ? `${of}; not yet half of them.`
    : `${of}; half had within ${count(curve.median, "day")}.`;
}

function sayTest(test: LogRank | null, told: readonly Curve[], all: readonly Curve[]): string {
  if (told.length < 2 || test === null) {
    return all.length < 2 ? "" : `Too few to compare: a group needs ${TOO_FEW} that grew again, and two such groups.`;
  }
  const p = test.p < 0.001 ? "below 0.001" : String(Number(test.p.toPrecision(2)));
  const what = sayList(
    told.map(({ name }) => name),
    "and",
  );
  const meaning =
    test.p <= 0.05
      ? `differ by more than chance would often bring`
      : `differ by no more than chance would often bring, which does not show that they are alike`;
  return `${what} ${meaning} (log-rank test, p ${p}). Plants were not drawn into these groups, so this shows no cause.`;
}

/** Curves and words for what the panel holds of the care log on `loaded.today`. Throws BadInput for a list of events that says both yes and no of one. */
export function growthBy(choice: Choice, loaded: Loaded): Growth {
  const today = dayFromIso(loaded.today);
  const groups = today === null ? [] : groupsBy(choice, loaded, today);
  const curves = groups.map(({ name, waits }): Curve => {
    const curve = survivalCurve(waits);
    const one = { name, waits, curve, enough: curve.happened >= TOO_FEW };
    return { ...one, sentence: sayCurve(one) };
  });
  const told = curves.filter(({ enough }) => enough);
  const test = told.length < 2 ? null : logRank(told.map(({ waits }) => waits));
  return { curves, test, sentence: sayTest(test, told, curves) };
}

/** Days at which the numbers at risk are shown: five, whole weeks, up to the longest wait. */
export function riskDays(curves: readonly Curve[]): number[] {
  const longest = Math.max(0, ...curves.map(({ curve }) => curve.lastDays));
  const step = Math.max(7, Math.ceil(longest / 4 / 7) * 7);
  return [0, 1, 2, 3, 4].map((k) => k * step);
}

/** How many are still waiting just before that day. */
export function atRisk({ waits }: Curve, day: number): number {
  return waits.filter(({ days }) => days >= day).length;
}

/** Share that has grown again by the end of a day, null beyond the last wait. */
export function grownBy({ curve }: Curve, day: number): number | null {
  if (day > curve.lastDays) return null;
  const last = [...curve.steps].reverse().find(({ days }) => days <= day);
  return last === undefined ? 0 : 1 - last.share;
}
