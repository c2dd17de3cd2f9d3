/** How many plants a trial takes to see a difference of a given size, by simulation with a recorded number. */

import { BadInput } from "./errors.ts";
import { pairBlocks, permutationTest } from "./permutation.ts";
import { randomOf } from "./random.ts";
import { sayGiven } from "./saying.ts";
import { studentQuantile } from "./spread.ts";
import { mean, standardDeviation } from "./tolerance.ts";

export type Design = "Pairs" | "Together";

export interface PowerTask {
  readonly design: Design;
  /** The smallest difference worth seeing, in the unit of the measure; above 0. */
  readonly difference: number;
  /** Standard deviation of the measure from plant to plant, for pairs of the difference within a pair; above 0. */
  readonly spread: number;
}

export interface Power {
  /** Plants in all. */
  readonly plants: number;
  /** Share of simulated trials with p ≤ 0.05. */
  readonly power: number;
}

export interface Needed {
  /** Null when more than 52 plants would be needed. */
  readonly found: Power | null;
  /** Simulated trials for each size; the share is right to about 1.3 in 100 (standard error at 0.8). */
  readonly runs: number;
}

/** p at which a difference counts as seen [Fisher's convention]. */
export const SEEN_P = 0.05;
/** Share of trials in which the difference is to be seen [common practice, no source]. */
export const WANTED_POWER = 0.8;
const RUNS = 1000;
const SEED = 20_261;
/** With fewer no outcome reaches 0.05: 2 of 2⁵ is 0.06, 2 of 20 is 0.1. */
export const FEWEST: Readonly<Record<Design, number>> = { Pairs: 12, Together: 8 };
const MOST_PLANTS = 52;
/** Beyond so many pairs, or plants without pairs, Student's t stands in for the exact test: a thousand of those would take minutes. */
const MOST_EXACT = 20;
const Z_TWO_SIDED = 1.959963984540054;
/** z for two-sided 0.05 plus z for a power of 0.8. */
const Z_SUM = 1.96 + 0.8416;

/** Whether one simulated trial gives p ≤ 0.05; for pairs, `a` holds the differences. */
function isSeen(a: readonly number[], b: readonly number[], design: Design): boolean {
  const count = design === "Pairs" ? a.length : a.length + b.length;
  if (count <= MOST_EXACT) {
    return (
      permutationTest(design === "Pairs" ? pairBlocks(a.map((value) => [value, 0] as const)) : [{ a, b }]).p <= SEEN_P
    );
  }
  const freedom = design === "Pairs" ? count - 1 : count - 2;
  const pooled =
    design === "Pairs"
      ? standardDeviation(a) / Math.sqrt(count)
      : Math.sqrt((standardDeviation(a) ** 2 + standardDeviation(b) ** 2) / a.length);
  const difference = design === "Pairs" ? mean(a) : mean(a) - mean(b);
  return Math.abs(difference) >= studentQuantile(Z_TWO_SIDED, freedom) * pooled;
}

/** Share of simulated trials with normal scatter in which this many plants, an even number, give p ≤ 0.05. */
export function powerOf({ design, difference, spread }: PowerTask, plants: number): Power {
  const random = randomOf(SEED);
  const half = plants / 2;
  let seen = 0;
  for (let run = 0; run < RUNS; run++) {
    const a = Array.from({ length: half }, () => difference + spread * random.normal());
    const b = Array.from({ length: half }, () => (design === "Pairs" ? 0 : spread * random.normal()));
    if (isSeen(a, b, design)) seen += 1;
  }
  return { plants, power: seen / RUNS };
}

function checkAboveNothing(value: number, what: string): void {
  if (!(value > 0 && Number.isFinite(value))) {
    throw new BadInput("out-of-bounds", `${what} is ${sayGiven(value)}. Give a number above 0.`);
  }
}

/**
 * The fewest plants with which a difference is seen (p ≤ 0.05) in 80 % of simulated trials, begun from the normal
 * approximation 2 ((1.96 + 0.84) spread / difference)², twice that without pairs. Throws BadInput for a difference or
 * spread not above 0.
 */
export function plantsNeeded(task: PowerTask): Needed {
  checkAboveNothing(task.difference, "The difference");
  checkAboveNothing(task.spread, "The spread");
  const pairs = (Z_SUM * task.spread) / task.difference;
  const guess = 2 * Math.ceil(pairs ** 2 * (task.design === "Pairs" ? 1 : 2));
  const fewest = FEWEST[task.design];
  // Far beyond what can be counted, nothing is simulated.
  if (guess > 1.5 * MOST_PLANTS) return { found: null, runs: RUNS };
  let plants = Math.min(Math.max(guess, fewest), MOST_PLANTS);
  let found = powerOf(task, plants);
  while (found.power >= WANTED_POWER && plants > fewest) {
    const fewer = powerOf(task, plants - 2);
    if (fewer.power < WANTED_POWER) break;
    plants -= 2;
    found = fewer;
  }
  while (found.power < WANTED_POWER && plants < MOST_PLANTS) {
    plants += 2;
    found = powerOf(task, plants);
  }
  return { found: found.power >= WANTED_POWER ? found : null, runs: RUNS };
}
