/** The choices of the gap finder, and what a feed leaves short for a target with what would fill it. */

import { nameKey } from "../src/core/cell.ts";
import { isBadInput } from "../src/core/errors.ts";
import type { Feed } from "../src/core/feeds.ts";
import { findGaps, type Gaps } from "../src/core/gaps.ts";
import type { Shelf } from "./batch-shelf.ts";
import { chosen, PURE_WATER } from "./choices.ts";
import type { FeedDraft } from "./feed-draft.ts";
import type { Option } from "./field.tsx";

/** The feed that is being pasted; no name on a shelf is blank. */
export const THIS_LABEL = "";

export interface GapChoice {
  readonly feed: Feed | null;
  readonly options: readonly Option[];
  readonly key: string;
}

/** Feeds to look at: the one that is pasted, once it is one, then the shelf. */
export function gapChoice(draft: Pick<FeedDraft, "gapFeed">, pasted: Feed | null, shelf: Shelf): GapChoice {
  const usable = shelf.feeds.flatMap(({ feed }) => (feed === null ? [] : [feed]));
  const own = pasted === null ? [] : [{ key: THIS_LABEL, feed: pasted, words: "The label above" }];
  const all = [...own, ...usable.map((feed) => ({ key: nameKey(feed.name), feed, words: feed.name }))];
  const found = all.find(({ key }) => key === draft.gapFeed) ?? all[0];
  return {
    feed: found?.feed ?? null,
    options: all.map(({ key, words }) => ({ value: key, words })),
    key: found?.key ?? THIS_LABEL,
  };
}

/** The gaps, the sentence that says why there is no answer, or null while something is to be chosen. */
export function gapsOf(
  draft: Pick<FeedDraft, "gapTarget" | "gapWater">,
  feed: Feed | null,
  shelf: Shelf,
): Gaps | string | null {
  const target = chosen(shelf.targets, draft.gapTarget);
  const water = chosen(shelf.waters, draft.gapWater) ?? PURE_WATER;
  if (feed === null || target === null) return null;
  const others = shelf.feeds.flatMap((one) =>
    one.feed !== null && nameKey(one.name) !== nameKey(feed.name) ? [one.feed] : [],
  );
  try {
    return findGaps({ feed, wanted: target.amounts, water: water.amounts, shelf: others });
  } catch (error) {
    if (isBadInput(error)) return error.message;
    throw error;
  }
}
