/** What the chemistry says about a composition: the table behind WATER_STATE. */

import { conductivity } from "./conductivity.ts";
import { BadInput } from "./errors.ts";
import { type Composition, type CompositionUnit, dissolved } from "./ions.ts";
import { saturationIndices } from "./saturation.ts";
import { type Problem, type State, solveState } from "./speciation.ts";
import { AIR_LOG_PCO2 } from "./species.ts";

export interface WaterStateAsk {
  readonly composition: Composition;
  readonly unit: CompositionUnit;
  readonly pH: number | "balance";
  readonly tempC: number;
  /** In balance with outdoor air (AIR_LOG_PCO2). */
  readonly air: boolean;
}

/**
 * The state of a composition. Closed: carbon from Alkalinity and pH, or from CO3 (total carbon), or none where neither
 * is given; "balance" then needs CO3, since an alkalinity alone does not say how much CO2 there is. In balance with
 * air: "balance" with an Alkalinity holds that alkalinity (it stays when CO2 leaves), without one it is the pH at which
 * the ions balance; a pH that is given stays as given. Throws BadInput as solveState does, and for both Alkalinity and
 * CO3 in a closed water.
 */
export function compositionState(ask: WaterStateAsk): State {
  const { composition, unit, pH, tempC, air } = ask;
  const { totals, carbonMolKg, alkalinityEqKg } = dissolved(composition, unit);
  const phosphate = totals.PO4 ?? 0;
  if (air) {
    const held: Problem["pH"] =
      pH === "balance" && alkalinityEqKg !== null ? { protonsMolKg: 2 * phosphate - alkalinityEqKg } : pH;
    return solveState({ totals, carbon: { logPco2: AIR_LOG_PCO2 }, pH: held, tempC });
  }
  if (alkalinityEqKg !== null && carbonMolKg !== null) {
    throw new BadInput(
      "two-carbons",
      "Alkalinity and CO3 both say how much carbonate there is. Leave one of them out.",
    );
  }
  const carbon = alkalinityEqKg === null ? { totalMolKg: carbonMolKg ?? 0 } : { alkalinityEqKg };
  return solveState({ totals, carbon, pH, tempC });
}

export const STATE_ROWS = [
  "pH",
  "Ionic strength mol/L",
  "EC mS/cm",
  "pCO2 log10 atm",
  "Calcite",
  "Gypsum",
  "Brushite",
  "Struvite",
] as const;

/** Two columns: name and number; null where there is none (no carbon, a part of the solid absent). EC is at 25 °C. */
export function stateRows(state: State): (readonly [(typeof STATE_ROWS)[number], number | null])[] {
  const si = saturationIndices(state);
  return [
    ["pH", state.pH],
    ["Ionic strength mol/L", state.ionicStrengthMolKg],
    ["EC mS/cm", conductivity(state).at25MsCm],
    ["pCO2 log10 atm", state.logPco2],
    ["Calcite", si.calcite],
    ["Gypsum", si.gypsum],
    ["Brushite", si.brushite],
    ["Struvite", si.struvite],
  ];
}
