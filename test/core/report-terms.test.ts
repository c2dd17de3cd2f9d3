/**
 * Names, bases and units that are easily taken for something else. Weights of CIAAW 2021; a base is tried with ten
 * millimoles of it, so that ten millimoles of our line come out.
 */

import { describe, expect, it } from "vitest";
import type { WaterLine } from "../../src/core/water-lines.ts";
import { expectRead, one, written } from "./report-line.ts";

describe("a name that holds another", () => {
  it.each<[string, WaterLine, string]>([
    ["Hydrogen·carbonate alkalinity", "Alkalinity", "Alkalinity"],
    ["Hydrogen·carbonate", "Alkalinity", "Bicarbonate"],
    ["Calcium carbonate alkalinity", "Alkalinity", "Alkalinity"],
    ["Alkalinity (bicarbonate)", "Alkalinity", "Alkalinity"],
    ["Hardness, total", "Hardness", "Hardness"],
    ["Hardness, calcium carbonate", "Hardness", "Hardness"],
    ["Hardness (calcium and magnesium)", "Hardness", "Hardness"],
    ["Hardness, calcium, magnesium", "Hardness", "Hardness"],
    ["Total hardness: magnesium + calcium", "Hardness", "Hardness"],
    ["Hardness, magnesium and calcium", "Hardness", "Hardness"],
    ["Hardness, calcium", "Ca", "Calcium"],
    ["Hardness, magnesium", "Mg", "Magnesium"],
    ["Silicon dioxide", "Si", "Silica"],
    ["Silicon", "Si", "Silicon"],
    ["Fe3+", "Fe", "Iron"],
    ["Mn²⁺", "Mn", "Manganese"],
  ])("%s", (printed, line, name) => {
    for (const way of written(`${printed} 5 mg/L`)) {
      const [first] = one(way).readings;
      expect([way, first?.line]).toEqual([way, line]);
      expect(first?.words).toMatch(new RegExp(`^${name} 5 mg/L\\b`));
    }
  });

  it.each([
    "Non·carbonate hardness",
    "Carbonate alkalinity",
    "Alkalinity, carbonate",
    "Alkalinity (carbonate)",
    "Sodium·percent",
    "%·sodium",
    "SAR (sodium)",
    "Calcium·carbonate",
    "Langelier index (pH)",
    "Chlorine·dioxide",
    "Carbon dioxide",
    "Silicate",
    "Nitrite",
    "Cl2",
  ])("%s is none of our lines", (printed) => {
    for (const way of written(`${printed} 5 mg/L`)) expect([way, one(way).status]).toEqual([way, "passed over"]);
  });

  it.each([
    "TOC 2 mg C/L",
    "COD 5 mg·O2·/·L",
    "Fluoride 0.2 mg·F-/L",
    "Fluoride 0.2 mg·F·/L",
    "Colour 5 mg Pt/L",
    "Turbidity 5 mg per L",
    "Turbidity 5 mg·/L",
  ])("%s is no magnesium", (text) => {
    for (const way of written(text)) expect([way, one(way).status]).toEqual([way, "passed over"]);
  });
  it.each([
    ["Mg mg/L 12", 12],
    ["Mg g/L 0.012", 12],
    ["Mg ug/L 12000", 12],
    ["Mg me/L 1", 12.1525],
    ["12 mg Mg/L", 12],
  ])("%s is", (text, value) => expectRead(text, "Mg", value));
});

