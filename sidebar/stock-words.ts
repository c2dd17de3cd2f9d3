/** How a line of the stock is said: how much, for how many batches, until when, and when to buy again. */

import { isoFromDay } from "../src/core/calendar.ts";
import { sayGiven, sayNumber } from "../src/core/saying.ts";
import { count, showDay } from "./show.ts";
import type { Purchase, StockLine } from "./stock.ts";

export interface StockWords {
  /** Purchases are on record, or something about them needs a look. */
  readonly counted: boolean;
  /** "282 g"; "" where nobody can say. */
  readonly amount: string;
  readonly sentence: string;
  readonly warns: boolean;
}

/** Few enough to buy again; common practice, no source. */
const FEW_BATCHES = 2;

export function stockWords({ feed, supply, problem, runsOut }: StockLine): StockWords {
  if (problem !== null) return { counted: true, amount: "", sentence: problem, warns: true };
  if (supply === null || (supply.bought === 0 && supply.used === 0)) {
    return { counted: false, amount: "", sentence: `Nothing is on record of ${feed}.`, warns: false };
  }
  const { unit, onHand, bought, batchesLeft } = supply;
  if (bought === 0) return { counted: false, amount: "", sentence: supply.sentence, warns: false };
  if (onHand < -1e-9 * Math.abs(bought)) return { counted: true, amount: "", sentence: supply.sentence, warns: true };
  const amount = `${sayNumber(Math.max(onHand, 0))} ${unit}`;
  if (batchesLeft === null) return { counted: true, amount, sentence: "None was used lately.", warns: false };
  const batches = `Enough for ${count(batchesLeft, "batch", "batches")}`;
  const until = runsOut === null ? "; at this pace it lasts for years" : `, until about ${showDay(runsOut)}`;
  const few = batchesLeft <= FEW_BATCHES;
  const sentence = batchesLeft === 0 ? "Not enough for another batch." : `${batches}${until}.`;
  return { counted: true, amount, sentence: few ? `${sentence} Time to buy.` : sentence, warns: few };
}

/** "17 Oct 2026: 250 g of Calcium nitrate, lot L-2601, Tomas". */
export function purchaseWords({ day, amount, unit, feed, lot, who }: Purchase): string {
  const on = day === null ? "No date" : showDay(isoFromDay(day));
  const what = `${sayGiven(Math.abs(amount))} ${unit} of ${feed}${amount < 0 ? " left the shelf" : ""}`;
  return [`${on}: ${what}`, ...(lot === "" ? [] : [`lot ${lot}`]), ...(who === "" ? [] : [who])].join(", ");
}
