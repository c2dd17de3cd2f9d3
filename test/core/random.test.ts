/** The recorded draw: the generator against its published outputs, and that it favours nobody. */

import { expect, it } from "vitest";
import { randomFrom, randomOf, shuffled } from "../../src/core/random.ts";
import { readReference } from "./reference.ts";
import { refusal } from "./refusal.ts";

it("xoshiro128** 1.1 from state 1 2 3 4, as the reference code prints it", () => {
  const { xoshiro } = readReference<{ readonly xoshiro: readonly number[] }>("statistics.json");
  const random = randomFrom([1, 2, 3, 4]);
  expect(xoshiro.map(() => random.next())).toEqual(xoshiro);
});

it("the same recorded number gives the same draw, the next one another", () => {
  const plants = ["A", "B", "C", "D", "E", "F", "G", "H"];
  expect(shuffled(plants, randomOf(48_213_377))).toEqual(shuffled(plants, randomOf(48_213_377)));
  expect(shuffled(plants, randomOf(48_213_378))).not.toEqual(shuffled(plants, randomOf(48_213_377)));
  expect(plants).toEqual(["A", "B", "C", "D", "E", "F", "G", "H"]);
});

it("over 12,000 recorded numbers each of six orders comes about 2,000 times", () => {
  const counts = new Map<string, number>();
  for (let seed = 0; seed < 12_000; seed++) {
    const order = shuffled(["A", "B", "C"], randomOf(seed)).join("");
    counts.set(order, (counts.get(order) ?? 0) + 1);
  }
  expect(counts.size).toBe(6);
  // Chi-square of five degrees of freedom exceeds 20.5 once in a thousand (Abramowitz & Stegun, table 26.8, from memory).
  const chiSquare = [...counts.values()].reduce((sum, count) => sum + (count - 2000) ** 2 / 2000, 0);
  expect(chiSquare).toBeLessThan(20.5);
});

it("the state of a recorded number is SplitMix32, so that a draw written down today can be repeated in years", () => {
  const low = 0xffffffffn;
  /** The finaliser of MurmurHash3, in whole numbers of any size. */
  const mixed = (word: bigint) => {
    let value = word;
    value = ((value ^ (value >> 16n)) * 0x85ebca6bn) & low;
    value = ((value ^ (value >> 13n)) * 0xc2b2ae35n) & low;
    return value ^ (value >> 16n);
  };
  // MurmurHash3 of nothing with a seed of 1 is its finaliser of 1 (known test vector; memory).
  expect(mixed(1n)).toBe(0x514e28b7n);
  for (const seed of [0, 1, 48_213_377, 99_999_999]) {
    const words = [1n, 2n, 3n, 4n].map((k) => Number(mixed((BigInt(seed) + k * 0x9e3779b9n) & low)));
    const [expected, found] = [randomFrom(words as [number, number, number, number]), randomOf(seed)];
    for (let k = 0; k < 10; k++) expect(found.next()).toBe(expected.next());
  }
});

it("a fraction is the next number over 2^32", () => {
  const [one, other] = [randomOf(7), randomOf(7)];
  for (let k = 0; k < 100; k++) expect(one.fraction()).toBe(other.next() / 2 ** 32);
});

it("each of very many is equally likely: a third of the numbers below 3 × 2^30 lie below 2^30", () => {
  const random = randomOf(8);
  let low = 0;
  for (let k = 0; k < 9000; k++) if (random.below(3 * 2 ** 30) < 2 ** 30) low += 1;
  // Binomial: standard deviation 44.7; taking the remainder alone would give 4500.
  expect(Math.abs(low - 3000)).toBeLessThan(4 * 44.7);
});

it("normal numbers: mean 0, standard deviation 1, 5 % beyond 1.96 on either side together", () => {
  const random = randomOf(9);
  const values = Array.from({ length: 20_000 }, () => random.normal());
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const square = values.reduce((sum, value) => sum + value * value, 0) / values.length;
  const beyond = (sign: 1 | -1) => values.filter((value) => sign * value > 1.96).length / values.length;
  // Standard errors: 1 / √20,000 = 0.0071, √(2 / 20,000) = 0.01, √(0.025 × 0.975 / 20,000) = 0.0011.
  expect(Math.abs(mean)).toBeLessThan(4 * 0.0071);
  expect(Math.abs(square - 1)).toBeLessThan(4 * 0.01);
  for (const sign of [1, -1] as const) expect(Math.abs(beyond(sign) - 0.025)).toBeLessThan(4 * 0.0011);
});

it("an order holds each item once", () => {
  for (let seed = 0; seed < 50; seed++)
    expect(shuffled(["A", "B", "C"], randomOf(seed)).sort()).toEqual(["A", "B", "C"]);
  expect(shuffled([], randomOf(1))).toEqual([]);
});

it("a number that is no draw is refused", () => {
  expect(() => randomOf(99_999_999)).not.toThrow();
  expect(refusal(() => randomOf(100_000_000))).toMatch(/^The draw is 100000000\./);
  expect(refusal(() => randomOf(1.5))).toBe("The draw is 1.5. Give a whole number from 0 to 99999999.");
  expect(refusal(() => randomOf(-1))).toMatch(/^The draw is -1\./);
});
