/** Lines of a water report as ions and as blends, by hand. */

import { describe, expect, it } from "vitest";
import {
  alkalinityEqKg,
  balanceOfWater,
  blendLines,
  hardnessOf,
  LINE_UNITS,
  totalsOfWater,
  WATER_LINES,
} from "../../src/core/water-lines.ts";

describe("ions", () => {
  it("of a mole of each in a cubic metre of water, mg/L by CIAAW's weights: a thousandth of a mol/kg", () => {
    const water = {
      ...{ Ca: 40.078, Mg: 24.305, Na: 22.99, K: 39.098, Cl: 35.45, SO4: 96.056, B: 10.81 },
      ...{ "NH4-N": 14.007, "NO3-N": 14.007, "PO4-P": 30.974 },
    };
    const totals = Object.entries(totalsOfWater(water));
    expect(totals.map(([ion]) => ion).sort()).toEqual(
      ["B", "Ca", "Cl", "K", "Mg", "NH4", "NO3", "Na", "PO4", "SO4"].sort(),
    );
    for (const [, molKg] of totals) expect(molKg).toBeCloseTo(0.001, 9);
    expect(Object.values(totalsOfWater({})).every((molKg) => molKg === 0)).toBe(true);
  });

  it("add up in meq/L: ammonium 1 and sodium 1 against nitrate 1, phosphate 1.5 and alkalinity 0.5", () => {
    const found = balanceOfWater({ "NH4-N": 14.007, Na: 22.99, "NO3-N": 14.007, "PO4-P": 30.974, Alkalinity: 25.0215 });
    expect(found.cationsMeqL).toBeCloseTo(2, 3);
    expect(found.anionsMeqL).toBeCloseTo(3, 3);
    expect(alkalinityEqKg({ Alkalinity: 50.043 })).toBeCloseTo(0.001, 7);
    expect(alkalinityEqKg({})).toBe(0);
  });

  it("hardness comes from calcium and magnesium, else as it was measured", () => {
    // 20 / 0.40044 + 10 / 0.24284 (Hem 1985).
    expect(hardnessOf({ Ca: 20, Mg: 10, Hardness: 5 })).toBeCloseTo(91.1, 1);
    expect([hardnessOf({ Ca: 20, Hardness: 5 }), hardnessOf({ Mg: 20, Hardness: 5 }), hardnessOf({ Ca: 20 })]).toEqual([
      5,
      5,
      null,
    ]);
  });
});

it("a quarter of one water with three quarters of another, line by line", () => {
  const one = { Ca: 80, Na: 20, EC: 0.8, pH: 7.6, Cl: 10 };
  expect(blendLines(one, { Ca: 0, Na: 4, EC: 0.04, pH: 6.5, Mg: 3 }, 0.25)).toEqual({
    Ca: 20,
    Na: 8,
    EC: expect.closeTo(0.23, 9),
  });
  expect(blendLines(one, { pH: 7.6 }, 0.25)).toEqual({ pH: 7.6 });
});

it("every line has its unit: mg/L but for hardness and alkalinity, EC and pH", () => {
  const other = { Alkalinity: "mg/L CaCO3", Hardness: "mg/L CaCO3", EC: "mS/cm", pH: "" };
  expect(LINE_UNITS).toEqual({ ...Object.fromEntries(WATER_LINES.map((line) => [line, "mg/L"])), ...other });
});
