/** Takes an old batch up in the form again: to repeat it at another volume, or to correct its row. */

import { nameKey } from "../src/core/cell.ts";
import { numberText } from "../src/core/dose-text.ts";
import { type BatchDraft, nextBatch } from "./batch-draft.ts";
import type { Shelf } from "./batch-shelf.ts";
import { chosen, namedWater } from "./choices.ts";
import type { NewId } from "./ids.ts";
import { changesSince, type PastBatch } from "./past-batch.ts";

/** An old batch taken up again: its doses for a litre as they were, at a volume to be typed. */
export function repeatBatch(draft: BatchDraft, past: PastBatch, newId: NewId): BatchDraft {
  return { ...nextBatch(draft, newId), mode: "repeat", past, litres: "" };
}

/**
 * An old batch to be corrected. Its doses stand in the fields where all its feeds are as they were; otherwise they
 * stay as they are in the log, and litres, date and note can be corrected.
 */
export function correctBatch(
  draft: BatchDraft,
  past: PastBatch,
  { shelf, note, planned, newId }: Correcting,
): BatchDraft {
  const base = { ...nextBatch(draft, newId), past, corrects: past.id, day: past.day, note, planned };
  const litres = numberText(past.litres);
  const { feeds } = changesSince(past, shelf);
  const names = past.doses.map(({ feed }) => nameKey(feed));
  const twice = new Set(names).size < names.length;
  const water = namedWater(shelf.waters, past.water);
  if (twice || water === null || feeds.some((feed) => feed === null)) return { ...base, mode: "repeat", litres };
  const doses: Record<string, string> = {};
  const units: Record<string, string> = {};
  past.doses.forEach(({ perLitre, unit }, at) => {
    const name = feeds[at]?.name ?? "";
    doses[name] = numberText(perLitre);
    units[name] = `${unit}/L`;
  });
  return {
    ...base,
    mode: "doses",
    litres,
    water: water.key,
    target: chosen(shelf.targets, nameKey(past.target))?.key ?? "",
    feeds: feeds.map((feed) => feed?.name ?? ""),
    doses,
    units,
  };
}

/** A correction of the litres alone: what was weighed stays, so the doses for a litre change. */
export function keepWeighed(draft: BatchDraft, litres: number): BatchDraft {
  const doses: Record<string, string> = { ...draft.doses };
  for (const { feed, perBatch } of draft.past?.doses ?? []) {
    const name = draft.feeds.find((one) => nameKey(one) === nameKey(feed));
    if (name !== undefined) doses[name] = numberText(perBatch / litres);
  }
  return { ...draft, doses };
}

interface Correcting {
  readonly shelf: Shelf;
  readonly note: string;
  /** It is a plan, and stays one unless that is changed. */
  readonly planned: boolean;
  readonly newId: NewId;
}
