/** Doses for one set of amounts under ratios, limits and a preference: what a goal comes down to. */

import { type Pack, pricePerUnit } from "./cost.ts";
import type { Amounts, ElementSymbol } from "./elements.ts";
import { BadInput } from "./errors.ts";
import type { Feed } from "./feeds.ts";
import { type NamedLimit, sayConflict } from "./goal-limits.ts";
import type { Measure } from "./grid.ts";
import { gridOf } from "./grid.ts";
import { checkLitres, perBatchColumns } from "./grid-doses.ts";
import { searchLimitedGrid } from "./grid-limited.ts";
import { type Limit, type LimitedFit, limitedLeastSquares } from "./quadratic.ts";
import { type DoseProblem, doseProblem } from "./solve.ts";

/** A feed as a goal sees it. */
export interface GoalFeed {
  readonly feed: Feed;
  /** What a pack costs; null when not known. */
  readonly pack?: Pack | null | undefined;
  /** g or mL left; more is not used. Absent: as much as needed. */
  readonly onHand?: number | undefined;
  /** To be used up before others. */
  readonly useFirst?: boolean | undefined;
}

/**
 * Which of the mixes that are close enough: the closest; the cheapest or the one with most from feeds to be used up,
 * where each element may on average (root of the mean square) be off by `tolerance` more, as a share.
 */
export type Prefer =
  | { readonly kind: "closest" }
  | { readonly kind: "cheapest"; readonly tolerance: number }
  | { readonly kind: "use up"; readonly tolerance: number };

export interface DoseWishes {
  readonly feeds: readonly GoalFeed[];
  readonly water: Amounts;
  readonly litres: number;
  readonly weights: Amounts;
  readonly equalities: readonly Limit[];
  readonly limits: readonly NamedLimit[];
  readonly prefer: Prefer;
  /** How each feed is measured; absent: to any amount. */
  readonly measures?: readonly Measure[] | undefined;
}

export interface GoalDoses {
  /** g or mL a litre. */
  readonly x: readonly number[];
  /** Sum over the wanted elements of weight × ((reached − wanted) / wanted)². */
  readonly misfit: number;
  /** All equalities are kept. */
  readonly held: boolean;
  /** One for each limit: it keeps the mix from coming closer. */
  readonly binding: readonly boolean[];
}

/** What only has a lower limit counts as wanted at that limit, this lightly: it decides nothing else. */
export const LIGHT = 1e-4;

/** Where holding a ratio puts the elements off by this share more on average, it is not held: nothing at all keeps any ratio. */
const WORTH_HOLDING = 0.25;

function weighted(problem: DoseProblem, weights: Amounts): { columns: number[][]; wanted: number[] } {
  const roots = problem.symbols.map((symbol) => {
    const weight = weights[symbol] ?? 1;
    if (!(weight > 0 && Number.isFinite(weight))) {
      throw new BadInput("bad-weight", `The weight of ${symbol} is ${weight}. Give a number above 0.`);
    }
    return Math.sqrt(weight);
  });
  const scale = (row: readonly number[]) => row.map((value, i) => value * (roots[i] as number));
  return { columns: problem.columns.map(scale), wanted: scale(problem.missing) };
}

/** Limits of what is on hand, in g or mL a litre. */
function stockLimits({ feeds, litres }: DoseWishes): NamedLimit[] {
  const limits: NamedLimit[] = [];
  feeds.forEach(({ feed, onHand }, j) => {
    if (onHand === undefined) return;
    const coefficients = feeds.map((_, k) => (k === j ? -1 : 0));
    limits.push({ coefficients, atLeast: -Math.max(onHand, 0) / litres, words: `no more ${feed.name} than is left` });
  });
  return limits;
}

function slopeOf({ feeds, prefer }: DoseWishes, columns: readonly (readonly number[])[]): number[] | null {
  if (prefer.kind === "closest") return null;
  if (!(prefer.tolerance > 0 && prefer.tolerance <= 1)) {
    throw new BadInput("out-of-bounds", "The tolerance must be above 0 and at most 100 %.");
  }
  return feeds.map(({ feed, pack, useFirst }, j) => {
    if (prefer.kind === "use up") return useFirst ? 0 : Math.hypot(...(columns[j] as readonly number[]));
    if (pack === null || pack === undefined) {
      throw new BadInput(
        "no-price",
        `The price of ${feed.name} is not known. Give price and pack size, or leave it out.`,
      );
    }
    return pricePerUnit(pack, feed.name);
  });
}

/** The steepest price that keeps the misfit within its allowance, found by halving; the misfit rises with the price. */
function preferred(
  solve: (slope: readonly number[] | undefined) => LimitedFit | null,
  slope: readonly number[] | null,
  mostMisfit: (least: number) => number,
): LimitedFit | null {
  const closest = solve(undefined);
  if (closest === null || slope === null) return closest;
  const size = Math.max(...slope);
  if (!(size > 0)) return closest;
  const most = mostMisfit(closest.misfit);
  let best = closest;
  let low = -14;
  let high = 6;
  for (let step = 0; step < 24; step++) {
    const middle = (low + high) / 2;
    const fit = solve(slope.map((one) => (one / size) * 10 ** middle));
    if (fit !== null && fit.misfit <= most) {
      best = fit;
      low = middle;
    } else high = middle;
  }
  return best;
}

