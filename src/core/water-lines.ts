/** The lines of a water report in one unit each: what the Waters tab, the guidelines and the treatments share. */

import { bicarbonateMgL } from "./alkalinity.ts";
import { type Balance, ionBalance } from "./balance.ts";
import { ATOMIC_WEIGHTS } from "./elements.ts";
import { hardness } from "./hardness.ts";
import { CACO3_MG_PER_MEQ, ION_G_MOL } from "./ions.ts";
import type { Totals } from "./speciation.ts";

/** mg/L, except EC (mS/cm at 25 °C) and pH; alkalinity as CaCO3; nitrate and ammonium as N, phosphate as P. */
export const WATER_LINES = [
  "Ca",
  "Mg",
  "Na",
  "K",
  "NH4-N",
  "Alkalinity",
  "SO4",
  "Cl",
  "NO3-N",
  "PO4-P",
  "Si",
  "Fe",
  "Mn",
  "B",
  "Hardness",
  "EC",
  "pH",
  "Free chlorine",
  "Chloramine",
] as const;
export type WaterLine = (typeof WATER_LINES)[number];
/** A line that is not there was not measured. */
export type WaterLines = Readonly<Partial<Record<WaterLine, number>>>;

export const LINE_UNITS: Readonly<Record<WaterLine, string>> = {
  ...(Object.fromEntries(WATER_LINES.map((line) => [line, "mg/L"])) as Record<WaterLine, string>),
  Alkalinity: "mg/L CaCO3",
  Hardness: "mg/L CaCO3",
  EC: "mS/cm",
  pH: "",
};

/** Ions of the report in mol/kg (mg/L taken for mg/kg: at most 0.3 % low). */
export function totalsOfWater(water: WaterLines): Totals {
  const molKg = (mgL: number | undefined, gMol: number) => (mgL ?? 0) / gMol / 1000;
  return {
    Ca: molKg(water.Ca, ION_G_MOL.Ca),
    Mg: molKg(water.Mg, ION_G_MOL.Mg),
    Na: molKg(water.Na, ION_G_MOL.Na),
    K: molKg(water.K, ION_G_MOL.K),
    NH4: molKg(water["NH4-N"], ATOMIC_WEIGHTS.N),
    NO3: molKg(water["NO3-N"], ATOMIC_WEIGHTS.N),
    SO4: molKg(water.SO4, ION_G_MOL.SO4),
    Cl: molKg(water.Cl, ION_G_MOL.Cl),
    PO4: molKg(water["PO4-P"], ATOMIC_WEIGHTS.P),
    B: molKg(water.B, ATOMIC_WEIGHTS.B),
  };
}

/** Alkalinity in eq/kg; 0 where not measured. */
export function alkalinityEqKg(water: WaterLines): number {
  return (water.Alkalinity ?? 0) / CACO3_MG_PER_MEQ / 1000;
}

/** Hardness from Ca and Mg, or as it was measured; null where neither is there. */
export function hardnessOf(water: WaterLines): number | null {
  if (water.Ca === undefined || water.Mg === undefined) return water.Hardness ?? null;
  return hardness({ calciumMgL: water.Ca, magnesiumMgL: water.Mg });
}

export function balanceOfWater(water: WaterLines): Balance {
  const ion = (mgL: number | undefined, factor: number) => (mgL ?? 0) * factor;
  return ionBalance({
    Ca: ion(water.Ca, 1),
    Mg: ion(water.Mg, 1),
    Na: ion(water.Na, 1),
    K: ion(water.K, 1),
    NH4: ion(water["NH4-N"], ION_G_MOL.NH4 / ATOMIC_WEIGHTS.N),
    NO3: ion(water["NO3-N"], ION_G_MOL.NO3 / ATOMIC_WEIGHTS.N),
    SO4: ion(water.SO4, 1),
    Cl: ion(water.Cl, 1),
    PO4: ion(water["PO4-P"], ION_G_MOL.PO4 / ATOMIC_WEIGHTS.P),
    HCO3: bicarbonateMgL(water.Alkalinity ?? 0),
  });
}

/**
 * A blend of `share` (0 to 1) of the first water with the second, line by line; a line that only one of them has is
 * left out. Everything adds up but pH, which is left out (ask mixStates), and EC, which is only roughly in between.
 * Chloramine and free chlorine destroy each other, so they are upper bounds.
 */
export function blendLines(one: WaterLines, other: WaterLines, share: number): WaterLines {
  const blend: Partial<Record<WaterLine, number>> = {};
  for (const line of WATER_LINES) {
    const [a, b] = [one[line], other[line]];
    if (a === undefined || b === undefined) continue;
    if (line !== "pH") blend[line] = share * a + (1 - share) * b;
    else if (a === b) blend[line] = a;
  }
  return blend;
}
