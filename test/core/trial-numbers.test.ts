/** Interval of a difference and plants needed, against other ways to the same numbers. */

import { describe, expect, it } from "vitest";
import { differenceInterval } from "../../src/core/difference-interval.ts";
import { pairBlocks, permutationTest } from "../../src/core/permutation.ts";
import { randomOf } from "../../src/core/random.ts";
import { plantsNeeded, powerOf } from "../../src/core/trial-power.ts";
import { readReference } from "./reference.ts";
import { refusal } from "./refusal.ts";

const pairsOf = (differences: readonly number[]) => pairBlocks(differences.map((value) => [value, 0] as const));

/** Hartigan 1969, J. Amer. Statist. Assoc. 64, 1303: the means of all subsets cut the line into equally likely parts. */
function subsetMeans(values: readonly number[]): number[] {
  const means: number[] = [];
  for (let subset = 1; subset < 2 ** values.length; subset++) {
    const chosen = values.filter((_, k) => (subset & (1 << k)) !== 0);
    means.push(chosen.reduce((sum, value) => sum + value, 0) / chosen.length);
  }
  return means.sort((a, b) => a - b);
}

describe("interval", () => {
  it("pairs: the ends are subset means, as many in from each end as the tail allows", () => {
    const { differences } = readReference<{ maize: { differences: number[] } }>("statistics.json").maize;
    const means = subsetMeans(differences);
    const tail = Math.floor(0.025 * 2 ** differences.length);
    const interval = differenceInterval(pairsOf(differences));
    expect(interval?.method).toBe("exact");
    expect(interval?.low).toBeCloseTo(means[tail - 1] as number, 3);
    expect(interval?.high).toBeCloseTo(means[means.length - tail] as number, 3);
    // p is 0.0527, so a difference of 0 is not ruled out.
    expect(interval?.low).toBeLessThan(0);
  });

  it("groups: the ends are differences of means of equally many exchanged plants", () => {
    const a = [5.1, 7.3, 6.2, 8.8, 9.4];
    const b = [4.2, 5.5, 3.9, 6.1, 7.7];
    const gaps: number[] = [];
    for (let left = 0; left < 32; left++) {
      for (let right = 0; right < 32; right++) {
        const [from, to] = [a.filter((_, k) => left & (1 << k)), b.filter((_, k) => right & (1 << k))];
        if (from.length !== to.length || from.length === 0) continue;
        const sum = (values: readonly number[]) => values.reduce((so, value) => so + value, 0);
        gaps.push((sum(from) - sum(to)) / from.length);
      }
    }
    gaps.sort((x, y) => x - y);
    expect(gaps).toHaveLength(251);
    const tail = Math.floor(0.025 * 252);
    const interval = differenceInterval([{ a, b }]);
    expect(interval?.low).toBeCloseTo(gaps[tail - 1] as number, 4);
    expect(interval?.high).toBeCloseTo(gaps[gaps.length - tail] as number, 4);
  });

  it("has no ends with five pairs, or three and three plants", () => {
    expect(differenceInterval(pairsOf([1, 2, 3, 4, 5]))).toBeNull();
    expect(differenceInterval(pairsOf([1, 2, 3, 4, 5, 6]))).not.toBeNull();
    expect(differenceInterval([{ a: [1, 2, 3], b: [7, 8, 9] }])).toBeNull();
    expect(differenceInterval([{ a: [1, 2, 3, 4], b: [7, 8, 9, 10] }])).not.toBeNull();
  });

  it("with the fewest pairs, its ends are the least and the greatest difference, however narrow", () => {
    const interval = differenceInterval(pairsOf([1, 2, 3, 4, 5, 6]));
    expect(interval?.low).toBeCloseTo(1, 5);
    expect(interval?.high).toBeCloseTo(6, 5);
    expect(differenceInterval(pairsOf([1, 1, 1, 1, 1, 1]))?.low).toBeCloseTo(1, 6);
  });

  it("leaves out a tail of just 2.5 %: 3 of the 120 draws of groups of 3 and 7", () => {
    const [a, b] = [
      [10, 21, 34],
      [1, 3, 6, 8, 13, 17, 25],
    ];
    const interval = differenceInterval([{ a, b }]);
    const tails = [interval?.low, interval?.high].map((end, k) => {
      const by = (end ?? Number.NaN) + (k === 0 ? 0.01 : -0.01);
      const { atLeast, atMost } = permutationTest([{ a: a.map((value) => value - by), b }]);
      return k === 0 ? atLeast : atMost;
    });
    expect(Math.min(...tails)).toBeGreaterThan(3);
  });

  it("26 pairs are still counted exactly, 27 no more", () => {
    const some = (count: number) => pairsOf(Array.from({ length: count }, (_, k) => k % 5));
    expect(differenceInterval(some(26))?.method).toBe("exact");
    expect(differenceInterval(some(27))?.method).toBe("approximate");
  });

  it("the approximate one agrees with the exact one within 5 % of the width, where the exact one ends", () => {
    const random = randomOf(21);
    const group = (length: number, mean: number) => Array.from({ length }, () => mean + random.normal());
    for (let run = 0; run < 2; run++) {
      for (const values of [[{ a: group(13, 1), b: group(13, 0) }], pairsOf(group(26, 1))]) {
        const exact = differenceInterval(values);
        // Student's t on the same values, written out here.
        const [only] = values;
        const mean = (list: readonly number[]) => list.reduce((sum, value) => sum + value, 0) / list.length;
        const square = (list: readonly number[]) =>
          list.reduce((sum, value) => sum + (value - mean(list)) ** 2, 0) / (list.length - 1);
        const paired = values.length > 1;
        const differences = values.map(({ a, b }) => mean(a) - mean(b));
        const error = paired
          ? Math.sqrt(square(differences) / differences.length)
          : Math.sqrt(square(only?.a ?? []) / 13 + square(only?.b ?? []) / 13);
        // t of 24 and 25 degrees of freedom, 2.5 % above [Fisher & Yates, from memory].
        const half = (paired ? 2.06 : 2.064) * error;
        const width = (exact?.high ?? 0) - (exact?.low ?? 0);
        expect(Math.abs((exact?.low ?? 0) - (mean(differences) - half)) / width).toBeLessThan(0.05);
        expect(Math.abs((exact?.high ?? 0) - (mean(differences) + half)) / width).toBeLessThan(0.05);
      }
    }
    const many = differenceInterval([{ a: group(30, 1), b: group(30, 0) }]);
    expect(many?.method).toBe("approximate");
    expect(differenceInterval(pairsOf(group(40, 1)))?.method).toBe("approximate");
  });
});

