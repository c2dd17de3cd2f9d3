import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isBadInput } from "../../src/core/errors.ts";
import { CARBONS, CHARGES, CLOSED, speciesIndex } from "../../src/core/reactions.ts";
import { logActivity, type Problem, type State, solveState, type Totals } from "../../src/core/speciation.ts";
import { AIR_LOG_PCO2, COMPONENTS, SPECIES } from "../../src/core/species.ts";
import { drawn } from "../drawn.ts";
import { problemOf, referenceRows } from "./reference-rows.ts";

/*
 * Tolerances against the 92 rows. Both sides use the constants of species.json, so what is left is: the pressure and
 * molar-volume terms of the program's constants (1 atm against saturation), its Debye–Hückel parameters from a newer
 * equation of state of water, its printed seven figures.
 */
const PH_WITHIN = 0.005; // a good pen reads to 0.01; seen: 0.0006
const STRENGTH_WITHIN = 0.002; // share of the whole; moves log γ by less than 0.0003; seen: 0.0006
const LOG_ACTIVITY_WITHIN = 0.005; // as for the pH, which is one; seen: 0.0013
const CARBON_WITHIN = 0.001; // share; follows from the activities at a given alkalinity; seen: 0.0001

describe("PHREEQC 3.8.9, 92 solutions (test/reference/equilibrium.json)", () => {
  test("no row is dropped", () => {
    expect(referenceRows).toHaveLength(92);
    const count = (kind: string) => referenceRows.filter((row) => row.kind === kind).length;
    expect([count("water"), count("feed"), count("titration-closed"), count("titration-air")]).toEqual([
      10, 10, 36, 36,
    ]);
  });

  test.each(referenceRows.map((row) => [row.id, row] as const))("%s", (_, row) => {
    const state = solveState(problemOf(row));
    const { result } = row;
    expect(Math.abs(state.pH - result.pH)).toBeLessThan(PH_WITHIN);
    expect(Math.abs(state.ionicStrengthMolKg / result.ionicStrength_mol_kgw - 1)).toBeLessThan(STRENGTH_WITHIN);
    expect(Math.abs(state.alkalinityEqKg * 1000 - result.alkalinity_meq_kgw)).toBeLessThan(1e-5);
    expect(Math.abs((state.totalCarbonMolKg * 1000) / result.totalCarbon_mmol_kgw - 1)).toBeLessThan(CARBON_WITHIN);
    for (const [species, expected] of Object.entries(result.log10Activity)) {
      const found = logActivity(state, species);
      if (expected === null) expect(found).toBeNull();
      else expect(Math.abs((found ?? Number.NaN) - expected)).toBeLessThan(LOG_ACTIVITY_WITHIN);
    }
    const pco2 = result.saturationIndex["CO2(g)"] ?? Number.NaN;
    expect(Math.abs((state.logPco2 ?? Number.NaN) - pco2)).toBeLessThan(LOG_ACTIVITY_WITHIN);
  });
});

/** mmol/kg, from nothing to a stock-like 60; sums to an ionic strength of at most about 0.4. */
const someTotal = fc.oneof(fc.constant(0), fc.double({ min: 1e-6, max: 20, noNaN: true }));
const someTotals = fc
  .record(Object.fromEntries(COMPONENTS.slice(2).map((name) => [name, someTotal])))
  .map((mmol) => Object.fromEntries(Object.entries(mmol).map(([name, value]) => [name, value / 1000])) as Totals);
const someTemp = fc.double({ min: 5, max: 35, noNaN: true });
const somePH = fc.double({ min: 2, max: 12, noNaN: true });
const someCarbon = fc.double({ min: 0, max: 0.02, noNaN: true });

function totalIn(state: State, component: number): number {
  let sum = 0;
  for (let s = 0; s < SPECIES.length; s++) {
    for (let e = CLOSED.start[s] ?? 0; e < (CLOSED.start[s + 1] ?? 0); e++) {
      if (CLOSED.component[e] === component) sum += (CLOSED.count[e] ?? 0) * (state.molalities[s] ?? 0);
    }
  }
  return sum;
}

