/** A plant list of one's own: which of its headings stands for which of our columns. */

import { headingKey } from "../src/core/cell.ts";

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

/** A first proposal: our heading → theirs, "" where nothing fits. No heading is proposed twice. */
export function guessColumns(headings: readonly string[]): Readonly<Record<string, string>> {
  const free = new Map(usableHeadings(headings).map((heading) => [headingKey(heading), heading]));
  const guess: Record<string, string> = {};
  const take = (ours: string, key: string | undefined): void => {
    if (guess[ours] !== undefined || key === undefined) return;
    guess[ours] = free.get(key) ?? "";
    free.delete(key);
  };
  const keys = (): string[] => [...free.keys()];
  // Exact words first for all columns, so that "Pot" is not given away to a loose match.
  for (const { heading } of OUR_COLUMNS)
    take(
      heading,
      keys().find((key) => key === headingKey(heading)),
    );
  for (const { heading, words } of OUR_COLUMNS)
    take(
      heading,
      words.find((word) => free.has(word)),
    );
  for (const { heading, words } of OUR_COLUMNS) {
    take(
      heading,
      keys().find((key) => words.some((word) => word.length > 3 && key.includes(word))),
    );
  }
  for (const { heading } of OUR_COLUMNS) guess[heading] ??= "";
  return guess;
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
