/** The days on which each reservoir was filled to its mark, gathered from the care log: what drinking is worked out from. */

import { nameKey } from "./cell.ts";
import type { EventRule } from "./events.ts";

/** A row of the care log as far as reservoirs matter. */
export interface CareRow {
  /** Days since 1970-01-01. */
  readonly day: number;
  readonly plant: string;
  readonly event: string;
  /** What was poured in; null where it was not written down. */
  readonly amountMl: number | null;
  /** "" where nobody is named. */
  readonly who: string;
}

/** One day on which a reservoir ended up full. */
export interface FillDay {
  readonly day: number;
  /** All top-ups of the day, each pour once; null when one has no amount or there was none. */
  readonly topUpMl: number | null;
  readonly flushed: boolean;
  readonly changed: boolean;
  /** Roots were disturbed: a new pot, a new reservoir or fewer roots, so nothing before counts for the drinking after. */
  readonly disturbed: boolean;
}

interface Pour {
  readonly amountMl: number | null;
  readonly who: string;
}

/** A row that fills a reservoir. */
interface Filling extends Pour {
  readonly day: number;
  readonly kind: FillKind;
}

/** The fillings of one plant in the order of the log. */
interface Gathering {
  readonly fillings: Filling[];
  sorted: boolean;
}

/** Two members read the same pour off a jug a little differently. Common practice, no source. */
const SAME_POUR = 0.1;

/** An event as fills know it; null for one that does not fill a reservoir. */
export type FillKind = "top up" | "change" | "flush" | "disturbance";

/** Tells what an event does to the reservoir. A disturbance stands for the fresh filling after it. */
export function fillKind(event: string, rule: EventRule): FillKind | null {
  const kind = rule.find(event);
  if (kind === null) return null;
  if (kind.disturbsRoots) return "disturbance";
  switch (nameKey(kind.event)) {
    case "top up":
      return "top up";
    case "solution change":
      return "change";
    case "flush in place":
      return "flush";
    default:
      return null;
  }
}

/**
 * mL of a day's top-ups. Pours that differ by no more than a tenth are one and the same when different members wrote
 * them down, or nobody is named; the larger counts. Null when no amount is known, or a pour without an amount
 * stands beside one by the same member, as then more went in than is known.
 */
function pouredMl(pours: readonly Pour[]): number | null {
  const known = pours
    .flatMap(({ amountMl, who }) => (amountMl === null ? [] : [{ amountMl, who: nameKey(who) }]))
    .sort((a, b) => b.amountMl - a.amountMl);
  if (known.length === 0) return null;
  const kept: { readonly amountMl: number; readonly by: Set<string> }[] = [];
  for (const { amountMl, who } of known) {
    const same = kept.find((pour) => amountMl >= pour.amountMl * (1 - SAME_POUR) && (who === "" || !pour.by.has(who)));
    if (same === undefined) kept.push({ amountMl, by: new Set([who]) });
    else same.by.add(who);
  }
  const open = pours.some(
    ({ amountMl, who }) => amountMl === null && who !== "" && kept.every(({ by }) => by.has(nameKey(who))),
  );
  return open ? null : kept.reduce((sum, pour) => sum + pour.amountMl, 0);
}

function fillDay(day: number, rows: readonly Filling[]): FillDay {
  const has = (kind: FillKind) => rows.some((row) => row.kind === kind);
  const pours = rows.filter(({ kind }) => kind === "top up");
  const topUpMl = pours.length === 0 ? null : pours.length === 1 ? (pours[0] as Pour).amountMl : pouredMl(pours);
  return {
    day,
    topUpMl,
    flushed: has("flush"),
    changed: has("change"),
    disturbed: has("disturbance"),
  };
}

function fillDays({ fillings, sorted }: Gathering): FillDay[] {
  if (!sorted) fillings.sort((a, b) => a.day - b.day);
  const days: FillDay[] = [];
  for (let from = 0; from < fillings.length; ) {
    const { day } = fillings[from] as Filling;
    let to = from + 1;
    while (to < fillings.length && (fillings[to] as Filling).day === day) to += 1;
    days.push(fillDay(day, fillings.slice(from, to)));
    from = to;
  }
  return days;
}

/**
 * Fill days of every plant by nameKey, oldest first, whatever the order of rows. A top-up of 0 mL filled nothing and is
 * passed over, as are rows without a plant and days that are no whole number. Rows taken back are left out before.
 */
export function indexFills(rows: Iterable<CareRow>, rule: EventRule): ReadonlyMap<string, readonly FillDay[]> {
  const kinds = new Map<string, FillKind | null>();
  const bySpelling = new Map<string, Gathering>();
  const byKey = new Map<string, Gathering>();
  for (const { day, plant, event, amountMl, who } of rows) {
    let kind = kinds.get(event);
    if (kind === undefined) {
      kind = fillKind(event, rule);
      kinds.set(event, kind);
    }
    if (kind === null || !Number.isSafeInteger(day) || (kind === "top up" && amountMl === 0)) continue;
    let that = bySpelling.get(plant);
    if (that === undefined) {
      const key = nameKey(plant);
      if (key === "") continue;
      that = byKey.get(key) ?? { fillings: [], sorted: true };
      byKey.set(key, that);
      bySpelling.set(plant, that);
    }
    const { fillings } = that;
    const last = fillings[fillings.length - 1];
    if (last !== undefined && last.day > day) that.sorted = false;
    fillings.push({ day, kind, amountMl, who });
  }
  const fills = new Map<string, readonly FillDay[]>();
  for (const [key, that] of byKey) fills.set(key, fillDays(that));
  return fills;
}

/** The last root disturbance up to a day; null for none. */
export function lastDisturbedDay(fills: readonly FillDay[], asOfDay: number): number | null {
  let last: number | null = null;
  for (const { day, disturbed } of fills) if (disturbed && day <= asOfDay) last = day;
  return last;
}
