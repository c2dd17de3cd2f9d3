/** Exact permutation tests against Fisher's counts, against every split listed one by one, and in time. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Block, pairBlocks, permutationTest } from "../../src/core/permutation.ts";
import { randomOf } from "../../src/core/random.ts";
import { drawn } from "../drawn.ts";
import { readReference } from "./reference.ts";
import { refusal } from "./refusal.ts";

interface Printed {
  readonly maize: Readonly<Record<"sum" | "ways" | "atLeast" | "asExtreme", number>> & {
    readonly differences: readonly number[];
  };
  readonly tea: { readonly ways: number; readonly atLeastRight: readonly (readonly [right: number, ways: number])[] };
}
const { maize, tea } = readReference<Printed>("statistics.json");

describe("Fisher 1935, The Design of Experiments", () => {
  it("section 21: 863 of 32768 sums of Darwin's maize reach 314, 1726 on either side", () => {
    const test = permutationTest(pairBlocks(maize.differences.map((difference) => [difference, 0] as const)));
    expect(test.difference * maize.differences.length).toBeCloseTo(maize.sum, 9);
    expect(test).toMatchObject({ splits: maize.ways, atLeast: maize.atLeast, asExtreme: maize.asExtreme });
    expect(test.p).toBe(maize.asExtreme / maize.ways);
    // In inches, an eighth being 0.125, and as both plants of a pair: the same counts.
    const inches = maize.differences.map((difference) => [20 + difference / 8, 20] as const);
    expect(permutationTest(pairBlocks(inches)).asExtreme).toBe(maize.asExtreme);
  });

  it.each(tea.atLeastRight)("chapter II: %d cups or more right of four, by chance in %d of 70 ways", (right, ways) => {
    const cups = (ones: number) => Array.from({ length: 4 }, (_, k) => (k < ones ? 1 : 0));
    const test = permutationTest([{ a: cups(right), b: cups(4 - right) }]);
    expect(test).toMatchObject({ splits: tea.ways, atLeast: ways });
  });
});

/** Every way of drawing, listed by recursion: the sums of a-means, block by block. */
function listed(blocks: readonly Block[]): number[] {
  const count = blocks.reduce((sum, { a, b }) => sum + a.length + b.length, 0);
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const splits = (rest: readonly number[], size: number): [number[], number[]][] => {
    const [first, ...others] = rest;
    if (first === undefined) return size === 0 ? [[[], []]] : [];
    const taken = size > 0 ? splits(others, size - 1).map(([a, b]): [number[], number[]] => [[first, ...a], b]) : [];
    return [...taken, ...splits(others, size).map(([a, b]): [number[], number[]] => [a, [first, ...b]])];
  };
  let differences = [0];
  for (const { a, b } of blocks) {
    const own = splits([...a, ...b], a.length).map(
      ([left, right]) => ((a.length + b.length) / count) * (mean(left) - mean(right)),
    );
    differences = differences.flatMap((so) => own.map((more) => so + more));
  }
  return differences;
}

describe("against every split listed", () => {
  const whole = fc.integer({ min: -5, max: 9 });
  const decimal = fc.integer({ min: -500, max: 900 }).map((value) => value / 100);
  const block = (value: fc.Arbitrary<number>, most: number) =>
    fc.record({
      a: fc.array(value, { minLength: 1, maxLength: most }),
      b: fc.array(value, { minLength: 1, maxLength: most }),
    });
  it.each([
    ["whole numbers", whole],
    ["decimals", decimal],
    ["thirds", whole.map((value) => value / 3)],
  ])("counts are the same for %s, ties included", (_, value) => {
    fc.assert(
      fc.property(
        fc.oneof(fc.tuple(block(value, 6)), fc.array(block(value, 2), { minLength: 1, maxLength: 4 })),
        (blocks) => {
          const test = permutationTest(blocks);
          const all = listed(blocks);
          const near = 1e-9;
          expect(test.splits).toBe(all.length);
          expect(test.atLeast).toBe(all.filter((one) => one >= test.difference - near).length);
          expect(test.atMost).toBe(all.filter((one) => one <= test.difference + near).length);
          expect(test.asExtreme).toBe(all.filter((one) => Math.abs(one) >= Math.abs(test.difference) - near).length);
        },
      ),
      { numRuns: drawn(150) },
    );
  });

  it("where all are alike, in any decimals, every way is as extreme", () => {
    for (const value of [2, 1 / 3]) {
      const pair = [value, value] as const;
      expect(permutationTest(pairBlocks([pair, pair]))).toMatchObject({ atLeast: 4, atMost: 4, asExtreme: 4, p: 1 });
    }
  });

  it("counting sums and matching halves agree where both can", () => {
    const random = randomOf(11);
    const group = (length: number) => Array.from({ length }, () => random.below(12));
    const blocks = [{ a: group(9), b: group(8) }];
    // A third of each cannot be written with nine decimals, so these are matched by halves.
    const thirds = blocks.map(({ a, b }) => ({ a: a.map((value) => value / 3), b: b.map((value) => value / 3) }));
    const { difference, ...counts } = permutationTest(blocks);
    const { difference: third, ...alike } = permutationTest(thirds);
    expect(alike).toEqual(counts);
    expect(3 * third).toBeCloseTo(difference, 9);
  });
});

