/**
 * Every way in which laboratories and utilities print a substance, a basis or a unit. Factors are worked out from the
 * CIAAW 2021 weights (Ca 40.078, Mg 24.305, N 14.007, P 30.974, S 32.06, Si 28.085, C 12.011, O 15.999, H 1.008).
 */

import { describe, expect, test } from "vitest";
import { type ReportLine, readReport } from "../../src/core/report.ts";
import type { WaterLine } from "../../src/core/water-lines.ts";

function one(text: string): ReportLine {
  const [line] = readReport(text);
  if (line === undefined) throw new Error(`Nothing came of "${text}".`);
  return line;
}

/** What a line says, when it can be read in one way only. */
function only(text: string): readonly [WaterLine, number] {
  const { status, readings, words } = one(text);
  if (status !== "read" || readings[0] === undefined) throw new Error(`"${text}" is ${status}: ${words}`);
  return [readings[0].line, Number(readings[0].value.toPrecision(4))];
}

/** The same with every space doubled, as a table pasted from a page has it. */
const spaced = (text: string): string => text.replaceAll(" ", "  ");

describe("a substance, by any of its names, is the line", () => {
  test.each<[WaterLine, string, string, readonly string[]]>([
    ["Ca", "Calcium", "40 mg/L", ["Calcium", "calcium, dissolved", "Ca", "CA", "Ca2+", "Calcium (Ca)"]],
    ["Mg", "Magnesium", "40 mg/L", ["Magnesium", "Mg", "MG", "Mg++", "Magnesium (Mg)"]],
    ["Na", "Sodium", "40 mg/L", ["Sodium", "Na", "Na+"]],
    ["K", "Potassium", "40 mg/L", ["Potassium", "K", "K+"]],
    ["Cl", "Chloride", "40 mg/L", ["Chloride", "Chlorides", "Cl", "Cl-"]],
    ["SO4", "Sulfate", "40 mg/L", ["Sulfate", "Sulphate", "Sulfates", "SO4", "SO42-", "SO₄²⁻"]],
    ["Fe", "Iron", "40 mg/L", ["Iron", "Fe", "Total iron"]],
    ["Mn", "Manganese", "40 mg/L", ["Manganese", "Mn"]],
    ["B", "Boron", "40 mg/L", ["Boron", "B"]],
    ["Si", "Silicon", "40 mg/L", ["Silicon", "Si"]],
    ["NO3-N", "Nitrate", "40 mg/L as N", ["Nitrate", "Nitrates", "NO3", "NO₃⁻"]],
    ["NH4-N", "Ammonium", "40 mg/L as N", ["Ammonium", "Ammonia", "NH4", "NH3", "NH4+"]],
    ["PO4-P", "Phosphate", "40 mg/L as P", ["Phosphate", "Orthophosphate", "ortho-phosphates", "PO4", "PO43-"]],
    ["PO4-P", "Phosphorus", "40 mg/L", ["Phosphorus", "Total phosphorus"]],
    [
      "Free chlorine",
      "Free chlorine",
      "4 mg/L",
      ["Free chlorine", "Free residual chlorine", "Free available chlorine"],
    ],
    ["Chloramine", "Chloramine", "4 mg/L", ["Chloramine", "Chloramines", "Monochloramine"]],
    ["EC", "Conductivity", "4 mS/cm", ["EC", "Conductivity", "Specific conductance", "Electrical conductivity"]],
    ["pH", "pH", "7", ["pH", "PH", "pH value"]],
    ["Hardness", "Hardness", "40 mg/L", ["Hardness", "Total hardness", "GH", "Total hardness (GH)"]],
    [
      "Alkalinity",
      "Alkalinity",
      "40 mg/L as CaCO3",
      [
        "Alkalinity",
        "Total alkalinity",
        "Carbonate hardness",
        "Temporary hardness",
        "KH",
        "dKH",
        "Bicarbonate alkalinity",
      ],
    ],
  ])("%s: %s %s", (line, name, amount, spellings) => {
    for (const spelling of spellings) {
      for (const text of [`${spelling} ${amount}`, spaced(`${spelling} ${amount}`)]) {
        expect(only(text), text).toEqual([line, Number(amount.split(" ")[0])]);
        expect(one(text).words, text).toMatch(new RegExp(`^${name} \\d`));
      }
    }
  });

  test.each([
    ...["Cadmium", "Cobalt", "Copper", "Nickel", "Zinc", "Lead", "Bromide", "Fluoride", "Silicate", "Environment"],
    ...["Non-carbonate hardness", "Non carbonate hardness", "Noncarbonate hardness", "Permanent hardness"],
    ...["Sodium adsorption ratio", "SAR", "Residual sodium carbonate", "Sodium percent", "% sodium", "%  sodium"],
    ...["Hydroxide alkalinity", "Phenolphthalein alkalinity", "Chlorine dioxide", "Carbon dioxide"],
    ...["Saturation index", "Langelier index", "pH of saturation", "Calcium carbonate saturation"],
  ])("%s is something else", (name) => {
    for (const text of [`${name} 0.4 mg/L`, spaced(`${name} 0.4 mg/L`)])
      expect(one(text).status, text).toBe("passed over");
  });

  test("bound or free is asked where only chlorine is printed", () => {
    for (const name of ["Chlorine", "Total chlorine", "Residual chlorine", "Total  residual  chlorine"]) {
      const { status, readings } = one(`${name} 0.5 mg/L`);
      expect([status, ...readings.map(({ line, value }) => [line, value])], name).toEqual([
        "ask",
        ["Chloramine", 0.5],
        ["Free chlorine", 0.5],
      ]);
      expect(readings.map(({ words }) => words.split(" 0.5")[0])).toEqual(["Chloramine", "Free chlorine"]);
    }
  });

  test("acid capacity is counted in mmol of acid", () => {
    for (const name of ["Acid capacity", "Acid binding capacity", "Acid  binding  capacity"]) {
      expect(only(`${name} 2 mmol/L`), name).toEqual(["Alkalinity", 100.1]);
    }
  });

  test("hardness of one metal is that metal, counted as CaCO3", () => {
    for (const name of ["Calcium hardness", "Calcium  hardness", "Hardness, calcium", "Hardness (calcium)"]) {
      expect(only(`${name} 100 mg/L`), name).toEqual(["Ca", 40.04]);
    }
    for (const name of ["Magnesium hardness", "Magnesium  hardness", "Hardness, magnesium", "Hardness - magnesium"]) {
      expect(only(`${name} 100 mg/L`), name).toEqual(["Mg", 24.28]);
    }
  });
});