describe("a basis within or behind the unit", () => {
  it.each<[string, WaterLine, number]>([
    ["Alkalinity 610.16 mg·HCO3·/·L", "Alkalinity", 500.43],
    ["Alkalinity (HCO3) 610.16 mg/L", "Alkalinity", 500.43],
    ["Hardness 560.77 mg·CaO·/·L", "Hardness", 1000.86],
    ["Hardness 1000.86 mg·CaCO3·/·L", "Hardness", 1000.86],
    ["Hardness mg/L CaCO3 1000.86", "Hardness", 1000.86],
    ["Ammonium 140.07 mg/L NH4-N", "NH4-N", 140.07],
    ["Ammonium 180.39 mg·NH4·/·L", "NH4-N", 140.07],
    ["Ammonium 500 µg·N·/·L", "NH4-N", 0.5],
    ["Ammonium 500 ug/L N", "NH4-N", 0.5],
    ["Ammonium 500 mcg·NH4-N·/·L", "NH4-N", 0.5],
    ["Ammonium 500 μg·N·per·litre", "NH4-N", 0.5],
    ["Ammonium 500 ppb N", "NH4-N", 0.5],
    ["Ammonia 170.31 mg/L NH3", "NH4-N", 140.07],
    ["Nitrate 620.04 mg/L NO3", "NO3-N", 140.07],
    ["Nitrate (mg/L NO3-) 620.04", "NO3-N", 140.07],
    ["Nitrate 620.04 mg·NO3·per·litre", "NO3-N", 140.07],
    ["Nitrate 620.04 ppm NO3", "NO3-N", 140.07],
    ["Nitrate 140.07 mg·N·/·L", "NO3-N", 140.07],
    ["Nitrate 140.07 mg·NO3-N·/·L", "NO3-N", 140.07],
    ["Nitrate 140.07 mg·/·L N", "NO3-N", 140.07],
    ["Nitrate 140.07 mg·per·liter N", "NO3-N", 140.07],
    ["Nitrate (NO3-N) 140.07 mg/L", "NO3-N", 140.07],
    ["Phosphate 309.74 mg/L PO4-P", "PO4-P", 309.74],
    ["Phosphate 1419.43 mg/L P2O5", "PO4-P", 619.48],
    ["Sulfate 320.6 mg/L S", "SO4", 960.56],
    ["Silica 280.85 mg/L Si", "Si", 280.85],
    ["Silica 600.83 mg SiO2/L", "Si", 280.85],
    ["Chloride 5 mg·Cl·/·L", "Cl", 5],
    ["5 mg Fe per litre", "Fe", 5],
  ])("%s", (text, line, value) => expectRead(text, line, value));

  it("the unit behind 'as' is none", () => expectRead("Calcium reported as mg·/L 60", "Ca", 60));
});

describe("a unit that holds another", () => {
  it.each([
    ["mg·/·m3", 0.002],
    ["mg/m³", 0.002],
    ["g·/·m3", 2],
    ["g/m³", 2],
    ["mg·Ca·/·L", 2],
    ["mol·/·m³", 80.156],
  ])("Calcium 2 %s", (unit, value) => {
    expectRead(`Calcium 2 ${unit}`, "Ca", value);
    expectRead(`Calcium, ${unit}: 2`, "Ca", value);
  });

  it.each(["ng·/·L", "ng·per·litre", "ng/liter", "µg·/·m3", "ug/m³", "mcg/m3"])("Iron 4000 %s", (unit) => {
    for (const way of written(unit)) expect(one(`Iron 4000 ${way}`).readings[0]?.value).toBeCloseTo(0.004, 9);
  });

  // A grain, 64.79891 mg, as CaCO3 in an imperial gallon, 4.54609 L: 14.254 mg/L a degree.
  it.each(["°·e", "Clark", "°·Clark", "Clark degree", "Clark degrees", "degree Clark", "degrees Clark"])(
    "Hardness 10 %s",
    (unit) => {
      expectRead(`Hardness 10 ${unit}`, "Hardness", 142.54);
      expectRead(`Alkalinity 10 ${unit}`, "Alkalinity", 142.54);
    },
  );

  it("is said again as it was read", () => {
    expect(one("Iron 50 mg/m3").words).toBe("Iron 50 µg/L is 0.05 mg/L.");
    expect(one("Hardness 200 mg/L").words).toBe("Hardness 200 mg/L as CaCO3.");
    expect(one("GH 200 mg/L").words).toBe("Hardness 200 mg/L as CaCO3.");
    expect(one("Phosphorus 2 mg/L").words).toBe("Phosphorus 2 mg/L as P.");
    expect(one("Iron 2000 ng/L").words).toBe("Iron 2000 ng/L is 0.002 mg/L.");
  });
});
