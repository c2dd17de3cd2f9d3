/** A printed analysis at the edges of what rounding can hide, by hand. */

import { describe, expect, it } from "vitest";
import { parseLabel } from "../../src/core/label.ts";
import { refusal } from "./refusal.ts";

describe("forms of nitrogen against the total: half of each last printed place", () => {
  it.each([
    // Tenths: four numbers may hide 4 × 0.05 = 0.2.
    "N 15.5 NO3-N 14.0 NH4-N 1.2 Urea-N 0.5",
    // Hundredths: three numbers may hide 3 × 0.005 = 0.015.
    "N 15.55 NO3-N 14.44 NH4-N 1.12",
  ])("%s may be rounding", (text) => expect(parseLabel(text).nitrogen.ammonium).not.toBeNull());

  it.each([
    ["N 15.5 NO3-N 14.0 NH4-N 1.2 Urea-N 0.6", "15.8 %, but total N is 15.5 %"],
    ["N 15.55 NO3-N 14.44 NH4-N 1.13", "15.6 %, but total N is 15.55 %"],
  ])("%s is not", (text, said) => {
    expect(refusal(() => parseLabel(text))).toContain(said);
  });
});

describe("an oxide against its element", () => {
  // P is 0.43643 of P2O5. Tenths may hide 0.05 + 0.05 × 0.43643 = 0.0718, and a factor of 0.44 for 0.43643 a hundredth.
  it.each([
    // 0.4364 against 0.5: 0.0636 of 0.0718 + 0.005.
    "0-1-0 P 0.5",
    // 22.694 against 22.9, which is 0.44 × 52 = 22.88: 0.206 of 0.0718 + 0.229.
    "0-52-0 P 22.9",
    // 21.385 against 21.1: 0.285 of 0.0718 + 0.2139, a hundredth of the larger; of the smaller it would be 0.211.
    "0-49-0 P 21.1",
  ])("%s agree, and the oxide counts", (text) => {
    const oxide = Number(/^0-(\d+)/.exec(text)?.[1]);
    expect(parseLabel(text).percent.P).toBeCloseTo(0.43643 * oxide, 3);
  });

  it.each([
    // 0.4364 against 0.3: 0.136 of 0.0718 + 0.004.
    ["0-1-0 P 0.3", "P2O5 1 % is 0.436 % P, but it also says P 0.3 %"],
    // 22.694 against 23.1: 0.406 of 0.0718 + 0.231.
    ["0-52-0 P 23.1", "P2O5 52 % is 22.7 % P, but it also says P 23.1 %"],
  ])("%s do not", (text, said) => expect(refusal(() => parseLabel(text))).toContain(said));
});

describe("the whole", () => {
  it("of a label by weight is 100 g, however dense the feed is", () =>
    expect(refusal(() => parseLabel("60-30-20 w/w", 1.3))).toContain("adds up to 110 %, more than 100 %."));

  it("chlorine stands in for 0.2256 of oxygen each, and for no more", () => {
    // K2O 60 holds 10.2 of oxygen. Cl 5 replaces 1.1 of it: 105 − 1.1 is too much. Cl 40 replaces 9.0: 108 − 9.0 is not.
    expect(refusal(() => parseLabel("N 40 K2O 60 Cl 5"))).toContain("adds up to 105 %");
    expect(parseLabel("N 8 K2O 60 Cl 40").percent.Cl).toBe(40);
  });

  it("a label without nitrogen says nothing of nitrogen", () =>
    expect(Object.keys(parseLabel("Ca 4").percent)).toEqual(["Ca"]));
});
