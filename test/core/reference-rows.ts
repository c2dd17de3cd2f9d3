/** The 92 solutions worked out with PHREEQC, as problems for our solver; see test/reference/README.md. */

import { readFileSync } from "node:fs";
import type { Carbon, Problem, Totals } from "../../src/core/speciation.ts";

export interface ReferenceRow {
  readonly id: string;
  readonly kind: "water" | "feed" | "titration-closed" | "titration-air";
  /** mmol per kg of water; Amm is ammonium, P phosphate, CO3 total carbon. */
  readonly totals: Readonly<Record<string, number>>;
  /** meq/kg. */
  readonly alkalinity?: number;
  readonly pH?: number;
  readonly logPco2?: number;
  readonly tempC: number;
  readonly acid?: "phosphoric" | "nitric" | "sulfuric";
  /** mmol/kg: of H3PO4, or of H for the strong acids. */
  readonly acid_mmol_H_or_P?: number;
  readonly result: {
    readonly pH: number;
    readonly ionicStrength_mol_kgw: number;
    readonly alkalinity_meq_kgw: number;
    readonly totalCarbon_mmol_kgw: number;
    readonly specificConductance_uS_cm: number;
    readonly log10Activity: Readonly<Record<string, number | null>>;
    readonly saturationIndex: Readonly<Record<string, number | null>>;
  };
}

export const referenceRows: readonly ReferenceRow[] = JSON.parse(
  readFileSync(new URL("../reference/equilibrium.json", import.meta.url), "utf8"),
);

const OUR_NAMES: Readonly<Record<string, string>> = { Amm: "NH4", P: "PO4" };

export function totalsOf(row: ReferenceRow): Totals {
  const totals: Record<string, number> = {};
  for (const [name, mmol] of Object.entries(row.totals)) {
    if (name !== "CO3") totals[OUR_NAMES[name] ?? name] = mmol / 1000;
  }
  return totals as Totals;
}

export function problemOf(row: ReferenceRow): Problem {
  let carbon: Carbon = { totalMolKg: (row.totals.CO3 ?? 0) / 1000 };
  if (row.alkalinity !== undefined) carbon = { alkalinityEqKg: row.alkalinity / 1000 };
  if (row.logPco2 !== undefined) carbon = { logPco2: row.logPco2 };
  return { totals: totalsOf(row), carbon, pH: row.pH ?? "balance", tempC: row.tempC };
}
