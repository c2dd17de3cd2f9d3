/** A batch taken back out of the log: by hand, 1 % of 1 g/L is 10 mg/L. */

import { describe, expect, it } from "vitest";
import { feedOf, type ShelfFeed } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { differing, type LoggedBatch, rebuildBatch, usualLitres } from "../../src/core/logged-batch.ts";
import { mixtureOf } from "../../src/core/mixture.ts";

const onShelf = (name: string, label: string, density: number | null = null): ShelfFeed => ({
  name,
  feed: feedOf(name, parseLabel(label, density), density),
  reason: null,
});
const shelf = [onShelf("Base", "N 10 NO3-N 10 K 20 elemental"), onShelf("Calcium", "N 12 NO3-N 12 Ca 17 elemental")];
const dose = (feed: string, perLitre: number, unit: "g" | "mL" = "g") => ({
  feed,
  perLitre,
  unit,
  perBatch: perLitre * 10,
});
/** Base 0.5 g/L: N 50, K 100; Calcium 0.4 g/L: N 48, Ca 68; the water: Ca 30, Mg 6. */
const batch: LoggedBatch = {
  doses: [dose("Base", 0.5), dose("calcium ", 0.4)],
  reached: { N: 98, K: 100, Ca: 98, Mg: 6 },
  acid: "",
};
const water = { Ca: 30, Mg: 6, Na: 9, Cl: 14 };
const names = (found: ReturnType<typeof rebuildBatch>) => found.doses.map(({ feed }) => feed.name);

describe("a batch from the log", () => {
  it("is its feeds, and the water as the rest, with what the log has no column for", () => {
    const found = rebuildBatch(batch, shelf, water);
    expect(names(found)).toEqual(["Base", "Calcium"]);
    expect(found.unchecked).toEqual([]);
    expect(Object.keys(found.rest).sort()).toEqual(["Ca", "Cl", "K", "Mg", "N", "Na"]);
    for (const [symbol, mgL] of Object.entries({ N: 0, K: 0, Ca: 30, Mg: 6, Na: 9, Cl: 14 })) {
      expect(found.rest[symbol as "N"], symbol).toBeCloseTo(mgL, 9);
    }
  });

  it("without mg/L in the log is feeds and water as they are now", () => {
    expect(rebuildBatch({ ...batch, reached: {} }, shelf, water).rest).toEqual(water);
  });

  it("says which feed is gone, and counts what it brought as the rest", () => {
    const found = rebuildBatch(batch, shelf.slice(1), water);
    expect(names(found)).toEqual(["Calcium"]);
    expect(found.unchecked).toEqual([
      "Base is no longer on the shelf, so whether it went in twice or was left out cannot be checked.",
    ]);
    expect(found.rest.K).toBeCloseTo(100, 9);
    expect(found.rest.N).toBeCloseTo(50, 9);
  });

  it("says that a feed may enter no recipe now, or counts in another unit", () => {
    const refused: ShelfFeed = { name: "Base", feed: null, reason: "Base is organic." };
    expect(rebuildBatch(batch, [refused, ...shelf.slice(1)], water).unchecked[0]).toMatch(
      /^Base may no longer enter a recipe/,
    );
    const liquid = onShelf("Base", "N 10 NO3-N 10 K 20 elemental", 1.2);
    expect(rebuildBatch(batch, [liquid, ...shelf.slice(1)], water).unchecked[0]).toMatch(
      /^Base was measured in g and now counts in mL/,
    );
  });

  it("says which feed's label has changed, up or down", () => {
    for (const label of ["N 10 NO3-N 10 K 26 elemental", "N 10 NO3-N 10 K 15 elemental"]) {
      const found = rebuildBatch(batch, [onShelf("Base", label), ...shelf.slice(1)], water);
      expect(names(found)).toEqual(["Calcium"]);
      expect(found.unchecked).toEqual([
        "The log has another amount of potassium than shelf and water now come to, so whether Base went in twice or was left out cannot be checked.",
      ]);
      expect(found.rest.K).toBeCloseTo(100, 9);
    }
  });

  it("does not take what the acid brought for a changed label", () => {
    const acid = { ...batch, reached: { ...batch.reached, P: 25 }, acid: "Phosphoric acid 85 %: 1.4 mL, to pH 5.8" };
    const withP = [...shelf, onShelf("Phosphate", "P 22 K 28 elemental")];
    const doses = [...batch.doses, dose("Phosphate", 0.05)];
    const found = rebuildBatch({ ...acid, doses, reached: { ...acid.reached, K: 114, P: 36 } }, withP, water);
    expect(found.unchecked).toEqual([]);
    // 0.05 g/L × 22 %: 11 of the 36 mg/L.
    expect(found.rest.P).toBeCloseTo(25, 9);
  });

  it("whose water is gone is only doubted where the feeds alone come to more", () => {
    expect(rebuildBatch(batch, shelf, null).unchecked).toEqual([]);
    const rich = [shelf[0] as ShelfFeed, onShelf("Calcium", "N 12 NO3-N 12 Ca 30 elemental")];
    expect(rebuildBatch(batch, rich, null).unchecked).toHaveLength(1);
  });
});

