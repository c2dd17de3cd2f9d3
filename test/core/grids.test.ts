/** Amounts that can be measured out, against listing them; and where a search over them looks first, against projections. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { squaresOf } from "../../src/core/box.ts";
import { type Grid, gridOf, type Measure, nearest, spoonAmounts, spoonfulsFor } from "../../src/core/grid.ts";
import { LimitsKept } from "../../src/core/grid-limits.ts";
import { branchingOrder, worthwhileMost } from "../../src/core/grid-order.ts";
import { drawn } from "../drawn.ts";
import { refusal } from "./refusal.ts";

const listOf = (grid: Grid): number[] => Array.from({ length: grid.last + 1 }, (_, index) => grid.at(index));

describe("a grid", () => {
  const measures: fc.Arbitrary<Measure> = fc.oneof(
    fc.record({
      kind: fc.constant("step" as const),
      step: fc.constantFrom(0.1, 0.25, 0.5, 1, 3),
      most: fc.integer({ min: 0, max: 400 }).map((tenths) => tenths / 20),
    }),
    fc.record({
      kind: fc.constant("amounts" as const),
      amounts: fc.array(
        fc.integer({ min: 1, max: 60 }).map((n) => n / 4),
        { minLength: 1, maxLength: 8 },
      ),
    }),
  );

  it("lists 0 and each amount once, ascending, up to the most", () => {
    fc.assert(
      fc.property(measures, (measure) => {
        const list = listOf(gridOf(measure, "Salt"));
        const wanted =
          measure.kind === "amounts"
            ? [...new Set([0, ...measure.amounts])].sort((a, b) => a - b)
            : Array.from({ length: 1000 }, (_, k) => Number((k * measure.step).toFixed(9))).filter(
                (x) => x <= (measure.most ?? 0),
              );
        expect(list).toEqual(wanted);
      }),
      { numRuns: drawn(200) },
    );
  });

  it("finds the greatest amount not above, and the nearest, of two as near the smaller", () => {
    fc.assert(
      fc.property(
        measures,
        fc.integer({ min: -8, max: 200 }).map((n) => n / 8),
        (measure, x) => {
          const grid = gridOf(measure, "Salt");
          const list = listOf(grid);
          const notAbove = list.filter((one) => one <= x);
          expect(grid.at(grid.below(x))).toBe(notAbove[notAbove.length - 1] ?? 0);
          const near = list.reduce((best, one) => (Math.abs(one - x) < Math.abs(best - x) ? one : best));
          expect(grid.at(nearest(grid, x))).toBe(near);
        },
      ),
      { numRuns: drawn(300) },
    );
  });

  it("of a step without a most goes on to a thousand million steps", () => {
    expect(gridOf({ kind: "step", step: 0.1 }, "Salt").last).toBe(1e9);
    expect(gridOf({ kind: "step", step: 0.1, most: 0.3 }, "Salt").last).toBe(3);
    expect(gridOf({ kind: "step", step: 1, most: 0 }, "Salt").last).toBe(0);
  });

  it("names the feed whose step, most or spoon is none", () => {
    expect(refusal(() => gridOf({ kind: "step", step: 0 }, "Salt"))).toMatch(/step for Salt is 0\./);
    expect(refusal(() => gridOf({ kind: "step", step: 1, most: -1 }, "Salt"))).toMatch(/most of Salt is .1\./);
    expect(refusal(() => gridOf({ kind: "amounts", amounts: [1, 0] }, "Salt"))).toMatch(/spoon of Salt holds 0\./);
  });
});

describe("spoons", () => {
  const sets = fc.record({
    spoonG: fc.uniqueArray(
      fc.integer({ min: 1, max: 40 }).map((n) => n / 8),
      { minLength: 1, maxLength: 3 },
    ),
    mostSpoonfuls: fc.integer({ min: 1, max: 6 }),
  });
  /** Every way of taking so many spoonfuls. */
  function* ways(spoons: number, left: number): Generator<number[]> {
    if (spoons === 0) yield [];
    else for (let k = 0; k <= left; k++) for (const rest of ways(spoons - 1, left - k)) yield [k, ...rest];
  }
  const grams = (spoonG: readonly number[], counts: readonly number[]): number =>
    counts.reduce((sum, count, k) => sum + count * (spoonG[k] ?? 0), 0);
  const sum = (counts: readonly number[]): number => counts.reduce((all, one) => all + one, 0);

  it("make every amount that some way makes, and the fewest spoonfuls make it", () => {
    fc.assert(
      fc.property(sets, (set) => {
        const all = [...ways(set.spoonG.length, set.mostSpoonfuls)];
        const fewest = new Map<number, number>();
        for (const counts of all) {
          const amount = grams(set.spoonG, counts);
          fewest.set(amount, Math.min(fewest.get(amount) ?? 99, sum(counts)));
        }
        const amounts = spoonAmounts(set);
        expect(amounts).toEqual([...fewest.keys()].filter((amount) => amount > 0).sort((a, b) => a - b));
        for (const amount of amounts) {
          const counts = spoonfulsFor(amount, set) ?? [];
          expect(counts).toHaveLength(set.spoonG.length);
          expect(grams(set.spoonG, counts)).toBe(amount);
          expect(sum(counts)).toBe(fewest.get(amount));
        }
        expect(spoonfulsFor(0.0625, set)).toBeNull();
        expect(spoonfulsFor(1000, set)).toBeNull();
      }),
      { numRuns: drawn(150) },
    );
  });

  it("hold something, and are counted up to fifty", () => {
    for (const mostSpoonfuls of [0, 51, 2.5]) {
      expect(refusal(() => spoonAmounts({ spoonG: [1], mostSpoonfuls }))).toMatch(/1 to 50/);
    }
    for (const one of [0, -1, 1000]) {
      expect(refusal(() => spoonAmounts({ spoonG: [one], mostSpoonfuls: 2 }))).toMatch(/A spoon holds/);
    }
    expect(spoonAmounts({ spoonG: [999], mostSpoonfuls: 1 })).toEqual([999]);
    expect(spoonAmounts({ spoonG: [1], mostSpoonfuls: 50 })).toHaveLength(50);
    expect(refusal(() => spoonAmounts({ spoonG: [1, 1.01, 1.0001, 1.000001], mostSpoonfuls: 50 }))).toMatch(/5000/);
  });
});

