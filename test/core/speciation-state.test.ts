/** What a state says of itself, worked out again from its definitions; the edges of the range; sums by hand. */

import { describe, expect, it } from "vitest";
import { BadInput } from "../../src/core/errors.ts";
import { CARBONS, CHARGES, CLOSED, speciesIndex, WATERS } from "../../src/core/reactions.ts";
import { logActivity, type Problem, type State, solveState, type Totals } from "../../src/core/speciation.ts";
import { COMPONENTS, SPECIES } from "../../src/core/species.ts";

const NO_CARBON = { totalMolKg: 0 };
const WATER: Problem = { totals: { Ca: 0.001, Cl: 0.002 }, carbon: NO_CARBON, pH: 7, tempC: 25 };

function codeOf(problem: Problem): string | null {
  try {
    solveState(problem);
    return null;
  } catch (error) {
    if (error instanceof BadInput) return error.code;
    throw error;
  }
}

/** Everything at once, a tap water, a feed, a strong one, acids and bases: what a log of a household may hold and more. */
const PROBLEMS: readonly (readonly [string, Problem])[] = [
  [
    "all components",
    {
      totals: {
        Na: 0.002,
        K: 0.006,
        Mg: 0.002,
        Ca: 0.005,
        NH4: 0.001,
        Cl: 0.001,
        SO4: 0.002,
        NO3: 0.015,
        PO4: 0.001,
        B: 5e-5,
        Cit: 0.001,
      },
      carbon: { totalMolKg: 0.003 },
      pH: 6,
      tempC: 20,
    },
  ],
  [
    "a tap water by its alkalinity, phosphate added",
    { totals: { Ca: 0.002, Mg: 5e-4, Na: 0.001, PO4: 0.001 }, carbon: { alkalinityEqKg: 0.005 }, pH: 8, tempC: 12 },
  ],
  [
    "the same in air, its pH by balance",
    { totals: { Ca: 0.002, Mg: 5e-4, Na: 0.001 }, carbon: { logPco2: -3.38 }, pH: "balance", tempC: 12 },
  ],
  ["strong salt in much CO2", { totals: { Na: 0.3, Cl: 0.3 }, carbon: { logPco2: -1 }, pH: 7, tempC: 25 }],
  [
    "magnesium sulfate, paired",
    { totals: { Mg: 0.08, SO4: 0.08, K: 0.02, Cl: 0.02 }, carbon: NO_CARBON, pH: "balance", tempC: 30 },
  ],
  ["phosphoric acid", { totals: { PO4: 0.01 }, carbon: NO_CARBON, pH: "balance", tempC: 25 }],
  ["citric acid with carbon", { totals: { Cit: 0.02 }, carbon: { totalMolKg: 0.01 }, pH: "balance", tempC: 5 }],
  ["ammonia", { totals: { NH4: 0.02, Cl: 0.002 }, carbon: { totalMolKg: 0.002 }, pH: "balance", tempC: 35 }],
  ["lime in water", { totals: { Ca: 0.004 }, carbon: NO_CARBON, pH: "balance", tempC: 25 }],
  [
    "a proton excess",
    { totals: { Ca: 0.002, NO3: 0.001 }, carbon: { totalMolKg: 0.004 }, pH: { protonsMolKg: -0.003 }, tempC: 18 },
  ],
];

const sum = (state: State, of: (s: number, molality: number) => number): number =>
  state.molalities.reduce((total, m, s) => total + of(s, m), 0);
const countOf = (s: number, component: number): number => {
  for (let e = CLOSED.start[s] ?? 0; e < (CLOSED.start[s + 1] ?? 0); e++) {
    if (CLOSED.component[e] === component) return CLOSED.count[e] ?? 0;
  }
  return 0;
};

