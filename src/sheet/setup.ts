/** Sets the tabs up: adds what is missing, leaves what a person wrote, and run again changes nothing. */

import { nameKey } from "../core/cell.ts";
import { isBadInput } from "../core/errors.ts";
import { BUILT_IN_EVENTS } from "../core/roots.ts";
import { dressColumns, offerNameLists } from "./dress.ts";
import { type Book, type Columns, columnMark, findColumns, findTab, openBook, schemaMark, tabMark } from "./find.ts";
import { EVENTS, PLANTS, SETTINGS } from "./list-tabs.ts";
import { openPlantList } from "./plant-list.ts";
import type { PlainCell, TabPort, WorkbookPort } from "./port.ts";
import { asFailure } from "./refusals.ts";
import { refuseNewer, SCHEMA } from "./schema.ts";
import { PLANT_LIST_TAB, readSettings, type Settings, settingRows } from "./settings.ts";
import { TAB_NAMES, type TabSpec } from "./spec.ts";
import { isBlank } from "./stored.ts";
import { TABS } from "./tabs.ts";

export interface SetupReport {
  readonly addedTabs: readonly string[];
  /** "Note to Feeds". */
  readonly addedHeadings: readonly string[];
  /** Sentences on what was left alone because it could not be told. */
  readonly problems: readonly string[];
}

/** A tab that is there and ready to be dressed. */
export interface ReadyTab {
  readonly spec: TabSpec;
  readonly tab: TabPort;
  readonly columns: Columns;
  /** Headings written by this run. */
  readonly fresh: ReadonlySet<string>;
  /** As they were before this run. */
  readonly values: readonly (readonly unknown[])[];
  /** Columns with a heading or content, new ones included. */
  readonly width: number;
}

/** Whether plants come from a tab of one's own; false also where Settings cannot be read, which the set-up then says. */
export function hasOwnList(workbook: WorkbookPort): boolean {
  try {
    return (readSettings(openBook(workbook, ["Settings"]))?.text(PLANT_LIST_TAB) ?? "") !== "";
  } catch (error) {
    if (!isBadInput(error)) throw error;
    return false;
  }
}

/** What cannot be told or is not allowed is left alone and reported; the rest is done. Throws BadInput "busy" only. */
export function setUp(workbook: WorkbookPort): SetupReport {
  return workbook.locked(() => {
    const book = openBook(workbook, TAB_NAMES);
    const problems: string[] = [];
    const say = (sentence: string): void => {
      if (!problems.includes(sentence)) problems.push(sentence);
    };
    const attempt = <T>(work: () => T): T | null => {
      try {
        return work();
      } catch (error) {
        say(asFailure(error, workbook.begun()).sentence);
        return null;
      }
    };
    const settings = readOrSay(book, say);
    const own = (settings?.text(PLANT_LIST_TAB) ?? "") !== "";

    const addedTabs: string[] = [];
    const addedHeadings: string[] = [];
    const ready: ReadyTab[] = [];
    for (const spec of TABS) {
      if (own && spec === PLANTS) continue;
      const done = attempt(() => readyTab(book, spec, { addedTabs, say }));
      if (!done) continue;
      ready.push(done);
      if (!addedTabs.includes(spec.name)) {
        for (const heading of done.fresh) addedHeadings.push(`${heading} to ${done.tab.name}`);
      }
    }
    for (const each of ready) {
      attempt(() => {
        if (each.spec === EVENTS) fillEvents(each);
        if (each.spec === SETTINGS) fillSettings(each, workbook.today());
      });
      attempt(() => {
        addMarks(book, each);
        dressColumns(workbook.setup(each.tab), each);
        noteSchema(book, each);
      });
    }
    const plants = own ? attempt(() => openPlantList(book, settings)) : null;
    attempt(() => offerNameLists(workbook, ready, plants));
    return { addedTabs, addedHeadings, problems };
  });
}

/** Throws what the spreadsheet itself throws: without Settings it is not known which tab lists the plants. */
function readOrSay(book: Book, say: (sentence: string) => void): Settings | null {
  try {
    return readSettings(book);
  } catch (error) {
    if (!isBadInput(error)) throw error;
    say(error.message);
    return null;
  }
}

interface Gathered {
  readonly addedTabs: string[];
  /** Each sentence once. */
  readonly say: (sentence: string) => void;
}

