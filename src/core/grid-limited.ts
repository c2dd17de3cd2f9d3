/** A search over measurable amounts under limits, with the multipliers of the relaxation that make its bounds sharp. */

import { type GridFit, type GridTask, searchGrid } from "./grid-search.ts";
import { limitedLeastSquares } from "./quadratic.ts";

/** As searchGrid; null when no amounts keep the limits, measurable or not. */
export function searchLimitedGrid(task: GridTask): GridFit | null {
  const { columns, wanted, limits = [] } = task;
  if (limits.length === 0) return searchGrid(task);
  const turned = limits.map(({ coefficients, most }) => ({
    coefficients: coefficients.map((c) => -c),
    atLeast: -most,
  }));
  const relaxed = limitedLeastSquares({ columns, wanted, limits: turned });
  return relaxed === null ? null : searchGrid(task, relaxed.multipliers);
}
