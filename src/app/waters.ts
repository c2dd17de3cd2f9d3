/** Puts a water report into the Waters tab, once for each name. */

import { BadInput } from "../core/errors.ts";
import { readWater } from "../core/waters.ts";
import type { SheetRecord } from "../sheet/append.ts";
import type { PlainCell, WorkbookPort } from "../sheet/port.ts";
import { WATERS } from "../sheet/shelf-tabs.ts";
import type { ReplyFor, RequestFor, WaterEntry } from "./contract.ts";
import { dayCell, textCell } from "./logging.ts";
import { appendNamed } from "./named-rows.ts";
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

/** One row in one write; the same name, day and values again count as already there. */
export function logWater(workbook: WorkbookPort, { entry }: RequestFor<"log water">): ReplyFor<"log water"> {
  const name = entry.water.trim();
  if (name === "") throw new BadInput("no-water-name", "Type a name for this water, like Tap, spring.");
  return appendNamed(workbook, WATERS, { record: waterRecord({ ...entry, water: name }), name, what: "report" });
}
