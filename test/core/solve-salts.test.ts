/** Solved mixes of real salts: the doses are the closest, and every sentence on what is not reached is true. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Amounts, ELEMENT_NAMES, ELEMENTS, type ElementSymbol } from "../../src/core/elements.ts";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { mixAmounts } from "../../src/core/mix.ts";
import { type Solved, type SolveTask, solveDoses } from "../../src/core/solve.ts";
import { drawn } from "../drawn.ts";
import { percentOf } from "./formula.ts";

const salt = (formula: string): Feed => feedOf(formula, { ...parseLabel("0-0-0"), percent: percentOf(formula) }, null);

/** ((reached − wanted) / wanted)², summed; a wanted 0 against 10 mg/L: the definition, written out again. */
function misfitOf(wanted: Amounts, reached: Amounts): number {
  let sum = 0;
  for (const symbol of ELEMENTS) {
    const goal = wanted[symbol];
    if (goal === undefined) continue;
    sum += (((reached[symbol] ?? 0) - goal) / (goal > 0 ? goal : 10)) ** 2;
  }
  return sum;
}

const FORMULAS = ["KNO3", "Ca(NO3)2.4H2O", "KH2PO4", "MgSO4.7H2O", "NH4H2PO4", "K2SO4", "NH4NO3", "CaCl2.2H2O"];
const TRACES = ["H3BO3", "MnSO4.H2O", "ZnSO4.7H2O", "CuSO4.5H2O", "Na2MoO4.2H2O", "FeSO4.7H2O"];

const tasks = fc.record({
  feeds: fc.subarray([...FORMULAS, ...TRACES], { minLength: 1 }).map((formulas) => formulas.map(salt)),
  wanted: fc
    .dictionary(
      fc.constantFrom(...ELEMENTS),
      fc.oneof(fc.constant(0), fc.double({ min: 0.5, max: 300, noNaN: true })),
      { minKeys: 1 },
    )
    .map((wanted): Amounts => wanted),
  water: fc
    .dictionary(
      fc.constantFrom<ElementSymbol>("Ca", "Mg", "S", "N", "Na"),
      fc.double({ min: 0, max: 120, noNaN: true }),
    )
    .map((water): Amounts => water),
});

describe("properties over real salts", () => {
  const solvedOf = (task: SolveTask): Solved | null => {
    try {
      return solveDoses(task);
    } catch (error) {
      expect((error as Error).name).toBe("BadInput");
      return null;
    }
  };

  /** Misfit with one dose changed by a little. */
  const nudged = (task: SolveTask, { doses }: Solved, at: number, by: number): number => {
    const parts = doses.map(({ feed: some, perLitre }, i) => ({
      feed: some,
      dose: perLitre + (i === at ? by : 0),
      unit: "g/L" as const,
    }));
    return misfitOf(task.wanted, mixAmounts(parts, task.water));
  };

  it("reached is what the doses mix to, and the misfit is its definition", () => {
    fc.assert(
      fc.property(tasks, (task) => {
        const solved = solvedOf(task);
        if (solved === null) return;
        const parts = solved.doses.map(({ feed: some, perLitre }) => ({
          feed: some,
          dose: perLitre,
          unit: "g/L" as const,
        }));
        const mixed = mixAmounts(parts, task.water);
        for (const symbol of ELEMENTS) expect(solved.reached[symbol] ?? 0).toBeCloseTo(mixed[symbol] ?? 0, 6);
        expect(solved.misfit).toBeCloseTo(misfitOf(task.wanted, mixed), 6);
      }),
    );
  });

  it("no dose moved up or down comes closer", () => {
    fc.assert(
      fc.property(tasks, (task) => {
        const solved = solvedOf(task);
        if (solved === null) return;
        solved.doses.forEach(({ perLitre }, i) => {
          for (const by of [1e-4, -1e-4]) {
            if (perLitre + by < 0) continue;
            expect(nudged(task, solved, i, by)).toBeGreaterThanOrEqual(solved.misfit * (1 - 1e-9) - 1e-12);
          }
        });
      }),
    );
  });

  it("every element off by more than 1 % is in the list, and no other", () => {
    fc.assert(
      fc.property(tasks, (task) => {
        const solved = solvedOf(task);
        if (solved === null) return;
        const off = ELEMENTS.filter((symbol) => {
          const goal = task.wanted[symbol];
          if (goal === undefined) return false;
          return Math.abs((solved.reached[symbol] ?? 0) - goal) > 0.01 * (goal > 0 ? goal : 10);
        });
        expect(solved.notReached.map(({ symbol }) => symbol)).toEqual(off);
      }),
    );
  });

  it("every sentence is true", () => {
    const symbolOf = (name: string) => ELEMENTS.find((symbol) => ELEMENT_NAMES[symbol] === name) as ElementSymbol;
    const seen = new Set<string>();
    fc.assert(
      fc.property(tasks, (task) => {
        const solved = solvedOf(task);
        if (solved === null) return;
        const { wanted, water } = task;
        const reached = (symbol: ElementSymbol) => solved.reached[symbol] ?? 0;
        for (const { symbol, why } of solved.notReached) {
          const holders = solved.doses.filter(({ feed: some }) => (some.label.percent[symbol] ?? 0) > 0);
          const [, names = ""] = /(?:too much|too little) (.+)\.$/.exec(why) ?? [];
          const named = names
            .split(/, | or /)
            .filter((name) => name !== "")
            .map(symbolOf);
          if (why.includes("none of these feeds holds")) {
            seen.add("none");
            expect(holders).toEqual([]);
          } else if (why.startsWith("The water alone")) {
            seen.add("water");
            expect(water[symbol] ?? 0).toBeGreaterThanOrEqual(wanted[symbol] ?? 0);
          } else if (why.includes("more would bring too much")) {
            seen.add("more");
            // Every feed that holds it also holds a named element, and that one is over already.
            expect(reached(symbol)).toBeLessThan(wanted[symbol] ?? 0);
            for (const { feed: some } of holders) {
              const harmed = named.filter((other) => (some.label.percent[other] ?? 0) > 0);
              expect(harmed.some((other) => reached(other) >= (wanted[other] ?? 0))).toBe(true);
            }
            for (const other of named) expect(reached(other)).toBeGreaterThanOrEqual(wanted[other] ?? 0);
          } else {
            seen.add("less");
            expect(why).toContain("less would leave too little");
            const inUse = holders.filter(({ perLitre }) => perLitre > 0);
            expect(inUse.length).toBeGreaterThan(0);
            for (const other of named) expect(reached(other)).toBeLessThanOrEqual(wanted[other] ?? 0);
            for (const { feed: some } of inUse) {
              expect(named.some((other) => (some.label.percent[other] ?? 0) > 0)).toBe(true);
            }
          }
        }
      }),
      { numRuns: drawn(1_000) },
    );
    expect([...seen].sort()).toEqual(["less", "more", "none", "water"]);
  });

  it("12 feeds × 12 elements take less than a millisecond, as a median", () => {
    const feeds = [...FORMULAS.slice(0, 6), ...TRACES].map(salt);
    const wanted = {
      N: 210,
      P: 31,
      K: 235,
      Ca: 200,
      Mg: 48.6,
      S: 64,
      Fe: 2,
      Mn: 0.5,
      Zn: 0.05,
      B: 0.5,
      Cu: 0.02,
      Mo: 0.011,
    };
    const times = Array.from({ length: 201 }, () => {
      const started = performance.now();
      solveDoses({ wanted, feeds, water: { Ca: 20 } });
      return performance.now() - started;
    }).sort((a, b) => a - b);
    expect(times[100]).toBeLessThan(1);
  });
});
