import { describe, expect, test } from "vitest";
import { conductivity } from "../../src/core/conductivity.ts";
import type { Amounts } from "../../src/core/elements.ts";
import { impliedIons, mixStates, solutionAt } from "../../src/core/solution.ts";
import { referenceRows } from "./reference-rows.ts";

/** Hoagland & Arnon 1950, Calif. Agr. Exp. Sta. Circular 347, as published, mg/L of the element. */
const HOAGLAND_1: Amounts = { N: 210, P: 31, K: 235, Ca: 200, Mg: 48.6, S: 64 };
const HOAGLAND_2: Amounts = { N: 210, P: 31, K: 235, Ca: 160, Mg: 48.6, S: 64 };

describe("ions from the elements of published solutions (Hoagland & Arnon 1950, recipes in mmol/L)", () => {
  test("solution 1: all nitrogen is nitrate, 15 mmol/L, and no counter-ion is needed", () => {
    const { totals, counterIon } = impliedIons({ amounts: HOAGLAND_1 });
    // published mg/L are whole numbers: 1 % of 15
    expect(Math.abs((totals.NO3 ?? 0) * 1000 - 15)).toBeLessThan(0.15);
    expect((totals.NH4 ?? 0) * 1000).toBeLessThan(0.1);
    expect(counterIon?.meqL ?? 0).toBeLessThan(0.15);
    expect((totals.SO4 ?? 0) * 1000).toBeCloseTo(2, 1.5);
  });
  test("solution 2: the charges find the 1 mmol/L of ammonium among 15 of nitrogen", () => {
    const { totals } = impliedIons({ amounts: HOAGLAND_2 });
    expect(Math.abs((totals.NH4 ?? 0) * 1000 - 1)).toBeLessThan(0.15);
    expect(Math.abs((totals.NO3 ?? 0) * 1000 - 14)).toBeLessThan(0.15);
  });
  test("forms on the label are taken as printed; urea carries no charge", () => {
    const { totals, ureaMolL } = impliedIons({
      amounts: { N: 100, K: 80 },
      nitrogen: { nitrate: 40, ammonium: 20, urea: 40 },
    });
    expect((totals.NO3 ?? 0) * 14007).toBeCloseTo(40, 6);
    expect((totals.NH4 ?? 0) * 14007).toBeCloseTo(20, 6);
    expect(ureaMolL * 14007).toBeCloseTo(40, 6);
  });
});

describe("the counter-ion no label prints", () => {
  test.each([
    ["potash alone: chloride", { K: 39.098 }, "Cl", 1],
    ["with chloride stated: sulfate", { K: 39.098, Cl: 10 }, "SO4", 0.718],
    ["nitrate alone: sodium", { N: 14.007, P: 0 }, null, 0],
    ["sulfate alone: sodium", { S: 32.06 }, "Na", 2],
    ["common salt: none", { Na: 22.99, Cl: 35.45 }, null, 0],
    ["with chloride and sulfate stated: chloride", { K: 39.098, Cl: 0, S: 0 }, "Cl", 1],
    ["phosphate with sodium stated: an acid feed", { P: 30.974, Na: 0 }, "H", 1],
  ] as const)("%s", (_, amounts, ion, meqL) => {
    const { counterIon, totals } = impliedIons({ amounts });
    expect(counterIon?.ion ?? null).toBe(ion);
    expect(counterIon?.meqL ?? 0).toBeCloseTo(meqL, 3);
    const { Ca = 0, Mg = 0, K = 0, Na = 0, NH4 = 0, NO3 = 0, SO4 = 0, Cl = 0, PO4 = 0 } = totals;
    if (ion === "SO4") expect(2000 * SO4).toBeCloseTo(meqL, 3);
    if (ion === "Cl") expect(1000 * Cl).toBeCloseTo(meqL, 3);
    const hydrogen = ion === "H" ? meqL / 1000 : 0;
    expect(2 * Ca + 2 * Mg + K + Na + NH4 + hydrogen - NO3 - 2 * SO4 - Cl - PO4).toBeCloseTo(0, 9);
  });
  test("it is said aloud when it matters, and not when it does not", () => {
    expect(impliedIons({ amounts: { K: 39.098 } }).assumptions.join(" ")).toMatch(/1 meq\/L .* chloride/);
    expect(impliedIons({ amounts: { K: 39.098, Cl: 0 } }).assumptions.join(" ")).toMatch(/1 meq\/L .* sulfate/);
    expect(impliedIons({ amounts: { S: 32.06 } }).assumptions.join(" ")).toMatch(/2 meq\/L .* sodium/);
    expect(impliedIons({ amounts: { S: 32.06, Na: 0 } }).assumptions.join(" ")).toMatch(/2 meq\/L .* hydrogen/);
    // An alkalinity of 50.043 mg/L as CaCO3 is 1 meq/L: with 1 mmol/L of sodium nothing is missing.
    const hard = impliedIons({ amounts: { Na: 22.99 }, alkalinityMgCaCO3L: 50.043 });
    expect(hard.counterIon?.meqL ?? 0).toBeLessThan(0.001);
    // Nitrogen of unknown form, all of it: 14.007 mg/L, which with 1 mmol/L of potassium is nitrate.
    expect(impliedIons({ amounts: { N: 14.007, K: 39.098 } }).assumptions[0]).toMatch(
      /^14 mg\/L of nitrogen .* 100 % nitrate/,
    );
    // A label rounded to a thousandth of its nitrogen leaves none unknown.
    const printed = { nitrate: 100, ammonium: 0, urea: 0 };
    expect(impliedIons({ amounts: { N: 100.4, Na: 164.5 }, nitrogen: printed }).assumptions).toEqual([]);
    expect(impliedIons({ amounts: { K: 1 } }).assumptions).toEqual([]);
    expect(impliedIons({ amounts: HOAGLAND_2 }).assumptions.join(" ")).toMatch(/93\.\d % nitrate .* H2PO4/);
  });
});

