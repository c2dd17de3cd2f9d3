/** What each treatment leaves, worked out by hand in meq/L: Ca 20.039, Mg 12.1525, Na 22.990, alkalinity 50.043 mg each. */

import { describe, expect, test } from "vitest";
import { TREATMENTS, treat } from "../../src/core/treatments.ts";
import type { WaterLines } from "../../src/core/water-lines.ts";

const [CA, MG, NA, ALK] = [20.039, 12.1525, 22.99, 50.043];
const lines = (water: WaterLines, treatment: (typeof TREATMENTS)[number]) => treat(water, treatment).lines;

test("every treatment says what to mind in whole sentences, and where its numbers come from", () => {
  for (const treatment of TREATMENTS) {
    const { notes, source } = treat({ Ca: 80, Mg: 10, Na: 5, Alkalinity: 150, EC: 0.6 }, treatment);
    expect(notes.length).toBeGreaterThan(0);
    for (const note of notes) expect(note, treatment).toMatch(/^[A-Z].{20,}\.$/s);
    expect(source, treatment).toMatch(/common practice, no source/);
  }
});

describe("a softener", () => {
  // 4 meq/L of calcium and 2 of magnesium: 98 % of 6 meq/L become sodium, 135.2 mg/L
  const hard = { Ca: 4 * CA, Mg: 2 * MG, Na: 10, Alkalinity: 200, EC: 0.6 };

  test("trades calcium and magnesium for sodium, charge for charge, and says how much", () => {
    const { lines: after, notes } = treat(hard, "softener");
    expect(after.Ca).toBeCloseTo(0.02 * 4 * CA, 6);
    expect(after.Mg).toBeCloseTo(0.02 * 2 * MG, 6);
    expect(after.Na).toBeCloseTo(10 + 0.98 * 6 * NA, 1);
    expect([after.Alkalinity, after.EC]).toEqual([200, 0.6]);
    expect(notes[0]).toMatch(/145 mg\/L/);
  });

  test("goes by the hardness where a metal was not measured", () => {
    for (const water of [
      { Ca: 80, Na: 10, Hardness: 6 * ALK },
      { Mg: 20, Na: 10, Hardness: 6 * ALK },
      { Na: 10, Hardness: 6 * ALK },
    ]) {
      expect(lines(water, "softener").Na).toBeCloseTo(10 + 0.98 * 6 * NA, 1);
    }
    expect(lines({ Na: 10, Hardness: 6 * ALK }, "softener").Hardness).toBeCloseTo(0.02 * 6 * ALK, 6);
  });

  test("leaves sodium unsaid where it cannot be known, and says no number", () => {
    for (const water of [{ Ca: 80, Na: 10 }, { Mg: 20, Na: 10 }, { Na: 10 }, { Ca: 80, Mg: 20 }]) {
      const { lines: after, notes } = treat(water, "softener");
      expect("Na" in after).toBe(false);
      expect(notes[0]).not.toMatch(/\d/);
      expect(notes[0]).toMatch(/sodium: not for plants/);
    }
  });
});

describe("boiling", () => {
  test("takes lime out down to 0.8 meq/L, as far as both calcium and alkalinity go", () => {
    const after = lines({ Ca: 4 * CA, Alkalinity: 3 * ALK, Hardness: 5 * ALK, Mg: 12 }, "boiling");
    expect(after.Ca).toBeCloseTo(1.8 * CA, 2);
    expect(after.Alkalinity).toBeCloseTo(0.8 * ALK, 2);
    expect(after.Hardness).toBeCloseTo(2.8 * ALK, 2);
    expect(after.Mg).toBe(12);
    const little = lines({ Ca: 2 * CA, Alkalinity: 5 * ALK }, "boiling");
    expect(little.Ca).toBeCloseTo(0.8 * CA, 2);
    expect(little.Alkalinity).toBeCloseTo(3.8 * ALK, 2);
    expect("Hardness" in little).toBe(false);
  });

  test("takes nothing out of a water with less, and never more hardness than there is", () => {
    const soft = lines({ Ca: 0.5 * CA, Alkalinity: 3 * ALK, Hardness: ALK }, "boiling");
    expect(soft.Ca).toBeCloseTo(0.5 * CA, 6);
    expect(soft.Hardness).toBeCloseTo(ALK, 6);
    expect(lines({ Ca: 4 * CA, Alkalinity: 4 * ALK, Hardness: 2 * ALK }, "boiling").Hardness).toBe(0);
  });

  test("leaves lime unsaid where one of the two was not measured; EC, pH and chloramine always", () => {
    for (const water of [
      { Ca: 80, Hardness: 200, Mg: 5 },
      { Alkalinity: 150, Hardness: 200, Mg: 5 },
    ]) {
      expect(lines(water, "boiling")).toEqual({ Mg: 5 });
    }
    expect(lines({ EC: 0.5, pH: 7.5, Chloramine: 1, "Free chlorine": 0.5, Cl: 20 }, "boiling")).toEqual({
      "Free chlorine": 0,
      Cl: 20,
    });
  });
});

describe("standing overnight", () => {
  test("brings the pH into balance with the air: 2 meq/L of alkalinity stand near 8.4", () => {
    // pH = pK1 + log [HCO3] / (KH pCO2) = 6.38 + log (0.002 / 10^(-1.41 - 3.38)) = 8.47 at 20 °C, before activities
    const { lines: after, notes } = treat(
      { Alkalinity: 2 * ALK, pH: 7.2, "Free chlorine": 0.5, Chloramine: 1 },
      "standing overnight",
    );
    expect(after.pH).toBeGreaterThan(8.3);
    expect(after.pH).toBeLessThan(8.5);
    expect(after).toMatchObject({ "Free chlorine": 0, Chloramine: 1 });
    expect(notes).toHaveLength(2);
    expect(notes[1]).toContain(`about ${after.pH?.toFixed(1)}.`);
    const phosphate = lines({ Alkalinity: 2 * ALK, "PO4-P": 3 }, "standing overnight").pH ?? 0;
    expect(Math.abs(phosphate - (after.pH ?? 0))).toBeLessThan(0.1);
  });

  test("leaves the pH unsaid without the alkalinity", () => {
    const { lines: after, notes } = treat({ pH: 7.2, Ca: 80 }, "standing overnight");
    expect(after).toEqual({ Ca: 80 });
    expect(notes).toHaveLength(1);
  });
});

test("rain is rain, whatever water there was before", () => {
  for (const water of [{}, { Ca: 300, EC: 3 }]) {
    expect(lines(water, "rain")).toMatchObject({
      Ca: 0.5,
      Mg: 0.1,
      Na: 0.6,
      Alkalinity: 1,
      EC: 0.02,
      pH: 5.8,
      Chloramine: 0,
    });
  }
});
