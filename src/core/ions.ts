/** Ions as reports print them: weights, charges, and the way from mg/L or mmol/L to what the solver takes. */

import { ATOMIC_WEIGHTS } from "./elements.ts";
import { BadInput } from "./errors.ts";
import type { Totals } from "./speciation.ts";

const { H, B, C, N, O, Na, Mg, S, P, Cl, K, Ca } = ATOMIC_WEIGHTS;

/** g/mol of the ion as a report prints it. */
export const ION_G_MOL = {
  Ca,
  Mg,
  Na,
  K,
  NH4: N + 4 * H,
  NO3: N + 3 * O,
  SO4: S + 4 * O,
  Cl,
  PO4: P + 4 * O,
  H3BO3: 3 * H + B + 3 * O,
  CO3: C + 3 * O,
  HCO3: H + C + 3 * O,
} as const;

/** Half a mole of CaCO3 is one equivalent: 1 meq/L = 50.043 mg/L as CaCO3. */
export const CACO3_MG_PER_MEQ = (Ca + C + 3 * O) / 2;

/** Columns of a composition; Alkalinity is mg/L as CaCO3 or meq/L, CO3 total carbon of all forms. */
export const COMPOSITION_COLUMNS = [
  "Ca",
  "Mg",
  "Na",
  "K",
  "NH4",
  "NO3",
  "SO4",
  "Cl",
  "PO4",
  "CO3",
  "Alkalinity",
  "H3BO3",
] as const;
export type CompositionColumn = (typeof COMPOSITION_COLUMNS)[number];
export type Composition = Readonly<Partial<Record<CompositionColumn, number>>>;
export const COMPOSITION_UNITS = ["mg/L", "mmol/L"] as const;
export type CompositionUnit = (typeof COMPOSITION_UNITS)[number];

export interface Dissolved {
  /** mol/kg. */
  readonly totals: Totals;
  /** Total carbon, mol/kg; null where not given. */
  readonly carbonMolKg: number | null;
  /** eq/kg; null where not given. */
  readonly alkalinityEqKg: number | null;
}

/**
 * A composition in mg/L of the ion (Alkalinity as CaCO3) or mmol/L (Alkalinity meq/L) as totals in mol per kg of water.
 * A litre is taken for a kilogram of water: at 25 °C a litre of a dilute solution holds 0.997 kg, at 15 °C 0.999, so
 * this makes everything at most 0.3 % too low, less than a report's own error. Throws BadInput for a negative amount.
 */
export function dissolved(composition: Composition, unit: CompositionUnit): Dissolved {
  const totals: Record<string, number> = {};
  let carbonMolKg: number | null = null;
  let alkalinityEqKg: number | null = null;
  for (const column of COMPOSITION_COLUMNS) {
    const value = composition[column];
    if (value === undefined) continue;
    if (!(value >= 0 || (column === "Alkalinity" && Number.isFinite(value)))) {
      throw new BadInput("amount-range", `${column} is ${value} ${unit}. Give a number of 0 or more.`);
    }
    if (column === "Alkalinity") alkalinityEqKg = value / (unit === "mg/L" ? CACO3_MG_PER_MEQ : 1) / 1000;
    else {
      const molKg = value / (unit === "mg/L" ? ION_G_MOL[column] : 1) / 1000;
      if (column === "CO3") carbonMolKg = molKg;
      else totals[column === "H3BO3" ? "B" : column] = molKg;
    }
  }
  return { totals: totals as Totals, carbonMolKg, alkalinityEqKg };
}
