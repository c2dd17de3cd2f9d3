import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { TREATMENTS, treat } from "../../src/core/treatments.ts";
import { balanceOfWater, blendLines, hardnessOf, type WaterLines } from "../../src/core/water-lines.ts";

const tap: WaterLines = {
  Ca: 85,
  Mg: 43,
  K: 2.9,
  Na: 92,
  Alkalinity: 296.9,
  Cl: 131,
  SO4: 89,
  "NO3-N": 4.52,
  EC: 1.2,
  pH: 7.4,
  "Free chlorine": 0.5,
  Chloramine: 0.8,
};
const lines = (treatment: (typeof TREATMENTS)[number]) => treat(tap, treatment).lines;

describe("each treatment, on the lines it is known for (common practice, no source)", () => {
  test("reverse osmosis holds nearly everything back, boron only by half", () => {
    expect(lines("reverse osmosis").Ca).toBeLessThan(0.05 * 85);
    expect(treat({ B: 1 }, "reverse osmosis").lines.B).toBe(0.5);
    expect(lines("reverse osmosis").pH).toBeUndefined();
  });
  test("distilling leaves a hundredth, the gases are not known", () => {
    expect(lines("distilling").Na).toBeCloseTo(0.92, 9);
    expect(lines("distilling")["Free chlorine"]).toBeUndefined();
  });
  test("a carbon filter takes chlorine and no salts; chloramine has to be tested", () => {
    expect(lines("carbon filter")).toMatchObject({ "Free chlorine": 0, Ca: 85, Na: 92, EC: 1.2 });
    expect(lines("carbon filter").Chloramine).toBeUndefined();
  });
  test("a softener trades hardness for sodium, charge for charge", () => {
    const soft = lines("softener");
    expect(balanceOfWater(soft).cationsMeqL).toBeCloseTo(balanceOfWater(tap).cationsMeqL, 9);
    expect(hardnessOf(soft)).toBeCloseTo(0.02 * (hardnessOf(tap) ?? 0), 9);
    expect(treat(tap, "softener").notes[0]).toMatch(/not for plants/);
    expect(treat({ Hardness: 100, Na: 0 }, "softener").lines.Na).toBeCloseTo(0.98 * 22.99 * (100 / 50.043), 3);
    expect(treat({ Hardness: 100 }, "softener").lines.Na).toBeUndefined();
  });
  test("boiling takes calcium and alkalinity by the same charge", () => {
    const after = lines("boiling");
    const calcium = (2 * (85 - (after.Ca ?? 0))) / 40.078;
    expect(calcium).toBeGreaterThan(1);
    expect(((tap.Alkalinity ?? 0) - (after.Alkalinity ?? 0)) / 50.043).toBeCloseTo(calcium, 4);
    expect(after.Na).toBe(92);
    expect(treat({ Ca: 10, Alkalinity: 25 }, "boiling").lines.Ca).toBeCloseTo(10, 9);
    expect(treat({ Ca: 60 }, "boiling").lines.Ca).toBeUndefined();
  });
  test("standing overnight: free chlorine leaves, chloramine stays, the pH climbs to its balance with air", () => {
    const after = lines("standing overnight");
    expect(after).toMatchObject({ "Free chlorine": 0, Chloramine: 0.8, Ca: 85 });
    expect(after.pH).toBeGreaterThan(8.2);
    expect(after.pH).toBeLessThan(8.9);
  });
  test("rain is a water of its own, and balances within its half meq/L", () => {
    expect(treat({}, "rain").lines).toEqual(lines("rain"));
    expect(balanceOfWater(lines("rain")).acceptable).toBe(true);
  });
  test("every treatment speaks, names its source, and invents no line and no negative number", () => {
    for (const treatment of TREATMENTS) {
      const after = treat(tap, treatment);
      expect(after.notes.length).toBeGreaterThan(0);
      expect(after.source).not.toBe("");
      expect(Object.values(after.lines).every((value) => value >= 0)).toBe(true);
      if (treatment !== "rain") expect(Object.keys(treat({}, treatment).lines)).toEqual([]);
    }
  });
});

describe("blend of two reports", () => {
  test("a water with itself is itself", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        const blend = blendLines(tap, tap, share);
        expect(Object.keys(blend)).toEqual(Object.keys(blendLines(tap, tap, 1)));
        for (const [line, value] of Object.entries(blend)) {
          expect(value).toBeCloseTo(tap[line as keyof WaterLines] ?? Number.NaN, 9);
        }
      }),
    );
    expect(Object.keys(blendLines(tap, tap, 0.3)).sort()).toEqual(Object.keys(tap).sort());
  });
  test("a quarter of tap water in rain, line by line; pH and what only one report has are left out", () => {
    const blend = blendLines({ ...tap, B: 0.1 }, { Ca: 1, Na: 0, pH: 5.6 }, 0.25);
    expect(blend).toEqual({ Ca: 22, Na: 23 });
  });
});
