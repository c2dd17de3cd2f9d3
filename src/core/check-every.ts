/** How often to test the pH of a batch: every one at first, then every 2nd, 4th or 8th as one's own readings allow it. */

import { BadInput } from "./errors.ts";
import { checkNumber } from "./reading.ts";
import { sayGiven } from "./saying.ts";
import {
  type Chart,
  individualsChart,
  mean,
  oneSidedToleranceFactor,
  standardDeviation,
  toleranceFactor,
} from "./tolerance.ts";

/** Range that a solution's pH is held in [common practice, no source]. */
export const USUAL_PH = { low: 5.5, high: 6 } as const;

/** A change of this much at once has to show at the next test, pH. Our own choice: it takes a batch from the middle of the usual range well out of it. */
export const SHIFT_PH = 0.4;
const CONFIDENCE = 0.95;
/** Share of readings after such a change that the chart has to catch. */
const CAUGHT = 0.95;
/** Of this many gaps between tests one may hold a batch out of range; it sets the content of the tolerance interval. Our own choice. */
const GAPS_PER_MISS = 10;
/** Readings before the first batch goes untested, and before each longer gap. Our own choice; test/core/test-plan.test.ts simulates it. */
export const FIRST_READINGS = 6;
const MORE_READINGS = 3;
/** The last this many count, so that a slow drift is not averaged away. */
const LOOK_BACK = 25;
/** So many in a row on one side of the mean are a shift: Western Electric rule 4 [NIST/SEMATECH e-Handbook 6.3.2]. */
export const ONE_SIDE = 8;
/** A meter for the home repeats itself no better than this, pH; readings that all agree do not narrow the limits below it. */
const LEAST_SIGMA_PH = 0.02;
const STEPS = [2, 4, 8] as const;
export type Every = 1 | (typeof STEPS)[number];

export interface PHRange {
  readonly low: number;
  readonly high: number;
}

/** Limits between which so many of all batches lie, and how sure that is. */
export interface Tolerance extends PHRange {
  readonly content: number;
  readonly confidence: number;
}

export interface Standing {
  readonly every: Every;
  /** few: too few readings in a row; wide: the tolerance interval reaches out of range; blind: a shift might not show. */
  readonly reason: "few" | "wide" | "blind" | "steady";
  /** Limits for the next reading; null with fewer than six. */
  readonly chart: Chart | null;
  readonly tolerance: Tolerance | null;
  /** Readings that count, oldest first; at most 25. */
  readonly run: readonly number[];
}

/** A reading that ends a run: the next one begins anew. */
export interface Ending {
  /** shift: beyond the chart's limits; drift: eight readings on one side of the mean. */
  readonly reason: "out of range" | "shift" | "drift";
  readonly pH: number;
  readonly chart: Chart | null;
}

function chartOf(run: readonly number[]): Chart | null {
  if (run.length < FIRST_READINGS) return null;
  const chart = individualsChart(run);
  const half = Math.max(chart.high - chart.mean, 3 * LEAST_SIGMA_PH);
  return { ...chart, low: chart.mean - half, high: chart.mean + half };
}

function onOneSide(run: readonly number[]): boolean {
  if (run.length < FIRST_READINGS + ONE_SIDE) return false;
  const middle = mean(run);
  const last = run.slice(-ONE_SIDE);
  return last.every((pH) => pH > middle) || last.every((pH) => pH < middle);
}

/** What this reading means after that run: its end, or null. Throws BadInput for a pH outside 0 to 14. */
export function ending(run: readonly number[], pH: number, { low, high }: PHRange): Ending | null {
  checkNumber(pH, { what: "The pH", min: 0, max: 14 });
  const chart = chartOf(run);
  if (pH < low || pH > high) return { reason: "out of range", pH, chart };
  if (chart !== null && (pH < chart.low || pH > chart.high)) return { reason: "shift", pH, chart };
  return onOneSide([...run, pH]) ? { reason: "drift", pH, chart } : null;
}

function toleranceOf(run: readonly number[], every: number): Tolerance {
  const content = 1 - 1 / (GAPS_PER_MISS * (every - 1));
  const k = toleranceFactor({ count: run.length, content, confidence: CONFIDENCE });
  const half = k * Math.max(standardDeviation(run), LEAST_SIGMA_PH);
  const middle = mean(run);
  return { low: middle - half, high: middle + half, content, confidence: CONFIDENCE };
}

/** Whether a change of SHIFT_PH would lie beyond the chart's limits in at least 95 % of cases, stated with 95 % confidence. */
function wouldShow(run: readonly number[], chart: Chart): boolean {
  const k = oneSidedToleranceFactor({ count: run.length, content: CAUGHT, confidence: CONFIDENCE });
  return chart.high - chart.mean + k * Math.max(standardDeviation(run), LEAST_SIGMA_PH) <= SHIFT_PH;
}

/** How often to test after these readings in a row. */
export function standingOf(run: readonly number[], range: PHRange): Standing {
  const chart = chartOf(run);
  if (chart === null) return { every: 1, reason: "few", chart, tolerance: null, run };
  if (!wouldShow(run, chart)) return { every: 1, reason: "blind", chart, tolerance: toleranceOf(run, 2), run };
  let best: Standing = { every: 1, reason: "wide", chart, tolerance: toleranceOf(run, 2), run };
  STEPS.forEach((every, step) => {
    if (run.length < FIRST_READINGS + step * MORE_READINGS) return;
    const tolerance = toleranceOf(run, every);
    if (tolerance.low < range.low || tolerance.high > range.high) return;
    best = { every, reason: "steady", chart, tolerance, run };
  });
  return best;
}

/** Throws BadInput for limits outside 0 to 14, and for limits that cross. */
export function checkRange({ low, high }: PHRange): void {
  checkNumber(low, { what: "The lower limit", min: 0, max: 14 });
  checkNumber(high, { what: "The upper limit", min: 0, max: 14 });
  if (low >= high) {
    throw new BadInput(
      "limits-crossed",
      `The limits are ${sayGiven(low)} and ${sayGiven(high)}. Give the lower one first.`,
    );
  }
}

/** The run with one more reading; only what still counts is kept. */
export function continued(run: readonly number[], pH: number): number[] {
  return [...run.slice(1 - LOOK_BACK), pH];
}

/** Test the pH of every n-th batch, from the readings so far, oldest first. Throws BadInput for a pH outside 0 to 14 and for limits that cross. */
export function checkEvery(readings: readonly number[], range: PHRange = USUAL_PH): Every {
  checkRange(range);
  let run: number[] = [];
  for (const pH of readings) run = ending(run, pH, range) === null ? continued(run, pH) : [];
  return standingOf(run, range).every;
}
