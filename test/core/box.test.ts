/** Least squares in a box against trying every side of it, wherever the search for it begins. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boxLeastSquares, squaresOf } from "../../src/core/box.ts";
import { drawn } from "../drawn.ts";

interface Task {
  readonly columns: readonly (readonly number[])[];
  readonly left: readonly number[];
  readonly most: readonly number[];
  readonly slope: readonly number[];
  readonly side: readonly number[];
}

const valueAt = ({ columns, left, slope }: Task, x: readonly number[]) =>
  left.reduce(
    (sum, b, i) => sum + columns.reduce((rest, column, j) => rest - (column[i] ?? 0) * (x[j] ?? 0), b) ** 2,
    0,
  ) + slope.reduce((sum, price, j) => sum + price * (x[j] ?? 0), 0);

/** The least by trying 0, the most and "between" for each column, those between settled one at a time, again and again. */
function byEverySide(task: Task): number {
  const { columns, left, most, slope } = task;
  let least = Number.POSITIVE_INFINITY;
  for (let set = 0; set < 3 ** columns.length; set++) {
    const where = columns.map((_, j) => Math.floor(set / 3 ** j) % 3);
    const x = where.map((side, j) => (side === 1 ? (most[j] ?? 0) : 0));
    const free = where.flatMap((side, j) => (side === 2 ? [j] : []));
    for (let turn = 0; turn < (free.length > 1 ? 200 : 1); turn++) {
      for (const j of free) {
        const column = columns[j] ?? [];
        const own = column.reduce((sum, part) => sum + part * part, 0);
        const rest = left.map(
          (b, i) => b - columns.reduce((sum, other, k) => (k === j ? sum : sum + (other[i] ?? 0) * (x[k] ?? 0)), 0),
        );
        const along = column.reduce((sum, part, i) => sum + part * (rest[i] ?? 0), 0);
        // One coordinate after the other, each kept in the box, comes to the least of a convex square over a box.
        x[j] = own > 0 ? Math.min(Math.max((along - (slope[j] ?? 0) / 2) / own, 0), most[j] ?? 0) : 0;
      }
    }
    least = Math.min(least, valueAt(task, x));
  }
  return least;
}

function boxed({ columns, left, most, slope, side }: Task) {
  const free = columns.map((_, j) => j);
  const box = { most: Float64Array.from(most), slope: Float64Array.from(slope), side: Int8Array.from(side) };
  return boxLeastSquares(squaresOf(columns, left), free, Float64Array.from(left), box);
}

describe("by hand", () => {
  const plain: Task = {
    columns: [
      [1, 0],
      [1, 1],
    ],
    left: [3, 1],
    most: [9, 9],
    slope: [0, 0],
    side: [0, 0],
  };
  it.each<[string, Partial<Task>, number[], number]>([
    ["inside: x + y = 3, y = 1", {}, [2, 1], 0],
    // x at 1: (2 − y)² + (1 − y)² is least at 3/2, and 1/2 there.
    ["the first at its most", { most: [1, 9] }, [1, 1.5], 0.5],
    ["both at their most: 1² + 1/2²", { most: [1, 1.5], left: [3.5, 2] }, [1, 1.5], 1.25],
    // y below 0 is wanted: (3 − x)² + 1.
    ["the second at 0", { left: [3, -1] }, [3, 0], 1],
    ["all at 0", { left: [-1, -1] }, [0, 0], 2],
    // Price 2 on x, standing at 0: (3 − y)² + (1 − y)² is least at 2; a little of x gains 2 · 1 and costs 2.
    ["a price that drives one out", { slope: [2, 0] }, [0, 2], 2],
    ["a price below 0 drives one up: 2 (x + y − 3) = 1", { slope: [-1, 0] }, [3, 0.5], -2.5],
    // No room for x: (3 − y)² + (1 − y)² is least at 2.
    ["a column without room", { most: [0, 9], slope: [-1, 0] }, [0, 2], 2],
    // The second is twice the first: (3 − x − 2y)² + 1.
    [
      "a column twice another",
      {
        columns: [
          [1, 0],
          [2, 0],
        ],
      },
      [Number.NaN, Number.NaN],
      1,
    ],
  ])("%s", (_, change, x, value) => {
    for (const side of [
      [0, 0],
      [-1, -1],
      [1, 1],
      [-1, 1],
    ]) {
      const found = boxed({ ...plain, ...change, side });
      expect(found.value).toBeCloseTo(value, 9);
      expect(found.bound).toBeLessThanOrEqual(value + 1e-12);
      expect(found.bound).toBeCloseTo(value, 9);
      x.forEach((expected, j) => {
        if (!Number.isNaN(expected)) expect(found.x[j]).toBeCloseTo(expected, 9);
      });
    }
  });

  it("leaves fixed columns alone", () => {
    const squares = squaresOf([[1], [5], [1]], [2]);
    const box = { most: Float64Array.of(9, 9, 0.5), slope: new Float64Array(3), side: new Int8Array(3) };
    const found = boxLeastSquares(squares, [0, 2], Float64Array.of(2), box);
    expect(found.value).toBeCloseTo(0, 9);
    expect(found.x[1]).toBe(0);
  });
});

