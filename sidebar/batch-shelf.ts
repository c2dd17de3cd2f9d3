/** What a batch can be made of, read once after each load: feeds, waters, targets, and the tools to measure with. */

import type { FieldRow, Loaded } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import type { Pack } from "../src/core/cost.ts";
import { type Feed, readShelf, type ShelfFeed } from "../src/core/feeds.ts";
import type { BatchDraft } from "./batch-draft.ts";
import { type Choice, targetChoices, waterChoices } from "./choices.ts";
import { type HouseTools, readTools } from "./tools.ts";

export interface Shelf {
  readonly feeds: readonly ShelfFeed[];
  readonly waters: readonly Choice[];
  readonly targets: readonly Choice[];
  readonly tools: HouseTools;
  /** Rows of Waters, for the chemistry. */
  readonly waterRows: readonly FieldRow[];
  readonly packOf: (feed: Feed) => Pack | null;
  readonly onHandOf: (feed: Feed) => number | null;
}

export function readChoices(
  loaded: Pick<Loaded, "feeds" | "waters" | "targets"> & Partial<Pick<Loaded, "settings">>,
  { packOf, onHandOf }: Pick<Shelf, "packOf" | "onHandOf"> = { packOf: () => null, onHandOf: () => null },
): Shelf {
  return {
    tools: readTools(loaded.settings ?? {}),
    waterRows: loaded.waters,
    packOf,
    onHandOf,
    feeds: readShelf(loaded.feeds.map(({ row, fields }) => ({ fields, where: `row ${row} of Feeds` }))).filter(
      ({ name }) => name !== "",
    ),
    waters: waterChoices(loaded.waters),
    targets: targetChoices(loaded.targets),
  };
}

/** The feeds of the draft that may enter a recipe; one that left the shelf meanwhile is no longer chosen. */
export function chosenFeeds(draft: Pick<BatchDraft, "feeds">, shelf: Shelf): readonly Feed[] {
  const keys = new Set(draft.feeds.map(nameKey));
  return shelf.feeds.flatMap(({ feed, name }) => (feed !== null && keys.has(nameKey(name)) ? [feed] : []));
}
