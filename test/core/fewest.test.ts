/** The fewest feeds, against trying every set with another program. */

import fc from "fast-check";
import { solveQP } from "quadprog";
import { describe, expect, it } from "vitest";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { fewestFeeds } from "../../src/core/fewest.ts";
import { parseLabel } from "../../src/core/label.ts";
import { doseProblem, solveDoses } from "../../src/core/solve.ts";
import { drawn } from "../drawn.ts";
import { percentOf } from "./formula.ts";
import { refusal } from "./refusal.ts";

const salt = (formula: string): Feed => feedOf(formula, { ...parseLabel("0-0-0"), percent: percentOf(formula) }, null);
const feed = (name: string, label: string): Feed => feedOf(name, parseLabel(label), null);

describe("Hoagland & Arnon 1950, solution 1", () => {
  // Circular 347 makes it from KNO3, Ca(NO3)2, KH2PO4 and MgSO4.
  const wanted = { N: 210, P: 31, K: 235, Ca: 200, Mg: 48.6, S: 64 };
  const shelf = ["K2SO4", "Ca(NO3)2.4H2O", "NH4H2PO4", "KNO3", "Mg(NO3)2.6H2O", "KH2PO4", "MgSO4.7H2O", "NH4NO3"].map(
    salt,
  );

  it("needs just the four salts of the circular to come within 1 %", () => {
    const found = fewestFeeds({ wanted, feeds: shelf, water: {}, tolerance: 0.01 });
    expect(found.feeds.map(({ name }) => name).sort()).toEqual(
      ["Ca(NO3)2.4H2O", "KH2PO4", "KNO3", "MgSO4.7H2O"].sort(),
    );
    expect(found.needed.map(({ name }) => name)).toContain("Ca(NO3)2.4H2O");
    expect(found.beyondTolerance).toEqual([]);
  });

  it("what no feed holds does not keep the others from being counted", () => {
    const found = fewestFeeds({ wanted: { ...wanted, Fe: 1 }, feeds: shelf, water: {}, tolerance: 0.02 });
    expect(found.beyondTolerance).toEqual(["Fe"]);
    expect(found.feeds).toHaveLength(4);
  });
});

describe("every set", () => {
  const from1 = <T>(list: readonly T[]): T[] => [undefined as T, ...list];
  /** Whether quadprog finds doses of these columns in the band; equal columns are held apart by a trace. */
  const possible = (columns: readonly (readonly number[])[], missing: readonly number[], band: readonly number[]) => {
    const n = columns.length;
    if (n === 0) return missing.every((value, i) => Math.abs(value) <= (band[i] ?? 0));
    const dot = (a: readonly number[], b: readonly number[]) =>
      a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
    const rows = [
      ...missing.flatMap((value, i) => [
        [columns.map((column) => column[i] ?? 0), value - (band[i] ?? 0)] as const,
        [columns.map((column) => -(column[i] ?? 0)), -value - (band[i] ?? 0)] as const,
      ]),
      ...columns.map((_, j) => [columns.map((__, k) => (k === j ? 1 : 0)), 0] as const),
    ];
    const D = from1(columns.map((a, j) => from1(columns.map((b, k) => dot(a, b) + (j === k ? 1e-9 : 0)))));
    const A = from1(columns.map((_, j) => from1(rows.map(([coefficients]) => coefficients[j] ?? 0))));
    return (
      solveQP(D, from1(columns.map((a) => dot(a, missing))), A, from1(rows.map(([, atLeast]) => atLeast))).message ===
      ""
    );
  };

  it("smaller than the answer fails, in 60 shelves of up to 7 feeds", () => {
    const share = fc.oneof(
      { weight: 1, arbitrary: fc.constant(0) },
      { weight: 1, arbitrary: fc.integer({ min: 5, max: 200 }).map((n) => n / 10) },
    );
    const symbols = ["N", "P", "K", "Ca", "Mg"] as const;
    const shelf = fc.array(fc.tuple(share, share, share, share, share), { minLength: 2, maxLength: 7 });
    let smaller = 0;
    for (const rows of fc.sample(shelf, { numRuns: drawn(60), seed: 31 })) {
      const feeds = rows.map((row, j) =>
        feedOf(
          `feed ${j}`,
          { ...parseLabel("0-0-0"), percent: Object.fromEntries(symbols.map((symbol, i) => [symbol, row[i] ?? 0])) },
          null,
        ),
      );
      const wanted = { N: 150, P: 30, K: 200, Ca: 150, Mg: 40 };
      const tolerance = 0.2;
      const found = fewestFeeds({ wanted, feeds, water: {}, tolerance });
      const { columns, missing } = doseProblem({ wanted, feeds, water: {} });
      const all = solveDoses({ wanted, feeds, water: {} });
      const band = symbols.map((symbol) =>
        Math.max(tolerance, Math.abs((all.reached[symbol] ?? 0) / wanted[symbol] - 1)),
      );
      for (let bits = 0; bits < 2 ** feeds.length; bits++) {
        const set = columns.filter((_, j) => (bits >> j) & 1);
        if (set.length >= found.feeds.length) continue;
        expect(
          possible(
            set,
            missing,
            band.map((one) => one - 1e-6),
          ),
        ).toBe(false);
        smaller += 1;
      }
      symbols.forEach((symbol, i) => {
        expect(Math.abs((found.reached[symbol] ?? 0) / wanted[symbol] - 1)).toBeLessThanOrEqual((band[i] ?? 0) + 1e-5);
      });
    }
    expect(smaller).toBeGreaterThan((10 / 3) * drawn(60));
  });
});