/** Shortest part of a column outside those before it. */
function apart(columns: readonly (readonly number[])[]): number {
  const basis: number[][] = [];
  return columns.reduce((shortest, column) => {
    let rest = [...column];
    for (const q of basis) {
      const along = q.reduce((sum, part, i) => sum + part * (rest[i] ?? 0), 0);
      rest = rest.map((part, i) => part - along * (q[i] ?? 0));
    }
    const length = Math.hypot(...rest);
    basis.push(rest.map((part) => (length > 1e-9 ? part / length : 0)));
    return Math.min(shortest, length);
  }, Number.POSITIVE_INFINITY);
}

it("has a proven bound from any start; of columns that are no mixes of each other it is the least of every side", () => {
  const part = fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 6 }));
  const tasks = fc.integer({ min: 1, max: 4 }).chain((n) =>
    fc.integer({ min: 1, max: 4 }).chain((rows) => {
      const list = (of: fc.Arbitrary<number>, length = n) => fc.array(of, { minLength: length, maxLength: length });
      return fc.record({
        columns: fc.array(list(part, rows), { minLength: n, maxLength: n }),
        left: list(fc.integer({ min: -3, max: 9 }), rows),
        most: list(fc.oneof(fc.integer({ min: 0, max: 3 }), fc.constant(20))),
        slope: list(
          fc.oneof({ weight: 2, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: fc.integer({ min: -3, max: 6 }) }),
        ),
        side: list(fc.integer({ min: -1, max: 1 })),
      });
    }),
  );
  let exact = 0;
  for (const task of fc.sample(tasks, { numRuns: drawn(300), seed: 12 })) {
    const least = byEverySide(task);
    const { value, bound, x } = boxed(task);
    const size = 1 + task.left.reduce((sum, b) => sum + b * b, 0);
    expect(Math.abs(value - valueAt(task, [...x]))).toBeLessThanOrEqual(1e-9 * size);
    expect(bound).toBeLessThanOrEqual(least + 1e-9 * size);
    expect(value).toBeGreaterThanOrEqual(least - 1e-6 * size);
    if (apart(task.columns) > 0.1) {
      exact += 1;
      expect(value).toBeLessThanOrEqual(least + 1e-6 * size);
      expect(bound).toBeGreaterThanOrEqual(least - 1e-6 * size);
    }
    x.forEach((amount, j) => {
      expect(amount).toBeGreaterThanOrEqual(0);
      expect(amount).toBeLessThanOrEqual(task.most[j] ?? 0);
    });
  }
  expect(exact).toBeGreaterThan(drawn(300) / 4);
});
