/** All records out of the sheet in bounded pages, cells as they are, and back in: each once, as literal text. */

import { dayFromIso, isoFromDay } from "../core/calendar.ts";
import { nameKey, readCell } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { appendRecords, type SheetRecord } from "../sheet/append.ts";
import { type Book, columnAt, findColumns, findTab, openBook } from "../sheet/find.ts";
import { PLANTS } from "../sheet/list-tabs.ts";
import { openPlantList } from "../sheet/plant-list.ts";
import type { PlainCell, TabPort, WorkbookPort } from "../sheet/port.ts";
import {
  PLANT_LIST_COLUMNS,
  PLANT_LIST_TAB,
  readSettings,
  requireSettings,
  TODAY,
  writeSettings,
} from "../sheet/settings.ts";
import type { TabSpec } from "../sheet/spec.ts";
import { isBlank, sameCell } from "../sheet/stored.ts";
import { tabSpec } from "../sheet/tabs.ts";
import type { ReplyFor, RequestFor } from "./contract.ts";

/** Headings reach no further than this. */
const MOST_COLUMNS = 200;
/** Sentences sent back; a person reads no more. */
const MOST_SENTENCES = 20;

type TravellingCell = RequestFor<"import rows">["rows"][number][number];

/** Names in Settings that belong to one workbook and mean nothing in another. */
export const OF_THIS_WORKBOOK: readonly string[] = [TODAY, PLANT_LIST_TAB, PLANT_LIST_COLUMNS];

interface Found {
  readonly tab: TabPort;
  readonly headingRow: readonly unknown[];
  /** Our heading by column number from 1. */
  readonly ours: ReadonlyMap<number, string>;
}

/** The tab of a spec with the columns that stand for ours; a plant list of one's own for Plants. */
function findPlace(book: Book, spec: TabSpec): Found | null {
  const byColumn = (at: ReadonlyMap<string, number>) => new Map([...at].map(([heading, column]) => [column, heading]));
  if (spec === PLANTS) {
    const settings = readSettings(book);
    if ((settings?.text(PLANT_LIST_TAB) ?? "") !== "") {
      const { tab, values, columns } = openPlantList(book, settings);
      return { tab, headingRow: values[0] ?? [], ours: byColumn(columns.at) };
    }
  }
  const tab = findTab(book, spec);
  if (!tab) return null;
  const [headingRow = []] = tab.readBlock({ row: 1, column: 1, rows: 1, columns: MOST_COLUMNS });
  return { tab, headingRow, ours: byColumn(findColumns(book, spec, tab, headingRow).at) };
}

function widthOf(headingRow: readonly unknown[]): number {
  let width = headingRow.length;
  while (width > 0 && isBlank(headingRow[width - 1])) width--;
  return width;
}

/** A page of a tab. Blank rows are left out; `next` is the row to go on with, null at the end of the grid. */
export function readPage(workbook: WorkbookPort, { tab: name, from, rows }: RequestFor<"read page">) {
  const spec = tabSpec(name);
  const book = openBook(workbook, spec === PLANTS ? ["Plants", "Settings"] : [name]);
  const found = findPlace(book, spec);
  if (!found) return { tab: null, columns: [], rows: [], next: null };
  const { tab, headingRow, ours } = found;
  const columns = widthOf(headingRow);
  if (columns === 0) return { tab: tab.name, columns: [], rows: [], next: null };
  const formulas = tab.readFormulas({ row: 1, column: 1, rows: 2, columns });
  const block = tab.readBlock({ row: from, column: 1, rows, columns });
  return {
    tab: tab.name,
    columns: Array.from({ length: columns }, (_, index) => ({
      heading: ours.get(index + 1) ?? String(isBlank(headingRow[index]) ? "" : headingRow[index]),
      ours: ours.has(index + 1),
      computed: !ours.has(index + 1) && formulas.some((row) => (row[index] ?? "") !== ""),
    })),
    rows: block.filter((row) => !row.every(isBlank)).map((row) => row.map((raw) => travelling(raw, workbook))),
    next: block.length < rows ? null : from + rows,
  };
}

function travelling(raw: unknown, { dayOf }: WorkbookPort): TravellingCell {
  if (isBlank(raw)) return null;
  if (typeof raw === "string" || typeof raw === "boolean") return raw;
  const cell = readCell(raw, dayOf);
  if (cell.kind === "number") return cell.value;
  return cell.kind === "day" ? { day: isoFromDay(cell.day) } : "#ERROR!";
}

function written(cell: TravellingCell): PlainCell {
  if (cell === null || typeof cell !== "object") return cell;
  const day = dayFromIso(cell.day);
  if (day === null) throw new BadInput("not-a-day", `There is no day ${cell.day}. Give one like 2026-03-01.`);
  return { day };
}

/** Appends what is not there yet, known by its key; values of Settings replace those that stand there. */
export function importRows(workbook: WorkbookPort, request: RequestFor<"import rows">): ReplyFor<"import rows"> {
  const { tab: name, headings } = request;
  const records = request.rows.map(
    (row): SheetRecord => Object.fromEntries(headings.map((heading, index) => [heading, written(row[index] ?? null)])),
  );
  return workbook.locked(() => {
    const book = openBook(workbook, name === "Plants" ? ["Plants", "Settings"] : [name]);
    if (name === "Settings") return importSettings(book, records);
    if (name === "Plants" && (readSettings(book)?.text(PLANT_LIST_TAB) ?? "") !== "") {
      throw new BadInput(
        "own-list",
        "Plants come from a list of your own in this spreadsheet, and that is never changed. Add the plants there by hand.",
      );
    }
    const spec = tabSpec(name);
    const own = headings.filter((heading) => !spec.columns.some((column) => column.heading === heading));
    const columns = [...spec.columns, ...own.map((heading) => ({ heading, kind: "text" as const, help: "" }))];
    const { differing, ...counts } = appendRecords(book, { ...spec, columns }, records);
    const more = differing.length - MOST_SENTENCES;
    return {
      ...counts,
      differing: [
        ...differing.slice(0, MOST_SENTENCES),
        ...(more > 0 ? [`${more} more rows hold other values than the file; they were left as they are.`] : []),
      ],
    };
  });
}

function importSettings(book: Book, records: readonly SheetRecord[]): ReplyFor<"import rows"> {
  const settings = requireSettings(book);
  const wanted = records.flatMap((record): [string, PlainCell][] => {
    const setting = record.Setting;
    const known = typeof setting === "string" && !OF_THIS_WORKBOOK.some((each) => nameKey(each) === nameKey(setting));
    return known ? [[setting, record.Value ?? null]] : [];
  });
  const values = settings.tab.readAll();
  const valueAt = columnAt(settings.columns, "Value");
  const fresh = wanted.filter(([setting, value]) => {
    const row = settings.row(setting);
    return row === null || !sameCell(values[row - 1]?.[valueAt - 1], value, book.workbook);
  });
  writeSettings(settings, fresh);
  return { written: fresh.length, already: wanted.length - fresh.length, differing: [] };
}