describe("a basis that is printed is used", () => {
  test.each([
    ["Calcium 100 mg/L as Ca", "Ca", 100],
    ["Calcium 100 mg/L as CaCO3", "Ca", 40.04],
    ["Calcium 100 mg/L as calcium carbonate", "Ca", 40.04],
    ["Calcium 100 mg/L as CaO", "Ca", 71.47],
    ["Magnesium 100 mg/L as Mg", "Mg", 100],
    ["Magnesium 100 mg/L as CaCO3", "Mg", 24.28],
    ["Magnesium 100 mg/L as MgO", "Mg", 60.3],
    ["Bicarbonate 100 mg/L as HCO3", "Alkalinity", 82.02],
    ["Bicarbonates 100 mg/L", "Alkalinity", 82.02],
    ["Bicarbonate 100 mg/L", "Alkalinity", 82.02],
    ["Hydrogen carbonate 100 mg/L", "Alkalinity", 82.02],
    ["Hydrogencarbonates 100 mg/L", "Alkalinity", 82.02],
    ["Bicarbonate 100 mg/L as CaCO3", "Alkalinity", 100],
    ["Alkalinity 100 mg/L as bicarbonate", "Alkalinity", 82.02],
    ["Alkalinity 100 mg/L as CO3", "Alkalinity", 166.8],
    ["Alkalinity 100 mg/L as CaO", "Alkalinity", 178.5],
    ["Alkalinity 100 mg HCO3/L", "Alkalinity", 82.02],
    ["Alkalinity 100 mg CaO/L", "Alkalinity", 178.5],
    ["Hardness 100 mg/L as CaO", "Hardness", 178.5],
    ["Hardness 100 mg/L expressed as CaCO3", "Hardness", 100],
    ["Nitrate 100 mg/L as nitrate", "NO3-N", 22.59],
    ["Nitrate 100 mg/L as NO3", "NO3-N", 22.59],
    ["Nitrate 100 mg/L as nitrogen", "NO3-N", 100],
    ["Ammonium 100 mg/L as NH4", "NH4-N", 77.65],
    ["Ammonia 100 mg/L as NH3", "NH4-N", 82.24],
    ["Ammonium-N 100 mg/L", "NH4-N", 100],
    ["Phosphate 100 mg/L as PO4", "PO4-P", 32.61],
    ["Phosphate 100 mg/L as P2O5", "PO4-P", 43.64],
    ["PO4-P 100 mg/L", "PO4-P", 100],
    ["Sulfate 100 mg/L as SO4", "SO4", 100],
    ["Sulfate 100 mg/L as S", "SO4", 299.6],
    ["SO4-S 100 mg/L", "SO4", 299.6],
    ["Silica 100 mg/L", "Si", 46.74],
    ["SiO2 100 mg/L", "Si", 46.74],
    ["Silica 100 mg/L as SiO2", "Si", 46.74],
    ["Silica 100 mg/L as Si", "Si", 100],
  ] as const)("%s", (text, line, value) => {
    expect(only(text)).toEqual([line, value]);
    expect(only(spaced(text))).toEqual([line, value]);
  });

  test.each([
    ["Ammonium 10 mg/L", [10, 7.765]],
    ["Nitrate 10 mg/L", [10, 2.259]],
    ["Phosphate 10 mg/L", [10, 3.261]],
    ["Alkalinity 10 mg/L", [10, 8.202]],
  ] as const)("%s has two, and the person is asked", (text, values) => {
    const { status, readings } = one(text);
    expect(status).toBe("ask");
    expect(readings.map(({ value }) => Number(value.toPrecision(4)))).toEqual(values);
  });

  test("that does not belong to the substance is refused with those that do", () => {
    expect(one("Sulfate 10 mg/L as N")).toMatchObject({ status: "unclear", words: expect.stringMatching(/SO4 or S/) });
    expect(one("Iron 10 mg/L as CaCO3")).toMatchObject({ status: "unclear", words: expect.stringMatching(/Use Fe/) });
    expect(one("pH 7 as N")).toMatchObject({ status: "unclear", words: expect.stringMatching(/Leave it out/) });
  });
});

