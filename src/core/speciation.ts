/** Which species a solution holds at equilibrium: what may be asked, what comes back, and the range it holds in. */

import { MAX_IONIC_STRENGTH, MAX_TEMP_C, MIN_TEMP_C } from "./activity.ts";
import { BadInput } from "./errors.ts";
import { type Settled, settle } from "./newton.ts";
import {
  ALKALINITIES,
  CARBONS,
  CHARGES,
  CLOSED,
  CO3,
  constantsAt,
  H,
  PROTONS,
  SPECIES_COUNT,
  speciesIndex,
  WATERS,
} from "./reactions.ts";
import { COMPONENT_CHARGES, COMPONENTS, type Component } from "./species.ts";

/** mol per kg of water of each component except H and CO3; absent = none. */
export type Totals = Readonly<Partial<Record<Exclude<Component, "H" | "CO3">, number>>>;

export type Carbon =
  | { readonly totalMolKg: number }
  /** Alkalinity of the whole solution; needs a pH. */
  | { readonly alkalinityEqKg: number }
  /** In balance with a gas, log10 atm of CO2; AIR_LOG_PCO2 is outdoor air. */
  | { readonly logPco2: number };

export interface Problem {
  readonly totals: Totals;
  readonly carbon: Carbon;
  /**
   * A pH; or "balance": the pH at which the charges add up; or the proton excess of another state, which stays the
   * same when CO2 comes or goes and grows by what an acid adds, so it works where a report does not balance.
   */
  readonly pH: number | "balance" | { readonly protonsMolKg: number };
  readonly tempC: number;
}

export interface State {
  readonly pH: number;
  readonly tempC: number;
  readonly ionicStrengthMolKg: number;
  readonly waterActivity: number;
  readonly totals: Totals;
  readonly totalCarbonMolKg: number;
  /** To CO2, H2PO4-, H3BO3 and NH4+ as reference. */
  readonly alkalinityEqKg: number;
  /** Protons counted from CO2, PO4-3, SO4-2, NH4+, H3BO3 and citrate: kept when CO2 comes or goes. */
  readonly protonsMolKg: number;
  /** Cations less anions, eq/kg; about 0 where the pH was found from charge balance. */
  readonly chargeEqKg: number;
  /** 100 (cations − anions) / (cations + anions) over the species as they are. */
  readonly chargeErrorPercent: number;
  /** log10 atm of CO2 the solution would be in balance with; null without carbon. */
  readonly logPco2: number | null;
  /** mol/kg of each species, in the order of SPECIES. */
  readonly molalities: Float64Array;
  /** Natural logs of activity of the components, −Infinity where absent. */
  readonly lnActivities: Float64Array;
  /** Natural logs of the activity coefficients, in the order of SPECIES; 0 where absent. */
  readonly lnGammas: Float64Array;
  /** Newton steps it took. */
  readonly iterations: number;
}

const N = COMPONENTS.length;
const CO2 = speciesIndex("CO2");

/**
 * The state of a solution. Activity model: extended Debye–Hückel (Truesdell & Jones) and Davies, up to an ionic
 * strength of 0.5 mol/kg; 5 to 35 °C. Throws BadInput outside that, for charges that no pH from 2 to 12 balances,
 * for an alkalinity that does not go with the pH; NoConvergence if the iteration does not settle.
 */
export function solveState(problem: Problem): State {
  checkRange(problem);
  return readState(problem, settle(problem));
}

function checkRange({ totals, carbon, pH, tempC }: Problem): void {
  if (!(tempC >= MIN_TEMP_C && tempC <= MAX_TEMP_C)) {
    throw new BadInput("temperature-range", `Temperature ${tempC} °C is outside ${MIN_TEMP_C} to ${MAX_TEMP_C} °C.`);
  }
  if (typeof pH === "number" && !(pH >= 2 && pH <= 12)) {
    throw new BadInput("ph-range", `pH ${pH} is outside 2 to 12.`);
  }
  let strength = 0;
  for (let i = 2; i < N; i++) {
    const name = COMPONENTS[i] as keyof Totals;
    const total = totals[name] ?? 0;
    if (!(total >= 0 && total < Number.POSITIVE_INFINITY)) {
      throw new BadInput("total-range", `${name} is ${total} mol/kg; an amount of 0 or more is needed.`);
    }
    strength += 0.5 * total * (COMPONENT_CHARGES[i] as number) ** 2;
  }
  const amount = "totalMolKg" in carbon ? carbon.totalMolKg : "alkalinityEqKg" in carbon ? carbon.alkalinityEqKg : 0;
  if (!Number.isFinite(amount) || ("totalMolKg" in carbon && amount < 0)) {
    throw new BadInput("carbon-range", `Total carbon ${amount} mol/kg; an amount of 0 or more is needed.`);
  }
  if ("logPco2" in carbon && !(carbon.logPco2 >= -6 && carbon.logPco2 <= 0.5)) {
    throw new BadInput("co2-range", `log10 pCO2 ${carbon.logPco2} is outside −6 to 0.5; outdoor air is −3.38.`);
  }
  if (typeof pH !== "number" && "alkalinityEqKg" in carbon) {
    throw new BadInput(
      "balance-needs-carbon",
      "Finding the pH from charge balance needs total carbon (CO3) or balance with air; an alkalinity alone does not say how much CO2 there is.",
    );
  }
  if (strength + Math.abs(amount) > 2) throw tooStrong(strength + Math.abs(amount));
}