describe("the order of a search", () => {
  type Vector = readonly number[];
  const dot = (a: Vector, b: Vector): number => a.reduce((sum, one, i) => sum + one * (b[i] ?? 0), 0);
  /** Squared length of what no mix of `others` makes of `one`: Gram–Schmidt. */
  function apart(one: Vector, others: readonly Vector[]): number {
    const basis: Vector[] = [];
    const less = (v: Vector): Vector =>
      basis.reduce((rest, q) => {
        const share = dot(rest, q) / dot(q, q);
        return rest.map((value, i) => value - share * (q[i] ?? 0));
      }, v);
    for (const other of others) basis.push(less(other));
    const rest = less(one);
    return dot(rest, rest);
  }
  const COARSE = 0.001;

  it("takes first what a step alone upsets, most of it first, then what costs most with the others free", () => {
    const share = fc.double({ min: 0.05, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.array(share, { minLength: 6, maxLength: 6 }), { minLength: 1, maxLength: 4 }),
        fc.array(fc.double({ min: 0.002, max: 0.04, noNaN: true }), { minLength: 4, maxLength: 4 }),
        (columns, steps) => {
          fc.pre(
            columns.every(
              (one, j) =>
                apart(
                  one,
                  columns.filter((_, k) => k !== j),
                ) > 1e-3,
            ),
          );
          const grids = columns.map((_, j) => gridOf({ kind: "step", step: steps[j] ?? 1, most: 50 }, "Salt"));
          const gaps = columns.map((_, j) => (steps[j] ?? 1) ** 2);
          const alone = columns.map((one, j) => dot(one, one) * (gaps[j] ?? 0));
          const first = columns.map((_, j) => j).filter((j) => (alone[j] ?? 0) > COARSE);
          first.sort((a, b) => (alone[b] ?? 0) - (alone[a] ?? 0));
          const order = [...first];
          let open = columns.map((_, j) => j).filter((j) => !first.includes(j));
          while (open.length > 0) {
            const cost = (j: number) =>
              apart(
                columns[j] ?? [],
                open.filter((k) => k !== j).map((k) => columns[k] ?? []),
              ) * (gaps[j] ?? 0);
            const next = open.reduce((best, j) => (cost(j) > cost(best) ? j : best));
            order.push(next);
            open = open.filter((j) => j !== next);
          }
          const around = Float64Array.from(columns, () => 1.01);
          expect(branchingOrder(squaresOf(columns, [1, 1, 1, 1, 1, 1]), grids, around)).toEqual(order);
        },
      ),
      { numRuns: drawn(200, 60) },
    );
  });

  it("counts the gap next to where the relaxation stands, and none where there is one amount", () => {
    const spoons = gridOf({ kind: "amounts", amounts: [1, 1.01, 9] }, "A");
    const steps = gridOf({ kind: "step", step: 1, most: 9 }, "B");
    const nothing = gridOf({ kind: "step", step: 1, most: 0 }, "C");
    const squares = squaresOf(
      [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 5],
      ],
      [1, 1, 1],
    );
    const order = (at: number) => branchingOrder(squares, [spoons, steps, nothing], Float64Array.from([at, 1, 0]));
    expect(order(1)).toEqual([1, 0, 2]);
    // beyond the last but one the gap is 7.99, and below 1 it is 1, as much as the other's
    expect(order(2)).toEqual([0, 1, 2]);
    expect(order(9)).toEqual([0, 1, 2]);
    expect(order(0.2)).toEqual([0, 1, 2]);
  });

  it("stands a feed that brings nothing, or is a mix of others, anywhere but once", () => {
    const squares = squaresOf(
      [
        [1, 0],
        [0, 0],
        [2, 0],
      ],
      [1, 1],
    );
    const grid = gridOf({ kind: "step", step: 0.001, most: 9 }, "A");
    expect([...branchingOrder(squares, [grid, grid, grid], Float64Array.from([1, 1, 1]))].sort()).toEqual([0, 1, 2]);
  });
});

