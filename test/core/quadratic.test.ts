/** Least squares under limits against quadprog, and against its own optimality conditions. */

import fc from "fast-check";
import { solveQP } from "quadprog";
import { describe, expect, it } from "vitest";
import { ELEMENTS } from "../../src/core/elements.ts";
import { feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { type Limit, type LimitedTask, limitedLeastSquares } from "../../src/core/quadratic.ts";
import { doseProblem, solveDoses } from "../../src/core/solve.ts";
import { drawn } from "../drawn.ts";
import { apart, dot } from "./apart.ts";

const from1 = <T>(list: readonly T[]): T[] => [undefined as T, ...list];

/** The same task by quadprog, equalities as two limits each; null when it finds no x. */
function byQuadprog({ columns, wanted, equalities = [], limits = [], slope }: LimitedTask): number[] | null {
  const one = (j: number) => columns.map((_, k) => (k === j ? 1 : 0));
  const rows: Limit[] = [
    ...limits,
    ...equalities,
    ...equalities.map(({ coefficients, atLeast }) => ({
      coefficients: coefficients.map((c) => -c),
      atLeast: -atLeast,
    })),
    ...columns.map((_, j) => ({ coefficients: one(j), atLeast: 0 })),
  ];
  const D = from1(columns.map((a) => from1(columns.map((b) => 2 * dot(a, b)))));
  const d = from1(columns.map((a, j) => 2 * dot(a, wanted) - (slope?.[j] ?? 0)));
  const A = from1(columns.map((_, j) => from1(rows.map(({ coefficients }) => coefficients[j] ?? 0))));
  const answer = solveQP(D, d, A, from1(rows.map(({ atLeast }) => atLeast)));
  return answer.message === "" ? answer.solution.slice(1) : null;
}

const thousandth = (min: number, max: number) => fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000);
const list = (length: number, of: fc.Arbitrary<number>) => fc.array(of, { minLength: length, maxLength: length });

const tasks = (equalities: boolean) =>
  fc.integer({ min: 2, max: 9 }).chain((n) =>
    fc.integer({ min: n, max: 14 }).chain((m) => {
      const limit = fc.record({ coefficients: list(n, thousandth(-0.5, 0.5)), atLeast: thousandth(-0.6, 0.4) });
      return fc.record({
        columns: fc.array(
          list(m, fc.oneof({ weight: 1, arbitrary: fc.constant(0) }, { weight: 2, arbitrary: thousandth(0.01, 0.5) })),
          { minLength: n, maxLength: n },
        ),
        wanted: list(m, thousandth(-0.5, 2)),
        equalities: equalities
          ? fc.array(
              limit.map((row) => ({ ...row, atLeast: 0 })),
              { minLength: 1, maxLength: 2 },
            )
          : fc.constant([]),
        limits: fc.array(limit, { maxLength: 5 }),
        slope: fc.oneof(fc.constant(undefined), list(n, thousandth(0, 0.2))),
      });
    }),
  );

describe.each([
  ["limits", false],
  ["limits and equalities", true],
])("%s", (_, equalities) => {
  it("agree with quadprog within 1e-8, in 600 problems", () => {
    let agreed = 0;
    let impossible = 0;
    for (const task of fc.sample(tasks(equalities), { numRuns: drawn(600), seed: 71 })) {
      if (!(apart(task.columns) > 0.02)) continue;
      const found = limitedLeastSquares(task);
      const other = byQuadprog(task);
      if (found === null) {
        expect(other).toBeNull();
        impossible += 1;
        continue;
      }
      // Kept, whatever the other program says: its port calls some equalities with an answer inconsistent.
      for (const { coefficients, atLeast } of task.limits)
        expect(dot(coefficients, found.x)).toBeGreaterThanOrEqual(atLeast - 1e-9);
      for (const { coefficients } of task.equalities)
        expect(Math.abs(dot(coefficients, found.x))).toBeLessThanOrEqual(1e-9);
      for (const value of found.x) expect(value).toBeGreaterThanOrEqual(0);
      if (other === null) continue;
      agreed += 1;
      found.x.forEach((value, j) => {
        expect(Math.abs(value - (other[j] ?? Number.NaN))).toBeLessThanOrEqual(1e-8 * (1 + Math.abs(value)));
      });
    }
    expect(agreed).toBeGreaterThan(drawn(600) * (equalities ? 1 / 6 : 1 / 2));
    expect(impossible).toBeGreaterThan(5);
  });
});

