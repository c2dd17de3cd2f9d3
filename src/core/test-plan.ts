/** The plan for testing the pH of the next batch, from the batches so far, with its reason in a sentence. */

import { isoFromDay } from "./calendar.ts";
import {
  checkRange,
  continued,
  type Ending,
  type Every,
  ending,
  FIRST_READINGS,
  ONE_SIDE,
  type PHRange,
  SHIFT_PH,
  type Standing,
  standingOf,
  type Tolerance,
  USUAL_PH,
} from "./check-every.ts";
import { sayGiven } from "./saying.ts";
import type { Chart } from "./tolerance.ts";

/** Longer than this without a batch and everything is looked at anew, days. Common practice, no source. */
export const LONGEST_PAUSE_DAYS = 60;

/** Why the gap is what it is; the plan's sentence says it. new: no reading of these waters, feeds, lots and acid. */
export type PlanReason = Standing["reason"] | Ending["reason"] | "new" | "pause";

export interface PlanReading {
  /** Days since 1970-01-01. */
  readonly day: number;
  /** Null for a batch that was not tested. */
  readonly pH: number | null;
  /** What the batch was made from: the same water, feeds, lots and acid give the same text. */
  readonly key: string;
}

export interface PlanTask extends Partial<PHRange> {
  /** Batches so far, oldest first, tested or not. */
  readonly readings: readonly PlanReading[];
  /** The batch to be mixed. */
  readonly next: { readonly day: number; readonly key: string };
  /** 60 where absent. */
  readonly longestPauseDays?: number | undefined;
}

export interface TestPlan extends Omit<Standing, "reason"> {
  readonly reason: PlanReason;
  /** The next batch is one to test. */
  readonly due: boolean;
  /** Batches of this key mixed since the last test. */
  readonly untested: number;
  /** Why, as it follows after a colon or "because"; may be two sentences. */
  readonly why: string;
  /** One or two sentences for the grower: how often, and why. */
  readonly sentence: string;
}

const say = (pH: number) => pH.toFixed(2);
const sayRange = ({ low, high }: PHRange) => `${say(low)} to ${say(high)}`;
const EVERY_NTH: Readonly<Record<Every, string>> = {
  1: "every batch",
  2: "every 2nd batch",
  4: "every 4th batch",
  8: "every 8th batch",
};

interface Since {
  readonly ended: Ending | null;
  readonly endedDay: number | null;
  readonly paused: number | null;
}

type Reasons = Pick<TestPlan, "reason" | "chart" | "tolerance" | "run">;

function reasonSentence({ reason, chart, tolerance, run }: Reasons, range: PHRange, since: Since): string {
  const { ended, endedDay, paused } = since;
  const limits = `${sayGiven(range.low)} to ${sayGiven(range.high)}`;
  const on = endedDay === null ? "" : ` on ${isoFromDay(endedDay)}`;
  switch (reason) {
    case "new":
      return "there is no reading yet with this water, these feeds, lots and acid.";
    case "pause":
      return `nothing was mixed from these for ${paused} days.`;
    case "out of range":
      return `the last reading, pH ${say(ended?.pH ?? 0)}${on}, lies outside ${limits}.`;
    case "shift":
      return `the last reading, pH ${say(ended?.pH ?? 0)}${on}, lies outside ${sayRange(ended?.chart as Chart)}, where the readings before it said it would lie. Something has changed.`;
    case "drift":
      return `the last ${ONE_SIDE} readings all lie on one side of the mean. The pH is moving.`;
    case "few": {
      const count = `${run.length === 1 ? "there is 1 reading" : `there are ${run.length} readings`}`;
      const after = ended === null ? "so far" : `since pH ${say(ended.pH)}${on} was off`;
      return `${count} ${after}. From ${FIRST_READINGS} on, one may be left out.`;
    }
    case "blind":
      return `the readings scatter so much that a change of ${SHIFT_PH} might not show at the next test.`;
    case "wide":
      return `by the last ${run.length} readings batches may lie anywhere from ${sayRange(tolerance as Tolerance)}, which reaches outside ${limits}.`;
    case "steady": {
      const { content, confidence } = tolerance as Tolerance;
      return `the last ${run.length} readings are steady. With ${Math.round(confidence * 100)} % confidence, at least ${Math.floor(content * 100)} in 100 batches lie from ${sayRange(tolerance as Tolerance)}, within ${limits}. Outside ${sayRange(chart as Chart)}, test every batch again.`;
    }
  }
}

/**
 * How often to test, for the next batch. Only batches of the same `key` count; after a change of water, feeds, lot or
 * acid there are none, so every batch is tested. A gap of more than `longestPauseDays` between two batches of the key,
 * a reading out of range and a shift each begin anew. Throws BadInput as checkEvery does.
 */
export function testPlan(task: PlanTask): TestPlan {
  const { next, longestPauseDays = LONGEST_PAUSE_DAYS } = task;
  const range = { low: task.low ?? USUAL_PH.low, high: task.high ?? USUAL_PH.high };
  checkRange(range);
  let run: number[] = [];
  let since: Since = { ended: null, endedDay: null, paused: null };
  let lastDay: number | null = null;
  let untested = 0;
  const pauseBefore = (day: number): boolean => {
    const gap = lastDay === null ? 0 : day - lastDay;
    lastDay = day;
    if (gap <= longestPauseDays) return false;
    run = [];
    since = { ended: null, endedDay: null, paused: gap };
    return true;
  };
  for (const { day, pH, key } of task.readings) {
    if (key !== next.key) continue;
    pauseBefore(day);
    if (pH === null) {
      untested += 1;
      continue;
    }
    untested = 0;
    const ended = ending(run, pH, range);
    run = ended === null ? continued(run, pH) : [];
    if (ended !== null) since = { ended, endedDay: day, paused: null };
  }
  const isNew = lastDay === null;
  const paused = pauseBefore(next.day);
  const standing = standingOf(run, range);
  const reason: PlanReason = isNew
    ? "new"
    : paused
      ? "pause"
      : run.length === 0 && since.ended !== null
        ? since.ended.reason
        : standing.reason;
  const plan = { ...standing, reason };
  const due = untested + 1 >= plan.every;
  const turn = plan.every === 1 ? "" : due ? " This is one to test." : " This one need not be tested.";
  const why = reasonSentence(plan, range, since);
  const sentence = `Test the pH of ${EVERY_NTH[plan.every]}: ${why}${turn}`;
  return { ...plan, due, untested, why, sentence };
}
