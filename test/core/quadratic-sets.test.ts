/** Least squares under limits by hand and by trying every set of limits: what is least, and what holds it back. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Limit, type LimitedTask, limitedLeastSquares } from "../../src/core/quadratic.ts";
import { drawn } from "../drawn.ts";
import { apart, dot } from "./apart.ts";

const list = (length: number, of: fc.Arbitrary<number>) => fc.array(of, { minLength: length, maxLength: length });

describe("what holds back, by hand", () => {
  /** Least (x − 1)² + (y − 1)². */
  const columns = [
    [1, 0],
    [0, 1],
  ];
  const wanted = [1, 1];
  const held = (coefficients: number[], atLeast: number): Limit => ({ coefficients, atLeast });

  it.each<[string, Partial<LimitedTask>, number[], boolean[], number[]]>([
    // x up to 1/4: the least is 9/16 and falls by 2 · 3/4 for each unit of x.
    ["x ≤ 1/4", { limits: [held([-1, 0], -0.25)] }, [0.25, 1], [true], [1.5]],
    ["the same as −2x ≥ −1/2: half as much a unit", { limits: [held([-2, 0], -0.5)] }, [0.25, 1], [true], [0.75]],
    [
      "the second of three, the others slack",
      { limits: [held([-1, 0], -5), held([-1, 0], -0.25), held([0, 1], 0.5)] },
      [0.25, 1],
      [false, true, false],
      [0, 1.5, 0],
    ],
    // x + y ≤ 1: both 1/2, the least is 1/2 and falls by 2 · 1/2 a unit.
    ["a sum", { limits: [held([-1, -1], -1)] }, [0.5, 0.5], [true], [1]],
    ["two at once", { limits: [held([-1, 0], -0.25), held([0, -1], -0.5)] }, [0.25, 0.5], [true, true], [1.5, 1]],
    // y = x − 1, so x is held at 3/2 and y at 1/2: (1/2)² + (1/2)².
    [
      "an equality is no limit",
      { equalities: [held([1, -1], 1)], limits: [held([-1, 0], -5), held([0, -1], -5)] },
      [1.5, 0.5],
      [false, false],
      [0, 0],
    ],
    ["an equality from above", { equalities: [held([1, 0], 0.25)], limits: [held([0, 1], 2)] }, [0.25, 2], [true], [2]],
    // The bound y ≥ 0 is not one of the limits.
    [
      "what stands at 0 is held by no limit",
      { wanted: [1, -1], limits: [held([-1, 0], -5), held([0, -1], -5)] },
      [1, 0],
      [false, false],
      [0, 0],
    ],
    // (2, 0) brought to 0.3 x + 0.7 y = 0.1 would leave y below 0; with y at 0, x is 1/3.
    [
      "an equality said twice, the second time three times over",
      { wanted: [2, 0], equalities: [held([0.3, 0.7], 0.1), held([0.9, 2.1], 0.3)], limits: [held([-1, 0], -5)] },
      [1 / 3, 0],
      [false],
      [0],
    ],
    [
      "a limit on nothing is kept at 0 and below",
      { limits: [held([0, 0], 0), held([0, 0], -1)], equalities: [held([0, 0], 0)] },
      [1, 1],
      [false, false],
      [0, 0],
    ],
  ])("%s", (_, task, x, binding, multipliers) => {
    const found = limitedLeastSquares({ columns, wanted, ...task });
    if (found === null) throw new Error("no answer");
    x.forEach((value, j) => {
      expect(found.x[j]).toBeCloseTo(value, 9);
    });
    expect(found.binding).toEqual(binding);
    multipliers.forEach((value, k) => {
      expect(found.multipliers[k]).toBeCloseTo(value, 9);
    });
  });

  it.each<[string, Partial<LimitedTask>]>([
    ["a limit on nothing that asks for something", { limits: [held([0, 0], 0.5)] }],
    ["an equality on nothing that asks for something", { equalities: [held([0, 0], 0.5)] }],
    ["two equalities that contradict each other", { equalities: [held([1, 0], 1), held([1, 0], 2)] }],
    ["an equality below 0 for what may not be negative", { equalities: [held([1, 0], -1)] }],
  ])("has no answer: %s", (_, task) => {
    expect(limitedLeastSquares({ columns, wanted, ...task })).toBeNull();
  });
});

/**
 * The least of |Ax − b|² + slope·x over x ≥ 0 under the limits, by trying every set of planes as equalities: Gauss on
 * the equations of Lagrange, the best of the points that keep all. Columns must not be mixes of each other.
 */
