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

it("a number that is no draw is refused", () => {
  expect(refusal(() => randomOf(1.5))).toBe("The draw is 1.5. Give a whole number from 0 to 99999999.");
  expect(refusal(() => randomOf(-1))).toMatch(/^The draw is -1\./);
});
