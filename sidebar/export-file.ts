/** The export as a file: one zip with a CSV a tab (RFC 4180, UTF-8), and a page that says how to read it. */

import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import Papa from "papaparse";
import { fieldCell, fieldText, type Travelling } from "./export-cells.ts";
import { KEYS } from "./import-plan.ts";

export interface FileTab {
  /** Our own name of the tab, whatever it is called in the sheet. */
  readonly tab: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly Travelling[])[];
  /** Headings of columns that formulas fill; their values are for reading only. */
  readonly computed: readonly string[];
}

const COLUMNS_FILE = "columns.json";
const ABOUT_FILE = "About this export.txt";
/** By it a program knows that a CSV is UTF-8. */
const BYTE_ORDER_MARK = "\uFEFF";

const ABOUT = `All records of a Stillroot sheet, one CSV file for each tab.

Commas part the fields, days look like 2026-03-01, numbers have a decimal point.
A text that could be taken for a formula, a number or a date has an apostrophe (') in front,
so that nothing runs when you open a file elsewhere. The apostrophe is not part of the text.
Times of day are not kept, only days.

To bring the records back, open the panel in an empty sheet that was set up and choose this
zip under "Sheet". Columns named in columns.json as computed are formulas of your own: their
values are here to read and are not brought back.
`;

export function csvOf({ headings, rows }: Pick<FileTab, "headings" | "rows">): string {
  const fields = [headings, ...rows].map((row) => row.map(fieldText));
  return `${BYTE_ORDER_MARK}${Papa.unparse(fields, { newline: "\r\n" })}\r\n`;
}

/** The bytes of the zip. */
export function zipOf(tabs: readonly FileTab[]): Uint8Array {
  const files: Record<string, Uint8Array> = { [ABOUT_FILE]: strToU8(ABOUT) };
  files[COLUMNS_FILE] = strToU8(
    JSON.stringify(Object.fromEntries(tabs.map(({ tab, computed }) => [tab, { computed }])), null, 2),
  );
  for (const tab of tabs) files[`${tab.tab}.csv`] = strToU8(csvOf(tab));
  return zipSync(files);
}

export interface ReadFile {
  readonly tabs: readonly FileTab[];
  /** Sentences on what is in the file and cannot be used. */
  readonly problems: readonly string[];
}

/** Reads a zip of this form, or one with CSV files made by hand; `names` are the tabs that are known. Throws an Error with a sentence. */
export function readZip(bytes: Uint8Array, names: readonly string[]): ReadFile {
  let files: Record<string, Uint8Array>;
  try {
    files = unzipSync(bytes);
  } catch {
    throw new Error("This file is no zip, or it is damaged. Choose the zip that the export gave you.");
  }
  const computed = readComputed(files[COLUMNS_FILE]);
  const problems: string[] = [];
  const tabs: FileTab[] = [];
  for (const [path, content] of Object.entries(files)) {
    // Programs that pack a folder put its name in front, and some add files of their own.
    const name = path.slice(path.lastIndexOf("/") + 1);
    if (!/\.csv$/i.test(name) || name.startsWith("._")) continue;
    const tab = names.find((each) => each.toLowerCase() === name.slice(0, -4).toLowerCase());
    if (tab === undefined) problems.push(`“${name}” belongs to no tab that is known here, so it is left out.`);
    else {
      const read = readCsv(strFromU8(content), name);
      problems.push(...read.problems);
      tabs.push({ tab, ...read.table, computed: computed[tab] ?? [] });
    }
  }
  if (tabs.length === 0) {
    throw new Error(
      `There is no CSV of a known tab in this zip. It should hold files such as ${names.slice(0, 2).join(".csv and ")}.csv.`,
    );
  }
  return { tabs: tabs.sort((a, b) => names.indexOf(a.tab) - names.indexOf(b.tab)), problems };
}

function readComputed(content: Uint8Array | undefined): Readonly<Record<string, readonly string[]>> {
  const found: Record<string, readonly string[]> = {};
  try {
    const value: unknown = content === undefined ? {} : JSON.parse(strFromU8(content));
    for (const [tab, about] of Object.entries(value as Record<string, { computed?: unknown }>)) {
      const list = about?.computed;
      if (Array.isArray(list)) found[tab] = list.filter((each): each is string => typeof each === "string");
    }
  } catch {
    // Without it every column is taken for what it says.
  }
  return found;
}

function readCsv(text: string, name: string): { table: Pick<FileTab, "headings" | "rows">; problems: string[] } {
  const { data, errors } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ""), { delimiter: ",", skipEmptyLines: false });
  const [headings = [], ...lines] = data;
  const problems = errors
    .slice(0, 3)
    .map(({ row, message }) => `“${name}”, line ${(row ?? 0) + 1}: ${message}. Look there before you go on.`);
  const parted = (headings[0] ?? "").split(";");
  if (headings.length === 1 && parted.length > 1 && parted.some((heading) => Object.values(KEYS).includes(heading))) {
    problems.push(`“${name}” has its fields parted by semicolons. Save it with commas, then choose the zip again.`);
    return { table: { headings: [], rows: [] }, problems };
  }
  const names = headings.map((heading) => String(fieldCell(heading) ?? ""));
  const rows = lines
    .filter((line) => line.some((field) => field !== ""))
    .map((line) => names.map((_, index) => fieldCell(line[index] ?? "")));
  return { table: { headings: names, rows }, problems };
}
