/** What the meter should show for a mixture of feeds and water. */

import { conductivity } from "./conductivity.ts";
import type { Mixture } from "./mixture.ts";
import { type Elements, solutionAt } from "./solution.ts";

export function elementsOf({ amounts, nitrogenMgL: { nitrate, ammonium, urea } }: Mixture): Elements {
  return { amounts, nitrogen: { nitrate, ammonium, urea } };
}

/** mS/cm at 25 °C and pH 6, without the water's alkalinity; throws BadInput as solveState does. */
export function mixtureEc(mixture: Mixture): number {
  return conductivity(solutionAt(elementsOf(mixture), {})).at25MsCm;
}
