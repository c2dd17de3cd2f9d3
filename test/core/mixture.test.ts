/** Nitrogen of labels and mixtures by its forms, and what the meter should show for a mixture. */

import { describe, expect, it } from "vitest";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { mixtureOf, nitrogenShares } from "../../src/core/mixture.ts";
import { mixtureEc } from "../../src/core/mixture-ec.ts";
import { gramsPerMole, percentOf } from "./formula.ts";

const feed = (label: string): Feed => feedOf("A", parseLabel(label), null);
const salt = (formula: string): Feed => feedOf(formula, { ...parseLabel("0-0-0"), percent: percentOf(formula) }, null);

describe("shares of the nitrogen, as nitrate, ammonium, urea and not stated", () => {
  it.each<[string, number[]]>([
    ["N 20 NO3-N 5 NH4-N 5 Urea-N 10", [0.25, 0.25, 0.5, 0]],
    ["N 10 NO3-N 4 Other-N 6", [0.4, 0, 0, 0.6]],
    ["N 10 NH4-N 10", [0, 1, 0, 0]],
    ["N 10 Urea-N 4 Other-N 6", [0, 0, 0.4, 0.6]],
    ["N 10 Other-N 10", [0, 0, 0, 1]],
    // Rounded on the label, the forms come to 10.2 of 10: of 10.2 then.
    ["N 10 NO3-N 2 NH4-N 2.5 Urea-N 3 Other-N 2.7", [2 / 10.2, 2.5 / 10.2, 3 / 10.2, 2.7 / 10.2]],
    // No form named: a salt's formula says it, an unknown mix does not.
    ["13-0-46", [1, 0, 0, 0]],
    ["21-0-0 S 24", [0, 1, 0, 0]],
    ["34.5-0-0", [0.5, 0.5, 0, 0]],
    ["46-0-0", [0, 0, 1, 0]],
    ["46-0-0 Other-N 46", [0, 0, 0, 1]],
    ["10-5-5", [0, 0, 0, 1]],
    // A trace of nitrogen in a salt whose formula feeds none: nobody says which.
    ["Mg 9.8 S 13 N 0.2", [0, 0, 0, 1]],
    ["Fe 13 N 0.2", [0, 0, 0, 1]],
    ["0-5-5", [0, 0, 0, 0]],
  ])("%s", (label, expected) => {
    const { nitrate, ammonium, urea, unstated } = nitrogenShares(feed(label));
    const shares = [nitrate, ammonium, urea, unstated];
    shares.forEach((share, i) => {
      expect(share).toBeCloseTo(expected[i] ?? Number.NaN, 9);
    });
  });

  it("of a mixture, by hand: the water's as nitrate, 2 g/L of 20 % of which half is urea and a quarter each other form", () => {
    const doses = [
      { feed: feed("N 20 NO3-N 5 NH4-N 5 Urea-N 10"), perLitre: 0.5 },
      { feed: feed("10-5-5"), perLitre: 0.2 },
    ];
    const { amounts, nitrogenMgL } = mixtureOf(doses, { N: 3, Ca: 40 });
    expect(nitrogenMgL.nitrate).toBeCloseTo(3 + 25, 9);
    expect(nitrogenMgL.ammonium).toBeCloseTo(25, 9);
    expect(nitrogenMgL.urea).toBeCloseTo(50, 9);
    expect(nitrogenMgL.unstated).toBeCloseTo(20, 9);
    expect(amounts.N).toBeCloseTo(123, 9);
    expect(amounts.Ca).toBe(40);
  });
});

describe("the meter at 25 °C", () => {
  /** mS/cm of so many mmol/L of a salt in pure water. */
  const ecOf = (formula: string, mmolL: number): number =>
    mixtureEc(mixtureOf([{ feed: salt(formula), perLitre: (mmolL * gramsPerMole(formula)) / 1000 }], {}));

  // KCl: the usual calibration solutions; NaCl: literature values tabulated with USGS phreeqc3 (Equiv_Conduct).
  it.each([
    ["KCl", 5, 0.7175],
    ["KCl", 10, 1.412],
    ["KCl", 20, 2.765],
    ["NaCl", 10, 1.1847],
  ])("%s at %d mmol/L reads %d mS/cm, within 2 %%", (formula, mmolL, expected) => {
    expect(Math.abs(ecOf(formula, mmolL) / expected - 1)).toBeLessThan(0.02);
  });

  it("ammonium counts as an ion, as mobile as potassium (73.5 and 73.48 S cm²/eq, CRC); urea counts as none", () => {
    expect(Math.abs(ecOf("NH4NO3", 5) / ecOf("KNO3", 5) - 1)).toBeLessThan(0.02);
    // Pure water at pH 6: 1e-6 eq/L of H+ with 349.65 S cm²/eq is 0.0004 mS/cm.
    expect(ecOf("CH4N2O", 5)).toBeLessThan(0.001);
  });
});
