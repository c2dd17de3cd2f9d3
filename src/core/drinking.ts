/** How much a plant drinks, worked out from what was poured in to fill its reservoir up again, and whether that changes. */

import type { FillDay } from "./fills.ts";
import { median, type Point, type RobustLine, theilSen } from "./theil-sen.ts";

/**
 * What was drunk between two fillings. A top-up fills the reservoir to its mark, so what is poured in on `toDay` is what
 * was drunk since `fromDay`, however long that was: a long interval is no drop to zero. A mark hit a little high or low
 * is made good by the next top-up.
 */
export interface Uptake {
  readonly fromDay: number;
  readonly toDay: number;
  readonly amountMl: number;
}

/** A top-up was probably not written down, or the reservoir stood dry, where an interval is longer by this factor than … */
const MISSED_LONGER = 1.3;
/** … and drinks less than this share of the three on each side of it. All common practice, no source. */
const MISSED_SLOWER = 2 / 3;
const NEIGHBOURS = 3;
/** A trend asks for this many intervals, and for this many days between the middles of the first and the last. */
const TREND_LEAST_INTERVALS = 3;
const TREND_LEAST_DAYS = 14;

/** mL a day. */
export function rateOf({ fromDay, toDay, amountMl }: Uptake): number {
  return amountMl / (toDay - fromDay);
}

/** Days and mL of a few uptakes in a row, together. */
function together(some: readonly Uptake[]): { readonly meanDays: number; readonly mlDay: number } {
  const days = some.reduce((sum, { fromDay, toDay }) => sum + toDay - fromDay, 0);
  const amountMl = some.reduce((sum, one) => sum + one.amountMl, 0);
  return { meanDays: days / some.length, mlDay: amountMl / days };
}

function looksMissed(all: readonly Uptake[], at: number): boolean {
  const one = all[at] as Uptake;
  const after = all.slice(at + 1, at + 1 + NEIGHBOURS);
  if (after.length === 0) return false;
  const sides = [all.slice(Math.max(at - NEIGHBOURS, 0), at), after].filter(({ length }) => length > 0).map(together);
  return sides.every(
    ({ meanDays, mlDay }) =>
      one.toDay - one.fromDay >= MISSED_LONGER * meanDays && rateOf(one) <= MISSED_SLOWER * mlDay,
  );
}

/**
 * Uptakes up to `asOfDay` since the last root disturbance, oldest first. A change or a flush fills the reservoir anew, so
 * what was drunk before it is not known; likewise where an amount was not written down. An interval that is
 * longer and much slower than those around it is left out: most often a top-up is missing in the log. A slow one at
 * the end stays, as it may be a true drop.
 */
export function uptakes(fills: readonly FillDay[], asOfDay: number): Uptake[] {
  let found: Uptake[] = [];
  let fromDay: number | null = null;
  for (const { day, topUpMl, flushed, changed, disturbed } of fills) {
    if (day > asOfDay) break;
    if (disturbed) found = [];
    else if (fromDay !== null && topUpMl !== null && !flushed && !changed) {
      found.push({ fromDay, toDay: day, amountMl: topUpMl });
    }
    fromDay = day;
  }
  return found.filter((_, at) => !looksMissed(found, at));
}

/**
 * Mean use in mL a day over the `days` up to `asOfDay`: what was drunk in them by the days it is known for; an interval
 * that began earlier counts with its share. Null where nothing is known of these days.
 */
export function meanUse(drunk: readonly Uptake[], asOfDay: number, days: number): number | null {
  let amountMl = 0;
  let known = 0;
  for (const one of drunk) {
    const overlap = Math.min(one.toDay, asOfDay) - Math.max(one.fromDay, asOfDay - days);
    if (overlap <= 0) continue;
    amountMl += rateOf(one) * overlap;
    known += overlap;
  }
  return known === 0 ? null : amountMl / known;
}

/** Uptakes whose middle lies within the `days` up to `asOfDay`. */
export function uptakesWithin(drunk: readonly Uptake[], asOfDay: number, days: number): Uptake[] {
  return drunk.filter(({ fromDay, toDay }) => toDay <= asOfDay && (fromDay + toDay) / 2 >= asOfDay - days);
}

/** One point for each uptake: days before `asOfDay` (its middle, so below 0) and what `measure` gives. */
export function pointsOf(drunk: readonly Uptake[], asOfDay: number, measure: (one: Uptake) => number): Point[] {
  return drunk.map((one) => ({ x: (one.fromDay + one.toDay) / 2 - asOfDay, y: measure(one) }));
}

/**
 * The use as a robust line over days (mL a day; x counted from `asOfDay`), from uptakes whose middle lies within the
 * `days` up to it. Null with fewer than three of them, or when they span less than two weeks.
 */
export function lineOfUse(drunk: readonly Uptake[], asOfDay: number, days: number): RobustLine | null {
  const points = pointsOf(uptakesWithin(drunk, asOfDay, days), asOfDay, rateOf);
  const [first, last] = [points[0], points[points.length - 1]];
  if (points.length < TREND_LEAST_INTERVALS || first === undefined || last === undefined) return null;
  return last.x - first.x < TREND_LEAST_DAYS ? null : theilSen(points);
}

/**
 * Change of the use in percent a week: the Theil–Sen slope of the intervals' mL a day over their middles, as a share of
 * their median. Null as for lineOfUse.
 */
export function trendPercentWeek(drunk: readonly Uptake[], asOfDay: number, days: number): number | null {
  const line = lineOfUse(drunk, asOfDay, days);
  return line === null ? null : (100 * 7 * line.slope) / line.medianY;
}

/** mL usually poured in, the median of these uptakes; null for none. */
export function usualAmountMl(drunk: readonly Uptake[]): number | null {
  return drunk.length === 0 ? null : median(drunk.map(({ amountMl }) => amountMl));
}
