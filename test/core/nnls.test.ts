/** Non-negative least squares against two other programs, the book's example, and its own optimality conditions. */

import fc from "fast-check";
import { nnls } from "nnls";
import { solveQP } from "quadprog";
import { describe, expect, it } from "vitest";
import { NoConvergence } from "../../src/core/errors.ts";
import { nonNegativeLeastSquares } from "../../src/core/nnls.ts";
import { readReference } from "./reference.ts";
import { refusal } from "./refusal.ts";

type Problem = { columns: number[][]; wanted: number[] };

const rowsOf = ({ columns, wanted }: Problem) => wanted.map((_, i) => columns.map((column) => column[i] as number));

const misfit = ({ columns, wanted }: Problem, x: readonly number[]) =>
  Math.hypot(...wanted.map((b, i) => columns.reduce((sum, column, j) => sum - (column[i] ?? 0) * (x[j] ?? 0), b)));

/** x ≥ 0, no way up that lowers the misfit, no slack where x > 0 (Karush–Kuhn–Tucker). */
function expectOptimal(problem: Problem): void {
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

describe("Lawson & Hanson 1974, ch. 23", () => {
  const { t, w, slope, intercept, norm } = readReference<{
    t: number[];
    w: number[];
    slope: number;
    intercept: number;
    norm: number;
  }>("lawson-hanson.json");

  it("the line with slope, intercept ≥ 0 and slope + intercept ≤ 1", () => {
    // The sum's bound, active in the book, is put in as a heavy row with its own slack ≥ 0: slope + intercept + slack = 1.
    const heavy = 1e4;
    const columns = [
      [...t, heavy],
      [...t.map(() => 1), heavy],
      [...t.map(() => 0), heavy],
    ];
    const { x } = nonNegativeLeastSquares(columns, [...w, heavy]);
    expect(x[0]).toBeCloseTo(slope, 4);
    expect(x[1]).toBeCloseTo(intercept, 4);
    expect(x[2]).toBe(0);
    const off = Math.hypot(...w.map((value, i) => value - (x[0] ?? 0) * (t[i] ?? 0) - (x[1] ?? 0)));
    expect(off).toBeCloseTo(norm, 4);
  });
});

describe("awkward problems", () => {
  it.each<[string, number[][], number[], number[]]>([
    ["no column", [], [1, 2], []],
    ["no row", [[], []], [], [0, 0]],
    [
      "a column of zeros",
      [
        [0, 0],
        [1, 0],
      ],
      [2, 0],
      [0, 2],
    ],
    [
      "nothing wanted",
      [
        [1, 0],
        [0, 1],
      ],
      [0, 0],
      [0, 0],
    ],
    [
      "only less is wanted",
      [
        [1, 0],
        [0, 1],
      ],
      [-1, -2],
      [0, 0],
    ],
    [
      "equal columns: the first is used",
      [
        [1, 2],
        [1, 2],
        [1, 2],
      ],
      [2, 4],
      [2, 0, 0],
    ],
    [
      "a multiple of another column: the first is used",
      [
        [1, 2],
        [10, 20],
      ],
      [2, 4],
      [2, 0],
    ],
    [
      "more columns than rows",
      [
        [1, 0],
        [0, 1],
        [1, 1],
      ],
      [1, 1],
      [0, 0, 1],
    ],
    [
      "a tie between two columns",
      [
        [1, 0, 1],
        [0, 1, 1],
      ],
      [1, 1, 2],
      [1, 1],
    ],
  ])("%s", (_, columns, wanted, x) => {
    const fit = nonNegativeLeastSquares(columns, wanted);
    expect(fit.x.length).toBe(x.length);
    x.forEach((value, j) => {
      expect(fit.x[j]).toBeCloseTo(value, 12);
    });
  });

  it("columns a millionfold apart in size", () => {
    const fit = nonNegativeLeastSquares(
      [
        [1e6, 0, 1e6],
        [0, 1e-6, 1e-6],
      ],
      [1, 1, 2],
    );
    expect((fit.x[0] ?? 0) * 1e6).toBeCloseTo(1, 9);
    expect((fit.x[1] ?? 0) * 1e-6).toBeCloseTo(1, 9);
  });

  it("stopped too early, it says how far it was", () => {
    const identity = [
      [1, 0],
      [0, 1],
    ];
    let residual = 0;
    try {
      nonNegativeLeastSquares(identity, [3, 4], 1);
    } catch (error) {
      if (!(error instanceof NoConvergence)) throw error;
      expect(error.message).toBe("The doses did not settle. Leave out feeds that are nearly alike.");
      residual = error.residual;
    }
    // The larger one, 4, is fitted first; 3 is left.
    expect(residual).toBeCloseTo(3, 12);
  });

  it("refuses numbers whose squares overflow", () => {
    const sentence = "The numbers of this mix are too large or too far apart to reckon with.";
    expect(refusal(() => nonNegativeLeastSquares([[1e200]], [1]))).toBe(sentence);
    expect(refusal(() => nonNegativeLeastSquares([[1]], [1e200]))).toBe(sentence);
    expect(refusal(() => nonNegativeLeastSquares([[1e-160]], [1e153]))).toBe(sentence);
  });

  it("nearly equal columns settle", () => {
    for (const gap of [1e-3, 1e-6, 1e-8, 1e-10, 1e-12, 1e-15]) {
      const columns = [
        [1, 2, 3],
        [1 + gap, 2, 3],
        [1, 2 + gap, 3 - gap],
      ];
      expectOptimal({ columns, wanted: [1, 2.5, 2] });
    }
  });
});

describe("properties", () => {
  const small = fc.integer({ min: -2, max: 3 });
  it("small whole numbers, full of ties and of columns that are mixes of others: always settles, always optimal", () => {
    const problem = fc.integer({ min: 1, max: 6 }).chain((rows) =>
      fc.record({
        columns: fc.array(fc.array(small, { minLength: rows, maxLength: rows }), { maxLength: 14 }),
        wanted: fc.array(small, { minLength: rows, maxLength: rows }),
      }),
    );
    fc.assert(fc.property(problem, expectOptimal), { numRuns: 3_000 });
  });

  it("numbers of every size", () => {
    const any = fc.double({ min: 0, max: 1e6, noNaN: true }).filter((value) => value === 0 || value > 1e-6);
    const problem = fc.integer({ min: 1, max: 8 }).chain((rows) =>
      fc.record({
        columns: fc.array(fc.array(any, { minLength: rows, maxLength: rows }), { maxLength: 10 }),
        wanted: fc.array(any, { minLength: rows, maxLength: rows }),
      }),
    );
    fc.assert(fc.property(problem, expectOptimal), { numRuns: 1_000 });
  });
});
