/** Feeds in formulas: labels from cells and tables, recipes, targets, and feeds that may not enter. */

import { describe, expect, it } from "vitest";
import { call, date, outcome } from "./cells.ts";

const column = (...values: unknown[]): unknown[][] => values.map((value) => [value]);

describe("labels", () => {
  it("says how to type a grade that became a date", () => {
    const told = outcome("FEED_PPM", date("2010-05-05"), 1) as string;
    expect(told).toContain("is the date 2010-05-05");
    expect(told).toContain("'10-5-5");
    expect(told).toContain("plain text");
    expect(outcome("FEED_PPM", column("10-0-0", date("2010-05-05")), 1, "", "N")).toEqual([
      [100],
      [expect.stringMatching(/^\? .*date 2010-05-05/)],
    ]);
  });

  it("counts P2O5 and K2O unless the text says elemental, and w/v as grams in 100 mL", () => {
    // CIAAW 2021: P2O5 holds 0.43643 P, K2O 0.83015 K.
    const [[p, k]] = call("FEED_PPM", ["0-10-10", 1, "g/L", "P K"]) as [[number, number]];
    expect(p).toBeCloseTo(43.643, 3);
    expect(k).toBeCloseTo(83.015, 3);
    expect(outcome("FEED_PPM", "0-10-10 elemental", 1, "g/L", "P K")).toEqual([[100, 100]]);
    expect(outcome("FEED_PPM", "0-10-10 elemental w/v", 1, "mL/L", "P K")).toEqual([[100, 100]]);
  });

  it("gives nothing for an element the label does not state, and 0 where it states 0", () => {
    expect(outcome("FEED_PPM", "10-0-0", 1, "", "N P Ca")).toEqual([[100, 0, ""]]);
    expect(outcome("FEED_PPM", "10-0-0", 1, "", "Ca")).toBe("");
  });

  it.each([
    ["40-40-40", 1, /120.*100 %/],
    ["N 10 NO3-N 4 NH4-N 4 P2O5 5 K2O 5", 1, /8 %.*10 %/],
    ["10-10-10 P 9", 1, /P2O5 10 % is 4\.36 % P.*P 9 %/],
  ])("refuses %s with both numbers in the sentence", (label, dose, sentence) => {
    expect(outcome("FEED_PPM", label, dose)).toMatch(sentence);
  });

  it("asks for a density where a volume meets a label by weight, and takes it from the fifth argument", () => {
    expect(outcome("FEED_PPM", "10-0-0", 1, "mL/L", "N")).toMatch(/dose of this feed in mL\/L .*density in g\/mL/);
    expect(outcome("FEED_PPM", "10-0-0", 1, "mL/L", "N", 1.2)).toBeCloseTo(120, 9);
    expect(outcome("FEED_PPM", "10-0-0", 1, "mL/L", "N", 12)).toBe(
      "throws: density is 12 g/mL. Give a number from 0.3 to 3 g/mL.",
    );
  });

  it("refuses negative and absurd doses, unknown units and unknown elements", () => {
    expect(outcome("FEED_PPM", "10-5-5", -1)).toMatch(/^throws: dose is -1 g\/L/);
    expect(outcome("FEED_PPM", "10-5-5", 5000)).toMatch(/5000 g\/L, more than a litre of water can take up/);
    expect(outcome("FEED_PPM", "10-5-5", 1, "cups")).toMatch(/^throws: unit is "cups"\. Give g\/L, mL\/L,/);
    expect(outcome("FEED_PPM", "10-5-5", 1, "", "N Q")).toMatch(/"Q" is no element/);
  });
});

describe("a table of feeds as label", () => {
  const feeds = [
    ["Feed", "N", "P2O5", "Density", "Origin", "Note", "Analysis published"],
    ["Salt", 10, 5, "", "", date("2026-01-01"), ""],
    ["", "", "", "", "", "", ""],
    ["Fish water", 5, 1, 1.1, "organic", "", ""],
    ["Secret", 5, 1, "", "", "", "no"],
    ["Empty", "", "", "", "", "", ""],
    ["Liquid", 10, 0, 1.25, "mineral", "", "yes"],
  ];

  it("answers a row for each feed, with the reason where one may not enter", () => {
    expect(outcome("FEED_PPM", feeds, 1, "g/L", "N")).toEqual([
      [100],
      [""],
      [expect.stringMatching(/^\? Fish water is organic/)],
      [expect.stringMatching(/^\? Secret has no published analysis/)],
      [expect.stringMatching(/^\? Empty has nothing on its label/)],
      [100],
    ]);
  });

  it("takes the density of its own column first, the argument where that is blank", () => {
    const some = [feeds[0], feeds[1], feeds[6]] as unknown[][];
    expect(outcome("FEED_PPM", some, 1, "mL/L", "N", 2)).toEqual(column(200, 125));
  });

  it("takes one dose for each feed, the first dose for the first feed", () => {
    const some = [feeds[0], feeds[1], feeds[6]] as unknown[][];
    expect(outcome("FEED_PPM", some, column(2, 3), "g/L", "N")).toEqual(column(200, 300));
  });

  it("needs no names", () => {
    expect(
      outcome(
        "FEED_PPM",
        [
          ["N", "K"],
          [10, 2],
          ["x", 2],
        ],
        1,
        "",
        "N",
      ),
    ).toEqual([[100], [expect.stringMatching(/^\? N in row 3 of label is "x"/)]]);
  });
});

