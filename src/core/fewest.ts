/** The smallest set of feeds that still comes close enough to a target. */

import { measureUnit } from "./dose.ts";
import type { Amounts, ElementSymbol } from "./elements.ts";
import { BadInput } from "./errors.ts";
import type { Feed } from "./feeds.ts";
import { type Limit, type LimitedFit, limitedLeastSquares } from "./quadratic.ts";
import { sayGiven } from "./saying.ts";
import { type Dose, type DoseProblem, doseProblem, reachedBy, type SolveTask, solveDoses } from "./solve.ts";

export interface FewestTask extends SolveTask {
  /** How far each wanted element may be off, as a share of what is wanted: 0.05 is 5 %. */
  readonly tolerance: number;
}

export interface Fewest {
  /** In the order given. */
  readonly feeds: readonly Feed[];
  /** One for each of `feeds`: the closest doses of these that keep every element within its allowance. */
  readonly doses: readonly Dose[];
  readonly reached: Amounts;
  readonly misfit: number;
  /** Feeds without which no set comes close enough. */
  readonly needed: readonly Feed[];
  /** Elements that all feeds together leave further off than the tolerance; they may be as far off as then, no further. */
  readonly beyondTolerance: readonly ElementSymbol[];
}

/** 2¹² sets can be tried; a shelf of more usable feeds is thinned by the person. */
const MOST_FEEDS = 12;
/** Keeps the solution with all feeds inside its own allowance, whatever its last figures. */
const SLACK = 1e-6;

interface Band {
  readonly problem: DoseProblem;
  /** Greatest |reached − wanted| of each element, relative to its scale. */
  readonly allowed: readonly number[];
}

/** The closest doses of these feeds that keep every element in its band; null when none do. */
function closest({ problem, allowed }: Band, set: readonly number[]): LimitedFit | null {
  const columns = set.map((j) => problem.columns[j] as readonly number[]);
  const limits: Limit[] = [];
  problem.missing.forEach((missing, i) => {
    const coefficients = columns.map((column) => column[i] as number);
    const band = allowed[i] as number;
    limits.push({ coefficients, atLeast: missing - band });
    limits.push({ coefficients: coefficients.map((part) => -part), atLeast: -missing - band });
  });
  return limitedLeastSquares({ columns, wanted: problem.missing, limits });
}

/** Sets of `size` out of `pool`, in the order of the pool. */
function* setsOf(pool: readonly number[], size: number): Generator<readonly number[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let first = 0; first + size <= pool.length; first++) {
    for (const rest of setsOf(pool.slice(first + 1), size - 1)) yield [pool[first] as number, ...rest];
  }
}

/**
 * The fewest feeds whose doses bring every wanted element within `tolerance` of what is wanted, or no further off
 * than all feeds together leave it. Exact: every smaller set is tried or ruled out because it lacks a feed without
 * which even all the others fail. Among sets of that size, the closest; of those as close, the first in order.
 * Throws BadInput for more than 12 feeds that hold something wanted, a tolerance that is not above 0, and as
 * solveDoses does.
 */
export function fewestFeeds(task: FewestTask): Fewest {
  const { wanted, feeds, water, tolerance } = task;
  if (!(tolerance > 0 && tolerance <= 1)) {
    throw new BadInput(
      "out-of-bounds",
      `The tolerance is ${sayGiven(tolerance * 100)} %. Give a number above 0 and up to 100 %.`,
    );
  }
  const problem = doseProblem({ wanted, feeds, water });
  const useful = feeds
    .map((_, j) => j)
    .filter((j) => (problem.columns[j] as readonly number[]).some((part) => part > 0));
  if (useful.length > MOST_FEEDS) {
    throw new BadInput(
      "too-many-feeds",
      `The fewest feeds are found among at most ${MOST_FEEDS}, but ${useful.length} hold something that is wanted. Leave some out.`,
    );
  }
  const all = solveDoses({ wanted, feeds, water });
  const offNow = problem.symbols.map((symbol, i) => {
    const off = (all.reached[symbol] ?? 0) - (wanted[symbol] as number);
    return Math.abs(off) / (problem.scales[i] as number);
  });
  const band = { problem, allowed: offNow.map((off) => Math.max(tolerance, off) + SLACK) };
  const needed = useful.filter(
    (j) =>
      closest(
        band,
        useful.filter((other) => other !== j),
      ) === null,
  );
  const others = useful.filter((j) => !needed.includes(j));
  for (let size = 0; size <= others.length; size++) {
    let best: { set: number[]; found: LimitedFit } | null = null;
    for (const more of setsOf(others, size)) {
      const set = useful.filter((j) => needed.includes(j) || more.includes(j));
      const found = closest(band, set);
      if (found !== null && (best === null || found.misfit < best.found.misfit - 1e-12)) best = { set, found };
    }
    if (best !== null) {
      const { set, found } = best;
      const chosen = set.map((j) => feeds[j] as Feed);
      return {
        feeds: chosen,
        doses: chosen.map((feed, k) => ({ feed, perLitre: found.x[k] as number, unit: measureUnit(feed) })),
        reached: reachedBy(
          set.map((j) => problem.perUnit[j] as Amounts),
          found.x,
          water,
        ),
        misfit: found.misfit,
        needed: needed.map((j) => feeds[j] as Feed),
        beyondTolerance: problem.symbols.filter((_, i) => (offNow[i] as number) > tolerance),
      };
    }
  }
  // All feeds together lie inside the band by its making.
  throw new BadInput("no-set", "These feeds are too nearly alike to be sorted out. Leave one out.");
}
