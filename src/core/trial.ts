/** A trial on its way and at its end: what each plant did, the difference between the groups, and what that says. */

import { isoFromDay } from "./calendar.ts";
import { type DifferenceInterval, differenceInterval } from "./difference-interval.ts";
import { type Block, type ExactTest, permutationTest } from "./permutation.ts";
import { sayList, sayNumber } from "./saying.ts";
import { mean } from "./tolerance.ts";
import { type Measure, type MeasuredRow, measurePlants, type PlantMeasure } from "./trial-measure.ts";
import { type Design, FEWEST, SEEN_P } from "./trial-power.ts";

export interface Trial {
  readonly measure: Measure;
  readonly design: Design;
  /** Days since 1970-01-01; the trial ends when its last day is over. */
  readonly started: number;
  readonly ends: number;
  /** For pairs, plantsA[k] and plantsB[k] belong together. */
  readonly plantsA: readonly string[];
  readonly plantsB: readonly string[];
}

export type TrialVerdict = "not begun" | "running" | "difference" | "cannot tell" | "too few";

export interface TrialState {
  readonly verdict: TrialVerdict;
  readonly a: readonly PlantMeasure[];
  readonly b: readonly PlantMeasure[];
  /** Plants that count: with a value, and in pairs with one for the other, too. */
  readonly counted: number;
  /** Only of a trial that has ended; null also when no pair or no group has values. */
  readonly test: ExactTest | null;
  readonly interval: DifferenceInterval | null;
  readonly sentence: string;
}

/** "group A had 2 more new leaves a plant", "group A took 3 fewer days to the first new root". */
const WORDS: Readonly<Record<Measure, { readonly verb: string; readonly one: string; readonly many: string }>> = {
  "New leaves": { verb: "had", one: "new leaf a plant", many: "new leaves a plant" },
  "Days to first new leaf": { verb: "took", one: "day to the first new leaf", many: "days to the first new leaf" },
  "Days to first new root": { verb: "took", one: "day to the first new root", many: "days to the first new root" },
  Score: { verb: "had", one: "point", many: "points" },
};

function blocksOf(a: readonly PlantMeasure[], b: readonly PlantMeasure[], design: Design): Block[] {
  const known = (measures: readonly PlantMeasure[]) => measures.flatMap(({ value }) => (value === null ? [] : [value]));
  if (design === "Together") {
    const block = { a: known(a), b: known(b) };
    return block.a.length > 0 && block.b.length > 0 ? [block] : [];
  }
  return a.flatMap((one, k) => {
    const other = b[k];
    return one.value === null || other === undefined || other.value === null
      ? []
      : [{ a: [one.value], b: [other.value] }];
  });
}

/** "0.9 more", "2 fewer". */
function more(value: number): string {
  return value >= 0 ? `${sayNumber(value)} more` : `${sayNumber(-value)} fewer`;
}

function chance(p: number): string {
  if (p === 1) return "in every draw";
  const hundreds = Math.min(Math.round(p * 100), 99);
  return hundreds < 1 ? "in fewer than 1 of 100 draws" : `in ${hundreds} of 100 draws`;
}

function sayInterval(interval: DifferenceInterval | null): string {
  if (interval === null) return "";
  const about = interval.method === "exact" ? "" : ", approximately,";
  return ` By the 95 % interval${about} the true difference may be anything from ${more(interval.low)} to ${more(interval.high)}.`;
}

function endedSentence(
  trial: Trial,
  blocks: readonly Block[],
  test: ExactTest,
  interval: DifferenceInterval | null,
): string {
  const { measure, design } = trial;
  const size =
    design === "Pairs"
      ? `${blocks.length} pairs`
      : `${blocks[0]?.a.length ?? 0} and ${blocks[0]?.b.length ?? 0} plants`;
  const { verb, one, many } = WORDS[measure];
  const unit = sayNumber(Math.abs(test.difference)) === "1" ? one : many;
  const seen =
    test.difference === 0
      ? "the groups came out alike"
      : `group A ${verb} ${more(test.difference)} ${unit} than group B`;
  const p = `exact p ${test.p < 0.001 ? "below 0.001" : sayNumber(Number(test.p.toPrecision(2)))}, ${size}`;
  if (test.p <= SEEN_P) {
    return `A difference: ${seen}. Chance alone would part the groups as much ${chance(test.p)} (${p}).${sayInterval(interval)} Of trials in which nothing helps, 1 in 20 ends like this.`;
  }
  const but = test.difference === 0 ? "" : `, but chance alone would part the groups as much ${chance(test.p)}`;
  return `Cannot tell yet: ${seen}${but} (${p}).${sayInterval(interval)} This does not show that there is no difference.`;
}