describe("the most that is worth looking at", () => {
  it("brings no element further over than the reach, and the next amount would", () => {
    const share = fc.oneof(
      fc.constant(0),
      fc.integer({ min: 1, max: 40 }).map((n) => n / 20),
    );
    fc.assert(
      fc.property(
        fc.array(share, { minLength: 3, maxLength: 3 }),
        fc.array(
          fc.integer({ min: 0, max: 40 }).map((n) => n / 8),
          { minLength: 3, maxLength: 3 },
        ),
        fc.integer({ min: -16, max: 40 }).map((n) => n / 8),
        (column, wanted, reach) => {
          const grid = gridOf({ kind: "step", step: 0.25, most: 20 }, "Salt");
          const [most = -1] = worthwhileMost({ columns: [column], wanted, grids: [grid] }, reach);
          // what is wanted may be overshot by the reach, and never below nothing
          const fits = (amount: number) =>
            column.every((part, i) => part * amount <= Math.max((wanted[i] ?? 0) + reach, 0) * (1 + 1e-9));
          const worth = column.every((part) => part === 0) ? [0] : listOf(grid).filter(fits);
          expect(most).toBe(Math.max(...worth));
        },
      ),
      { numRuns: drawn(300) },
    );
  });
});

it("of two ways with as few spoonfuls the one with the largest spoon is given", () => {
  expect(spoonfulsFor(4, { spoonG: [2, 1, 3], mostSpoonfuls: 2 })).toEqual([0, 1, 1]);
});

it("a limit that all free feeds together just meet is kept, whatever binary rounding makes of the sum", () => {
  const kept = new LimitsKept([{ coefficients: [0, -1, -1], most: -300.3 }]);
  expect(kept.canKeep(0, 0, { free: [1, 2], most: [0, 100.1, 200.2] })).toBe(true);
  expect(kept.canKeep(0, 0, { free: [1, 2], most: [0, 100.1, 200.1] })).toBe(false);
});
