/** What a batch was made from: the same water, feeds, lots and acid make batches that can be compared. */

import type { BatchRow, FieldRow } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { parseDoses } from "../src/core/dose-text.ts";
import { isBadInput } from "../src/core/errors.ts";

export interface LotChange {
  /** ISO day of the purchase. */
  readonly date: string;
  readonly feed: string;
  readonly lot: string;
}

/** Purchases that bring another lot than the one before, by day. */
export function lotChanges(purchases: readonly FieldRow[]): LotChange[] {
  return purchases
    .flatMap(({ fields }) => {
      const [date, feed, lot] = ["Date", "Feed", "Lot"].map((heading) => String(fields[heading] ?? "").trim());
      if (date === undefined || feed === undefined || lot === undefined) return [];
      return /^\d{4}-\d{2}-\d{2}$/.test(date) && feed !== "" && lot !== "" ? [{ date, feed, lot }] : [];
    })
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
    .filter(({ feed, lot, date }, at, all) => nameKey(lotOn(all.slice(0, at), feed, date)) !== nameKey(lot));
}

/** Lot of a feed on a day: the one bought last; "" where none is on record. A new pack counts from the day it was bought. */
export function lotOn(changes: readonly LotChange[], feed: string, date: string): string {
  const key = nameKey(feed);
  return changes.reduce((lot, one) => (one.date <= date && nameKey(one.feed) === key ? one.lot : lot), "");
}

/** Names of the feeds of a batch, sorted; a text that cannot be read stands for itself. */
export function feedsOf(doses: string): readonly string[] {
  if (doses.trim() === "") return [];
  try {
    return parseDoses(doses)
      .map(({ feed }) => feed.trim())
      .sort((a, b) => (nameKey(a) < nameKey(b) ? -1 : 1));
  } catch (error) {
    if (isBadInput(error)) return [doses.trim()];
    throw error;
  }
}

/** "Phosphoric acid 85 %, to pH 5.8" of "Phosphoric acid 85 %: 1.48 mL, to pH 5.8": how much depends on the volume. */
export function acidWithoutAmount(acid: string): string {
  return acid
    .replace(/[:,]?\s*\d+(?:[.,]\d+)?\s*(?:g|ml)\b/i, "")
    .replace(/\s+/g, " ")
    .trim();
}

/** The same for batches of the same water and feeds. */
export function groupKey({ water, doses }: Pick<BatchRow, "water" | "doses">): string {
  return JSON.stringify([nameKey(water), feedsOf(doses).map(nameKey)]);
}

/** The same for batches of the same water, feeds, lots and acid. */
export function partsKey(
  batch: Pick<BatchRow, "water" | "doses" | "acid">,
  date: string,
  lots: readonly LotChange[],
): string {
  const feeds = feedsOf(batch.doses);
  return JSON.stringify([
    groupKey(batch),
    feeds.map((feed) => nameKey(lotOn(lots, feed, date))),
    nameKey(acidWithoutAmount(batch.acid)),
  ]);
}
