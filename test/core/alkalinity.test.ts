import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { alkalinityMgCaCO3L, alkalinityShareUsed, bicarbonateMgL, blendShare } from "../../src/core/alkalinity.ts";

test("USGS: 580 mg/L as CaCO3 is 707 mg/L HCO3, 267 is 326 (divided by 0.8202, Hem 1985)", () => {
  expect(Math.round(bicarbonateMgL(580))).toBe(707);
  expect(Math.round(bicarbonateMgL(267))).toBe(326);
});

describe("share of 2 meq/L used up from pH 8.3 in a closed vessel (worked out from Plummer & Busenberg's constants)", () => {
  // the greenhouse rule of thumb of 80 % for pH 5.8 agrees (memory); printed to a tenth of a percent
  test.each([
    [5.8, 78.1],
    [5.5, 87.8],
    [6, 69.2],
  ])("to pH %s", (toPH, percent) => {
    const share = alkalinityShareUsed({ alkalinityMeqL: 2, fromPH: 8.3, toPH });
    expect(Math.abs(100 * share - percent)).toBeLessThan(0.06);
  });
});

test("there and back, and nothing used where the pH stays", () => {
  const amount = fc.double({ min: 0, max: 5000, noNaN: true });
  fc.assert(
    fc.property(amount, (mg) => {
      expect(alkalinityMgCaCO3L(bicarbonateMgL(mg))).toBeCloseTo(mg, 8);
    }),
  );
  expect(alkalinityShareUsed({ alkalinityMeqL: 2, fromPH: 7.5, toPH: 7.5 })).toBeCloseTo(0, 12);
});

describe("blend", () => {
  test("a quarter of tap water of 200 in rain of 0 makes 50 (salt arithmetic: share = (target − low) / (tap − low))", () => {
    expect(blendShare({ tap: 200, low: 0, target: 50 })).toBe(0.25);
  });
  test("the share brings the blend to the target; a water with itself is itself", () => {
    const level = fc.double({ min: 0, max: 500, noNaN: true });
    fc.assert(
      fc.property(level, level, fc.double({ min: 0, max: 1, noNaN: true }), (tap, low, share) => {
        fc.pre(Math.abs(tap - low) > 1e-6);
        const target = share * tap + (1 - share) * low;
        const found = blendShare({ tap, low, target });
        expect(found * tap + (1 - found) * low).toBeCloseTo(target, 6);
      }),
    );
    expect(blendShare({ tap: 80, low: 80, target: 80 })).toBe(1);
  });
  test("outside the two it says between what", () => {
    expect(() => blendShare({ tap: 200, low: 10, target: 5 })).toThrow("Give a target from 10 to 200.");
    expect(() => blendShare({ tap: 50, low: 50, target: 20 })).toThrow(/Both waters are at 50/);
    expect(() => blendShare({ tap: Number.NaN, low: 50, target: 20 })).toThrow(/not between/);
  });
});
