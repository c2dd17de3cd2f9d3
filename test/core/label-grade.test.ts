/** Grades, densities and digits on a line of a label, each read by hand. */

import { describe, expect, it } from "vitest";
import { figuresOf } from "../../src/core/label-figures.ts";
import { densityOf, gradeOf } from "../../src/core/label-grade.ts";

describe("the digits of a label", () => {
  it.each<[string, boolean, readonly number[], boolean]>([
    ["12", true, [12], true],
    ["1.25", true, [1.25], true],
    ["1,25", false, [1.25], true],
    // Three decimals may be thousands, unless a percent settles it.
    ["1.234", true, [1.234], true],
    ["1.234", false, [1.234, 1234], false],
    ["1,234", false, [1.234, 1234], false],
    ["1 234", false, [1234], false],
    ["1'234", false, [1234], false],
    ["1’234.5", false, [1234.5], false],
    ["1,234.5", false, [1234.5], false],
    ["1.234,5", false, [1234.5], false],
    ["12,345,678.9", false, [12_345_678.9], false],
    ["1.234,56", false, [1234.56], false],
    ["1,234,567", false, [1_234_567], false],
    ["12,345,678", false, [12_345_678], false],
    ["1,234,567,890", false, [1_234_567_890], false],
    ["1.234.567", false, [1_234_567], false],
    // Marks that no way of writing puts there.
    ["1,234,5", false, [], false],
    ["1,23,456", false, [], false],
    ["1,234,567,89", false, [], false],
    ["1234,567,890", false, [], false],
    ["1.234,567.8", false, [], false],
    ["x", false, [], false],
  ])("%s, percent %s", (text, percent, values, sure) => expect(figuresOf(text, percent)).toEqual({ values, sure }));
});

describe("a grade", () => {
  it.each<[string, readonly [number, number, number]]>([
    ["10-5-5", [10, 5, 5]],
    ["NPK 12-4-6", [12, 4, 6]],
    ["N-P-K 12-4-6", [12, 4, 6]],
    ["10 - 5 - 5", [10, 5, 5]],
    ["7,5-3.25-6", [7.5, 3.25, 6]],
    ["NPK 12+4+6", [12, 4, 6]],
    ["0-52-34", [0, 52, 34]],
    ["50-30-20", [50, 30, 20]],
    ["5-5-10", [5, 5, 10]],
    ["0-5-5", [0, 5, 5]],
    ["10.05-5-5", [10.05, 5, 5]],
    ["N - P - K 12-4-6", [12, 4, 6]],
    ["n-p-k 12+4+6", [12, 4, 6]],
    ["10-5-5 soluble", [10, 5, 5]],
    ["10-5-5 N P2O5 K2O", [10, 5, 5]],
  ])("%s", (line, [n, p, k]) =>
    expect(gradeOf(line)).toEqual({ kind: "grade", grade: { n, p, k, elemental: false }, more: [] }),
  );

  it.each([
    "NPK 12-4-6 +2MgO",
    "NPK 12-4-6+2 MgO",
    "NPK 12-4-6 + 2MgO",
    "NPK 12-4-6 + 2.25 % MgO",
    "NPK 12-4-6+12,5% MgO",
    "NPK 12-4-6 + 2 (MgO)",
    "NPK 12-4-6 MgO 2",
  ])("%s goes on with magnesium", (line) => {
    const found = gradeOf(line);
    expect(found).toMatchObject({ kind: "grade", grade: { n: 12, p: 4, k: 6 } });
    const more = found?.kind === "grade" ? found.more : [];
    expect(more.map(({ run }) => run.map((token) => (token.kind === "formula" ? token.term : "")))).toEqual([["MgO"]]);
  });

  it("goes on with several nutrients", () => {
    const found = gradeOf("10-5-5 + 4 Ca + 2 MgO");
    expect(found?.kind === "grade" ? found.more.length : 0).toBe(2);
  });

  it("says when its own line calls it elemental", () =>
    expect(gradeOf("10-5-5 elemental")?.grade).toEqual({ n: 10, p: 5, k: 5, elemental: true }));

  it.each([
    ["10-5-5-2", /fourth number/],
    ["10+5+5+2", /fourth number/],
    ["10-5-5 - 2", /fourth number/],
    ["10-5-5-2 +4MgO", /fourth number/],
    ["12-4-6 20", /More numbers/],
    ["Grow 12-4-6", /not known/],
    ["12-4-6 grow", /not known/],
    ["12-4-6 nitrate", /something else/],
    ["01-05-25", /date/],
    ["10-05-25", /date/],
    ["10:5:5", /ratio/],
    ["10/5/5", /ratio/],
    ["10+5+5", /ratio/],
    ["Mg 12-4-6", /nutrient is named before/],
  ])("%s is perhaps one", (line, why) => {
    const found = gradeOf(line);
    expect(found?.kind).toBe("perhaps");
    expect(found?.kind === "perhaps" ? found.why : "").toMatch(why);
  });

  it.each([
    "60-30-20",
    "40-45-30",
    "0-0-0",
    "10-5",
    "110-5-5",
    "10-5-5 %",
    "10-5-555",
    "Iron 5",
    "1.123-5-5",
    "10-5/5",
  ])("%s is none", (line) => expect(gradeOf(line)).toBeNull());
});

