/** Labels of one line and of several: which number stands with which words, and how lines bear on one another. */

import { describe, expect, test } from "vitest";
import { agree, contradiction, questionKey, withAnswers } from "../../src/core/label-answers.ts";
import { readLabelText } from "../../src/core/label-text.ts";

/** A line as it was taken: its fields; "?" and the fields of each choice; or the outcome. */
function lines(text: string): unknown[] {
  return readLabelText(text).lines.map(({ outcome, fields, questions }) =>
    outcome === "understood"
      ? fields
      : outcome === "asked"
        ? ["?", ...questions.flatMap(({ choices }) => choices.slice(0, -1).map((choice) => choice.fields))]
        : outcome,
  );
}
const sentences = (text: string): string[] => readLabelText(text).lines.map(({ sentence }) => sentence);

describe("one line", () => {
  test.each<[string, Record<string, number | string>]>([
    ["Iron (Fe) 0.1 % chelated", { Fe: 0.1 }],
    ["0.1 % iron, 0.05 % manganese", { Fe: 0.1, Mn: 0.05 }],
    ["Iron 0.1 %, manganese 0.05 %", { Fe: 0.1, Mn: 0.05 }],
    ["Iron 0.1 %, manganese 0.05 % chelated", { Fe: 0.1, Mn: 0.05 }],
    ["Minimum 10 % nitrogen, 5 % potash", { N: 10, K2O: 5 }],
    ["Iron in mg/kg 500", { Fe: 0.05, Basis: "w/w" }],
    ["% N 10", { N: 10 }],
    ["Iron in mg/kg 500, manganese 250", { Fe: 0.05, Mn: 0.025, Basis: "w/w" }],
    ["Nitrogen 8 % w/w (9.9 % w/v)", { N: 8, Basis: "w/w" }],
    ["Nitrogen 9.9 % w/v (8 % w/w)", { N: 8, Basis: "w/w" }],
    ["Iron 0.1 % (1000 mg/kg)", { Fe: 0.1 }],
    ["Iron 1000 mg/kg (0.1 %)", { Fe: 0.1, Basis: "w/w" }],
    ["Total nitrogen 6 % of which nitrate 6 %", { N: 6, "NO3-N": 6 }],
    ["6 % nitrogen of which 6 % nitrate", { N: 6, "NO3-N": 6 }],
    ["10 % nitrogen of which nitrate 6 %, ammoniacal 4 %", { N: 10, "NO3-N": 6, "NH4-N": 4 }],
    ["10 % nitrogen of which 6 % nitrate and 4 % urea", { N: 10, "NO3-N": 6, "Urea-N": 4 }],
    ["Nitrogen 10 % (6 % nitrate, 4 % ammoniacal)", { N: 10, "NO3-N": 6, "NH4-N": 4 }],
    ["Nitrogen 10 % (6 % nitrate) (4 % ammoniacal)", { N: 10, "NO3-N": 6, "NH4-N": 4 }],
    ["P2O5 5 % (2.2 % P)", { P2O5: 5 }],
    ["Nitrogen (N 10 %", { N: 10 }],
    ["Nitrogen (total) 10 %", { N: 10 }],
    ["Nitrogen) 10 %", { N: 10 }],
    ["Sulfate sulfur (S) 4 %", { S: 4 }],
    ["Slow release nitrogen 4 %", { "Other-N": 4 }],
    ["Not less than 10 % N", { N: 10 }],
    ["At least 10 % N", { N: 10 }],
  ])("%s", (text, fields) => {
    expect(lines(text)).toHaveLength(1);
    expect(readLabelText(text)).toMatchObject({ open: 0, refused: "" });
    expect(readLabelText(text).fields).toEqual(fields);
  });

  test.each([
    ["Iron 0.1 % (900 mg/kg)", /several numbers/],
    ["Nitrogen 8 % w/v (80 g/L)", /several numbers/],
    ["Nitrogen 10 % 5 %", /several numbers/],
    ["Nitrogen 8 % w/w (9.9 % w/v) (8 %)", /several numbers/],
    ["Xyzzy 5 %", /not known here/],
    ["Iron xyzzy 0.1 %", /not known here/],
    ["Iron 0.1 % xyzzy 0.2 % 0.3 %", /not known here/],
    ["10 % N 5 % K2O 3 %", /which number belongs/],
    ["N K2O 5 % 3 % Fe", /which number belongs|several numbers/],
    ["Iron (0.1 %, 0.2 %) manganese", /which number belongs|several numbers/],
    ["Cobalt 0.01 %, xyzzy 5 %", /not known here/],
    ["Cobalt 0.01 %", /Cobalt is not counted/],
    ["Total cobalt 0.01 %", /cobalt is not counted/],
  ])("%s is left, and it is said why", (text, why) => {
    expect(readLabelText(text).fields).toEqual({});
    expect(lines(text)).toEqual([/not counted/.test(why.source) ? "passed over" : "not understood"]);
    expect(sentences(text)).toEqual([expect.stringMatching(why)]);
  });

  test.each([
    ...["Chloride max 2 %", "Chloride maximum 2 %", "Chloride not more than 2 %", "At most 2 % chloride"],
    ...["Chloride up to 2 %", "Chloride less than 2 %", "Chloride no more than 2 %"],
  ])("%s is an upper limit, and asked about", (text) => {
    expect(lines(text)).toEqual([["?", { Cl: 2 }]]);
    expect(readLabelText(text).lines[0]?.questions[0]?.question).toMatch(/upper limit/);
  });
});

