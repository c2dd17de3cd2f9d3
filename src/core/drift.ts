/** Calibration of a meter: how its readings in a standard drift, and when to calibrate again. */

import { BadInput } from "./errors.ts";
import { sayGiven } from "./saying.ts";
import { median } from "./spread.ts";

/** One line of the calibration log. */
export interface StandardReading {
  /** Days since 1970-01-01. */
  readonly day: number;
  /** What the standard is worth at its temperature: 1.413 mS/cm, or pH 7.01. */
  readonly standard: number;
  /** What the meter showed in it, before any adjustment. */
  readonly reading: number;
  /** The meter was adjusted to the standard after this reading. */
  readonly adjusted: boolean;
}

/** EC drifts in proportion, pH by so many units. */
export type MeterKind = "EC" | "pH";

export interface DriftRules {
  /** Greatest error to live with: a share for EC, units for pH. 0.05 and 0.1 where absent. */
  readonly tolerance?: number | undefined;
  /** Never longer than this without a look at a standard, days; 90 for EC and 30 for pH where absent. */
  readonly longestDays?: number | undefined;
}

export interface Drift {
  readonly verdict: "fine" | "calibrate now" | "no readings";
  /** Greatest error of the last day's readings: share for EC, units for pH; 0 right after an adjustment. Null without readings. */
  readonly error: number | null;
  /** Error gained each day, median over all pairs since each adjustment; null with fewer than two readings in a row. */
  readonly perDay: number | null;
  /** How many pairs of readings that rests on. */
  readonly pairs: number;
  /** Day on which to calibrate again; null without readings. */
  readonly dueDay: number | null;
  readonly sentence: string;
}

/** Common practice, no source: what a home meter holds, and how long one trusts it. */
const DEFAULTS: Readonly<Record<MeterKind, { tolerance: number; longestDays: number }>> = {
  EC: { tolerance: 0.05, longestDays: 90 },
  pH: { tolerance: 0.1, longestDays: 30 },
};

interface Point {
  readonly day: number;
  /** Error relative to right after the last adjustment. */
  readonly error: number;
}

function errorOf({ standard, reading }: StandardReading, kind: MeterKind): number {
  return kind === "EC" ? reading / standard - 1 : reading - standard;
}

function check(log: readonly StandardReading[], kind: MeterKind): void {
  const unit = kind === "EC" ? " mS/cm" : "";
  for (const { standard, reading } of log) {
    if (!(standard > 0 && Number.isFinite(standard))) {
      throw new BadInput("out-of-bounds", `The standard is ${sayGiven(standard)}${unit}. Give a number above 0.`);
    }
    if (!(reading >= 0 && Number.isFinite(reading))) {
      throw new BadInput("out-of-bounds", `The reading is ${sayGiven(reading)}${unit}. Give 0 or more.`);
    }
  }
}

/** Stretches between adjustments; each but the first begins with an error of 0, on the day of the adjustment. */
function stretches(log: readonly StandardReading[], kind: MeterKind): Point[][] {
  const all: Point[][] = [[]];
  for (const entry of log) {
    (all[all.length - 1] as Point[]).push({ day: entry.day, error: errorOf(entry, kind) });
    if (entry.adjusted) all.push([{ day: entry.day, error: 0 }]);
  }
  return all;
}

function say(error: number, kind: MeterKind): string {
  // As finely as a meter for the home shows it.
  return kind === "EC" ? `${Number((Math.abs(error) * 100).toFixed(1))} %` : `${Number(Math.abs(error).toFixed(2))} pH`;
}

/**
 * The state of a meter on `today`. Drift is the median slope over all pairs of readings with no adjustment between
 * (Theil–Sen), so that one bad reading does not carry it. Due: when the drift reaches the tolerance, at the latest
 * `longestDays` after the last reading in a standard. Readings after `today` do not count yet. Throws BadInput for
 * readings below 0 and standards not above 0.
 */
export function meterDrift(
  log: readonly StandardReading[],
  { kind, today, rules = {} }: { kind: MeterKind; today: number; rules?: DriftRules },
): Drift {
  check(log, kind);
  const tolerance = rules.tolerance ?? DEFAULTS[kind].tolerance;
  const longestDays = rules.longestDays ?? DEFAULTS[kind].longestDays;
  const sorted = log.filter(({ day }) => day <= today).sort((a, b) => a.day - b.day);
  const last = sorted[sorted.length - 1];
  if (last === undefined) {
    return {
      verdict: "no readings",
      error: null,
      perDay: null,
      pairs: 0,
      dueDay: null,
      sentence: "There is no reading in a standard yet. Measure one before trusting the meter.",
    };
  }
  const slopes: number[] = [];
  for (const points of stretches(sorted, kind)) {
    points.forEach((from, k) => {
      for (const to of points.slice(k + 1)) {
        if (to.day > from.day) slopes.push((to.error - from.error) / (to.day - from.day));
      }
    });
  }
  const perDay = slopes.length > 0 ? median(slopes) : null;
  // A pH meter is checked in two buffers on one day: the worse of the two counts.
  const since = sorted.slice(sorted.reduce((from, { adjusted }, k) => (adjusted ? k + 1 : from), 0));
  const lately = since.filter(({ day }) => day === last.day).map((entry) => errorOf(entry, kind));
  const error = lately.reduce((worst, one) => (Math.abs(one) > Math.abs(worst) ? one : worst), 0);
  const latest = last.day + longestDays;
  // Counted as going away from 0, whichever way it goes: early rather than late.
  const rate = perDay === null ? 0 : Math.abs(perDay);
  const left = tolerance - Math.abs(error);
  const byDrift = rate > 0 ? last.day + Math.floor(Math.max(left, 0) / rate) : Number.POSITIVE_INFINITY;
  const dueDay = left < 0 ? last.day : Math.min(latest, byDrift);
  const verdict = dueDay <= today ? "calibrate now" : "fine";
  const off = last.adjusted ? "was adjusted to the standard" : `was ${say(error, kind)} off in the standard`;
  const drifts = perDay === null ? "" : ` It drifts ${say(perDay * 30, kind)} in 30 days.`;
  const days = dueDay - today;
  const next =
    verdict === "fine"
      ? `Calibrate again in ${days} ${days === 1 ? "day" : "days"}.`
      : left < 0
        ? "Calibrate it now, and measure the last batch again."
        : "Calibrate it now.";
  const sentence = `At its last check the meter ${off}.${drifts} ${next}`;
  return { verdict, error, perDay, pairs: slopes.length, dueDay, sentence };
}