describe("a unit, however it is written, counts the same", () => {
  const litre = (unit: string): string[] =>
    ["/L", "/l", " / L", "/ litre", "/liter", " per litre", " per L"].map((per) => `${unit}${per}`);
  test.each<[string, string, WaterLine, number, readonly string[]]>([
    ["mg/L", "Calcium 40", "Ca", 40, [...litre("mg"), "ppm", "PPM", "g/m3", "g / m³"]],
    ["µg/L", "Iron 400", "Fe", 0.4, [...litre("µg"), ...litre("μg"), ...litre("ug"), "mcg/L", "ppb"]],
    ["g/L", "Chloride 0.4", "Cl", 400, ["g/L", "g / l"]],
    // 2 mmol/L of calcium is 80.156 mg/L, 2 meq/L half of it
    ["mmol/L", "Calcium 2", "Ca", 80.16, [...litre("mmol"), ...litre("millimoles"), "mol/m3", "mol / m³", "mM"]],
    [
      "meq/L",
      "Calcium 2",
      "Ca",
      40.08,
      [
        ...litre("meq"),
        ...litre("milliequivalents"),
        ...litre("milliequivalent"),
        "mval/L",
        "mval / l",
        "me/L",
        "me / l",
      ],
    ],
    ["mS/cm", "EC 2", "EC", 2, ["mS/cm", "mS / cm", "dS/m", "dS / m", "mmho/cm", "mmhos/cm", "mmho / cm"]],
    [
      "µS/cm",
      "EC 50",
      "EC",
      0.05,
      [
        "µS/cm",
        "μS/cm",
        "uS/cm",
        "µ S / cm",
        "microsiemens/cm",
        "micro siemens / cm",
        "microsiemens",
        "umho/cm",
        "µmhos / cm",
      ],
    ],
    ["mS/m", "EC 50", "EC", 0.5, ["mS/m", "mS / m"]],
    // 1 °dH is 17.848 mg/L CaCO3, 1 °fH 10, 1 °e 14.254, 1 gpg 17.118
    [
      "°dH",
      "Hardness 2",
      "Hardness",
      35.7,
      ["°dH", "° dH", "°d", "dH", "dGH", "°dGH", "German degrees", "german degree", "degrees German", "degree german"],
    ],
    ["°dH, carbonate", "KH 2", "Alkalinity", 35.7, ["°dKH", "dKH", "dH"]],
    [
      "°fH",
      "Hardness 2",
      "Hardness",
      20,
      ["°fH", "° fH", "°f", "fH", "French degrees", "french degree", "degrees French", "degree french"],
    ],
    ["°e", "Hardness 2", "Hardness", 28.51, ["°e", "° e", "Clark", "degrees Clark"]],
    [
      "gpg",
      "Hardness 2",
      "Hardness",
      34.24,
      [
        "gpg",
        "grains",
        "grain",
        "grains/gal",
        "grains per gallon",
        "grain / US gallon",
        "grains per US gal",
        "gr/gal",
        "gr / gal",
      ],
    ],
  ])("%s", (said, text, line, value, spellings) => {
    for (const spelling of spellings) {
      for (const whole of [`${text} ${spelling}`, `${text} ${spelling}`.replace(/([a-z]) (?=[a-z])/gi, "$1  ")]) {
        expect(only(whole), whole).toEqual([line, value]);
        const { words } = one(whole);
        expect(words, whole).toMatch(new RegExp(`\\d ${said.split(",")[0]?.replace("/", "\\/")}[ .]`));
      }
    }
  });

  test("moles and equivalents follow from the charge", () => {
    expect(only("Magnesium 2 mmol/L")).toEqual(["Mg", 48.61]);
    expect(only("Magnesium 1 meq/L")).toEqual(["Mg", 12.15]);
    expect(only("Sodium 1 mmol/L")).toEqual(only("Sodium 1 meq/L"));
    expect(only("Potassium 1 meq/L")).toEqual(["K", 39.1]);
    expect(only("Chloride 1 meq/L")).toEqual(["Cl", 35.45]);
    expect(only("Sulfate 1 mmol/L")).toEqual(["SO4", 96.06]);
    expect(only("Sulfate 1 meq/L")).toEqual(["SO4", 48.03]);
    expect(only("Nitrate 1 meq/L")).toEqual(["NO3-N", 14.01]);
    expect(only("Ammonium 1 mmol/L")).toEqual(["NH4-N", 14.01]);
    expect(only("Bicarbonate 1 meq/L")).toEqual(["Alkalinity", 50.04]);
    expect(only("Hardness 1 meq/L")).toEqual(["Hardness", 50.04]);
    expect(only("Phosphate 1 mmol/L")).toEqual(["PO4-P", 30.97]);
    expect(only("Iron 2 mmol/L")).toEqual(["Fe", 111.7]);
    expect(only("Manganese 1 mmol/L")).toEqual(["Mn", 54.94]);
    expect(only("Boron 1 mmol/L")).toEqual(["B", 10.81]);
    for (const text of ["Phosphate 1 meq/L", "Iron 1 meq/L", "Chloramine 1 mmol/L", "Free chlorine 1 meq/L"]) {
      expect(one(text).status, text).toBe("unclear");
    }
  });

  test("two units in one line are named, and nothing is read", () => {
    expect(one("Calcium 40 mg/L 2 mmol/L")).toMatchObject({
      status: "unclear",
      readings: [],
      words: expect.stringMatching(/mmol\/L and mg\/L/),
    });
  });
});

test("asks to check a unit that does not belong to the line", () => {
  expect(readReport("Calcium 5 mS/cm")[0]?.words).toBe("Calcium in mS/cm is not known. Check the unit.");
});
