/** The amounts of a feed that can be measured out: multiples of a step, or a list of spoonfuls. */

import { BadInput } from "./errors.ts";
import { sayGiven } from "./saying.ts";

/** How a feed is measured for the whole batch, in g or mL. 0 can always be measured: leave it out. */
export type Measure =
  | {
      readonly kind: "step";
      /** Smallest amount and smallest difference, above 0. */
      readonly step: number;
      /** Never more than this, for instance what is on hand. */
      readonly most?: number | undefined;
    }
  | {
      readonly kind: "amounts";
      /** Each above 0, in any order. */
      readonly amounts: readonly number[];
    };

/** Measurable amounts in ascending order, the first of them 0. */
export interface Grid {
  readonly last: number;
  at(index: number): number;
  /** Index of the greatest amount that is not above x. */
  below(x: number): number;
}

/** A multiple as one writes it: 0.3, not 0.30000000000000004. Twelve figures are finer than any balance. */
const multiple = (count: number, step: number) => Number((count * step).toPrecision(12));

/** Beyond this many steps a number no longer tells one step from the next. */
const MOST_STEPS = 1e9;

/** Throws BadInput for a step or an amount that is not above 0, naming the feed. */
export function gridOf(measure: Measure, feedName: string): Grid {
  if (measure.kind === "step") {
    const { step, most = Number.POSITIVE_INFINITY } = measure;
    if (!(step > 0 && Number.isFinite(step))) {
      throw new BadInput("bad-step", `The step for ${feedName} is ${sayGiven(step)}. Give a number above 0.`);
    }
    if (!(most >= 0)) {
      throw new BadInput("bad-step", `The most of ${feedName} is ${sayGiven(most)}. Give 0 or more.`);
    }
    const last = Math.min(Math.floor((most / step) * (1 + 1e-12)), MOST_STEPS);
    return {
      last,
      at: (index) => multiple(index, step),
      below: (x) => {
        const index = Math.min(Math.max(Math.floor(x / step), 0), last);
        return index < last && multiple(index + 1, step) <= x ? index + 1 : index;
      },
    };
  }
  const amounts = [0, ...[...measure.amounts].sort((a, b) => a - b)];
  for (const amount of measure.amounts) {
    if (!(amount > 0 && Number.isFinite(amount))) {
      throw new BadInput("bad-step", `A spoon of ${feedName} holds ${sayGiven(amount)}. Give a number above 0.`);
    }
  }
  const values = amounts.filter((amount, k) => k === 0 || amount !== amounts[k - 1]);
  return {
    last: values.length - 1,
    at: (index) => values[index] as number,
    below: (x) => {
      let low = 0;
      let high = values.length;
      while (high - low > 1) {
        const middle = (low + high) >> 1;
        if ((values[middle] as number) <= x) low = middle;
        else high = middle;
      }
      return low;
    },
  };
}

/** Index of the amount nearest to x; of two as near, the smaller. */
export function nearest(grid: Grid, x: number): number {
  const low = grid.below(x);
  if (low >= grid.last) return low;
  return grid.at(low + 1) - x < x - grid.at(low) ? low + 1 : low;
}

export interface SpoonSet {
  /** Grams of this feed in one level spoon, for each spoon at hand. */
  readonly spoonG: readonly number[];
  /** How many spoonfuls one is willing to count in all. */
  readonly mostSpoonfuls: number;
}

/** More distinct amounts than this is no longer spoon work. */
const MOST_AMOUNTS = 5000;

/**
 * Every amount that up to `mostSpoonfuls` level spoons make, ascending, in g. Throws BadInput for a spoon that
 * holds nothing, a count outside 1 to 50, and spoons that make more than 5000 amounts.
 */
export function spoonAmounts({ spoonG, mostSpoonfuls }: SpoonSet): number[] {
  if (!(Number.isInteger(mostSpoonfuls) && mostSpoonfuls >= 1 && mostSpoonfuls <= 50)) {
    throw new BadInput(
      "bad-spoons",
      `The count of spoonfuls is ${sayGiven(mostSpoonfuls)}. Give a whole number 1 to 50.`,
    );
  }
  // Fewest spoonfuls that make an amount, by the amount in micrograms, so that 0.1 + 0.2 and 0.3 are one.
  let fewest = new Map<number, number>([[0, 0]]);
  for (const grams of spoonG) {
    if (!(grams > 0 && grams < 1000)) {
      throw new BadInput("bad-spoons", `A spoon holds ${sayGiven(grams)} g. Give a number above 0 and below 1000.`);
    }
    const size = Math.round(grams * 1e6);
    const next = new Map(fewest);
    for (const [micrograms, count] of fewest) {
      for (let more = 1; count + more <= mostSpoonfuls; more++) {
        const sum = micrograms + more * size;
        next.set(sum, Math.min(next.get(sum) ?? Number.POSITIVE_INFINITY, count + more));
      }
    }
    if (next.size > MOST_AMOUNTS) {
      throw new BadInput("bad-spoons", `These spoons make more than ${MOST_AMOUNTS} amounts. Count fewer spoonfuls.`);
    }
    fewest = next;
  }
  return [...fewest.keys()]
    .filter((micrograms) => micrograms > 0)
    .sort((a, b) => a - b)
    .map((micrograms) => micrograms / 1e6);
}

/**
 * The fewest level spoonfuls that make an amount of spoonAmounts: how many of each spoon, in the order of `spoonG`.
 * Null for an amount that they do not make.
 */
export function spoonfulsFor(amountG: number, { spoonG, mostSpoonfuls }: SpoonSet): number[] | null {
  const order = spoonG.map((_, k) => k).sort((a, b) => (spoonG[b] as number) - (spoonG[a] as number));
  const counts = spoonG.map(() => 0);
  let best: number[] | null = null;
  let fewest = mostSpoonfuls + 1;
  const look = (at: number, left: number, used: number): void => {
    if (left === 0 && used < fewest) {
      best = counts.slice();
      fewest = used;
    }
    const spoon = order[at];
    if (left <= 0 || spoon === undefined) return;
    const size = Math.round((spoonG[spoon] as number) * 1e6);
    // The largest spoon first, so that the first way found is seldom beaten.
    for (let many = Math.min(Math.floor(left / size), fewest - 1 - used); many >= 0; many--) {
      counts[spoon] = many;
      look(at + 1, left - many * size, used + many);
    }
    counts[spoon] = 0;
  };
  look(0, Math.round(amountG * 1e6), 0);
  return best;
}
