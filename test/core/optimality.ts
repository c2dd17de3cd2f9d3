/** What makes a non-negative least squares answer the best one: for tests. */

import { expect } from "vitest";
import { nonNegativeLeastSquares } from "../../src/core/nnls.ts";

export interface Problem {
  readonly columns: number[][];
  readonly wanted: number[];
}

const misfit = ({ columns, wanted }: Problem, x: readonly number[]) =>
  Math.hypot(...wanted.map((b, i) => columns.reduce((sum, column, j) => sum - (column[i] ?? 0) * (x[j] ?? 0), b)));

/** x ≥ 0, no way up that lowers the misfit, no slack where x > 0 (Karush–Kuhn–Tucker). */
export function expectOptimal(problem: Problem): void {
  const { x, residual, gradient } = nonNegativeLeastSquares(problem.columns, problem.wanted);
  const size = Math.hypot(...problem.wanted);
  problem.columns.forEach((column, j) => {
    const tolerance = 1e-7 * Math.hypot(...column) * size + Number.MIN_VALUE;
    expect(x[j]).toBeGreaterThanOrEqual(0);
    expect(gradient[j]).toBeLessThanOrEqual(tolerance);
    if ((x[j] ?? 0) > 0) expect(Math.abs(gradient[j] ?? 0)).toBeLessThanOrEqual(tolerance);
  });
  expect(Math.abs(residual - misfit(problem, x))).toBeLessThanOrEqual(1e-9 * (1 + size));
}
