/** What bringing a file back would write: the rows that are not in the sheet yet, each with a key that keeps it from being written twice. */

import { nameKey } from "../src/core/cell.ts";
import { fnv1a64 } from "../src/core/fnv.ts";
import { sayList } from "../src/core/saying.ts";
import type { Travelling } from "./export-cells.ts";
import type { FileTab } from "./export-file.ts";
import type { TabName } from "./export-read.ts";
import { count } from "./show.ts";

type Row = readonly Travelling[];

/** By what a row of each tab is known. Rows of the tabs with an Id may lack it; those of the others may not lack their name. */
export const KEYS: Readonly<Record<TabName, string>> = {
  Plants: "Plant",
  Events: "Event",
  Feeds: "Feed",
  Waters: "Water",
  Targets: "Target",
  Purchases: "Id",
  "Batch log": "Id",
  "Care log": "Id",
  "Meter log": "Id",
  Trials: "Id",
  Claims: "Id",
  Settings: "Setting",
};

/** Settings that belong to one workbook. */
const OF_ONE_WORKBOOK = ["today", "plant list tab", "plant list columns"];

export interface TabPlan {
  readonly tab: TabName;
  readonly headings: readonly string[];
  /** To be written, in the order of the file. */
  readonly rows: readonly Row[];
  /** Found in the sheet. */
  readonly already: number;
  /** Sentences on what is left out and why. */
  readonly notes: readonly string[];
}

const SHOWN = 5;
const bytes = new TextEncoder();

export function planImport(file: readonly FileTab[], sheet: readonly FileTab[]): TabPlan[] {
  return file.flatMap((from): TabPlan[] => {
    const tab = from.tab as TabName;
    const to = sheet.find((each) => each.tab === tab);
    if (to === undefined) {
      const notes = [
        `There is no tab “${tab}” in this sheet. Choose “Set up tabs” from the menu, then choose the file again.`,
      ];
      return [{ tab, headings: [], rows: [], already: 0, notes }];
    }
    return [tab === "Settings" ? planSettings(from, to) : planTab(tab, from, to)];
  });
}

interface Columns {
  readonly headings: readonly string[];
  /** Picks the cells of a row of the file, or of the sheet, in the order of the headings. */
  readonly ofFile: (row: Row) => Row;
  readonly ofSheet: (row: Row) => Row;
  readonly notes: readonly string[];
}

/** Headings that both have; formulas are left out on either side. */
function sharedColumns(tab: TabName, from: FileTab, to: FileTab): Columns {
  const plain = from.headings.filter(
    (heading, at) => heading !== "" && !from.computed.includes(heading) && from.headings.indexOf(heading) === at,
  );
  const there = plain.filter((heading) => to.headings.includes(heading) && !to.computed.includes(heading));
  const key = KEYS[tab];
  const headings = there.includes(key) ? there : [key, ...there];
  const lost = plain.filter((heading, at) => {
    const column = from.headings.indexOf(heading);
    return !headings.includes(heading) && at !== -1 && from.rows.some((row) => (row[column] ?? null) !== null);
  });
  const pick = (table: FileTab) => {
    const places = headings.map((heading) => table.headings.indexOf(heading));
    return (row: Row): Row => places.map((at) => (at === -1 ? null : (row[at] ?? null)));
  };
  const named = sayList(
    lost.map((heading) => `“${heading}”`),
    "and",
  );
  const notes =
    lost.length === 0
      ? []
      : [
          `${named} ${lost.length === 1 ? "is no heading" : "are no headings"} of “${tab}” in this sheet, so what stands there is left out. To keep it, type the heading in row 1 first, then choose the file again.`,
        ];
  return { headings, ofFile: pick(from), ofSheet: pick(to), notes };
}

/** The cells as one text, to compare rows by. */
const contentOf = (row: Row): string => JSON.stringify(row);
const keyText = (cell: Travelling | undefined): string =>
  cell === null || cell === undefined ? "" : typeof cell === "object" ? cell.day : String(cell);

function planTab(tab: TabName, from: FileTab, to: FileTab): TabPlan {
  const columns = sharedColumns(tab, from, to);
  const { headings, ofFile, ofSheet } = columns;
  const keyAt = headings.indexOf(KEYS[tab]);
  const fileRows = from.rows.map(ofFile);
  const sheetRows = to.rows.map(ofSheet);
  const plan = KEYS[tab] === "Id" ? planById(keyAt, fileRows, sheetRows) : planByName(tab, keyAt, fileRows, sheetRows);
  return { tab, headings, ...plan, notes: [...columns.notes, ...plan.notes] };
}

type Planned = Pick<TabPlan, "rows" | "already" | "notes">;

/**
 * Logs. A row without an Id, or with one that stands twice, is known by its content: as often as it stands in the
 * sheet it is there already, and otherwise it gets an Id made of its content, so that a second try finds it.
 */
