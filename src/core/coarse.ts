/** Feeds that a batch wants more finely than the tools can measure, each with what to do about it. */

import { measureUnit } from "./dose.ts";
import type { Feed } from "./feeds.ts";
import type { Grid } from "./grid.ts";
import { sayGiven, sayNumber } from "./saying.ts";

/** A feed that this batch wants more finely than it can be measured. */
export interface TooCoarse {
  readonly feed: Feed;
  readonly unit: "g" | "mL";
  /** g or mL for the batch, if it could be measured. */
  readonly wantedPerBatch: number;
  /** Least amount that can be measured, and the least difference around what is wanted. */
  readonly smallest: number;
  readonly step: number;
  /** Even the smallest amount is more than the batch wants. Either way its steps put an element off by over 1 %. */
  readonly overshoots: boolean;
  readonly why: string;
}

/** Off by more than this share is named, as in the exact solution. */
export const REACHED_WITHIN = 0.01;

/** Amounts in g or mL for the whole batch, in the order of the feeds. */
export interface RoundedDoses {
  readonly feeds: readonly Feed[];
  /** The closest of all. */
  readonly wanted: readonly number[];
  /** The closest that can be measured. */
  readonly measured: readonly number[];
  readonly grids: readonly Grid[];
  /** Share of a wanted element that one g or mL for the batch brings, by feed. */
  readonly columns: readonly (readonly number[])[];
  /** Wanted elements that finer steps would meet, as positions in the columns. */
  readonly avoidable: readonly number[];
}

export function tooCoarseFeeds({ feeds, wanted, measured, grids, columns, avoidable }: RoundedDoses): TooCoarse[] {
  const coarse: TooCoarse[] = [];
  feeds.forEach((feed, j) => {
    const grid = grids[j] as Grid;
    const unit = measureUnit(feed);
    const wantedPerBatch = wanted[j] as number;
    if (!(wantedPerBatch > 0) || grid.last < 1) return;
    const smallest = grid.at(1);
    const below = Math.min(grid.below(wantedPerBatch), grid.last - 1);
    const step = grid.at(below + 1) - grid.at(below);
    const rounding = Math.abs((measured[j] as number) - wantedPerBatch);
    const column = columns[j] as readonly number[];
    // A step that overshoots by a hair, or by what no element feels, is no reason to dissolve anything.
    const overshoots = smallest > wantedPerBatch && column.some((part) => part * rounding > REACHED_WITHIN);
    const throws = avoidable.some((i) => (column[i] as number) * Math.min(rounding, step) > REACHED_WITHIN);
    if (!overshoots && !throws) return;
    const wants = `this batch wants ${sayNumber(wantedPerBatch)} ${unit}`;
    const cure = `${feed.liquid ? "Thin it first and dose that" : "Dissolve it first and dose the stock solution"}, or mix a larger batch.`;
    const why = overshoots
      ? `The least of ${feed.name} that can be measured is ${sayGiven(smallest)} ${unit}, but ${wants}. ${cure}`
      : `${feed.name} can be measured to ${sayNumber(step)} ${unit}, but ${wants}. ${cure}`;
    coarse.push({ feed, unit, wantedPerBatch, smallest, step, overshoots, why });
  });
  return coarse;
}
