/** One element against its target: the numbers, the words, and where the levels stand in the drawing. */

import { type Amounts, ELEMENT_NAMES, type ElementSymbol, SYMBOLS } from "../src/core/elements.ts";
import { sayNumber } from "../src/core/saying.ts";

export interface Gauge {
  readonly symbol: ElementSymbol;
  /** "Nitrogen". */
  readonly name: string;
  readonly wantedMgL: number;
  readonly reachedMgL: number;
  readonly verdict: "as wanted" | "under" | "over";
  /** Off by so much that it matters to a plant sooner than to the scale. */
  readonly far: boolean;
  /** "3 % under". */
  readonly words: string;
  /** Shares of the drawing's width, 0 to 1: what the water brings, then where the feeds take it, and the mark. */
  readonly waterShare: number;
  readonly reachedShare: number;
  readonly markShare: number;
}

/** The drawing ends at one and a half times the wanted amount. */
const END = 1.5;
/** An amount of 0 is measured against 10 mg/L, as in the solver. */
const INSTEAD_OF_ZERO_MG_L = 10;
/** Closer than this nobody can weigh or measure. */
const CLOSE = 0.01;
/** Common practice, no source: a solution within 5 % of its target is taken as the target. */
export const NEAR = 0.05;

export function capital(word: string): string {
  return word.slice(0, 1).toUpperCase() + word.slice(1);
}

/** (reached − wanted) / wanted. */
export function offBy(wantedMgL: number, reachedMgL: number): number {
  return (reachedMgL - wantedMgL) / (wantedMgL === 0 ? INSTEAD_OF_ZERO_MG_L : wantedMgL);
}

function verdictOf(wanted: number, reached: number): Pick<Gauge, "verdict" | "words"> {
  const difference = offBy(wanted, reached);
  if (Math.abs(difference) <= CLOSE) return { verdict: "as wanted", words: "as wanted" };
  if (wanted === 0) return { verdict: "over", words: `${sayNumber(reached)} too much` };
  if (sayNumber(reached) === "0") return { verdict: "under", words: "missing" };
  if (difference < 0) return { verdict: "under", words: `${Math.round(-100 * difference)} % under` };
  if (difference >= 9) return { verdict: "over", words: `${sayNumber(reached / wanted)} times` };
  return { verdict: "over", words: `${Math.round(100 * difference)} % over` };
}

/** A gauge for each element that the target names. */
export function gauges(wanted: Amounts, reached: Amounts, water: Amounts): readonly Gauge[] {
  return SYMBOLS.flatMap((symbol) => {
    const wantedMgL = wanted[symbol];
    if (wantedMgL === undefined) return [];
    const reachedMgL = reached[symbol] ?? 0;
    const end = END * (wantedMgL === 0 ? INSTEAD_OF_ZERO_MG_L : wantedMgL);
    const share = (mgL: number): number => Math.min(1, Math.max(0, mgL / end));
    return [
      {
        symbol,
        name: capital(ELEMENT_NAMES[symbol]),
        wantedMgL,
        reachedMgL,
        ...verdictOf(wantedMgL, reachedMgL),
        far: Math.abs(offBy(wantedMgL, reachedMgL)) > NEAR,
        waterShare: share(water[symbol] ?? 0),
        reachedShare: share(reachedMgL),
        markShare: share(wantedMgL),
      },
    ];
  });
}

/** Elements that are in the mix but not in the target, in the usual order. */
export function besides(wanted: Amounts, reached: Amounts): readonly { symbol: ElementSymbol; mgL: number }[] {
  return SYMBOLS.flatMap((symbol) => {
    const mgL = reached[symbol] ?? 0;
    return wanted[symbol] === undefined && sayNumber(mgL) !== "0" ? [{ symbol, mgL }] : [];
  });
}
