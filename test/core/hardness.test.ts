/** Hardness, its units and its classes, against published factors. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CONVERT_UNITS, type ConvertUnit, convertHardness, hardness, hardnessClass } from "../../src/core/hardness.ts";
import { readReference } from "./reference.ts";
import { refusal } from "./refusal.ts";

interface Reference {
  factors: { calcium: number; magnesium: number };
  mgCaCO3L_in_one: Record<string, number>;
  of_200_mg_L: Record<string, number>;
  of_1_meq_L: Record<string, number>;
  bicarbonate: [number, number][];
  classes: [number, string][];
}
const reference = readReference<Reference>("hardness-units.json");

describe("total hardness (Standard Methods 2340 B)", () => {
  it("has the printed factors to their last place", () => {
    const { calcium, magnesium } = reference.factors;
    expect(Math.abs(hardness({ calciumMgL: 1, magnesiumMgL: 0 }) - calcium)).toBeLessThan(0.0005);
    expect(Math.abs(hardness({ calciumMgL: 0, magnesiumMgL: 1 }) - magnesium)).toBeLessThan(0.0005);
    // 85 and 43 mg/L by the printed factors: 212.25 + 177.07.
    expect(hardness({ calciumMgL: 85, magnesiumMgL: 43 })).toBeCloseTo(389.3, 1);
  });

  it("refuses what cannot be", () => {
    expect(refusal(() => hardness({ calciumMgL: -1, magnesiumMgL: 0 }))).toBe(
      "Calcium is -1. Give a number from 0 to 1000000.",
    );
    expect(refusal(() => hardness({ calciumMgL: 1, magnesiumMgL: Number.NaN }))).toMatch(/^Magnesium is no number/);
  });
});

describe("units, from their definitions", () => {
  it.each(Object.entries(reference.mgCaCO3L_in_one))("one %s is %d mg/L CaCO3", (unit, mgL) => {
    expect(convertHardness(1, unit as ConvertUnit, "mg/L CaCO3") / mgL).toBeCloseTo(1, 5);
  });

  it.each(Object.entries(reference.of_200_mg_L))("200 mg/L in %s is %d", (unit, value) => {
    expect(convertHardness(200, "mg/L CaCO3", unit as ConvertUnit)).toBeCloseTo(value, 2);
  });

  it.each(Object.entries(reference.of_1_meq_L))("1 meq/L in %s is %d", (unit, value) => {
    expect(convertHardness(1, "meq/L", unit as ConvertUnit)).toBeCloseTo(value, 3);
  });

  it.each(reference.bicarbonate)("USGS after Hem 1985: alkalinity %d is %d mg/L HCO3", (alkalinity, printed) => {
    // Printed with the factor 0.8202 and whole numbers.
    expect(Math.abs(convertHardness(alkalinity, "mg/L CaCO3", "mg/L HCO3") - printed)).toBeLessThanOrEqual(0.5);
  });

  it("there and back again, through any third unit", () => {
    const unit = fc.constantFrom(...CONVERT_UNITS.filter((name) => name !== "mmol/L"));
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e4, noNaN: true }), unit, unit, unit, (value, a, b, c) => {
        const round = convertHardness(convertHardness(convertHardness(value, a, b), b, c), c, a);
        expect(Math.abs(round - value)).toBeLessThanOrEqual(1e-12 * value + Number.MIN_VALUE * 100);
      }),
    );
  });

  it.each<[ConvertUnit, ConvertUnit]>([
    ["mmol/L", "mg/L HCO3"],
    ["dKH", "mmol/L"],
  ])("%s to %s could mean two things", (from, to) => {
    expect(refusal(() => convertHardness(1, from, to))).toBe(
      `"${from}" to "${to}" can be read in two ways: mmol/L counts calcium and magnesium here, not bicarbonate. Use meq/L for alkalinity.`,
    );
  });

  it("refuses what cannot be", () => {
    expect(refusal(() => convertHardness(-3, "dH", "fH"))).toBe("The value is -3. Give a number from 0 to 1000000.");
  });
});

describe("classes (US Geological Survey)", () => {
  it.each(reference.classes)("%d mg/L CaCO3 is %s", (mgL, name) => {
    expect(hardnessClass(mgL)).toBe(name);
  });

  it("between the whole numbers counts as the harder; a negative one is refused", () => {
    expect(hardnessClass(60.5)).toBe("moderately hard");
    expect(refusal(() => hardnessClass(-1))).toBe("The hardness is -1. Give a number from 0 to 1000000.");
  });
});
