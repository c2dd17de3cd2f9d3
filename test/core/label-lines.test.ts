/** Lines of a label one by one: what a number belongs to, what is left, and why. */

import { describe, expect, test } from "vitest";
import type { LabelLine } from "../../src/core/label-draft.ts";
import { MOST_LINES, readLabelText } from "../../src/core/label-text.ts";

const one = (text: string): LabelLine => {
  const { lines } = readLabelText(text);
  const line = lines[lines.length - 1];
  if (line === undefined) throw new Error(`Nothing came of ${JSON.stringify(text)}.`);
  return line;
};
/** Fields of each choice but the last. */
const asked = (text: string) =>
  one(text).questions.flatMap(({ choices }) => choices.slice(0, -1).map(({ fields }) => fields));

describe("parts of nitrogen after “of which”", () => {
  test("are forms of it, also where the words stand before the first", () => {
    for (const text of [
      "Of which nitrate nitrogen 6 %, ammonium 4 %, urea 3 %",
      "of which 6 % nitrate nitrogen, 4 % ammonium, 3 % urea",
    ]) {
      expect(one(text).outcome, text).toBe("understood");
      expect(one(text).fields, text).toEqual({ "NO3-N": 6, "NH4-N": 4, "Urea-N": 3 });
    }
  });

  test("without those words ammonium may be itself", () => {
    expect(asked("Nitrate nitrogen 6 %, ammonium 4 %").map((fields) => Object.keys(fields))).toEqual([
      ["NH4-N"],
      ["NH4-N"],
    ]);
    expect(asked("6 % nitrate nitrogen, 4 % ammonium")).toHaveLength(2);
    expect(asked("  Nitrate 5 %")).toHaveLength(2);
  });

  test("count from those words on only", () => {
    expect(asked("Nitrogen 10 %, urea 4 %, of which nitrate 6 %").map((fields) => Object.keys(fields))).toEqual([
      ["Urea-N"],
      ["Urea-N"],
    ]);
    // "10 % nitrogen, 6 % of which is nitrate" says nitrogen first
    expect(asked("10 % nitrogen, 6 % of which nitrate").map((fields) => Object.keys(fields))).toEqual([
      ["NO3-N"],
      ["NO3-N"],
    ]);
  });

  test("with a number too many on one side are left", () => {
    expect(one("10 % nitrogen of which 6 % nitrate 4 % urea 3 %").outcome).toBe("not understood");
    expect(one("Nitrogen 10 % 4 % of which 6 % nitrate").outcome).toBe("not understood");
    expect(one("Nitrogen 10 % of which nitrate").outcome).toBe("not understood");
  });
});

describe("brackets", () => {
  test.each([
    ["Iron (0.1 %)", { Fe: 0.1 }],
    ["(Iron 0.1 %) (manganese 0.05 %)", { Fe: 0.1, Mn: 0.05 }],
    ["Iron 0.100 % (1000 mg/kg)", { Fe: 0.1 }],
    ["Iron 0.100 (1000 mg/kg)", { Fe: 0.1 }],
    // A percent has no thousands.
    ["Iron 1.000 % (10 g/kg)", { Fe: 1 }],
    ["Iron 1.000 (10 g/kg)", { Fe: 1 }],
    ["Iron 0 % (0 mg/kg)", { Fe: 0 }],
  ])("%s", (text, fields) => expect(one(text)).toMatchObject({ outcome: "understood", fields }));

  test.each([
    ["Iron (manganese 0.1 %, zinc 0.2 %)", /which number belongs/],
    ["Nitrogen 10 % potash", /which number belongs/],
    // 1.000 is one or a thousand where mg/kg follow
    ["Iron 1.000 mg/kg (0.1 %)", /several numbers/],
    ["Iron 1.000 mg/kg (0.0001 %)", /several numbers/],
    ["Iron 1 mg/kg (0.000105 %)", /several numbers/],
    ["Nitrogen 8 % (9.9 % w/v)", /several numbers/],
    ["Nitrogen 8 % w/w (9.9 %)", /several numbers/],
  ])("%s is left", (text, why) => {
    expect(one(text)).toMatchObject({ outcome: "not understood", fields: {}, sentence: expect.stringMatching(why) });
  });
});