function readyTab(book: Book, spec: TabSpec, { addedTabs, say }: Gathered): ReadyTab {
  const there = findTab(book, spec);
  if (there) refuseNewer(book, there, spec.name);
  const tab = there ?? book.workbook.addTab(spec.name);
  if (!there) addedTabs.push(spec.name);
  const values = there ? tab.readAll() : [];
  const found = findColumns(book, spec, tab, values[0] ?? []);
  found.doubts.forEach(say);
  const missing = spec.columns
    .map(({ heading }) => heading)
    .filter((heading) => !found.at.has(heading) && !found.doubts.has(heading));
  const width = values[0]?.length ?? 0;
  const at = new Map(found.at);
  let fresh: readonly string[] = missing;
  if (missing.length > 0) {
    const merged = there ? tab.mergedIn({ row: 1, column: width + 1, rows: 1, columns: missing.length }) : [];
    if (merged.length > 0) {
      say(
        `Row 1 of “${tab.name}” has merged cells where the headings ${missing.join(", ")} belong. Unmerge them and set the tabs up again.`,
      );
      fresh = [];
    } else {
      tab.write(1, width + 1, [missing]);
      missing.forEach((heading, index) => {
        at.set(heading, width + 1 + index);
      });
    }
  }
  const columns = { ...found, at };
  return { spec, tab, columns, fresh: new Set(fresh), values, width: width + fresh.length };
}

/** Writes rows of our columns, one block for each run of columns that lie side by side. */
function writeRows(
  { tab, columns }: ReadyTab,
  firstRow: number,
  rows: readonly Readonly<Record<string, PlainCell>>[],
): void {
  const headings = Object.keys(rows[0] ?? {}).filter((heading) => columns.at.has(heading));
  const sorted = headings.map((heading) => ({ heading, at: columns.at.get(heading) ?? 0 })).sort((a, b) => a.at - b.at);
  let start = 0;
  for (let index = 1; index <= sorted.length; index++) {
    if (index < sorted.length && sorted[index]?.at === (sorted[index - 1]?.at ?? 0) + 1) continue;
    const run = sorted.slice(start, index);
    const first = run[0];
    if (first)
      tab.write(
        firstRow,
        first.at,
        rows.map((row) => run.map(({ heading }) => row[heading] ?? null)),
      );
    start = index;
  }
}

function fillEvents(events: ReadyTab): void {
  const keyAt = events.columns.at.get(EVENTS.key);
  if (keyAt === undefined || !events.columns.at.has("Disturbs roots")) return;
  if (events.values.some((row, index) => index > 0 && !isBlank(row[keyAt - 1]))) return;
  writeRows(
    events,
    Math.max(2, events.values.length + 1),
    BUILT_IN_EVENTS.map(({ event, disturbsRoots }) => ({
      Event: event,
      "Disturbs roots": disturbsRoots ? "yes" : "no",
    })),
  );
}

/** Goes by the rows this run has read itself: a reading that failed must not pass for an empty tab. */
function fillSettings(ready: ReadyTab, today: number): void {
  const nameAt = ready.columns.at.get("Setting");
  if (nameAt === undefined || !ready.columns.at.has("Value")) return;
  const there = new Set(ready.values.slice(1).map((row) => nameKey(String(row[nameAt - 1] ?? ""))));
  const absent = settingRows(today).filter(({ setting }) => !there.has(nameKey(setting)));
  if (absent.length === 0) return;
  writeRows(
    ready,
    Math.max(2, ready.values.length + 1),
    absent.map(({ setting, value, note }) => ({ Setting: setting, Value: value, Note: note })),
  );
}

function addMarks(book: Book, { spec, tab, columns }: ReadyTab): void {
  const setup = book.workbook.setup(tab);
  const has = (column: number | null, text: string) =>
    book.marks.some((mark) => mark.tabId === tab.id && mark.column === column && mark.text === text);
  if (!has(null, tabMark(spec.name))) setup.mark(null, tabMark(spec.name));
  for (const [heading, column] of columns.at) {
    const text = columnMark(spec.name, heading);
    if (!has(column, text)) setup.mark(column, text);
  }
}

/** Last of all, so that a set-up that stopped half-way is taken up again; not while a column is in doubt or missing. */
function noteSchema(book: Book, { spec, tab, columns }: ReadyTab): void {
  if (columns.at.size < spec.columns.length) return;
  if (book.marks.some(({ tabId, text }) => tabId === tab.id && text === schemaMark(spec.name, SCHEMA))) return;
  book.workbook.setup(tab).mark(null, schemaMark(spec.name, SCHEMA));
}

/** The report in words, for the person who chose the menu item. */
export function setupWords({ addedTabs, addedHeadings, problems }: SetupReport): string {
  const done: string[] = [];
  if (addedTabs.length > 0) done.push(`Added the tabs ${addedTabs.join(", ")}.`);
  if (addedHeadings.length > 0) done.push(`Added the headings ${addedHeadings.join(", ")}.`);
  if (done.length === 0 && problems.length === 0) done.push("All tabs are there; nothing had to be added.");
  return [...done, ...problems].join("\n\n");
}