describe("names and numbers on lines of their own", () => {
  test.each<[string, Record<string, number | string>]>([
    ["Nitrogen\n10 %", { N: 10 }],
    ["10 %\nNitrogen", { N: 10 }],
    ["Nitrogen\n10 %\nPotash\n5 %", { N: 10, K2O: 5 }],
    ["10 %\nNitrogen\n5 %\nPotash", { N: 10, K2O: 5 }],
    ["Sulfate sulfur (S)\n4 %", { S: 4 }],
    ["Nitrogen\n10 %\nIron 0.1 %", { N: 10, Fe: 0.1 }],
    ["10 %\nNitrogen\nIron 0.1 %\nZinc 0.05 %", { N: 10, Fe: 0.1, Zn: 0.05 }],
    // A percent sign alone is the unit of a table.
    ["%\nNitrogen\n10 %", { N: 10 }],
  ])("%j in turn belong together", (text, fields) => {
    expect(readLabelText(text)).toMatchObject({ fields, open: 0, refused: "" });
  });

  test.each(["Nitrogen\nPotash\n10 %\n5 %", "Nitrogen\n10 %\nPotash", "10 %\n5 %\nNitrogen\nPotash"])(
    "%j in another order are left",
    (text) => {
      expect(readLabelText(text).fields).toEqual({});
      expect(new Set(lines(text))).toEqual(new Set(["not understood"]));
    },
  );
});

