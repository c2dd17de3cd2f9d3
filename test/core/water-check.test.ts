import { describe, expect, test } from "vitest";
import { checkWater, waterState } from "../../src/core/water-check.ts";
import { totalsOfWater, type WaterLines } from "../../src/core/water-lines.ts";
import { referenceRows, totalsOf } from "./reference-rows.ts";

/** A worked water with published ion sums (+0.22 %) and 1286 µS/cm by the conductivity-factor method. */
const worked: WaterLines = {
  Ca: 85,
  Mg: 43,
  K: 2.9,
  Na: 92,
  Alkalinity: 362 * 0.8202,
  Cl: 131,
  SO4: 89,
  "NO3-N": 20 * 0.2259,
  pH: 7.5,
};

test("the worked water adds up, is very hard, and wants acid for its alkalinity", () => {
  const check = checkWater({ ...worked, EC: 1.2 });
  expect(Math.abs((check.balance.errorPercent ?? 0) - 0.22)).toBeLessThan(0.02);
  expect(check.hardnessClass).toBe("very hard");
  expect(check.doubts).toEqual([]);
  // the factor method sums ions at fixed factors and reads high at this strength: 15 %
  expect(Math.abs((check.predictedEcMsCm ?? 0) / 1.286 - 1)).toBeLessThan(0.15);
  expect(check.flags.map((flag) => flag.line)).toEqual(["EC", "Alkalinity"]);
  expect(check.advice.advice).toBe("blend");
});

describe("a report that does not add up says so", () => {
  test("calcium in mmol/L taken for mg/L", () => {
    const [doubt] = checkWater({ ...worked, Ca: 2.12 }).doubts;
    expect(doubt).toMatch(/^The ions do not add up: cations .* One of the cations is missing or too low/);
  });
  test("EC in another unit", () => {
    expect(checkWater({ ...worked, EC: 12 }).doubts[0]).toMatch(
      /The ions would make 1\.\d+ mS\/cm, the report says 12/,
    );
  });
  test("hardness against calcium and magnesium", () => {
    expect(checkWater({ ...worked, Hardness: 22 }).doubts[0]).toMatch(/make a hardness of 389 .* says 22/);
  });
});

test("PHREEQC's ten waters as mg/L: EC within 8 %, as for the ions themselves; every one adds up", () => {
  const waters = referenceRows.filter((row) => row.kind === "water" && row.tempC === 25);
  expect(waters).toHaveLength(7);
  for (const row of waters) {
    const { Ca = 0, Mg = 0, Na = 0, K = 0, SO4 = 0, Cl = 0, NO3 = 0 } = row.totals;
    const water: WaterLines = {
      Ca: Ca * 40.078,
      Mg: Mg * 24.305,
      Na: Na * 22.99,
      K: K * 39.098,
      SO4: SO4 * 96.056,
      Cl: Cl * 35.45,
      "NO3-N": NO3 * 14.007,
      Alkalinity: (row.alkalinity ?? 0) * 50.043,
      ...(row.pH === undefined ? {} : { pH: row.pH }),
    };
    expect(totalsOfWater(water).Ca).toBeCloseTo(totalsOf(row).Ca ?? 0, 8);
    const check = checkWater(water);
    expect(check.balance.acceptable).toBe(true);
    expect(Math.abs(((check.predictedEcMsCm ?? 0) * 1000) / row.result.specificConductance_uS_cm - 1)).toBeLessThan(
      0.08,
    );
  }
});

test("outside the model nothing is predicted, and nothing breaks", () => {
  expect(waterState({ Na: 19_000, Cl: 30_000 })).toBeNull();
  expect(checkWater({ Na: 19_000, Cl: 30_000 }).predictedEcMsCm).toBeNull();
  expect(checkWater({}).doubts).toEqual([]);
});
