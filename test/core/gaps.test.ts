/** What a feed leaves short, and what fills it. */

import { describe, expect, it } from "vitest";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { findGaps, slowNitrogen } from "../../src/core/gaps.ts";
import { parseLabel } from "../../src/core/label.ts";

const feed = (name: string, label: string): Feed => feedOf(name, parseLabel(label), null);
const WANTED = { N: 100, P: 20, K: 100, Ca: 60, Mg: 20, Fe: 1 };

describe("gaps", () => {
  const base = feed("Base", "NO3-N 10 N 10 P 2 K 10 elemental");
  it("a feed without calcium, magnesium and iron leaves just these", () => {
    const { gaps } = findGaps({ feed: base, wanted: WANTED, water: {}, shelf: [] });
    expect(gaps.map(({ symbol }) => symbol)).toEqual(["Ca", "Mg", "Fe"]);
    expect(gaps[2]?.fillers.map(({ name }) => name)).toContain("sodium iron EDTA trihydrate");
    expect(gaps[0]?.sentence).toMatch(
      /^Base leaves calcium at 0 of 60 mg\/L\. Nothing on the shelf fills it; .*calcium chloride dihydrate/,
    );
  });

  it("the shelf comes before salts to look for", () => {
    const epsom = feed("Bitter salt", "Mg 9.86 S 13");
    const { gaps } = findGaps({ feed: base, wanted: WANTED, water: {}, shelf: [epsom] });
    const magnesium = gaps.find(({ symbol }) => symbol === "Mg");
    expect(magnesium?.fillers[0]).toMatchObject({ name: "Bitter salt", onShelf: true, unit: "g" });
    // By hand: 20 mg/L of magnesium from 9.86 % is 0.203 g/L.
    expect(magnesium?.fillers[0]?.perLitre).toBeCloseTo(20 / 98.6, 6);
    expect(magnesium?.fillers.map(({ name }) => name)).not.toContain("magnesium sulfate heptahydrate");
    expect(magnesium?.sentence).toBe(
      "Base leaves magnesium at 0 of 20 mg/L. From the shelf, Bitter salt would fill it.",
    );
  });

  it("what the water brings is no gap", () => {
    const { gaps } = findGaps({ feed: base, wanted: WANTED, water: { Ca: 58, Mg: 20 }, shelf: [] });
    expect(gaps.map(({ symbol }) => symbol)).toEqual(["Fe"]);
  });

  it("no filler is worse than the feed alone", () => {
    const { gaps, alone, withShelf } = findGaps({
      feed: base,
      wanted: WANTED,
      water: {},
      shelf: [feed("A", "Ca 10"), feed("B", "Mg 5 Fe 1")],
    });
    for (const { fillers } of gaps) for (const { misfit } of fillers) expect(misfit).toBeLessThan(alone.misfit);
    expect(withShelf.misfit).toBeLessThan(alone.misfit);
  });
});

it("nothing is offered that brings a poison unasked: no trace salt for sulfur, no chloride for much calcium", () => {
  const wanted = { N: 100, P: 20, K: 100, S: 32, Ca: 100 };
  const { gaps } = findGaps({
    feed: feed("Base", "NO3-N 10 N 10 P 2 K 10 elemental"),
    wanted,
    water: {},
    shelf: [feed("Zinc pack", "Zn 36 S 18")],
  });
  const names = (symbol: string) => gaps.find((gap) => gap.symbol === symbol)?.fillers.map(({ name }) => name) ?? [];
  expect(names("S").length).toBeGreaterThan(0);
  expect(names("S").join(" ")).not.toMatch(/zinc|manganese|copper|iron/i);
  // 100 mg/L of calcium from its chloride bring 177 mg/L of Cl, above the 142 of FAO 29.
  expect(names("Ca").join(" ")).not.toMatch(/chloride/);
});

describe("urea", () => {
  it("is counted as nitrogen and named as slow", () => {
    expect(slowNitrogen(feed("A", "N 20 NO3-N 5 Urea-N 15"))).toBe(
      "75 % of the nitrogen in A is urea: it counts as nitrogen, but in water culture it feeds slowly and unevenly.",
    );
    expect(slowNitrogen(feed("A", "46-0-0"))).toContain("100 % of the nitrogen in A is urea");
    expect(slowNitrogen(feed("A", "N 20 NO3-N 20"))).toBeNull();
    expect(slowNitrogen(feed("A", "10-5-5"))).toContain("does not say which form");
    expect(slowNitrogen(feed("A", "N 10 NO3-N 4 Other-N 6"))).toMatch(/^60 % of the nitrogen in A is of another form/);
  });
});
