/** Lines of a report: charges, cells and headings around the number, what is asked, and where the bounds are. */

import { describe, expect, it } from "vitest";
import { readReport } from "../../src/core/report.ts";
import { expectRead, one } from "./report-line.ts";

const values = (text: string) =>
  one(text).readings.map(({ line, value }) => [line, Number(value.toPrecision(5))] as const);

describe("a charge or a formula beside the name is no number", () => {
  it.each([
    ["Ca·2+ 5 mg/L", "Ca", 5],
    ["Ca·2·+ 5 mg/L", "Ca", 5],
    ["Ca++ 5 mg/L", "Ca", 5],
    ["Mg+2 5 mg/L", "Mg", 5],
    ["Magnesium (Mg2+) 5 mg/L", "Mg", 5],
    ["Iron (Fe3+) 5 mg/L", "Fe", 5],
    ["Iron (Fe·+3) 5 mg/L", "Fe", 5],
    ["Mn³⁺ 5 mg/L", "Mn", 5],
    ["SO4·2- 5 mg/L", "SO4", 5],
    ["SO42·- 5 mg/L", "SO4", 5],
    ["SO42− 5 mg/L", "SO4", 5],
    ["SO4-2 5 mg/L", "SO4", 5],
    ["SO4−2 5 mg/L", "SO4", 5],
    ["SO4-- 5 mg/L", "SO4", 5],
    ["SO₄²⁻ 5 mg/L", "SO4", 5],
    ["Sulfate (SO4·2-) 5 mg/L", "SO4", 5],
    ["Cl- 5 mg/L", "Cl", 5],
    ["Cl⁻ 5 mg/L", "Cl", 5],
    ["5 mg/L Cl-", "Cl", 5],
    // a range from the word, not a charge
    ["SO4 2-8 mg/L", "SO4", 5],
    ["Potassium (K+) 5 mg/L", "K", 5],
    // 14.007 of 62.004, 18.039; 30.974 of 94.970; half of 100.086 of 61.016
    ["Nitrate (NO3·-) as NO₃ 62.004 mg/L", "NO3-N", 14.007],
    ["NO3-: 62.004 mg/L as NO3", "NO3-N", 14.007],
    ["Nitrate (NO3) as N 5 mg/L", "NO3-N", 5],
    ["Ammonium (NH4+) as NH4 180.39 mg/L", "NH4-N", 140.07],
    ["Ammonium (NH4·⁺) as NH₄ 180.39 mg/L", "NH4-N", 140.07],
    ["PO43- as PO4 949.7 mg/L", "PO4-P", 309.74],
    ["PO4·3- as PO₄ 949.7 mg/L", "PO4-P", 309.74],
    ["PO43·- as PO4 949.7 mg/L", "PO4-P", 309.74],
    ["PO43− as PO4 949.7 mg/L", "PO4-P", 309.74],
    ["PO4-3 as PO4 949.7 mg/L", "PO4-P", 309.74],
    ["PO4−3 as PO4 949.7 mg/L", "PO4-P", 309.74],
    ["PO4--- as PO4 949.7 mg/L", "PO4-P", 309.74],
    ["PO4³⁻ as PO4 949.7 mg/L", "PO4-P", 309.74],
    ["PO4 3-7 mg/L as P", "PO4-P", 5],
    ["Orthophosphate (PO4) as P 5 mg/L", "PO4-P", 5],
    ["Phosphate as P₂O₅ 1419.43 mg/L", "PO4-P", 619.48],
    ["HCO3- 610.16 mg/L", "Alkalinity", 500.43],
    ["Bicarbonate (HCO3·-) 610.16 mg/L", "Alkalinity", 500.43],
    ["Alkalinity as CO₃²⁻ 600.08 mg/L", "Alkalinity", 1000.86],
    ["Hardness as CaCO₃ 5 mg/L", "Hardness", 5],
    ["Silica (SiO₂) 600.83 mg/L", "Si", 280.85],
    ["Nitrate 620.04 mg NO3⁻ / L", "NO3-N", 140.07],
    ["Nitrate 620.04 mg·NO3-·/·L", "NO3-N", 140.07],
    ["Nitrate 620.04 mg NO3 / L", "NO3-N", 140.07],
    ["Sulfate SO4 5 mg/L", "SO4", 5],
    ["Sulfate SO4, 5 mg/L", "SO4", 5],
    // where the figures are too many for a formula they are the number
    ["Calcium Ca85 mg/L", "Ca", 85],
    ["Calcium Ca8.5 mg/L", "Ca", 8.5],
    ["Calcium Ca8,5 mg/L", "Ca", 8.5],
  ] as const)("%s", (text, line, value) => expectRead(text, line, value));
});

