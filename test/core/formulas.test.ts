/** Chemical formulas: atoms by hand, masses by the tests' own weights. */

import { describe, expect, it } from "vitest";
import { atomsIn, gramsPerMole, nutrientsIn, percentIn } from "../../src/core/formula.ts";
import { gramsPerMole as ownGramsPerMole, percentOf } from "./formula.ts";
import { refusal } from "./refusal.ts";

describe("atoms, by hand", () => {
  it.each([
    ["KNO3", { K: 1, N: 1, O: 3 }],
    ["5Ca(NO3)2·NH4NO3·10H2O", { Ca: 5, N: 12, O: 43, H: 24 }],
    ["(NH4)2HPO4", { N: 2, H: 9, P: 1, O: 4 }],
    ["Na2B4O7·10H2O", { Na: 2, B: 4, O: 17, H: 20 }],
    ["2Ca(NO3)12", { Ca: 2, N: 24, O: 72 }],
    ["Co", null],
    ["CO", { C: 1, O: 1 }],
    ["K(NO3)", { K: 1, N: 1, O: 3 }],
    ["2K(NO3)·12H2O", { K: 2, N: 2, O: 18, H: 24 }],
    ["", {}],
  ])("%s", (formula, atoms) => {
    if (atoms === null) expect(refusal(() => atomsIn(formula))).toContain(`"${formula}" cannot be read`);
    else expect(Object.fromEntries(atomsIn(formula))).toEqual(atoms);
  });

  it.each([
    ["kNO3", "kNO3"],
    ["KXx2", "Xx2"],
    ["Ca(NO3", "(NO3"],
    ["KNO3)", ")"],
    ["K NO3", " NO3"],
    ["\nKNO3", "\nKNO3"],
  ])("%s cannot be read from %s on", (formula, rest) => {
    expect(refusal(() => atomsIn(formula))).toBe(`The formula "${formula}" cannot be read from "${rest}" on.`);
  });
});

describe("masses and shares", () => {
  it.each(["KNO3", "Ca(NO3)2·4H2O", "MgSO4·7H2O", "NH4H2PO4", "Na2MoO4·2H2O", "FeSO4·7H2O"])("%s", (formula) => {
    const plain = formula.replace(/·/g, ".");
    expect(gramsPerMole(formula)).toBeCloseTo(ownGramsPerMole(plain), 9);
    const shares = percentOf(plain);
    for (const symbol of nutrientsIn(formula)) expect(percentIn(formula, symbol)).toBeCloseTo(shares[symbol] ?? 0, 9);
    expect(percentIn(formula, "Si")).toBe(0);
  });

  it("potassium nitrate is 101.10 g/mol and 38.67 % potassium (CRC Handbook, memory)", () => {
    expect(gramsPerMole("KNO3")).toBeCloseTo(101.1, 2);
    expect(percentIn("KNO3", "K")).toBeCloseTo(38.67, 2);
  });

  it("names nutrients in the order of all tables, and nothing else", () =>
    expect(nutrientsIn("5Ca(NO3)2·NH4NO3·10H2O")).toEqual(["N", "Ca"]));
});
