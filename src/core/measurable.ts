/** Doses that can be weighed or drawn up: the closest there are, and how far that is from the closest of all. */

import { REACHED_WITHIN, type TooCoarse, tooCoarseFeeds } from "./coarse.ts";
import { ELEMENT_NAMES } from "./elements.ts";
import { BadInput } from "./errors.ts";
import type { Feed } from "./feeds.ts";
import { type Measure, spoonAmounts } from "./grid.ts";
import { type MeasurableTask, type MeasuredDose, measurableDoses } from "./grid-doses.ts";
import { sayGiven } from "./saying.ts";
import { type NotReached, type Solved, solveDoses } from "./solve.ts";

export interface Measured extends Omit<Solved, "doses"> {
  /** One for each feed, in the order given, also those of 0. */
  readonly doses: readonly MeasuredDose[];
  /** The closest of all, were any amount measurable. */
  readonly exact: Solved;
  /** Misfit above that of `exact`, not negative. */
  readonly gap: number;
  /** Proven: no measurable doses have a misfit below this. */
  readonly misfitAtLeast: number;
  /** The doses are proven to be the closest measurable ones; otherwise the closest found. */
  readonly proven: boolean;
  readonly tooCoarse: readonly TooCoarse[];
}

export interface Tools {
  readonly scaleStepG?: number | undefined;
  readonly syringeStepMl?: number | undefined;
  /** Grams in one level spoon, by feed name; used where there is no scale. */
  readonly spoons?: ReadonlyMap<string, readonly number[]> | undefined;
  /** How many level spoonfuls one is willing to count; 12 where absent. */
  readonly mostSpoonfuls?: number | undefined;
}

/** How a feed is measured with these tools. Throws BadInput when nothing at hand measures it. */
export function measureWith(feed: Feed, tools: Tools): Measure {
  const step = feed.liquid ? tools.syringeStepMl : tools.scaleStepG;
  if (step !== undefined) return { kind: "step", step };
  if (feed.liquid) {
    throw new BadInput("no-tool", `${feed.name} is a liquid. Give the step of the syringe in mL.`);
  }
  const spoonG = tools.spoons?.get(feed.name) ?? [];
  if (spoonG.length === 0) {
    throw new BadInput(
      "no-tool",
      `Nothing measures ${feed.name}. Give the step of the scale in g, or weigh one level spoon of it once and give those grams.`,
    );
  }
  return { kind: "amounts", amounts: spoonAmounts({ spoonG, mostSpoonfuls: tools.mostSpoonfuls ?? 12 }) };
}

/** How many times a tool that takes at most `mostPerTime` is filled for an amount in the same unit. */
export function fillings(perBatch: number, mostPerTime: number): number {
  if (!(mostPerTime > 0)) {
    throw new BadInput("bad-capacity", `The tool holds ${sayGiven(mostPerTime)}. Give a number above 0.`);
  }
  return Math.ceil((perBatch / mostPerTime) * (1 - 1e-12));
}

function whyOff(exact: Solved, name: string, symbol: NotReached["symbol"]): string {
  const before = exact.notReached.find((row) => row.symbol === symbol);
  return before === undefined
    ? `${name} could be met with finer steps; with these no other amounts come closer over all.`
    : before.why;
}

/**
 * The closest measurable doses: the misfit of solveDoses, over amounts for the whole batch that each feed's measure
 * allows, found by branch and bound. Throws BadInput as solveDoses does, and for litres, steps or amounts that are
 * not above 0.
 */
export function solveMeasurable(task: MeasurableTask): Measured {
  const { wanted, feeds, water, litres } = task;
  const exact = solveDoses({ wanted, feeds, water });
  const { doses, reached, found, grids, columns, problem } = measurableDoses(task);
  const { symbols, scales } = problem;
  const notReached: NotReached[] = [];
  const avoidable: number[] = [];
  symbols.forEach((symbol, i) => {
    const goal = wanted[symbol] as number;
    const got = reached[symbol] ?? 0;
    if (Math.abs(got - goal) <= REACHED_WITHIN * (scales[i] as number)) return;
    const name = ELEMENT_NAMES[symbol];
    if (!exact.notReached.some((row) => row.symbol === symbol)) avoidable.push(i);
    const why = whyOff(exact, name.charAt(0).toUpperCase() + name.slice(1), symbol);
    notReached.push({ symbol, wanted: goal, reached: got, why });
  });
  return {
    doses,
    reached,
    misfit: found.misfit,
    notReached,
    exact,
    gap: Math.max(found.misfit - exact.misfit, 0),
    misfitAtLeast: found.bound,
    proven: found.complete,
    tooCoarse: tooCoarseFeeds({
      feeds,
      wanted: exact.doses.map(({ perLitre }) => perLitre * litres),
      measured: doses.map(({ perBatch }) => perBatch),
      grids,
      columns,
      avoidable,
    }),
  };
}
