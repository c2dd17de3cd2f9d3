/** Upper and lower limits of a mix as linear limits on its doses, each with its words. */

import { type Amounts, ELEMENT_NAMES, type ElementSymbol, SYMBOLS } from "./elements.ts";
import { BadInput } from "./errors.ts";
import type { Feed } from "./feeds.ts";
import { nitrogenShares } from "./mixture.ts";
import type { Limit } from "./quadratic.ts";
import { sayGiven, sayList, sayNumber } from "./saying.ts";

export interface LimitWishes {
  /** mg/L of the element, water included. */
  readonly atMost?: Amounts | undefined;
  readonly atLeast?: Amounts | undefined;
  /** Greatest share of all nitrogen that may be ammonium, 0 to 1. Nitrogen of unstated form counts as ammonium. */
  readonly ammoniumShareAtMost?: number | undefined;
}

/** coefficients·x ≥ atLeast, x in g or mL a litre. */
export interface NamedLimit extends Limit {
  /** As it stands in a sentence: "at most 20 mg/L sodium". */
  readonly words: string;
}

export interface LimitSetting {
  readonly feeds: readonly Feed[];
  /** mg/L that one g/L or mL/L of each feed brings. */
  readonly perUnit: readonly Amounts[];
  readonly water: Amounts;
}

function checkLimit(value: number, what: string): void {
  if (!(value >= 0 && Number.isFinite(value))) {
    throw new BadInput("out-of-bounds", `${what} is ${sayGiven(value)} mg/L. Give 0 or more.`);
  }
}

/**
 * Throws BadInput, naming the element and the numbers, for a limit that no doses can keep: the water is over it
 * already, or no feed holds what must be there.
 */
export function namedLimits(wishes: LimitWishes, { feeds, perUnit, water }: LimitSetting): NamedLimit[] {
  const limits: NamedLimit[] = [];
  const columnOf = (symbol: ElementSymbol) => perUnit.map((amounts) => amounts[symbol] ?? 0);
  for (const symbol of SYMBOLS) {
    const name = ELEMENT_NAMES[symbol];
    const have = water[symbol] ?? 0;
    const most = wishes.atMost?.[symbol];
    const least = wishes.atLeast?.[symbol];
    if (most !== undefined) {
      checkLimit(most, `The upper limit for ${symbol}`);
      if (have > most) {
        throw new BadInput(
          "water-over-limit",
          `The water alone brings ${sayNumber(have)} mg/L ${name}, more than the ${sayGiven(most)} allowed. Blend it with low-mineral water or raise the limit.`,
        );
      }
      const coefficients = columnOf(symbol).map((part) => -part);
      limits.push({ coefficients, atLeast: have - most, words: `at most ${sayGiven(most)} mg/L ${name}` });
    }
    if (least !== undefined) {
      checkLimit(least, `The lower limit for ${symbol}`);
      if (most !== undefined && least > most) {
        throw new BadInput(
          "limits-crossed",
          `At least ${sayGiven(least)} and at most ${sayGiven(most)} mg/L ${name} cannot both hold. Change one of them.`,
        );
      }
      const coefficients = columnOf(symbol);
      if (least > have && coefficients.every((part) => part === 0)) {
        throw new BadInput(
          "nothing-holds",
          `At least ${sayGiven(least)} mg/L ${name} is asked for, but none of these feeds holds ${name}. Add one that does.`,
        );
      }
      limits.push({ coefficients, atLeast: least - have, words: `at least ${sayGiven(least)} mg/L ${name}` });
    }
  }
  const share = wishes.ammoniumShareAtMost;
  if (share !== undefined) {
    if (!(share >= 0 && share <= 1)) {
      throw new BadInput(
        "out-of-bounds",
        `The ammonium share is ${sayGiven(share * 100)} %. Give a number from 0 to 100 %.`,
      );
    }
    // Ammonium ≤ share × all nitrogen; the water's nitrogen is nitrate.
    const coefficients = feeds.map((feed, j) => {
      const { ammonium, unstated } = nitrogenShares(feed);
      return (share - ammonium - unstated) * (perUnit[j]?.N ?? 0);
    });
    limits.push({
      coefficients,
      atLeast: -share * (water.N ?? 0),
      words: `at most ${sayNumber(share * 100)} % of the nitrogen as ammonium`,
    });
  }
  return limits;
}

/** A sentence on limits that cannot all be kept; `without` are those whose removal alone would help. */
export function sayConflict(limits: readonly NamedLimit[], without: readonly NamedLimit[]): string {
  const all = sayList(
    limits.map(({ words }) => words),
    "and",
  );
  const capital = all.charAt(0).toUpperCase() + all.slice(1);
  if (without.length === 0)
    return `${capital} cannot all hold with these feeds and this water. Loosen more than one of them.`;
  const cure = sayList(
    without.map(({ words }) => `"${words}"`),
    "or",
  );
  return `${capital} cannot all hold with these feeds and this water. It works without ${cure}.`;
}
