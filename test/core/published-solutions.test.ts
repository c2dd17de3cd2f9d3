/** The Hoagland & Arnon solutions from their salts, against the elements printed for them. */

import { describe, expect, it } from "vitest";
import { ELEMENTS, type ElementSymbol } from "../../src/core/elements.ts";
import { feedByName, readShelf } from "../../src/core/feeds.ts";
import { mixAmounts } from "../../src/core/mix.ts";
import { solveDoses } from "../../src/core/solve.ts";
import { gramsPerMole, percentOf } from "./formula.ts";
import { readReference } from "./reference.ts";

interface Solution {
  name: string;
  salts_mmol_L: Record<string, number>;
  elements_mg_L: Partial<Record<ElementSymbol, number>>;
}
interface Reference {
  micronutrientStock_g_L: Record<string, number>;
  micronutrientStock_mL_per_L: number;
  ironTartrate_mg_L: number;
  ironByHand_mg_L: number;
  solutions: Solution[];
}
const reference = readReference<Reference>("published-solutions.json");

const IRON_TARTRATE = "C12H12Fe2O18";
/** Formula behind each name of the stock; molybdic acid is sold as 85 % MoO3. */
const STOCK_FORMULA: Record<string, [string, number]> = {
  H3BO3: ["H3BO3", 1],
  "MnCl2.4H2O": ["MnCl2.4H2O", 1],
  "ZnSO4.7H2O": ["ZnSO4.7H2O", 1],
  "CuSO4.5H2O": ["CuSO4.5H2O", 1],
  "MoO3 in molybdic acid": ["MoO3", 0.85],
};

/** All salts as rows of a Feeds tab, with analyses from their formulas. */
function shelfOf({ salts_mmol_L }: Solution) {
  const formulas = [...Object.keys(salts_mmol_L), IRON_TARTRATE];
  const salts = formulas.map((formula) => ({ Feed: formula, ...percentOf(formula) }));
  const stock = Object.entries(STOCK_FORMULA).map(([name, [formula, share]]) => {
    const shares = Object.entries(percentOf(formula)).map(([symbol, percent]) => [symbol, percent * share]);
    return { Feed: name, ...Object.fromEntries(shares) };
  });
  return readShelf([...salts, ...stock].map((fields, i) => ({ fields, where: `row ${i + 2} of Feeds` })));
}

/** Grams in a litre of the finished solution. */
function dosesOf({ salts_mmol_L }: Solution): [string, number][] {
  const { micronutrientStock_g_L, micronutrientStock_mL_per_L, ironTartrate_mg_L } = reference;
  return [
    ...Object.entries(salts_mmol_L).map(([formula, mmol]): [string, number] => [
      formula,
      (mmol * gramsPerMole(formula)) / 1000,
    ]),
    ...Object.entries(micronutrientStock_g_L).map(([name, grams]): [string, number] => [
      name,
      (grams * micronutrientStock_mL_per_L) / 1000,
    ]),
    [IRON_TARTRATE, ironTartrate_mg_L / 1000],
  ];
}

/** Half of the last printed place: 48.6 → 0.05, 210 → 0.5. */
function rounding(printed: number): number {
  const decimals = /\.(\d+)$/.exec(String(printed))?.[1]?.length ?? 0;
  return 0.5 * 10 ** -decimals;
}

describe.each(reference.solutions)("Hoagland & Arnon 1950, Circular 347, $name", (solution) => {
  const shelf = shelfOf(solution);
  const mixed = mixAmounts(
    dosesOf(solution).map(([name, dose]) => ({ feed: feedByName(shelf, name), dose, unit: "g/L" })),
    {},
  );

  it("has every salt on the shelf", () => {
    expect(shelf.filter(({ feed }) => feed === null)).toEqual([]);
  });

  it.each(Object.entries(solution.elements_mg_L))("%s is %d mg/L to within rounding", (symbol, printed) => {
    expect(Math.abs((mixed[symbol as ElementSymbol] ?? 0) - printed)).toBeLessThanOrEqual(rounding(printed));
  });

  it("iron, which is not in the printed stock: 1 mL of 0.5 % iron tartrate brings what hand arithmetic gives", () => {
    expect(mixed.Fe).toBeCloseTo(reference.ironByHand_mg_L, 2);
  });

  it("covers all twelve elements", () => {
    expect(ELEMENTS.filter((symbol) => symbol !== "Fe" && solution.elements_mg_L[symbol] === undefined)).toEqual([]);
  });

  it("is found again from its elements: the doses of the recipe come back", () => {
    const feeds = dosesOf(solution).map(([name]) => feedByName(shelf, name));
    const solved = solveDoses({ wanted: mixed, feeds, water: {} });
    expect(solved.notReached).toEqual([]);
    expect(solved.misfit).toBeLessThan(1e-12);
    dosesOf(solution).forEach(([, grams], i) => {
      expect((solved.doses[i]?.perLitre ?? 0) / grams).toBeCloseTo(1, 6);
    });
  });
});
