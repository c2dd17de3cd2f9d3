/** Rows that are known by a name, like waters and feeds: each name once, never overwritten, a retry found by its values. */

import { nameKey, readCell } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { appendTo, type Log, openLog, type SheetRecord } from "../sheet/append.ts";
import { columnAt, openBook } from "../sheet/find.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import type { TabSpec } from "../sheet/spec.ts";
import { sameCell } from "../sheet/stored.ts";
import type { ReplyFor } from "./contract.ts";

interface NamedRow {
  readonly record: SheetRecord;
  readonly name: string;
  /** What it is, as in "give this report a name of its own". */
  readonly what: string;
}

/** True when the name is there with the same values; throws BadInput when it is there with others. */
function standsAlready({ book, spec, tab, values, columns }: Log, { record, name, what }: NamedRow): boolean {
  const nameAt = columnAt(columns, spec.key) - 1;
  const rowIndex = values.findIndex((cells, index) => {
    const cell = readCell(cells[nameAt], book.workbook.dayOf);
    // A name like 12 stands there as a number when a person typed it.
    const known = cell.kind === "text" || cell.kind === "number" ? nameKey(String(cell.value)) : "";
    return index > 0 && known === nameKey(name);
  });
  if (rowIndex === -1) return false;
  const others = Object.keys(record).filter((heading) => {
    const at = columns.at.get(heading);
    const raw = at === undefined ? null : values[rowIndex]?.[at - 1];
    return heading !== spec.key && !sameCell(raw, record[heading] ?? null, book.workbook);
  });
  if (others.length === 0) return true;
  throw new BadInput(
    "name-there",
    `“${name}” already stands in row ${rowIndex + 1} of “${tab.name}”, with another ${others.join(", ")}, so nothing was written. Each name stands there once: give this ${what} a name of its own, or change that row.`,
  );
}

/** One row in one write; the same name and values again count as already there. */
export function appendNamed(workbook: WorkbookPort, spec: TabSpec, row: NamedRow): ReplyFor<"log water"> {
  return workbook.locked(() => {
    const log = openLog(openBook(workbook, [spec.name]), spec);
    if (standsAlready(log, row)) return { written: 0, already: 1, differing: [] };
    const { written, already, differing } = appendTo(log, [row.record]);
    return { written, already, differing: [...differing] };
  });
}
