/** The search over measurable amounts against trying them all. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Grid, gridOf, type Measure, spoonAmounts } from "../../src/core/grid.ts";
import { searchLimitedGrid as searchGrid } from "../../src/core/grid-limited.ts";
import { type AtMost, LimitsKept, limitCosts } from "../../src/core/grid-limits.ts";
import type { GridTask } from "../../src/core/grid-search.ts";
import { drawn } from "../drawn.ts";
import { refusal } from "./refusal.ts";

const misfitOf = ({ columns, wanted }: GridTask, x: readonly number[]) =>
  wanted.reduce(
    (sum, b, i) => sum + columns.reduce((rest, column, j) => rest - (column[i] ?? 0) * (x[j] ?? 0), b) ** 2,
    0,
  );

const keeps = (limits: readonly AtMost[], x: readonly number[]) =>
  limits.every(
    ({ coefficients, most }) => coefficients.reduce((sum, c, j) => sum + c * (x[j] ?? 0), 0) <= most + 1e-12,
  );

function* everyAmount(grids: readonly Grid[], j = 0): Generator<number[]> {
  const grid = grids[j];
  if (grid === undefined) yield [];
  else for (const rest of everyAmount(grids, j + 1)) for (let k = 0; k <= grid.last; k++) yield [grid.at(k), ...rest];
}

/** Least misfit of all measurable amounts that keep the limits; infinite when none does. */
function byTryingAll(task: GridTask): number {
  let best = Number.POSITIVE_INFINITY;
  for (const x of everyAmount(task.grids)) if (keeps(task.limits ?? [], x)) best = Math.min(best, misfitOf(task, x));
  return best;
}

const thousandth = (min: number, max: number) => fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000);

interface Shape {
  readonly feeds: number;
  /** Amounts above 0 of each feed, so that trying all stays possible. */
  readonly amounts: number;
  readonly limits: boolean;
}

const measure = (amounts: number): fc.Arbitrary<Measure> =>
  fc.oneof(
    { weight: 3, arbitrary: fc.constant<Measure>({ kind: "step", step: 1, most: amounts }) },
    {
      weight: 1,
      arbitrary: fc
        .uniqueArray(thousandth(0.1, 12), { minLength: 1, maxLength: amounts })
        .map((list): Measure => ({ kind: "amounts", amounts: list })),
    },
  );

/** Feeds as they are: some elements not in them; now and then two that are nearly or wholly alike. */
const taskOf = ({ feeds, amounts, limits }: Shape): fc.Arbitrary<GridTask> =>
  fc.integer({ min: 1, max: 12 }).chain((elements) => {
    const share = fc.oneof({ weight: 1, arbitrary: fc.constant(0) }, { weight: 2, arbitrary: thousandth(0.01, 0.6) });
    const column = fc
      .array(share, { minLength: elements, maxLength: elements })
      .map((parts) => (parts.some((part) => part > 0) ? parts : parts.map(() => 0.1)));
    return fc
      .record({
        columns: fc.array(column, { minLength: feeds, maxLength: feeds }),
        alike: fc.constantFrom(null, null, null, 1, 1.0001),
        wanted: fc.array(
          fc.oneof({ weight: 9, arbitrary: fc.constant(1) }, { weight: 1, arbitrary: thousandth(-1, 2) }),
          { minLength: elements, maxLength: elements },
        ),
        measures: fc.array(measure(amounts), { minLength: feeds, maxLength: feeds }),
        limits: limits
          ? fc.array(
              fc.record({
                coefficients: fc.array(thousandth(-0.4, 1), { minLength: feeds, maxLength: feeds }),
                most: thousandth(-0.5, 3),
              }),
              { maxLength: 2 },
            )
          : fc.constant([]),
      })
      .map(({ columns, alike, wanted, measures, limits: kept }) => ({
        columns:
          alike === null || feeds < 2
            ? columns
            : [columns[0] as number[], (columns[0] as number[]).map((part) => part * alike), ...columns.slice(2)],
        wanted,
        grids: measures.map((one, j) => gridOf(one, `feed ${j}`)),
        limits: kept,
      }));
  });

/** feeds: 2 to 6, amounts such that all can be tried. */
const AMOUNTS = [0, 0, 40, 18, 9, 6, 4];

