/** Doses that come closest to a target, none negative, and why what is missing is missing. */

import { amountsPerUnit, MOST_PER_LITRE, measureUnit } from "./dose.ts";
import { type Amounts, type ElementSymbol, SYMBOLS } from "./elements.ts";
import { BadInput } from "./errors.ts";
import type { Feed } from "./feeds.ts";
import { nonNegativeLeastSquares } from "./nnls.ts";
import { sayGiven, sayNumber } from "./saying.ts";
import { type Balance, whyNotReached } from "./shortfall.ts";
import { checkAmounts } from "./waters.ts";

export interface Dose {
  readonly feed: Feed;
  /** g or mL for each litre of water, never negative. */
  readonly perLitre: number;
  readonly unit: "g" | "mL";
}

export interface NotReached {
  readonly symbol: ElementSymbol;
  /** mg/L. */
  readonly wanted: number;
  /** mg/L. */
  readonly reached: number;
  readonly why: string;
}

export interface SolveTask {
  /** Elemental mg/L; an element that is not there is not counted. */
  readonly wanted: Amounts;
  readonly feeds: readonly Feed[];
  /** mg/L already in the water. */
  readonly water: Amounts;
}

export interface Solved {
  /** One for each feed, in the order given, also those of 0. */
  readonly doses: readonly Dose[];
  /** mg/L of every element that the water or a feed in use states. */
  readonly reached: Amounts;
  /** Sum over the wanted elements of ((reached − wanted) / wanted)². */
  readonly misfit: number;
  /** Wanted elements that are off by more than 1 %. */
  readonly notReached: readonly NotReached[];
}

/** A wanted 0 is measured against this many mg/L. */
const SCALE_OF_ZERO_MG_L = 10;
/** A nanogram in a litre: below it a relative error says nothing. */
const LEAST_WANTED_MG_L = 0.000001;
/** Off by less than this share counts as reached: doses are not weighed better. */
const REACHED_WITHIN = 0.01;

function misfitScale(wantedMgL: number): number {
  return wantedMgL > 0 ? wantedMgL : SCALE_OF_ZERO_MG_L;
}

function checkWanted(wanted: Amounts): ElementSymbol[] {
  const symbols = SYMBOLS.filter((symbol) => wanted[symbol] !== undefined);
  if (symbols.length === 0) {
    throw new BadInput("empty-target", "The target names no element. Give mg/L for at least one.");
  }
  checkAmounts(wanted, "The target");
  for (const symbol of symbols) {
    const goal = wanted[symbol] as number;
    if (goal > 0 && goal < LEAST_WANTED_MG_L) {
      throw new BadInput(
        "out-of-bounds",
        `The target: ${symbol} is ${sayGiven(goal)} mg/L. Give 0, or ${sayGiven(LEAST_WANTED_MG_L)} mg/L or more.`,
      );
    }
  }
  return symbols;
}

/** A task as weighted least squares: least |columns·x − missing|² over doses x, g or mL a litre of each feed. */
export interface DoseProblem {
  readonly symbols: readonly ElementSymbol[];
  /** What each element's misfit is measured against, mg/L. */
  readonly scales: readonly number[];
  /** mg/L that one g/L or mL/L of each feed brings. */
  readonly perUnit: readonly Amounts[];
  /** One for each feed, over `symbols`, relative to `scales`; none negative. */
  readonly columns: readonly (readonly number[])[];
  /** Wanted less what the water brings, relative to `scales`. */
  readonly missing: readonly number[];
}

/** Sets up the task. Throws BadInput for an empty target and for amounts below 0 or above a kilogram in a litre. */
export function doseProblem({ wanted, feeds, water }: SolveTask): DoseProblem {
  checkAmounts(water, "The water");
  const symbols = checkWanted(wanted);
  const scales = symbols.map((symbol) => misfitScale(wanted[symbol] as number));
  const perUnit = feeds.map((feed) => amountsPerUnit(feed, measureUnit(feed) === "mL" ? "mL/L" : "g/L"));
  const columns = perUnit.map((amounts) => symbols.map((symbol, i) => (amounts[symbol] ?? 0) / (scales[i] as number)));
  const missing = symbols.map(
    (symbol, i) => ((wanted[symbol] as number) - (water[symbol] ?? 0)) / (scales[i] as number),
  );
  return { symbols, scales, perUnit, columns, missing };
}

/** mg/L of every element that the water or a feed in use states, for doses x. */
export function reachedBy(perUnit: readonly Amounts[], x: readonly number[], water: Amounts): Amounts {
  const reached: Partial<Record<ElementSymbol, number>> = {};
  for (const symbol of SYMBOLS) {
    let amount = water[symbol];
    perUnit.forEach((amounts, j) => {
      const dose = x[j] as number;
      const part = amounts[symbol];
      if (dose > 0 && part !== undefined) amount = (amount ?? 0) + dose * part;
    });
    if (amount !== undefined) reached[symbol] = amount;
  }
  return reached;
}

/**
 * Non-negative weighted least squares: least sum over the wanted elements of ((reached − wanted) / wanted)², a
 * wanted 0 measured against 10 mg/L, the water counted first. Of feeds that are alike the first is used.
 * Throws BadInput for an empty target and for a feed so weak that its dose would be absurd; NoConvergence as
 * nonNegativeLeastSquares does.
 */
export function solveDoses(task: SolveTask): Solved {
  const { wanted, feeds, water } = task;
  const { symbols, scales, perUnit, columns, missing } = doseProblem(task);
  const { x } = nonNegativeLeastSquares(columns, missing);
  const reached = reachedBy(perUnit, x, water);
  const doses = feeds.map((feed, j): Dose => {
    const perLitre = x[j] as number;
    if (perLitre > MOST_PER_LITRE) {
      throw new BadInput(
        "absurd-dose",
        `${feed.name} is so weak that ${sayNumber(perLitre)} ${measureUnit(feed)} would go into each litre. Leave it out of the mix.`,
      );
    }
    return { feed, perLitre, unit: measureUnit(feed) };
  });

  const balances = symbols.map((symbol, i): Balance => {
    const scale = scales[i] as number;
    const goal = wanted[symbol] as number;
    const got = reached[symbol] ?? 0;
    return { symbol, wanted: goal, water: water[symbol] ?? 0, reached: got, off: (goal - got) / scale };
  });
  const shares = columns.map((column, j) => ({ dose: x[j] as number, column }));
  const notReached: NotReached[] = [];
  balances.forEach((balance, i) => {
    if (Math.abs(balance.off) <= REACHED_WITHIN) return;
    const { symbol, wanted: goal, reached: got } = balance;
    notReached.push({ symbol, wanted: goal, reached: got, why: whyNotReached(i, balances, shares) });
  });
  return { doses, reached, misfit: balances.reduce((sum, { off }) => sum + off * off, 0), notReached };
}