describe("recipes", () => {
  const feeds = [
    ["Feed", "N", "K", "Origin"],
    ["Salt A", 10, "", ""],
    ["Salt B", "", 20, ""],
    ["Bad salt", "lots", "", ""],
    ["Worm tea", 1, "", "organic"],
    ["Twin", 1, "", ""],
    ["twin", 2, "", ""],
  ];
  const mix = (rows: unknown[][], water: unknown = "", elements = "N K Ca") =>
    outcome("FEED_MIX", feeds, [["Feed", "Dose", "Unit"], ...rows], water, elements);

  it("adds up the feeds and the water; one element gives one number", () => {
    const water = [
      ["Water", "Ca", "K", "NO3-N", "SO4", "Note"],
      ["Tap", 80, 2, 1, "", "x"],
    ];
    expect(
      mix(
        [
          ["salt a", 1, "g/L"],
          ["SALT B", 0.5, "g/L"],
        ],
        water,
      ),
    ).toEqual([[101, 102, 80]]);
    expect(mix([["Salt A", 1, "g/L"]])).toEqual([[100, "", ""]]);
    expect(mix([["Salt A", 1, "g/L"]], "", "N")).toBe(100);
  });

  it("minds only the feeds that the recipe names", () => {
    expect(mix([["Bad salt", 1, "g/L"]])).toMatch(/N in row 4 of feeds is "lots"/);
    expect(mix([["Worm tea", 1, "g/L"]])).toMatch(/Worm tea is organic/);
    expect(mix([["Twin", 1, "g/L"]])).toMatch(/Two feeds are called twin/i);
    expect(mix([["Salt C", 1, "g/L"]])).toMatch(/"Salt C" is no feed/);
  });

  it("names row and column of what is wrong in the recipe", () => {
    expect(mix([["Salt A", "much", "g/L"]])).toMatch(/Dose in row 2 of recipe is "much"/);
    expect(
      mix([
        ["", "", ""],
        ["Salt A", 1, "spoons"],
      ]),
    ).toMatch(/Unit in row 3 of recipe is "spoons"/);
    expect(mix([["Salt A", -1, "g/L"]])).toMatch(/Dose in row 2 of recipe is -1/);
    expect(mix([["Salt A", new Error("#N/A"), "g/L"]])).toMatch(/Dose in row 2 of recipe is an error cell/);
    expect(mix([["Salt A", date("2026-03-01"), "g/L"]])).toMatch(/Dose in row 2 of recipe is "2026-03-01"/);
  });

  it("counts sulfate in the water as sulfur", () => {
    // CIAAW 2021: S is 32.06 of 96.056 g/mol.
    expect(mix([["Salt A", 1, "g/L"]], [["SO4"], [30]], "S")).toBeCloseTo((30 * 32.06) / 96.056, 3);
  });

  it.each(["Alkalinity", "EC", "pH", "Water"])("names what cannot be read under %s of the water", (heading) => {
    expect(
      mix(
        [["Salt A", 1, "g/L"]],
        [
          ["Ca", heading],
          [1, "#N/A"],
        ],
      ),
    ).toMatch(`throws: ${heading} in row 2 of water is an error cell`);
  });

  it("refuses a water table that holds no water, or two", () => {
    expect(mix([["Salt A", 1, "g/L"]], [["Feed"], ["x"]])).toMatch(/water has none of the columns N, P, K/);
    expect(mix([["Salt A", 1, "g/L"]], [["Ca"], [1], [2]])).toMatch(/water holds 2 rows/);
    expect(mix([["Salt A", 1, "g/L"]], [["Ca"], ["hard"]])).toMatch(/Ca in row 2 of water is "hard"/);
  });
});

