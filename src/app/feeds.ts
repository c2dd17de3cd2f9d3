/** Puts a label that a person has confirmed into the Feeds tab, once for each name. */

import { LABEL_TERMS } from "../core/analysis.ts";
import { BadInput } from "../core/errors.ts";
import { readShelfFeed } from "../core/feeds.ts";
import type { SheetRecord } from "../sheet/append.ts";
import type { PlainCell, WorkbookPort } from "../sheet/port.ts";
import { FEEDS } from "../sheet/shelf-tabs.ts";
import type { FeedEntry, ReplyFor, RequestFor } from "./contract.ts";
import { textCell } from "./logging.ts";
import { appendNamed } from "./named-rows.ts";

function feedRecord(entry: FeedEntry): SheetRecord {
  const { feed, basis, percents, densityGPerMl, origin, published } = entry;
  const record: Record<string, PlainCell> = {
    Feed: feed,
    Basis: textCell(basis),
    Density: densityGPerMl,
    Origin: origin,
    "Analysis published": published ? "yes" : "no",
    "Label text": textCell(entry.labelText),
    Note: textCell(entry.note),
  };
  for (const term of LABEL_TERMS) record[term] = percents[term] ?? null;
  // The reader of the tab refuses what no label can say, so nothing is written that could not be read again.
  const { feed: read, reason } = readShelfFeed(
    { ...percents, Feed: feed, Basis: basis, Density: densityGPerMl ?? undefined },
    "this label",
  );
  if (read === null && published && origin === "mineral") throw new BadInput("label", reason ?? "");
  return record;
}

/** One row in one write, with the label word for word; the same name and values again count as already there. */
export function logFeed(workbook: WorkbookPort, { entry }: RequestFor<"log feed">): ReplyFor<"log feed"> {
  const name = entry.feed.trim();
  if (name === "") throw new BadInput("no-feed-name", "Type a name for this feed, like Green powder 10-5-5.");
  return appendNamed(workbook, FEEDS, { record: feedRecord({ ...entry, feed: name }), name, what: "feed" });
}
