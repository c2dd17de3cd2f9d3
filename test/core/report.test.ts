import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { linesOf, type ReportLine, readReport } from "../../src/core/report.ts";
import { WATER_LINES } from "../../src/core/water-lines.ts";
import { drawn } from "../drawn.ts";

function one(text: string): ReportLine {
  const [line] = readReport(text);
  if (line === undefined) throw new Error(`Nothing came of "${text}".`);
  return line;
}
const values = (line: ReportLine) =>
  line.readings.map((reading) => [reading.line, Number(reading.value.toPrecision(4))]);

describe("lines with one reading", () => {
  // factors from the CIAAW 2021 weights and the definitions of the degrees, as in hardness.test.ts
  test.each([
    ["Calcium 85 mg/L", "Ca", 85],
    ["Ca2+ 85,3 mg/l", "Ca", 85.3],
    ["Ca²⁺\t85\tmg/L", "Ca", 85],
    ["Calcium (Ca) mg/L 46.1", "Ca", 46.1],
    ["Calcium in mg/L 85", "Ca", 85],
    ["Calcium 4.2 meq/L", "Ca", 84.16],
    ["Calcium hardness 200 mg/L as CaCO3", "Ca", 80.09],
    ["Hardness, calcium 200 mg/L", "Ca", 80.09],
    ["Magnesium (Mg) 12 ppm", "Mg", 12],
    ["Mg²⁺: 12,5 mg/l", "Mg", 12.5],
    ["Magnesium as MgO 12 mg/L", "Mg", 7.237],
    ["Total hardness 14 °dH", "Hardness", 249.9],
    ["Hardness 20 fH", "Hardness", 200],
    ["Hardness 12 gpg", "Hardness", 205.4],
    ["Hardness 3.5 mmol/L", "Hardness", 350.3],
    ["Total Alkalinity as CaCO3 120 mg/L", "Alkalinity", 120],
    ["Alkalinity (as CaCO3): 120", "Alkalinity", 120],
    ["Alkalinity 120 mg CaCO3/L", "Alkalinity", 120],
    ["Alkalinity 2.4 meq/L", "Alkalinity", 120.1],
    ["KH 6 °dH", "Alkalinity", 107.1],
    ["HCO3- 362 mg/L", "Alkalinity", 296.9],
    ["Acid capacity 2.4 mmol/L", "Alkalinity", 120.1],
    ["Nitrate (as N) 4.5 mg/L", "NO3-N", 4.5],
    ["NO3-N 4.5 mg/L", "NO3-N", 4.5],
    ["NO3- 20 mg/L as NO3", "NO3-N", 4.518],
    ["Nitrate as nitrogen <0.1 mg/L", "NO3-N", 0.05],
    ["SO42- 89 mg/L", "SO4", 89],
    ["SO4 2- 89 mg/L", "SO4", 89],
    ["Sulfate as S 30 mg/L", "SO4", 89.88],
    ["Sodium 20-30 mg/L", "Na", 25],
    ["Sodium, mg/L, 22", "Na", 22],
    ["Chloride 1,234.5 mg/L", "Cl", 1235],
    ["Cl- 34 mg/L", "Cl", 34],
    ["Iron nd", "Fe", 0],
    ["Boron 120 µg/L", "B", 0.12],
    ["Silica 12 mg/L", "Si", 5.609],
    ["Phosphate as P 0.3 mg/L", "PO4-P", 0.3],
    ["Conductivity at 25 °C 560 µS/cm", "EC", 0.56],
    ["EC 45 mS/m", "EC", 0.45],
    ["EC 0.6", "EC", 0.6],
    ["pH 7,4 - 7,8", "pH", 7.6],
    ["Free chlorine 0.5 mg/L", "Free chlorine", 0.5],
  ] as const)("%s", (text, line, value) => {
    const read = one(text);
    expect([read.status, ...values(read)]).toEqual(["read", [line, value]]);
  });
});

describe("lines that can be read in two ways are asked about", () => {
  test.each([
    [
      "Nitrate 20 mg/L",
      [
        ["NO3-N", 20],
        ["NO3-N", 4.518],
      ],
    ],
    [
      "Ammonium 1 mg/L",
      [
        ["NH4-N", 1],
        ["NH4-N", 0.7765],
      ],
    ],
    [
      "Alkalinity 120 mg/L",
      [
        ["Alkalinity", 120],
        ["Alkalinity", 98.42],
      ],
    ],
    [
      "Alkalinity 2 mmol/L",
      [
        ["Alkalinity", 100.1],
        ["Alkalinity", 200.2],
      ],
    ],
    [
      "Chloride 1,234 mg/L",
      [
        ["Cl", 1.234],
        ["Cl", 1234],
      ],
    ],
    [
      "Chlorine 0.5 mg/L",
      [
        ["Chloramine", 0.5],
        ["Free chlorine", 0.5],
      ],
    ],
    [
      "Hardness 14 degrees",
      [
        ["Hardness", 249.9],
        ["Hardness", 140],
        ["Hardness", 199.6],
      ],
    ],
    [
      "Chloride mg/L 250 34",
      [
        ["Cl", 250],
        ["Cl", 34],
      ],
    ],
    [
      "pH 7.4 (6.5-8.5)",
      [
        ["pH", 7.4],
        ["pH", 7.5],
      ],
    ],
    [
      "EC 2",
      [
        ["EC", 2],
        ["EC", 0.002],
      ],
    ],
    [
      "Potassium 2.9",
      [
        ["K", 2.9],
        ["K", 113.4],
      ],
    ],
  ])("%s", (text, expected) => {
    const read = one(text);
    expect([read.status, values(read)]).toEqual(["ask", expected]);
    expect(new Set(read.readings.map((reading) => reading.words)).size).toBe(expected.length);
  });
});