describe("measurable amounts", () => {
  it("are the best of all in 300 problems of 2 to 6 feeds, and the bound stays below", () => {
    let tried = 0;
    for (let feeds = 2; feeds <= 6; feeds++) {
      for (const task of fc.sample(taskOf({ feeds, amounts: AMOUNTS[feeds] ?? 1, limits: false }), {
        numRuns: drawn(60),
        seed: 40 + feeds,
      })) {
        const best = byTryingAll(task);
        const found = searchGrid(task);
        expect(found?.complete).toBe(true);
        expect(Math.abs((found?.misfit ?? Number.NaN) - best)).toBeLessThanOrEqual(1e-10 * (1 + best));
        expect(Math.abs(misfitOf(task, found?.x ?? []) - best)).toBeLessThanOrEqual(1e-10 * (1 + best));
        expect(found?.bound).toBeLessThanOrEqual(best);
        tried += 1;
      }
    }
    expect(tried).toBe(5 * drawn(60));
  });

  it("keep limits, and are the best that do, in 200 problems", () => {
    let without = 0;
    for (let feeds = 2; feeds <= 5; feeds++) {
      for (const task of fc.sample(taskOf({ feeds, amounts: AMOUNTS[feeds] ?? 1, limits: true }), {
        numRuns: drawn(50),
        seed: 60 + feeds,
      })) {
        const best = byTryingAll(task);
        const found = searchGrid(task);
        if (best === Number.POSITIVE_INFINITY) {
          expect(found).toBeNull();
          without += 1;
          continue;
        }
        expect(keeps(task.limits ?? [], found?.x ?? [])).toBe(true);
        expect(Math.abs((found?.misfit ?? Number.NaN) - best)).toBeLessThanOrEqual(1e-10 * (1 + best));
        expect(found?.bound).toBeLessThanOrEqual(best);
      }
    }
    expect(without).toBeGreaterThan(0);
  });

  it("are none at all where any miss by more, though some were looked into", () => {
    let nothing = 0;
    for (const task of fc.sample(taskOf({ feeds: 4, amounts: 4, limits: false }), { numRuns: drawn(300), seed: 77 })) {
      const coarse = { ...task, columns: task.columns.map((column) => column.map((part) => part * 5)) };
      const best = byTryingAll(coarse);
      const found = searchGrid(coarse);
      expect(Math.abs(misfitOf(coarse, found?.x ?? []) - best)).toBeLessThanOrEqual(1e-10 * (1 + best));
      if (found?.x.every((amount) => amount === 0)) nothing += 1;
    }
    expect(nothing).toBeGreaterThan(drawn(300) / 20);
  });

  it("stay bounded from below however early the search is stopped, also with 7 to 10 feeds", () => {
    let early = 0;
    for (let feeds = 7; feeds <= 10; feeds++) {
      for (const task of fc.sample(taskOf({ feeds, amounts: 30, limits: false }), { numRuns: 30, seed: 80 + feeds })) {
        const whole = searchGrid({ ...task, mostNodes: 200_000 });
        for (const mostNodes of [1, 10, 30, 100]) {
          const part = searchGrid({ ...task, mostNodes });
          expect(part?.bound).toBeLessThanOrEqual(whole?.misfit ?? Number.NaN);
          expect(part?.misfit).toBeGreaterThanOrEqual(whole?.bound ?? Number.NaN);
          expect(Math.abs((part?.misfit ?? 0) - misfitOf(task, part?.x ?? []))).toBeLessThanOrEqual(
            1e-10 * (1 + (part?.misfit ?? 0)),
          );
          if (part?.complete === false) early += 1;
        }
        // No amount next to the found ones does better: two feeds changed by one amount each.
        const x = whole?.x ?? [];
        const nextTo = x.map((amount, j) => {
          const grid = task.grids[j] as Grid;
          const at = grid.below(amount);
          return [-1, 0, 1]
            .map((step) => at + step)
            .filter((k) => k >= 0 && k <= grid.last)
            .map((k) => grid.at(k));
        });
        for (let a = 0; a < x.length; a++) {
          for (let b = a + 1; b < x.length; b++) {
            for (const one of nextTo[a] ?? []) {
              for (const two of nextTo[b] ?? []) {
                const other = x.map((amount, j) => (j === a ? one : j === b ? two : amount));
                expect(misfitOf(task, other)).toBeGreaterThanOrEqual((whole?.bound ?? Number.NaN) - 1e-12);
              }
            }
          }
        }
      }
    }
    expect(early).toBeGreaterThan(50);
  });

  it("by hand: 1 g of a feed brings 0.3 of what is wanted, so 3 g, not 4", () => {
    const found = searchGrid({ columns: [[0.3]], wanted: [1], grids: [gridOf({ kind: "step", step: 1 }, "A")] });
    expect(found?.x).toEqual([3]);
    expect(found?.misfit).toBeCloseTo(0.01, 12);
  });
});

