/** Rows of waters and solutions: each amount under any heading that says it plainly, in the unit that was asked for. */

import { describe, expect, it } from "vitest";
import { readComposition, readReport, readSolution } from "../../src/functions/chemistry-tables.ts";
import type { TableRow } from "../../src/functions/record.ts";
import { readTable } from "../../src/functions/table.ts";
import { outcome } from "./cells.ts";

function rowOf(amounts: Readonly<Record<string, unknown>>): TableRow {
  const table = readTable([Object.keys(amounts), Object.values(amounts)], "waters", [], () => null);
  return { kind: "row", table, row: 0 };
}
/** Within the rounding of the weights below. */
const near = (value: number) => expect.closeTo(value, 2) as number;
const told = (work: () => unknown): unknown => {
  try {
    return work();
  } catch (error) {
    return error;
  }
};

// CIAAW 2021, g/mol: N 14.007, NH4 18.039, NO3 62.004, P 30.974, PO4 94.970, S 32.06, SO4 96.056, B 10.81,
// H3BO3 61.831, HCO3 61.016; alkalinity as CaCO3 50.043 mg/meq.
const ONE_MMOL = { NH4: 18.039, NO3: 62.004, SO4: 96.056, PO4: 94.97, H3BO3: 61.831 } as const;

describe("a composition in ions", () => {
  it.each<[heading: string, given: number, ion: keyof typeof ONE_MMOL]>([
    ["NH4-N", 14.007, "NH4"],
    ["NO3-N", 14.007, "NO3"],
    ["S", 32.06, "SO4"],
    ["PO4-P", 30.974, "PO4"],
    ["P", 30.974, "PO4"],
    ["B", 10.81, "H3BO3"],
  ])("turns %s %f mg/L into %s; in mmol/L one is one", (heading, given, ion) => {
    expect(readComposition(rowOf({ [heading]: given }), "mg/L")).toEqual({ [ion]: near(ONE_MMOL[ion]) });
    expect(readComposition(rowOf({ [heading]: 1.5 }), "mmol/L")).toEqual({ [ion]: 1.5 });
  });

  it("takes HCO3 for the alkalinity only where that is not given", () => {
    expect(readComposition(rowOf({ HCO3: 61.016 }), "mg/L")).toEqual({ Alkalinity: near(50.043) });
    expect(readComposition(rowOf({ HCO3: 61.016, Alkalinity: 80 }), "mg/L")).toEqual({ Alkalinity: 80 });
    expect(readComposition(rowOf({ HCO3: 2 }), "mmol/L")).toEqual({ Alkalinity: 2 });
    // Anions alone: all of the charge is on one side.
    expect(outcome("WATER_BALANCE", [["HCO3"], [61]])).toEqual([[-100]]);
  });

  it("lets alkalinity fall below 0, and nothing else", () => {
    expect(readComposition(rowOf({ Alkalinity: -5 }), "mg/L")).toEqual({ Alkalinity: -5 });
    expect(told(() => readComposition(rowOf({ Ca: -5 }), "mg/L"))).toMatchObject({ code: "out-of-bounds" });
  });

  it("takes each unit after its number: alkalinity is in meq/L where ions are in mmol/L", () => {
    const typed = { Ca: "2 mmol/L", Alkalinity: "4 meq/L" };
    expect(readComposition(rowOf(typed), "mmol/L")).toEqual({ Ca: 2, Alkalinity: 4 });
    expect(readComposition(rowOf({ HCO3: "4 meq/L" }), "mmol/L")).toEqual({ Alkalinity: 4 });
    expect(readComposition(rowOf({ Ca: "2 mg/L", Alkalinity: "4 mg/L" }), "mg/L")).toEqual({ Ca: 2, Alkalinity: 4 });
    expect(told(() => readComposition(rowOf({ Alkalinity: "4 mmol/L" }), "mmol/L"))).toMatchObject({
      name: "BadInput",
    });
  });

  it("refuses a row without any amount", () => {
    expect(told(() => readComposition(rowOf({ Water: "Tap", Ca: "" }), "mg/L"))).toMatchObject({ code: "no-amounts" });
    expect(told(() => readSolution(rowOf({ Feed: "x", K: "" })))).toMatchObject({ code: "no-amounts" });
  });
});

describe("a report", () => {
  it("has bicarbonate with its carbonate, else alkalinity, else carbonate alone", () => {
    expect(readReport(rowOf({ Na: 1, HCO3: "61 mg/L", CO3: 3 }))).toStrictEqual({ Na: 1, HCO3: 61, CO3: 3 });
    expect(readReport(rowOf({ Na: 1, HCO3: 61 }))).toStrictEqual({ Na: 1, HCO3: 61 });
    expect(readReport(rowOf({ Na: 1, Alkalinity: 50, CO3: 3 }))).toStrictEqual({ Na: 1, alkalinityMgCaCO3L: 50 });
    expect(readReport(rowOf({ Na: 1, CO3: 3 }))).toStrictEqual({ Na: 1, CO3: 3 });
    expect(readReport(rowOf({ Na: 1, B: 1 }))).toStrictEqual({ Na: 1 });
  });
});

describe("a solution in elements", () => {
  it("reads ions as well", () => {
    expect(readSolution(rowOf({ ...ONE_MMOL, HCO3: 61.016 }))).toEqual({
      amounts: { N: near(28.014), P: near(30.974), S: near(32.06), B: near(10.81) },
      nitrogen: { nitrate: near(14.007), ammonium: near(14.007), urea: null },
      alkalinityMgCaCO3L: near(50.043),
    });
  });

  it.each<[stated: number | "", nitrate: number, ammonium: number, urea: number, counted: number]>([
    ["", 80, 10, 5, 95],
    [100, 80, 10, 5, 100],
    // Forms may add up to 2 % more than N, which is rounding; then they count.
    [100, 90, 10, 1, 101],
    [100, 90, 10, 2, 102],
  ])("N %s and its forms %f, %f, %f are %f mg/L", (N, nitrate, ammonium, urea, counted) => {
    const read = readSolution(rowOf({ N, "NO3-N": nitrate, "NH4-N": ammonium, "Urea-N": urea }));
    expect(read.amounts).toEqual({ N: counted });
    expect(read.nitrogen).toEqual({ nitrate, ammonium, urea });
  });

  it("refuses forms that are more than N", () => {
    const forms = { N: 100, "NO3-N": 90, "NH4-N": 10, "Urea-N": 3 };
    expect(told(() => readSolution(rowOf(forms)))).toMatchObject({ code: "nitrogen-forms" });
  });

  it("takes the first of two headings that agree within 2 % of the larger, and refuses those that do not", () => {
    const amount = (P: number, other: number) => told(() => readSolution(rowOf({ P, "PO4-P": other })).amounts);
    expect(amount(98, 100)).toEqual({ P: 98 });
    expect(amount(100, 98)).toEqual({ P: 100 });
    expect(amount(97.9, 100)).toMatchObject({ code: "two-values", message: expect.stringMatching(/100 .*97\.9 /) });
    expect(amount(100, 97.9)).toMatchObject({ code: "two-values" });
  });

  it("may be alkalinity alone, and is without it where none is given", () => {
    expect(readSolution(rowOf({ HCO3: 61.016 }))).toMatchObject({ amounts: {}, alkalinityMgCaCO3L: near(50.043) });
    expect(readSolution(rowOf({ Alkalinity: 40, HCO3: 61 })).alkalinityMgCaCO3L).toBe(40);
    expect(readSolution(rowOf({ K: 1 }))).not.toHaveProperty("alkalinityMgCaCO3L");
  });
});