function conflict(limits: readonly NamedLimit[], possible: (some: readonly Limit[]) => boolean): BadInput {
  const without = limits.filter((limit) => possible(limits.filter((other) => other !== limit)));
  return new BadInput("limits-conflict", sayConflict(limits, without));
}

/** columns·x, with `count` numbers; without columns these are all 0. */
function mixOf(columns: readonly (readonly number[])[], x: readonly number[], count: number): number[] {
  const mix = new Array<number>(count).fill(0);
  columns.forEach((column, j) => {
    column.forEach((part, i) => {
      mix[i] = (mix[i] as number) + part * (x[j] as number);
    });
  });
  return mix;
}

/**
 * Closest doses to `wanted` (mg/L) that keep every limit, and the equalities where that is worth while. With
 * measures, the measurable amounts that keep the limits and come closest to `wanted`; under a preference or ratios
 * that were held, those that come closest to the mix found so. Throws BadInput when the limits cannot all be kept, naming those that stand in the way.
 */
export function goalDoses(wanted: Amounts, wishes: DoseWishes): GoalDoses {
  checkLitres(wishes.litres);
  const feeds = wishes.feeds.map(({ feed }) => feed);
  const { columns, wanted: missing } = weighted(doseProblem({ wanted, feeds, water: wishes.water }), wishes.weights);
  const limits = [...wishes.limits, ...stockLimits(wishes)];
  const slope = slopeOf(wishes, columns);
  const count = missing.length;
  const allowance = (least: number) => {
    const more = wishes.prefer.kind === "closest" ? 0 : wishes.prefer.tolerance;
    return count * (Math.sqrt(least / count) + more) ** 2;
  };
  const fitWith = (equalities: readonly Limit[]) =>
    preferred(
      (price) => limitedLeastSquares({ columns, wanted: missing, equalities, limits, slope: price }),
      slope,
      allowance,
    );
  let fit = fitWith(wishes.equalities);
  let held = fit !== null;
  if (wishes.equalities.length > 0) {
    const free = fitWith([]);
    const most = free === null ? 0 : count * (Math.sqrt(free.misfit / count) + WORTH_HOLDING) ** 2;
    if (fit === null || (free !== null && fit.misfit > most)) {
      fit = free;
      held = false;
    }
  }
  if (fit === null) {
    throw conflict(limits, (some) => limitedLeastSquares({ columns, wanted: missing, limits: some }) !== null);
  }
  if (wishes.measures === undefined)
    return { x: fit.x, misfit: fit.misfit, held, binding: fit.binding.slice(0, wishes.limits.length) };
  const { litres, measures } = wishes;
  const exact = fit;
  // With a preference, only the feeds it chose are measured out.
  const used = feeds.map((_, j) => slope === null || (exact.x[j] as number) > 1e-9);
  const grids = feeds.map((feed, j) =>
    gridOf(used[j] ? (measures[j] as Measure) : { kind: "step", step: 1, most: 0 }, feed.name),
  );
  // A preference and ratios are in the mix found above and nowhere else, so that mix is what measuring keeps close to.
  const asFound = slope !== null || (held && wishes.equalities.length > 0);
  const goal = asFound ? mixOf(columns, exact.x, count) : missing;
  const found = searchLimitedGrid({
    columns: perBatchColumns(columns, litres),
    wanted: goal,
    grids,
    limits: limits.map(({ coefficients, atLeast }) => ({
      coefficients: coefficients.map((part) => -part / litres),
      most: -atLeast,
    })),
  });
  if (found === null) {
    throw new BadInput(
      "no-measurable",
      "With these steps no amounts keep every limit. Use a finer scale, a stock solution or a larger batch, or loosen a limit.",
    );
  }
  const x = found.x.map((amount) => amount / litres);
  const misfit = mixOf(columns, x, count).reduce((sum, part, i) => sum + (part - (missing[i] as number)) ** 2, 0);
  return {
    x,
    misfit,
    held: wishes.equalities.length === 0,
    binding: exact.binding.slice(0, wishes.limits.length),
  };
}

/** Wanted amounts with what only has a lower limit counted lightly; and the weights that do so. */
export function withLowerLimits(
  wanted: Amounts,
  atLeast: Amounts,
  weights: Amounts,
): { wanted: Amounts; weights: Amounts } {
  const more: Partial<Record<ElementSymbol, number>> = { ...wanted };
  const light: Partial<Record<ElementSymbol, number>> = { ...weights };
  for (const symbol of Object.keys(atLeast) as ElementSymbol[]) {
    if (more[symbol] !== undefined || atLeast[symbol] === 0) continue;
    more[symbol] = atLeast[symbol] as number;
    light[symbol] = LIGHT;
  }
  return { wanted: more, weights: light };
}
