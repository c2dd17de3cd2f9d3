/** Readings of the sample batches: invented around what the chemistry expects, some left out. */

import { conductivity } from "../core/conductivity.ts";
import type { Amounts } from "../core/elements.ts";
import { compositionState } from "../core/water-state.ts";
import type { Water } from "../core/waters.ts";
import { BATCH_PLAN, type PlannedBatch } from "./sample-batch-plan.ts";
import { rounded } from "./sample-cell.ts";
import type { Random } from "./sample-random.ts";

export const PH_LOW = 5.4;
export const PH_HIGH = 6.2;

/** Weight of the ion over that of its element, from CIAAW weights. */
const ION: Readonly<Record<"NO3" | "NH4" | "PO4" | "SO4", number>> = {
  NO3: 62.004 / 14.007,
  NH4: 18.039 / 14.007,
  PO4: 94.97 / 30.974,
  SO4: 96.056 / 32.06,
};

/**
 * mS/cm at 25 °C of the main ions. Iron, micronutrients and citrate are left out, and the alkalinity that acid has used
 * up counts as if citrate conducted like bicarbonate: near enough to invent readings with.
 */
export function likelyEc(reached: Amounts, ammoniumNMgL: number, water: Water): number {
  const { N = 0, P = 0, S = 0 } = reached;
  const state = compositionState({
    composition: {
      Ca: reached.Ca ?? 0,
      Mg: reached.Mg ?? 0,
      K: reached.K ?? 0,
      Na: reached.Na ?? 0,
      Cl: reached.Cl ?? 0,
      NO3: (N - ammoniumNMgL) * ION.NO3,
      NH4: ammoniumNMgL * ION.NH4,
      PO4: P * ION.PO4,
      SO4: S * ION.SO4,
      Alkalinity: water.alkalinityMgCaCO3L ?? 0,
    },
    unit: "mg/L",
    pH: 6,
    tempC: 25,
    air: false,
  });
  return conductivity(state).at25MsCm;
}

interface Readings {
  readonly ec: number | null;
  readonly pH: number | null;
  readonly verdict: string;
  readonly note: string;
}

/** Every batch at first; later some are not tested, because many readings in a row agreed. */
export function readings(
  batch: PlannedBatch,
  likelyEcMsCm: number,
  { index, random }: { index: number; random: Random },
): Readings {
  const tested = index < 12 || index >= BATCH_PLAN.length - 2 ? true : index % 4 !== 3;
  const hard = batch.water === "Town tap";
  const ec = rounded(likelyEcMsCm * 1.01 * (1 + 0.025 * random.normal()), 2);
  const pH = rounded((hard ? 6.05 : 5.75) + (hard ? 0.22 : 0.13) * random.normal(), 1);
  if (!tested) return { ec: null, pH: null, verdict: "", note: "Not tested" };
  const pHMissing = index === 16 || index === 33;
  if (pHMissing) return { ec, pH: null, verdict: "", note: "pH meter out of storage liquid, no reading" };
  if (pH > PH_HIGH) {
    const note = hard ? "Next morning the pH had climbed further: the carbon dioxide had left" : "";
    return { ec, pH, verdict: "pH high", note };
  }
  if (pH < PH_LOW) return { ec, pH, verdict: "pH low", note: "" };
  return { ec, pH, verdict: "as it should be", note: "" };
}
