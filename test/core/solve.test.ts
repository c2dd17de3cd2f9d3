/** Solved mixes: closest doses worked by hand, and sentences on what is not reached. */

import { describe, expect, it } from "vitest";
import type { ElementSymbol } from "../../src/core/elements.ts";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { type Balance, whyNotReached } from "../../src/core/shortfall.ts";
import { type Solved, type SolveTask, solveDoses } from "../../src/core/solve.ts";
import { refusal } from "./refusal.ts";

const feed = (name: string, label: string, densityGPerMl: number | null = null): Feed =>
  feedOf(name, parseLabel(label, densityGPerMl), densityGPerMl);

const whyOf = (solved: Solved, symbol: ElementSymbol) => solved.notReached.find((row) => row.symbol === symbol)?.why;

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

  it("only what the water or a feed in use states is reached", () => {
    const feeds = [feed("A", "N 10"), feed("B", "Ca 5")];
    const { reached } = solveDoses({ wanted: { N: 100, Ca: 0 }, feeds, water: { Na: 3 } });
    expect(Object.keys(reached).sort()).toEqual(["N", "Na"]);
  });

  it("1 % off counts as reached, a little more does not; a millionth of a mg/L may be wanted", () => {
    const off = (water: number) => solveDoses({ wanted: { N: 100 }, feeds: [], water: { N: water } }).notReached.length;
    expect([off(99), off(101), off(98.9), off(101.1)]).toEqual([0, 0, 1, 1]);
    expect(solveDoses({ wanted: { N: 0.000001 }, feeds: [], water: {} }).misfit).toBe(1);
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

describe("the sentence names what stands against more or less", () => {
  it("an unwanted element that a feed brings is over for the sake of the others, by hand: 5 of 0", () => {
    const solved = solveDoses({ wanted: { N: 100, Ca: 0 }, feeds: [feed("A", "N 10 Ca 1")], water: {} });
    expect(whyOf(solved, "Ca")).toBe("Calcium comes to 5 of 0 mg/L: less would leave too little nitrogen.");
  });

  const over = { wanted: 100, water: 0, reached: 150, off: -0.5 };
  const short = { wanted: 100, water: 0, reached: 50, off: 0.5 };
  const CA_SHORT: readonly Balance[] = [
    { symbol: "N", ...over },
    { symbol: "Ca", ...short },
    { symbol: "Cl", ...over },
    { symbol: "Mg", ...over, reached: 110, off: -0.1 },
  ];
  it.each([
    [
      "once, where two feeds bring it",
      [
        [1, 1, 0, 0],
        [2, 1, 0, 0],
      ],
      "nitrogen",
    ],
    [
      "in the usual order, whichever feed comes first",
      [
        [0, 1, 1, 0],
        [1, 1, 0, 0],
      ],
      "nitrogen or chlorine",
    ],
    // 1 · 0.5 of nitrogen against 2 · 0.1 of magnesium.
    ["the heaviest of a feed: its share times how far it is over", [[1, 1, 0, 2]], "nitrogen"],
    ["the heaviest, the other way round: 0.1 · 0.5 against 2 · 0.1", [[0.1, 1, 0, 2]], "magnesium"],
  ])("%s", (_, columns, name) => {
    const shares = columns.map((column) => ({ dose: 1, column }));
    expect(whyNotReached(1, CA_SHORT, shares)).toBe(
      `Calcium stays at 50 of 100 mg/L: more would bring too much ${name}.`,
    );
  });

  it("only feeds in use count where something is over", () => {
    const balances: readonly Balance[] = [
      { symbol: "N", ...short },
      { symbol: "Ca", ...over },
      { symbol: "Mg", ...short },
    ];
    const shares = [
      { dose: 1, column: [1, 1, 0] },
      { dose: 0, column: [0, 1, 1] },
    ];
    const why = whyNotReached(1, balances, shares);
    expect(why).toBe("Calcium comes to 150 of 100 mg/L: less would leave too little nitrogen.");
  });

  it("a water that brings all that is wanted by itself is named", () => {
    const balances: readonly Balance[] = [{ symbol: "Ca", wanted: 40, water: 40, reached: 50, off: -0.25 }];
    expect(whyNotReached(0, balances, [{ dose: 1, column: [0.1] }])).toBe(
      "The water alone brings 40 of 40 mg/L calcium.",
    );
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
