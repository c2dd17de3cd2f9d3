/** Stock solutions and salts against published solubilities and sums by hand. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { doseAmounts } from "../../src/core/dose.ts";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { SALTS, SOLUBILITY_SOURCES, saltOf, saltPercent } from "../../src/core/salts.ts";
import { offerStock } from "../../src/core/stock.ts";
import { drawn } from "../drawn.ts";
import { gramsPerMole, percentOf } from "./formula.ts";
import { refusal } from "./refusal.ts";

const feed = (name: string, label: string, densityGPerMl: number | null = null): Feed =>
  feedOf(name, parseLabel(label, densityGPerMl), densityGPerMl);
const salt = (formula: string): Feed => feedOf(formula, { ...parseLabel("0-0-0"), percent: percentOf(formula) }, null);

describe("salts by chemical name", () => {
  it.each(SALTS.map(({ name, formula }) => [name, formula]))("%s is known again from its analysis", (name, formula) => {
    const plain = formula.replace(/·/g, ".");
    const one = SALTS.find((entry) => entry.name === name);
    const percent = percentOf(plain);
    if (one !== undefined && !one.holds.includes("N")) delete percent.N;
    expect(saltOf(feedOf("A", { ...parseLabel("0-0-0"), percent }, null))?.name).toBe(name);
    for (const [symbol, share] of Object.entries(one === undefined ? {} : saltPercent(one))) {
      expect(share).toBeCloseTo(percent[symbol] ?? Number.NaN, 9);
    }
  });

  it.each([
    ["NPK 13-0-46", "potassium nitrate"],
    ["0-52-34", "monopotassium phosphate"],
    ["12-61-0", "monoammonium phosphate"],
    ["N 15.5 NO3-N 14.4 NH4-N 1.1 Ca 19", "calcium ammonium nitrate decahydrate"],
    ["Mg 9.8 S 13", "magnesium sulfate heptahydrate"],
    ["0-0-50 S 18", "potassium sulfate"],
    ["B 17.5", "boric acid"],
    ["46-0-0", "urea"],
    ["Fe 13", "sodium iron EDTA trihydrate"],
  ])("a trade label %s is %s", (label, name) => {
    expect(saltOf(feed("A", label))?.name).toBe(name);
  });

  it.each(["10-5-5", "13-0-46 Mg 3", "N 15.5 NO3-N 4 NH4-N 11.5 Ca 19"])("%s is no salt", (label) => {
    expect(saltOf(feed("A", label))).toBeNull();
  });

  it("a liquid is no salt, whatever its label", () => {
    expect(saltOf(feed("A", "13-0-46", 1.2))).toBeNull();
  });
});

describe("solubility", () => {
  const of = (formula: string) => SALTS.find((one) => one.formula === formula)?.solubilityGPerL ?? Number.NaN;
  it("of the two phosphates is what the fitted equations of IUPAC Solubility Data Series 66 give at 20 °C", () => {
    // ln x = A + B/T + C ln T, x the mole fraction of the salt.
    const gramsPerKg = (a: number, b: number, c: number, formula: string) => {
      const x = Math.exp(a + b / 293.15 + c * Math.log(293.15));
      return ((x / (1 - x)) * 1000 * gramsPerMole(formula)) / gramsPerMole("H2O");
    };
    expect(Math.abs(of("KH2PO4") - gramsPerKg(-4.81, -1510.549, 1.128, "KH2PO4"))).toBeLessThan(1);
    expect(Math.abs(of("NH4H2PO4") - gramsPerKg(36.422, -3370.284, -4.901, "NH4H2PO4"))).toBeLessThan(1);
  });

  it("of magnesium sulfate holds the printed 330 g/L of the anhydrous salt", () => {
    expect((of("MgSO4·7H2O") * gramsPerMole("MgSO4")) / gramsPerMole("MgSO4.7H2O")).toBeCloseTo(330, 6);
  });

  it("has a source wherever there is a number", () => {
    for (const { solubilityGPerL, source } of SALTS) {
      expect(solubilityGPerL === null).toBe(source === null);
      if (source !== null) expect(SOLUBILITY_SOURCES[source].length).toBeGreaterThan(20);
    }
  });
});

describe("stock solutions", () => {
  const tools = { scaleStepG: 0.1, syringeStepMl: 0.5 };

  it("by hand: 0.05 g of boric acid is 5 mL of 1 g in 100 mL, had the scale enough figures", () => {
    const { stock } = offerStock({ feed: salt("H3BO3"), wantedPerBatch: 0.05, scaleStepG: 0.01, syringeStepMl: 0.1 });
    expect(stock).not.toBeNull();
    const perMl = (stock?.solute ?? 0) / (stock?.bottleMl ?? 1);
    expect(Math.abs((stock?.doseMl ?? 0) * perMl - 0.05)).toBeLessThanOrEqual(0.05 * perMl + 1e-12);
    expect(stock?.error).toBeLessThanOrEqual(0.015);
    expect(stock?.source).toBe("dpird");
  });

  it("the stock brings what its grams would: as a feed and by weight", () => {
    const boron = salt("H3BO3");
    const { stock } = offerStock({ feed: boron, wantedPerBatch: 0.3, ...tools });
    if (stock === null) throw new Error("no stock");
    const inStock = doseAmounts(stock.feed, 2, "mL/L").B ?? 0;
    expect(inStock).toBeCloseTo(doseAmounts(boron, (2 * stock.solute) / stock.bottleMl, "g/L").B ?? 0, 9);
  });

  it("a liquid by weight is thinned by volume, its density counted", () => {
    const strong = feed("Strong", "N 10 K 5 elemental", 1.3);
    const { stock } = offerStock({ feed: strong, wantedPerBatch: 0.12, ...tools, syringeStepMl: 0.1 });
    if (stock === null) throw new Error("no stock");
    expect(stock.unit).toBe("mL");
    const perMl = stock.solute / stock.bottleMl;
    expect(doseAmounts(stock.feed, 3, "mL/L").N).toBeCloseTo(doseAmounts(strong, 3 * perMl, "mL/L").N ?? 0, 9);
  });

  it("never holds more than half of what dissolves, nor more than 200 g/L, and always draws whole steps", () => {
    const known = SALTS.filter(({ solubilityGPerL }) => solubilityGPerL !== null);
    const cases = fc.record({
      which: fc.nat(known.length - 1),
      wanted: fc.integer({ min: 1, max: 30_000 }).map((n) => n / 10_000),
      scaleStepG: fc.constantFrom(0.01, 0.1, 1),
      syringeStepMl: fc.constantFrom(0.01, 0.1, 0.5, 1),
    });
    let offers = 0;
    fc.assert(
      fc.property(cases, ({ which, wanted, scaleStepG, syringeStepMl }) => {
        const one = known[which];
        if (one === undefined) return;
        const entry = feedOf(one.name, { ...parseLabel("0-0-0"), percent: saltPercent(one) }, null);
        const { stock, reason } = offerStock({ feed: entry, wantedPerBatch: wanted, scaleStepG, syringeStepMl });
        expect((stock === null) !== (reason === null)).toBe(true);
        if (stock === null) return;
        offers += 1;
        const gPerL = (1000 * stock.solute) / stock.bottleMl;
        expect(gPerL).toBeLessThanOrEqual(Math.min(200, 0.5 * (one.solubilityGPerL ?? 0)) + 1e-9);
        expect(stock.shareOfSolubility).toBeCloseTo(gPerL / (one.solubilityGPerL ?? 1), 9);
        const draws = stock.doseMl / syringeStepMl;
        expect(Math.abs(draws - Math.round(draws))).toBeLessThan(1e-6);
        expect(Math.abs((stock.doseMl * gPerL) / 1000 - wanted) / wanted).toBeLessThanOrEqual(stock.error + 1e-9);
      }),
      { numRuns: drawn(500), seed: 5 },
    );
    expect(offers).toBeGreaterThan(0.3 * drawn(500));
  });

  it("without a published solubility there is none, until the label's number is given", () => {
    const mix = feed("Trace mix", "Fe 7 Mn 2 Zn 0.4");
    expect(offerStock({ feed: mix, wantedPerBatch: 0.3, ...tools }).reason).toBe(
      "There is no published solubility for Trace mix here. If its label says how many grams dissolve in a litre, give that number; otherwise mix a larger batch.",
    );
    const { stock } = offerStock({ feed: mix, wantedPerBatch: 0.3, ...tools, labelSolubilityGPerL: 90 });
    expect(stock?.source).toBe("label");
    expect(stock?.steps).toHaveLength(4);
  });

  it("says so when no stock helps", () => {
    expect(offerStock({ feed: salt("KNO3"), wantedPerBatch: 500, ...tools }).reason).toBe(
      "No stock solution of KNO3 makes 500 g easy to measure with these tools. Mix a larger batch, or use a finer syringe.",
    );
  });

  it("amounts must be above 0", () => {
    expect(refusal(() => offerStock({ feed: salt("KNO3"), wantedPerBatch: 0, ...tools }))).toBe(
      "The dose of KNO3 is 0 g. Give a number above 0.",
    );
  });
});