test("what follows the last number belongs to it alone", () => {
  const { lines } = readLabelText("Iron 0.1 %, manganese 0.05 % chelated\nManganese 0.1 %\nIron 0.2 %");
  // the chelated manganese is a part of the second line, the iron contradicts the third
  expect(lines.map(({ outcome }) => outcome)).toEqual(["passed over", "understood", "asked"]);
  expect(lines[1]?.fields).toEqual({ Mn: 0.1 });
});

test("what stands before the first number belongs to it alone", () => {
  expect(one("At most 2 % chloride, 5 % potash").fields).toEqual({ K2O: 5 });
  expect(asked("At most 2 % chloride, 5 % potash")).toEqual([{ Cl: 2 }]);
});

test("a unit in front is for what follows until the next unit, one behind a number for that number", () => {
  expect(one("Iron 500 mg/kg, manganese 5")).toMatchObject({ outcome: "asked", fields: { Fe: 0.05 } });
  expect(asked("Iron 500 mg/kg, manganese 5")).toEqual([{ Mn: 5 }, { Mn: 0.0005 }]);
  expect(one("mg/kg: iron 500, manganese 250").fields).toEqual({ Fe: 0.05, Mn: 0.025 });
});

describe("a heading and the numbers below it", () => {
  test.each([
    ["N P2O5 K2O\n10 5 5"],
    ["N % P2O5 % K2O %\n10 5 5"],
    ["% N P2O5 K2O\n10 5 5"],
    ["Analysis N P2O5 K2O\n10 5 5"],
    ["N P2O5 K2O\n10 % 5 % 5 %"],
  ])("%j", (text) => expect(readLabelText(text).fields).toEqual({ N: 10, P2O5: 5, K2O: 5 }));

  test("go together only when there are as many", () => {
    for (const text of ["N P2O5 K2O\n10 5", "Calcium Ca Magnesium Mg\n4 2", "Iron\n1 2"]) {
      expect(one(text)).toMatchObject({
        outcome: "not understood",
        sentence: expect.stringMatching(/as many numbers/),
      });
    }
  });

  test("may be of one thing with a formula, or a limit", () => {
    expect(readLabelText("Phosphorus P2O5\n5 %").fields).toEqual({ P2O5: 5 });
    expect(readLabelText("P2O5\n5 %").fields).toEqual({ P2O5: 5 });
    // P below a heading of its own is not in the brackets of P2O5
    expect(readLabelText("P2O5 P\n5 2.2")).toMatchObject({ fields: { P2O5: 5 }, open: 1 });
    expect(one("Chloride\nmax 2 %").questions[0]?.question).toMatch(/upper limit/);
  });

  test("take the unit of the heading", () => {
    expect(readLabelText("Iron mg/kg\n500").fields).toEqual({ Fe: 0.05, Basis: "w/w" });
    expect(readLabelText("Micronutrients mg/kg\nIron 500").fields).toEqual({ Fe: 0.05, Basis: "w/w" });
    expect(readLabelText("Iron mg/kg\n0.1 %").fields).toEqual({ Fe: 0.1 });
  });

  test("are nothing apart", () => {
    const { fields, lines } = readLabelText("N 10 %\nIron\nZn 0.05 %\n0.1 %");
    expect(fields).toEqual({ N: 10, Zn: 0.05 });
    expect(lines.map(({ outcome }) => outcome)).toEqual([
      "understood",
      "not understood",
      "understood",
      "not understood",
    ]);
    expect(one("10 5 5")).toMatchObject({
      outcome: "not understood",
      sentence: expect.stringMatching(/what the number is of/),
    });
    expect(one("Iron")).toMatchObject({ outcome: "not understood", sentence: "There is no number." });
    expect(one("Sulfate 5 %")).toMatchObject({ outcome: "asked", fields: {} });
    expect(one("Iron %")).toMatchObject({ outcome: "not understood", sentence: "There is no number." });
    expect(one("Iron xyzzy")).toMatchObject({
      outcome: "not understood",
      sentence: expect.stringMatching(/not known/),
    });
    expect(one("Guaranteed analysis")).toMatchObject({ outcome: "passed over", sentence: "A heading." });
  });
});

