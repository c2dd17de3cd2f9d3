/** The iteration behind the equilibrium: Newton's method on log activities, activity coefficients renewed at every step. */

import { NoConvergence } from "./errors.ts";
import { startingPoint } from "./guess.ts";
import {
  ALKALINITIES,
  CARBONS,
  CHARGES,
  CLOSED,
  CO3,
  type Constants,
  constantsAt,
  H,
  OPEN,
  SPECIES_COUNT,
  type Sparse,
  speciesIndex,
  WATERS,
} from "./reactions.ts";
import type { Problem } from "./speciation.ts";
import { COMPONENTS } from "./species.ts";

const N = COMPONENTS.length;
/** More steps than any solution within the range takes (tests over random ones: see test/core/speciation.test.ts). */
const MAX_ITERATIONS = 60;
/** Steps in ln activity below this end the iteration: 1e-9 is 4e-10 of a pH unit. */
const TOLERANCE = 1e-9;
/** A step of more than a factor of e² in activity leaves the region where the linear model holds. */
const LONGEST_STEP = 2;
const CO2 = speciesIndex("CO2");

/* Work space, overwritten by every call; only copies of it are handed out. */
const n = new Float64Array(SPECIES_COUNT);
const lnGamma = new Float64Array(SPECIES_COUNT);
const x = new Float64Array(N);
const step = new Float64Array(N);
const residual = new Float64Array(N);
const jacobian = new Float64Array(N * N);
const wanted = new Float64Array(N);
const unknowns = new Int16Array(N);
const present = new Int16Array(SPECIES_COUNT);
let unknownCount = 0;
let presentCount = 0;

export interface Settled {
  readonly constants: Constants;
  readonly ionicStrengthMolKg: number;
  readonly lnWater: number;
  readonly iterations: number;
  readonly molalities: Float64Array;
  /** Of the components, −Infinity where absent. */
  readonly lnActivities: Float64Array;
  readonly lnGammas: Float64Array;
}

/**
 * With the activity coefficients held, the unknown ln activities minimise a convex function whose gradient is the
 * mass balances (charge balance is the mass balance of protons, since charge is a sum over components). So every
 * Newton matrix is symmetric and positive definite, and a step cut short always leads on.
 * Throws NoConvergence with the last step as its residual.
 */
export function settle(problem: Problem): Settled {
  const { carbon } = problem;
  const constants = constantsAt(problem.tempC);
  const open = "logPco2" in carbon;
  const net = open ? OPEN : CLOSED;
  const alkalinity = "alkalinityEqKg" in carbon ? carbon.alkalinityEqKg : null;
  const lnCo2 = open ? (carbon.logPco2 + constants.logKCo2Gas) * Math.LN10 : Number.NaN;
  const { holdsCarbon, pHGiven, ionicStrengthMolKg } = startingPoint(problem, constants, { wanted, x });
  listWhatIsThere({ open, holdsCarbon, pHGiven });

  let ionicStrength = ionicStrengthMolKg;
  let lnWater = 0;
  let iterations = 0;
  let largest = Number.POSITIVE_INFINITY;
  const holdCo2 = () => {
    if (open) x[CO3] = lnCo2 + lnWater - (constants.lnK[CO2] as number) - 2 * (x[H] as number);
  };
  updateGammas(constants, ionicStrength);
  while (iterations < MAX_ITERATIONS) {
    iterations++;
    holdCo2();
    fillMolalities(constants, lnWater);
    if (alkalinity !== null) wanted[CO3] = carbonForAlkalinity(alkalinity);
    fillResidual(net);
    fillJacobian(net);
    solveCholesky();
    largest = longest();
    if (!(largest < Number.POSITIVE_INFINITY)) break;
    let taken = largest > LONGEST_STEP ? LONGEST_STEP / largest : 1;
    move(taken);
    if (largest > 0.5) {
      const slopeBefore = Math.abs(slope());
      for (let halvings = 0; halvings < 6; halvings++) {
        holdCo2();
        fillMolalities(constants, lnWater);
        fillResidual(net);
        if (slope() <= 0.9 * slopeBefore) break;
        taken /= 2;
        move(-taken);
      }
    }
    holdCo2();
    fillMolalities(constants, lnWater);
    let newStrength = 0;
    let solutes = 0;
    for (let p = 0; p < presentCount; p++) {
      const s = present[p] as number;
      const z = CHARGES[s] as number;
      newStrength += 0.5 * z * z * (n[s] as number);
      solutes += n[s] as number;
    }
    newStrength = Math.min(newStrength, 2);
    // activity of water as in PHREEQC: 1 − 0.017 Σ m (Garrels & Christ 1965; memory)
    lnWater = Math.log(Math.max(0.9, 1 - 0.017 * solutes));
    const change = Math.abs(newStrength - ionicStrength);
    ionicStrength = newStrength;
    if (largest < TOLERANCE && change <= TOLERANCE * ionicStrength) break;
    updateGammas(constants, ionicStrength);
  }
  if (!(largest < 1e-6)) {
    throw new NoConvergence(
      `The equilibrium did not settle in ${iterations} steps; log activities still moved by ${largest}.`,
      largest,
    );
  }
  const there = (i: number) => i === H || (i === CO3 ? holdsCarbon : (wanted[i] as number) > 0);
  return {
    constants,
    ionicStrengthMolKg: ionicStrength,
    lnWater,
    iterations,
    molalities: n.slice(),
    lnActivities: x.map((value, i) => (there(i) ? value : Number.NEGATIVE_INFINITY)),
    lnGammas: lnGamma.slice(),
  };
}