describe("doses", () => {
  it("of solveDoses and of least squares without limits agree with quadprog within 1e-8", () => {
    const percent = fc.oneof({ weight: 1, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: thousandth(0.5, 8) });
    const shelf = fc.array(list(ELEMENTS.length, percent), { minLength: 2, maxLength: 8 });
    const target = list(ELEMENTS.length, thousandth(1, 200));
    let agreed = 0;
    for (const [rows, amounts] of fc.sample(fc.tuple(shelf, target), { numRuns: drawn(200), seed: 9 })) {
      const feeds = rows.map((row, j) => {
        const shares = Object.fromEntries(ELEMENTS.map((symbol, i) => [symbol, row[i] ?? 0]));
        return feedOf(`feed ${j}`, { ...parseLabel("0-0-0"), percent: shares }, null);
      });
      const wanted = Object.fromEntries(ELEMENTS.map((symbol, i) => [symbol, amounts[i] ?? 1]));
      const { columns, missing } = doseProblem({ wanted, feeds, water: {} });
      if (!(apart(columns) > 0.05)) continue;
      const other = byQuadprog({ columns, wanted: missing });
      if (other === null) continue;
      const solved = solveDoses({ wanted, feeds, water: {} });
      const limited = limitedLeastSquares({ columns, wanted: missing });
      other.forEach((value, j) => {
        expect(Math.abs((solved.doses[j]?.perLitre ?? Number.NaN) - value)).toBeLessThanOrEqual(1e-8 * (1 + value));
        expect(Math.abs((limited?.x[j] ?? Number.NaN) - value)).toBeLessThanOrEqual(1e-8 * (1 + value));
      });
      agreed += 1;
    }
    expect(agreed).toBeGreaterThan(drawn(200) / 2);
  });
});

describe("by hand", () => {
  it("two equal feeds share the work, a limit on one shifts it to the other", () => {
    const columns = [[1], [1]];
    expect(limitedLeastSquares({ columns, wanted: [2] })?.x[0]).toBeCloseTo(1, 6);
    const limited = limitedLeastSquares({ columns, wanted: [2], limits: [{ coefficients: [-1, 0], atLeast: -0.25 }] });
    expect(limited?.x[0]).toBeCloseTo(0.25, 9);
    expect(limited?.x[1]).toBeCloseTo(1.75, 5);
    expect(limited?.binding).toEqual([true]);
  });

  it("Lawson & Hanson 1974, ch. 23: slope and intercept not negative, their sum at most 1", () => {
    // Line through (0.25, 0.5), (0.5, 0.6), (0.5, 0.7), (0.8, 1.2); value of the book recalled, checked with quadprog.
    const found = limitedLeastSquares({
      columns: [
        [0.25, 0.5, 0.5, 0.8],
        [1, 1, 1, 1],
      ],
      wanted: [0.5, 0.6, 0.7, 1.2],
      limits: [{ coefficients: [-1, -1], atLeast: -1 }],
    });
    expect(found?.x[0]).toBeCloseTo(0.6213, 4);
    expect(found?.x[1]).toBeCloseTo(0.3787, 4);
    expect(Math.sqrt(found?.misfit ?? 0)).toBeCloseTo(0.3382, 4);
  });

  it("limits that cannot all be kept have no answer", () => {
    const limits = [
      { coefficients: [1], atLeast: 2 },
      { coefficients: [-1], atLeast: -1 },
    ];
    expect(limitedLeastSquares({ columns: [[1]], wanted: [1], limits })).toBeNull();
  });

  it("a price makes less of a feed: least (x − 1)² + x/2 is at 3/4", () => {
    expect(limitedLeastSquares({ columns: [[1]], wanted: [1], slope: [0.5] })?.x[0]).toBeCloseTo(0.75, 12);
  });
});
