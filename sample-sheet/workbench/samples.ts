/** The sample sheet as CSV files, one a tab, read into cells with their kinds. */

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import papaparse from "papaparse";

/** A cell of a sample: `day` is an ISO date, `formula` starts with "=". */
export type SampleCell =
  | null
  | { readonly text: string }
  | { readonly number: number }
  | { readonly day: string }
  | { readonly formula: string };

export interface SampleTab {
  readonly name: string;
  readonly rows: readonly (readonly SampleCell[])[];
}

export interface SampleWorkbook {
  readonly name: string;
  /** IANA name. */
  readonly timeZone: string;
  /** As the host names it, "en_GB". */
  readonly locale: string;
  readonly tabs: readonly SampleTab[];
}

/** Tabs in the order they are read about; others follow by name. */
const ORDER = [
  "Plants",
  "Root board",
  "Due board",
  "Care log",
  "Events",
  "Feeds",
  "Waters",
  "Targets",
  "Batch log",
  "Try it",
];

/** Number and date by their plain form; "012", "1,2" and everything else stay texts. */
export function sampleCell(text: string): SampleCell {
  if (text === "") return null;
  if (text.startsWith("=")) return { formula: text };
  if (/^\d{4}-\d{2}-\d{2}$/.test(text)) return { day: text };
  if (/^-?(?:0|[1-9]\d*)(?:\.\d+)?$/.test(text)) return { number: Number(text) };
  return { text };
}

export function readTab(name: string, csv: string): SampleTab {
  const parsed = papaparse.parse<string[]>(csv.replace(/^\uFEFF/, ""), { skipEmptyLines: false });
  const problem = parsed.errors.find((error) => error.type === "Quotes");
  if (problem) throw new Error(`${name}.csv, row ${(problem.row ?? 0) + 1}: ${problem.message}.`);
  const lines = parsed.data;
  while (lines.length > 0 && lines[lines.length - 1]?.every((cell) => cell === "")) lines.pop();
  return { name, rows: lines.map((line) => line.map(sampleCell)) };
}

export function readSamples(folder: string): SampleWorkbook {
  const { name, timeZone, locale } = JSON.parse(readFileSync(join(folder, "workbook.json"), "utf8")) as SampleWorkbook;
  const place = (tab: string): number => (ORDER.includes(tab) ? ORDER.indexOf(tab) : ORDER.length);
  const names = readdirSync(folder)
    .filter((file) => file.endsWith(".csv"))
    .map((file) => file.slice(0, -".csv".length))
    .sort((a, b) => place(a) - place(b) || a.localeCompare(b));
  if (names.length === 0) throw new Error(`No CSV files in ${folder}.`);
  return {
    name,
    timeZone,
    locale,
    tabs: names.map((tab) => readTab(tab, readFileSync(join(folder, `${tab}.csv`), "utf8"))),
  };
}
