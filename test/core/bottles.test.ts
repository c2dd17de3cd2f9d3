/** Two stock bottles where forms of nitrogen, liquids and waters count, against sums by hand. */

import { describe, expect, it } from "vitest";
import { splitIntoBottles } from "../../src/core/bottles.ts";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { percentOf } from "./formula.ts";

const feed = (name: string, label: string, densityGPerMl: number | null = null): Feed =>
  feedOf(name, parseLabel(label, densityGPerMl), densityGPerMl);
const salt = (formula: string): Feed => feedOf(formula, { ...parseLabel("0-0-0"), percent: percentOf(formula) }, null);
const split = (doses: readonly (readonly [Feed, number])[], more: { bottleLitres?: number; Ca?: number } = {}) =>
  splitIntoBottles({
    doses: doses.map(([one, perLitre]) => ({ feed: one, perLitre })),
    factor: 100,
    bottleLitres: more.bottleLitres ?? 1,
    water: { Ca: more.Ca ?? 0 },
  });
const names = (parts: readonly { feed: Feed }[]) => parts.map(({ feed: one }) => one.name);

describe("a single feed, a hundred times as strong, as a share of what dissolves", () => {
  it.each<[string, Feed, number, string, number]>([
    ["ammonium nitrate, 200 of 1902 g/L", salt("NH4NO3"), 2, "ammonium nitrate", 200 / 1902],
    ["urea, two nitrogens in each, 100 of 1000 g/L", salt("CH4N2O"), 1, "urea", 0.1],
    // 20 g/L of N that may be nitrate or ammonium: 1.428 mol of each, 80.04 g/mol.
    ["nitrogen of unstated form counts as both", feed("Any", "N 20"), 1, "ammonium nitrate", 114.29 / 1902],
    // 100 mL/L at 1.1 g/mL is 110 g: K 1.826 g, 46.7 mmol; nitrate is more than enough; KNO3 101.1 g/mol.
    ["a liquid, its density counted", feed("L", "N 4 NO3-N 4 K2O 2", 1.1), 1, "potassium nitrate", 4.722 / 209],
  ])("%s", (_, one, perLitre, tightest, share) => {
    const { a } = split([[one, perLitre]]);
    expect(a.tightest?.name).toBe(tightest);
    expect(a.share).toBeCloseTo(share, 4);
  });

  it("ammonium nitrate beside more nitrate is held to its ammonium", () => {
    const { a } = split([
      [salt("NH4NO3"), 2],
      [salt("Ca(NO3)2.4H2O"), 1],
    ]);
    expect([a.tightest?.name, a.parts.length]).toEqual(["ammonium nitrate", 2]);
    expect(a.share).toBeCloseTo(200 / 1902, 4);
  });

  it("of which nothing is published stands at nothing, is said, and fits", () => {
    const { a, b, fits, mostFactor, notices } = split([
      [salt("Mg(NO3)2.6H2O"), 11],
      [feed("Trace", "Fe 7 Mn 2"), 0.1],
    ]);
    expect([a.name, b.name]).toEqual(["A", "B"]);
    for (const { tightest, share } of [a, b]) expect([tightest, share]).toEqual([null, 0]);
    expect(fits).toBe(true);
    expect(mostFactor).toBe(Number.POSITIVE_INFINITY);
    expect(notices).toEqual([expect.stringMatching(/Mg\(NO3\)2\.6H2O and Trace.* not published/)]);
  });
});

it("what is neither goes where there is room: beside each other KCl and NH4NO3 make 135 of 209 g/L of KNO3, apart KCl stands at 100 of 340", () => {
  const { a, b, fits } = split([
    [salt("KCl"), 1],
    [salt("NH4NO3"), 1.07],
  ]);
  expect([names(a.parts), names(b.parts)].sort()).toEqual([["KCl"], ["NH4NO3"]]);
  expect(Math.max(a.share, b.share)).toBeCloseTo(100 / 340, 6);
  expect(fits).toBe(true);
});

it("a dose of 0 is in neither bottle", () => {
  const { a, b } = split([
    [salt("KNO3"), 0.1],
    [salt("Ca(NO3)2.4H2O"), 0],
    [salt("K2SO4"), 0],
  ]);
  expect([...names(a.parts), ...names(b.parts)]).toEqual(["KNO3"]);
});

it("liquids may fill the bottle and no more: 10 mL a litre, a hundred times, in 2 L", () => {
  const liquid = feed("L", "N 4 NO3-N 4", 1.1);
  const grains = feed("Grains", "N 4 NO3-N 4");
  expect(split([[liquid, 10]], { bottleLitres: 2 }).fits).toBe(true);
  const over = split([[liquid, 10.1]], { bottleLitres: 2 });
  expect(over.fits).toBe(false);
  expect(over.notices[0]).toContain("bottle A alone are 2020 mL");
  expect(split([[grains, 10.1]], { bottleLitres: 1 }).fits).toBe(true);
});

it("why a feed stands apart", () => {
  const { notices } = split([
    [feed("Glass", "Si 10 K2O 10"), 0.1],
    [feed("All in one", "10-5-5 Ca 4"), 0.1],
  ]);
  expect(notices).toEqual([
    expect.stringMatching(/^Glass is a silicate/),
    expect.stringMatching(/^All in one holds calcium together with sulfate or phosphate/),
  ]);
});

it("a soft water brings no gypsum: 1 mg/L of calcium is 25 µmol/L, with 0.2 mol/L of sulfate 10^-5.3", () => {
  // 0.2 mol/L of sulfate is 49.3 g/L of Epsom salt, 246.5 g/mol.
  expect(split([[salt("MgSO4.7H2O"), 0.493]], { Ca: 1 }).notices).toEqual([]);
  expect(split([[salt("MgSO4.7H2O"), 0.493]], { Ca: 10 }).notices).toEqual([expect.stringContaining("gypsum")]);
});