function planById(idAt: number, fileRows: readonly Row[], sheetRows: readonly Row[]): Planned {
  const ids = new Set(sheetRows.map((row) => keyText(row[idAt])).filter((id) => id !== ""));
  const withoutId = (row: Row): Row => row.map((cell, at) => (at === idAt ? null : cell));
  const standing = new Map<string, number>();
  const seen = new Map<string, number>();
  const raise = (counts: Map<string, number>, key: string, by = 1): number => {
    const now = (counts.get(key) ?? 0) + by;
    counts.set(key, now);
    return now;
  };
  const sheetIds = new Map<string, number>();
  for (const row of sheetRows) {
    const id = keyText(row[idAt]);
    if (id === "" || raise(sheetIds, id) > 1) raise(standing, contentOf(row));
  }
  const rows: Row[] = [];
  let already = 0;
  let twice = 0;
  const fileIds = new Set<string>();
  for (const row of fileRows) {
    const id = keyText(row[idAt]);
    if (id !== "" && !fileIds.has(id)) {
      fileIds.add(id);
      if (ids.has(id)) already++;
      else rows.push(row);
      continue;
    }
    if (id !== "") twice++;
    const content = contentOf(row);
    if ((standing.get(content) ?? 0) > 0) {
      raise(standing, content, -1);
      already++;
      continue;
    }
    const mark = fnv1a64(bytes.encode(`${contentOf(withoutId(row))} ${id} ${raise(seen, content)}`));
    const made = `import-${mark}`;
    if (ids.has(made)) already++;
    else rows.push(row.map((cell, at) => (at === idAt ? made : cell)));
  }
  const notes =
    twice === 0
      ? []
      : [`${count(twice, "row")} had an Id that stands twice in the file and ${twice === 1 ? "gets" : "get"} another.`];
  return { rows, already, notes };
}

/** Lists: a name that is there stays as it is, whatever the file says of it. */
function planByName(tab: TabName, nameAt: number, fileRows: readonly Row[], sheetRows: readonly Row[]): Planned {
  const there = new Map(sheetRows.map((row) => [nameKey(keyText(row[nameAt])), contentOf(row)]));
  const taken = new Map<string, string>();
  const rows: Row[] = [];
  const differing: string[] = [];
  const twice: string[] = [];
  let already = 0;
  let nameless = 0;
  for (const row of fileRows) {
    const name = keyText(row[nameAt]);
    const key = nameKey(name);
    const earlier = taken.get(key);
    if (key === "") nameless++;
    else if (earlier !== undefined) {
      if (earlier !== contentOf(row)) twice.push(name);
    } else {
      taken.set(key, contentOf(row));
      const standing = there.get(key);
      if (standing === undefined) rows.push(row);
      else {
        already++;
        if (standing !== contentOf(row)) differing.push(name);
      }
    }
  }
  const notes: string[] = [];
  if (differing.length > 0) {
    const one = differing.length === 1;
    notes.push(
      `In “${tab}”, ${some(differing)} ${one ? "stands" : "stand"} there with other values and ${one ? "stays as it is" : "stay as they are"}.`,
    );
  }
  if (twice.length > 0) {
    notes.push(
      `${some(twice)} ${twice.length === 1 ? "stands twice in the file; only the first is" : "stand twice in the file; only the first of each is"} taken. Give the others names of their own.`,
    );
  }
  if (nameless > 0)
    notes.push(
      `${count(nameless, "row")} of “${tab}” ${nameless === 1 ? "has" : "have"} no ${KEYS[tab]} and ${nameless === 1 ? "is" : "are"} left out.`,
    );
  return { rows, already, notes };
}

function some(names: readonly string[]): string {
  const shown = names.slice(0, SHOWN).map((name) => `“${name}”`);
  return names.length > SHOWN ? `${shown.join(", ")} and ${names.length - SHOWN} more` : sayList(shown, "and");
}

/** Settings are values to change, not rows to add; those of one workbook alone are never brought along. */
function planSettings(from: FileTab, to: FileTab): TabPlan {
  const headings = ["Setting", "Value"];
  const pick = (table: FileTab): Row[] => {
    const places = headings.map((heading) => table.headings.indexOf(heading));
    return table.rows.map((row) => places.map((at) => row[at] ?? null));
  };
  const there = new Map(pick(to).map(([name, value]) => [nameKey(keyText(name)), JSON.stringify(value)]));
  const rows: Row[] = [];
  let already = 0;
  for (const row of pick(from)) {
    const key = nameKey(keyText(row[0]));
    if (key === "" || OF_ONE_WORKBOOK.includes(key)) continue;
    // A setting that is blank in the file and not there at all says nothing.
    if (there.get(key) === JSON.stringify(row[1] ?? null) || (!there.has(key) && row[1] === null)) already++;
    else rows.push(row);
  }
  return { tab: "Settings", headings, rows, already, notes: [] };
}
