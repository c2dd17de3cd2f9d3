/** What is left of feeds, from ranges as people keep them: corrected, planned, sorted, half filled in. */

import { describe, expect, it } from "vitest";
import { call, date, outcome } from "./cells.ts";

const BOUGHT = [
  ["Id", "Date", "Feed", "Amount", "Unit", "Corrects"],
  ["p1", date("2026-01-10"), "Salt", 1, "kg", ""],
  ["p2", date("2026-01-11"), "Liquid", "0,5 L", "L", ""],
];
const MIXED = [
  ["Id", "Date", "Doses", "State", "Corrects"],
  ["b1", date("2026-02-01"), "Salt 1 g/L (10 g); Liquid 2 mL/L (20 mL)", "", ""],
];
const left = (bought: unknown, mixed: unknown, ...more: unknown[]) =>
  call("FEED_LEFT", [[["Salt"], ["Liquid"]], bought, mixed, ...more]);

const purchase = (...cells: unknown[]) => [...BOUGHT, cells];
const batch = (...cells: unknown[]) => [...MIXED, cells];

describe("FEED_LEFT", () => {
  it("is what was bought less what was used, in g and mL", () => {
    expect(left(BOUGHT, MIXED)).toEqual([[990], [480]]);
  });

  it("does not count rows that were corrected or taken back", () => {
    expect(left(purchase("p3", date("2026-01-12"), "Salt", 2, "kg", "p1"), MIXED)).toEqual([[1990], [480]]);
    // A row that only takes one back has no amount, and no doses.
    expect(left(purchase("p3", date("2026-01-12"), "Liquid", "", "", "p2"), MIXED)).toEqual([[990], [""]]);
    expect(left(purchase("p3", date("2026-01-12"), "", "", "", "p2"), MIXED)).toEqual([[990], [""]]);
    expect(left(BOUGHT, batch("b2", date("2026-02-02"), "", "", "b1"))).toEqual([[1000], [500]]);
  });

  it("counts a planned batch only once it is mixed", () => {
    const planned = batch("b2", date("2026-02-02"), "Salt 1 g/L (100 g)", "planned", "");
    expect(left(BOUGHT, planned)).toEqual([[990], [480]]);
    expect(left(BOUGHT, [...planned, ["b3", date("2026-02-03"), "Salt 1 g/L (90 g)", "mixed", "b2"]])).toEqual([
      [900],
      [480],
    ]);
  });

  it("takes less than 0 in Purchases for what was spilled, and goes below 0 rather than hide a missing purchase", () => {
    expect(left(purchase("p3", date("2026-01-12"), "salt ", -40, "g", ""), MIXED)).toEqual([[950], [480]]);
    expect(left(BOUGHT, batch("b2", date("2026-02-02"), "Salt 1 g/L (1000 g)", "", ""))).toEqual([[-10], [480]]);
  });

  it("counts to a day, and a row without a day always", () => {
    const later = purchase("p3", date("2026-06-01"), "Salt", 5, "kg", "");
    expect(left(later, MIXED, date("2026-01-31"))).toEqual([[1000], [500]]);
    expect(left(later, MIXED, date("2026-06-01"))).toEqual([[5990], [480]]);
    expect(left(purchase("p3", "", "Salt", 5, "kg", ""), MIXED, date("2026-01-31"))).toEqual([[6000], [500]]);
    const days = [[date("2026-01-31")], [date("2026-06-01")], [""]];
    expect(call("FEED_LEFT", [[["Salt"], ["Salt"], ["salt "]], later, MIXED, days])).toEqual([[1000], [5990], [5990]]);
  });

  it.each<[string, unknown, unknown, RegExp]>([
    [
      "an amount that is blank",
      purchase("p3", "", "Salt", "", "kg", ""),
      MIXED,
      /Amount in row 4 of purchases is blank/,
    ],
    [
      "a unit that is none",
      purchase("p3", "", "Salt", 1, "bag", ""),
      MIXED,
      /Unit in row 4 of purchases is "bag"\. Give g/,
    ],
    [
      "a day that is none",
      purchase("p3", "in May", "Salt", 1, "g", ""),
      MIXED,
      /Date in row 4 of purchases is "in May"/,
    ],
    [
      "a dose typed by hand",
      BOUGHT,
      batch("b2", "", "Salt two spoons", "", ""),
      /Doses in row 3 of batches: “Salt two spoons”/,
    ],
    [
      "a batch without a readable day",
      BOUGHT,
      batch("b2", "5/6", "Salt 1 g/L (1 g)", "", ""),
      /Date in row 3 of batches is "5\/6"/,
    ],
  ])("%s is said in the row of its feed, and the others are answered", (_, bought, mixed, words) => {
    const [[salt], [liquid]] = left(bought, mixed) as [[unknown], [unknown]];
    expect(salt).toMatch(/^\? /);
    expect(salt).toMatch(words);
    expect(liquid).toBe(480);
  });

  it("names the cell of a purchase, the first that is wrong, and passes over a row without a feed", () => {
    const told = (...cells: unknown[]) => (left(purchase("p3", "", ...cells, ""), MIXED) as [unknown][])[0]?.[0];
    expect(told("Salt", 5, "")).toBe("? Unit in row 4 of purchases is blank. Give g, kg, mL or L.");
    expect(told("Salt", "a bag", "kg")).toMatch(/^\? Amount in row 4 of purchases is "a bag"/);
    expect(told("", 5, "kg")).toBe(990);
    const two = [...purchase("p3", "", "Salt", 5, "", ""), ["p4", "", "salt", "", "g", ""]];
    expect(left(two, MIXED)).toEqual([[expect.stringMatching(/^\? Unit in row 4/)], [480]]);
    expect(outcome("FEED_LEFT", "Salt", purchase("p3", "", "#N/A", 5, "kg", ""), MIXED)).toMatch(
      /^throws: Feed in row 4 of purchases is an error cell/,
    );
    expect(outcome("FEED_LEFT", "Salt", BOUGHT, batch("b2", "", "#N/A", "", ""))).toMatch(
      /^throws: Doses in row 3 of batches is an error cell/,
    );
  });

  it("a dose of nobody knows what could be of any feed", () => {
    const rows = left(BOUGHT, batch("b2", "", "two spoons of the blue one", "", "")) as [unknown][];
    for (const [cell] of rows)
      expect(cell).toMatch(/^\? Doses in row 3 of batches: “two spoons of the blue one” is not a/);
  });

  it("asks for a density where grams meet millilitres, and for a unit it knows", () => {
    expect(outcome("FEED_LEFT", "Liquid", BOUGHT, MIXED, "", "g")).toMatch(/^throws: Liquid is counted in g/);
    expect(outcome("FEED_LEFT", "Liquid", BOUGHT, MIXED, "", "g", 1.25)).toBe(600);
    expect(outcome("FEED_LEFT", "Liquid", BOUGHT, MIXED, "", "oz")).toBe('throws: unit is "oz". Give g, kg, mL or L.');
  });

  it("says nothing of a feed that was never bought, and of blank names", () => {
    expect(
      call("FEED_LEFT", [[["On the shelf"], ["Kelp"], [""], ["Salt"]], BOUGHT, MIXED, "", "", "", "Left"]),
    ).toEqual([["Left"], [""], [""], [990]]);
    // What nobody bought has no amount to be wrong about, even where a dose of it cannot be read.
    const unread = batch("b2", "", "Kelp two spoons", "", "");
    expect(call("FEED_LEFT", ["Kelp", BOUGHT, unread])).toBe("");
  });
});
