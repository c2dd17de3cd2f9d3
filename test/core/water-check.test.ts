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

describe("by hand", () => {
  const salt = (more: WaterLines): WaterLines => ({ Na: 229.9, Cl: 354.5, ...more });

  test("2 meq/L of calcium against 1 of chloride is a third too much, and an anion is missing; the EC says no more", () => {
    expect(checkWater({ Ca: 40.078, Cl: 35.45, EC: 5 }).doubts).toEqual([
      expect.stringMatching(/cations 2, anions 1 meq\/L \(33\.3 %\)\. One of the anions is missing/),
    ]);
    expect(checkWater({ Na: 22.99, Cl: 70.9 }).doubts[0]).toMatch(
      /cations 1, anions 2 .*One of the cations is missing/,
    );
  });

  // NaCl 10 mmol/L is 1.185 mS/cm (USGS phreeqc3, literature value).
  test.each([
    [1.05, 0],
    [1.35, 0],
    [1, 1],
    [1.45, 1],
    [0, 0],
  ])("an EC of %d mS/cm beside 10 mmol/L of salt: %d doubts", (EC, count) => {
    expect(checkWater(salt({ EC })).doubts).toHaveLength(count);
  });

  test("where nothing can be predicted the EC is not doubted", () => {
    expect(checkWater({ Na: 19_000, Cl: 29_300, EC: 50 }).doubts).toEqual([]);
  });

  // Ca 20 and Mg 10 mg/L: 20 / 0.40044 + 10 / 0.24284 = 49.9 + 41.2 = 91.1 mg/L as CaCO3; a tenth of the larger is let pass.
  test.each([
    [{ Ca: 20, Mg: 10, Hardness: 83 }, 0],
    [{ Ca: 20, Mg: 10, Hardness: 81 }, 1],
    [{ Ca: 20, Mg: 10, Hardness: 101 }, 0],
    [{ Ca: 20, Mg: 10, Hardness: 102 }, 1],
    // Calcium 1 mg/L is 2.5; below 10 a whole mg/L is let pass.
    [{ Ca: 1, Mg: 0, Hardness: 3.4 }, 0],
    [{ Ca: 1, Mg: 0, Hardness: 3.6 }, 1],
    [{ Ca: 20, Hardness: 300 }, 0],
    [{ Mg: 10, Hardness: 300 }, 0],
    [{ Ca: 20, Mg: 10 }, 0],
  ])("%j: %d doubts about hardness", (lines, count) => {
    const said = checkWater(lines).doubts.filter((doubt) => doubt.includes("hardness"));
    expect(said).toHaveLength(count);
  });

  test("the state is taken at the pH of the report, else at 7.5", () => {
    expect(waterState({ ...worked, pH: 8.1 })?.pH).toBeCloseTo(8.1, 9);
    const { pH: _, ...without } = worked;
    expect(waterState(without)?.pH).toBeCloseTo(7.5, 9);
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
