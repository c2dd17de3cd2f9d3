/** Analyses worked out from formulas, against printed molar masses and a published recipe. */

import { describe, expect, test } from "vitest";
import { FEED_ROWS } from "../../src/build/sample-feeds.ts";
import { percentOf } from "../../src/build/sample-salts.ts";
import { WATER_ROWS } from "../../src/build/sample-waters.ts";
import { atomsIn, gramsPerMole } from "../../src/core/formula.ts";

describe("Molar masses as printed on reagent labels (CRC Handbook of Chemistry and Physics; from memory)", () => {
  test.each([
    ["Ca(NO3)2·4H2O", 236.15],
    ["KNO3", 101.1],
    ["KH2PO4", 136.09],
    ["MgSO4·7H2O", 246.47],
    ["K2SO4", 174.26],
    ["NH4H2PO4", 115.03],
    ["C10H12FeN2NaO8·3H2O", 421.09],
    ["H3BO3", 61.83],
    ["MnCl2·4H2O", 197.91],
    ["ZnSO4·7H2O", 287.54],
    ["CuSO4·5H2O", 249.68],
    ["Na2MoO4·2H2O", 241.95],
  ])("%s", (formula, printed) => {
    // Printed with two decimals, and with atomic weights that moved in the last decimal since.
    expect(Math.abs(gramsPerMole(formula) - printed)).toBeLessThan(0.035);
  });
});

test("percent P2O5 and K2O give back the element (Penn State Extension: 20 % P2O5 is 8.8 % P, 10 % K2O is 8.3 % K)", () => {
  const phosphate = percentOf("KH2PO4", "P", "P2O5");
  // Printed with the factor rounded to 0.44.
  expect(Math.abs((percentOf("KH2PO4", "P") / phosphate) * 20 - 8.8)).toBeLessThan(0.1);
  const potash = percentOf("KNO3", "K", "K2O");
  expect((percentOf("KNO3", "K") / potash) * 10).toBeCloseTo(8.3, 1);
});

describe("Feeds of the sample make the published solutions (Hoagland & Arnon 1950, Circular 347)", () => {
  const percent = (feed: string, heading: string): number => {
    const value = FEED_ROWS.find((row) => row.Feed === feed)?.[heading];
    return typeof value === "number" ? value : 0;
  };
  const CN = "Calcium nitrate tetrahydrate";
  const KN = "Potassium nitrate";
  const MKP = "Monopotassium phosphate";
  const MAP = "Monoammonium phosphate";
  const MGS = "Magnesium sulfate heptahydrate";
  /** mg/L from mmol/L of a salt: printed molar mass × printed percent of the feed. */
  const mgL = (
    parts: readonly (readonly [feed: string, mmolL: number, molar: number])[],
    heading: string,
    factor = 1,
  ) => parts.reduce((sum, [feed, mmolL, molar]) => sum + (mmolL * molar * percent(feed, heading) * factor) / 100, 0);
  const P_IN_P2O5 = 0.43643;
  const K_IN_K2O = 0.83015;

  test.each([
    [
      "1",
      [
        [KN, 5, 101.1],
        [CN, 5, 236.15],
        [MKP, 1, 136.09],
        [MGS, 2, 246.47],
      ] as const,
      200,
    ],
    [
      "2",
      [
        [KN, 6, 101.1],
        [CN, 4, 236.15],
        [MAP, 1, 115.03],
        [MGS, 2, 246.47],
      ] as const,
      160,
    ],
  ])("solution %s", (_, parts, calcium) => {
    expect(mgL(parts, "N")).toBeCloseTo(210, 0);
    expect(mgL(parts, "P2O5", P_IN_P2O5)).toBeCloseTo(31, 0);
    expect(mgL(parts, "K2O", K_IN_K2O)).toBeCloseTo(235, 0);
    expect(Math.abs(mgL(parts, "Ca") - calcium)).toBeLessThan(0.6);
    expect(mgL(parts, "Mg")).toBeCloseTo(48.6, 1);
    expect(mgL(parts, "S")).toBeCloseTo(64, 0);
  });

  test("one mL of the micronutrient stock in a litre", () => {
    const stock = (heading: string) => percent("Micronutrient stock", heading) * 10;
    expect(stock("B")).toBeCloseTo(0.5, 2);
    expect(stock("Mn")).toBeCloseTo(0.5, 2);
    expect(stock("Zn")).toBeCloseTo(0.05, 3);
    expect(stock("Cu")).toBeCloseTo(0.02, 3);
    expect(stock("Mo")).toBeCloseTo(0.011, 3);
    expect(stock("Cl")).toBeCloseTo(0.65, 2);
  });
});

test("the tap water's ions add up to what its report prints: 6.88 and 7.05 meq/L", () => {
  const tap = WATER_ROWS.find((row) => row.Water === "Town tap");
  const meqL = (heading: string, mgPerMeq: number) => Number(tap?.[heading]) / mgPerMeq;
  const cations = meqL("Ca", 20.039) + meqL("Mg", 12.1525) + meqL("Na", 22.99) + meqL("K", 39.098);
  const anions = meqL("Alkalinity", 50.043) + meqL("SO4", 48.03) + meqL("Cl", 35.45) + meqL("NO3-N", 14.007);
  expect(cations).toBeCloseTo(6.88, 2);
  expect(anions).toBeCloseTo(7.05, 2);
});

test("formulas: groups, hydrates and what cannot be read", () => {
  expect(Object.fromEntries(atomsIn("Ca(NO3)2·4H2O"))).toEqual({ Ca: 1, N: 2, O: 10, H: 8 });
  expect(Object.fromEntries(atomsIn("5Ca(NO3)2·NH4NO3·10H2O"))).toEqual({ Ca: 5, N: 12, O: 43, H: 24 });
  expect(() => atomsIn("Ca[NO3]2")).toThrow('from "[NO3]2" on');
  expect(() => gramsPerMole("Xx2O")).toThrow('The formula "Xx2O" cannot be read from "Xx2O" on.');
});
