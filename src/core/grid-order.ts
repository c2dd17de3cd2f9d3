/** Where a search over measurable amounts looks: which feed first, and how much of each is worth looking at. */

import type { Squares } from "./box.ts";
import { type Grid, nearest } from "./grid.ts";

/** Keeps the inverse finite when feeds are mixes of each other, relative to their own squares. */
const RIDGE = 1e-9;

/** A step that alone moves the misfit by more than this, one wanted element by a thirtieth, is coarse. */
const COARSE = 0.001;

/** 1 / (H⁻¹)_jj over the columns in `open`: how fast the misfit grows with x_j when the others make up for it. */
function curvatures(squares: Squares, open: readonly number[]): number[] {
  const n = open.length;
  const rows = open.map((j, i) => {
    const from = squares.products[j] as Float64Array;
    const row = new Float64Array(2 * n);
    open.forEach((k, c) => {
      row[c] = from[k] as number;
    });
    const own = from[j] as number;
    row[i] = own > 0 ? own * (1 + RIDGE) : 1;
    row[n + i] = 1;
    return row;
  });
  // Gauss–Jordan; positive definite, so no pivoting is needed.
  for (let p = 0; p < n; p++) {
    const pivotRow = rows[p] as Float64Array;
    const pivot = pivotRow[p] as number;
    for (let c = 0; c < 2 * n; c++) pivotRow[c] = (pivotRow[c] as number) / pivot;
    for (let r = 0; r < n; r++) {
      if (r === p) continue;
      const row = rows[r] as Float64Array;
      const share = row[p] as number;
      if (share === 0) continue;
      for (let c = 0; c < 2 * n; c++) row[c] = (row[c] as number) - share * (pivotRow[c] as number);
    }
  }
  return rows.map((row, i) => 1 / (row[n + i] as number));
}

/**
 * Columns in the order in which a search settles them: each time the one whose gap between neighbouring amounts, near
 * `around`, costs most with all others free [as in successive detection: Wolniansky et al. 1998].
 */
export function branchingOrder(squares: Squares, grids: readonly Grid[], around: Float64Array): number[] {
  const open = squares.columns.map((_, j) => j);
  const order: number[] = [];
  const gapOf = (j: number): number => {
    const grid = grids[j] as Grid;
    if (grid.last < 1) return 0;
    const index = Math.min(nearest(grid, around[j] as number), grid.last - 1);
    return grid.at(index + 1) - grid.at(index);
  };
  // A step that alone upsets the mix is settled first, also where another feed of its kind could make up for it.
  const coarse = open
    .map((j) => ({ j, cost: ((squares.products[j] as Float64Array)[j] as number) * gapOf(j) ** 2 }))
    .filter(({ cost }) => cost > COARSE)
    .sort((a, b) => b.cost - a.cost);
  for (const { j } of coarse) {
    order.push(j);
    open.splice(open.indexOf(j), 1);
  }
  while (open.length > 0) {
    const bends = curvatures(squares, open);
    let best = 0;
    let bestCost = -1;
    open.forEach((j, k) => {
      const cost = (bends[k] as number) * gapOf(j) ** 2;
      if (cost > bestCost) {
        best = k;
        bestCost = cost;
      }
    });
    order.push(open[best] as number);
    open.splice(best, 1);
  }
  return order;
}

export interface Overshoot {
  readonly columns: readonly (readonly number[])[];
  readonly wanted: readonly number[];
  readonly grids: readonly Grid[];
}

/**
 * The most of each feed that can be part of a mix with no element over by more than `reach`: columns have no negative
 * entries, so what one feed overshoots no other takes back. A feed that holds nothing wanted stays out.
 */
export function worthwhileMost({ columns, wanted, grids }: Overshoot, reach: number): Float64Array {
  return Float64Array.from(columns, (column, j) => {
    const grid = grids[j] as Grid;
    let most = Number.POSITIVE_INFINITY;
    column.forEach((part, i) => {
      if (part > 0) most = Math.min(most, Math.max((wanted[i] as number) + reach, 0) / part);
    });
    return most === Number.POSITIVE_INFINITY ? 0 : grid.at(grid.below(most * (1 + 1e-9)));
  });
}