describe("raw materials", () => {
  test("are passed over, with the lines that go on, up to a blank one", () => {
    const { lines } = readLabelText("Derived from potassium nitrate,\nurea and iron\n\nIron");
    expect(lines.map(({ outcome }) => outcome)).toEqual(["passed over", "passed over", "not understood"]);
    expect(lines[0]?.sentence).toMatch(/Raw materials/);
  });

  test("are not meant by names that numbers follow", () => {
    const { lines } = readLabelText("Derived from urea\nIron\n10 %\n5 %");
    expect(lines.map(({ outcome }) => outcome)).toEqual(["passed over", ...Array(3).fill("not understood")]);
  });

  test.each([
    "Derived from urea 46%",
    "Derived from urea 46 %",
    "Sources: urea 5 mg",
    "Derived from urea 5 g/L",
    "Derived from urea 5g / L",
  ])("%s has an amount, so it is not passed over", (text) => expect(one(text).outcome).toBe("not understood"));

  test.each([
    ...["Plant food source: urea", "Plant food sources: urea", "Plant nutrient source: urea", "Nutrient source: urea"],
    ...[
      "Nutrient sources: urea",
      "Source: urea",
      "Sources: urea",
      "Ingredient: urea",
      "Ingredients: urea",
      "Raw material: urea",
    ],
    ...[
      "Raw materials: urea",
      "Made from urea",
      "Hergestellt aus Harnstoff",
      "Ausgangsstoffe: Harnstoff",
      "Rohstoffe: Harnstoff",
    ],
    ...["Issu de l'urée", "Issus de l'urée", "Provenant d'urée", "Matières premières: urée", "Obtenido de urea"],
    ...["Derivado de urea", "Materias primas: urea", "Derivato da urea", "Ottenuto da urea", "Materie prime: urea"],
    ...["Afkomstig van ureum", "Grondstoffen: ureum", "* Derived from urea", "- Derived from urea"],
  ])("%s", (text) => {
    expect(one(text)).toMatchObject({ outcome: "passed over", sentence: expect.stringMatching(/Raw materials/) });
  });
});

test("a line that only ends or goes on like one of raw materials is none", () => {
  for (const text of ["Iron 5 derived from urea", "Sourcesx: urea", "Ingredientsx: urea"]) {
    expect(one(text).outcome, text).toBe("not understood");
  }
});

describe("limits, in six languages", () => {
  test.each([
    ...["less than", "not more than", "no more than", "up to", "at most", "weniger als", "nicht mehr als", "höchstens"],
    ...["pas plus de", "au plus", "non più di", "al massimo", "ten hoogste", "max", "maximum"],
  ])("Cl %s 2 % is an upper one", (words) => {
    expect(one(`Cl ${words} 2 %`).questions[0]?.question).toMatch(/upper limit/);
  });

  test.each([
    ...["not less than", "no less than", "nicht weniger als", "pas moins de", "non meno di", "at least", "more than"],
    ...["mehr als", "au moins", "almeno", "al menos", "ten minste", "min", "minimum", "mindestens"],
  ])("N %s 10 % is a guarantee", (words) => expect(one(`N ${words} 10 %`).fields).toEqual({ N: 10 }));
});