describe("EC from elements alone, against PHREEQC's ten feeds (its ions turned into mg/L of elements)", () => {
  const feeds = referenceRows.filter((row) => row.kind === "feed");
  test("none is dropped", () => expect(feeds).toHaveLength(10));
  test.each(feeds.map((row) => [row.id, row] as const))("%s", (_, row) => {
    const { Ca = 0, Mg = 0, Na = 0, K = 0, Amm = 0, NO3 = 0, SO4 = 0, Cl = 0, P = 0 } = row.totals;
    const amounts: Amounts = {
      N: (Amm + NO3) * 14.007,
      P: P * 30.974,
      K: K * 39.098,
      Ca: Ca * 40.078,
      Mg: Mg * 24.305,
      S: SO4 * 32.06,
      Na: Na * 22.99,
      Cl: Cl * 35.45,
    };
    const elements = { amounts, alkalinityMgCaCO3L: row.result.alkalinity_meq_kgw * 50.043 };
    const ec = conductivity(solutionAt(elements, { pH: row.result.pH })).at25MsCm * 1000;
    // 3 % as for the ions themselves (conductivity.test.ts); the split of nitrogen adds little
    expect(Math.abs(ec / row.result.specificConductance_uS_cm - 1)).toBeLessThan(0.03);
  });
});

test("the rule of thumb Σ cations (meq/L) / 10 = dS/m (memory): Hoagland 1, 20 meq/L, within 15 %", () => {
  const ec = conductivity(solutionAt({ amounts: HOAGLAND_1 }, {})).at25MsCm;
  expect(Math.abs(ec / 2 - 1)).toBeLessThan(0.15);
});

describe("water and feeds together", () => {
  const water = {
    totals: { Ca: 0.0015, Mg: 0.0004, Na: 0.0008, Cl: 0.0006, SO4: 0.0005 },
    alkalinityEqKg: 0.003,
    pH: 7.6,
  };
  test("without feeds it is the water itself", () => {
    const { now } = mixStates({ water, feeds: { amounts: {} }, tempC: 20 });
    expect(now.pH).toBeCloseTo(7.6, 8);
    expect(now.alkalinityEqKg).toBeCloseTo(0.003, 10);
  });
  test("monopotassium phosphate lowers the pH a little and leaves the alkalinity: it is no acid", () => {
    const { now, standing } = mixStates({ water, feeds: { amounts: { P: 31, K: 39.1 } }, tempC: 20 });
    expect(now.pH).toBeLessThan(7.6);
    expect(now.alkalinityEqKg).toBeCloseTo(0.003, 6);
    expect(standing.pH).toBeGreaterThan(now.pH);
    // Outdoor air: 417 ppm of CO2 (NOAA, 2022), 10^-3.38 atm.
    expect(standing.logPco2).toBeCloseTo(Math.log10(417e-6), 2);
  });
  test("an acid feed takes alkalinity away", () => {
    const { now } = mixStates({ water, feeds: { amounts: { P: 31, Na: 0 } }, tempC: 20 });
    expect(now.alkalinityEqKg).toBeCloseTo(0.002, 5);
  });
});