function listWhatIsThere(is: { open: boolean; holdsCarbon: boolean; pHGiven: boolean }): void {
  unknownCount = 0;
  for (let i = 0; i < N; i++) {
    if (i === H ? !is.pHGiven : i === CO3 ? is.holdsCarbon && !is.open : (wanted[i] as number) > 0) {
      unknowns[unknownCount++] = i;
    }
  }
  presentCount = 0;
  for (let s = 0; s < SPECIES_COUNT; s++) {
    n[s] = 0;
    lnGamma[s] = 0;
    let all = true;
    for (let e = CLOSED.start[s] as number; e < (CLOSED.start[s + 1] as number); e++) {
      const i = CLOSED.component[e] as number;
      if (i !== H && (i === CO3 ? !is.holdsCarbon : (wanted[i] as number) <= 0)) all = false;
    }
    if (all) present[presentCount++] = s;
  }
}

function updateGammas(constants: Constants, ionicStrength: number): void {
  const root = Math.sqrt(ionicStrength);
  const { lnA, ionSize, linear } = constants;
  for (let p = 0; p < presentCount; p++) {
    const s = present[p] as number;
    const z = CHARGES[s] as number;
    lnGamma[s] = (-lnA * z * z * root) / (1 + (ionSize[s] as number) * root) + (linear[s] as number) * ionicStrength;
  }
}

function fillMolalities(constants: Constants, lnWater: number): void {
  const { start, component, count } = CLOSED;
  const { lnK } = constants;
  for (let p = 0; p < presentCount; p++) {
    const s = present[p] as number;
    let ln = (lnK[s] as number) - (lnGamma[s] as number) + (WATERS[s] as number) * lnWater;
    for (let e = start[s] as number; e < (start[s + 1] as number); e++) {
      ln += (count[e] as number) * (x[component[e] as number] as number);
    }
    n[s] = Math.exp(Math.min(ln, 20));
  }
}

/** Total carbon that gives this alkalinity if the shares of the carbon species stay as they are. */
function carbonForAlkalinity(alkalinityEqKg: number): number {
  let other = 0;
  let fromCarbon = 0;
  let carbon = 0;
  for (let p = 0; p < presentCount; p++) {
    const s = present[p] as number;
    const c = CARBONS[s] as number;
    const eq = (ALKALINITIES[s] as number) * (n[s] as number);
    if (c === 0) other += eq;
    else {
      fromCarbon += eq;
      carbon += c * (n[s] as number);
    }
  }
  // held below 1 mol/kg so that a senseless pair of alkalinity and pH ends in a refusal and not in overflow
  return Math.min(Math.max(((alkalinityEqKg - other) * carbon) / fromCarbon, 1e-12), 1);
}

function fillResidual(net: Sparse): void {
  const { start, component, count } = net;
  for (let i = 0; i < N; i++) residual[i] = -(wanted[i] as number);
  for (let p = 0; p < presentCount; p++) {
    const s = present[p] as number;
    for (let e = start[s] as number; e < (start[s + 1] as number); e++) {
      const i = component[e] as number;
      residual[i] = (residual[i] as number) + (count[e] as number) * (n[s] as number);
    }
  }
}

function fillJacobian(net: Sparse): void {
  const { start, component, count } = net;
  jacobian.fill(0);
  for (let p = 0; p < presentCount; p++) {
    const s = present[p] as number;
    const to = start[s + 1] as number;
    for (let e = start[s] as number; e < to; e++) {
      const weighted = (count[e] as number) * (n[s] as number);
      const row = (component[e] as number) * N;
      for (let f = start[s] as number; f < to; f++) {
        const at = row + (component[f] as number);
        jacobian[at] = (jacobian[at] as number) + weighted * (count[f] as number);
      }
    }
  }
}

function longest(): number {
  let largest = 0;
  for (let u = 0; u < unknownCount; u++) largest = Math.max(largest, Math.abs(step[unknowns[u] as number] as number));
  return largest;
}

function move(share: number): void {
  for (let u = 0; u < unknownCount; u++) {
    const i = unknowns[u] as number;
    x[i] = (x[i] as number) + share * (step[i] as number);
  }
}

/** Derivative of the convex function along the step; at its minimum along the step it is 0, beyond it turns positive. */
function slope(): number {
  let sum = 0;
  for (let u = 0; u < unknownCount; u++) {
    const i = unknowns[u] as number;
    sum += (residual[i] as number) * (step[i] as number);
  }
  return sum;
}

/** step = −J⁻¹ residual over the unknowns; J is symmetric and positive definite. */
function solveCholesky(): void {
  for (let a = 0; a < unknownCount; a++) {
    const i = unknowns[a] as number;
    let right = -(residual[i] as number);
    for (let b = 0; b <= a; b++) {
      const j = unknowns[b] as number;
      let sum = jacobian[i * N + j] as number;
      for (let c = 0; c < b; c++) {
        const k = unknowns[c] as number;
        sum -= (jacobian[i * N + k] as number) * (jacobian[j * N + k] as number);
      }
      jacobian[i * N + j] = a === b ? Math.sqrt(Math.max(sum, 1e-300)) : sum / (jacobian[j * N + j] as number);
      if (b < a) right -= (jacobian[i * N + j] as number) * (step[j] as number);
    }
    step[i] = right / (jacobian[i * N + i] as number);
  }
  for (let a = unknownCount - 1; a >= 0; a--) {
    const i = unknowns[a] as number;
    let sum = step[i] as number;
    for (let b = a + 1; b < unknownCount; b++) {
      const j = unknowns[b] as number;
      sum -= (jacobian[j * N + i] as number) * (step[j] as number);
    }
    step[i] = sum / (jacobian[i * N + i] as number);
  }
}
