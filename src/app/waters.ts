/** Puts a water report into the Waters tab, once for each name. */

import { nameKey, readCell } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { readWater } from "../core/waters.ts";
import { appendRecords, type SheetRecord } from "../sheet/append.ts";
import { type Book, columnAt, findTab, noTab, openBook } from "../sheet/find.ts";
import { readTab } from "../sheet/open.ts";
import type { PlainCell, WorkbookPort } from "../sheet/port.ts";
import { WATERS } from "../sheet/shelf-tabs.ts";
import { sameCell } from "../sheet/stored.ts";
import type { ReplyFor, RequestFor, WaterEntry } from "./contract.ts";
import { dayCell, textCell } from "./logging.ts";
import { WATER_NUMBERS } from "./requests.ts";

function waterRecord(entry: WaterEntry): SheetRecord {
  const { numbers } = entry;
  // The readers of the tab refuse what no water holds, so nothing is written that could not be read again.
  readWater({ ...numbers, Water: entry.water }, "this report");
  const record: Record<string, PlainCell> = {
    Water: entry.water,
    Date: dayCell(entry.day),
    Source: textCell(entry.source),
    Disinfectant: textCell(entry.disinfectant),
    Note: textCell(entry.note),
  };
  for (const column of WATER_NUMBERS) record[column] = numbers[column] ?? null;
  return record;
}

/** True when the name is there with the same day and values; throws BadInput when it is there with others. */
function standsAlready(book: Book, record: SheetRecord, name: string): boolean {
  const tab = findTab(book, WATERS);
  if (!tab) throw noTab(WATERS);
  const { values, columns } = readTab(book, WATERS, tab);
  const nameAt = columnAt(columns, WATERS.key) - 1;
  const rowIndex = values.findIndex((cells, index) => {
    const cell = readCell(cells[nameAt], book.workbook.dayOf);
    return index > 0 && cell.kind === "text" && nameKey(cell.value) === nameKey(name);
  });
  if (rowIndex === -1) return false;
  const others = Object.keys(record).filter((heading) => {
    const at = columns.at.get(heading);
    const raw = at === undefined ? null : values[rowIndex]?.[at - 1];
    return heading !== WATERS.key && !sameCell(raw, record[heading] ?? null, book.workbook);
  });
  if (others.length === 0) return true;
  throw new BadInput(
    "water-there",
    `“${name}” already stands in row ${rowIndex + 1} of “${tab.name}”, with another ${others.join(", ")}, so nothing was written. Each name stands there once: give this report a name of its own, or change that row.`,
  );
}

/** One row in one write; the same name, day and values again count as already there. */
export function logWater(workbook: WorkbookPort, { entry }: RequestFor<"log water">): ReplyFor<"log water"> {
  const name = entry.water.trim();
  if (name === "") throw new BadInput("no-water-name", "Type a name for this water, like Tap, spring.");
  const record = waterRecord({ ...entry, water: name });
  return workbook.locked(() => {
    const book = openBook(workbook, [WATERS.name]);
    if (standsAlready(book, record, name)) return { written: 0, already: 1, differing: [] };
    const { written, already, differing } = appendRecords(book, WATERS, [record]);
    return { written, already, differing: [...differing] };
  });
}
