/** A plant list of one's own: which of its headings stands for which of our columns. */

import type { Loaded } from "../src/app/contract.ts";
import { headingKey, nameKey } from "../src/core/cell.ts";
import { columnsOf, guessByCells, type OwnTab, pastColumns, speaksAgainst } from "./list-guess.ts";
import { settingOf } from "./setting.ts";

export interface OurColumn {
  readonly heading: string;
  readonly help: string;
  /** Other words people put over such a column, as heading keys; the first that fits is proposed. */
  readonly words: readonly string[];
}

/** The columns of a plant list. Only the first must be there. */
export const OUR_COLUMNS: readonly OurColumn[] = [
  { heading: "Plant", help: "The name you use in the log", words: ["plantname", "name", "label", "nickname", "id"] },
  {
    heading: "Kind",
    help: "Species or variety",
    words: ["species", "variety", "cultivar", "genus", "type", "latinname"],
  },
  { heading: "Place", help: "Room or shelf", words: ["location", "room", "where", "shelf", "window", "spot"] },
  {
    heading: "Pot mL",
    help: "Volume of the pot in millilitres",
    words: ["potml", "potvolume", "potsize", "volume", "pot"],
  },
  { heading: "Medium", help: "What the roots stand in", words: ["substrate", "media", "potfilling", "growingmedium"] },
  { heading: "Since", help: "Day it came to you", words: ["acquired", "bought", "date", "from", "arrived", "started"] },
  { heading: "Note", help: "Anything else", words: ["notes", "remark", "remarks", "comment", "comments"] },
];

/** The headings that can be chosen: not blank, each once. */
export function usableHeadings(headings: readonly string[]): readonly string[] {
  return [...new Set(headings.map((heading) => heading.trim()).filter((heading) => heading !== ""))];
}

/**
 * A first proposal: our heading → theirs, "" where nothing fits. No heading is proposed twice. With the rows of the
 * tab, headings whose cells say otherwise are passed over, and cells speak where the headings do not.
 */
export function guessColumns(headings: readonly string[], tab: OwnTab | null = null): Readonly<Record<string, string>> {
  const columns = tab === null ? [] : columnsOf(tab);
  // A day of repotting is not the day the plant came.
  const past = new Set(pastColumns(columns).flatMap(({ column, event }) => (event === "" ? [] : [column.heading])));
  const free = new Map(
    usableHeadings(headings).flatMap((heading) => (past.has(heading) ? [] : [[headingKey(heading), heading]])),
  );
  const guess: Record<string, string> = {};
  const fits = (ours: string, key: string): boolean =>
    !speaksAgainst(
      ours,
      columns.find(({ heading }) => heading === free.get(key)),
    );
  const take = (ours: string, found: (key: string) => boolean): void => {
    const key =
      guess[ours] === undefined ? [...free.keys()].find((each) => found(each) && fits(ours, each)) : undefined;
    if (key === undefined) return;
    guess[ours] = free.get(key) ?? "";
    free.delete(key);
  };
  // Exact words first for all columns, so that "Pot" is not given away to a loose match.
  for (const { heading } of OUR_COLUMNS) take(heading, (key) => key === headingKey(heading));
  for (const { heading, words } of OUR_COLUMNS) for (const word of words) take(heading, (key) => key === word);
  for (const { heading, words } of OUR_COLUMNS) {
    take(heading, (key) => words.some((word) => word.length > 3 && key.includes(word)));
  }
  const left = columns.filter(({ heading }) => free.has(headingKey(heading)));
  const byCells = guessByCells(left, tab?.rows.length ?? 0);
  for (const { heading } of OUR_COLUMNS) guess[heading] ??= byCells[heading] ?? "";
  return guess;
}

/** The columns that Settings remembers for this tab, as the sheet writes them there; null where it is another tab's. */
export function rememberedColumns(
  tab: string,
  loaded: Pick<Loaded, "settings"> | null,
): Readonly<Record<string, string>> | null {
  if (loaded === null || nameKey(settingOf(loaded, "Plant list tab")) !== nameKey(tab)) return null;
  const columns: Record<string, string> = {};
  for (const [, ours, quoted] of settingOf(loaded, "Plant list columns").matchAll(
    /([^:;"]+?)\s*:\s*("(?:[^"\\]|\\.)*")/g,
  )) {
    try {
      columns[(ours ?? "").trim()] = JSON.parse(quoted ?? "") as string;
    } catch {
      return null;
    }
  }
  return columns.Plant === undefined ? null : columns;
}

/** What keeps this map from being used, as a sentence, or null. */
export function columnsProblem(columns: Readonly<Record<string, string>>): string | null {
  if ((columns.Plant ?? "") === "") return "Choose the column that holds the plants’ names.";
  const seen = new Map<string, string>();
  for (const { heading } of OUR_COLUMNS) {
    const theirs = columns[heading] ?? "";
    if (theirs === "") continue;
    const other = seen.get(theirs);
    if (other !== undefined) return `“${theirs}” is chosen for ${other} and for ${heading}. Choose it for one of them.`;
    seen.set(theirs, heading);
  }
  return null;
}
