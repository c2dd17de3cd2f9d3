/** Electrical conductivity from the species in a solution. */

import { RISE_PER_DEGREE } from "./meter.ts";
import { CHARGES, SPECIES_COUNT } from "./reactions.ts";
import type { State } from "./speciation.ts";
import { SPECIES } from "./species.ts";

/** Faraday 96485.33212 C/mol and gas constant 8.314462618 J/(mol K), CODATA 2018; at 298.15 K. */
const F2_OVER_RT = 96485.33212 ** 2 / (8.314462618 * 298.15);

/** Molar conductivity at 25 °C and infinite dilution, z² F² D / (R T), in S cm²/mol (Nernst–Einstein). */
const LAMBDA: Float64Array = Float64Array.from(
  SPECIES,
  (row, s) => (CHARGES[s] ?? 0) ** 2 * F2_OVER_RT * row[4] * 1e-9 * 1e4,
);

export interface Conductivity {
  /** At the solution's own temperature. */
  readonly atTempMsCm: number;
  /** The same ions at 25 °C: what a meter that corrects for temperature shows. */
  readonly at25MsCm: number;
}

/**
 * Conductivity by the exponent form of Appelo, as in phreeqc3: κ = Σ |z| λ° c γ^a with a = 0.6/√|z| where
 * I < 0.36 |z|, else √I/|z|. Mobilities are those at 25 °C; off it the whole
 * follows the meters' own rule, κt = κ25 (1 + 0.0191 (t − 25)) (EPA 120.1), so that a reading corrected by a meter
 * comes back as it was. mol/kg is taken for mol/L here,
 * which is up to 0.3 % high at 25 °C. Ions without a published mobility (pairs such as CaH2PO4+) are left out, at most
 * about 1 % of the whole; a quadratic formula in common use reads 4–17 % low on the calibration salts and is not used.
 */
export function conductivity(state: State): Conductivity {
  const strength = state.ionicStrengthMolKg;
  const root = Math.sqrt(strength);
  let sum = 0;
  for (let s = 0; s < SPECIES_COUNT; s++) {
    const m = state.molalities[s] as number;
    const lambda = LAMBDA[s] as number;
    if (m === 0 || lambda === 0) continue;
    const z = Math.abs(CHARGES[s] as number);
    const exponent = strength < 0.36 * z ? 0.6 / Math.sqrt(z) : root / z;
    sum += lambda * m * Math.exp(exponent * (state.lnGammas[s] as number));
  }
  // S cm²/mol × mol/L = 1e-3 S/cm = mS/cm
  return { at25MsCm: sum, atTempMsCm: sum * (1 + RISE_PER_DEGREE * (state.tempC - 25)) };
}
