import { describe, expect, test } from "vitest";
import { ionBalance } from "../../src/core/balance.ts";

test("a worked water with published sums 11.856 / 11.804 meq/L: +0.22 %", () => {
  const found = ionBalance({ Ca: 85, Mg: 43, K: 2.9, Na: 92, HCO3: 362, Cl: 131, SO4: 89, NO3: 20 });
  expect(found.cationsMeqL).toBeCloseTo(11.856, 2);
  expect(found.anionsMeqL).toBeCloseTo(11.804, 2);
  expect(Math.abs((found.errorPercent ?? 0) - 0.22)).toBeLessThan(0.01);
  expect(found.acceptable).toBe(true);
});

test("Hoagland & Arnon 1950, solutions 1 and 2, balance exactly: 20/20 and 19/19 meq/L", () => {
  const mmol = { K: 39.098, Ca: 40.078, Mg: 24.305, NH4: 18.039, NO3: 62.004, SO4: 96.056 };
  const one = ionBalance({ K: 6 * mmol.K, Ca: 5 * mmol.Ca, Mg: 2 * mmol.Mg, NO3: 15 * mmol.NO3, SO4: 2 * mmol.SO4 });
  // without the 1 meq/L of H2PO4-, which a report of PO4 counts between H2PO4- and HPO4-2
  expect([one.cationsMeqL, one.anionsMeqL].map((meq) => Math.round(meq * 1000) / 1000)).toEqual([20, 19]);
  const two = ionBalance({ K: 6 * mmol.K, NH4: mmol.NH4, Ca: 4 * mmol.Ca, Mg: 2 * mmol.Mg, NO3: 14 * mmol.NO3 });
  expect(two.cationsMeqL).toBeCloseTo(19, 3);
});

describe("how alkalinity counts", () => {
  test("as CaCO3, 50.043 mg/L is 1 meq/L; not a second time beside HCO3", () => {
    expect(ionBalance({ Na: 22.99, alkalinityMgCaCO3L: 50.043 }).errorPercent).toBeCloseTo(0, 3);
    expect(ionBalance({ HCO3: 61.016, alkalinityMgCaCO3L: 50.043 }).anionsMeqL).toBeCloseTo(1, 4);
    expect(ionBalance({ CO3: 30.0045, alkalinityMgCaCO3L: 50.043 }).anionsMeqL).toBeCloseTo(1, 4);
  });
  test("a mole of phosphate counts as 1.5 eq, between H2PO4- and HPO4-2: 94.97 mg/L is 1.5 meq/L", () => {
    expect(ionBalance({ PO4: 94.97 })).toMatchObject({ cationsMeqL: 0, anionsMeqL: expect.closeTo(1.5, 4) });
  });
});

test("what Standard Methods 1030 E accepts (memory): 0.2 meq/L up to 3, 2 % up to 10, 5 % above", () => {
  const water = (cations: number, anions: number) => ionBalance({ Na: 22.99 * cations, Cl: 35.45 * anions }).acceptable;
  expect([water(2.15, 2), water(2.25, 2)]).toEqual([true, false]);
  expect([water(5.2, 5), water(5.25, 5)]).toEqual([true, false]);
  expect([water(22, 20), water(22.2, 20)]).toEqual([true, false]);
  // The ends are counted in: 0.2 meq/L at 3, 2 % of 20 at 10.
  expect(ionBalance({ Cl: 35.45 * 3 }).allowedMeqL).toBe(0.2);
  expect(ionBalance({ Na: 22.99 * 10, Cl: 35.45 * 10 }).allowedMeqL).toBeCloseTo(0.4, 9);
});

test("no ions at all: no error to speak of", () => {
  expect(ionBalance({})).toMatchObject({ errorPercent: null, acceptable: true });
});