describe("the approximate interval, by hand", () => {
  const upTo = (count: number, step = 1) => Array.from({ length: count }, (_, k) => step * (k + 1));
  it("Student, differences 1 to 30: 15.5 ± 2.045 × 8.803 / √30", () => {
    // Variance of 1 to n: n (n + 1) / 12. Student's t, 29 degrees of freedom [Fisher & Yates, from memory].
    const interval = differenceInterval(pairsOf(upTo(30)));
    expect(interval?.low).toBeCloseTo(15.5 - 3.287, 2);
    expect(interval?.high).toBeCloseTo(15.5 + 3.287, 2);
  });

  it("of pairs is that of their differences, wherever the two of a pair stand", () => {
    const apart = pairsOf(upTo(30));
    const moved = differenceInterval(upTo(30).map((by) => ({ a: [by + by ** 2], b: [by ** 2] })));
    expect(moved?.low).toBeCloseTo(differenceInterval(apart)?.low ?? Number.NaN, 9);
    expect(moved?.high).toBeCloseTo(differenceInterval(apart)?.high ?? Number.NaN, 9);
  });

  it("Welch, 11 to 20 against 2, 4 … 40: −5.5 ± 2.0665 × √(9.167 / 10 + 140 / 20), 23.45 degrees of freedom", () => {
    const interval = differenceInterval([{ a: upTo(10).map((value) => value + 10), b: upTo(20, 2) }]);
    expect(interval?.low).toBeCloseTo(-5.5 - 5.814, 2);
    expect(interval?.high).toBeCloseTo(-5.5 + 5.814, 2);
    // the other way about, the same from the other side
    const turned = differenceInterval([{ a: upTo(20, 2), b: upTo(10).map((value) => value + 10) }]);
    expect(turned?.low).toBeCloseTo(5.5 - 5.814, 2);
    expect(turned?.high).toBeCloseTo(5.5 + 5.814, 2);
  });
});

describe("plants needed", () => {
  /** Cohen 1988, Statistical Power Analysis, table 2.4.1, two-sided 0.05, power 0.80, from memory: per group. */
  it.each([
    { size: 0.8, perGroup: 26 },
    { size: 1, perGroup: 17 },
    { size: 1.2, perGroup: 12 },
  ])(
    "without pairs, a difference of $size spreads: $perGroup in each group, give or take two",
    ({ size, perGroup }) => {
      const { found } = plantsNeeded({ design: "Together", difference: size, spread: 1 });
      expect(Math.abs((found?.plants ?? 0) / 2 - perGroup)).toBeLessThanOrEqual(2);
      expect(found?.power).toBeGreaterThanOrEqual(0.8);
    },
  );

  it("pairs: never fewer than six, since five cannot reach 0.05; too many are said to be too many", () => {
    expect(plantsNeeded({ design: "Pairs", difference: 10, spread: 1 }).found).toMatchObject({ plants: 12 });
    expect(plantsNeeded({ design: "Together", difference: 10, spread: 1 }).found).toMatchObject({ plants: 8 });
    expect(plantsNeeded({ design: "Pairs", difference: 0.3, spread: 1 }).found).toBeNull();
    expect(powerOf({ design: "Pairs", difference: 10, spread: 1 }, 10).power).toBe(0);
  });

  it("comes out the same each time, and refuses a difference of nothing", () => {
    const task = { design: "Pairs", difference: 1, spread: 1 } as const;
    expect(plantsNeeded(task)).toEqual(plantsNeeded(task));
    expect(refusal(() => plantsNeeded({ ...task, difference: 0 }))).toBe("The difference is 0. Give a number above 0.");
  });
});

it("a difference of five spreads takes the fewest plants, however small the spread", () => {
  expect(plantsNeeded({ design: "Pairs", difference: 0.5, spread: 0.1 }).found).toMatchObject({ plants: 12 });
});
