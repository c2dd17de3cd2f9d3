/** The closest doses that can be measured for a batch, as numbers; measurable.ts says the rest about them. */

import { MOST_PER_LITRE, measureUnit } from "./dose.ts";
import type { Amounts } from "./elements.ts";
import { BadInput } from "./errors.ts";
import { type Grid, gridOf, type Measure } from "./grid.ts";
import { type GridFit, searchGrid } from "./grid-search.ts";
import { sayGiven, sayNumber } from "./saying.ts";
import { type Dose, type DoseProblem, doseProblem, reachedBy, type SolveTask } from "./solve.ts";

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

/** Found doses with all that later steps build on. */
export interface GridDoses {
  /** One for each feed, in the order given, also those of 0. */
  readonly doses: readonly MeasuredDose[];
  /** mg/L of every element that the water or a feed in use states. */
  readonly reached: Amounts;
  readonly found: GridFit;
  readonly grids: readonly Grid[];
  /** Share of a wanted element that one g or mL for the batch brings, by feed. */
  readonly columns: readonly (readonly number[])[];
  readonly problem: DoseProblem;
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

/**
 * The misfit of solveDoses, least over amounts for the whole batch that each feed's measure allows, by branch and
 * bound. Throws BadInput as doseProblem does, for litres, steps or amounts that are not above 0, and for a feed so
 * weak that its dose would be absurd.
 */
export function measurableDoses(task: MeasurableTask): GridDoses {
  const { feeds, water, litres, mostNodes } = task;
  checkLitres(litres);
  const grids = gridsOf(task);
  const problem = doseProblem(task);
  const columns = perBatchColumns(problem.columns, litres);
  // Without limits there is always an answer: nothing at all.
  const found = searchGrid({ columns, wanted: problem.missing, grids, mostNodes }) as GridFit;
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
  return { doses, reached: reachedBy(problem.perUnit, perLitre, water), found, grids, columns, problem };
}