describe("doses for a target", () => {
  const feeds = [
    ["Feed", "N", "K", "Origin"],
    ["Salt A", 10, "", ""],
    ["Worm tea", 1, "", "organic"],
    ["Salt B", "", 20, ""],
  ];
  const target = [
    ["Target", "N", "K"],
    ["Weak", 50, 40],
  ];

  it("lists the doses in the order of the feeds, then those that may not enter and why", () => {
    expect(outcome("FEED_SOLVE", target, feeds, "", "20 L")).toEqual([
      ["Feed", "Dose", "Unit", "Batch"],
      ["Salt A", expect.closeTo(0.5, 9), "g/L", expect.closeTo(10, 9)],
      ["Salt B", expect.closeTo(0.2, 9), "g/L", expect.closeTo(4, 9)],
      ["", "", "", expect.stringMatching(/^\? Worm tea is organic/)],
    ]);
  });

  it("counts the water first and never asks for less than nothing", () => {
    const water = [
      ["N", "K"],
      [20, 60],
    ];
    const rows = outcome("FEED_SOLVE", target, feeds, water) as unknown[][];
    expect(rows.slice(1, 3)).toEqual([
      ["Salt A", expect.closeTo(0.3, 9), "g/L", ""],
      ["Salt B", 0, "g/L", ""],
    ]);
  });

  it("passes over blank rows among the feeds, and names a target that cannot be read", () => {
    const gap = [feeds[0], feeds[1], ["", "", "", ""], feeds[3]];
    expect((outcome("FEED_SOLVE", target, gap) as unknown[][]).map(([name]) => name)).toEqual([
      "Feed",
      "Salt A",
      "Salt B",
    ]);
    expect(
      outcome(
        "FEED_SOLVE",
        [
          ["Target", "N"],
          ["#N/A", 50],
        ],
        feeds,
      ),
    ).toMatch(/^throws: Target in row 2 of target is an error cell/);
  });

  it("makes a table that FEED_MIX takes as its recipe", () => {
    const recipe = call("FEED_SOLVE", [target, feeds]);
    const [[n, k]] = call("FEED_MIX", [feeds, recipe, "", "N K"]) as [[number, number]];
    expect(n).toBeCloseTo(50, 9);
    expect(k).toBeCloseTo(40, 9);
  });

  it("doses a liquid in mL", () => {
    const liquid = [
      ["Feed", "Basis", "N"],
      ["Drops", "w/v", 5],
    ];
    expect(outcome("FEED_SOLVE", [["N"], [50]], liquid, "", 2)).toEqual([
      ["Feed", "Dose", "Unit", "Batch"],
      ["Drops", expect.closeTo(1, 9), "mL/L", expect.closeTo(2, 9)],
    ]);
  });

  // By hand: 50 mg/L N wants 0.5 g/L of Salt A, 40 mg/L K 0.2 g/L of Salt B; in 7 L 3.5 and 1.4 g, each alone.
  it.each([
    [0.8, 3.2, 1.6],
    [0.3, 3.6, 1.5],
    [0.1, 3.5, 1.4],
  ])("with a step of %f g the batch holds whole steps: the nearest of them", (step, a, b) => {
    const rows = outcome("FEED_SOLVE", target, feeds, "", 7, step) as unknown[][];
    expect(rows.slice(1, 3).map((row) => row[3])).toEqual([a, b]);
    for (const [, dose, , batch] of rows.slice(1, 3)) expect(dose).toBeCloseTo((batch as number) / 7, 12);
  });

  it("a step wants litres, and is above 0", () => {
    expect(outcome("FEED_SOLVE", target, feeds, "", "", 0.1)).toBe(
      "throws: step is 0.1 g or mL for the whole batch. Give litres as well.",
    );
    expect(outcome("FEED_SOLVE", target, feeds, "", 7, 0)).toMatch(/^throws: step is 0/);
  });

  it("refuses a target without numbers, feeds without rows, and 0 litres", () => {
    expect(
      outcome(
        "FEED_SOLVE",
        [
          ["Target", "N"],
          ["Weak", ""],
        ],
        feeds,
      ),
    ).toMatch(/target in row 2 of target has no numbers/);
    expect(outcome("FEED_SOLVE", target, [["Feed", "N"]])).toBe("throws: feeds holds no feed below its heading row.");
    expect(outcome("FEED_SOLVE", target, feeds, "", 0)).toMatch(/^throws: litres is 0 L/);
    expect(outcome("FEED_SOLVE", [["N"], [-5]], feeds)).toMatch(/N in row 2 of target is -5/);
  });
});
