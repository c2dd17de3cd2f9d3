/** Ratios of elements by weight, such as N:P:K 3:1:2, as amounts and as equalities on doses. */

import { type Amounts, ELEMENT_NAMES, type ElementSymbol, SYMBOLS } from "./elements.ts";
import { BadInput } from "./errors.ts";
import type { Limit } from "./quadratic.ts";
import { sayGiven } from "./saying.ts";

/** Parts by weight of the element, all above 0: { N: 3, P: 1, K: 2 }. Not of P2O5 and K2O. */
export type Ratio = Amounts;

export function ratioSymbols(ratio: Ratio): ElementSymbol[] {
  return SYMBOLS.filter((symbol) => ratio[symbol] !== undefined);
}

/** "K:Ca:Mg 4:2:1". */
export function sayRatio(ratio: Ratio): string {
  const symbols = ratioSymbols(ratio);
  return `${symbols.join(":")} ${symbols.map((symbol) => sayGiven(ratio[symbol] as number)).join(":")}`;
}

function checkRatio(ratio: Ratio): void {
  const symbols = ratioSymbols(ratio);
  if (symbols.length < 2) throw new BadInput("bad-ratio", "A ratio names at least two elements, like N:P:K 3:1:2.");
  for (const symbol of symbols) {
    const part = ratio[symbol] as number;
    if (!(part > 0 && Number.isFinite(part))) {
      throw new BadInput(
        "bad-ratio",
        `The part of ${ELEMENT_NAMES[symbol]} in a ratio is ${sayGiven(part)}. Give a number above 0, or leave ${symbol} out.`,
      );
    }
  }
}

/**
 * Amounts wanted once ratios are followed from elements whose amount is `fixed`: a ratio that names a fixed element
 * sets the others it names, over what was wanted, and those lead on to further ratios. Throws BadInput for a ratio
 * with parts not above 0, for two that contradict each other, and for one that no amount leads to.
 */
export function followRatios(wanted: Amounts, fixed: Amounts, ratios: readonly Ratio[]): Amounts {
  const known: Partial<Record<ElementSymbol, number>> = { ...fixed };
  const open = [...ratios];
  for (const ratio of open) checkRatio(ratio);
  for (let more = true; more; ) {
    more = false;
    for (const ratio of open.slice()) {
      const symbols = ratioSymbols(ratio);
      const anchor = symbols.find((symbol) => known[symbol] !== undefined);
      if (anchor === undefined) continue;
      const onePart = (known[anchor] as number) / (ratio[anchor] as number);
      for (const symbol of symbols) {
        const amount = onePart * (ratio[symbol] as number);
        const before = known[symbol];
        if (before !== undefined && Math.abs(before - amount) > 1e-9 * Math.max(before, amount)) {
          throw new BadInput(
            "ratios-disagree",
            `${sayRatio(ratio)} does not fit with the other ratios: they set ${ELEMENT_NAMES[symbol]} twice. Leave one out.`,
          );
        }
        known[symbol] = amount;
      }
      open.splice(open.indexOf(ratio), 1);
      more = true;
    }
  }
  for (const ratio of open) {
    if (ratioSymbols(ratio).some((symbol) => (wanted[symbol] ?? 0) > 0)) continue;
    throw new BadInput(
      "ratio-without-amount",
      `${sayRatio(ratio)} has no amount to go by. Give one of its elements in mg/L, or the strength as N.`,
    );
  }
  return { ...wanted, ...known };
}

export interface RatioSetting {
  readonly perUnit: readonly Amounts[];
  readonly water: Amounts;
}

/** reached / part equal for all elements of the ratio, water included, as equalities on doses. */
export function ratioEqualities(ratio: Ratio, { perUnit, water }: RatioSetting): Limit[] {
  const [first, ...others] = ratioSymbols(ratio);
  if (first === undefined) return [];
  const part = (amounts: Amounts, symbol: ElementSymbol) => (amounts[symbol] ?? 0) / (ratio[symbol] as number);
  return others.map((symbol) => ({
    coefficients: perUnit.map((amounts) => part(amounts, symbol) - part(amounts, first)),
    atLeast: part(water, first) - part(water, symbol),
  }));
}

/** Greatest relative difference of reached / part among the elements of the ratio; null when none is there. */
export function ratioOff(ratio: Ratio, reached: Amounts): number | null {
  const parts = ratioSymbols(ratio).map((symbol) => (reached[symbol] ?? 0) / (ratio[symbol] as number));
  const most = Math.max(...parts);
  return most > 0 ? (most - Math.min(...parts)) / most : null;
}
