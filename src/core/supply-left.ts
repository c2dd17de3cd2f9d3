/** How long what is on hand lasts: days and batches left, and a sentence on it. */

import { nameKey } from "./cell.ts";
import { sayNumber } from "./saying.ts";
import { type Bought, converter, type Entries, entriesByFeed, onHandOf, type Used } from "./supply.ts";

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
  /** Unit of its latest purchase, g or mL. */
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

const LOOK_BACK_DAYS = 90;
/** A rate over a few days of log says little; it is spread over at least this long. */
const LEAST_DAYS = 14;

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[(values.length - 1) >> 1] as number;
}

function supplyOf(feed: string, entries: Entries, task: SupplyTask): Supply {
  const { today, lookBackDays = LOOK_BACK_DAYS } = task;
  const densityGPerMl = task.densityOf(feed);
  const { unit, bought, used, onHand } = onHandOf(feed, entries, { densityGPerMl });
  const inUnit = converter(feed, unit, densityGPerMl);
  const sum = (amounts: readonly number[]) => amounts.reduce((total, amount) => total + amount, 0);
  const dated = entries.used.flatMap(({ day, ...rest }) => (day === null ? [] : [{ day, ...rest }]));
  const recent = dated.filter(({ day }) => day > today - lookBackDays);
  const amounts = recent.map((entry) => inUnit(entry.amount, entry.unit)).filter((amount) => amount > 0);
  const first = Math.min(...dated.map(({ day }) => day));
  const days = Math.max(Math.min(today - first + 1, lookBackDays), LEAST_DAYS);
  const perDay = amounts.length > 0 ? sum(amounts) / days : null;
  const left = Math.max(onHand, 0);
  const daysLeft = perDay === null ? null : left / perDay;
  // The rounding of sums must not cost a batch.
  const batchesLeft = amounts.length > 0 ? Math.floor(left / middle(amounts) + 1e-9) : null;
  const say = (amount: number) => `${sayNumber(amount)} ${unit}`;
  const sentence =
    entries.bought.length === 0
      ? `No purchase of ${feed} is on record, so nobody can say how much is left.`
      : onHand < -1e-9 * Math.abs(bought)
        ? `The log used ${say(used)} of ${feed}, but only ${say(bought)} were bought. A purchase is missing, or a batch was logged wrongly.`
        : batchesLeft === null
          ? `${say(left)} of ${feed} are left; none was used lately.`
          : `${say(left)} of ${feed} are left, enough for ${batchesLeft} ${batchesLeft === 1 ? "batch" : "batches"}.`;
  return { feed, unit, bought, used, onHand, perDay, daysLeft, batchesLeft, sentence };
}

/**
 * What is left of every feed that was bought or used, in the order in which they first appear. What lies after `today`
 * does not count yet. Throws BadInput as onHandOf does.
 */
export function supplies(task: SupplyTask): Supply[] {
  const names = new Map<string, string>();
  for (const { feed } of [...task.bought, ...task.used]) {
    if (!names.has(nameKey(feed))) names.set(nameKey(feed), feed.trim());
  }
  const byFeed = entriesByFeed(task);
  return [...names].map(([key, feed]) => supplyOf(feed, byFeed.get(key) ?? { bought: [], used: [] }, task));
}
