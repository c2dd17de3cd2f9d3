/** What a feed leaves short, and what fills it. */

import { describe, expect, it } from "vitest";
import type { Amounts } from "../../src/core/elements.ts";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { findGaps, saltFeed, slowNitrogen } from "../../src/core/gaps.ts";
import { parseLabel } from "../../src/core/label.ts";
import { SALTS } from "../../src/core/salts.ts";
import { percentOf } from "./formula.ts";

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

describe("what is short", () => {
  const plain = feed("Plain", "NO3-N 10 N 10 K 10 elemental");
  const short = (wanted: Record<string, number>, water: Record<string, number>) =>
    findGaps({ feed: plain, wanted: { N: 100, K: 100, ...wanted }, water, shelf: [] }).gaps.map(({ symbol }) => symbol);
  it("is more than a tenth below what is wanted; what is wanted to be 0 is never short", () => {
    expect(short({ Ca: 100 }, { Ca: 90 })).toEqual([]);
    expect(short({ Ca: 100 }, { Ca: 89 })).toEqual(["Ca"]);
    expect(short({ Cl: 0 }, {})).toEqual([]);
  });

  it("has at most three fillers from the shelf and three salts, the closest mix first; urea is none", () => {
    const shelf = [1, 2, 3, 4, 5].map((k) => feed(`Calcium ${k}`, `Ca 10 Mg ${1 + k / 10}`));
    const { gaps } = findGaps({ feed: plain, wanted: { N: 100, K: 100, Ca: 100, Mg: 12 }, water: {}, shelf });
    const calcium = gaps.find(({ symbol }) => symbol === "Ca")?.fillers ?? [];
    const [here, salts] = [true, false].map((onShelf) => calcium.filter((one) => one.onShelf === onShelf));
    expect(here?.map(({ name }) => name)[0]).toBe("Calcium 2");
    expect(here).toHaveLength(3);
    expect(salts?.length).toBeLessThanOrEqual(3);
    for (const list of [here ?? [], salts ?? []])
      expect(list.map(({ misfit }) => misfit)).toEqual(list.map(({ misfit }) => misfit).sort((a, b) => a - b));
    const potash = feed("Potash", "K 40 elemental");
    const nitrogen = findGaps({ feed: potash, wanted: { N: 100, K: 100 }, water: {}, shelf: [] }).gaps[0];
    expect(nitrogen?.symbol).toBe("N");
    expect(nitrogen?.fillers.length).toBe(3);
    expect(nitrogen?.fillers.map(({ name }) => name)).not.toContain("urea");
  });

  /** Names that fill `symbol` beside a feed of N and K alone. */
  const fillersOf = (symbol: string, wanted: Amounts, water: Amounts, shelf: readonly Feed[]): string[] =>
    findGaps({ feed: plain, wanted: { N: 100, K: 100, ...wanted }, water, shelf })
      .gaps.filter((gap) => gap.symbol === symbol)
      .flatMap(({ fillers }) => fillers.map(({ name }) => name));

  it("is filled by what takes away at least half of it, by hand: 60 of 100 mg/L missing, chlorine unwanted", () => {
    // 1 g/L brings 100 of Ca and c of Cl: least (0.6 − d)² + (c d / 10)², so d = 0.6 / (1 + (c / 10)²).
    // c = 8.45: d = 0.35, 75 mg/L. c = 11.83: d = 0.25, 65 mg/L.
    const shelf = [feed("Enough", "Ca 10 Cl 0.845"), feed("Little", "Ca 10 Cl 1.183")];
    const names = fillersOf("Ca", { Ca: 100, Cl: 0 }, { Ca: 40 }, shelf);
    expect(names).toContain("Enough");
    expect(names).not.toContain("Little");
  });

  it("is not filled by what brings more than 142 mg/L of chlorine unasked; what the water brings is not its fault", () => {
    const shelf = [feed("Bounds", "Ca 10 Cl 14.2"), feed("Above", "Ca 10 Cl 14.3")];
    expect(fillersOf("Ca", { Ca: 100 }, {}, shelf)).toContain("Bounds");
    expect(fillersOf("Ca", { Ca: 100 }, {}, shelf)).not.toContain("Above");
    // 100 mg/L of sodium are above the 69 let pass, with the filler and without.
    expect(fillersOf("Ca", { Ca: 100 }, { Na: 100 }, [feed("Clean", "Ca 10")])).toContain("Clean");
  });

  it("the feed itself on the shelf counts once; two that fill are named one or the other", () => {
    const shelf = [plain, feed("A", "Ca 10"), feed("B", "Ca 20")];
    const { gaps, withShelf } = findGaps({ feed: plain, wanted: { N: 100, K: 100, Ca: 100 }, water: {}, shelf });
    expect(withShelf.doses.map((dose) => dose.feed.name)).toEqual(["Plain", "A", "B"]);
    expect(gaps[0]?.sentence).toContain("A or B");
    const salts = findGaps({ feed: plain, wanted: { N: 100, K: 100, Ca: 100 }, water: {}, shelf: [] }).gaps[0];
    expect(salts?.fillers.length).toBeGreaterThan(1);
    expect(salts?.sentence).toContain(` or ${salts?.fillers.at(-1)?.name}`);
  });

  it("that nothing fills is said so", () => {
    const { gaps } = findGaps({ feed: plain, wanted: { N: 100, K: 100, Si: 20 }, water: {}, shelf: [] });
    expect(gaps[0]?.sentence).toMatch(/^Plain leaves silicon at 0 of 20 mg\/L\. Nothing here fills it/);
  });

  it("a trace salt is offered where its trace is wanted: 0.4 mg/L of zinc asks for zinc sulfate", () => {
    const { gaps } = findGaps({ feed: plain, wanted: { N: 100, K: 100, Zn: 0.4 }, water: {}, shelf: [] });
    expect(gaps[0]?.fillers.map(({ name }) => name)).toEqual(["zinc sulfate heptahydrate"]);
  });
});

