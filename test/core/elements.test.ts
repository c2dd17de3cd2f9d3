/** Elements, oxides and their factors, against published figures. */

import { describe, expect, it } from "vitest";
import { ELEMENTS, elementOf, parseElements, SYMBOLS } from "../../src/core/elements.ts";
import { OXIDES, type Oxide, oxideElement, oxideFactor } from "../../src/core/oxides.ts";
import { atomsOf, percentOf } from "./formula.ts";
import { readReference } from "./reference.ts";
import { refusal } from "./refusal.ts";

interface Labels {
  penn: [Oxide, number, number][];
  factors: Record<Oxide, number>;
}
const labels = readReference<Labels>("labels.json");

describe("oxide factors", () => {
  it.each(Object.entries(labels.factors))("%s is %d of its element, from the weights", (oxide, factor) => {
    expect(oxideFactor(oxide as Oxide)).toBeCloseTo(factor, 4);
  });

  it.each(labels.penn)("Penn State: %s %d percent is %d percent of the element", (oxide, percent, printed) => {
    // The publisher multiplies by 0.44 and 0.83: one in the last printed place.
    expect(Math.abs(percent * oxideFactor(oxide) - printed)).toBeLessThanOrEqual(0.1);
  });

  it("potassium lies between the two factors in print, 0.8301 and 0.8302", () => {
    expect(oxideFactor("K2O")).toBeGreaterThan(0.8301);
    expect(oxideFactor("K2O")).toBeLessThan(0.8302);
  });

  it.each(OXIDES)("%s: its own formula gives the same share", (oxide) => {
    const element = oxideElement(oxide);
    if (element === "Si") {
      // Si stands in no salt of the tests; by hand, 28.085 / (28.085 + 2 × 15.999) = 0.4674.
      expect(oxideFactor(oxide)).toBeCloseTo(0.4674, 4);
      return;
    }
    expect([...atomsOf(oxide).keys()]).toContain(element);
    expect(100 * oxideFactor(oxide)).toBeCloseTo(percentOf(oxide)[element] ?? 0, 9);
  });
});

describe("parseElements", () => {
  it("takes symbols and names, commas and spaces, in any case, in the order asked for", () => {
    expect(parseElements("N P K")).toEqual(["N", "P", "K"]);
    expect(parseElements("ca, mg; iron")).toEqual(["Ca", "Mg", "Fe"]);
    expect(parseElements(ELEMENTS.join(" "))).toEqual([...ELEMENTS]);
  });

  it("knows each by its English name, as IUPAC spells it", () => {
    const names =
      "nitrogen phosphorus potassium calcium magnesium sulfur iron manganese zinc boron copper molybdenum silicon sodium chlorine";
    expect(parseElements(names)).toEqual([...SYMBOLS]);
    expect(elementOf("  Iron ")).toBe("Fe");
    expect(elementOf("rust")).toBeNull();
  });

  it.each(SYMBOLS)("knows %s", (symbol) => {
    expect(parseElements(` ${symbol.toUpperCase()} `)).toEqual([symbol]);
  });

  it.each([
    ["N Xx", '"Xx" is no element known here. Use N P K Ca Mg S Fe Mn Zn B Cu Mo Si Na Cl.'],
    [" N P N ", 'N is asked for twice in "N P N". Name each element once.'],
    [" ", "The list of elements is empty. Name one or more of N P K Ca Mg S Fe Mn Zn B Cu Mo Si Na Cl."],
  ])("refuses %j", (text, sentence) => {
    expect(refusal(() => parseElements(text))).toBe(sentence);
  });
});