describe("limits", () => {
  it("count what is settled, and what the free feeds can relieve, by hand", () => {
    const kept = new LimitsKept([{ coefficients: [1, 2, -1, 4], most: 5 }]);
    const none = { free: [], most: [] };
    kept.take(0, 3);
    // 3 are used: 2 x 1 more make 5, 2 x 1.1 make 5.2.
    expect([kept.canKeep(1, 1, none), kept.canKeep(1, 1.1, none)]).toEqual([true, false]);
    // The third feed relieves by 1 at most, the fourth by nothing: 3 + 2 x 1.5 - 1 = 5.
    const two = { free: [2, 3], most: [0, 0, 1, 9] };
    expect([kept.canKeep(1, 1.5, two), kept.canKeep(1, 1.6, two)]).toEqual([true, false]);
    kept.take(0, -3);
    expect(kept.canKeep(1, 2.5, none)).toBe(true);
  });

  it("forgive binary rounding and no more", () => {
    const kept = new LimitsKept([{ coefficients: [1, 1], most: 0.3 }]);
    kept.take(0, 0.1);
    expect([0.2, 0.2000001].map((amount) => kept.canKeep(1, amount, { free: [], most: [] }))).toEqual([true, false]);
  });

  it("of at least 5 g keep a feed at 5 where 3 would be closest", () => {
    const task = { columns: [[0.3]], wanted: [1], grids: [gridOf({ kind: "step", step: 1 }, "A")] };
    expect(searchGrid({ ...task, limits: [{ coefficients: [-1], most: -5 }] })?.x).toEqual([5]);
  });

  it("as costs, by hand: 2 x (3a + b - 4) + 5 x (-a + 2b - 1)", () => {
    const limits = [
      { coefficients: [3, 1], most: 4 },
      { coefficients: [-1, 2], most: 1 },
    ];
    const { slope, base } = limitCosts(limits, [2, 5], 2);
    expect([[...slope], base]).toEqual([[1, 12], -13]);
  });
});

describe("amounts", () => {
  it("are written without binary dust", () => {
    const grid = gridOf({ kind: "step", step: 0.1 }, "A");
    expect([grid.at(3), grid.at(7), grid.below(0.3), grid.below(0.7), grid.below(0.29999)]).toEqual([
      0.3, 0.7, 3, 7, 2,
    ]);
  });

  it("of spoons, by hand: 1.2 g and 5 g, up to three spoonfuls", () => {
    expect(spoonAmounts({ spoonG: [1.2, 5], mostSpoonfuls: 3 })).toEqual([1.2, 2.4, 3.6, 5, 6.2, 7.4, 10, 11.2, 15]);
  });

  it("of spoons are found at the very amount and below the next", () => {
    const grid = gridOf({ kind: "amounts", amounts: [5, 1.2, 2.4] }, "A");
    expect([0, 1.1, 1.2, 2.39, 2.4, 5, 9].map((x) => grid.below(x))).toEqual([0, 0, 1, 1, 2, 3, 3]);
  });

  it("of two spoons that make the same amount stand once", () => {
    expect(spoonAmounts({ spoonG: [0.1, 0.2], mostSpoonfuls: 2 })).toEqual([0.1, 0.2, 0.3, 0.4]);
  });

  it.each<[Measure, string]>([
    [{ kind: "step", step: 0 }, "The step for Salt is 0. Give a number above 0."],
    [{ kind: "step", step: Number.NaN }, "The step for Salt is NaN. Give a number above 0."],
    [{ kind: "step", step: 1, most: -1 }, "The most of Salt is -1. Give 0 or more."],
    [{ kind: "amounts", amounts: [2, -1] }, "A spoon of Salt holds -1. Give a number above 0."],
  ])("%j is refused", (one, sentence) => {
    expect(refusal(() => gridOf(one, "Salt"))).toBe(sentence);
  });
});
