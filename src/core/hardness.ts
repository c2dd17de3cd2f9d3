/** Hardness and alkalinity: total hardness, its units, its classes. */

import { US_GALLON_L } from "./dose.ts";
import { ATOMIC_WEIGHTS } from "./elements.ts";
import { BadInput } from "./errors.ts";
import { checkNumber } from "./reading.ts";

const CACO3_G_MOL = ATOMIC_WEIGHTS.Ca + ATOMIC_WEIGHTS.C + 3 * ATOMIC_WEIGHTS.O;
const CAO_G_MOL = ATOMIC_WEIGHTS.Ca + ATOMIC_WEIGHTS.O;
const HCO3_G_MOL = ATOMIC_WEIGHTS.H + ATOMIC_WEIGHTS.C + 3 * ATOMIC_WEIGHTS.O;

/** NIST Handbook 44, Appendix C: exact by definition. */
const GRAIN_MG = 64.79891;
const IMPERIAL_GALLON_L = 4.54609;

/** Both for hardness and for alkalinity, except mmol/L: of Ca + Mg. */
export const HARDNESS_UNITS = ["mg/L CaCO3", "mmol/L", "meq/L", "dH", "fH", "Clark", "gpg"] as const;
/** For alkalinity besides. */
export const ALKALINITY_UNITS = ["mg/L HCO3", "dKH"] as const;
export const CONVERT_UNITS = [...HARDNESS_UNITS, ...ALKALINITY_UNITS] as const;

export type HardnessUnit = (typeof HARDNESS_UNITS)[number];
export type ConvertUnit = (typeof CONVERT_UNITS)[number];

/**
 * mg/L CaCO3 in one of each unit. A German degree is 10 mg/L CaO, a French one 10 mg/L CaCO3, a Clark degree
 * one grain in an imperial gallon, gpg one grain in a US gallon, each as CaCO3 (the units' definitions).
 */
const MG_CACO3_L: Readonly<Record<ConvertUnit, number>> = {
  "mg/L CaCO3": 1,
  "mmol/L": CACO3_G_MOL,
  "meq/L": CACO3_G_MOL / 2,
  dH: (10 * CACO3_G_MOL) / CAO_G_MOL,
  fH: 10,
  Clark: GRAIN_MG / IMPERIAL_GALLON_L,
  gpg: GRAIN_MG / US_GALLON_L,
  "mg/L HCO3": CACO3_G_MOL / 2 / HCO3_G_MOL,
  dKH: (10 * CACO3_G_MOL) / CAO_G_MOL,
};

export interface CalciumMagnesium {
  readonly calciumMgL: number;
  readonly magnesiumMgL: number;
}

/** A kilogram in a litre; anything above is a slip of the pen. */
const MOST = 1_000_000;

/** Refuses what no water holds, so that a slip of the pen does not become a hardness. */
function checkHeld(value: number, what: string): void {
  checkNumber(value, { what, min: 0, max: MOST });
}

/** Total hardness, mg/L as CaCO3, as in Standard Methods 2340 B (2.497 Ca + 4.118 Mg), its factors from the atomic weights. */
export function hardness({ calciumMgL, magnesiumMgL }: CalciumMagnesium): number {
  checkHeld(calciumMgL, "Calcium");
  checkHeld(magnesiumMgL, "Magnesium");
  return (CACO3_G_MOL / ATOMIC_WEIGHTS.Ca) * calciumMgL + (CACO3_G_MOL / ATOMIC_WEIGHTS.Mg) * magnesiumMgL;
}

/**
 * Converts a hardness or an alkalinity. Throws BadInput for a value below 0 or above a million, and between mmol/L and the units of
 * alkalinity: mmol/L counts Ca + Mg here, and a mole of bicarbonate is only half a mole of hardness.
 */
export function convertHardness(value: number, from: ConvertUnit, to: ConvertUnit): number {
  checkHeld(value, "The value");
  const isAlkalinity = (unit: ConvertUnit) => (ALKALINITY_UNITS as readonly string[]).includes(unit);
  if ((from === "mmol/L" && isAlkalinity(to)) || (to === "mmol/L" && isAlkalinity(from))) {
    throw new BadInput(
      "two-readings",
      `"${from}" to "${to}" can be read in two ways: mmol/L counts calcium and magnesium here, not bicarbonate. Use meq/L for alkalinity.`,
    );
  }
  return (value * MG_CACO3_L[from]) / MG_CACO3_L[to];
}

export const HARDNESS_CLASSES = ["soft", "moderately hard", "hard", "very hard"] as const;
export type HardnessClass = (typeof HARDNESS_CLASSES)[number];

/** Class after the USGS scale, 0–60, 61–120, 121–180, over 180 mg/L CaCO3; what lies between 60 and 61 counts as the harder. */
export function hardnessClass(hardnessMgCaCO3L: number): HardnessClass {
  checkHeld(hardnessMgCaCO3L, "The hardness");
  if (hardnessMgCaCO3L <= 60) return "soft";
  if (hardnessMgCaCO3L <= 120) return "moderately hard";
  return hardnessMgCaCO3L <= 180 ? "hard" : "very hard";
}
