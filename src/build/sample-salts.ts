/** Guaranteed analyses of pure salts, worked out from their formulas. */

import { ATOMIC_WEIGHTS, type ElementSymbol } from "../core/elements.ts";
import { percentIn } from "../core/formula.ts";

/** Percent by weight of an element in the pure salt; `as` "P2O5" or "K2O" gives it the way a grade does. */
export function percentOf(formula: string, symbol: ElementSymbol, as?: string): number {
  const percent = percentIn(formula, symbol);
  return as === undefined ? percent : (100 * percent) / percentIn(as, symbol);
}

/** mg/L of an element in `mmolL` millimoles of it a litre. */
export function mgLFromMmolL(symbol: ElementSymbol, mmolL: number): number {
  return mmolL * ATOMIC_WEIGHTS[symbol];
}
