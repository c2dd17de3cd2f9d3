/** Spoons and stock solutions as Settings hold them: read, refused, written again. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { spoonAmounts, spoonfulsFor } from "../../src/core/grid.ts";
import { readSpoons, readStocks, spoonsText, stocksText } from "../../src/core/tool-text.ts";
import { refusal } from "./refusal.ts";

describe("spoons", () => {
  it.each([
    ["Epsom salt: 1.1 g, 4.9 g", [{ feed: "Epsom salt", spoonG: [1.1, 4.9] }]],
    [
      "Epsom salt: 1,1 g, 4,9 g;Calcium nitrate:1.3g",
      [
        { feed: "Epsom salt", spoonG: [1.1, 4.9] },
        { feed: "Calcium nitrate", spoonG: [1.3] },
      ],
    ],
    [
      "10-5-5: bloom: 2 g\n\nB: 1 g",
      [
        { feed: "10-5-5: bloom", spoonG: [2] },
        { feed: "B", spoonG: [1] },
      ],
    ],
    ["  Epsom salt :  1.1 g ,4.9g ,  2 g ", [{ feed: "Epsom salt", spoonG: [1.1, 4.9, 2] }]],
    ["", []],
  ])("%s", (text, read) => expect(readSpoons(text)).toEqual(read));

  it.each(["Epsom salt", "Epsom salt: 1.1", "Epsom salt: 0 g", "Epsom salt: 1 g, 0 g", "Epsom salt: a spoon", "1 g"])(
    "%s is refused",
    (text) => {
      expect(refusal(() => readSpoons(text))).toContain(`“${text}” cannot be read`);
    },
  );
});

describe("stock solutions", () => {
  it("names, amounts and bottles; also of a liquid", () => {
    expect(readStocks("Monopotassium phosphate: 5 g in 100 mL; Drops: 2,5 mL in 250 mL")).toEqual([
      { feed: "Monopotassium phosphate", solute: 5, unit: "g", bottleMl: 100 },
      { feed: "Drops", solute: 2.5, unit: "mL", bottleMl: 250 },
    ]);
    expect(readStocks("  Drops  :  2.5mL in 250mL ")).toEqual([
      { feed: "Drops", solute: 2.5, unit: "mL", bottleMl: 250 },
    ]);
  });

  it.each(["A: 5 g", "A: 5 in 100 mL", "A: 0 g in 100 mL", "A: 5 g in 0 mL"])("%s is refused", (text) => {
    expect(refusal(() => readStocks(text))).toContain(`“${text}” cannot be read`);
  });
});

describe("written and read again", () => {
  const name = fc
    .string({ minLength: 1, maxLength: 12 })
    .filter((text) => text.trim() === text && !text.includes("\n"));
  const amount = fc.integer({ min: 1, max: 99_999 }).map((n) => n / 1000);

  it("gives what was written, whatever the name", () => {
    const spoons = fc.array(fc.record({ feed: name, spoonG: fc.array(amount, { minLength: 1, maxLength: 4 }) }));
    fc.assert(
      fc.property(spoons, (all) => {
        expect(readSpoons(spoonsText(all))).toEqual(all);
      }),
    );
    const unit = fc.constantFrom("g" as const, "mL" as const);
    const stocks = fc.array(fc.record({ feed: name, solute: amount, unit, bottleMl: amount }));
    fc.assert(
      fc.property(stocks, (all) => {
        expect(readStocks(stocksText(all))).toEqual(all);
      }),
    );
  });
});

describe("level spoonfuls for an amount", () => {
  it("by hand: 6 g from spoons of 1.2 and 4.8 g is one of each; 9.6 g is two large ones", () => {
    const set = { spoonG: [1.2, 4.8], mostSpoonfuls: 12 };
    expect(spoonfulsFor(6, set)).toEqual([1, 1]);
    expect(spoonfulsFor(9.6, set)).toEqual([0, 2]);
    expect(spoonfulsFor(0, set)).toEqual([0, 0]);
    expect(spoonfulsFor(1, set)).toBeNull();
  });

  it("of 3 and 4 g, 6 g is two of the smaller, not one of the larger and a rest", () => {
    expect(spoonfulsFor(6, { spoonG: [3, 4], mostSpoonfuls: 5 })).toEqual([2, 0]);
  });

  it("make every amount that spoons make, within the count", () => {
    const set = { spoonG: [0.7, 1.3, 5], mostSpoonfuls: 6 };
    for (const amount of spoonAmounts(set)) {
      const counts = spoonfulsFor(amount, set) ?? [];
      expect(counts.reduce((sum, many, k) => sum + many * (set.spoonG[k] ?? 0), 0)).toBeCloseTo(amount, 9);
      expect(counts.reduce((sum, many) => sum + many, 0)).toBeLessThanOrEqual(6);
    }
  });
});
