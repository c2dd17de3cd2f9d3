/** Doses of a batch that is worked out: closest of all, then closest among those that can be measured, under its goals. */

import type { TooCoarse } from "../src/core/coarse.ts";
import type { Cost, Pack } from "../src/core/cost.ts";
import { type Amounts, type ElementSymbol, SYMBOLS } from "../src/core/elements.ts";
import { isBadInput } from "../src/core/errors.ts";
import type { Feed } from "../src/core/feeds.ts";
import { fewestFeeds } from "../src/core/fewest.ts";
import { solveMeasurable } from "../src/core/measurable.ts";
import type { EcOf } from "../src/core/mixture.ts";
import { type NotReached, solveDoses } from "../src/core/solve.ts";
import { offBy } from "./gauge.ts";
import type { Goals } from "./goals-draft.ts";
import { type Measuring, type Way, wayOf } from "./measuring-ways.ts";
import { goalDoses, scaled } from "./mix-goal-doses.ts";

export interface DoseTask {
  readonly wanted: Amounts;
  readonly feeds: readonly Feed[];
  readonly water: Amounts;
  /** null while it is not typed: then doses are for a litre and not measured. */
  readonly litres: number | null;
  readonly measuring: Measuring;
  readonly goals: Goals;
  readonly ecOf: EcOf;
  readonly packOf: (feed: Feed) => Pack | null;
  /** g or mL left; null where nobody can say. */
  readonly onHandOf: (feed: Feed) => number | null;
}

/** How far measuring takes the batch from the best possible. */
export interface Measured {
  /** Root of the mean square of what the wanted elements are off, as a share: measured, and at best. */
  readonly off: number;
  readonly offAtBest: number;
  /** Elements that measuring moved by more than 1 % of what is wanted, the furthest first. */
  readonly moved: readonly { readonly symbol: ElementSymbol; readonly bestMgL: number; readonly mgL: number }[];
  /** Nothing measurable comes closer. */
  readonly proven: boolean;
  readonly coarse: readonly TooCoarse[];
  readonly ways: readonly Way[];
}

export interface Doses {
  /** One for each feed of the task, also those of 0. */
  readonly doses: readonly { readonly feed: Feed; readonly perLitre: number; readonly perBatch: number | null }[];
  /** mg/L. */
  readonly reached: Amounts;
  /** mg/L that were aimed at, after strength and ratios. */
  readonly aimed: Amounts;
  readonly notReached: readonly NotReached[];
  readonly measured: Measured | null;
  /** Why nothing was measured although the litres are known; null otherwise. */
  readonly unmeasured: string | null;
  /** Sentences on what holds the mix back. */
  readonly notices: readonly string[];
  readonly cost: Cost | null;
}

/** Measuring moves an element by less than this without a word. */
const MOVED_BY = 0.01;

/** Root of the mean square of what the wanted elements are off. */
export function average(wanted: Amounts, reached: Amounts): number {
  const offs = SYMBOLS.flatMap((symbol) => {
    const goal = wanted[symbol];
    return goal === undefined ? [] : [offBy(goal, reached[symbol] ?? 0)];
  });
  return offs.length === 0 ? 0 : Math.sqrt(offs.reduce((sum, off) => sum + off * off, 0) / offs.length);
}

/** Elements that measuring moved, the furthest first. */
export function movedBy(wanted: Amounts, best: Amounts, reached: Amounts): Measured["moved"] {
  const size = (symbol: ElementSymbol): number =>
    Math.abs(offBy(wanted[symbol] ?? 0, reached[symbol] ?? 0) - offBy(wanted[symbol] ?? 0, best[symbol] ?? 0));
  return SYMBOLS.filter((symbol) => wanted[symbol] !== undefined && size(symbol) > MOVED_BY)
    .sort((a, b) => size(b) - size(a))
    .map((symbol) => ({ symbol, bestMgL: best[symbol] ?? 0, mgL: reached[symbol] ?? 0 }));
}

/** The ways to measure the feeds, or the sentence that says which of them nothing measures. */
function waysOf(feeds: readonly Feed[], measuring: Measuring): readonly Way[] | string | null {
  if (measuring.by === "any") return null;
  try {
    return feeds.map((feed) => wayOf(feed, measuring));
  } catch (error) {
    if (isBadInput(error)) return error.message;
    throw error;
  }
}

function plainDoses(task: DoseTask, ways: readonly Way[] | null): Omit<Doses, "unmeasured" | "cost"> {
  const { wanted, feeds, water, litres } = task;
  if (litres === null || ways === null) {
    const { doses, reached, notReached } = solveDoses({ wanted, feeds, water });
    return {
      doses: doses.map(({ feed, perLitre }) => ({
        feed,
        perLitre,
        perBatch: litres === null ? null : perLitre * litres,
      })),
      reached,
      aimed: wanted,
      notReached,
      measured: null,
      notices: [],
    };
  }
  const measures = ways.map(({ measure }) => measure);
  const { doses, reached, notReached, exact, proven, tooCoarse } = solveMeasurable({
    wanted,
    feeds,
    water,
    litres,
    measures,
  });
  return {
    doses,
    reached,
    aimed: wanted,
    notReached,
    measured: {
      off: average(wanted, reached),
      offAtBest: average(wanted, exact.reached),
      moved: movedBy(wanted, exact.reached, reached),
      proven,
      coarse: tooCoarse,
      ways,
    },
    notices: [],
  };
}

/** The same with the fewest feeds: the rest of them stand there with 0. */
function withFewest(task: DoseTask, within: number): DoseTask & { readonly left: readonly Feed[] } {
  const { feeds } = fewestFeeds({ wanted: scaled(task), feeds: task.feeds, water: task.water, tolerance: within });
  return { ...task, feeds, left: task.feeds.filter((feed) => !feeds.includes(feed)) };
}

/** Throws BadInput where goals contradict each other, the water or the feeds. */
export function findDoses(whole: DoseTask): Doses {
  const { goals, litres } = whole;
  const task = goals.fewestWithin === null ? { ...whole, left: [] } : withFewest(whole, goals.fewestWithin);
  const ways = waysOf(task.feeds, task.measuring);
  const usable = typeof ways === "string" || litres === null ? null : ways;
  const found = goals.plain ? { cost: null, ...plainDoses(task, usable) } : goalDoses(task, usable);
  const none = task.left.map((feed) => ({ feed, perLitre: 0, perBatch: litres === null ? null : 0 }));
  return {
    ...found,
    doses: [...found.doses, ...none],
    measured:
      found.measured === null
        ? null
        : { ...found.measured, ways: [...found.measured.ways, ...task.left.map(() => NO_WAY)] },
    unmeasured: typeof ways === "string" && litres !== null ? ways : null,
  };
}

const NO_WAY: Way = { kind: "tool", measure: { kind: "step", step: 1, most: 0 }, stock: null, words: () => "" };
