/** How far a product may fall short of its label before an inspector objects: an error budget for what labels say. */

import { amountsPerUnit, measureUnit } from "./dose.ts";
import type { Amounts, ElementSymbol } from "./elements.ts";
import type { Feed } from "./feeds.ts";
import { type EcOf, type MixtureDose, mixtureOf } from "./mixture.ts";
import { oxideFactor } from "./oxides.ts";

/** Percent points: a fixed part and a share of the guarantee, at most 1 in all [1]. */
const PLAIN: Readonly<Partial<Record<ElementSymbol, readonly [points: number, share: number]>>> = {
  Ca: [0.2, 0.05],
  Mg: [0.2, 0.05],
  S: [0.2, 0.05],
  B: [0.003, 0.15],
  Mo: [0.0001, 0.3],
  Cl: [0.005, 0.1],
  Cu: [0.005, 0.1],
  Fe: [0.005, 0.1],
  Mn: [0.005, 0.1],
  Na: [0.005, 0.1],
  Zn: [0.005, 0.1],
};
const MOST_POINTS = 1;

type Points = readonly (readonly [guarantee: number, points: number])[];

/** Percent points by guarantee, straight lines between [2]: N; P and K by their oxides. */
const PRIMARY: Readonly<Record<"N" | "P" | "K", Points>> = {
  N: [
    [4, 0.49],
    [8, 0.55],
    [12, 0.61],
    [16, 0.67],
    [20, 0.73],
    [24, 0.78],
    [28, 0.83],
    [32, 0.88],
  ],
  P: [
    [4, 0.67],
    [8, 0.68],
    [12, 0.69],
    [16, 0.7],
    [20, 0.72],
    [24, 0.73],
    [28, 0.74],
    [32, 0.76],
  ],
  K: [
    [4, 0.41],
    [8, 0.6],
    [12, 0.79],
    [16, 0.94],
    [20, 1.08],
    [24, 1.21],
    [28, 1.33],
    [32, 1.44],
  ],
};

function between(points: Points, guarantee: number): number {
  let [lowAt, lowPoints] = points[0] as readonly [number, number];
  if (guarantee <= lowAt) return lowPoints;
  for (const [at, value] of points) {
    if (guarantee <= at) return lowPoints + ((value - lowPoints) * (guarantee - lowAt)) / (at - lowAt);
    [lowAt, lowPoints] = [at, value];
  }
  return lowPoints;
}

/** Percent points of the element that a label of `percent` may be off; null for an element without a rule. */
export function allowancePoints(symbol: ElementSymbol, percent: number): number | null {
  if (symbol === "N") return between(PRIMARY.N, percent);
  if (symbol === "P") return between(PRIMARY.P, percent / oxideFactor("P2O5")) * oxideFactor("P2O5");
  if (symbol === "K") return between(PRIMARY.K, percent / oxideFactor("K2O")) * oxideFactor("K2O");
  const rule = PLAIN[symbol];
  return rule === undefined ? null : Math.min(rule[0] + rule[1] * percent, MOST_POINTS);
}

/** Elements that carry the current; trace elements hardly do. */
const CONDUCTING: readonly ElementSymbol[] = ["N", "P", "K", "Ca", "Mg", "S", "Na", "Cl"];

/** Allowance of a feed's conducting elements as a share of what its label says of them; never above 1. */
export function feedAllowance(feed: Feed): number {
  let stated = 0;
  let points = 0;
  for (const symbol of CONDUCTING) {
    const percent = feed.label.percent[symbol] ?? 0;
    if (!(percent > 0)) continue;
    stated += percent;
    points += allowancePoints(symbol, percent) ?? 0;
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
    // Nothing to weigh up where the feed brings nothing that conducts.
    if (!(perLitre > 0) || Object.keys(amountsPerUnit(feed, `${measureUnit(feed)}/L`)).length === 0) return;
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

/*
 * [1] New Hampshire Code of Administrative Rules Agr 1105.04, the rule of the Association of American Plant Food
 *     Control Officials; read on a reprint.
 * [2] The same association's table for the primary nutrients, from memory, not seen: only the width of a band before
 *     there is a history of one's own hangs on it.
 */
