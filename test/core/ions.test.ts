/** From a report's figures to moles, by hand from the atomic weights (CIAAW 2021). */

import { describe, expect, it } from "vitest";
import { dissolved } from "../../src/core/ions.ts";
import { refusal } from "./refusal.ts";

describe("a composition", () => {
  it.each([
    // H3BO3: 3 · 1.008 + 10.81 + 3 · 15.999 = 61.831 g/mol; it is counted as boron.
    ["H3BO3", 61.831, "B"],
    // NO3: 14.007 + 47.997; PO4: 30.974 + 63.996; NH4: 14.007 + 4.032; SO4: 32.06 + 63.996.
    ["NO3", 62.004, "NO3"],
    ["PO4", 94.97, "PO4"],
    ["NH4", 18.039, "NH4"],
    ["SO4", 96.056, "SO4"],
    ["Ca", 40.078, "Ca"],
    ["Cl", 35.45, "Cl"],
  ] as const)("of %s: %d mg/L are a thousandth of a mole of %s, and so is 1 mmol/L", (column, mgL, component) => {
    for (const { totals } of [dissolved({ [column]: mgL }, "mg/L"), dissolved({ [column]: 1 }, "mmol/L")]) {
      expect(Object.keys(totals)).toEqual([component]);
      expect(totals[component]).toBeCloseTo(0.001, 9);
    }
  });

  it("counts alkalinity in equivalents, 50.043 mg/L as CaCO3 each; acid waters have it below 0", () => {
    expect(dissolved({ Alkalinity: 100.087 }, "mg/L").alkalinityEqKg).toBeCloseTo(0.002, 7);
    expect(dissolved({ Alkalinity: -0.1 }, "mmol/L").alkalinityEqKg).toBeCloseTo(-0.0001, 12);
    const { totals, carbonMolKg, alkalinityEqKg } = dissolved({ CO3: 60.008 }, "mg/L");
    expect([totals, alkalinityEqKg]).toEqual([{}, null]);
    expect(carbonMolKg).toBeCloseTo(0.001, 12);
  });

  it.each([
    [{ Ca: -1 }, "Ca is -1"],
    [{ CO3: -1 }, "CO3 is -1"],
    [{ Alkalinity: Number.NEGATIVE_INFINITY }, "Alkalinity is -Infinity"],
    [{ Alkalinity: Number.NaN }, "Alkalinity is NaN"],
  ])("%j is refused", (composition, start) => {
    expect(refusal(() => dissolved(composition, "mg/L"))).toContain(start);
  });
});
