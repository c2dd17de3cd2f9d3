/** A plant list of one's own: what tabs there are to choose from, and keeping the choice in Settings. */

import { isoFromDay } from "../core/calendar.ts";
import { type DayReader, headingKey, readCell } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { type ColumnMap, columnMapText } from "../sheet/column-map.ts";
import { type Book, type Columns, columnAt, findTab, listColumnMark, listMark, openBook } from "../sheet/find.ts";
import { PLANTS } from "../sheet/list-tabs.ts";
import { CARE_LOG } from "../sheet/log-tabs.ts";
import { readTab } from "../sheet/open.ts";
import { noPlantList, ownColumns, tabNamed } from "../sheet/plant-list.ts";
import type { TabPort, WorkbookPort } from "../sheet/port.ts";
import { PLANT_LIST_COLUMNS, PLANT_LIST_TAB, requireSettings, writeSettings } from "../sheet/settings.ts";
import { isBlank } from "../sheet/stored.ts";
import type { ReplyFor, RequestFor } from "./contract.ts";

/** Every tab that has headings, with the number of filled rows below them. One call a tab. */
export function lookAtTabs(workbook: WorkbookPort): ReplyFor<"look at tabs"> {
  const tabs = workbook.tabs().flatMap((tab) => {
    const values = tab.readAll();
    const headings = (values[0] ?? []).flatMap((value) =>
      (typeof value === "string" && value.trim() !== "") || typeof value === "number" ? [String(value)] : [],
    );
    if (headings.length === 0) return [];
    const rows = values.slice(1).filter((row) => !row.every(isBlank)).length;
    return [{ tab: tab.name, headings, rows }];
  });
  return { tabs };
}

/** More than a household's list; the answer has to travel. */
const MOST_ROWS = 6000;
const MOST_COLUMNS = 60;
const MOST_LETTERS = 200;

/** A tab as it stands, to guess its columns by; long texts are cut, errors come as blank cells. */
export function readOwnTab(workbook: WorkbookPort, { tab: name }: RequestFor<"read list">): ReplyFor<"read list"> {
  const tab = tabNamed({ workbook, tabs: workbook.tabs(), marks: [] }, name);
  if (!tab) throw noPlantList(name);
  const [headingRow = [], ...rows] = tab.readAll();
  const headings = headingRow.slice(0, MOST_COLUMNS).map((raw) => String(listCell(raw, workbook.dayOf)));
  const cells = rows
    .slice(0, MOST_ROWS)
    .map((row) => row.slice(0, MOST_COLUMNS).map((raw) => listCell(raw, workbook.dayOf)));
  return { tab: tab.name, headings, rows: cells, left: Math.max(0, rows.length - MOST_ROWS) };
}

function listCell(raw: unknown, dayOf: DayReader): string | number | boolean | { day: string } {
  const cell = readCell(raw, dayOf);
  if (cell.kind === "day") return { day: isoFromDay(cell.day) };
  if (cell.kind === "text") return cell.value.slice(0, MOST_LETTERS);
  return cell.kind === "number" || cell.kind === "boolean" ? cell.value : "";
}

/** Checks the choice against the tab and keeps it in Settings; choosing Plants itself goes back to it. */
export function choosePlantList(
  workbook: WorkbookPort,
  request: RequestFor<"use plant list">,
): ReplyFor<"use plant list"> {
  return workbook.locked(() => {
    const book = openBook(workbook, ["Settings", "Plants", "Care log"]);
    const settings = requireSettings(book);
    const tab = tabNamed(book, request.tab);
    if (!tab) throw noPlantList(request.tab);
    const map: Record<string, string> = {};
    const chosen: Readonly<Record<string, string>> = request.columns;
    for (const { heading } of PLANTS.columns) map[heading] = (chosen[heading] ?? "").trim();
    if (map.Plant === "") {
      throw new BadInput("no-plant-column", "Say which column holds the plants' names; the others may stay open.");
    }
    const values = tab.readAll();
    const columns = ownColumns({ ...book, marks: [] }, { tab, chosenAs: tab.name, map }, values[0] ?? []);
    const [doubt] = columns.doubts.values();
    if (doubt !== undefined) throw new BadInput("plant-list", doubt);
    refuseShared(columns, map);

    const isPlants =
      findTab(book, PLANTS)?.id === tab.id &&
      Object.entries(map).every(([ours, theirs]) => theirs === "" || headingKey(ours) === headingKey(theirs));
    writeSettings(settings, [
      [PLANT_LIST_TAB, isPlants ? null : tab.name],
      [PLANT_LIST_COLUMNS, isPlants ? null : columnMapText(map)],
    ]);
    if (!isPlants) markList(book, tab, columns, map);

    const plantAt = columnAt(columns, "Plant");
    const careLog = findTab(book, CARE_LOG);
    if (careLog) {
      const loggedPlant = readTab(book, CARE_LOG, careLog).columns.at.get("Plant");
      // Otherwise every new row would be flagged as not in the old list.
      if (loggedPlant !== undefined) workbook.setup(careLog).offerNames(loggedPlant, tab, plantAt);
    }
    const plants = values.slice(1).filter((row) => !isBlank(row[plantAt - 1])).length;
    return { plantTab: tab.name, plants };
  });
}

/** One column cannot be two of ours. */
function refuseShared(columns: Columns, map: ColumnMap): void {
  const taken = new Map<number, string>();
  for (const [heading, column] of columns.at) {
    const other = taken.get(column);
    if (other !== undefined) {
      throw new BadInput(
        "column-shared",
        `“${map[heading]}” was chosen for both ${other} and ${heading}. Choose a column of its own for each.`,
      );
    }
    taken.set(column, heading);
  }
}

/** Marks are not seen; by them the list is found after its tab or a column was renamed. */
function markList(book: Book, tab: TabPort, columns: Columns, map: ColumnMap): void {
  const setup = book.workbook.setup(tab);
  const markOnce = (column: number | null, text: string) => {
    if (!book.marks.some((mark) => mark.tabId === tab.id && mark.column === column && mark.text === text)) {
      setup.mark(column, text);
    }
  };
  markOnce(null, listMark(tab.name));
  for (const [ours, column] of columns.at) markOnce(column, listColumnMark(tab.name, ours, map[ours] ?? ""));
}