/** Whether so few plants could give p ≤ 0.05 at all. */
function enough(blocks: readonly Block[], design: Design): boolean {
  const block = blocks[0];
  if (block === undefined) return false;
  if (design === "Pairs") return 2 * blocks.length >= FEWEST.Pairs;
  // One way in all of dividing them, on either side.
  const { splits } = permutationTest([{ a: block.a.map((_, k) => k), b: block.b.map((_, k) => k) }]);
  return 2 / splits <= SEEN_P;
}

/** The numbers of a trial on `today`, without words and interval. */
export interface TrialCount extends Pick<TrialState, "verdict" | "a" | "b" | "counted" | "test"> {
  readonly blocks: readonly Block[];
}

/**
 * What the log says of a trial on `today`. Until its last day is over there is no test, whatever the numbers look like:
 * looking early does not end it. Rows oldest first; `rows` must reach back to its first day.
 */
export function countTrial(trial: Trial, rows: readonly MeasuredRow[], today: number): TrialCount {
  const { started, ends, measure, design } = trial;
  const span = { started, until: Math.min(ends, today) };
  const a = measurePlants(measure, trial.plantsA, { rows, span });
  const b = measurePlants(measure, trial.plantsB, { rows, span });
  const blocks = blocksOf(a, b, design);
  const counted = blocks.reduce((sum, block) => sum + block.a.length + block.b.length, 0);
  const open = { a, b, counted, blocks, test: null };
  if (today <= started) return { ...open, verdict: "not begun" };
  if (today <= ends) return { ...open, verdict: "running" };
  if (!enough(blocks, design)) return { ...open, verdict: "too few" };
  const test = permutationTest(blocks);
  return { ...open, test, verdict: test.p <= SEEN_P ? "difference" : "cannot tell" };
}

/** The same with the interval, and in words for the grower. */
export function trialState(trial: Trial, rows: readonly MeasuredRow[], today: number): TrialState {
  const { blocks, ...count } = countTrial(trial, rows, today);
  const interval = count.test === null ? null : differenceInterval(blocks);
  const missing = [...count.a, ...count.b].filter(({ value }) => value === null).map(({ plant }) => plant);
  const without =
    missing.length === 0 || count.verdict === "not begun"
      ? ""
      : ` The log says nothing about ${sayList(missing, "and")}.`;
  const late = count.test === null ? 0 : [...count.a, ...count.b].filter(({ notYet }) => notYet).length;
  const waited =
    late === 0
      ? ""
      : ` ${late} ${late === 1 ? "plant" : "plants"} had none by the end and ${late === 1 ? "counts" : "count"} as ${trial.ends - trial.started} days.`;
  const sentence = `${verdictSentence(trial, { ...count, blocks, interval }, today)}${waited}${without}`;
  return { ...count, interval, sentence };
}

function verdictSentence(
  trial: Trial,
  { verdict, test, blocks, interval }: TrialCount & Pick<TrialState, "interval">,
  today: number,
): string {
  if (verdict === "not begun") return `It begins on ${isoFromDay(trial.started)}.`;
  if (verdict === "running") {
    const left = trial.ends - today;
    const days = left === 0 ? "today is its last day" : `${left} ${left === 1 ? "day" : "days"} to go`;
    return `It runs until ${isoFromDay(trial.ends)}, ${days}. The result comes after that; looking before does not end it.`;
  }
  if (test === null) {
    const least = trial.design === "Pairs" ? "6 pairs" : "4 plants in each group";
    return `Cannot tell: with so few plants not even the largest difference could be told from chance. It takes ${least} at least.`;
  }
  return endedSentence(trial, blocks, test, interval);
}

/** What is kept beside the trial: both means, and the sentence. */
export function resultText({ a, b, sentence }: TrialState): string {
  const means = [meanOf(a), meanOf(b)].map((value) => (value === null ? "nothing" : sayNumber(value)));
  return `On average A ${means[0]}, B ${means[1]}. ${sentence}`;
}

/** Mean of the values that are known, null without one. */
export function meanOf(measures: readonly PlantMeasure[]): number | null {
  const values = measures.flatMap(({ value }) => (value === null ? [] : [value]));
  return values.length === 0 ? null : mean(values);
}
