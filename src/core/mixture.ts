/** A mixed solution as a conductivity model or a limit on ammonium needs it: elements, and nitrogen by its forms. */

import { amountsPerUnit, measureUnit } from "./dose.ts";
import type { Amounts } from "./elements.ts";
import type { Feed } from "./feeds.ts";
import { saltOf } from "./salts.ts";
import { reachedBy } from "./solve.ts";

/** Nitrogen of a feed or a solution by form; in the unit its name says. `unstated`: the label does not say which. */
export interface NitrogenParts {
  readonly nitrate: number;
  readonly ammonium: number;
  readonly urea: number;
  readonly unstated: number;
}

export interface MixtureDose {
  readonly feed: Feed;
  /** g or mL for each litre of water, as the feed is measured. */
  readonly perLitre: number;
}

export interface Mixture {
  /** mg/L, water included. */
  readonly amounts: Amounts;
  /** mg/L as N; the nitrogen of the water counts as nitrate. */
  readonly nitrogenMgL: NitrogenParts;
  readonly doses: readonly MixtureDose[];
}

/** What the meter should read at 25 °C, mS/cm, for a mixture. */
export type EcOf = (mixture: Mixture) => number;

/**
 * Shares of a feed's nitrogen by form, adding up to 1; all 0 for a feed without. Where the label names no form but
 * shows a known salt, the formula says it.
 */
export function nitrogenShares(feed: Feed): NitrogenParts {
  const total = feed.label.percent.N ?? 0;
  if (!(total > 0)) return { nitrate: 0, ammonium: 0, urea: 0, unstated: 0 };
  const { nitrate, ammonium, urea, other } = feed.label.nitrogen;
  if (nitrate === null && ammonium === null && urea === null && other === null) {
    const salt = saltOf(feed);
    // The nitrogen inside a chelate feeds nothing and has no form.
    if (!salt?.holds.includes("N")) return { nitrate: 0, ammonium: 0, urea: 0, unstated: 1 };
    const { nitrate: no3 = 0, ammonium: nh4 = 0, urea: carbamide = 0 } = salt.nitrogen;
    const atoms = no3 + nh4 + carbamide;
    return { nitrate: no3 / atoms, ammonium: nh4 / atoms, urea: carbamide / atoms, unstated: 0 };
  }
  // Printed forms add up to the total but for rounding; `other` is slow-release and the like.
  const sum = Math.max((nitrate ?? 0) + (ammonium ?? 0) + (urea ?? 0) + (other ?? 0), total);
  const known = [nitrate, ammonium, urea].map((form) => (form ?? 0) / sum);
  const [no3 = 0, nh4 = 0, carbamide = 0] = known;
  return { nitrate: no3, ammonium: nh4, urea: carbamide, unstated: Math.max(1 - no3 - nh4 - carbamide, 0) };
}

/** Throws BadInput when a feed's density is needed and not known. */
export function mixtureOf(doses: readonly MixtureDose[], water: Amounts): Mixture {
  const perUnit = doses.map(({ feed }) => amountsPerUnit(feed, measureUnit(feed) === "mL" ? "mL/L" : "g/L"));
  const sums = { nitrate: water.N ?? 0, ammonium: 0, urea: 0, unstated: 0 };
  doses.forEach(({ feed, perLitre }, j) => {
    const nitrogen = ((perUnit[j] as Amounts).N ?? 0) * perLitre;
    const shares = nitrogenShares(feed);
    sums.nitrate += nitrogen * shares.nitrate;
    sums.ammonium += nitrogen * shares.ammonium;
    sums.urea += nitrogen * shares.urea;
    sums.unstated += nitrogen * shares.unstated;
  });
  const amounts = reachedBy(
    perUnit,
    doses.map(({ perLitre }) => perLitre),
    water,
  );
  return { amounts, nitrogenMgL: sums, doses };
}