describe("a density", () => {
  it.each<[string, number, boolean]>([
    ["Density 1.2 kg/L", 1.2, true],
    ["Density: 1,25 g/mL at 20 °C", 1.25, true],
    ["Dichte 1,25 g / cm3 bei 20 °C", 1.25, true],
    ["Density 1250 kg/m3", 1.25, true],
    ["Density 1250 kg / m3", 1.25, true],
    ["Line 5, density 1.2 kg / l", 1.2, true],
    ["Density 1.2 kg/dm3 20 °C", 1.2, true],
    ["Density 1.2 kg/L at20°C", 1.2, true],
    ["Density 1.2 kg/L @ 20.25 ° C", 1.2, true],
    ["Density 1.2 kg/L 68 °F", 1.2, true],
    ["Densité 1,2 kg/l à 20 °C", 1.2, true],
    ["Densità 1,2 kg/l", 1.2, true],
    ["Densidad 1,2 kg/l a 20,5 °C", 1.2, true],
    ["Masse volumique 1,2 kg/l", 1.2, true],
    ["Relative Dichte 1,2", 1.2, true],
    ["Density 10 lbs / US gallon", 1.198264, true],
    ["Density 10 lb. per gallon", 1.198264, true],
    // 10 lb in a US gallon: 4535.9237 g over 3785.411784 mL.
    ["Density 10 lb/gal", 1.198264, true],
    ["Weight per gallon 10 lbs", 1.198264, true],
    ["lbs per gallon 10", 1.198264, true],
    ["Specific gravity 1.2", 1.2, true],
    ["Specific gravity 1.2 g/mL", 1.2, false],
    ["Density (1.2 kg/l)", 1.2, true],
    ["Density 1.2", 1.2, false],
    ["lb per gallon 10", 1.198264, true],
    ["Density 1,000 g/mL", 1, true],
    ["Density 1,200 kg/m3", 1.2, true],
    ["Density 0.6 g/mL", 0.6, true],
    ["Density 2.5 g/mL", 2.5, true],
    ["Density 2 g/mL", 2, true],
  ])("%s", (line, gPerMl, sure) => {
    const found = densityOf(line);
    expect(found?.gPerMl).toBeCloseTo(gPerMl, 6);
    expect(found?.sure).toBe(sure);
  });

  it.each([
    "Weight 1.2 kg/L",
    "Density",
    "Density 0.59 g/mL",
    "Density 2.51 g/mL",
    "Density 1.2 g/mL or 1.3 g/mL",
    "Density 1250",
    "Density 12345 kg/m3",
  ])("%s is none", (line) => {
    expect(densityOf(line)).toBeNull();
  });
});

it.each(["N - P - K 10+5+5", "N-P-K 10+5+5", "NPK 10-5-5"])("%s is a grade under its heading", (line) => {
  expect(gradeOf(line)).toMatchObject({ kind: "grade", grade: { n: 10, p: 5, k: 5 } });
});

it("nutrients further on behind a plus are more of the label, not a fourth number", () => {
  expect(gradeOf("NPK 12-4-6 2 MgO + 3 SO3")).toMatchObject({ kind: "grade" });
});
