/** A guaranteed analysis as elements: what was printed, turned into percent of each element, or refused. */

import { type Amounts, ATOMIC_WEIGHTS, type ElementSymbol, SYMBOLS } from "./elements.ts";
import { BadInput } from "./errors.ts";
import { OXIDES, oxideElement, oxideFactor } from "./oxides.ts";
import { checkNumber } from "./reading.ts";
import { sayGiven, sayNumber } from "./saying.ts";

/** Percent by weight (g in 100 g) or by volume (g in 100 mL). */
export type Basis = "w/w" | "w/v";

/** Forms of nitrogen, percent of the feed as N; null where the label does not say. `other`: slow-release and the like. */
export interface NitrogenForms {
  readonly nitrate: number | null;
  readonly ammonium: number | null;
  readonly urea: number | null;
  readonly other: number | null;
}

export interface Label {
  readonly basis: Basis;
  /** Percent of each element as the element; absent where the label does not state it. */
  readonly percent: Amounts;
  readonly nitrogen: NitrogenForms;
}

export const NITROGEN_TERMS = ["NO3-N", "NH4-N", "Urea-N", "Other-N"] as const;

/** Everything a label may state, as it is printed. */
export const LABEL_TERMS = [...SYMBOLS, ...OXIDES, ...NITROGEN_TERMS] as const;

export type LabelTerm = (typeof LABEL_TERMS)[number];

/** What a label prints, percent by printed term. */
export type Printed = ReadonlyMap<LabelTerm, number>;

export interface LabelDeclaration {
  readonly basis: Basis;
  /** g/mL; with it a w/v label may hold up to 100 × density grams in 100 mL. Null: not known. */
  readonly densityGPerMl: number | null;
  /** What the label is, as a sentence begins: `The label "10-5-5"`. */
  readonly what: string;
}

/** Labels print to a tenth of a percent or finer. */
const HALF_A_TENTH = 0.05;

/** Half of the last printed place is what rounding can hide. */
function roundingOf(percent: number): number {
  const decimals = /\.(\d+)$/.exec(String(percent))?.[1]?.length ?? 0;
  return 0.5 * 10 ** -Math.min(Math.max(decimals, 1), 6);
}

/** Labels also convert with 0.44 for 0.43643 and 0.83 for 0.83015 [Penn State prints 8.8 for 20 % P2O5]. */
const ROUNDED_FACTOR = 0.01;
/** Sums of decimals in binary. */
const SLACK = 1e-9;
/** In a chloride the oxide's oxygen is not there: KCl prints as K2O 63.2 + Cl 47.6. */
const OXYGEN_FOR_CHLORINE = ATOMIC_WEIGHTS.O / (2 * ATOMIC_WEIGHTS.Cl);

function formsOfNitrogen(printed: Printed): NitrogenForms {
  return {
    nitrate: printed.get("NO3-N") ?? null,
    ammonium: printed.get("NH4-N") ?? null,
    urea: printed.get("Urea-N") ?? null,
    other: printed.get("Other-N") ?? null,
  };
}

/** Total N: as printed, else the sum of its forms [forms add up to total N: uniform state fertilizer law]. */
function totalNitrogen(printed: Printed, what: string): number | null {
  const total = printed.get("N");
  let sum = 0;
  let rounding = 0;
  let forms = 0;
  for (const term of NITROGEN_TERMS) {
    const percent = printed.get(term);
    if (percent === undefined) continue;
    sum += percent;
    rounding += roundingOf(percent);
    forms += 1;
  }
  if (forms === 0) return total ?? null;
  if (total === undefined) return sum;
  if (Math.abs(sum - total) > rounding + roundingOf(total) + SLACK) {
    throw new BadInput(
      "nitrogen-forms",
      `${what}: the forms of nitrogen add up to ${sayNumber(sum)} %, but total N is ${sayGiven(total)} %. Give every form that is printed, or N alone.`,
    );
  }
  return total;
}

/** To hundredths: 100.4 and 100 must not both be said as 100. */
function sayHundredths(percent: number): string {
  return sayGiven(Math.round(percent * 100) / 100);
}

/** Refuses printed percents that together are more than the whole. */
function checkWhole(printed: Printed, percent: Amounts, declaration: LabelDeclaration): void {
  const { basis, densityGPerMl, what } = declaration;
  const whole = basis === "w/v" && densityGPerMl !== null ? 100 * densityGPerMl : 100;
  const asOxide = new Map<ElementSymbol, number>();
  let oxygen = 0;
  for (const oxide of OXIDES) {
    const share = printed.get(oxide);
    if (share === undefined) continue;
    asOxide.set(oxideElement(oxide), share);
    oxygen += share * (1 - oxideFactor(oxide));
  }
  let total = 0;
  let rounding = SLACK;
  for (const symbol of SYMBOLS) {
    const share = asOxide.get(symbol) ?? percent[symbol];
    if (share === undefined) continue;
    total += share;
    rounding += HALF_A_TENTH;
  }
  // Chlorine stands in for no more oxygen than the printed oxides hold.
  const notThere = Math.min(OXYGEN_FOR_CHLORINE * (percent.Cl ?? 0), oxygen);
  if (total - notThere > whole + rounding) {
    const per = basis === "w/w" ? "" : " (grams in 100 mL)";
    const cure = basis === "w/v" && densityGPerMl === null ? ", or give the density" : "";
    throw new BadInput(
      "over-whole",
      `${what} adds up to ${sayHundredths(total)} %, more than ${sayHundredths(whole)} %${per}. Compare it with the package${cure}.`,
    );
  }
}

/**
 * Turns what a label prints into elements. Throws BadInput, with the numbers in the sentence, when a percent is
 * not between 0 and 100, when the forms of nitrogen do not add up to N, when an oxide and its element contradict each other, and when the label
 * adds up to more than 100 %. Where an oxide and its element agree, the oxide counts: it is the guarantee.
 */
export function labelFrom(printed: Printed, declaration: LabelDeclaration): Label {
  const { basis, what } = declaration;
  for (const [term, share] of printed) {
    checkNumber(share, { what: `${what}: ${term}`, unit: "%", min: 0, max: 100 });
  }
  const percent: Partial<Record<ElementSymbol, number>> = {};
  for (const symbol of SYMBOLS) {
    const share = printed.get(symbol);
    if (share !== undefined) percent[symbol] = share;
  }
  const nitrogen = totalNitrogen(printed, what);
  if (nitrogen !== null) percent.N = nitrogen;
  for (const oxide of OXIDES) {
    const share = printed.get(oxide);
    if (share === undefined) continue;
    const symbol = oxideElement(oxide);
    const asElement = share * oxideFactor(oxide);
    const stated = printed.get(symbol);
    if (stated !== undefined) {
      const rounding = roundingOf(stated) + roundingOf(share) * oxideFactor(oxide);
      if (Math.abs(asElement - stated) > rounding + ROUNDED_FACTOR * Math.max(asElement, stated) + SLACK) {
        throw new BadInput(
          "oxide-against-element",
          `${what}: ${oxide} ${sayGiven(share)} % is ${sayNumber(asElement)} % ${symbol}, but it also says ${symbol} ${sayGiven(stated)} %. Leave out the wrong one.`,
        );
      }
    }
    percent[symbol] = asElement;
  }
  checkWhole(printed, percent, declaration);
  return { basis, percent, nitrogen: formsOfNitrogen(printed) };
}
