/** Pasted labels: what is clear is read, what is not is asked or left visible, nothing is guessed or lost. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { questionKey, withAnswers } from "../../src/core/label-answers.ts";
import { readLabelText } from "../../src/core/label-text.ts";
import { drawn } from "../drawn.ts";
import { CLEAR, DOUBTFUL } from "./label-texts.ts";

it("there are at least 60 clear labels and 20 doubtful ones", () => {
  expect(CLEAR.length).toBeGreaterThanOrEqual(60);
  expect(DOUBTFUL.length).toBeGreaterThanOrEqual(20);
});

describe("clear", () => {
  it.each(CLEAR)("$name", ({ text, fields }) => {
    const read = readLabelText(text);
    expect(read.fields).toEqual(fields);
    expect(read.lines.filter(({ outcome }) => outcome === "asked" || outcome === "not understood")).toEqual([]);
    expect([read.open, read.refused]).toEqual([0, ""]);
  });
});

describe("doubtful", () => {
  it.each(DOUBTFUL)("$name", ({ text, clear, expect: outcome }) => {
    const read = readLabelText(text);
    expect(read.fields).toEqual(clear);
    if (outcome === "refused") expect(read.refused).not.toBe("");
    else expect(read.lines.map((line) => line.outcome)).toContain(outcome);
    if (outcome === "asked") expect(read.open).toBeGreaterThan(0);
    for (const { questions } of read.lines) {
      for (const { question, choices } of questions) {
        expect(question).toMatch(/[?.]$/);
        expect(choices.length).toBeGreaterThanOrEqual(2);
        expect(choices[choices.length - 1]?.fields).toEqual({});
      }
    }
  });
});

describe("questions", () => {
  it("say both readings, and the answer goes into the fields", () => {
    const read = readLabelText("N 10 %\nPhosphorus 5 %");
    const line = read.lines[1];
    const question = line?.questions[0];
    expect(question?.question).toBe('"Phosphorus 5" can mean the oxide P2O5 or the element P. Which is it?');
    expect(question?.choices.map(({ fields }) => fields)).toEqual([{ P2O5: 5 }, { P: 5 }, {}]);
    if (line === undefined || question === undefined) throw new Error("no question");
    const key = questionKey(line, question);
    expect(withAnswers(read, new Map([[key, 1]]))).toEqual({ fields: { N: 10, P: 5 }, refused: "", open: 0 });
    expect(withAnswers(read, new Map([[key, 2]]))).toEqual({ fields: { N: 10 }, refused: "", open: 0 });
    expect(withAnswers(read, new Map())).toEqual({ fields: { N: 10 }, refused: "", open: 1 });
  });

  it("offer an ion as itself, worked out by its formula", () => {
    const [line] = readLabelText("Nitrate 20 %").lines;
    // 14.007 / 62.004 of nitrate is nitrogen.
    expect(line?.questions[0]?.choices[1]?.fields["NO3-N"]).toBeCloseTo((20 * 14.007) / 62.004, 9);
  });

  it.each([
    // Atomic weights as CIAAW prints them: N 14.007 of NH4 18.039, S 32.06 of SO4 96.056, P 30.974 of PO4 94.970.
    ["Ammonium 20 %", "NH4-N", 14.007 / 18.039],
    ["SO4 20 %", "S", 32.06 / 96.056],
    ["PO4 20 %", "P", 30.974 / 94.97],
  ] as const)("offer %s as what is in it, and as the ion itself", (text, term, share) => {
    const choices = readLabelText(text).lines[0]?.questions[0]?.choices ?? [];
    expect(choices[0]?.fields).toEqual({ [term]: 20 });
    expect(choices[1]?.fields[term]).toBeCloseTo(20 * share, 3);
    expect(choices).toHaveLength(3);
  });

  it("offer phosphoric acid as itself, worked out by its formula", () => {
    const [line] = readLabelText("Phosphoric acid 75 %").lines;
    // 141.94 g of P2O5 make 2 x 97.994 g of H3PO4 (CIAAW 2021), so 75 % of the acid are 54.3 % P2O5.
    expect(line?.questions[0]?.choices[1]?.fields.P2O5).toBeCloseTo((75 * 141.943) / (2 * 97.994), 2);
  });

  it("1.200 mg/kg is 1.2 or 1200", () => {
    const [line] = readLabelText("Iron (Fe) 1.200 mg/kg").lines;
    expect(line?.questions[0]?.choices.map(({ fields }) => fields.Fe)).toEqual([0.00012, 0.12, undefined]);
  });

  it("the basis can be chosen by hand", () => {
    const read = readLabelText("N 8 % w/v\nK2O 6 %");
    expect(read.refused).toBe("Some lines count by volume, others do not say. Choose the basis for the whole label.");
    expect(withAnswers(read, new Map(), "w/v")).toEqual({
      fields: { N: 8, K2O: 6, Basis: "w/v" },
      refused: "",
      open: 0,
    });
    expect(withAnswers(read, new Map()).refused).toBe(read.refused);
  });

  it("an answer that contradicts the rest is refused with both numbers", () => {
    const read = readLabelText("P2O5 5 %\nPhosphorus (P) 4 %");
    const line = read.lines[1];
    const question = line?.questions[0];
    if (line === undefined || question === undefined) throw new Error("no question");
    const { refused } = withAnswers(read, new Map([[questionKey(line, question), 1]]));
    expect(refused).toContain("P2O5 5 %");
    expect(refused).toContain("P 4 %");
  });
});

describe("nothing is lost", () => {
  it("every line that is not blank comes back as it was pasted, with its number", () => {
    const text = "First line\r\n\r\n  N 10 %  \n???\n\nUse 5 mL";
    expect(readLabelText(text).lines.map(({ number, text: line }) => [number, line])).toEqual([
      [1, "First line"],
      [3, "  N 10 %  "],
      [4, "???"],
      [6, "Use 5 mL"],
    ]);
  });

  it("lines that are not understood say why, and so do those passed over", () => {
    for (const { text } of [...CLEAR, ...DOUBTFUL]) {
      for (const { outcome, sentence } of readLabelText(text).lines) {
        if (outcome === "not understood" || outcome === "passed over") expect(sentence).toMatch(/^[A-Z"].*\.$/);
      }
    }
  });
});

describe("fuzzed", () => {
  const words = fc.constantFrom(
    ..."total nitrogen (N) nitrate ammoniacal urea available phosphate P2O5 (P2O5) soluble potash K2O K P Ca CaO magnesium Mg MgO iron Fe EDTA chelated boron B zinc of which % %w/v mg/kg ppm g/L w/w 10 5.0 0,02 1.200 1,234.5 10-5-5 NPK + - : ; , . … ( ) < ≥ not more than derived from density 1.2 kg/l grade humic seaweed constructor __proto__ toString \u0000 🌱".split(
      " ",
    ),
    "\n",
    "\n",
    "\t",
  );
  const soup = fc.array(words, { maxLength: 40 }).map((list) => list.join(" "));

  it.each([
    ["random text", fc.string({ maxLength: 300 })],
    ["random Unicode", fc.string({ unit: "binary", maxLength: 200 })],
    ["a soup of label words", soup],
  ])("%s never crashes, and gives only percents from 0 to 100", (_, texts) => {
    fc.assert(
      fc.property(texts, (text) => {
        const read = readLabelText(text);
        const all = [
          read.fields,
          ...read.lines.flatMap(({ questions }) =>
            questions.flatMap(({ choices }) => choices.map(({ fields }) => fields)),
          ),
        ];
        for (const fields of all) {
          for (const [heading, value] of Object.entries(fields)) {
            if (heading === "Basis") expect(["w/w", "w/v"]).toContain(value);
            else {
              expect(typeof value).toBe("number");
              expect(value as number).toBeGreaterThanOrEqual(0);
              expect(value as number).toBeLessThanOrEqual(100);
            }
          }
        }
        for (const { outcome, fields } of read.lines) if (outcome === "not understood") expect(fields).toEqual({});
        expect(read.lines.length).toBe(
          text
            .split(/\r\n|\r|\n/)
            .slice(0, 300)
            .filter((line) => line.trim() !== "").length,
        );
      }),
      { numRuns: drawn(2000), seed: 3 },
    );
  });

  it("every number read stands in the text, as itself or by its unit", () => {
    fc.assert(
      fc.property(soup, (text) => {
        const digits = new Set<number>();
        for (const part of text.match(/\d+(?:[.,]\d+)*/g) ?? []) {
          digits.add(Number(part.replace(",", ".")));
          digits.add(Number(part.replace(/[.,]/g, "")));
        }
        for (const [heading, value] of Object.entries(readLabelText(text).fields)) {
          if (heading === "Basis") continue;
          const from = [1, 10, 10_000].some((scale) =>
            [...digits].some((one) => Math.abs(one - (value as number) * scale) < 1e-6),
          );
          expect(from).toBe(true);
        }
      }),
      { numRuns: drawn(2000), seed: 4 },
    );
  });

  it("words around a clear line do not change what it says, nor does what stands before", () => {
    const noise = fc.constantFrom(
      "Shake well before use",
      "Keep away from children",
      "Lot A-77",
      "www",
      "☘ ☘ ☘",
      "Made in a shed",
      "Net 500 mL",
    );
    fc.assert(
      fc.property(fc.constantFrom(...CLEAR), fc.array(noise, { maxLength: 4 }), ({ text, fields }, extra) => {
        expect(readLabelText([...extra, "", text, "", ...extra].join("\n")).fields).toEqual(fields);
      }),
      { numRuns: drawn(300), seed: 6 },
    );
  });
});