describe("by hand", () => {
  const task = { wanted: { N: 100, Ca: 100, Mg: 10 }, water: {}, tolerance: 0.3 };
  // Any feed of N with any of Ca lies within 30 %; 1 g/L each of those with Mg 0.5 brings 5 + 5 of Mg exactly.
  const shelf = ["N 10 Mg 0.5", "Ca 10 Mg 0.5", "N 10 Mg 0.6", "Ca 10 Mg 0.6"].map((label) => feed(label, label));
  const orders = (list: readonly Feed[]): Feed[][] =>
    list.length === 0
      ? [[]]
      : list.flatMap((one) => orders(list.filter((other) => other !== one)).map((rest) => [one, ...rest]));

  it("of sets of two that come close enough, the closest is found in whatever order the four feeds stand", () => {
    for (const feeds of orders(shelf)) {
      const found = fewestFeeds({ ...task, feeds });
      expect(found.feeds.map(({ name }) => name).sort()).toEqual(["Ca 10 Mg 0.5", "N 10 Mg 0.5"]);
      // 100 mg/L of N from a feed of 10 % is 1 g/L.
      for (const { perLitre, unit } of found.doses) expect([perLitre.toFixed(6), unit]).toEqual(["1.000000", "g"]);
      expect(found.doses.map((dose) => dose.feed)).toEqual(found.feeds);
      expect(found.needed).toEqual([]);
    }
  });

  it("of two that are alike the first is taken", () => {
    const feeds = [feed("first", "N 10"), feed("second", "N 10")];
    const found = fewestFeeds({ wanted: { N: 100 }, feeds, water: {}, tolerance: 0.05 });
    expect(found.feeds.map(({ name }) => name)).toEqual(["first"]);
  });

  it("a feed that holds nothing wanted is not counted among the twelve", () => {
    const feeds = Array.from({ length: 12 }, (_, j) => feed(`feed ${j}`, `N ${j + 1}`));
    const found = fewestFeeds({
      wanted: { N: 100 },
      feeds: [feed("Iron", "Fe 13"), ...feeds],
      water: {},
      tolerance: 0.05,
    });
    expect(found.feeds).toHaveLength(1);
  });

  it("a tolerance of 100 % is met by nothing at all, one above is refused", () => {
    const one = { wanted: { N: 100 }, feeds: [feed("A", "N 10")], water: {} };
    expect(fewestFeeds({ ...one, tolerance: 1 }).feeds).toEqual([]);
    expect(refusal(() => fewestFeeds({ ...one, tolerance: 1.5 }))).toMatch(/^The tolerance is 150 %\./);
  });
});

describe("refused", () => {
  it("a shelf of 13", () => {
    const feeds = Array.from({ length: 13 }, (_, j) => feed(`feed ${j}`, `N ${j + 1}`));
    expect(refusal(() => fewestFeeds({ wanted: { N: 100 }, feeds, water: {}, tolerance: 0.05 }))).toBe(
      "The fewest feeds are found among at most 12, but 13 hold something that is wanted. Leave some out.",
    );
  });
  it("no tolerance", () => {
    expect(refusal(() => fewestFeeds({ wanted: { N: 100 }, feeds: [], water: {}, tolerance: 0 }))).toBe(
      "The tolerance is 0 %. Give a number above 0 and up to 100 %.",
    );
  });
});

describe("speed", () => {
  it("12 feeds take under a second", () => {
    const feeds = [
      "K2SO4",
      "Ca(NO3)2.4H2O",
      "NH4H2PO4",
      "KNO3",
      "Mg(NO3)2.6H2O",
      "KH2PO4",
      "MgSO4.7H2O",
      "NH4NO3",
      "CaCl2.2H2O",
      "KCl",
    ].map(salt);
    feeds.push(feed("A", "10-5-5 Ca 4 Mg 1.2"), feed("B", "5-10-20 Mg 2 S 3"));
    const start = performance.now();
    const found = fewestFeeds({
      wanted: { N: 210, P: 31, K: 235, Ca: 200, Mg: 48.6, S: 64 },
      feeds,
      water: {},
      tolerance: 0.03,
    });
    expect(performance.now() - start).toBeLessThan(1000);
    expect(found.feeds.length).toBeLessThanOrEqual(4);
  });
});

it("what no feed holds is off by just 100 %, and a tolerance of 100 % lets that pass", () => {
  const found = fewestFeeds({ wanted: { N: 100, Fe: 2 }, feeds: [salt("KNO3")], water: {}, tolerance: 1 });
  expect(found.beyondTolerance).toEqual([]);
});
