/**
 * What was sent under an id. When the sheet says that a row is already there, this tells whether it can only
 * hold what is on the screen now, or may hold something typed before.
 */

import { isRecord } from "./drafts.ts";

/** For each id every record sent under it, as JSON, oldest first. */
export type Tries = Readonly<Record<string, readonly string[]>>;

interface Identified {
  readonly id: string;
}

export function noteTry(tries: Tries, records: readonly Identified[]): Tries {
  const noted: Record<string, readonly string[]> = { ...tries };
  for (const record of records) noted[record.id] = [...(tries[record.id] ?? []), JSON.stringify(record)];
  return noted;
}

/**
 * The records whose row in the log may hold something else than they do now, given that `already` of them
 * were found there: sent before with other content, or there although never sent before (a copied browser tab).
 */
export function maybeStale<T extends Identified>(tries: Tries, records: readonly T[], already: number): readonly T[] {
  if (already === 0) return [];
  const earlier = (record: T): readonly string[] => (tries[record.id] ?? []).slice(0, -1);
  if (records.every((record) => earlier(record).length === 0)) return records;
  return records.filter((record) => earlier(record).some((sent) => sent !== JSON.stringify(record)));
}

export function readTries(kept: unknown): Tries {
  if (!isRecord(kept)) return {};
  const tries: Record<string, readonly string[]> = {};
  for (const [id, sent] of Object.entries(kept)) {
    if (Array.isArray(sent)) tries[id] = sent.filter((text): text is string => typeof text === "string");
  }
  return tries;
}
