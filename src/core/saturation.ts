/** Saturation indices: how far a solution is from letting a solid fall out. */

import { constantsAt, logProduct } from "./reactions.ts";
import type { State } from "./speciation.ts";
import { SOLIDS } from "./species.ts";

export interface SaturationIndices {
  readonly calcite: number | null;
  readonly gypsum: number | null;
  readonly brushite: number | null;
  readonly struvite: number | null;
}
export type Solid = keyof SaturationIndices;

/**
 * log10(ion activity product / solubility product) of each solid: above 0 it may fall out, below 0 it cannot; null
 * where one of its parts is absent. Constants and their sources stand in SOLIDS: with other published constants the
 * index shifts by the difference (calcite 0.03, gypsum 0.03, brushite 0.03, struvite 0.06).
 */
export function saturationIndices(state: State): SaturationIndices {
  const { logKSolids } = constantsAt(state.tempC);
  const lnWater = Math.log(state.waterActivity);
  const index = (i: number): number | null => {
    const si = logProduct(i, state.lnActivities, lnWater) - (logKSolids[i] ?? 0);
    return Number.isFinite(si) ? si : null;
  };
  return { calcite: index(CALCITE), gypsum: index(GYPSUM), brushite: index(BRUSHITE), struvite: index(STRUVITE) };
}

const at = (name: Solid): number => SOLIDS.findIndex((row) => row[0] === name);
const CALCITE = at("calcite");
const GYPSUM = at("gypsum");
const BRUSHITE = at("brushite");
const STRUVITE = at("struvite");