describe("what is no line of ours, or no number, is said so and not guessed", () => {
  test.each([
    ["Turbidity 0.2 NTU", "passed over"],
    ["Sodium adsorption ratio 3", "passed over"],
    ["Non-carbonate hardness 40 mg/L", "passed over"],
    ["Chlorine dioxide 0.2 mg/L", "passed over"],
    ["Sodium", "unclear"],
    ["Sodium -3 mg/L", "unclear"],
    ["Sodium >200 mg/L", "unclear"],
    ["Sodium 23 mg/L 1 meq/L", "unclear"],
    ["Chloride as N 3 mg/L", "unclear"],
    ["pH 74", "unclear"],
    ["Calcium 400000 mg/L", "unclear"],
  ])("%s: %s", (text, status) => {
    expect(one(text)).toMatchObject({ status, readings: [] });
    expect(one(text).words).toMatch(/\.$/);
  });
});

describe("a whole report", () => {
  const pasted = "All values in mg/L\n\nCalcium\t60\r\nMagnesium 8,5\nNitrate 9\npH 7.6\nColour none\n";
  test("a unit named once counts for the lines without one", () => {
    const report = readReport(pasted);
    expect(report.map((line) => line.status)).toEqual(["passed over", "read", "read", "ask", "read", "passed over"]);
    expect(linesOf(report)).toEqual({ Ca: 60, Mg: 8.5, pH: 7.6 });
    expect(linesOf(report, new Map([[3, 1]]))["NO3-N"]).toBeCloseTo(2.033, 3);
  });
  test("or is asked for once and given", () => {
    expect(linesOf(readReport("Calcium 3", { unit: "meq/L" })).Ca).toBeCloseTo(60.117, 3);
    expect(linesOf(readReport("Chloride 30", { unit: "mg/L" })).Cl).toBe(30);
  });
  test("every reading says what was printed and what came of it", () => {
    expect(one("Nitrate as NO3 20 mg/L").words).toBe("Nitrate 20 mg/L as NO3 is 4.52 mg/L as N.");
    expect(one("Calcium 85 mg/L").words).toBe("Calcium 85 mg/L.");
    expect(one("Iron <0.1 mg/L").words).toBe("Iron 0.05 mg/L (less than 0.1, counted as half of it).");
  });
});

test("our own lines come back as they went", () => {
  const amount = fc.integer({ min: 1, max: 4000 }).map((tenths) => tenths / 10);
  const printable = { Ca: "Calcium", Mg: "Magnesium", Na: "Sodium", K: "Potassium", SO4: "Sulfate", Cl: "Chloride" };
  fc.assert(
    fc.property(fc.constantFrom(...Object.entries(printable)), amount, fc.boolean(), ([line, name], mgL, comma) => {
      const text = `${name} ${comma ? String(mgL).replace(".", ",") : mgL} mg/L`;
      expect(linesOf(readReport(text))).toEqual({ [line]: mgL });
    }),
  );
});

test("anything that is pasted is answered line for line, without a broken number", () => {
  const words = [
    "Calcium",
    "NO3-",
    "as N",
    "<",
    "1,234",
    "12.5",
    "-",
    "mg/L",
    "°dH",
    "ppm",
    "Hardness",
    "nd",
    "(",
    ")",
    "\t",
    "EC",
    "pH",
    "é",
  ];
  const line = fc.oneof(
    fc.string(),
    fc.array(fc.constantFrom(...words), { maxLength: 7 }).map((some) => some.join(" ")),
  );
  fc.assert(
    fc.property(fc.array(line, { maxLength: 5 }), (lines) => {
      const text = lines.join("\n");
      const report = readReport(text);
      expect(report).toHaveLength(text.split(/\r?\n/).filter((one) => one.trim() !== "").length);
      for (const { readings, words: said } of report) {
        expect(said).not.toBe("");
        for (const reading of readings) {
          expect(WATER_LINES).toContain(reading.line);
          expect(reading.value >= 0 && reading.value < 1e5).toBe(true);
        }
      }
    }),
    { numRuns: drawn(500) },
  );
});
