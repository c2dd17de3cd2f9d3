/** Does a water report add up: the sums of cations and anions in meq/L against each other. */

import { CACO3_MG_PER_MEQ, ION_G_MOL } from "./ions.ts";

/** mg/L of the ion; alkalinity as CaCO3, or HCO3 and CO3 themselves; absent = not measured. */
export interface IonReport {
  readonly Ca?: number;
  readonly Mg?: number;
  readonly Na?: number;
  readonly K?: number;
  readonly NH4?: number;
  readonly NO3?: number;
  readonly SO4?: number;
  readonly Cl?: number;
  readonly PO4?: number;
  readonly HCO3?: number;
  readonly CO3?: number;
  readonly alkalinityMgCaCO3L?: number;
}

const CHARGES = { Ca: 2, Mg: 2, Na: 1, K: 1, NH4: 1, NO3: -1, SO4: -2, Cl: -1, HCO3: -1, CO3: -2 } as const;
/** Between H2PO4- and HPO4-2, half of each at pH 7.2. */
const PHOSPHATE_CHARGE = -1.5;

export interface Balance {
  readonly cationsMeqL: number;
  readonly anionsMeqL: number;
  /** 100 (Σcat − Σan) / (Σcat + Σan), Standard Methods 1030 E; null where there are no ions at all. */
  readonly errorPercent: number | null;
  /** Difference that is accepted, meq/L. */
  readonly allowedMeqL: number;
  readonly acceptable: boolean;
}

/**
 * Sums of the ions. Accepted (Standard Methods 1030 E, from memory): Σ anions up to 3 meq/L: 0.2 meq/L; to 10: 2 %; to
 * 800: 5 %; the percents count on the sum of both, as the error does. Where HCO3 or CO3 is given, alkalinity is not
 * counted a second time.
 */
export function ionBalance(report: IonReport): Balance {
  let cationsMeqL = 0;
  let anionsMeqL = 0;
  const add = (meq: number) => {
    if (meq > 0) cationsMeqL += meq;
    else anionsMeqL -= meq;
  };
  for (const [ion, charge] of Object.entries(CHARGES) as [keyof typeof CHARGES, number][]) {
    add(((report[ion] ?? 0) / ION_G_MOL[ion]) * charge);
  }
  add(((report.PO4 ?? 0) / ION_G_MOL.PO4) * PHOSPHATE_CHARGE);
  if (report.HCO3 === undefined && report.CO3 === undefined) {
    add(-(report.alkalinityMgCaCO3L ?? 0) / CACO3_MG_PER_MEQ);
  }
  const sum = cationsMeqL + anionsMeqL;
  const difference = Math.abs(cationsMeqL - anionsMeqL);
  const allowedMeqL = anionsMeqL <= 3 ? 0.2 : (anionsMeqL <= 10 ? 0.02 : 0.05) * sum;
  return {
    cationsMeqL,
    anionsMeqL,
    errorPercent: sum > 0 ? (100 * (cationsMeqL - anionsMeqL)) / sum : null,
    allowedMeqL,
    acceptable: difference <= allowedMeqL,
  };
}