function checkState(problem: Problem, state: State): void {
  const numbers = [...state.molalities, state.pH, state.ionicStrengthMolKg, state.alkalinityEqKg];
  expect(numbers.every(Number.isFinite)).toBe(true);
  expect(state.molalities.every((m) => m >= 0)).toBe(true);
  expect(state.iterations).toBeLessThan(60);
  const off = COMPONENTS.filter((name, i) => {
    const total = problem.totals[name as keyof Totals] ?? 0;
    return i >= 2 && Math.abs(totalIn(state, i) - total) > 1e-12 + 1e-7 * total;
  });
  expect(off).toEqual([]);
  if ("totalMolKg" in problem.carbon) {
    expect(Math.abs(state.totalCarbonMolKg - problem.carbon.totalMolKg)).toBeLessThanOrEqual(
      1e-12 + 1e-7 * problem.carbon.totalMolKg,
    );
  } else if ("logPco2" in problem.carbon) expect(state.logPco2).toBeCloseTo(problem.carbon.logPco2, 6);
  const charge = state.molalities.reduce((sum, m, s) => sum + m * (CHARGES[s] ?? 0), 0);
  if (problem.pH === "balance") expect(Math.abs(charge)).toBeLessThan(1e-9 + 1e-7 * state.ionicStrengthMolKg);
}

/** Solves, or says that the solution is out of range with a BadInput; anything else fails. */
function solveOrRefuse(problem: Problem): State | null {
  try {
    return solveState(problem);
  } catch (error) {
    if (!isBadInput(error)) throw error;
    return null;
  }
}

describe("every solution within the range settles, with mass and charge conserved", () => {
  test("10,000 random solutions with a pH, closed, at an alkalinity or in balance with air", () => {
    let solved = 0;
    fc.assert(
      fc.property(
        someTotals,
        somePH,
        someTemp,
        someCarbon,
        fc.integer({ min: 0, max: 2 }),
        (totals, pH, tempC, c, how) => {
          const carbon = how === 0 ? { totalMolKg: c } : how === 1 ? { alkalinityEqKg: c } : { logPco2: AIR_LOG_PCO2 };
          const problem: Problem = { totals, carbon, pH, tempC };
          const state = solveOrRefuse(problem);
          if (state === null) return;
          solved++;
          checkState(problem, state);
        },
      ),
      { numRuns: drawn(10_000) },
    );
    // an alkalinity often contradicts a random pH, and an open water at pH 12 drinks CO2 without end
    expect(solved).toBeGreaterThan(0.6 * drawn(10_000));
  }, 60_000);

  test("10,000 random solutions with the pH from charge balance", () => {
    let solved = 0;
    fc.assert(
      fc.property(someTotals, someTemp, someCarbon, fc.boolean(), (some, tempC, c, open) => {
        // the strong anions are scaled so that a balance exists: charge of the cations less 0–60 % of weak acids
        const cations = (some.Na ?? 0) + (some.K ?? 0) + (some.NH4 ?? 0) + 2 * ((some.Ca ?? 0) + (some.Mg ?? 0));
        const anions = (some.Cl ?? 0) + (some.NO3 ?? 0) + 2 * (some.SO4 ?? 0);
        const weak = (some.PO4 ?? 0) + c + 2 * (some.Cit ?? 0);
        const room = Math.max(cations - 0.6 * weak, 1e-5);
        const scale = anions > 0 ? room / anions : 0;
        const totals = {
          ...some,
          Cl: (some.Cl ?? 0) * scale,
          NO3: (some.NO3 ?? 0) * scale,
          SO4: (some.SO4 ?? 0) * scale,
        };
        const problem: Problem = {
          totals,
          carbon: open ? { logPco2: AIR_LOG_PCO2 } : { totalMolKg: c },
          pH: "balance",
          tempC,
        };
        const state = solveOrRefuse(problem);
        if (state === null) return;
        solved++;
        checkState(problem, state);
      }),
      { numRuns: drawn(10_000) },
    );
    expect(solved).toBeGreaterThan(0.8 * drawn(10_000));
  }, 60_000);

  test("pure water is neutral: pH is half of pKw (13.995 at 25 °C, phreeqc.dat)", () => {
    const state = solveState({ totals: {}, carbon: { totalMolKg: 0 }, pH: "balance", tempC: 25 });
    expect(state.pH).toBeCloseTo(13.995 / 2, 3);
  });

  test("pH falls as acid is added, and what an acid adds is kept when the CO2 leaves", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 8, noNaN: true }), someTemp, (alkalinityMeq, tempC) => {
        const totals = { Ca: alkalinityMeq / 4000, Na: alkalinityMeq / 2000 };
        const start = solveState({ totals, carbon: { alkalinityEqKg: alkalinityMeq / 1000 }, pH: 8, tempC });
        let before = start.pH;
        for (const share of [0.1, 0.3, 0.5, 0.7, 0.9, 1.1]) {
          const acid = (share * alkalinityMeq) / 1000;
          const protons = { protonsMolKg: start.protonsMolKg + acid };
          const mixed = { ...totals, NO3: acid };
          const closed = solveState({
            totals: mixed,
            carbon: { totalMolKg: start.totalCarbonMolKg },
            pH: protons,
            tempC,
          });
          expect(closed.pH).toBeLessThan(before);
          before = closed.pH;
          const standing = solveState({ totals: mixed, carbon: { logPco2: AIR_LOG_PCO2 }, pH: protons, tempC });
          expect(standing.alkalinityEqKg).toBeCloseTo(closed.alkalinityEqKg, 8);
          expect(standing.protonsMolKg).toBeCloseTo(closed.protonsMolKg, 8);
        }
      }),
      { numRuns: drawn(200) },
    );
  });
});