describe("a temperature is no reading", () => {
  it.each(["at 25·°·C", "at 20°C", "@25·°·C", "(22.55·°C)", "(18,5·ºC)"])("%s", (temperature) => {
    expectRead(`Conductivity ${temperature} 560 µS/cm`, "EC", 0.56);
    expectRead(`pH 7.6 ${temperature}`, "pH", 7.6);
  });
});

describe("cells of a row", () => {
  it.each(["\t", ";", "|"])("parted by %j do not run together", (mark) => {
    // A flag in the last cell is no basis.
    expectRead(["Sodium", "22", "mg/L", "P"].join(mark), "Na", 22);
    expectRead(["Sodium", "22", "mg/L", "-", "P"].join(mark), "Na", 22);
    expectRead(["Sodium", "mg/L", "22"].join(mark + mark), "Na", 22);
    expect(values(["Chloride", "mg/L", "34", "250"].join(mark))).toEqual([
      ["Cl", 34],
      ["Cl", 250],
    ]);
  });

  it.each(["Chloride 4  250 mg/L", "Chloride 4mg/L 250"])("%s: two numbers, not thousands", (text) =>
    expect(values(text)).toEqual([
      ["Cl", 4],
      ["Cl", 250],
    ]),
  );
});

describe("a unit with its power", () => {
  it.each([
    ["Calcium 5 mg L-1", "Ca", 5],
    ["Calcium 5 mg·L⁻¹", "Ca", 5],
    ["Calcium 5 mg.l^-1", "Ca", 5],
    ["Calcium 5 mg l−1", "Ca", 5],
    ["Calcium 2 mmol L-1", "Ca", 80.156],
    ["Calcium 2 mol m⁻³", "Ca", 80.156],
    ["Calcium 5 g m-3", "Ca", 5],
    ["Calcium 5 g m^−3", "Ca", 5],
    ["Calcium 5 mg · L-1", "Ca", 5],
    ["Calcium, mg L-1: 5", "Ca", 5],
    ["Calcium 5 g · m-3", "Ca", 5],
    ["Calcium, g m-3: 5", "Ca", 5],
    ["EC 50 µS cm-1", "EC", 0.05],
    ["EC 50 µS cm⁻¹", "EC", 0.05],
    ["EC 50 mS m-1", "EC", 0.5],
  ] as const)("%s", (text, line, value) => {
    const { status, readings } = one(text);
    expect([status, readings.map((reading) => reading.line)]).toEqual(["read", [line]]);
    expect(readings[0]?.value).toBeCloseTo(value, 2);
  });
  it("is not a range", () => expect(values("Sodium, 1-10 mg/L")).toEqual([["Na", 5.5]]));
});

describe("what is not printed is asked", () => {
  // One degree is 17.848, 10, 14.254, 17.118 mg/L CaCO3; a mole of CaCO3 100.086 g, of bicarbonate half of it.
  it.each([
    [
      "Alkalinity 10",
      ["Alkalinity", 10],
      ["Alkalinity", 8.2016],
      ["Alkalinity", 500.43],
      ["Alkalinity", 1000.9],
      ["Alkalinity", 178.48],
      ["Alkalinity", 100],
      ["Alkalinity", 142.54],
      ["Alkalinity", 171.18],
    ],
    ["Carbonate hardness 10 degree", ["Alkalinity", 178.48], ["Alkalinity", 100], ["Alkalinity", 142.54]],
    ["Hardness 10 °", ["Hardness", 178.48], ["Hardness", 100], ["Hardness", 142.54]],
    [
      "Hardness 10",
      ["Hardness", 10],
      ["Hardness", 1000.9],
      ["Hardness", 178.48],
      ["Hardness", 100],
      ["Hardness", 142.54],
      ["Hardness", 171.18],
    ],
    ["Calcium 10", ["Ca", 10], ["Ca", 400.78]],
    ["Sodium 10 °", ["Na", 10], ["Na", 229.9]],
    ["EC 99", ["EC", 99], ["EC", 0.099]],
    ["EC 1,234", ["EC", 1.234], ["EC", 0.001234]],
  ] as const)("%s", (text, ...expected) => {
    expect(one(text).status).toBe("ask");
    expect(values(text)).toEqual(expected);
    expect(one(text).words).toContain(String(expected.length));
  });

  it.each([
    ["EC 100", "EC", 0.1],
    ["Free chlorine 5", "Free chlorine", 5],
    ["Calcium hardness 5 °dH", "Ca", 35.73],
  ] as const)("%s can be read in one way", (text, line, value) => expectRead(text, line, value));

  it("a choice of moles says of what", () => {
    const [bicarbonate, carbonate] = one("Alkalinity 2 mmol/L").readings;
    expect(bicarbonate?.words).toBe("Alkalinity 2 mmol/L is 100 mg/L as CaCO3.");
    expect(carbonate?.words).toBe("Alkalinity 2 mmol/L is 200 mg/L as CaCO3 (of CaCO3).");
  });
});