it.each(SALTS.map((salt) => [salt.name, salt] as const))(
  "%s as a feed holds what its formula says, nitrogen by form",
  (name, salt) => {
    const made = saltFeed(salt);
    expect([made.name, made.liquid, made.label.basis]).toEqual([name, false, "w/w"]);
    const percent = percentOf(salt.formula.replace(/·/g, "."));
    for (const symbol of salt.holds) expect(made.label.percent[symbol]).toBeCloseTo(percent[symbol] ?? Number.NaN, 6);
    const { nitrate, ammonium, urea, other } = made.label.nitrogen;
    const total = (nitrate ?? 0) + (ammonium ?? 0) + (urea ?? 0);
    expect(total).toBeCloseTo(salt.holds.includes("N") ? (percent.N ?? 0) : 0, 6);
    expect(other).toBeNull();
  },
);

it("ammonium nitrate is half of each, calcium ammonium nitrate eleven parts of twelve nitrate", () => {
  const forms = (formula: string) => {
    const salt = SALTS.find((one) => one.formula === formula);
    if (salt === undefined) throw new Error("no such salt");
    const { nitrate, ammonium } = saltFeed(salt).label.nitrogen;
    return (nitrate ?? 0) / ((nitrate ?? 0) + (ammonium ?? 0));
  };
  expect(forms("NH4NO3")).toBeCloseTo(0.5, 9);
  expect(forms("5Ca(NO3)2·NH4NO3·10H2O")).toBeCloseTo(11 / 12, 9);
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
    // A twentieth is let pass, a little more is not; half that nobody names is let pass.
    expect(slowNitrogen(feed("A", "N 20 NO3-N 19 Other-N 1"))).toBeNull();
    expect(slowNitrogen(feed("A", "N 10 NO3-N 9.4 Other-N 0.6"))).toMatch(/^6 % of the nitrogen in A/);
    expect(slowNitrogen(feed("A", "0-5-5"))).toBeNull();
    expect(slowNitrogen(feed("A", "N 10 NO3-N 4 Other-N 6"))).toMatch(/^60 % of the nitrogen in A is of another form/);
  });
});