describe("outside the range it says so", () => {
  const water: Problem = { totals: { Ca: 0.001, Cl: 0.002 }, carbon: { totalMolKg: 0 }, pH: 7, tempC: 20 };
  test.each([
    [{ ...water, tempC: 4 }, /4 °C is outside 5 to 35/],
    [{ ...water, tempC: Number.NaN }, /NaN °C is outside/],
    [{ ...water, pH: 13 }, /pH 13 is outside 2 to 12/],
    [{ ...water, totals: { Ca: -1 } }, /Ca is -1 mol\/kg/],
    [{ ...water, totals: { Na: 0.8, Cl: 0.8 } }, /ionic strength is 0\.80/],
    [{ ...water, totals: { Na: 0.05 }, pH: "balance" }, /balance only at pH 12\.\d.*cations/],
    [{ ...water, totals: { Cl: 0.05 }, pH: "balance" }, /balance only at pH 1\.\d.*anions/],
    [{ ...water, carbon: { alkalinityEqKg: 0.002 }, pH: "balance" }, /needs total carbon/],
    [{ ...water, carbon: { alkalinityEqKg: 0.005 }, pH: 3 }, /dissolved CO2; one of the two is wrong/],
    [{ ...water, totals: { PO4: 0.01 }, carbon: { alkalinityEqKg: 0.002 }, pH: 9 }, /without any carbonate/],
    [{ ...water, carbon: { logPco2: 3 } }, /log10 pCO2 3 is outside/],
    [{ ...water, carbon: { totalMolKg: Number.NaN } }, /Total carbon NaN/],
  ] as [Problem, RegExp][])("%o", (problem, sentence) => {
    expect(() => solveState(problem)).toThrow(sentence);
  });
});

describe("Davies 1962, log γ = −A z² (√I / (1 + √I) − 0.3 I), A = 0.509 at 25 °C (phreeqc.dat), by hand at I = 0.1", () => {
  // √0.1 = 0.3162; 0.3162 / 1.3162 − 0.03 = 0.2103; times 0.509: 0.1070. A neutral species: 0.1 I (PHREEQC's manual).
  const state = solveState({
    totals: { K: 0.1, Cl: 0.1, SO4: 1e-7, B: 1e-7, Cit: 1e-7 },
    carbon: { totalMolKg: 0 },
    pH: 7,
    tempC: 25,
  });
  test.each([
    ["H3BO3", 0.01],
    ["H2BO3-", -0.107],
    ["HSO4-", -0.107],
    ["HCit-2", -0.428],
    ["Cit-3", -0.963],
  ])("%s", (name, logGamma) => {
    expect(state.ionicStrengthMolKg).toBeCloseTo(0.1, 4);
    expect((state.lnGammas[speciesIndex(name)] ?? Number.NaN) / Math.LN10).toBeCloseTo(logGamma, 2);
  });
});

test("a water without alkalinity may stand at any common pH", () => {
  const state = solveState({ totals: { Ca: 1e-5, Cl: 2e-5 }, carbon: { alkalinityEqKg: 0 }, pH: 7.6, tempC: 20 });
  expect(state.ionicStrengthMolKg).toBeLessThan(1e-4);
  expect(CARBONS.length).toBe(SPECIES.length);
});
