import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { alkalinityMgCaCO3L, alkalinityShareUsed, bicarbonateMgL, blendShare } from "../../src/core/alkalinity.ts";
import { refusal } from "./refusal.ts";

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

test("where the water is basic enough for OH- to count: from pH 10 to 8.3 takes 28.1 % of 2 meq/L", () => {
  // pK1 6.352, pK2 10.329, pKw 13.995. At 10: OH- 0.1012 mmol/L; a mole of carbon brings (1 + 2 × 0.4688) / 1.4690 =
  // 1.3190 eq, so carbon is (2 − 0.1012) / 1.3190 = 1.4396. At 8.3: 0.99812 × 1.4396 + 0.0020 = 1.4389 of the 2.
  const share = alkalinityShareUsed({ alkalinityMeqL: 2, fromPH: 10, toPH: 8.3 });
  expect(Math.abs(100 * share - 28.05)).toBeLessThan(0.06);
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
    const asked = (tap: number, low: number, target: number) => refusal(() => blendShare({ tap, low, target }));
    expect(asked(200, 10, 5)).toMatch(/^The target 5 is not between .* Give a target from 10 to 200\.$/);
    expect(asked(200, 10, 250)).toMatch(/^The target 250 is not between .* Give a target from 10 to 200\.$/);
    expect(asked(50, 50, 20)).toMatch(/^Both waters are at 50, .* at 20\.$/);
    expect(asked(Number.NaN, 50, 20)).toMatch(/not between/);
  });
});
