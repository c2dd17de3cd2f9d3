/** How much of a feed is on hand: what was bought less what the log used, never a number kept beside it. */

import { nameKey } from "./cell.ts";
import { BadInput } from "./errors.ts";
import { sayGiven } from "./saying.ts";

export const SUPPLY_UNITS = ["g", "kg", "mL", "L"] as const;

export type SupplyUnit = (typeof SUPPLY_UNITS)[number];

export interface Bought {
  readonly feed: string;
  /** Days since 1970-01-01; null where it was not noted: then it counts on every day. */
  readonly day: number | null;
  /** Below 0 for what left the shelf by another way than a batch: spilled, given away. */
  readonly amount: number;
  readonly unit: SupplyUnit;
}

/** One feed of one batch in the log. */
export interface Used {
  readonly feed: string;
  /** Null as in Bought. */
  readonly day: number | null;
  readonly amount: number;
  readonly unit: "g" | "mL";
}

export interface OnHandTask {
  readonly bought: readonly Bought[];
  /** Corrections and batches taken back are left out before. */
  readonly used: readonly Used[];
  /** What lies after it does not count yet; null counts everything. */
  readonly today: number | null;
}

export interface OnHand {
  /** g or mL. */
  readonly unit: "g" | "mL";
  /** Nothing bought is 0; `onHand` is then below 0. */
  readonly bought: number;
  readonly used: number;
  /** May be below 0: then more was used than was ever bought. */
  readonly onHand: number;
}

/** Entries of one feed that count on the day asked for, the later last. */
export interface Entries {
  readonly bought: readonly Bought[];
  readonly used: readonly Used[];
}

const BASE: Readonly<Record<SupplyUnit, { readonly unit: "g" | "mL"; readonly factor: number }>> = {
  g: { unit: "g", factor: 1 },
  kg: { unit: "g", factor: 1000 },
  mL: { unit: "mL", factor: 1 },
  L: { unit: "mL", factor: 1000 },
};

/** g or mL in one of `unit`, and which of the two. */
export function baseOf(unit: SupplyUnit): { readonly unit: "g" | "mL"; readonly factor: number } {
  return BASE[unit];
}

/** Entries by nameKey of their feed. What lies after `today` is left out. */
export function entriesByFeed({ bought, used, today }: OnHandTask): ReadonlyMap<string, Entries> {
  const counts = ({ day }: { readonly day: number | null }) => today === null || day === null || day <= today;
  const byFeed = new Map<string, { bought: Bought[]; used: Used[] }>();
  const at = (feed: string) => {
    const key = nameKey(feed);
    const found = byFeed.get(key) ?? { bought: [], used: [] };
    byFeed.set(key, found);
    return found;
  };
  for (const entry of bought) if (counts(entry)) at(entry.feed).bought.push(entry);
  for (const entry of used) if (counts(entry)) at(entry.feed).used.push(entry);
  // The order of rows on a tab means nothing: people sort.
  for (const { bought: list } of byFeed.values()) list.sort((a, b) => (a.day ?? -Infinity) - (b.day ?? -Infinity));
  return byFeed;
}

/** Unit of the latest purchase, else of the first use. */
export function unitOfEntries({ bought, used }: Entries): "g" | "mL" {
  const last = bought[bought.length - 1];
  return last === undefined ? (used[0]?.unit ?? "g") : BASE[last.unit].unit;
}

/** Turns g into mL and back. Throws BadInput where that needs a density and there is none. */
export function converter(feed: string, to: "g" | "mL", densityGPerMl: number | null) {
  return (amount: number, from: "g" | "mL"): number => {
    if (!Number.isFinite(amount)) {
      throw new BadInput("not-a-number", `An amount of ${feed} is ${sayGiven(amount)} ${from}. Give a number.`);
    }
    if (from === to) return amount;
    if (densityGPerMl === null) {
      throw new BadInput(
        "density-needed",
        `${feed} is counted in ${to}, but some of it was bought or used in ${from}. Give its density in g/mL, so that the two can be counted together.`,
      );
    }
    return to === "mL" ? amount / densityGPerMl : amount * densityGPerMl;
  };
}

/**
 * What is left of one feed, in g or mL: in `unit`, else in that of its latest purchase. Throws BadInput for a use below
 * 0, and when grams meet millilitres without a density.
 */
export function onHandOf(
  feed: string,
  entries: Entries,
  how: { readonly densityGPerMl: number | null; readonly unit?: "g" | "mL" | undefined },
): OnHand {
  const unit = how.unit ?? unitOfEntries(entries);
  const inUnit = converter(feed, unit, how.densityGPerMl);
  let bought = 0;
  for (const entry of entries.bought) {
    const base = BASE[entry.unit];
    bought += inUnit(entry.amount * base.factor, base.unit);
  }
  let used = 0;
  for (const entry of entries.used) {
    if (entry.amount < 0) {
      throw new BadInput(
        "out-of-bounds",
        `A batch used ${sayGiven(entry.amount)} ${entry.unit} of ${feed}. Give 0 or more.`,
      );
    }
    used += inUnit(entry.amount, entry.unit);
  }
  return { unit, bought, used, onHand: bought - used };
}
