/** Doses that can be weighed or drawn up: the closest there are, and how far that is from the closest of all. */

import { MOST_PER_LITRE, measureUnit } from "./dose.ts";
import { ELEMENT_NAMES } from "./elements.ts";
import { BadInput } from "./errors.ts";
import type { Feed } from "./feeds.ts";
import { type Grid, gridOf, type Measure, spoonAmounts } from "./grid.ts";
import { type GridFit, searchGrid } from "./grid-search.ts";
import { sayGiven, sayNumber } from "./saying.ts";
import {
  type Dose,
  doseProblem,
  type NotReached,
  reachedBy,
  type Solved,
  type SolveTask,
  solveDoses,
} from "./solve.ts";

export interface MeasurableTask extends SolveTask {
  /** Litres of water in the batch. */
  readonly litres: number;
  /** How each feed is measured, in the order of the feeds. */
  readonly measures: readonly Measure[];
  /** Relaxations to solve before giving up on the proof. */
  readonly mostNodes?: number | undefined;
}

export interface MeasuredDose extends Dose {
  /** g or mL for the whole batch: an amount that can be measured. */
  readonly perBatch: number;
}

/** A feed that this batch wants more finely than it can be measured. */
export interface TooCoarse {
  readonly feed: Feed;
  readonly unit: "g" | "mL";
  /** g or mL for the batch, if it could be measured. */
  readonly wantedPerBatch: number;
  /** Least amount that can be measured, and the least difference around what is wanted. */
  readonly smallest: number;
  readonly step: number;
  /** Even the smallest amount is more than the batch wants; otherwise its steps alone put an element off by over 1 %. */
  readonly overshoots: boolean;
  readonly why: string;
}

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

/** Off by more than this share is named, as in the exact solution. */
const REACHED_WITHIN = 0.01;

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

function gridsOf({ feeds, measures }: MeasurableTask): Grid[] {
  return feeds.map((feed, j) => {
    const measure = measures[j];
    if (measure === undefined) throw new BadInput("no-tool", `Nothing is given that measures ${feed.name}.`);
    return gridOf(measure, feed.name);
  });
}

/** Columns of a problem for one g or mL in the whole batch instead of in each litre. */
export function perBatchColumns(columns: readonly (readonly number[])[], litres: number): number[][] {
  return columns.map((column) => column.map((part) => part / litres));
}

export function checkLitres(litres: number): void {
  if (!(litres > 0 && Number.isFinite(litres))) {
    throw new BadInput("out-of-bounds", `The batch is ${sayGiven(litres)} L. Give a number above 0.`);
  }
}

interface Rounded {
  readonly exact: Solved;
  readonly doses: readonly MeasuredDose[];
  readonly grids: readonly Grid[];
  /** Share of a wanted element that one g or mL for the batch brings, by feed. */
  readonly columns: readonly (readonly number[])[];
  /** Wanted elements that finer steps would meet, as positions in the columns. */
  readonly avoidable: readonly number[];
}

function tooCoarseFeeds({ exact, doses, grids, columns, avoidable }: Rounded, litres: number): TooCoarse[] {
  const coarse: TooCoarse[] = [];
  exact.doses.forEach(({ feed, perLitre, unit }, j) => {
    const grid = grids[j] as Grid;
    const wantedPerBatch = perLitre * litres;
    if (!(wantedPerBatch > 0) || grid.last < 1) return;
    const smallest = grid.at(1);
    const below = Math.min(grid.below(wantedPerBatch), grid.last - 1);
    const step = grid.at(below + 1) - grid.at(below);
    const overshoots = smallest > wantedPerBatch;
    const rounding = Math.abs((doses[j] as MeasuredDose).perBatch - wantedPerBatch);
    const column = columns[j] as readonly number[];
    const throws = avoidable.some((i) => (column[i] as number) * Math.min(rounding, step) > REACHED_WITHIN);
    if (!overshoots && !throws) return;
    const wants = `this batch wants ${sayNumber(wantedPerBatch)} ${unit}`;
    const cure = "Dissolve it first and dose the stock solution, or mix a larger batch.";
    const why = overshoots
      ? `The least of ${feed.name} that can be measured is ${sayGiven(smallest)} ${unit}, but ${wants}. ${cure}`
      : `${feed.name} can be measured to ${sayNumber(step)} ${unit}, but ${wants}. ${cure}`;
    coarse.push({ feed, unit, wantedPerBatch, smallest, step, overshoots, why });
  });
  return coarse;
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
  const { wanted, feeds, water, litres, mostNodes } = task;
  checkLitres(litres);
  const grids = gridsOf(task);
  const exact = solveDoses({ wanted, feeds, water });
  const { symbols, scales, perUnit, columns, missing } = doseProblem({ wanted, feeds, water });
  // Without limits there is always an answer: nothing at all.
  const batchColumns = perBatchColumns(columns, litres);
  const found = searchGrid({ columns: batchColumns, wanted: missing, grids, mostNodes }) as GridFit;
  const doses = feeds.map((feed, j): MeasuredDose => {
    const perBatch = found.x[j] as number;
    const unit = measureUnit(feed);
    if (perBatch / litres > MOST_PER_LITRE) {
      throw new BadInput(
        "absurd-dose",
        `${feed.name} is so weak that ${sayNumber(perBatch / litres)} ${unit} would go into each litre. Leave it out of the mix.`,
      );
    }
    return { feed, perLitre: perBatch / litres, unit, perBatch };
  });
  const perLitre = doses.map((dose) => dose.perLitre);
  const reached = reachedBy(perUnit, perLitre, water);
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
    tooCoarse: tooCoarseFeeds({ exact, doses, grids, columns: batchColumns, avoidable }, litres),
  };
}
