/** Where the plants are listed: the Plants tab, or a tab of one's own with its columns named in Settings. */

import { headingKey, nameKey } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { type ColumnMap, parseColumnMap } from "./column-map.ts";
import { type Book, type Columns, columnLetters, findTab, listColumnMark, listMark, noTab } from "./find.ts";
import { PLANTS } from "./list-tabs.ts";
import { type OpenTab, readMarked, readTab } from "./open.ts";
import type { TabPort } from "./port.ts";
import { PLANT_LIST_COLUMNS, PLANT_LIST_TAB, type Settings } from "./settings.ts";

/** Finds a tab by its name, case and spaces around it ignored; null when there is none. */
export function tabNamed(book: Book, name: string): TabPort | null {
  return (
    book.tabs.find((each) => each.name === name) ??
    book.tabs.find((each) => nameKey(each.name) === nameKey(name)) ??
    null
  );
}

export function noPlantList(name: string): BadInput {
  return new BadInput(
    "no-plant-list",
    `There is no tab “${name}”, which was chosen as the plant list. Choose the plant list again in the panel, or clear “${PLANT_LIST_TAB}” in Settings to go back to Plants.`,
  );
}

/** The tab that Settings names; a renamed one by the mark it got when it was chosen under that name. */
function chosenTab(book: Book, name: string): TabPort {
  const marked = book.tabs.filter((tab) =>
    book.marks.some((mark) => mark.tabId === tab.id && mark.column === null && mark.text === listMark(name)),
  );
  const tab = tabNamed(book, name) ?? (marked.length === 1 ? marked[0] : undefined);
  if (!tab) throw noPlantList(name);
  return tab;
}

const headingKeyOf = (value: unknown): string =>
  typeof value === "string" || typeof value === "number" ? headingKey(String(value)) : "";

/** A tab of one's own, the name it was chosen by, and its headings by ours. */
export interface OwnList {
  readonly tab: TabPort;
  readonly chosenAs: string;
  readonly map: ColumnMap;
}

/** Column numbers by our headings: by the chosen heading, or by the mark when the column was renamed since. */
export function ownColumns(book: Book, { tab, chosenAs, map }: OwnList, headingRow: readonly unknown[]): Columns {
  const keys = headingRow.map(headingKeyOf);
  const at = new Map<string, number>();
  const doubts = new Map<string, string>();
  for (const [ours, theirs] of Object.entries(map)) {
    if (theirs === "") continue;
    const headed = keys.flatMap((key, index) => (key === headingKey(theirs) ? [index + 1] : []));
    const mark = listColumnMark(chosenAs, ours, theirs);
    const renamed = book.marks.flatMap(({ tabId, column, text }) =>
      tabId === tab.id && column !== null && text === mark && (keys[column - 1] ?? "") !== "" ? [column] : [],
    );
    const places = headed.length > 0 ? headed : renamed;
    const place = places[0];
    if (place === undefined) {
      doubts.set(
        ours,
        `“${tab.name}” has no column “${theirs}”, which was chosen for ${ours}. Give the column that heading again, or choose the plant list again in the panel.`,
      );
    } else if (places.length > 1) {
      doubts.set(
        ours,
        `“${tab.name}” has the heading “${theirs}” in columns ${places.map(columnLetters).join(" and ")}. Rename the one that is not meant.`,
      );
    } else at.set(ours, place);
  }
  return { tabName: tab.name, at, doubts };
}

/** The plant list with its rows. Throws BadInput when its tab cannot be found or the map in Settings not read. */
export function openPlantList(book: Book, settings: Settings | null): OpenTab {
  const chosenAs = settings?.text(PLANT_LIST_TAB) ?? "";
  if (chosenAs === "" || !settings) {
    const tab = findTab(book, PLANTS);
    if (!tab) throw noTab(PLANTS);
    return readTab(book, PLANTS, tab);
  }
  const tab = chosenTab(book, chosenAs);
  const mapText = settings.text(PLANT_LIST_COLUMNS);
  if (mapText === "") return readTab(book, PLANTS, tab);
  const map = parseColumnMap(mapText);
  return readMarked(book, tab, (headingRow) => {
    const columns = ownColumns(book, { tab, chosenAs, map }, headingRow);
    // A column found only by its mark may have a successor further right that bears the chosen heading.
    const keys = headingRow.map(headingKeyOf);
    const headed = Object.values(map).every((theirs) => theirs === "" || keys.includes(headingKey(theirs)));
    return { columns, complete: headed };
  });
}
