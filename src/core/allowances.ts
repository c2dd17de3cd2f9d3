/** How far a feed may lie from its label before an inspector objects: the error band of everything a label predicts. */

import { conductivity } from "./conductivity.ts";
import { type Amounts, ATOMIC_WEIGHTS, type ElementSymbol } from "./elements.ts";
import { type Elements, solutionAt } from "./solution.ts";

/** Guaranteed percent of N, P2O5, K2O, and the allowance in units of percent; between the rows, a straight line. */
const GUARANTEES = [4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32];
const MACRO: Readonly<Record<"N" | "P2O5" | "K2O", readonly number[]>> = {
  N: [0.49, 0.51, 0.52, 0.54, 0.55, 0.57, 0.58, 0.61, 0.63, 0.67, 0.7, 0.73, 0.75, 0.78, 0.81, 0.83, 0.86, 0.88],
  P2O5: [0.67, 0.67, 0.67, 0.68, 0.68, 0.68, 0.69, 0.69, 0.7, 0.7, 0.71, 0.72, 0.73, 0.73, 0.74, 0.75, 0.76, 0.76],
  K2O: [0.41, 0.43, 0.47, 0.53, 0.6, 0.65, 0.7, 0.79, 0.87, 0.94, 1.01, 1.08, 1.15, 1.21, 1.27, 1.33, 1.39, 1.44],
};
/** Units of percent, and share of the guarantee on top; at most 1 unit. */
const MINOR: Readonly<Partial<Record<ElementSymbol, readonly [units: number, share: number]>>> = {
  Ca: [0.2, 0.05],
  Mg: [0.2, 0.05],
  S: [0.2, 0.05],
  B: [0.003, 0.15],
  Mo: [0.0001, 0.3],
  Cl: [0.005, 0.1],
  Cu: [0.005, 0.1],
  Fe: [0.005, 0.1],
  Mn: [0.005, 0.1],
  Na: [0.005, 0.1],
  Zn: [0.005, 0.1],
};

const P_IN_P2O5 = (2 * ATOMIC_WEIGHTS.P) / (2 * ATOMIC_WEIGHTS.P + 5 * ATOMIC_WEIGHTS.O);
const K_IN_K2O = (2 * ATOMIC_WEIGHTS.K) / (2 * ATOMIC_WEIGHTS.K + ATOMIC_WEIGHTS.O);

function macro(name: keyof typeof MACRO, percent: number): number {
  const table = MACRO[name];
  for (let i = 1; i < GUARANTEES.length; i++) {
    const [g0 = 0, g1 = 0] = [GUARANTEES[i - 1], GUARANTEES[i]];
    if (percent < g1) {
      const [a0 = 0, a1 = 0] = [table[i - 1], table[i]];
      return a0 + ((a1 - a0) * Math.max(percent - g0, 0)) / (g1 - g0);
    }
  }
  return table[table.length - 1] ?? 0;
}

/**
 * Investigational allowance of one guarantee, elemental percent in and out; never more than the guarantee itself; 0
 * where no allowance is published (Si). A label of 10-5-5 may hold 9.42 % N.
 */
export function allowancePercent(symbol: ElementSymbol, percent: number): number {
  const minor = MINOR[symbol];
  let allowed = 0;
  if (symbol === "N") allowed = macro("N", percent);
  else if (symbol === "P") allowed = macro("P2O5", percent / P_IN_P2O5) * P_IN_P2O5;
  else if (symbol === "K") allowed = macro("K2O", percent / K_IN_K2O) * K_IN_K2O;
  else if (minor !== undefined) allowed = Math.min(minor[0] + minor[1] * percent, 1);
  return Math.min(allowed, percent);
}

export interface LabelledPart {
  /** Elemental percent. */
  readonly percent: Amounts;
  /** mg/L of each element that this feed brings. */
  readonly bringsMgL: Amounts;
}

/** Elements that carry the current; trace elements hardly do. */
export const CONDUCTING: readonly ElementSymbol[] = ["N", "P", "K", "Ca", "Mg", "S", "Na", "Cl"];

/** mg/L by which each element of a mix may be off, the feeds' allowances added as independent errors. */
export function labelErrorMgL(parts: readonly LabelledPart[]): Amounts {
  const errors: Partial<Record<ElementSymbol, number>> = {};
  for (const { percent, bringsMgL } of parts) {
    for (const symbol of Object.keys(bringsMgL) as ElementSymbol[]) {
      const printed = percent[symbol] ?? 0;
      if (printed <= 0) continue;
      const off = ((bringsMgL[symbol] ?? 0) * allowancePercent(symbol, printed)) / printed;
      errors[symbol] = Math.hypot(errors[symbol] ?? 0, off);
    }
  }
  return errors;
}

export interface EcBand {
  readonly ecMsCm: number;
  /** Half the band, mS/cm at 25 °C. */
  readonly plusMinusMsCm: number;
}

/**
 * Predicted EC at 25 °C and how far it may be off by the labels' allowances alone, elements taken as independent; the
 * model itself adds about 3 %.
 */
export function ecBand(elements: Elements, errorsMgL: Amounts): EcBand {
  const ec = (amounts: Amounts) => conductivity(solutionAt({ ...elements, amounts }, {})).at25MsCm;
  const ecMsCm = ec(elements.amounts);
  let sum = 0;
  for (const symbol of CONDUCTING) {
    const off = errorsMgL[symbol] ?? 0;
    const amount = elements.amounts[symbol] ?? 0;
    if (off > 0) sum += (ec({ ...elements.amounts, [symbol]: amount + off }) - ecMsCm) ** 2;
  }
  return { ecMsCm, plusMinusMsCm: Math.sqrt(sum) };
}

/*
 * Sources: Ca to Zn and the limit of 1 unit: New Hampshire Agr 1105.04. N, P2O5, K2O: the schedule of the Association
 * of American Plant Food Control Officials, Official Publication (from memory; 0.88 for N above 32 % read).
 */