describe("lines on the same nutrient", () => {
  test("that say the same count once", () => {
    expect(lines("Iron 0.1 %\nIron 0.1 %")).toEqual([{ Fe: 0.1 }, "passed over"]);
    expect(sentences("Iron 0.1 %\nIron 0.1 %")[1]).toMatch(/^Fe is given already/);
  });

  test("that are a part of another give way to the whole, above or below it", () => {
    expect(lines("Iron 0.1 %\nChelated iron 0.08 %")).toEqual([{ Fe: 0.1 }, "passed over"]);
    expect(lines("Chelated iron 0.08 %\nIron 0.1 %")).toEqual(["passed over", { Fe: 0.1 }]);
    expect(sentences("Chelated iron 0.08 %\nIron 0.1 %")[0]).toMatch(/part of the Fe/);
    expect(lines("Soluble iron 0.08 %\nChelated iron 0.08 %")).toEqual([{ Fe: 0.08 }, "passed over"]);
    expect(lines("Chelated iron 0.1 %\nIron 0.1 %")).toEqual(["passed over", { Fe: 0.1 }]);
  });

  test("that say two things are asked about, with both", () => {
    const text = "N 10 %\nIron 0.1 %\nIron 0.2 %";
    expect(lines(text)).toEqual([{ N: 10 }, "passed over", ["?", { Fe: 0.1 }, { Fe: 0.2 }]]);
    const { questions } = readLabelText(text).lines[2] ?? { questions: [] };
    expect(questions[0]?.question).toMatch(/Fe .*0\.1 %.*0\.2 %/);
    expect(questions[0]?.choices.map(({ words }) => words)).toEqual([
      "Fe 0.1 % (line 2)",
      "Fe 0.2 % (line 3)",
      "leave it out",
    ]);
    expect(sentences(text)[1]).toMatch(/Fe .*question/);
    expect(lines("Iron 0.1 %\nChelated iron 0.2 %")).toEqual(["passed over", ["?", { Fe: 0.1 }, { Fe: 0.2 }]]);
    expect(lines("Iron 0.2 %\nIron 0.1 %")).toEqual(["passed over", ["?", { Fe: 0.2 }, { Fe: 0.1 }]]);
    expect(sentences("Mg 3 %\nNPK 10-5-5 Mg 2\nN 10 %\nP2O5 5 %\nK2O 5 %")[1]).toMatch(/^Mg .*question/);
  });

  test("leave the grade out, which does not say that they agree with it where they are asked about", () => {
    const grade = "NPK 10-5-5\n";
    expect(sentences(`${grade}N 10 %\nP2O5 5 %\nK2O 5 %`)[0]).toBe("The lines say the same.");
    const asked = /^The lines that say it are asked about; see the questions/;
    for (const lines of ["N 10 %\nN 9 %\nP2O5 5 %\nK2O 5 %", "N 10 %\nN 9 %\nP2O5 5 %\nP2O5 4 %\nK2O 5 %\nK2O 4 %"]) {
      expect(sentences(grade + lines)[0]).toMatch(asked);
    }
  });

  test("as oxide and as element agree, or the label is refused", () => {
    // MgO holds 24.305 / 40.304 = 60.3 % Mg.
    expect(readLabelText("MgO 2 %\nMg 1.2 %")).toMatchObject({ fields: { MgO: 2 }, refused: "", open: 0 });
    expect(Object.keys(readLabelText("MgO 2 %\nMg 1.2 %").fields)).toEqual(["MgO"]);
    expect(readLabelText("MgO 2 %\nMg 3 %").refused).toMatch(/Mg/);
  });
});

