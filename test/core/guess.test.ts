/** Where the equilibrium solver starts: a solution without ion pairs whose charges and totals add up. */

import { describe, expect, it } from "vitest";
import { type Guess, startingPoint } from "../../src/core/guess.ts";
import { constantsAt, speciesIndex } from "../../src/core/reactions.ts";
import type { Problem, Totals } from "../../src/core/speciation.ts";
import { COMPONENTS } from "../../src/core/species.ts";

/** The forms of each weak acid: name, charge, and protons more than in the free form of its component. */
const FORMS: Readonly<Record<string, readonly (readonly [name: string, charge: number, protons: number])[]>> = {
  CO3: [
    ["CO3-2", -2, 0],
    ["HCO3-", -1, 1],
    ["CO2", 0, 2],
  ],
  NH4: [
    ["NH4+", 1, 0],
    ["NH3", 0, -1],
  ],
  SO4: [
    ["SO4-2", -2, 0],
    ["HSO4-", -1, 1],
  ],
  PO4: [
    ["PO4-3", -3, 0],
    ["HPO4-2", -2, 1],
    ["H2PO4-", -1, 2],
    ["H3PO4", 0, 3],
  ],
  B: [
    ["H3BO3", 0, 0],
    ["H2BO3-", -1, -1],
  ],
  Cit: [
    ["Cit-3", -3, 0],
    ["HCit-2", -2, 1],
    ["H2Cit-", -1, 2],
    ["H3Cit", 0, 3],
  ],
};
const STRONG: Readonly<Record<string, number>> = { Na: 1, K: 1, Mg: 2, Ca: 2, Cl: -1, NO3: -1 };

interface Start {
  readonly guess: Guess;
  readonly constants: ReturnType<typeof constantsAt>;
  readonly lnH: number;
  /** mol/kg of each form, from the activities by mass action. */
  readonly forms: Readonly<Record<string, number>>;
  readonly chargeEqKg: number;
  readonly lnActivity: (component: string) => number;
}

function startOf(problem: Problem): Start {
  const constants = constantsAt(problem.tempC);
  const [wanted, x] = [new Float64Array(COMPONENTS.length), new Float64Array(COMPONENTS.length)];
  const guess = startingPoint(problem, constants, { wanted, x });
  const at = (component: string) => x[(COMPONENTS as readonly string[]).indexOf(component)] as number;
  const root = Math.sqrt(guess.ionicStrengthMolKg);
  // Davies 1962: log γ = −A z² (√I / (1 + √I) − 0.3 I).
  const lnGamma = (z: number) => -constants.lnA * z * z * (root / (1 + root) - 0.3 * root * root);
  const lnK = (name: string) => constants.lnK[speciesIndex(name)] as number;
  const forms: Record<string, number> = {
    "H+": Math.exp(at("H") - lnGamma(1)),
    "OH-": Math.exp(lnK("OH-") - at("H") - lnGamma(1)),
  };
  let chargeEqKg = (forms["H+"] ?? 0) - (forms["OH-"] ?? 0);
  for (const [component, list] of Object.entries(FORMS)) {
    const held = "logPco2" in problem.carbon || "alkalinityEqKg" in problem.carbon || "totalMolKg" in problem.carbon;
    if (component === "CO3" ? !held : !((problem.totals[component as keyof Totals] ?? 0) > 0)) continue;
    for (const [name, z, protons] of list) {
      forms[name] = Math.exp(lnK(name) + protons * at("H") + at(component) - lnGamma(z));
      chargeEqKg += z * (forms[name] ?? 0);
    }
  }
  for (const [ion, z] of Object.entries(STRONG)) chargeEqKg += z * (problem.totals[ion as keyof Totals] ?? 0);
  return { guess, constants, lnH: at("H"), forms, chargeEqKg, lnActivity: at };
}

const sumOf = (start: Start, component: string) =>
  (FORMS[component] ?? []).reduce((sum, [name]) => sum + (start.forms[name] ?? 0), 0);

const feed: Totals = { K: 0.004, Ca: 0.003, Mg: 0.001, NO3: 0.008, SO4: 0.0015, PO4: 0.001, NH4: 0.001, B: 0.0005 };
const CASES: readonly (readonly [string, Totals, Problem["carbon"]])[] = [
  ["a feed", feed, { totalMolKg: 0.001 }],
  ["a feed without carbon", feed, { totalMolKg: 0 }],
  ["tap water", { Ca: 0.002, Mg: 0.0005, Na: 0.001, Cl: 0.001, SO4: 0.0005 }, { totalMolKg: 0.004 }],
  ["ammonia water", { NH4: 0.002, Cl: 0.0005 }, { totalMolKg: 0 }],
  ["borax water", { Na: 0.001, B: 0.002 }, { totalMolKg: 0 }],
  ["citrate", { K: 0.002, Cit: 0.001 }, { totalMolKg: 0.0005 }],
  ["an acid", { SO4: 0.02 }, { totalMolKg: 0 }],
  ["phosphate", { K: 0.0025, PO4: 0.001 }, { totalMolKg: 0 }],
];