function tooStrong(strength: number): BadInput {
  return new BadInput(
    "too-concentrated",
    `The ionic strength is ${strength.toFixed(2)} mol/kg, above ${MAX_IONIC_STRENGTH} where these activity coefficients hold; dilute it first, or check the unit.`,
  );
}

function readState(problem: Problem, settled: Settled): State {
  const { constants, ionicStrengthMolKg, lnWater, molalities, lnActivities } = settled;
  if (ionicStrengthMolKg > MAX_IONIC_STRENGTH) throw tooStrong(ionicStrengthMolKg);
  const lnH = lnActivities[H] as number;
  const pH = -lnH / Math.LN10;
  if (pH < 2 || pH > 12) {
    throw new BadInput(
      "unbalanced",
      `The charges of these ions balance only at pH ${pH.toFixed(1)}: something is missing from the report, or the ${pH > 12 ? "cations (Ca, Mg, Na, K, NH4)" : "anions (NO3, SO4, Cl, PO4)"} are too high.`,
    );
  }
  let carbon = 0;
  let alkalinity = 0;
  let protons = 0;
  let cations = 0;
  let anions = 0;
  for (let s = 0; s < SPECIES_COUNT; s++) {
    const m = molalities[s] as number;
    carbon += (CARBONS[s] as number) * m;
    alkalinity += (ALKALINITIES[s] as number) * m;
    protons += ((PROTONS[s] as number) - 2 * (CARBONS[s] as number)) * m;
    const eq = (CHARGES[s] as number) * m;
    if (eq > 0) cations += eq;
    else anions -= eq;
  }
  if (carbon > 0.1) {
    throw new BadInput(
      "carbon-range",
      `Alkalinity and pH ${pH.toFixed(2)} together need ${carbon.toFixed(2)} mol/kg of dissolved CO2; one of the two is wrong.`,
    );
  }
  // 0.02 meq/L is 1 mg/L as CaCO3, less than a report resolves: a water without alkalinity may stand at pH 7.5
  if (
    "alkalinityEqKg" in problem.carbon &&
    Math.abs(alkalinity - problem.carbon.alkalinityEqKg) > 2e-5 + 1e-6 * alkalinity
  ) {
    throw new BadInput(
      "alkalinity-range",
      `An alkalinity of ${meqL(problem.carbon.alkalinityEqKg)} meq/L does not go with pH ${pH.toFixed(2)}: without any carbonate it would already be ${meqL(alkalinity)} meq/L.`,
    );
  }
  const lnCo2 = (constants.lnK[CO2] as number) + (lnActivities[CO3] as number) + 2 * lnH - lnWater;
  return {
    pH,
    tempC: problem.tempC,
    ionicStrengthMolKg,
    waterActivity: Math.exp(lnWater),
    totals: problem.totals,
    totalCarbonMolKg: carbon,
    alkalinityEqKg: alkalinity,
    protonsMolKg: protons,
    chargeEqKg: cations - anions,
    chargeErrorPercent: cations + anions > 0 ? (100 * (cations - anions)) / (cations + anions) : 0,
    logPco2: Number.isFinite(lnCo2) ? lnCo2 / Math.LN10 - constants.logKCo2Gas : null,
    molalities,
    lnActivities,
    lnGammas: settled.lnGammas,
    iterations: settled.iterations,
  };
}

function meqL(eqKg: number): string {
  return (eqKg * 1000).toFixed(3);
}

/** log10 activity of a species by its name in SPECIES, or null where it is absent. */
export function logActivity(state: State, species: string): number | null {
  const s = speciesIndex(species);
  const { lnK } = constantsAt(state.tempC);
  let ln = (lnK[s] ?? Number.NaN) + (WATERS[s] ?? 0) * Math.log(state.waterActivity);
  for (let e = CLOSED.start[s] ?? 0; e < (CLOSED.start[s + 1] ?? 0); e++) {
    ln += (CLOSED.count[e] ?? 0) * (state.lnActivities[CLOSED.component[e] ?? 0] ?? 0);
  }
  return Number.isFinite(ln) ? ln / Math.LN10 : null;
}
