/** What one dose of a feed brings into each litre of water. */

import { type Amounts, type ElementSymbol, SYMBOLS } from "./elements.ts";
import { BadInput } from "./errors.ts";
import type { Feed } from "./feeds.ts";
import { sayGiven, sayNumber } from "./saying.ts";

/** Gallons, teaspoons and fluid ounces are US; oz is the avoirdupois ounce, a mass. */
export const DOSE_UNITS = ["g/L", "mL/L", "g/gal", "mL/gal", "tsp/gal", "oz/gal", "floz/gal"] as const;

export type DoseUnit = (typeof DOSE_UNITS)[number];

/** NIST Handbook 44, Appendix C: exact by definition. */
export const US_GALLON_L = 3.785411784;
export const US_TEASPOON_ML = 4.92892159375;
export const US_FLUID_OUNCE_ML = 29.5735295625;
export const OUNCE_G = 28.349523125;

interface PerLitre {
  readonly measure: "mass" | "volume";
  /** Grams or millilitres in each litre of water for a dose of one. */
  readonly factor: number;
}

const PER_LITRE: Readonly<Record<DoseUnit, PerLitre>> = {
  "g/L": { measure: "mass", factor: 1 },
  "mL/L": { measure: "volume", factor: 1 },
  "g/gal": { measure: "mass", factor: 1 / US_GALLON_L },
  "mL/gal": { measure: "volume", factor: 1 / US_GALLON_L },
  "tsp/gal": { measure: "volume", factor: US_TEASPOON_ML / US_GALLON_L },
  "oz/gal": { measure: "mass", factor: OUNCE_G / US_GALLON_L },
  "floz/gal": { measure: "volume", factor: US_FLUID_OUNCE_ML / US_GALLON_L },
};

/** More than this in a litre of water, g or mL, is a slip of the pen: the most soluble salt, ammonium nitrate, holds about 1.9 kg. */
export const MOST_PER_LITRE = 2000;

/** Unit in which a feed is measured out: mL for a liquid, g for a solid. */
export function measureUnit(feed: Feed): "g" | "mL" {
  return feed.liquid ? "mL" : "g";
}

/** Grams (w/w) or millilitres (w/v) of the feed that one unit of dose brings into a litre: what its percents count on. */
function labelUnitsPerLitre(feed: Feed, unit: DoseUnit): number {
  const { measure, factor } = PER_LITRE[unit];
  const wanted = feed.label.basis === "w/w" ? "mass" : "volume";
  if (measure === wanted) return factor;
  if (feed.densityGPerMl === null) {
    throw new BadInput(
      "density-needed",
      wanted === "mass"
        ? `A dose of ${feed.name} in ${unit} is a volume, but its label counts by weight. Give its density in g/mL, or the dose in g/L.`
        : `A dose of ${feed.name} in ${unit} is a weight, but its label counts by volume. Give its density in g/mL, or the dose in mL/L.`,
    );
  }
  return wanted === "mass" ? factor * feed.densityGPerMl : factor / feed.densityGPerMl;
}

/** mg/L of each element on the label for a dose of one `unit`. Throws BadInput when a density is needed and not known. */
export function amountsPerUnit(feed: Feed, unit: DoseUnit): Amounts {
  // Percent of a gram in a litre: 1 % of 1 g/L is 10 mg/L.
  const scale = 10 * labelUnitsPerLitre(feed, unit);
  const amounts: Partial<Record<ElementSymbol, number>> = {};
  for (const symbol of SYMBOLS) {
    const percent = feed.label.percent[symbol];
    if (percent !== undefined) amounts[symbol] = percent * scale;
  }
  return amounts;
}

/** Refuses a negative dose and one that no litre of water takes up. */
export function checkDose(dose: number, unit: DoseUnit, feedName: string): void {
  if (!Number.isFinite(dose)) throw new BadInput("not-a-number", `The dose of ${feedName} is no number.`);
  if (dose < 0) {
    throw new BadInput("negative-dose", `The dose of ${feedName} is ${sayGiven(dose)} ${unit}. Give 0 or more.`);
  }
  const { measure, factor } = PER_LITRE[unit];
  if (dose * factor > MOST_PER_LITRE) {
    throw new BadInput(
      "absurd-dose",
      `The dose of ${feedName} is ${sayGiven(dose)} ${unit}, more than a litre of water can take up. Give at most ${sayNumber(MOST_PER_LITRE / factor)} ${unit}${measure === "mass" ? "" : " of liquid"}.`,
    );
  }
}

/**
 * mg/L of each element on the label that `dose` brings. A volume of a w/w feed and a weight of a w/v feed need
 * the density. The volume that the feed itself adds to the water is not counted.
 * Throws BadInput for a negative or absurd dose, and when a density is needed and not known.
 */
export function doseAmounts(feed: Feed, dose: number, unit: DoseUnit): Amounts {
  checkDose(dose, unit, feed.name);
  const one = amountsPerUnit(feed, unit);
  const amounts: Partial<Record<ElementSymbol, number>> = {};
  for (const symbol of SYMBOLS) {
    const amount = one[symbol];
    if (amount !== undefined) amounts[symbol] = amount * dose;
  }
  return amounts;
}
