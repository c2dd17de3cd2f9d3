/** Solved mixes: closest doses, and sentences on what is not reached that are true. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Amounts, ELEMENT_NAMES, ELEMENTS, type ElementSymbol } from "../../src/core/elements.ts";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { mixAmounts } from "../../src/core/mix.ts";
import { type Solved, type SolveTask, solveDoses } from "../../src/core/solve.ts";
import { percentOf } from "./formula.ts";
import { refusal } from "./refusal.ts";

const feed = (name: string, label: string, densityGPerMl: number | null = null): Feed =>
  feedOf(name, parseLabel(label, densityGPerMl), densityGPerMl);

const salt = (formula: string): Feed => feedOf(formula, { ...parseLabel("0-0-0"), percent: percentOf(formula) }, null);

const whyOf = (solved: Solved, symbol: ElementSymbol) => solved.notReached.find((row) => row.symbol === symbol)?.why;

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

describe("closest doses", () => {
  it("one feed, worked by hand: the dose that shares the error", () => {
    // 1 g/L brings N 100, K 50. Wanted N 100, K 100: least (d − 1)² + (d/2 − 1)², so d = 1.5 / 1.25 = 1.2.
    const solved = solveDoses({ wanted: { N: 100, K: 100 }, feeds: [feed("A", "N 10 K 5 elemental")], water: {} });
    expect(solved.doses[0]?.perLitre).toBeCloseTo(1.2, 12);
    expect(solved.reached.N).toBeCloseTo(120, 9);
    expect(solved.misfit).toBeCloseTo(0.2, 12);
    expect(whyOf(solved, "N")).toBe("Nitrogen comes to 120 of 100 mg/L: less would leave too little potassium.");
    expect(whyOf(solved, "K")).toBe("Potassium stays at 60 of 100 mg/L: more would bring too much nitrogen.");
  });

  it("a wanted 0 counts against 10 mg/L, by hand: N 100 wanted, Ca 0 wanted, the feed brings 100 and 10", () => {
    // (d − 1)² + (10 d / 10)²: d = 1/2.
    const solved = solveDoses({ wanted: { N: 100, Ca: 0 }, feeds: [feed("A", "N 10 Ca 1")], water: {} });
    expect(solved.doses[0]?.perLitre).toBeCloseTo(0.5, 12);
  });

  it("the water counts first, and a blank of the target does not count", () => {
    const solved = solveDoses({ wanted: { Ca: 100 }, feeds: [feed("A", "N 15 Ca 19")], water: { Ca: 43, Na: 20 } });
    expect(solved.doses[0]?.perLitre).toBeCloseTo(0.3, 12);
    expect(solved.reached).toMatchObject({ Ca: 100, Na: 20 });
    expect(solved.notReached).toEqual([]);
  });

  it("liquids are dosed in mL, solids in g, feeds not needed stand with 0", () => {
    const feeds = [feed("L", "N 10", 1.25), feed("V", "K2O 10 w/v"), feed("Z", "Ca 5"), feed("S", "Mg 10")];
    const { doses } = solveDoses({ wanted: { N: 125, Mg: 50 }, feeds, water: {} });
    expect(doses.map(({ unit }) => unit)).toEqual(["mL", "mL", "g", "g"]);
    expect(doses.map(({ perLitre }) => Number(perLitre.toFixed(9)))).toEqual([1, 0, 0, 0.5]);
  });

  it("of feeds that are alike the first is used", () => {
    const feeds = [feed("A", "N 10"), feed("B", "N 10"), feed("C", "N 20")];
    const { doses } = solveDoses({ wanted: { N: 100 }, feeds, water: {} });
    expect(doses.map(({ perLitre }) => perLitre)).toEqual([1, 0, 0]);
  });

  it("without feeds, what the water holds is what is reached", () => {
    const solved = solveDoses({ wanted: { N: 100 }, feeds: [], water: { N: 4 } });
    expect(solved.doses).toEqual([]);
    expect(whyOf(solved, "N")).toBe("Nitrogen stays at 4 of 100 mg/L: none of these feeds holds nitrogen.");
  });
});

describe("what is not reached says why", () => {
  it("none of the feeds holds it", () => {
    const solved = solveDoses({ wanted: { N: 100, Ca: 200 }, feeds: [feed("A", "N 10")], water: { Ca: 60 } });
    expect(whyOf(solved, "Ca")).toBe("Calcium stays at 60 of 200 mg/L: none of these feeds holds calcium.");
  });

  it("the water alone is over", () => {
    const solved = solveDoses({ wanted: { N: 100, Ca: 40 }, feeds: [feed("A", "N 10")], water: { Ca: 85 } });
    expect(whyOf(solved, "Ca")).toBe("The water alone brings 85 of 40 mg/L calcium.");
  });

  it("a wanted 0 that the water holds", () => {
    const solved = solveDoses({ wanted: { Ca: 0 }, feeds: [], water: { Ca: 85 } });
    expect(whyOf(solved, "Ca")).toBe("The water alone brings 85 of 0 mg/L calcium.");
  });

  it("two feeds that hold it, each with its own harm", () => {
    const feeds = [feed("A", "Ca 10 N 10"), feed("B", "Ca 10 Cl 10")];
    const solved = solveDoses({ wanted: { Ca: 200, N: 10, Cl: 10 }, feeds, water: {} });
    expect(whyOf(solved, "Ca")).toMatch(/mg\/L: more would bring too much nitrogen or chlorine\.$/);
  });
});

describe("refused tasks", () => {
  it.each<[SolveTask, string]>([
    [{ wanted: {}, feeds: [], water: {} }, "The target names no element. Give mg/L for at least one."],
    [{ wanted: { N: -5 }, feeds: [], water: {} }, "The target: N is -5 mg/L. Give a number from 0 to 1000000 mg/L."],
    [
      { wanted: { N: Number.NaN }, feeds: [], water: {} },
      "The target: N is no number. Give a number from 0 to 1000000 mg/L.",
    ],
    [
      { wanted: { N: 1e-7 }, feeds: [], water: {} },
      "The target: N is 0.0000001 mg/L. Give 0, or 0.000001 mg/L or more.",
    ],
    [
      { wanted: { N: 100 }, feeds: [], water: { Ca: -5 } },
      "The water: Ca is -5 mg/L. Give a number from 0 to 1000000 mg/L.",
    ],
    [
      { wanted: { N: 1000 }, feeds: [feed("Dust", "N 0.001")], water: {} },
      "Dust is so weak that 100000 g would go into each litre. Leave it out of the mix.",
    ],
  ])("%j", (task, sentence) => {
    expect(refusal(() => solveDoses(task))).toBe(sentence);
  });
});

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
      { numRuns: 1_000 },
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