describe.each(PROBLEMS)("%s", (_, problem) => {
  const state = solveState(problem);

  it("each component adds up to its total, carbon and charge to what was asked", () => {
    COMPONENTS.forEach((name, i) => {
      if (i < 2) return;
      const total = problem.totals[name as keyof Totals] ?? 0;
      expect(Math.abs(sum(state, (s, m) => m * countOf(s, i)) - total)).toBeLessThanOrEqual(1e-8 * total);
    });
    const { carbon } = problem;
    if ("totalMolKg" in carbon) expect(state.totalCarbonMolKg).toBeCloseTo(carbon.totalMolKg, 10);
    else if ("alkalinityEqKg" in carbon) expect(state.alkalinityEqKg).toBeCloseTo(carbon.alkalinityEqKg, 10);
    else expect(state.logPco2).toBeCloseTo(carbon.logPco2, 9);
    expect(state.totalCarbonMolKg).toBeCloseTo(
      sum(state, (s, m) => m * (CARBONS[s] ?? 0)),
      12,
    );
    if (problem.pH === "balance") expect(state.chargeEqKg).toBeCloseTo(0, 9);
    else if (typeof problem.pH === "object") expect(state.protonsMolKg).toBeCloseTo(problem.pH.protonsMolKg, 9);
    else expect(state.pH).toBeCloseTo(problem.pH, 12);
  });

  it("ionic strength, charge and its error are those of the species", () => {
    const z = (s: number) => CHARGES[s] ?? 0;
    expect(state.ionicStrengthMolKg).toBeCloseTo(0.5 * sum(state, (s, m) => m * z(s) ** 2), 9);
    const charge = sum(state, (s, m) => m * z(s));
    expect(state.chargeEqKg).toBeCloseTo(charge, 12);
    const all = sum(state, (s, m) => m * Math.abs(z(s)));
    expect(state.chargeErrorPercent).toBeCloseTo((100 * charge) / all, 9);
  });

  it("each species is there in full or not at all: activity = molality · γ, none without its components", () => {
    SPECIES.forEach(([name], s) => {
      const absent = COMPONENTS.some((component, i) => {
        if (i === 0 || countOf(s, i) === 0) return false;
        return i === 1 ? state.totalCarbonMolKg === 0 : (problem.totals[component as keyof Totals] ?? 0) === 0;
      });
      const m = state.molalities[s] ?? Number.NaN;
      if (absent) expect([name, m, state.lnGammas[s], logActivity(state, name)]).toEqual([name, 0, 0, null]);
      else {
        expect(m).toBeGreaterThan(0);
        expect(logActivity(state, name)).toBeCloseTo((Math.log(m) + (state.lnGammas[s] ?? 0)) / Math.LN10, 8);
      }
    });
  });

  it("settles before its steps run out", () => {
    expect(state.iterations).toBeGreaterThan(0);
    expect(state.iterations).toBeLessThan(60);
  });
});

describe("by hand", () => {
  // Garrels & Christ 1965: the activity of water is 1 − 0.017 Σ m; 0.3 mol/kg each of Na and Cl: 0.9898.
  it.each([NO_CARBON, { logPco2: -3.38 }])(
    "0.3 mol/kg of table salt lowers the activity of water to 0.9898, %j",
    (carbon) => {
      const state = solveState({ totals: { Na: 0.3, Cl: 0.3 }, carbon, pH: 7, tempC: 25 });
      expect(state.waterActivity).toBeCloseTo(0.9898, 4);
      // log Kw of phreeqc.dat; OH− = W − H+.
      const kelvin = 298.15;
      const logKw =
        293.29227 +
        0.1360833 * kelvin -
        10576.913 / kelvin -
        123.73158 * Math.log10(kelvin) -
        6.996455e-5 * kelvin ** 2;
      expect(logActivity(state, "OH-")).toBeCloseTo(logKw + 7 + Math.log10(0.9898), 4);
      expect(WATERS[speciesIndex("OH-")]).toBe(1);
      // Henry's law constant at 25 °C, Plummer & Busenberg 1982: 10^−1.468.
      if ("logPco2" in carbon) expect(logActivity(state, "CO2")).toBeCloseTo(-3.38 - 1.468, 3);
    },
  );

  it.each([
    // meq: Na 3 against Cl 2; Ca 2 · 2 against Cl 2; Na 1 against SO4 2 · 1 (NaSO4− pairs take 0.4 % of each side).
    [{ Na: 0.003, Cl: 0.002 }, 0.001, 20],
    [{ Ca: 0.002, Cl: 0.002 }, 0.002, 100 / 3],
    [{ Na: 0.001, SO4: 0.001 }, -0.001, -100 / 3],
  ])("the charge of %j is %d eq/kg, an error of %d %%", (totals, charge, percent) => {
    const state = solveState({ totals, carbon: NO_CARBON, pH: 7, tempC: 25 });
    expect(state.chargeEqKg).toBeCloseTo(charge, 5);
    expect(Math.abs(state.chargeErrorPercent - percent)).toBeLessThan(0.5);
  });

  it("at pH 5 and no alkalinity the bicarbonate stands against the free acid: 0.00001 mol/kg each", () => {
    const state = solveState({ totals: { Ca: 1e-5, Cl: 2e-5 }, carbon: { alkalinityEqKg: 0 }, pH: 5, tempC: 25 });
    expect(state.alkalinityEqKg).toBeCloseTo(0, 10);
    expect((state.molalities[speciesIndex("HCO3-")] ?? 0) / 1e-5).toBeCloseTo(1, 1);
  });

  it("a state stays what it was when another is worked out", () => {
    const first = solveState(WATER);
    const [molalities, gammas] = [Array.from(first.molalities), Array.from(first.lnGammas)];
    solveState({ totals: { Na: 0.1, Cl: 0.1 }, carbon: { totalMolKg: 0.01 }, pH: 9, tempC: 10 });
    expect(Array.from(first.molalities)).toEqual(molalities);
    expect(Array.from(first.lnGammas)).toEqual(gammas);
  });
});