describe("a grade", () => {
  test("that may be a ratio or has a number too many is asked about, with its words", () => {
    for (const [text, why] of [
      [" 10/5/5 ", /^Is "10\/5\/5" the grade\? It may be a ratio/],
      ["12-4-6 2.5", /More numbers/],
      ["10-5-5 / 12-4-6", /fourth number/],
    ] as const) {
      const [question] = one(text).questions;
      expect(question?.question).toMatch(why);
    }
    const [question] = one("10/5/5").questions;
    expect(question?.choices.map(({ words, fields }) => [words, fields])).toEqual([
      ["the grade: N 10, P2O5 5, K2O 5 %", { N: 10, P2O5: 5, K2O: 5 }],
      ["leave it out", {}],
    ]);
  });

  test("that was asked about is borne out by all three lines, and by nothing less", () => {
    const with_ = (...rest: string[]) => readLabelText(["10/5/5", ...rest].join("\n")).lines[0];
    const out = with_("N 10 %", "P2O5 5 %", "K2O 5 %");
    expect(out).toMatchObject({ outcome: "passed over", questions: [], sentence: expect.stringMatching(/same/) });
    expect(with_("N 10 %", "P2O5 5 %", "K2O 6 %")?.outcome).toBe("asked");
    expect(with_("N 10 %", "P2O5 5 %")?.outcome).toBe("asked");
    expect(with_("N 9 %", "P2O5 5 %", "K2O 5 %")?.outcome).toBe("asked");
    expect(with_("N 10 %", "P2O5 4 %", "K2O 5 %")?.outcome).toBe("asked");
    expect(with_()?.outcome).toBe("asked");
  });

  test("a second one says that there is one already", () => {
    expect(one("NPK 10-5-5\nNPK 12-4-6")).toMatchObject({
      outcome: "not understood",
      sentence: expect.stringMatching(/already/),
    });
    expect(one("NPK 10-5-5\n12/4/6").outcome).toBe("asked");
  });

  test("what follows it is percent like itself, unless it says otherwise", () => {
    expect(readLabelText("10-5-5 Mg 1.234")).toMatchObject({ fields: { Mg: 1.234 }, open: 0 });
    expect(readLabelText("10-5-5 Mg 2").fields).toEqual({ N: 10, P2O5: 5, K2O: 5, Mg: 2 });
    expect(readLabelText("10-5-5 Iron 0.1 % (1000 mg/kg)").fields).toEqual({ N: 10, P2O5: 5, K2O: 5, Fe: 0.1 });
    expect(readLabelText("10-5-5 Fe 500 mg/kg").fields).toMatchObject({ N: 10, P2O5: 5, K2O: 5, Fe: 0.05 });
  });
});

test("a line that is not understood does not make others doubtful", () => {
  expect(readLabelText("N 10\nK2O 5\nxyzzy 3 %")).toMatchObject({ fields: { N: 10, K2O: 5 }, open: 0 });
});

test("a density without its unit is asked about", () => {
  expect(one("Density 1.2 kg/L").fields).toEqual({ Density: 1.2 });
  const [question] = one("Density 1.2").questions;
  expect(question?.choices.map(({ words, fields }) => [words, fields])).toEqual([
    ["density 1.2 g/mL", { Density: 1.2 }],
    ["leave it out", {}],
  ]);
});

test("a line may have 600 letters, and a label 300 lines", () => {
  const long = (letters: number) => `N 10 %${" ".repeat(letters - 6)}`;
  expect(one(long(600)).fields).toEqual({ N: 10 });
  expect(one(long(601))).toMatchObject({ outcome: "not understood", sentence: expect.stringMatching(/too long/) });
  expect(one("---").sentence).toMatch(/nothing but marks/);
  const { lines } = readLabelText(Array.from({ length: MOST_LINES + 5 }, () => "N 10 %").join("\n"));
  expect([MOST_LINES, lines.length]).toEqual([300, 300]);
});