describe("a grade beside lines", () => {
  test.each<[string, Record<string, number>]>([
    ["NPK 10-5-5\nN 10 %\nP2O5 5 %\nK2O 5 %", { N: 10, P2O5: 5, K2O: 5 }],
    ["NPK 10-5-5\nN 10 %", { N: 10, P2O5: 5, K2O: 5 }],
    ["NPK 10-5-5\nIron 0.1 %", { N: 10, P2O5: 5, K2O: 5, Fe: 0.1 }],
    ["NPK 10-5-5\nElemental potassium 4.15 %", { N: 10, P2O5: 5, K: 4.15 }],
    // grades print whole numbers: 10.14 is within 0.05 and a hundredth part of 10
    ["NPK 10-5-5\nTotal nitrogen 10.14 %", { N: 10.14, P2O5: 5, K2O: 5 }],
    // counted as elements, as one of the lines shows
    ["NPK 10-2.2-4.2\nElemental phosphorus 2.2 %", { N: 10, P: 2.2, K: 4.2 }],
    ["NPK 10-2.2-4.2\nElemental potassium 4.2 %", { N: 10, P: 2.2, K: 4.2 }],
    ["NPK 10-2.2-4.2 elemental\nP2O5 5.04 %", { N: 10, P2O5: 5.04, K: 4.2 }],
    ["NPK 10-0-5\nElemental potassium 4.15 %", { N: 10, P2O5: 0, K: 4.15 }],
    // nothing of one element says nothing on the other
    ["NPK 10-0-5\nElemental phosphorus 0 %", { N: 10, P: 0, K2O: 5 }],
  ])("%j is filled in by it", (text, fields) => {
    const read = readLabelText(text);
    expect([read.open, read.refused]).toEqual([0, ""]);
    expect(read.fields).toEqual(fields);
  });

  test("that says nothing new is passed over", () => {
    const text = "NPK 10-5-5\nN 10 %\nP2O5 5 %\nK2O 5 %";
    expect(lines(text)[0]).toBe("passed over");
    expect(sentences(text)[0]).toMatch(/same/);
  });

  test("that says otherwise is asked about, with both numbers", () => {
    const text = "NPK 10-5-5\nTotal nitrogen 10.16 %";
    expect(lines(text)).toEqual([["?", { N: 10 }], { N: 10.16 }]);
    const [question] = readLabelText(text).lines[0]?.questions ?? [];
    expect(question?.question).toMatch(/N 10 %.*10\.2 %/);
    expect(question?.choices[0]?.words).toMatch(/N 10 %$/);
    // as oxide 5 % is 4.15 % of the element; the lines say 5 % of the element, which is 6.02 % of the oxide
    const other = "NPK 10-0-5\nN 10 %\nElemental potassium 6 %";
    expect(lines(other)[0]).toEqual(["?", { K2O: 5 }]);
    expect(readLabelText(other).lines[0]?.questions[0]?.question).toMatch(/K2O 5 %.*7\.23 %/);
    expect(lines("NPK 10-2.2-4.2 elemental\nElemental phosphorus 3 %")[0]).toEqual(["?", { P: 2.2 }]);
    expect(lines("NPK 10-5-5\nN 9 %\nP2O5 5 %\nK2O 5 %")[0]).toEqual(["?", { N: 10 }]);
    expect(sentences("NPK 10-5-5\nN 9 %\nP2O5 5 %\nK2O 5 %")).toEqual(["", "", "", ""]);
  });

  test("fills nothing in that is still asked about", () => {
    for (const text of ["NPK 10-5-5\nPhosphorus 5 %", "NPK 10-5-5\nP205 5 %"]) {
      expect(readLabelText(text)).toMatchObject({ fields: { N: 10, K2O: 5 }, open: 1 });
      expect(readLabelText(text).fields).not.toHaveProperty("P2O5");
    }
  });

  test("a second one is not understood", () => {
    expect(lines("NPK 10-5-5\nNPK 12-4-6")[1]).toBe("not understood");
  });
});

describe("units", () => {
  test("a number without one, where others have one, is asked about", () => {
    expect(lines("N 10 %\nFe 5")).toEqual([{ N: 10 }, ["?", { Fe: 5 }, { Fe: 0.0005 }]]);
    expect(lines("N 10\nFe 5")).toEqual([{ N: 10 }, { Fe: 5 }]);
    const [, line] = readLabelText("N 10 %\nFe 5").lines;
    expect(line?.questions[0]?.question).toMatch(/^Fe 5 has no unit/);
    expect(line?.questions[0]?.choices.map(({ words }) => words)).toEqual(["Fe 5 %", "Fe 5 mg/kg", "leave it out"]);
  });

  test("more than everything is not understood", () => {
    expect(lines("N 101 %")).toEqual(["not understood"]);
    expect(sentences("N 101 %")[0]).toMatch(/100 %/);
    expect(lines("N 100 %")).toEqual([{ N: 100 }]);
  });

  test.each<[string, string | undefined, RegExp]>([
    ["N 8 % w/w\nK2O 6 % w/w", "w/w", /^$/],
    ["N 8 % w/v\nK2O 6 % w/v", "w/v", /^$/],
    ["N 8 % w/w\nK2O 6 %", "w/w", /^$/],
    ["N 8 %\nK2O 6 %", undefined, /^$/],
    ["N 8 % w/w\nK2O 6 % w/v", undefined, /in one of them/],
    ["N 8 % w/v\nK2O 6 %", undefined, /Choose the basis/],
  ])("%j", (text, basis, refused) => {
    const read = readLabelText(text);
    expect(read.fields.Basis).toBe(basis);
    expect(read.refused).toMatch(refused);
  });

  test("a basis chosen by a person settles it", () => {
    for (const text of ["N 8 % w/w\nK2O 6 % w/v", "N 8 % w/v\nK2O 6 %"]) {
      const read = readLabelText(text);
      expect(withAnswers(read, new Map(), "w/w")).toEqual({
        fields: { N: 8, K2O: 6, Basis: "w/w" },
        refused: "",
        open: 0,
      });
      expect(withAnswers(read, new Map()).refused).toBe(read.refused);
    }
  });
});

