/** Doses: published units, the two worked grades, and refusals. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DOSE_UNITS, type DoseUnit, doseAmounts, measureUnit } from "../../src/core/dose.ts";
import type { ElementSymbol } from "../../src/core/elements.ts";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { mixAmounts, readRecipe } from "../../src/core/mix.ts";
import { readReference } from "./reference.ts";
import { refusal } from "./refusal.ts";

interface Labels {
  solid_10_5_5_1_g_L: Record<string, number>;
  liquid_10_5_5_1_tsp_gal_1_20_g_mL: Record<string, number>;
  units: Record<"tsp_mL" | "floz_mL" | "gallon_mL" | "oz_g", number>;
}
const labels = readReference<Labels>("labels.json");

const feed = (label: string, densityGPerMl: number | null = null): Feed =>
  feedOf("The feed", parseLabel(label, densityGPerMl), densityGPerMl);

describe("the worked 10-5-5 examples (uniform state fertilizer law, NIST Handbook 44, CIAAW weights)", () => {
  it.each(Object.entries(labels.solid_10_5_5_1_g_L))("1 g/L: %s %d mg/L", (symbol, mgL) => {
    expect(doseAmounts(feed("10-5-5"), 1, "g/L")[symbol as ElementSymbol]).toBeCloseTo(mgL, 2);
  });

  it.each(Object.entries(labels.liquid_10_5_5_1_tsp_gal_1_20_g_mL))(
    "a teaspoon of 1.20 g/mL in a gallon: %s %d mg/L",
    (symbol, mgL) => {
      expect(doseAmounts(feed("10-5-5", 1.2), 1, "tsp/gal")[symbol as ElementSymbol]).toBeCloseTo(mgL, 2);
    },
  );
});

describe("units of dose (NIST Handbook 44, Appendix C)", () => {
  const { tsp_mL, floz_mL, gallon_mL, oz_g } = labels.units;
  const litres = gallon_mL / 1000;
  // 1 % of 1 g/mL: a gram and a millilitre are the same, and 1 g/L brings 10 mg/L.
  it.each<[DoseUnit, number]>([
    ["g/L", 10],
    ["mL/L", 10],
    ["g/gal", 10 / litres],
    ["mL/gal", 10 / litres],
    ["tsp/gal", (10 * tsp_mL) / litres],
    ["oz/gal", (10 * oz_g) / litres],
    ["floz/gal", (10 * floz_mL) / litres],
  ])("1 %s of a 1 %% feed", (unit, mgL) => {
    for (const basis of ["w/w", "w/v"]) {
      expect(doseAmounts(feed(`Ca 1 ${basis}`, 1), 1, unit).Ca).toBeCloseTo(mgL, 9);
    }
  });

  it.each<[DoseUnit, string]>([
    ["g/L", "w/w"],
    ["g/gal", "w/w"],
    ["oz/gal", "w/w"],
    ["mL/L", "w/v"],
    ["mL/gal", "w/v"],
    ["tsp/gal", "w/v"],
    ["floz/gal", "w/v"],
  ])("%s of a %s feed needs no density", (unit, basis) => {
    expect(doseAmounts(feed(`Ca 1 ${basis}`), 1, unit).Ca).toBeGreaterThan(0);
  });

  it("a solid goes by g, a liquid by mL", () =>
    expect([feed("Ca 1"), feed("Ca 1", 1.2), feed("Ca 1 w/v")].map(measureUnit)).toEqual(["g", "mL", "mL"]));

  it("as much as a litre takes up is no slip: 2000 g/L, and 7000 g in a gallon, 1849 g/L", () => {
    expect(doseAmounts(feed("Ca 1"), 2000, "g/L").Ca).toBe(20_000);
    expect(doseAmounts(feed("Ca 1"), 7000, "g/gal").Ca).toBeCloseTo(70_000 / litres, 6);
  });

  it("the ounce is a weight, the fluid ounce a volume", () => {
    const dense = feed("Ca 1", 2);
    const byVolume = doseAmounts(dense, 1, "floz/gal").Ca ?? 0;
    const byWeight = doseAmounts(dense, 1, "oz/gal").Ca ?? 0;
    expect(byVolume / byWeight).toBeCloseTo((2 * floz_mL) / oz_g, 9);
  });

  it("a w/v label counts by volume: density changes weights only", () => {
    expect(doseAmounts(feed("N 10 w/v"), 1, "mL/L").N).toBe(100);
    expect(doseAmounts(feed("N 10 w/v", 1.25), 1, "mL/L").N).toBe(100);
    expect(doseAmounts(feed("N 10 w/v", 1.25), 1, "g/L").N).toBe(80);
  });
});

describe("refused doses", () => {
  it.each<[Feed, number, DoseUnit, string]>([
    [
      feed("10-5-5"),
      1,
      "mL/L",
      "A dose of The feed in mL/L is a volume, but its label counts by weight. Give its density in g/mL, or the dose in g/L.",
    ],
    [
      feed("10-5-5"),
      1,
      "tsp/gal",
      "A dose of The feed in tsp/gal is a volume, but its label counts by weight. Give its density in g/mL, or the dose in g/L.",
    ],
    [
      feed("10-5-5 w/v"),
      1,
      "oz/gal",
      "A dose of The feed in oz/gal is a weight, but its label counts by volume. Give its density in g/mL, or the dose in mL/L.",
    ],
    [feed("10-5-5"), -1, "g/L", "The dose of The feed is -1 g/L. Give 0 or more."],
    [
      feed("10-5-5"),
      5000,
      "g/L",
      "The dose of The feed is 5000 g/L, more than a litre of water can take up. Give at most 2000 g/L.",
    ],
    [
      feed("10-5-5", 1.2),
      5000,
      "tsp/gal",
      "The dose of The feed is 5000 tsp/gal, more than a litre of water can take up. Give at most 1536 tsp/gal of liquid.",
    ],
    [feed("10-5-5"), Number.NaN, "g/L", "The dose of The feed is no number."],
  ])("%j", (some, dose, unit, sentence) => {
    expect(refusal(() => doseAmounts(some, dose, unit))).toBe(sentence);
  });
});

describe("a mix", () => {
  const shelf = [
    { name: "A", feed: { ...feed("N 10 Ca 5"), name: "A" }, reason: null },
    { name: "B", feed: { ...feed("K2O 5 w/v"), name: "B" }, reason: null },
    { name: "C", feed: null, reason: "C is organic." },
  ];
  const rows = (...list: Record<string, string | number>[]) =>
    list.map((fields, i) => ({ fields, where: `row ${i + 2} of recipe` }));

  it("adds water and feeds; what nobody states is not there", () => {
    const parts = readRecipe(rows({ Feed: "a", Dose: 1 }, { Feed: "B", Dose: "2", Unit: "mL/L" }), shelf);
    const mixed = mixAmounts(parts, { Ca: 30, Na: 12 });
    expect(Object.keys(mixed).sort()).toEqual(["Ca", "K", "N", "Na"]);
    expect(mixed.Ca).toBe(80);
    expect(mixed.N).toBe(100);
    expect(mixed.Na).toBe(12);
  });

  it("a blank unit is g/L for a solid and mL/L for a liquid; empty rows are passed over", () => {
    const parts = readRecipe(rows({ Feed: "A", Dose: 1 }, {}, { Feed: "B", Dose: 0 }), shelf);
    expect(parts.map(({ unit }) => unit)).toEqual(["g/L", "mL/L"]);
  });

  it.each<[Record<string, string | number>[], string]>([
    [[{ Feed: "D", Dose: 1 }], '"D" is no feed on the shelf. Write the name as it stands in the column Feed.'],
    [[{ Feed: "C", Dose: 1 }], "C is organic."],
    [[{ Feed: "#REF!", Dose: 1 }], "Feed in row 2 of recipe is an error cell (#REF!). Mend that cell or clear it."],
    [[{ Dose: 1 }], "There is a dose but no feed in row 2 of recipe. Name the feed."],
    [[{ Feed: "A" }], "There is no dose of A in row 2 of recipe. Give a number, or 0."],
    [[{ Feed: "A", Dose: -1 }], "Dose in row 2 of recipe is -1. Give a number of 0 or more."],
    [[{ Feed: "A", Dose: "some" }], 'Dose in row 2 of recipe is "some". Give a plain number like 1.2.'],
    [
      [{ Feed: "A", Dose: 1, Unit: "cup" }],
      'Unit in row 2 of recipe is "cup". Give g/L, mL/L, g/gal, mL/gal, tsp/gal, oz/gal or floz/gal.',
    ],
    [
      [
        { Feed: "A", Dose: 1 },
        { Feed: " a", Dose: 2 },
      ],
      "a stands twice in the recipe, in row 2 of recipe and row 3 of recipe. Put both doses into one row.",
    ],
  ])("refuses %j", (list, sentence) => {
    expect(refusal(() => readRecipe(rows(...list), shelf))).toBe(sentence);
  });
});

it("a water that cannot be is refused in a mix", () =>
  expect(refusal(() => mixAmounts([], { Ca: -1 }))).toMatch(/^The water: Ca is -1 mg\/L\./));

describe("properties", () => {
  const unit = fc.constantFrom(...DOSE_UNITS);
  const dose = fc.double({ min: 0, max: 50, noNaN: true });
  it("twice the dose brings twice the elements, in every unit and on either basis", () => {
    fc.assert(
      fc.property(unit, dose, fc.constantFrom("w/w", "w/v"), (someUnit, some, basis) => {
        const dense = feed(`10-5-5 Fe 0.1 ${basis}`, 1.3);
        const once = doseAmounts(dense, some, someUnit);
        const twice = doseAmounts(dense, 2 * some, someUnit);
        for (const symbol of ["N", "P", "K", "Fe"] as const) {
          expect(twice[symbol]).toBeCloseTo(2 * (once[symbol] ?? Number.NaN), 6);
        }
      }),
    );
  });

  it("the order of a mix does not matter", () => {
    const parts = [feed("10-5-5"), feed("Ca 19 N 15"), feed("Mg 9 S 13")];
    fc.assert(
      fc.property(fc.tuple(dose, dose, dose), (doses) => {
        const mix = parts.map((some, i) => ({ feed: some, dose: doses[i] ?? 0, unit: "g/L" as const }));
        const forward = mixAmounts(mix, { Ca: 40 });
        const backward = mixAmounts(mix.slice().reverse(), { Ca: 40 });
        for (const symbol of ["N", "P", "K", "Ca", "Mg", "S"] as const) {
          expect(forward[symbol]).toBeCloseTo(backward[symbol] ?? Number.NaN, 6);
        }
      }),
    );
  });
});
