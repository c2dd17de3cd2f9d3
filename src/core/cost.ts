/** What a batch costs, from what the packs cost. */

import { BadInput } from "./errors.ts";
import type { Feed } from "./feeds.ts";
import { sayGiven } from "./saying.ts";

export interface Pack {
  /** What the pack cost, in the household's own money. */
  readonly price: number;
  /** g or mL in it, as the feed is measured. */
  readonly holds: number;
}

export interface CostPart {
  readonly feed: Feed;
  /** g or mL for the whole batch. */
  readonly perBatch: number;
}

export interface Cost {
  /** In the household's own money; of the feeds with a price only. */
  readonly perBatch: number;
  readonly per10L: number;
  /** Feeds in the batch whose price is not known: the cost is at least the above. */
  readonly unpriced: readonly Feed[];
}

/** Money for one g or mL. Throws BadInput for a negative price and an empty pack. */
export function pricePerUnit({ price, holds }: Pack, feedName: string): number {
  if (!(price >= 0 && Number.isFinite(price))) {
    throw new BadInput("out-of-bounds", `The price of ${feedName} is ${sayGiven(price)}. Give 0 or more.`);
  }
  if (!(holds > 0 && Number.isFinite(holds))) {
    throw new BadInput("out-of-bounds", `The pack of ${feedName} holds ${sayGiven(holds)}. Give a number above 0.`);
  }
  return price / holds;
}

/** `packOf` gives null where the price is not known. */
export function batchCost(parts: readonly CostPart[], litres: number, packOf: (feed: Feed) => Pack | null): Cost {
  let perBatch = 0;
  const unpriced: Feed[] = [];
  for (const { feed, perBatch: amount } of parts) {
    if (!(amount > 0)) continue;
    const pack = packOf(feed);
    if (pack === null) unpriced.push(feed);
    else perBatch += amount * pricePerUnit(pack, feed.name);
  }
  return { perBatch, per10L: (perBatch / litres) * 10, unpriced };
}
