/** What the parts of a load share: the workbook, and where their sentences go. */

import { isBadInput } from "../core/errors.ts";
import { type Book, findTab } from "../sheet/find.ts";
import { type OpenTab, readTab } from "../sheet/open.ts";
import { columnProblems } from "../sheet/rows.ts";
import { newerTab } from "../sheet/schema.ts";
import type { Sentences } from "../sheet/sentences.ts";
import type { TabSpec } from "../sheet/spec.ts";

/** A request to load: the workbook and where sentences go. */
export interface Loading {
  readonly book: Book;
  readonly say: Sentences;
  /** Tabs that are not there, told in one sentence at the end. */
  readonly missing: string[];
}

/** Runs a part of the load; what it refuses becomes a sentence, and the rest is loaded all the same. */
export function part<T>({ say }: Loading, about: string, otherwise: T, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!isBadInput(error)) throw error;
    say.add(about, error.message);
    return otherwise;
  }
}

/** A tab with its values, or null when there is none. Complains of `needed` columns that are missing. */
export function openTab(loading: Loading, spec: TabSpec, needed: readonly string[]): OpenTab | null {
  const tab = findTab(loading.book, spec);
  if (!tab) {
    loading.missing.push(spec.name);
    return null;
  }
  const newer = newerTab(loading.book, tab, spec.name);
  if (newer !== null) loading.say.add(spec.name, newer);
  const open = readTab(loading.book, spec, tab);
  for (const sentence of columnProblems(open.columns, needed)) loading.say.add(spec.name, sentence);
  return open;
}

/** One sentence on all of them. */
export function missingTabs(missing: readonly string[]): string[] {
  if (missing.length === 0) return [];
  const tabs = missing.map((name) => `“${name}”`).join(", ");
  return [
    `This spreadsheet has no tab ${tabs}. Choose “Set up tabs” from the Stillroot menu: it adds what is missing and leaves all else as it is.`,
  ];
}