describe("answers", () => {
  test("go in by the number of the line and of the question, and the open ones are counted", () => {
    const read = readLabelText("N 10 %\nPhosphorus 5 %, potassium 4 %");
    const line = read.lines[1];
    if (line === undefined) throw new Error("no line");
    const [first, second] = line.questions.map((question) => questionKey(line, question));
    expect([first, second]).toEqual(["2.0", "2.1"]);
    expect(withAnswers(read, new Map())).toMatchObject({ fields: { N: 10 }, open: 2 });
    expect(withAnswers(read, new Map([["2.0", 0]]))).toEqual({ fields: { N: 10, P2O5: 5 }, refused: "", open: 1 });
    expect(withAnswers(read, new Map([["2.1", 1]]))).toEqual({ fields: { N: 10, K: 4 }, refused: "", open: 1 });
    expect(
      withAnswers(
        read,
        new Map([
          ["2.0", 2],
          ["2.1", 2],
        ]),
      ),
    ).toEqual({ fields: { N: 10 }, refused: "", open: 0 });
    expect(withAnswers(read, new Map([["2.0", 9]])).open).toBe(2);
  });

  test("an oxide and its element that agree are one", () => {
    const read = readLabelText("P2O5 5 %\nPhosphorus 2.18 %");
    expect(withAnswers(read, new Map([["2.0", 1]]))).toEqual({ fields: { P2O5: 5 }, refused: "", open: 0 });
    expect(withAnswers(read, new Map([["2.0", 2]]))).toEqual({ fields: { P2O5: 5 }, refused: "", open: 0 });
  });
});

describe("two numbers for the same", () => {
  test("agree up to a twentieth of a percent and a hundredth part of the larger", () => {
    // 0.05 + 0.95 is 1
    expect([agree(95, 94), agree(94, 95), agree(95, 93.9), agree(93.9, 95)]).toEqual([true, true, false, false]);
    expect([agree(0, 0.05), agree(0, 0.06), agree(3, 3)]).toEqual([true, false, true]);
  });

  test("fields are judged by their basis and density: 105 g may be in 100 mL of 1.685 g/mL", () => {
    const fields = { P2O5: 60, K2O: 45 };
    expect(contradiction(fields)).toMatch(/^The label adds up to 105 %, more than 100 %\. /);
    expect(contradiction({ ...fields, Basis: "w/w", Density: 1.685 })).toMatch(/more than 100 %/);
    expect(contradiction({ ...fields, Basis: "w/v" })).toMatch(/more than 100 % .*density/);
    expect(contradiction({ ...fields, Basis: "w/v", Density: 1.685 })).toBe("");
    expect(contradiction({ P2O5: 5, P: 5 })).toMatch(/^The label: P2O5 5 % is 2\.18 % P/);
    expect(contradiction({ P2O5: 5, P: 2.18 })).toBe("");
  });
});
