/** What is left of a feed: what was bought less what the log used, never a number kept beside it. */

import { nameKey } from "./cell.ts";
import { BadInput } from "./errors.ts";
import { sayGiven, sayNumber } from "./saying.ts";

export const SUPPLY_UNITS = ["g", "kg", "mL", "L"] as const;

export type SupplyUnit = (typeof SUPPLY_UNITS)[number];

export interface Bought {
  readonly feed: string;
  /** Days since 1970-01-01; null where it was not noted. */
  readonly day: number | null;
  readonly amount: number;
  readonly unit: SupplyUnit;
}

/** One feed of one batch in the log. */
export interface Used {
  readonly feed: string;
  readonly day: number;
  readonly amount: number;
  readonly unit: "g" | "mL";
}

export interface SupplyTask {
  readonly bought: readonly Bought[];
  /** Corrections and batches taken back are left out before. */
  readonly used: readonly Used[];
  readonly today: number;
  /** g/mL of a liquid, to count grams against millilitres; null where not known. */
  readonly densityOf: (feed: string) => number | null;
  /** Use of the last this many days counts; 90 where absent. */
  readonly lookBackDays?: number | undefined;
}

export interface Supply {
  readonly feed: string;
  /** Unit of its last purchase, g or mL. */
  readonly unit: "g" | "mL";
  readonly bought: number;
  readonly used: number;
  /** May be below 0: then more was used than was ever bought, and `sentence` says so. */
  readonly onHand: number;
  /** Mean use a day over the days looked at; null where nothing was used in them. */
  readonly perDay: number | null;
  readonly daysLeft: number | null;
  /** Whole batches like the middle one of those looked at; null where there were none. */
  readonly batchesLeft: number | null;
  readonly sentence: string;
}

const BASE: Readonly<Record<SupplyUnit, { unit: "g" | "mL"; factor: number }>> = {
  g: { unit: "g", factor: 1 },
  kg: { unit: "g", factor: 1000 },
  mL: { unit: "mL", factor: 1 },
  L: { unit: "mL", factor: 1000 },
};

const LOOK_BACK_DAYS = 90;
/** A rate over a few days of log says little; it is spread over at least this long. */
const LEAST_DAYS = 14;

function converter(feed: string, to: "g" | "mL", densityGPerMl: number | null) {
  return (amount: number, from: "g" | "mL"): number => {
    if (!(amount >= 0 && Number.isFinite(amount))) {
      throw new BadInput("out-of-bounds", `An amount of ${feed} is ${sayGiven(amount)} ${from}. Give 0 or more.`);
    }
    if (from === to) return amount;
    if (densityGPerMl === null) {
      throw new BadInput(
        "density-needed",
        `${feed} was bought in ${to} and used in ${from}. Give its density in g/mL, so that the two can be counted together.`,
      );
    }
    return to === "mL" ? amount / densityGPerMl : amount * densityGPerMl;
  };
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[(values.length - 1) >> 1] as number;
}

function supplyOf(feed: string, task: SupplyTask): Supply {
  const { today, lookBackDays = LOOK_BACK_DAYS } = task;
  const mine = (entry: { feed: string }) => nameKey(entry.feed) === nameKey(feed);
  const bought = task.bought.filter(mine).filter(({ day }) => day === null || day <= today);
  const used = task.used.filter(mine).filter(({ day }) => day <= today);
  const lastUnit = bought[bought.length - 1]?.unit;
  const unit = lastUnit === undefined ? (used[0]?.unit ?? "g") : BASE[lastUnit].unit;
  const inUnit = converter(feed, unit, task.densityOf(feed));
  const sum = (amounts: readonly number[]) => amounts.reduce((total, amount) => total + amount, 0);
  const came = sum(bought.map((entry) => inUnit(entry.amount * BASE[entry.unit].factor, BASE[entry.unit].unit)));
  const went = sum(used.map((entry) => inUnit(entry.amount, entry.unit)));
  const onHand = came - went;
  const recent = used.filter(({ day }) => day > today - lookBackDays);
  const amounts = recent.map((entry) => inUnit(entry.amount, entry.unit)).filter((amount) => amount > 0);
  const first = Math.min(...used.map(({ day }) => day));
  const days = Math.max(Math.min(today - first + 1, lookBackDays), LEAST_DAYS);
  const perDay = amounts.length > 0 ? sum(amounts) / days : null;
  const left = Math.max(onHand, 0);
  const daysLeft = perDay === null ? null : left / perDay;
  // The rounding of sums must not cost a batch.
  const batchesLeft = amounts.length > 0 ? Math.floor(left / middle(amounts) + 1e-9) : null;
  const say = (amount: number) => `${sayNumber(amount)} ${unit}`;
  const sentence =
    bought.length === 0
      ? `No purchase of ${feed} is on record, so nobody can say how much is left.`
      : onHand < -1e-9 * came
        ? `The log used ${say(went)} of ${feed}, but only ${say(came)} were bought. A purchase is missing, or a batch was logged wrongly.`
        : batchesLeft === null
          ? `${say(left)} of ${feed} are left; none was used lately.`
          : `${say(left)} of ${feed} are left, enough for ${batchesLeft} ${batchesLeft === 1 ? "batch" : "batches"}.`;
  return { feed, unit, bought: came, used: went, onHand, perDay, daysLeft, batchesLeft, sentence };
}

/**
 * What is left of every feed that was bought or used, in the order in which they first appear. What lies after `today`
 * does not count yet. Throws BadInput for amounts below 0, and when grams meet millilitres without a density.
 */
export function supplies(task: SupplyTask): Supply[] {
  const names = new Map<string, string>();
  for (const { feed } of [...task.bought, ...task.used]) {
    if (!names.has(nameKey(feed))) names.set(nameKey(feed), feed.trim());
  }
  return [...names.values()].map((feed) => supplyOf(feed, task));
}