describe("the edges of the range", () => {
  it.each<[Partial<Problem>, string]>([
    [{ tempC: 4.99 }, "temperature-range"],
    [{ tempC: 35.01 }, "temperature-range"],
    [{ pH: 1.99 }, "ph-range"],
    [{ pH: 12.01 }, "ph-range"],
    [{ totals: { Ca: -0.001 } }, "total-range"],
    [{ totals: { Ca: Number.POSITIVE_INFINITY } }, "total-range"],
    [{ totals: { Cit: Number.NaN } }, "total-range"],
    [{ carbon: { totalMolKg: -0.001 } }, "carbon-range"],
    [{ carbon: { alkalinityEqKg: Number.POSITIVE_INFINITY } }, "carbon-range"],
    [{ carbon: { logPco2: -6.01 } }, "co2-range"],
    [{ carbon: { logPco2: 0.51 } }, "co2-range"],
    [{ carbon: { alkalinityEqKg: 0.001 }, pH: "balance" }, "balance-needs-carbon"],
    [{ totals: { Na: 0.6, Cl: 0.6 } }, "too-concentrated"],
    [{ totals: { Na: 3, Cl: 3 } }, "too-concentrated"],
    [{ carbon: { totalMolKg: 2.5 } }, "too-concentrated"],
    [{ carbon: { alkalinityEqKg: -2.5 } }, "too-concentrated"],
    [{ totals: { Cl: 0.05 }, pH: "balance" }, "unbalanced"],
    [{ totals: { Na: 0.05 }, pH: "balance" }, "unbalanced"],
    [{ carbon: { alkalinityEqKg: 0.005 }, pH: 3 }, "carbon-range"],
    [{ totals: { PO4: 0.01 }, carbon: { alkalinityEqKg: 0.002 }, pH: 9 }, "alkalinity-range"],
  ])("%j is refused: %s", (change, code) => {
    expect(codeOf({ ...WATER, ...change })).toBe(code);
  });

  it.each<Partial<Problem>>([
    { tempC: 5 },
    { tempC: 35 },
    { pH: 2 },
    { pH: 12 },
    { carbon: { logPco2: -6 } },
    { carbon: { logPco2: 0.5 }, pH: 4, tempC: 35 },
    { totals: { Na: 0.45, Cl: 0.45 } },
    { carbon: { alkalinityEqKg: 0 }, pH: 7 },
  ])("%j is answered", (change) => {
    expect(codeOf({ ...WATER, ...change })).toBeNull();
  });

  it.each<[Partial<Problem>, RegExp]>([
    // Half the sum of charge squared times amount: (3 + 3) / 2; carbon counts once: 0.003 + 2.5.
    [{ totals: { Na: 3, Cl: 3 } }, /ionic strength is 3\.00 mol/],
    [{ carbon: { totalMolKg: 2.5 } }, /ionic strength is 2\.50 mol/],
  ])("%j: the strength is said", (change, sentence) => {
    expect(() => solveState({ ...WATER, ...change })).toThrow(sentence);
  });

  it("the alkalinity that does not go with the pH is said in meq/L: 0.002 eq/kg is 2.000", () => {
    // At pH 9 phosphate is HPO4 2−, one equivalent a mole against H2PO4−: 0.01 mol/kg brings about 10 meq/L by itself.
    const said = () => solveState({ ...WATER, totals: { PO4: 0.01 }, carbon: { alkalinityEqKg: 0.002 }, pH: 9 });
    expect(said).toThrow(/2\.000 meq\/L .*pH 9\.00.* (9\.9|10\.)\d+ meq\/L/);
  });
});