describe("bounds", () => {
  it.each([
    ["pH 14", "pH 14.1"],
    ["EC 100 mS/cm", "EC 100.1 mS/cm"],
    ["EC 0.001 mS/cm", "EC 0.0009 mS/cm"],
    ["Sodium 20000 mg/L", "Sodium 20001 mg/L"],
    ["Chloride 20000 mg/L", "Chloride 20001 mg/L"],
    ["Potassium 5000 mg/L", "Potassium 5001 mg/L"],
    ["Iron 0 mg/L", "Iron -1 mg/L"],
  ])("%s, but not %s", (inside, outside) => {
    expect(one(inside).status).toBe("read");
    expect(one(outside)).toMatchObject({ status: "unclear", readings: [] });
  });
});

describe("what cannot be read says why", () => {
  it.each([
    ["Sodium mg/L", /no number/],
    ["Sodium 20 mg/L 1 meq/L", /meq\/L and mg\/L/],
    ["EC 500 ppm", /mg\/L.*mS\/cm or µS\/cm/],
    ["Sodium 20 mS/cm", /^[^µ]*mS\/cm[^µ]*$/],
    ["pH 7.6 mS/cm", /^[^µ]*mS\/cm[^µ]*$/],
    ["Sodium >200 mg/L", /cannot be read/],
    ["Sodium 30 mg/L, limit >200", /cannot be read/],
    ["Sodium -3 mg/L", /below 0/],
    ["Sodium 30 mg/L, -3", /below 0/],
    ["Nitrate as S 3 mg/L", /as S .*Use N or NO3/],
    ["EC as N 3 mS/cm", /as N .*Leave it out/],
    ["Free chlorine 2 mmol/L", /no water/],
    ["Free chlorine 2 meq/L", /no water/],
    ["Boron 2 meq/L", /no water/],
    ["Sodium 2 °dH", /no water/],
  ])("%s", (text, why) => {
    expect(one(text)).toMatchObject({ status: "unclear", readings: [] });
    expect(one(text).words).toMatch(why);
    expect(one(text).words).toMatch(/^(Sodium|Conductivity|pH|Nitrate|Free chlorine|Boron)/);
  });
});

describe("headings", () => {
  it.each([
    ["All in mg/L", 3],
    ["Value (mg/L)", 3],
    ["Values in g/m3", 3],
    ["Result, ppm", 3],
    ["Results in ug/L", 0.003],
    ["Unit: mmol/L", 68.97],
    ["Units: meq/L", 68.97],
    ["Concentration in mg/L", 3],
    ["  Concentrations (mg/L) ", 3],
    ["Values in mg L-1", 3],
    ["Values in g m⁻³", 3],
  ])("%j counts for the lines without a unit", (heading, value) => {
    const [first, second] = readReport(`${heading}\n  Sodium 3  `);
    expect(first).toMatchObject({ text: heading.trim(), status: "passed over", readings: [] });
    expect(first?.words).toMatch(/(mg|µg|mmol|meq|g)\/(L|m3)/);
    expect(second).toMatchObject({ text: "Sodium 3", status: "read" });
    expect(second?.readings[0]?.value).toBeCloseTo(value, 3);
  });

  it.each([
    "Odour mg/L",
    "Results 2026",
    "Calcium, all values in mmol/L",
    "Results of 5 wells in mg/L",
    "Results in µS/cm",
  ])("%s does not", (line) => expect(readReport(`${line}\nSodium 3`)[1]?.status).toBe("ask"));

  it("one of conductivity counts for conductivity", () =>
    expect(readReport("Results in µS/cm\nEC 50")[1]?.readings.map(({ value }) => value)).toEqual([0.05]));

  it("one of micrograms counts where the basis is printed", () => {
    expect(readReport("Results in µg/L\nNitrate as N 50")[1]?.readings.map(({ value }) => value)).toEqual([0.05]);
    expect(readReport("Results in mmol/L\nNitrate as N 50")[1]?.readings.map(({ value }) => value)).toEqual([50]);
  });

  it("a number without a unit is said alone", () => expect(one("pH 7.6").words).toBe("pH 7.6."));

  it("a basis says nothing more of moles", () => {
    expect(one("Nitrate as N 2 mmol/L").words).toBe("Nitrate 2 mmol/L is 28 mg/L as N.");
    expect(one("Sulfate as S 30 mg/L").words).toBe("Sulfate 30 mg/L as S is 89.9 mg/L.");
    expect(one("Calcium as Ca 85 mg/L").words).toBe("Calcium 85 mg/L.");
    expect(one("Hardness as CaO 56.077 mg/L").words).toBe("Hardness 56.1 mg/L as CaO is 100 mg/L as CaCO3.");
  });
});