describe.each([5, 25, 40])("at %s °C", (tempC) => {
  it.each(CASES)("the charges of %s add up, and so does each component", (_, totals, carbon) => {
    const start = startOf({ totals, carbon, pH: "balance", tempC });
    // Bisection stops within 33 / 2^26 of ln a(H+); a buffer of 0.05 mol/kg then leaves 2.5e-8 eq/kg.
    expect(Math.abs(start.chargeEqKg)).toBeLessThan(2.5e-8);
    for (const component of Object.keys(FORMS)) {
      const total = component === "CO3" ? (carbon as { totalMolKg: number }).totalMolKg : totals[component as "PO4"];
      if ((total ?? 0) > 0) expect(sumOf(start, component) / (total ?? 0)).toBeCloseTo(1, 9);
    }
  });

  it.each(CASES)("in the air %s holds the CO2 of Henry's law, and its charges add up", (_, totals) => {
    const start = startOf({ totals, carbon: { logPco2: -3.4 }, pH: "balance", tempC });
    expect(Math.log10(start.forms.CO2 ?? 0)).toBeCloseTo(-3.4 + start.constants.logKCo2Gas, 9);
    // Carbonate of an alkaline water answers a change of ln a(H+) twice over.
    expect(Math.abs(start.chargeEqKg)).toBeLessThan(2.5e-8);
    expect(start.guess.holdsCarbon).toBe(true);
  });
});

it("a pH given is where it starts, whatever the charges", () => {
  const start = startOf({ totals: feed, carbon: { totalMolKg: 0.001 }, pH: 6.2, tempC: 25 });
  expect(start.lnH).toBeCloseTo(-6.2 * Math.LN10, 12);
  expect(sumOf(start, "PO4")).toBeCloseTo(0.001, 12);
  expect(start.guess.pHGiven).toBe(true);
  const balanced = startOf({ totals: feed, carbon: { totalMolKg: 0.001 }, pH: "balance", tempC: 25 });
  expect(balanced.guess.pHGiven).toBe(false);
});

it("the proton excess of a balanced solution is what its other charges lack, and leads to its pH", () => {
  // By hand: K 4 + 2 Ca 3 + 2 Mg 1 + NH4 1 − NO3 8 − 2 SO4 1.5 − 3 PO4 1 = −1 meq/kg.
  const problem = { totals: feed, carbon: { totalMolKg: 0.001 }, tempC: 25 };
  const balanced = startOf({ ...problem, pH: "balance" });
  expect(startOf({ ...problem, pH: { protonsMolKg: 0.001 } }).lnH).toBeCloseTo(balanced.lnH, 5);
  // Half a millimole of protons more than the charges ask for stays as charge.
  expect(startOf({ ...problem, pH: { protonsMolKg: 0.0015 } }).chargeEqKg).toBeCloseTo(0.0005, 7);
});

it("the ionic strength counts half of total times charge squared, phosphate as two, at most 0.5", () => {
  const strength = (totals: Totals, carbon: Problem["carbon"] = { totalMolKg: 0 }) =>
    startOf({ totals, carbon, pH: 6, tempC: 25 }).guess.ionicStrengthMolKg;
  // By hand, mmol/kg: 0.5 × (2 + 4 × 3 + 4 × 1) = 9; with 4 of carbon, counted as HCO3-, 2 more; water brings 1e-7.
  expect(strength({ K: 0.002, Ca: 0.003, PO4: 0.001 })).toBeCloseTo(0.0090001, 10);
  expect(strength({ K: 0.002, Ca: 0.003, PO4: 0.001 }, { totalMolKg: 0.004 })).toBeCloseTo(0.0110001, 10);
  expect(strength({ K: 0.002 }, { alkalinityEqKg: 0.004 })).toBeCloseTo(0.0030001, 10);
  expect(strength({ Ca: 2 })).toBe(0.5);
});

it("carbon counts as held unless it is none", () => {
  const holds = (carbon: Problem["carbon"]) => startOf({ totals: {}, carbon, pH: 7, tempC: 25 }).guess.holdsCarbon;
  expect(holds({ totalMolKg: 0 })).toBe(false);
  expect(holds({ totalMolKg: 1e-6 })).toBe(true);
  expect(holds({ alkalinityEqKg: 0 })).toBe(true);
});