describe("elements that differ from the log", () => {
  const found = (amounts: Record<string, number>, reached: Record<string, number>, acid = "", whole = true) =>
    differing(mixtureOf([], amounts), { reached, acid }, whole);

  it.each([
    [100, 103, []],
    [100, 103.1, ["K"]],
    [100, 97, []],
    [100, 96.9, ["K"]],
    [10, 11, []],
    [10, 11.1, ["K"]],
    [10, 9, []],
    [10, 8.9, ["K"]],
  ])("logged %d, now %d mg/L: 3 %% and 1 mg/L are let pass", (logged, now, symbols) =>
    expect(found({ K: now }, { K: logged })).toEqual(symbols),
  );

  it.each([
    ["", ["N", "P", "K", "S"]],
    ["  ", ["N", "P", "K", "S"]],
    ["Phosphoric acid 85 %: 1 mL", ["N", "K", "S"]],
    ["nitric acid 67 %", ["P", "K", "S"]],
    ["sulfuric acid 37 %", ["N", "P", "K"]],
    ["Sulphuric acid", ["N", "P", "K"]],
    ["citric acid", ["N", "P", "K", "S"]],
    ["Potassium hydroxide", ["N", "P", "S"]],
    ["something from a bottle", []],
  ])("less than was logged may be the acid's: %j leaves %j", (acid, symbols) => {
    const logged = { N: 50, P: 50, K: 50, S: 50 };
    expect(found({}, logged, acid)).toEqual(symbols);
    expect(found({}, logged, acid, false)).toEqual([]);
    // More than was logged is never an acid's doing.
    expect(found({ N: 90, P: 90, K: 90, S: 90 }, logged, acid, false)).toEqual(["N", "P", "K", "S"]);
  });

  it("what was not logged cannot differ", () => expect(found({ Ca: 90 }, { K: 50 }, "", false)).toEqual([]));
});

it("a liquid that counts in grams now is said to, and no rest is below 0", () => {
  const liquid = { ...batch, doses: [dose("Base", 0.5, "mL")] };
  expect(rebuildBatch(liquid, shelf, water).unchecked[0]).toMatch(/^Base was measured in mL and now counts in g, so/);
  // Logged K 99.5 where Base brings 100: within what is let pass.
  const found = rebuildBatch({ ...batch, reached: { ...batch.reached, K: 99.5 } }, shelf, water);
  expect(found.rest.K).toBe(0);
});

it("two elements of a changed label are named together", () => {
  const changed = onShelf("Base", "N 20 NO3-N 20 K 40 elemental");
  expect(rebuildBatch(batch, [changed, ...shelf.slice(1)], water).unchecked[0]).toContain("nitrogen and potassium");
});

describe("volumes filled besides", () => {
  it("a quarter and four times are counted in, nothing and less are not", () => {
    expect(usualLitres([5, 5, 80, 4.9, 81, 0, -5], 20, 9)).toEqual([5, 80]);
  });

  it("most often first, none beyond a quarter or four times", () => {
    expect(usualLitres([20, 20, 15, 25, 25, 25, 2, 100, 20, 15], 20, 2)).toEqual([25, 15]);
    expect(usualLitres([20], 20, 2)).toEqual([]);
    expect(usualLitres([25, 25, 15, 30], 20, 1)).toEqual([25]);
  });
});
