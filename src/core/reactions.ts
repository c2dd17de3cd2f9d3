/** The species list turned into arrays for the solver: stoichiometry, charges, and constants for one temperature. */

import { debyeHuckel } from "./activity.ts";
import { COMPONENT_CHARGES, COMPONENTS, LOG_K_CO2_GAS, logKAt, SOLIDS, SPECIES } from "./species.ts";

export const H = 0;
export const CO3 = 1;

/** What something is made of: how many of each component, of water, and the species whose constant is built on. */
interface Made {
  readonly count: Float64Array;
  readonly water: number;
  readonly builtOn: number;
}

const speciesNames: string[] = SPECIES.map((row) => row[0]);
const made: Made[] = [];

function readMade(text: string): Made {
  const count = new Float64Array(COMPONENTS.length);
  let water = 0;
  let builtOn = -1;
  for (const token of text.split(" ")) {
    const sign = token.startsWith("-") ? -1 : 1;
    const name = sign < 0 ? token.slice(1) : token;
    const component = (COMPONENTS as readonly string[]).indexOf(name);
    const part = made[speciesNames.indexOf(name)];
    if (name === "W") water += sign;
    else if (component >= 0) count[component] = (count[component] ?? 0) + sign;
    else if (part !== undefined) {
      builtOn = speciesNames.indexOf(name);
      water += part.water;
      for (let i = 0; i < count.length; i++) count[i] = (count[i] ?? 0) + (part.count[i] ?? 0);
    }
  }
  return { count, water, builtOn };
}
for (const row of SPECIES) made.push(readMade(row[1]));
const solids = SOLIDS.map((row) => readMade(row[1]));

export const SPECIES_COUNT = SPECIES.length;

const chargeOf = (count: Float64Array): number => count.reduce((sum, n, i) => sum + n * (COMPONENT_CHARGES[i] ?? 0), 0);
export const CHARGES: Float64Array = Float64Array.from(made, (m) => chargeOf(m.count));
/** Water molecules each species is built with (negative: given off). */
export const WATERS: Float64Array = Float64Array.from(made, (m) => m.water);
/** Carbonate and proton number of each species; protons counted from CO3-2 and PO4-3. */
export const CARBONS: Float64Array = Float64Array.from(made, (m) => m.count[CO3] ?? 0);
export const PROTONS: Float64Array = Float64Array.from(made, (m) => m.count[H] ?? 0);
/**
 * Alkalinity a mole brings, eq: the titration reference is CO2, H2PO4-, NH4+, H3BO3, SO4-2 (PHREEQC's choice;
 * citrate is counted from H2Cit-, as a titration to pH 4.5 would roughly find it).
 */
export const ALKALINITIES: Float64Array = Float64Array.from(
  made,
  (m) =>
    2 * (m.count[CO3] ?? 0) +
    2 * (m.count[COMPONENTS.indexOf("PO4")] ?? 0) +
    2 * (m.count[COMPONENTS.indexOf("Cit")] ?? 0) -
    (m.count[H] ?? 0),
);

/** Sparse stoichiometry: entries `start[s]` to `start[s + 1]` name the components of species s and how many. */
export interface Sparse {
  readonly start: Int16Array;
  readonly component: Int16Array;
  readonly count: Float64Array;
}
function sparse(countOf: (m: Made, i: number) => number): Sparse {
  const start: number[] = [0];
  const component: number[] = [];
  const count: number[] = [];
  for (const m of made) {
    for (let i = 0; i < COMPONENTS.length; i++) {
      const n = countOf(m, i);
      if (n === 0) continue;
      component.push(i);
      count.push(n);
    }
    start.push(component.length);
  }
  return { start: Int16Array.from(start), component: Int16Array.from(component), count: Float64Array.from(count) };
}
/** With total carbon held. */
export const CLOSED: Sparse = sparse((m, i) => m.count[i] ?? 0);
/** With CO2 held instead of carbonate: CO3 = CO2 + W − 2 H, so every carbon takes two protons away. */
export const OPEN: Sparse = sparse((m, i) =>
  i === H ? (m.count[H] ?? 0) - 2 * (m.count[CO3] ?? 0) : i === CO3 ? 0 : (m.count[i] ?? 0),
);

export function speciesIndex(name: string): number {
  return speciesNames.indexOf(name);
}

/** All that depends on temperature alone. */
export interface Constants {
  readonly tempC: number;
  readonly lnK: Float64Array;
  /** log10 K of the dissolution of each solid, in the order of SOLIDS, from its components. */
  readonly logKSolids: readonly number[];
  readonly logKCo2Gas: number;
  /** ln γ = −lnA z² √I / (1 + ionSize √I) + linear I; lnA = A ln 10. */
  readonly lnA: number;
  readonly ionSize: Float64Array;
  readonly linear: Float64Array;
}

function computeConstants(tempC: number): Constants {
  const { a, b } = debyeHuckel(tempC);
  const lnK = new Float64Array(SPECIES_COUNT);
  const ionSize = new Float64Array(SPECIES_COUNT);
  const linear = new Float64Array(SPECIES_COUNT);
  SPECIES.forEach(([, , k, gamma], s) => {
    const on = made[s]?.builtOn ?? -1;
    lnK[s] = logKAt(k, tempC) * Math.LN10 + (on < 0 ? 0 : (lnK[on] ?? 0));
    const z = CHARGES[s] ?? 0;
    ionSize[s] = gamma === null ? 1 : gamma[0] * b;
    linear[s] = Math.LN10 * (gamma === null ? (z === 0 ? 0.1 : 0.3 * a * z * z) : gamma[1]);
  });
  const logKSolids = SOLIDS.map(([, , k], i) => {
    const on = solids[i]?.builtOn ?? -1;
    return logKAt(k, tempC) - (on < 0 ? 0 : (lnK[on] ?? 0) / Math.LN10);
  });
  return { tempC, lnK, logKSolids, logKCo2Gas: logKAt(LOG_K_CO2_GAS, tempC), lnA: a * Math.LN10, ionSize, linear };
}

let last: Constants | null = null;
/** Constants at `tempC`; the last temperature is kept, since a batch of solutions shares one. */
export function constantsAt(tempC: number): Constants {
  if (last?.tempC !== tempC) last = computeConstants(tempC);
  return last;
}

/** log10 of the ion activity product of solid `index` of SOLIDS; −Infinity where a part is absent. */
export function logProduct(index: number, lnActivities: Float64Array, lnWater: number): number {
  const solid = solids[index];
  if (solid === undefined) return Number.NEGATIVE_INFINITY;
  let ln = solid.water * lnWater;
  for (let i = 0; i < COMPONENTS.length; i++) {
    const n = solid.count[i] ?? 0;
    if (n !== 0) ln += n * (lnActivities[i] ?? 0);
  }
  return ln / Math.LN10;
}
