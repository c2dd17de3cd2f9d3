/** Non-negative least squares against the book's example, its own optimality conditions and awkward problems. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NoConvergence } from "../../src/core/errors.ts";
import { nonNegativeLeastSquares } from "../../src/core/nnls.ts";
import { drawn } from "../drawn.ts";
import { expectOptimal } from "./optimality.ts";
import { readReference } from "./reference.ts";
import { refusal } from "./refusal.ts";

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
      // (5, 3, 4) is five of the second and one of the third; the first looks best at the start, and ends at nothing.
      "a column that the others make needless",
      [
        [3, 4, 0],
        [1, 0, 0],
        [0, 3, 4],
      ],
      [5, 3, 4],
      [0, 5, 1],
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

  it.each([
    {
      columns: [
        [6, 1, 6, 7],
        [8, 6, 9, 1],
        [2, 7, 8, 3],
        [3, 0, 6, 2],
        [8, 7, 4, 3],
      ],
      wanted: [6, 2, 4, 2],
    },
    {
      columns: [
        [2, 1, 3],
        [6, 3, 9],
        [5, 7, 7],
        [3, 7, 0],
        [0, 4, 0],
        [9, 2, 8],
        [0, 6, 9],
        [8, 8, 0],
      ],
      wanted: [4, 9, 0],
    },
  ])("where two columns have to leave for one that enters, the first to reach 0 leaves: $wanted", expectOptimal);

  it("a column that is a mix of those in use but for a ten-thousand-millionth stays out", () => {
    const columns = [
      [1, 0, 0],
      [0, 1, 0],
      [1, 1, 1.4e-10],
    ];
    const { x, residual } = nonNegativeLeastSquares(columns, [1, 0.1, 1]);
    expect(x).toEqual([1, 0.1, 0]);
    expect(residual).toBeCloseTo(1, 9);
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
    fc.assert(fc.property(problem, expectOptimal), { numRuns: drawn(3_000) });
  });

  it("numbers of every size", () => {
    const any = fc.double({ min: 0, max: 1e6, noNaN: true }).filter((value) => value === 0 || value > 1e-6);
    const problem = fc.integer({ min: 1, max: 8 }).chain((rows) =>
      fc.record({
        columns: fc.array(fc.array(any, { minLength: rows, maxLength: rows }), { maxLength: 10 }),
        wanted: fc.array(any, { minLength: rows, maxLength: rows }),
      }),
    );
    fc.assert(fc.property(problem, expectOptimal), { numRuns: drawn(1_000) });
  });
});
