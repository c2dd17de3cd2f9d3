/** A number and its words on a pasted label: what is clear, what is asked and with which choices. */

import { describe, expect, test } from "vitest";
import { readLabelText } from "../../src/core/label-text.ts";

const line = (text: string, number = 0) => {
  const found = readLabelText(text).lines[number];
  if (found === undefined) throw new Error(`No line ${number} in "${text}".`);
  return found;
};
/** What a label says for sure, and under which lines there is a question. */
const read = (text: string) => {
  const { fields, lines } = readLabelText(text);
  return [fields, lines.flatMap(({ outcome }, k) => (outcome === "asked" ? [k + 1] : []))];
};

describe("nitrate, ammonium and urea are forms of the nitrogen above", () => {
  test.each(["  ", "\t", "- ", "– ", "• ", "* "])("when set in by %j", (mark) => {
    const text = `N 10 %\n${mark}Nitrate 6 %\n${mark}Ammonium 3 %\n${mark}Urea 1 %`;
    expect(read(text)).toEqual([{ N: 10, "NO3-N": 6, "NH4-N": 3, "Urea-N": 1 }, []]);
  });
  test("or in its brackets", () => {
    expect(read("N 10 % (nitrate 6 %, ammonium 4 %)")).toEqual([{ N: 10, "NO3-N": 6, "NH4-N": 4 }, []]);
    expect(read("NO3-N 6 % (ammonium 4 %)")).toEqual([{ "NO3-N": 6, "NH4-N": 4 }, []]);
  });
  test.each([
    ["N 10 %\nNitrate 6 %", { N: 10 }, 2],
    ["K2O 5 %\n  Nitrate 6 %", { K2O: 5 }, 2],
    ["N 10 %\nK2O 5 %\n  Nitrate 6 %", { N: 10, K2O: 5 }, 3],
    ["N 10 %, nitrate 6 %", { N: 10 }, 1],
    ["K2O 5 % (nitrate 6 %)", { K2O: 5 }, 1],
  ])("%j: elsewhere it is asked", (text, fields, asked) => expect(read(text)).toEqual([fields, [asked]]));
});

describe("phosphorus beside P2O5", () => {
  test("in its brackets is the element, and the whole of it", () => {
    expect(line("P2O5 5 % (2.2 % phosphorus)")).toMatchObject({ outcome: "understood", fields: { P2O5: 5, P: 2.2 } });
    const soluble = "P2O5 5 % (2.2 % phosphorus)\nSoluble elemental phosphorus 2 %";
    expect(line(soluble, 1)).toMatchObject({
      outcome: "passed over",
      sentence: expect.stringMatching(/part of the P\b/),
    });
  });
  test.each([
    ["P2O5 5 %, phosphorus 2.2 %", { P2O5: 5 }],
    ["(Phosphorus 5 %)", {}],
    ["Of which phosphorus 5 %", {}],
    ["N 10 % (phosphorus 5 %)", { N: 10 }],
    ["P 5 % elemental (phosphorus 5 %)", { P: 5 }],
  ])("%j: elsewhere it is asked", (text, fields) => expect(read(text)).toEqual([fields, [1]]));
});

describe("the unit of the heading", () => {
  test.each([
    ["Analysis % w/v\nN 8 %", { N: 8, Basis: "w/v" }],
    ["Analysis % w/v\nN 8", { N: 8, Basis: "w/v" }],
    ["Analysis % w/v\nN 8 % w/w", { N: 8, Basis: "w/w" }],
    ["Analysis in mg/kg\nFe 500\nMn 0.05 %", { Fe: 0.05, Mn: 0.05, Basis: "w/w" }],
  ])("%j: holds for a line that does not say otherwise", (text, fields) => expect(read(text)).toEqual([fields, []]));
});

describe("questions", () => {
  const asked = (text: string) => {
    const [question] = line(text).questions;
    if (question === undefined) throw new Error(`Nothing is asked of "${text}".`);
    return question;
  };

  test.each([
    // A percent has no thousands; mg/kg may.
    ["Iron 1,234 mg/kg", /^"1,234" can be read/, [0.0001234, 0.1234], ["1.234", "1234"]],
    ["Iron 1.200 mg/kg", /^"1\.200" can be read/, [0.00012, 0.12], ["1.2", "1200"]],
    ["Iron 1 234 mg/kg", /"1 234" meant as 1234\?/, [0.1234], ["1234"]],
    ["Iron 1,234.5 mg/kg", /"1,234\.5" meant as 1234\.5\?/, [0.12345], ["1234.5"]],
  ])("%s: on the digits", (text, question, values, said) => {
    const { choices, ...rest } = asked(text);
    expect(rest.question).toMatch(question);
    expect(choices.slice(0, -1).map(({ fields }) => fields)).toEqual(values.map((value) => ({ Fe: value })));
    for (const [k, one] of said.entries()) expect(choices[k]?.words.startsWith(`${one}, so Fe 0.`)).toBe(true);
  });
  test.each(["Iron 1,234 %", "Fe 1,234"])("%s: none, a percent is below 100", (text) =>
    expect(read(text)).toEqual([{ Fe: 1.234 }, []]),
  );

  test("on the words, with the basis that was printed", () => {
    const { question, choices } = asked("Phosphorus 5 % w/v");
    expect(question).toMatch(/^"Phosphorus 5" can mean .*P2O5 or .*P\b/);
    expect(choices.slice(0, -1)).toEqual([
      { words: expect.stringMatching(/P2O5.*, so P2O5 5 %$/), fields: { P2O5: 5, Basis: "w/v" } },
      { words: expect.stringMatching(/P, so P 5 %$/), fields: { P: 5, Basis: "w/v" } },
    ]);
    expect(asked("Phosphorus 5 % w/w").choices[0]?.fields).toEqual({ P2O5: 5 });
  });

  test("on a figure in place of a letter", () => {
    expect(asked("K20 5 %").question).toMatch(/^Is "K20" meant as K2O/);
    expect(asked("P205 5 %").choices.map(({ fields }) => fields)).toEqual([{ P2O5: 5 }, {}]);
  });

  test("on an upper limit, of words that are clear or not", () => {
    expect(asked("Chloride max 2 %").question).toMatch(/^"Cl 2" is an upper limit/);
    expect(asked("Phosphorus max 5 %").question).toMatch(/^"Phosphorus max 5" is an upper limit/);
  });

  test("only what stays within 100 % is offered", () => {
    expect(asked("Iron 123,456 mg/kg").choices.map(({ fields }) => fields.Fe)).toEqual([0.0123456, 12.3456, undefined]);
    // 101 % of nitrogen cannot be, 101 of 14.007 / 62.004 could
    const nitrate = asked("Nitrate 101 %").choices.slice(0, -1);
    expect(nitrate.map(({ fields }) => Number(fields["NO3-N"]))).toEqual([expect.closeTo(22.82, 2)]);
    expect(line("Iron 1.2.3 %")).toMatchObject({
      outcome: "not understood",
      sentence: expect.stringMatching(/^"1\.2\.3" cannot be read/),
    });
    expect(line("Slow release 4 %")).toMatchObject({
      outcome: "not understood",
      sentence: expect.stringMatching(/not known here/),
    });
    expect(line("Iron 120 %")).toMatchObject({
      outcome: "not understood",
      sentence: expect.stringMatching(/more than 100 %/),
    });
  });
});
