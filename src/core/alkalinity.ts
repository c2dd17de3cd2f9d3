/** Alkalinity: its ways of being printed, how much of it a drop in pH uses up, and blending two waters. */

import { BadInput } from "./errors.ts";
import { CACO3_MG_PER_MEQ, ION_G_MOL } from "./ions.ts";
import { constantsAt, speciesIndex } from "./reactions.ts";
import { sayGiven } from "./saying.ts";

/** mg/L as CaCO3 → mg/L as HCO3: divided by 0.8202 (Hem 1985, USGS Water-Supply Paper 2254, p. 57). */
export function bicarbonateMgL(alkalinityMgCaCO3L: number): number {
  return (alkalinityMgCaCO3L / CACO3_MG_PER_MEQ) * ION_G_MOL.HCO3;
}
export function alkalinityMgCaCO3L(bicarbonateMgL: number): number {
  return (bicarbonateMgL / ION_G_MOL.HCO3) * CACO3_MG_PER_MEQ;
}

export interface ShareAsk {
  readonly alkalinityMeqL: number;
  readonly fromPH: number;
  readonly toPH: number;
}

/**
 * Share of the alkalinity that is used up on the way from one pH to another in a closed vessel (no CO2 leaves), 25 °C,
 * carbonate alone, activity coefficients 1. From pH 8.3 and 2 meq/L: 78.1 % at 5.8, the greenhouse rule of thumb is 80.
 */
export function alkalinityShareUsed({ alkalinityMeqL, fromPH, toPH }: ShareAsk): number {
  const { lnK } = constantsAt(25);
  const [bicarbonate = 0, gas = 0, hydroxide = 0] = ["HCO3-", "CO2", "OH-"].map((name) =>
    Math.exp(lnK[speciesIndex(name)] ?? 0),
  );
  /** Alkalinity per mole of carbon, and that of water itself in mol/L. */
  const at = (pH: number) => {
    const h = 10 ** -pH;
    const perCarbon = (2 + bicarbonate * h) / (1 + bicarbonate * h + gas * h * h);
    return { perCarbon, ofWater: hydroxide / h - h };
  };
  const start = at(fromPH);
  const end = at(toPH);
  const carbon = (alkalinityMeqL / 1000 - start.ofWater) / start.perCarbon;
  return 1 - (carbon * end.perCarbon + end.ofWater) / (alkalinityMeqL / 1000);
}

export interface BlendAsk {
  readonly tap: number;
  readonly low: number;
  readonly target: number;
}

/**
 * Share of tap water, 0 to 1, in a blend with a low-mineral water that brings anything that adds up (alkalinity,
 * hardness, Na, Cl; not pH, only roughly EC) to `target`. Throws BadInput where the target lies outside the two.
 */
export function blendShare({ tap, low, target }: BlendAsk): number {
  const [tapText, lowText, targetText] = [sayGiven(tap), sayGiven(low), sayGiven(target)];
  if (tap === low) {
    if (target === tap) return 1;
    throw new BadInput("blend-same", `Both waters are at ${tapText}, so no blend of them is at ${targetText}.`);
  }
  const share = (target - low) / (tap - low);
  if (!(share >= 0 && share <= 1)) {
    throw new BadInput(
      "blend-outside",
      `The target ${targetText} is not between the two waters, ${lowText} and ${tapText}. Give a target from ${sayGiven(Math.min(tap, low))} to ${sayGiven(Math.max(tap, low))}.`,
    );
  }
  return share;
}
