import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Composition, dissolved } from "../../src/core/ions.ts";
import { compositionState, STATE_ROWS, stateRows } from "../../src/core/water-state.ts";
import { referenceRows } from "./reference-rows.ts";
import { refusal } from "./refusal.ts";

const COLUMN: Readonly<Record<string, string>> = { Amm: "NH4", P: "PO4" };

describe("PHREEQC 3.8.9, 92 solutions, as a table in mmol/L", () => {
  // mol/kg is taken for mol/L on both ways, so the tolerances are those of speciation.test.ts
  test.each(referenceRows.map((row) => [row.id, row] as const))("%s", (_, row) => {
    const composition: Record<string, number> = {};
    for (const [name, mmol] of Object.entries(row.totals)) composition[COLUMN[name] ?? name] = mmol;
    if (row.alkalinity !== undefined) composition.Alkalinity = row.alkalinity;
    const state = compositionState({
      composition: composition as Composition,
      unit: "mmol/L",
      pH: row.pH ?? "balance",
      tempC: row.tempC,
      air: row.logPco2 !== undefined,
    });
    const rows = new Map(stateRows(state));
    expect([...rows.keys()]).toEqual(STATE_ROWS);
    expect(Math.abs((rows.get("pH") ?? 0) - row.result.pH)).toBeLessThan(0.005);
    expect(Math.abs((rows.get("pCO2 log10 atm") ?? 0) - (row.result.saturationIndex["CO2(g)"] ?? 0))).toBeLessThan(
      0.005,
    );
    for (const solid of ["Calcite", "Gypsum", "Brushite", "Struvite"] as const) {
      const expected = row.result.saturationIndex[solid] ?? null;
      if (expected === null) expect(rows.get(solid)).toBeNull();
      else expect(Math.abs((rows.get(solid) ?? 0) - expected)).toBeLessThan(0.01);
    }
  });
});

describe("alkalinity, carbon and air", () => {
  const composition = { Ca: 60, Mg: 8, Na: 12, Cl: 20, SO4: 30, Alkalinity: 150 };
  const ask = { composition, unit: "mg/L", pH: 7.4, tempC: 20, air: false } as const;
  test("in balance with air the alkalinity is kept, the pH climbs", () => {
    const tap = compositionState(ask);
    const standing = compositionState({ ...ask, pH: "balance", air: true });
    expect(standing.alkalinityEqKg).toBeCloseTo(tap.alkalinityEqKg, 8);
    expect(standing.pH).toBeGreaterThan(8);
    expect(tap.alkalinityEqKg).toBeCloseTo(150 / 50.043 / 1000, 6);
  });
  test("in balance with air at a pH that is given, the pH is that one", () => {
    expect(compositionState({ ...ask, pH: 7, air: true }).pH).toBeCloseTo(7, 9);
  });
  test("both Alkalinity and CO3, or balance without carbon, are refused", () => {
    expect(refusal(() => compositionState({ ...ask, composition: { ...composition, CO3: 3 } }))).toMatch(
      /Leave one of them out/,
    );
    expect(refusal(() => compositionState({ ...ask, pH: "balance" }))).toMatch(/needs total carbon/);
    expect(refusal(() => compositionState({ ...ask, composition: { Ca: -1 } }))).toContain("Ca is -1 mg/L.");
  });
});

test("mg/L and mmol/L of the same water are the same water", () => {
  const grams = { Ca: 40.078, Mg: 24.305, Na: 22.99, K: 39.098, NH4: 18.039, NO3: 62.004, SO4: 96.056, Cl: 35.45 };
  const amount = fc.double({ min: 0, max: 20, noNaN: true });
  fc.assert(
    fc.property(fc.constantFrom(...(Object.keys(grams) as (keyof typeof grams)[])), amount, (ion, mmol) => {
      const one = dissolved({ [ion]: mmol }, "mmol/L").totals[ion] ?? Number.NaN;
      expect(dissolved({ [ion]: mmol * grams[ion] }, "mg/L").totals[ion]).toBeCloseTo(one, 9);
      expect(one * 1000).toBeCloseTo(mmol, 9);
    }),
  );
});
