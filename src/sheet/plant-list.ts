/** Where the plants are listed: the Plants tab, or a tab of one's own with its columns named in Settings. */

import { headingKey, nameKey } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { type Book, type Columns, columnLetters, findColumns, findTab, noTab } from "./find.ts";
import { PLANTS } from "./list-tabs.ts";
import type { TabPort } from "./port.ts";
import { PLANT_LIST_COLUMNS, PLANT_LIST_TAB, type Settings } from "./settings.ts";

/** Their heading by ours; a column that is not mapped is not there. */
export type ColumnMap = Readonly<Record<string, string>>;

/** As kept in Settings: Plant: "Name"; Place: "Room". Quotes and line ends inside are escaped as in JSON. */
export function columnMapText(map: ColumnMap): string {
  return PLANTS.columns
    .filter(({ heading }) => (map[heading] ?? "") !== "")
    .map(({ heading }) => `${heading}: ${JSON.stringify(map[heading])}`)
    .join("; ");
}

/** Reads what columnMapText wrote. Throws BadInput for a text that is not of this form. */
export function parseColumnMap(text: string): ColumnMap {
  const map: Record<string, string> = {};
  const rest = text.replace(/\s*([^:;"]+?)\s*:\s*("(?:[^"\\]|\\.)*")\s*(?:;|$)/g, (_, name: string, quoted: string) => {
    const ours = PLANTS.columns.find(({ heading }) => headingKey(heading) === headingKey(name));
    if (!ours) return name;
    try {
      map[ours.heading] = JSON.parse(quoted) as string;
      return "";
    } catch {
      return quoted;
    }
  });
  if (rest.trim() !== "" || map.Plant === undefined) {
    throw new BadInput(
      "column-map",
      `“${PLANT_LIST_COLUMNS}” in Settings is “${text}”. Choose your plant list again in the panel; it writes something like Plant: "Name"; Place: "Room".`,
    );
  }
  return map;
}

export interface PlantList {
  readonly tab: TabPort;
  readonly values: readonly (readonly unknown[])[];
  readonly columns: Columns;
  /** A tab of one's own rather than Plants. */
  readonly own: boolean;
}

/** Finds a tab by its name, case and spaces around it ignored. Throws BadInput when there is none. */
export function tabNamed(book: Book, name: string): TabPort {
  const tab =
    book.tabs.find((each) => each.name === name) ?? book.tabs.find((each) => nameKey(each.name) === nameKey(name));
  if (tab) return tab;
  throw new BadInput(
    "no-plant-list",
    `There is no tab “${name}”, which was chosen as the plant list. Choose the plant list again in the panel, or clear “${PLANT_LIST_TAB}” in Settings to go back to Plants.`,
  );
}

/** Our headings → column numbers of a tab of one's own. */
export function ownColumns(tab: TabPort, headingRow: readonly unknown[], map: ColumnMap): Columns {
  const keys = headingRow.map((value) =>
    typeof value === "string" || typeof value === "number" ? headingKey(String(value)) : "",
  );
  const at = new Map<string, number>();
  const doubts = new Map<string, string>();
  for (const [ours, theirs] of Object.entries(map)) {
    if (theirs === "") continue;
    const places = keys.flatMap((key, index) => (key === headingKey(theirs) ? [index + 1] : []));
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

/** The plant list with its rows. One call. Throws BadInput when its tab or the column of names cannot be found. */
export function openPlantList(book: Book, settings: Settings | null): PlantList {
  const chosen = settings?.text(PLANT_LIST_TAB) ?? "";
  if (chosen === "" || !settings) {
    const tab = findTab(book, PLANTS);
    if (!tab) throw noTab(PLANTS);
    const values = tab.readAll();
    return { tab, values, columns: findColumns(book, PLANTS, tab, values[0] ?? []), own: false };
  }
  const tab = tabNamed(book, chosen);
  const mapText = settings.text(PLANT_LIST_COLUMNS);
  const map = mapText === "" ? null : parseColumnMap(mapText);
  const values = tab.readAll();
  const headingRow = values[0] ?? [];
  const columns = map ? ownColumns(tab, headingRow, map) : findColumns(book, PLANTS, tab, headingRow);
  return { tab, values, columns, own: true };
}
