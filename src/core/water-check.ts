/** Everything said about one water report at once: does it add up, what it is, what is flagged, what to do with it. */

import type { Balance } from "./balance.ts";
import { conductivity } from "./conductivity.ts";
import { isBadInput } from "./errors.ts";
import { type Flag, guidelineFlags, type WaterAdvice, waterAdvice } from "./guidelines.ts";
import { type HardnessClass, hardnessClass } from "./hardness.ts";
import { sayNumber } from "./saying.ts";
import { type State, solveState } from "./speciation.ts";
import { alkalinityEqKg, balanceOfWater, hardnessOf, totalsOfWater, type WaterLines } from "./water-lines.ts";

export interface WaterCheck {
  readonly balance: Balance;
  /** mS/cm at 25 °C from the ions; null where they cannot be worked out. */
  readonly predictedEcMsCm: number | null;
  readonly hardnessMgCaCO3L: number | null;
  /** USGS. */
  readonly hardnessClass: HardnessClass | null;
  readonly flags: readonly Flag[];
  readonly advice: WaterAdvice;
  /** Whole sentences on whether the report adds up; none where it does. */
  readonly doubts: readonly string[];
}

/** The EC model is within 8 % on bicarbonate waters, a meter within 2 %, a report's ions within 5 %. */
const EC_APART = 0.15;

/** The state of a water as reported; without a pH it is taken at 7.5, which hardly moves its EC. Null outside the model's range. */
export function waterState(water: WaterLines, tempC = 25): State | null {
  try {
    const carbon = { alkalinityEqKg: alkalinityEqKg(water) };
    return solveState({ totals: totalsOfWater(water), carbon, pH: water.pH ?? 7.5, tempC });
  } catch (error) {
    if (isBadInput(error)) return null;
    throw error;
  }
}

export function checkWater(water: WaterLines): WaterCheck {
  const balance = balanceOfWater(water);
  const state = waterState(water);
  const predictedEcMsCm = state === null ? null : conductivity(state).at25MsCm;
  const hard = hardnessOf(water);
  return {
    balance,
    predictedEcMsCm,
    hardnessMgCaCO3L: hard,
    hardnessClass: hard === null ? null : hardnessClass(hard),
    flags: guidelineFlags(water),
    advice: waterAdvice(water),
    doubts: doubts(water, balance, predictedEcMsCm),
  };
}

function doubts(water: WaterLines, balance: Balance, predictedEcMsCm: number | null): string[] {
  const said: string[] = [];
  const { Ca, Mg, Hardness, EC } = water;
  if (!balance.acceptable) {
    const short = balance.cationsMeqL < balance.anionsMeqL ? "cations" : "anions";
    said.push(
      `The ions do not add up: cations ${sayNumber(balance.cationsMeqL)}, anions ${sayNumber(balance.anionsMeqL)} meq/L (${sayNumber(balance.errorPercent ?? 0)} %). One of the ${short} is missing or too low, or one of the others is in another unit.`,
    );
  }
  if (EC !== undefined && predictedEcMsCm !== null && balance.acceptable && EC > 0) {
    const apart = predictedEcMsCm / EC - 1;
    if (Math.abs(apart) > EC_APART) {
      said.push(
        `The ions would make ${sayNumber(predictedEcMsCm)} mS/cm, the report says ${sayNumber(EC)}. Check the units.`,
      );
    }
  }
  if (Ca !== undefined && Mg !== undefined && Hardness !== undefined) {
    const fromIons = hardnessOf(water) ?? 0;
    if (Math.abs(fromIons - Hardness) > 0.1 * Math.max(fromIons, Hardness, 10)) {
      said.push(
        `Calcium and magnesium make a hardness of ${sayNumber(fromIons)} mg/L CaCO3, the report says ${sayNumber(Hardness)}.`,
      );
    }
  }
  return said;
}
