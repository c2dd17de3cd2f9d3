/** Doses under goals beyond the target row: strength, ratios, limits, weights, cost; then measured close to what was found. */

import { tooCoarseFeeds } from "../src/core/coarse.ts";
import { type Amounts, type ElementSymbol, SYMBOLS } from "../src/core/elements.ts";
import { type GoalTask, solveGoals } from "../src/core/goals.ts";
import { gridOf } from "../src/core/grid.ts";
import { perBatchColumns } from "../src/core/grid-doses.ts";
import { sayNumber } from "../src/core/saying.ts";
import { doseProblem } from "../src/core/solve.ts";
import type { Goals } from "./goals-draft.ts";
import type { Way } from "./measuring-ways.ts";
import { average, type Doses, type DoseTask, movedBy } from "./mix-doses.ts";

/** With a strength by N all of the target goes up or down with its nitrogen. */
export function scaled({ wanted, goals: { strength } }: DoseTask): Amounts {
  const nitrogen = wanted.N ?? 0;
  if (strength?.kind !== "N" || !(nitrogen > 0)) return wanted;
  const all: Partial<Record<ElementSymbol, number>> = {};
  for (const symbol of SYMBOLS) {
    const goal = wanted[symbol];
    if (goal !== undefined) all[symbol] = (goal * strength.value) / nitrogen;
  }
  return all;
}

function goalTask(task: DoseTask): GoalTask {
  const { feeds, water, goals, packOf, onHandOf } = task;
  const { strength, ratios, limits, weights, prefer, useFirst } = goals;
  return {
    feeds: feeds.map((feed) => {
      const first = prefer.kind === "use up" && useFirst.includes(feed.name);
      const onHand = first ? onHandOf(feed) : null;
      return { feed, pack: packOf(feed), useFirst: first, ...(onHand === null ? {} : { onHand }) };
    }),
    water,
    litres: task.litres ?? 1,
    wanted: scaled(task),
    weights,
    ratios,
    ...(strength === null
      ? {}
      : {
          strength:
            strength.kind === "N"
              ? { kind: "N" as const, nitrogenMgL: strength.value }
              : { kind: "EC" as const, ecMsCm: strength.value, ecOf: task.ecOf },
        }),
    limits,
    prefer,
  };
}

/** Said where a limit on it was asked for. */
function ammoniumWords(share: number | null, { limits }: Goals): string[] {
  if (share === null || limits.ammoniumShareAtMost === undefined) return [];
  return [`${sayNumber(100 * share)} % of the nitrogen is ammonium.`];
}

export function goalDoses(task: DoseTask, ways: readonly Way[] | null): Omit<Doses, "unmeasured"> {
  const { feeds, water, litres } = task;
  const plan = goalTask(task);
  const best = solveGoals(plan);
  const measures = ways?.map(({ measure }) => measure) ?? null;
  const mix = litres === null || measures === null ? best : solveGoals({ ...plan, measures });
  const doses = mix.doses.map(({ feed, perLitre, perBatch }) => ({
    feed,
    perLitre,
    perBatch: litres === null ? null : perBatch,
  }));
  const { aimed, cost } = mix;
  const notices = [...mix.notices, ...ammoniumWords(mix.ammoniumShare, task.goals)];
  const reached = mix.mixture.amounts;
  const result = { doses, reached, aimed, notReached: [], notices, cost: litres === null ? null : cost };
  if (litres === null || measures === null || ways === null) return { ...result, measured: null };
  const problem = doseProblem({ wanted: aimed, feeds, water });
  const moved = movedBy(aimed, best.mixture.amounts, reached);
  const coarse = tooCoarseFeeds({
    feeds,
    wanted: best.doses.map(({ perBatch }) => perBatch),
    measured: mix.doses.map(({ perBatch }) => perBatch),
    grids: feeds.map((feed, j) => gridOf((measures[j] as Way["measure"]) ?? { kind: "step", step: 1 }, feed.name)),
    columns: perBatchColumns(problem.columns, litres),
    avoidable: problem.symbols.flatMap((symbol, i) => (moved.some((one) => one.symbol === symbol) ? [i] : [])),
  });
  return {
    ...result,
    measured: {
      off: average(aimed, reached),
      offAtBest: average(aimed, best.mixture.amounts),
      moved,
      // Ratios and prices are met before measuring, so nothing is claimed about what comes after.
      proven: false,
      coarse,
      ways,
    },
  };
}
