/** By which share a predicted EC may be off because of what the labels of its feeds allow. */

import { allowancePercent, CONDUCTING } from "./allowances.ts";
import type { Amounts } from "./elements.ts";
import type { Feed } from "./feeds.ts";
import { type EcOf, type MixtureDose, mixtureOf } from "./mixture.ts";

/** Allowance of a feed's conducting elements as a share of what its label says of them; never above 1. */
export function feedAllowance(feed: Feed): number {
  let stated = 0;
  let points = 0;
  for (const symbol of CONDUCTING) {
    const percent = feed.label.percent[symbol] ?? 0;
    stated += percent;
    points += allowancePercent(symbol, percent);
  }
  return stated > 0 ? Math.min(points / stated, 1) : 0;
}

/**
 * Share by which a predicted EC may be off because of what the labels allow: each feed's allowance times its part in
 * the EC, added as squares, since one maker's error has nothing to do with another's.
 */
export function ecAllowance(doses: readonly MixtureDose[], water: Amounts, ecOf: EcOf): number {
  const whole = ecOf(mixtureOf(doses, water));
  if (!(whole > 0)) return 0;
  let squares = 0;
  doses.forEach(({ feed, perLitre }, j) => {
    if (!(perLitre > 0)) return;
    const without = ecOf(
      mixtureOf(
        doses.filter((_, k) => k !== j),
        water,
      ),
    );
    squares += (((whole - without) / whole) * feedAllowance(feed)) ** 2;
  });
  return Math.sqrt(squares);
}
