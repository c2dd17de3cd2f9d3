/** Non-negative least squares against two other programs on a few hundred random problems. */

import fc from "fast-check";
import { nnls } from "nnls";
import { solveQP } from "quadprog";
import { describe, expect, it } from "vitest";
import { nonNegativeLeastSquares } from "../../src/core/nnls.ts";
import { expectOptimal, type Problem } from "./optimality.ts";

const rowsOf = ({ columns, wanted }: Problem) => wanted.map((_, i) => columns.map((column) => column[i] as number));

/** Columns with 0 here and there, as feeds have; at least as many rows as columns, so that the other programs have one answer. */
const problems = (count: number, seed: number): Problem[] => {
  const share = fc.oneof(
    { weight: 1, arbitrary: fc.constant(0) },
    { weight: 2, arbitrary: fc.double({ min: 0.01, max: 3, noNaN: true }) },
  );
  const shape = fc.integer({ min: 1, max: 12 }).chain((columns) =>
    fc.integer({ min: columns, max: 12 }).chain((rows) =>
      fc.record({
        columns: fc.array(fc.array(share, { minLength: rows, maxLength: rows }), {
          minLength: columns,
          maxLength: columns,
        }),
        wanted: fc.array(
          fc.integer({ min: -1_000, max: 2_000 }).map((thousandths) => thousandths / 1_000),
          {
            minLength: rows,
            maxLength: rows,
          },
        ),
      }),
    ),
  );
  return fc.sample(shape, { numRuns: count, seed });
};

/** Smallest singular value is not near 0, else the other programs answer with one of many x. */
function wellPosed({ columns }: Problem): boolean {
  const basis: number[][] = [];
  for (const column of columns) {
    let rest = column;
    for (const q of basis) {
      const along = rest.reduce((sum, value, i) => sum + value * (q[i] ?? 0), 0);
      rest = rest.map((value, i) => value - along * (q[i] ?? 0));
    }
    const length = Math.hypot(...rest);
    if (length < 0.05 * Math.hypot(...column) || length === 0) return false;
    basis.push(rest.map((value) => value / length));
  }
  return true;
}

/** min |Ax − b| with x ≥ 0 as a quadratic program; quadprog counts from 1. */
function byQuadprog(problem: Problem): number[] {
  const { columns, wanted } = problem;
  const from1 = <T>(list: T[]): T[] => [undefined as T, ...list];
  const dot = (a: number[], b: number[]) => a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
  const D = from1(columns.map((a) => from1(columns.map((b) => dot(a, b)))));
  const d = from1(columns.map((a) => dot(a, wanted)));
  const A = from1(columns.map((_, i) => from1(columns.map((_, j) => (i === j ? 1 : 0)))));
  const answer = solveQP(D, d, A, from1(columns.map(() => 0)));
  if (answer.message !== "") throw new Error(answer.message);
  return answer.solution.slice(1);
}

describe("against other programs, on random problems", () => {
  const sample = problems(600, 20_260_301).filter(wellPosed);

  it("enough of the sample is well posed to mean something", () => {
    expect(sample.length).toBeGreaterThan(300);
  });

  it("npm quadprog (Goldfarb & Idnani 1983) finds the same x", () => {
    for (const problem of sample) {
      const { x } = nonNegativeLeastSquares(problem.columns, problem.wanted);
      const other = byQuadprog(problem);
      const scale = 1 + Math.max(...other.map(Math.abs));
      x.forEach((value, j) => {
        expect(Math.abs(value - (other[j] ?? Number.NaN))).toBeLessThan(1e-6 * scale);
      });
    }
  });

  it("npm nnls, where it settles, finds the same x", () => {
    const gaveUp: Problem[] = [];
    for (const problem of sample) {
      let other: number[];
      try {
        other = nnls(rowsOf(problem), problem.wanted, { maxIterations: 500 }).x.to1DArray();
      } catch {
        gaveUp.push(problem);
        continue;
      }
      const { x } = nonNegativeLeastSquares(problem.columns, problem.wanted);
      const scale = 1 + Math.max(...x);
      x.forEach((value, j) => {
        expect(Math.abs(value - (other[j] ?? Number.NaN))).toBeLessThan(1e-6 * scale);
      });
    }
    // On about one in seven it runs out of turns, however many it is given; quadprog above has answered those too.
    expect(sample.length - gaveUp.length).toBeGreaterThan(400);
    gaveUp.forEach(expectOptimal);
  });
});
