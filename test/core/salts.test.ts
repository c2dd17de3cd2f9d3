/** Salts by name from printed analyses, their solubilities by hand, and which of them are offered for a gap. */

import { describe, expect, it } from "vitest";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { findGaps } from "../../src/core/gaps.ts";
import { parseLabel } from "../../src/core/label.ts";
import { SALTS, saltOf } from "../../src/core/salts.ts";

const feed = (name: string, label: string): Feed => feedOf(name, parseLabel(label), null);
const named = (label: string) => saltOf(feed("A", label))?.name ?? null;

describe("a salt", () => {
  it.each([
    ["34-0-0 NO3-N 17 NH4-N 17", "ammonium nitrate"],
    ["21-0-0 S 24", "ammonium sulfate"],
    ["N 10.9 NO3-N 10.9 Mg 9.4", "magnesium nitrate hexahydrate"],
    ["N 11.8 NO3-N 11.8 Ca 17", "calcium nitrate tetrahydrate"],
    ["Cu 25 S 12.6", "copper sulfate pentahydrate"],
    ["Mn 32 S 19", "manganese sulfate monohydrate"],
    ["Fe 20 S 11.5", "iron(II) sulfate heptahydrate"],
    ["Zn 22.7 S 11", "zinc sulfate heptahydrate"],
    ["Mn 27.7 Cl 35", "manganese chloride tetrahydrate"],
  ])("%s is %s", (label, name) => expect(named(label)).toBe(name));

  it.each([
    ["0-0-60", "potassium chloride"],
    ["Ca 27", "calcium chloride dihydrate"],
    ["B 11.3", "borax"],
    ["Mo 39.6", "sodium molybdate dihydrate"],
  ])("may leave its sodium or chloride unsaid: %s is %s", (label, name) => expect(named(label)).toBe(name));

  it.each(["0-0-50", "Cu 25", "Fe 20", "Mg 9.8", "N 10.9 Ca 5", "21-0-0"])(
    "leaves nothing else unsaid: %s is none",
    (label) => {
      expect(named(label)).toBeNull();
    },
  );

  it("is known within 8 % and what labels round, not beyond", () => {
    // KNO3: 13.85 % N, 38.67 % K, 46.58 % K2O
    expect(named("13.9-0-46.6")).toBe("potassium nitrate");
    expect(named("13.5-0-45")).toBe("potassium nitrate");
    expect(named("12-0-43")).toBeNull();
    expect(named("15-0-46")).toBe("potassium nitrate");
    expect(named("16-0-46")).toBeNull();
    expect(named("N 13.8 NH4-N 13.8 K2O 46.5")).toBeNull();
  });
});

it("solubilities printed in pounds in a hundred US gallons are g/L times 1.1983", () => {
  // 453.59237 g / 378.5411784 L
  const of = (name: string) => SALTS.find((salt) => salt.name === name)?.solubilityGPerL ?? Number.NaN;
  for (const [name, pounds] of [
    ["diammonium phosphate", 358],
    ["calcium chloride dihydrate", 500],
    ["iron(II) sulfate heptahydrate", 242],
    ["manganese sulfate monohydrate", 876],
    ["zinc sulfate heptahydrate", 625],
    ["borax", 8],
    ["sodium molybdate dihydrate", 467],
  ] as const) {
    expect(of(name), name).toBeCloseTo((pounds * 453.59237) / 378.5411784, 2);
  }
});

describe("for a lack of nitrogen alone", () => {
  // 1 g/L brings all that is wanted but nitrogen, so a salt of nothing else is best
  const base = feed("Base", "P 2 K 10 Ca 6 Mg 2 elemental");
  const wanted = { N: 100, P: 20, K: 100, Ca: 60, Mg: 20 };
  const fillers = (shelf: readonly Feed[]) => findGaps({ feed: base, wanted, water: {}, shelf }).gaps[0]?.fillers ?? [];

  it("urea is not offered, since in water culture there is little that breaks it down", () => {
    // one more would be named, were there one
    expect(
      fillers([])
        .map(({ name }) => name)
        .sort(),
    ).toEqual(["ammonium nitrate", "ammonium sulfate"]);
  });

  it("urea from the shelf is, and is not named a second time; nor is the feed itself", () => {
    const own = feed("Carbamide", "46-0-0");
    const found = fillers([own, base]);
    expect(found[0]).toMatchObject({ name: "Carbamide", onShelf: true });
    expect(found.map(({ name }) => name)).not.toContain("Base");
    expect(found.filter(({ onShelf }) => onShelf)).toHaveLength(1);
  });

  it("what would take away less than half of the lack is none", () => {
    const weak = feed("Weak", "NO3-N 0.1 N 0.1 Na 5");
    expect(fillers([weak]).map(({ name }) => name)).not.toContain("Weak");
  });
});
