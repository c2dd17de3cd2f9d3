/** Reading cells: every way of writing a number that is taken, and every sentence for one that is not. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Cell, readCell } from "../../src/core/cell.ts";
import {
  checkNumber,
  type NumberWords,
  readChoice,
  readDay,
  readNumber,
  readNumberText,
  readText,
  readYesNo,
} from "../../src/core/reading.ts";
import { sayGiven, sayList, sayNumber } from "../../src/core/saying.ts";
import { refusal } from "./refusal.ts";

const cell = (raw: unknown): Cell => readCell(raw, () => null);
const day: Cell = { kind: "day", day: 20_513 };
const words: NumberWords = { what: "Ca in row 7 of Waters", unit: "mg/L" };

describe("readNumberText takes", () => {
  it.each([
    ["1.2", 1.2],
    ["1,2", 1.2],
    [" 1.2 mg/L", 1.2],
    ["1,2mg/l", 1.2],
    ["1.2 mg / L", 1.2],
    [".55", 0.55],
    ["12", 12],
    ["012", 12],
    ["-0.125", -0.125],
    ["−5", -5],
    ["+5", 5],
    [".5", 0.5],
    ["5.", 5],
    ["0,125", 0.125],
    ["1.2340", 1.234],
    ["1234", 1234],
    ["1234.567", 1234.567],
    ["00.125", 0.125],
  ])("%j as %d", (text, value) => {
    expect(readNumberText(text, words)).toBe(value);
  });

  it("a number with three decimals where the bound leaves one reading", () => {
    expect(readNumberText("1.234", { what: "N", max: 100 })).toBe(1.234);
    expect(readNumberText("6,125", { what: "pH", max: 14 })).toBe(6.125);
    expect(readNumberText("1.234", { what: "N", max: 1233 })).toBe(1.234);
    expect(readNumberText("1.234", { what: "N", min: 1235 })).toBe(1.234);
    expect(refusal(() => readNumberText("1.234", { what: "N", min: 1234, max: 1234 }))).toContain("two ways");
  });

  it("any plain decimal in either way of writing", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999_999 }), fc.integer({ min: 0, max: 99 }), (whole, hundredths) => {
        const decimals = String(hundredths).padStart(2, "0");
        const value = Number(`${whole}.${decimals}`);
        expect(readNumberText(`${whole}.${decimals}`, words)).toBe(value);
        expect(readNumberText(`${whole},${decimals} mg/L`, words)).toBe(value);
      }),
    );
  });
});

describe("readNumberText refuses", () => {
  const at = "Ca in row 7 of Waters is";
  it.each([
    ["1,234.5", `${at} "1,234.5". Leave out marks and spaces between the digits, and use one decimal point: 1234.5.`],
    ["1.234,5", `${at} "1.234,5". Leave out marks and spaces between the digits, and use one decimal point: 1234.5.`],
    [
      "1,234,567",
      `${at} "1,234,567". Leave out marks and spaces between the digits, and use one decimal point: 1234567.`,
    ],
    ["1'234.5", `${at} "1'234.5". Leave out marks and spaces between the digits, and use one decimal point: 1234.5.`],
    [
      "1,234,567.8",
      `${at} "1,234,567.8". Leave out marks and spaces between the digits, and use one decimal point: 1234567.8.`,
    ],
    [
      "1'234 567",
      `${at} "1'234 567". Leave out marks and spaces between the digits, and use one decimal point: 1234567.`,
    ],
    ["12.345", `${at} "12.345", which can be read in two ways. Type 12.3450 or 12345.`],
    ["1e+3", `${at} "1e+3". Write the number out, without a power of ten.`],
    ["1E-3", `${at} "1E-3". Write the number out, without a power of ten.`],
    ["e5", `${at} "e5". Give a plain number in mg/L, like 1.2.`],
    ["-", `${at} "-". Give a plain number in mg/L, like 1.2.`],
    ["12 grade5", `${at} "12 grade5". Give a plain number in mg/L, like 1.2.`],
    ["1 234", `${at} "1 234". Leave out marks and spaces between the digits, and use one decimal point: 1234.`],
    ["1,234", `${at} "1,234", which can be read in two ways. Type 1.2340 or 1234.`],
    ["1.234", `${at} "1.234", which can be read in two ways. Type 1.2340 or 1234.`],
    ["-1.234", `${at} "-1.234", which can be read in two ways. Type -1.2340 or -1234.`],
    ["1e3", `${at} "1e3". Write the number out, without a power of ten.`],
    ["12 ppm", `${at} "12 ppm". Give a plain number in mg/L, like 1.2.`],
    ["about 12", `${at} "about 12". Give a plain number in mg/L, like 1.2.`],
    ["n/a", `${at} "n/a". Give a plain number in mg/L, like 1.2.`],
    ["<0.1", `${at} "<0.1". Give a plain number in mg/L, like 1.2.`],
    ["12-14", `${at} "12-14". Give a plain number in mg/L, like 1.2.`],
  ])("%j", (text, sentence) => {
    expect(refusal(() => readNumberText(text, words))).toBe(sentence);
  });

  it("a unit where none is asked for, and digits without end", () => {
    expect(refusal(() => readNumberText("5 g", { what: "pH" }))).toBe('pH is "5 g". Give a plain number like 1.2.');
    expect(refusal(() => readNumberText("9".repeat(400), { what: "pH" }))).toBe(
      "pH has too many digits. Give a plain number like 1.2.",
    );
  });

  it("never gives back anything but a finite number", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[-+]?[\d.,' ]{0,12}(?:mg\/L|e5)?$/)), (text) => {
        let value = 0;
        try {
          value = readNumberText(text, words);
        } catch (error) {
          expect((error as Error).name).toBe("BadInput");
        }
        expect(Number.isFinite(value)).toBe(true);
      }),
    );
  });
});

describe("readNumber", () => {
  it("takes numbers and number texts, and gives null for a blank", () => {
    expect(readNumber(cell(85), words)).toBe(85);
    expect(readNumber(cell("85 mg/L"), words)).toBe(85);
    expect(readNumber(cell("  "), words)).toBeNull();
    expect([0, 14].map((pH) => readNumber(cell(pH), { what: "pH", min: 0, max: 14 }))).toEqual([0, 14]);
  });

  it.each([
    [cell(-1), { min: 0 }, "Ca is -1 mg/L. Give a number of 0 mg/L or more."],
    [cell(15), { min: 0, max: 14 }, "Ca is 15 mg/L. Give a number from 0 to 14 mg/L."],
    [cell(15), { max: 14 }, "Ca is 15 mg/L. Give a number of at most 14 mg/L."],
    [cell(true), {}, "Ca is yes. Give a number in mg/L."],
    [cell("#N/A"), {}, "Ca is an error cell (#N/A). Mend that cell or clear it."],
    [cell(Number.NaN), {}, "Ca is an error cell (NaN). Mend that cell or clear it."],
    [cell({}), {}, "Ca is an error cell (an error). Mend that cell or clear it."],
    [
      day,
      {},
      "Ca is the date 2026-03-01. Give a number in mg/L; if you typed one, the sheet took it for a date: set the cell's format to number and type it again.",
    ],
  ])("refuses %j within %j", (bad, bounds, sentence) => {
    expect(refusal(() => readNumber(bad, { what: "Ca", unit: "mg/L", ...bounds }))).toBe(sentence);
  });

  it("what is no number at all is refused, wherever it was worked out", () => {
    expect(refusal(() => checkNumber(Number.NaN, { what: "Ca", unit: "mg/L" }))).toBe(
      "Ca is no number. Give a number in mg/L.",
    );
  });

  it("names no unit where there is none", () => {
    expect(refusal(() => readNumber(cell(15), { what: "pH", min: 0, max: 14 }))).toBe(
      "pH is 15. Give a number from 0 to 14.",
    );
    expect(refusal(() => readNumber(cell(false), { what: "pH" }))).toBe("pH is no. Give a number.");
  });
});

describe("readDay", () => {
  it("takes a date cell and an ISO text, and gives null for a blank", () => {
    expect(readDay(day, "Date")).toBe(20_513);
    expect(readDay(cell("2026-03-01"), "Date")).toBe(20_513);
    expect(readDay(cell(""), "Date")).toBeNull();
  });

  it.each([
    [cell("3/4/2026"), 'Date is "3/4/2026". Give a date, or a text like 2026-03-01 (year, month, day).'],
    [
      cell("2026-02-30"),
      'Date is "2026-02-30", a day that does not exist. Give a date, or a text like 2026-03-01 (year, month, day).',
    ],
    [cell(46_082), "Date is the number 46082. Give a date: set the cell's format to date, or type it like 2026-03-01."],
    [cell(true), "Date is yes. Give a date like 2026-03-01."],
    [cell(false), "Date is no. Give a date like 2026-03-01."],
    [cell("on 2026-02-01"), 'Date is "on 2026-02-01". Give a date, or a text like 2026-03-01 (year, month, day).'],
    [cell("2026-02-01 at 8"), 'Date is "2026-02-01 at 8". Give a date, or a text like 2026-03-01 (year, month, day).'],
    [cell("#REF!"), "Date is an error cell (#REF!). Mend that cell or clear it."],
  ])("refuses %j", (bad, sentence) => {
    expect(refusal(() => readDay(bad, "Date"))).toBe(sentence);
  });
});

describe("readYesNo, readChoice, readText", () => {
  it("take what they should", () => {
    expect([true, "Yes", " y ", "TRUE"].map((raw) => readYesNo(cell(raw), "x"))).toEqual([true, true, true, true]);
    expect([false, "No", "n", "false"].map((raw) => readYesNo(cell(raw), "x"))).toEqual([false, false, false, false]);
    expect(readYesNo(cell(""), "x")).toBeNull();
    expect(readChoice(cell("ML / l"), { what: "Unit", choices: ["g/L", "mL/L"] })).toBe("mL/L");
    expect(readChoice(cell(500), { what: "Scale", choices: ["500", "700"] })).toBe("500");
    expect(readChoice(cell(""), { what: "Unit", choices: ["g/L"] })).toBeNull();
    expect(readText(cell(12), "Plant")).toBe("12");
    expect(readText(cell(" Fern "), "Plant")).toBe("Fern");
    expect(readText(cell(""), "Plant")).toBeNull();
  });

  it.each([
    [() => readYesNo(cell("maybe"), "Disturbs roots"), 'Disturbs roots is "maybe". Write yes or no.'],
    [() => readYesNo(cell(1), "Disturbs roots"), "Disturbs roots is 1. Write yes or no."],
    [() => readYesNo(day, "Disturbs roots"), "Disturbs roots is the date 2026-03-01. Write yes or no."],
    [() => readYesNo(cell("#N/A"), "x"), "x is an error cell (#N/A). Mend that cell or clear it."],
    [
      () => readChoice(cell("cup"), { what: "Unit", choices: ["g/L", "mL/L", "g/gal"] }),
      'Unit is "cup". Give g/L, mL/L or g/gal.',
    ],
    [() => readChoice(cell(true), { what: "Unit", choices: ["g/L"] }), "Unit is a ticked box. Give g/L."],
    [
      () => readChoice(cell("#N/A"), { what: "Unit", choices: ["g/L"] }),
      "Unit is an error cell (#N/A). Mend that cell or clear it.",
    ],
    [() => readText(cell(false), "Plant"), "Plant is an empty tick box. Give it as text, with ' in front if need be."],
    [() => readText(day, "Plant"), "Plant is the date 2026-03-01. Give it as text, with ' in front if need be."],
    [() => readText(cell("#N/A"), "Plant"), "Plant is an error cell (#N/A). Mend that cell or clear it."],
  ])("refuse with a sentence", (call, sentence) => {
    expect(refusal(call)).toBe(sentence);
  });
});

describe("numbers in sentences", () => {
  it.each([
    [1234.5, "1235"],
    [48.61, "48.6"],
    [0.0113, "0.0113"],
    [0.5, "0.5"],
    [0, "0"],
    [0.000001, "0.000001"],
    [0.00000012, "0"],
    [-2.345, "-2.35"],
    [200, "200"],
  ])("%d is said %s", (value, said) => {
    expect(sayNumber(value)).toBe(said);
  });

  it("given numbers are said as given, lists with commas", () => {
    expect(sayGiven(0.0000005)).toBe("0.0000005");
    expect(sayGiven(1e-12)).toBe("0.000000000001");
    expect(sayGiven(1e-16)).toBe("1e-16");
    expect(sayGiven(0)).toBe("0");
    expect(sayGiven(12.5)).toBe("12.5");
    expect(sayList(["a"], "or")).toBe("a");
    expect(sayList(["a", "b"], "or")).toBe("a or b");
    expect(sayList(["a", "b", "c"], "and")).toBe("a, b and c");
  });
});