describe("in time", () => {
  const random = randomOf(12);
  const group = (length: number) => Array.from({ length }, () => random.normal());
  const within = (milliseconds: number, work: () => void) => {
    const from = performance.now();
    work();
    expect(performance.now() - from).toBeLessThan(milliseconds);
  };

  it("2 × 12 values of any kind and 22 pairs take less than a second", () => {
    within(1000, () => {
      expect(permutationTest([{ a: group(12), b: group(12) }]).splits).toBe(2_704_156);
    });
    within(1000, () => {
      expect(permutationTest(pairBlocks(group(22).map((value) => [value, 0] as const))).splits).toBe(2 ** 22);
    });
  });

  it("2 × 50 counts of leaves are counted too, every way of them", () => {
    const leaves = (length: number) => Array.from({ length }, () => random.below(9));
    within(1000, () => {
      // 100! / (50! 50!) by Pascal's rule in whole numbers of any size.
      let ways = 1n;
      for (let k = 1n; k <= 50n; k++) ways = (ways * (50n + k)) / k;
      expect(permutationTest([{ a: leaves(50), b: leaves(50) }]).splits / Number(ways)).toBeCloseTo(1, 12);
    });
  });

  it("values of nine decimals that differ by few steps are counted like whole numbers", () => {
    const tiny = (length: number) => Array.from({ length }, (_, k) => (k % 3) / 1e9);
    // 50! / (25! 25!)
    expect(permutationTest([{ a: tiny(25), b: tiny(25) }]).splits).toBe(126_410_606_437_752);
  });

  it("of values with many digits 42 are still counted, and 21 in one of several blocks", () => {
    const roots = (from: number, count: number) => Array.from({ length: count }, (_, k) => Math.sqrt(from + k));
    // 42 × 41 × 40 / 6, and only the way seen takes the three least
    expect(permutationTest([{ a: roots(2, 3), b: roots(5, 39) }])).toMatchObject({ splits: 11_480, atMost: 1 });
    const blocks = [
      { a: roots(2, 1), b: roots(3, 20) },
      { a: [1.1], b: [2.2] },
    ];
    expect(permutationTest(blocks)).toMatchObject({ splits: 42, atMost: 1 });
  });

  it("what cannot be counted is refused, never sampled", () => {
    expect(refusal(() => permutationTest([{ a: group(25), b: group(25) }]))).toBe(
      "50 values can be divided in more ways than can be counted in the time there is. Give 42 or fewer in all, or values with fewer digits.",
    );
    expect(refusal(() => permutationTest(pairBlocks(group(50).map((value) => [value, 0] as const))))).toMatch(
      /^100 values can be divided in more ways than/,
    );
    // Pairs are counted up to 42, which are 84 values.
    expect(refusal(() => permutationTest(pairBlocks(group(50).map((value) => [value, 0] as const))))).not.toContain(
      "42",
    );
    const full = { a: [1], b: [2] };
    for (const blocks of [[], [{ a: [], b: [1] }], [{ a: [1], b: [] }], [full, { a: [1], b: [] }]]) {
      expect(refusal(() => permutationTest(blocks))).toBe("A group holds no number. Give at least one value for each.");
    }
    expect(refusal(() => permutationTest([{ a: [], b: [1] }]))).toBe(
      "A group holds no number. Give at least one value for each.",
    );
    for (const blocks of [
      [],
      [{ a: [1], b: [] }],
      [
        { a: [1], b: [2] },
        { a: [3], b: [] },
      ],
    ]) {
      expect(refusal(() => permutationTest(blocks))).toMatch(/^A group holds no number/);
    }
  });
});

describe("numbers that need many places", () => {
  it("keeps small differences beside a large one, nine decimals or not", () => {
    const test = permutationTest([{ a: [1e6 + 0.4, 0.1], b: [1e6, 0.300000001] }]);
    expect([test.splits, test.atLeast, test.atMost]).toEqual([6, 3, 4]);
  });
  it("counts many blocks of four", () => {
    const blocks = Array.from({ length: 24 }, (_, k) => ({ a: [1 + (k % 2), 2], b: [1, 3] }));
    const test = permutationTest(blocks);
    expect(test.splits).toBe(6 ** 24);
    expect(test.p).toBeGreaterThan(0);
  });
});
