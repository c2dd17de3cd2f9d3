/** What the batches of a log used of each feed, read from the text of their doses. */

import { nameKey } from "./cell.ts";
import { readDoses } from "./dose-text.ts";
import type { Used } from "./supply.ts";

export interface LoggedBatch {
  /** Days since 1970-01-01; null where none is noted. */
  readonly day: number | null;
  /** As in the column Doses; "" for a row that only takes another one back. */
  readonly doses: string;
  /** "row 7 of Batch log". */
  readonly where: string;
}

/** A dose that cannot be read, so that nobody can say how much of what it used. */
export interface UnreadDose {
  readonly text: string;
  readonly day: number | null;
  readonly sentence: string;
}

export interface LogUse {
  readonly used: readonly Used[];
  readonly unread: readonly UnreadDose[];
}

/** Only batches that stand and are mixed; planned ones have used nothing yet. */
export function dosesUsed(batches: readonly LoggedBatch[]): LogUse {
  const used: Used[] = [];
  const unread: UnreadDose[] = [];
  for (const { day, doses, where } of batches) {
    if (doses.trim() === "") continue;
    for (const dose of readDoses(doses)) {
      if ("sentence" in dose) unread.push({ text: dose.part, day, sentence: `Doses in ${where}: ${dose.sentence}` });
      else used.push({ feed: dose.feed, day, amount: dose.perBatch, unit: dose.unit });
    }
  }
  return { used, unread };
}

/**
 * Why nobody can say what is left of `feed`; null where every dose can be read. A dose that begins with the name of
 * one of `known` is about that feed alone, any other could be about every feed.
 */
export function unreadFor(feed: string, unread: readonly UnreadDose[], known: readonly string[]): string | null {
  const key = nameKey(feed);
  const keys = known.map(nameKey).filter((one) => one !== "");
  const found = unread.find(({ text }) => {
    const begins = nameKey(text).replace(/^"/, "");
    // "Calcium nitrate" begins "Calcium nitrate tetrahydrate" as well: the longest name is meant.
    const [longest] = keys.filter((one) => begins.startsWith(one)).sort((a, b) => b.length - a.length);
    return longest === undefined || longest === key;
  });
  return found?.sentence ?? null;
}
