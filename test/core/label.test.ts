/** Labels as text: every form that is taken, every contradiction and every unreadable text refused with its sentence. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LABEL_TERMS, type LabelTerm, labelFrom } from "../../src/core/analysis.ts";
import { type Cell, readCell } from "../../src/core/cell.ts";
import { parseLabel, readLabel } from "../../src/core/label.ts";
import { percentOf } from "./formula.ts";
import { readReference } from "./reference.ts";
import { refusal } from "./refusal.ts";

const { factors } = readReference<{ factors: Record<string, number> }>("labels.json");
const P = factors.P2O5 ?? 0;
const K = factors.K2O ?? 0;

function expectPercent(text: string, percent: Record<string, number>): void {
  const label = parseLabel(text);
  expect(Object.keys(label.percent).sort()).toEqual(Object.keys(percent).sort());
  for (const [symbol, value] of Object.entries(percent)) {
    expect(label.percent[symbol as keyof typeof label.percent]).toBeCloseTo(value, 3);
  }
}

describe("a label is read", () => {
  const grade = { N: 10, P: 5 * P, K: 5 * K };
  it.each<[string, Record<string, number>]>([
    ["10-5-5", grade],
    [" 10 - 5 - 5 ", grade],
    ["10–5–5", grade],
    ["NPK 10-5-5", grade],
    ["10-5-5 %", grade],
    ["10-5-5 oxide", grade],
    ["10-5-5 elemental", { N: 10, P: 5, K: 5 }],
    ["10-5-5 Ca 4 Mg 1.2 Fe 0.1", { ...grade, Ca: 4, Mg: 1.2, Fe: 0.1 }],
    ["10-5-5, Ca 4, Mg 1,2, Fe 0,1", { ...grade, Ca: 4, Mg: 1.2, Fe: 0.1 }],
    ["10-5-5 + CaO 4 + MgO 2 + SO3 3", { ...grade, Ca: 4 * 0.7147, Mg: 2 * 0.60304, S: 3 * 0.40046 }],
    ["10-5-5 calcium 4 %; iron: 0.1 %", { ...grade, Ca: 4, Fe: 0.1 }],
    ["7,5-3,25-6", { N: 7.5, P: 3.25 * P, K: 6 * K }],
    ["N 10 P 2.2 K 4.2 elemental", { N: 10, P: 2.2, K: 4.2 }],
    ["N 10 P 5 K 5 oxide", grade],
    ["N 10 P2O5 5 K2O 5", grade],
    ["0-52-34", { N: 0, P: 52 * P, K: 34 * K }],
    ["13-0-0 Mo 0.0009", { N: 13, P: 0, K: 0, Mo: 0.0009 }],
    ["1,234-0-0", { N: 1.234, P: 0, K: 0 }],
    ["Urea-N 46", { N: 46 }],
    ["NO3-N 6 NH4-N 4", { N: 10 }],
    ["10-5-5 P 2.2 K 4.15", grade],
    ["npk: 10-5-5", grade],
    ["NPK   10-5-5", grade],
    ["w/w 10-5-5", grade],
    ["% w / w 10-5-5", grade],
    ["% w / v 10-5-5", grade],
    ["10-5-5 % W / W, Ca 4", { ...grade, Ca: 4 }],
    ["elemental 10-5-5", { N: 10, P: 5, K: 5 }],
    ["elemental; N 10 P 5 K 5", { N: 10, P: 5, K: 5 }],
    ["oxides N 10 P 5 K 5", grade],
    ["oxide, N 10 P 5 K 5", grade],
    ["N 10 oxides; P 5 K 5", grade],
    ["no3-n 6", { N: 6 }],
    ["Nitrate  -  N   6", { N: 6 }],
    // 5 % P2O5 is 2.182 % P: said in both ways, as a grade of elements may.
    ["10-2.182-4 elemental P2O5 5", { N: 10, P: 2.182, K: 4 }],
  ])("%j", (text, percent) => {
    expectPercent(text, percent);
  });

  it("keeps the basis", () => {
    expect(parseLabel("10-5-5").basis).toBe("w/w");
    expect(parseLabel("10-5-5 w/w").basis).toBe("w/w");
    expect(parseLabel("10-5-5 w/v").basis).toBe("w/v");
    expect(parseLabel("10-5-5 % W / V Ca 2").basis).toBe("w/v");
  });

  it("keeps the forms of nitrogen", () => {
    const { nitrogen } = parseLabel("N 10 NO3-N 6 NH4-N 3.5 Urea-N 0.5");
    expect(nitrogen).toEqual({ nitrate: 6, ammonium: 3.5, urea: 0.5, other: null });
    expect(parseLabel("nitrate-N 6 Other-N 1").nitrogen.other).toBe(1);
    for (const label of ["Ammonium-N 3", "ammoniacal-N 3", "NH4-N 3"])
      expect(parseLabel(label).nitrogen.ammonium).toBe(3);
    expect(parseLabel("Nitrate - N 6").nitrogen.nitrate).toBe(6);
    expect(parseLabel("10-5-5").nitrogen).toEqual({ nitrate: null, ammonium: null, urea: null, other: null });
  });

  it("allows for the rounding of printed forms, not for more", () => {
    expect(parseLabel("N 15.5 NO3-N 14.4 NH4-N 1.2").percent.N).toBe(15.5);
    expect(refusal(() => parseLabel("N 15.5 NO3-N 14.4 NH4-N 1.3"))).toContain("15.7 %, but total N is 15.5 %");
  });

  it("small guarantees are never refused (WAC 16-200-711 exempts hydroponic feeds from the minimum guarantees)", () => {
    expect(parseLabel("0.01-0-0 B 0.0001").percent.B).toBe(0.0001);
  });

  it("every pure salt of the trade can be declared in oxides without going over 100 %", () => {
    const { K: potassium = 0, Cl: chlorine = 0 } = percentOf("KCl");
    // As oxide and chlorine it prints to 110.7 %: the oxide's oxygen is not there in a chloride.
    expect(parseLabel(`K2O ${potassium / K} Cl ${chlorine}`).percent.K).toBeCloseTo(potassium, 2);
    const { K: sulfateK = 0, S: sulfur = 0 } = percentOf("K2SO4");
    expect(parseLabel(`K2O ${sulfateK / K} SO3 ${sulfur / 0.40046}`).percent.S).toBeCloseTo(sulfur, 2);
  });
});

describe("a label that contradicts itself is refused with both numbers", () => {
  it.each([
    ["60-30-20", 'The label "60-30-20" adds up to 110 %, more than 100 %. Compare it with the package.'],
    ["50-40-10 Ca 5", 'The label "50-40-10 Ca 5" adds up to 105 %, more than 100 %. Compare it with the package.'],
    [
      "60-30-20 w/v",
      'The label "60-30-20 w/v" adds up to 110 %, more than 100 % (grams in 100 mL). Compare it with the package, or give the density.',
    ],
    [
      "N 10 NO3-N 6 NH4-N 3",
      'The label "N 10 NO3-N 6 NH4-N 3": the forms of nitrogen add up to 9 %, but total N is 10 %. Give every form that is printed, or N alone.',
    ],
    [
      "10-5-5 NO3-N 6",
      'The label "10-5-5 NO3-N 6": the forms of nitrogen add up to 6 %, but total N is 10 %. Give every form that is printed, or N alone.',
    ],
    ["10-5-5 P 5", 'The label "10-5-5 P 5": P2O5 5 % is 2.18 % P, but it also says P 5 %. Leave out the wrong one.'],
    ["10-5-5 K 5", 'The label "10-5-5 K 5": K2O 5 % is 4.15 % K, but it also says K 5 %. Leave out the wrong one.'],
    ["Ca 4 CaO 4", 'The label "Ca 4 CaO 4": CaO 4 % is 2.86 % Ca, but it also says Ca 4 %. Leave out the wrong one.'],
    ["Mg 2 MgO 2", 'The label "Mg 2 MgO 2": MgO 2 % is 1.21 % Mg, but it also says Mg 2 %. Leave out the wrong one.'],
    ["S 3 SO3 3", 'The label "S 3 SO3 3": SO3 3 % is 1.2 % S, but it also says S 3 %. Leave out the wrong one.'],
  ])("%j", (text, sentence) => {
    expect(refusal(() => parseLabel(text))).toBe(sentence);
  });

  it("a w/v label may hold up to 100 × density grams in 100 mL", () => {
    // Phosphoric acid 85 %, 1.685 g/mL: 61.6 % P2O5 by weight is 103.7 g in 100 mL.
    expect(refusal(() => parseLabel("P2O5 60 K2O 45 w/v"))).toContain("105 %");
    expect(parseLabel("P2O5 60 K2O 45 w/v", 1.685).basis).toBe("w/v");
    expect(refusal(() => parseLabel("P2O5 90 K2O 90 w/v", 1.685))).toBe(
      'The label "P2O5 90 K2O 90 w/v" adds up to 180 %, more than 168.5 % (grams in 100 mL). Compare it with the package.',
    );
  });
});

describe("a text that is no label is refused", () => {
  const how = `Write it like "10-5-5", "10-5-5 Ca 4 Mg 1.2 Fe 0.1" or "N 10 P 2.2 K 4.2 elemental".`;
  it.each([
    ["", `The label is blank. ${how}`],
    ["  ", `The label is blank. ${how}`],
    [" 10-5   w ", `The label "10-5 w" cannot be read from "10-5 w" on. ${how}`],
    ["w/v", `The label "w/v" has no numbers. ${how}`],
    ["10-5", `The label "10-5" cannot be read from "10-5" on. ${how}`],
    ["12-4-8-2", `The label "12-4-8-2" cannot be read from "12-4-8-2" on. ${how}`],
    ["10/5/5", `The label "10/5/5" cannot be read from "10/5/5" on. ${how}`],
    ["10-5-5 4 Ca", `The label "10-5-5 4 Ca" cannot be read from "4 Ca" on. ${how}`],
    ["10-5-5 Ca4", `The label "10-5-5 Ca4" cannot be read from "Ca4" on. ${how}`],
    ["N 10 P2O5", `The label "N 10 P2O5" cannot be read from "P2O5" on. ${how}`],
    ["plant food", `The label "plant food" cannot be read from "plant food" on. ${how}`],
    ["-10-5-5", `The label "-10-5-5" cannot be read from "-10-5-5" on. ${how}`],
    ["10-5-5 Xy 3", `"Xy" on the label "10-5-5 Xy 3" is not known. Use ${LABEL_TERMS.join(" ")}.`],
    [
      "NO3 6",
      '"NO3" on the label "NO3 6" does not say how much nutrient there is. Give NO3-N, the nitrogen in the nitrate.',
    ],
    [
      "10-5-5 NH4 6",
      '"NH4" on the label "10-5-5 NH4 6" does not say how much nutrient there is. Give NH4-N, the nitrogen in the ammonium.',
    ],
    [
      "10-5-5 Urea 6",
      '"Urea" on the label "10-5-5 Urea 6" does not say how much nutrient there is. Give Urea-N, the nitrogen in the urea.',
    ],
    ["10-5-5 PO4 6", '"PO4" on the label "10-5-5 PO4 6" does not say how much nutrient there is. Give P or P2O5.'],
    ["10-5-5 SO4 6", '"SO4" on the label "10-5-5 SO4 6" does not say how much nutrient there is. Give S or SO3.'],
    ["10-5-5 Ca 4 Ca 5", 'The label "10-5-5 Ca 4 Ca 5" gives Ca twice. Leave one out.'],
    ["10-5-5 N 10", 'The label "10-5-5 N 10" gives N twice. Leave one out.'],
    ["10-5-5 Ca -4", 'The label "10-5-5 Ca -4": Ca is -4 %. Give a number from 0 to 100 %.'],
    ["10-5-5 Ca - 4", 'The label "10-5-5 Ca - 4": Ca is -4 %. Give a number from 0 to 100 %.'],
    ["2010-5-5", 'The label "2010-5-5": N is 2010 %. Give a number from 0 to 100 %.'],
    [
      "10-5-5 Ca 1,234.5",
      'Ca on the label "10-5-5 Ca 1,234.5" is "1,234.5". Leave out marks and spaces between the digits, and use one decimal point: 1234.5.',
    ],
    [
      "N 10 P 5 K 5",
      '"P 5" on the label "N 10 P 5 K 5" can mean P2O5 or the element. Write P2O5 5, or add the word elemental.',
    ],
    ["10-5-5 w/w w/v", 'The label "10-5-5 w/w w/v" says both w/w and w/v. Leave one out.'],
    ["10-5-5 elemental oxide", 'The label "10-5-5 elemental oxide" says both elemental and oxide. Leave one out.'],
    ["N 10 P2O5 5 elemental", 'The label "N 10 P2O5 5 elemental" says elemental and also P2O5. Leave one out.'],
    ["N 10 K2O 5 elemental", 'The label "N 10 K2O 5 elemental" says elemental and also K2O. Leave one out.'],
  ])("%j", (text, sentence) => {
    expect(refusal(() => parseLabel(text))).toBe(sentence);
  });
});

describe("a label in a cell", () => {
  const cell = (raw: unknown): Cell => readCell(raw, () => null);
  it("is read, or null when blank", () => {
    expect(readLabel(cell("10-5-5"))?.percent.N).toBe(10);
    expect(readLabel(cell(" "))).toBeNull();
  });

  it("that became a date says how to type it", () => {
    expect(refusal(() => readLabel({ kind: "day", day: 14_734 }))).toBe(
      "The label is the date 2010-05-05: the sheet took a grade like 10-5-5 for a day. Type it with an apostrophe in front, '10-5-5, or in quotes inside the formula.",
    );
  });

  it("that is an error, a number or a tick box says so", () => {
    expect(refusal(() => readLabel(cell("#N/A")))).toBe(
      "The label is an error cell (#N/A). Mend that cell or clear it.",
    );
    expect(refusal(() => readLabel(cell(10)))).toMatch(/^The label is 10\. Write it like/);
    expect(refusal(() => readLabel(cell(true)))).toMatch(/^The label is true\. Write it like/);
  });
});

describe("properties", () => {
  const share = fc.integer({ min: 0, max: 300 }).map((tenths) => tenths / 10);
  it("a grade is linear: what it says is what it holds", () => {
    fc.assert(
      fc.property(share, share, share, (n, p, k) => {
        const { percent } = parseLabel(`${n}-${p}-${k}`);
        expect(percent.N).toBe(n);
        expect(percent.P).toBeCloseTo(p * P, 3);
        expect(percent.K).toBeCloseTo(k * K, 3);
      }),
    );
  });

  it("any text is read or refused with a sentence", () => {
    const bits = fc.constantFrom(
      "10-5-5",
      "Ca",
      "4",
      "1,2",
      " ",
      "elemental",
      "w/v",
      "NO3-N",
      "-",
      "%",
      "P2O5",
      "x",
      ",",
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(bits, { maxLength: 8 }).map((parts) => parts.join(" ")),
        ),
        (text) => {
          let percent: readonly number[] = [];
          try {
            percent = Object.values(parseLabel(text).percent);
          } catch (error) {
            expect((error as Error).name).toBe("BadInput");
          }
          expect(percent.every((value) => value >= 0 && value <= 100)).toBe(true);
        },
      ),
    );
  });

  it("lets chlorine stand in for no more oxygen than the oxides hold", () => {
    const printed = new Map<LabelTerm, number>([
      ["N", 14.9],
      ["MgO", 3.3],
      ["P", 25.4],
      ["Cl", 29.4],
      ["Mn", 29.1],
    ]);
    const read = () => labelFrom(printed, { basis: "w/w", densityGPerMl: null, what: "It" });
    expect(read).toThrow(/adds up to 102\.1 %, more than 100 %/);
  });

  it("whatever is printed, what comes out holds no more than the whole", () => {
    const printed = fc.dictionary(fc.constantFrom(...LABEL_TERMS), share);
    fc.assert(
      fc.property(printed, (terms) => {
        const stated = new Map(Object.entries(terms) as [LabelTerm, number][]);
        let total = 0;
        try {
          const { percent } = labelFrom(stated, { basis: "w/w", densityGPerMl: null, what: "It" });
          total = Object.values(percent).reduce((sum, value) => sum + value, 0);
        } catch (error) {
          expect((error as Error).name).toBe("BadInput");
        }
        // 15 elements rounded to a tenth of a percent.
        expect(total).toBeLessThanOrEqual(100 + 15 * 0.05 + 1e-9);
      }),
    );
  });
});