function byEverySet({ columns, wanted, equalities = [], limits = [], slope }: LimitedTask): number | null {
  const n = columns.length;
  const bounds = columns.map((_, j) => ({ coefficients: columns.map((__, k) => (k === j ? 1 : 0)), atLeast: 0 }));
  const planes = [...limits, ...bounds];
  const value = (x: readonly number[]) => {
    const rest = wanted.map((b, i) => columns.reduce((sum, column, j) => sum - (column[i] ?? 0) * (x[j] ?? 0), b));
    return dot(rest, rest) + dot(slope ?? x.map(() => 0), x);
  };
  let least: number | null = null;
  for (let set = 0; set < 2 ** planes.length; set++) {
    const on = [...equalities, ...planes.filter((_, p) => ((set >> p) & 1) === 1)];
    if (on.length > n) continue;
    const rows = [
      ...columns.map((a, j) => [
        ...columns.map((b) => 2 * dot(a, b)),
        ...on.map(({ coefficients }) => -(coefficients[j] ?? 0)),
        2 * dot(a, wanted) - (slope?.[j] ?? 0),
      ]),
      ...on.map(({ coefficients, atLeast }) => [...coefficients, ...on.map(() => 0), atLeast]),
    ];
    const x = gauss(rows)?.slice(0, n);
    if (x === undefined) continue;
    const kept = planes.every(({ coefficients, atLeast }) => dot(coefficients, x) >= atLeast - 1e-9);
    if (kept && (least === null || value(x) < least)) least = value(x);
  }
  return least;
}

/** Solves rows of coefficients with the right side last; null when they are singular. */
function gauss(rows: number[][]): number[] | null {
  const n = rows.length;
  const m = rows.map((row) => [...row]);
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c; r < n; r++) if (Math.abs(m[r]?.[c] ?? 0) > Math.abs(m[pivot]?.[c] ?? 0)) pivot = r;
    const [top, low] = [m[pivot] ?? [], m[c] ?? []];
    if (!(Math.abs(top[c] ?? 0) > 1e-9)) return null;
    m[c] = top;
    m[pivot] = low;
    m.forEach((row, r) => {
      if (r === c) return;
      const share = (row[c] ?? 0) / (top[c] ?? 1);
      for (let k = c; k <= n; k++) row[k] = (row[k] ?? 0) - share * (top[k] ?? 0);
    });
  }
  return m.map((row, r) => (row[n] ?? 0) / (row[r] ?? 1));
}

it("no set of limits gives less: every one tried, small whole numbers full of ties", () => {
  const whole = fc.integer({ min: -2, max: 3 });
  const limit = (n: number) => fc.record({ coefficients: list(n, whole), atLeast: whole });
  const small = fc.integer({ min: 1, max: 3 }).chain((n) =>
    fc.record({
      columns: fc.array(list(n + 1, whole), { minLength: n, maxLength: n }),
      wanted: list(n + 1, fc.integer({ min: -3, max: 6 })),
      limits: fc.array(limit(n), { maxLength: 4 }),
      equalities: fc.array(limit(n), { maxLength: 1 }),
      slope: fc.oneof(fc.constant(undefined), list(n, fc.integer({ min: 0, max: 2 }))),
    }),
  );
  let tried = 0;
  for (const task of fc.sample(small, { numRuns: drawn(800), seed: 5 })) {
    if (!(apart(task.columns) > 0.05)) continue;
    if ([...task.limits, ...task.equalities].some(({ coefficients }) => coefficients.every((c) => c === 0))) continue;
    const found = limitedLeastSquares(task);
    const least = byEverySet(task);
    tried += 1;
    if (least === null) expect(found).toBeNull();
    else if (found === null) throw new Error(`no answer where the least is ${least}: ${JSON.stringify(task)}`);
    else {
      expect(found.misfit + dot(task.slope ?? found.x.map(() => 0), found.x)).toBeCloseTo(least, 6);
      for (const { coefficients, atLeast } of task.limits) {
        expect(dot(coefficients, found.x)).toBeGreaterThanOrEqual(atLeast - 1e-8);
      }
      for (const { coefficients, atLeast } of task.equalities) {
        expect(dot(coefficients, found.x)).toBeCloseTo(atLeast, 8);
      }
    }
  }
  expect(tried).toBeGreaterThan(drawn(800) / 2);
});
