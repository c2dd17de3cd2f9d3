/** Logs a mixed batch, once, and makes cells of what a request holds. */

import { dayFromIso } from "../core/calendar.ts";
import { MOST_PER_LITRE } from "../core/dose.ts";
import { dosesText } from "../core/dose-text.ts";
import { ELEMENTS } from "../core/elements.ts";
import { BadInput } from "../core/errors.ts";
import { checkNumber } from "../core/reading.ts";
import { appendRecords, appendTo, type Log, openLog, placesById, type SheetRecord } from "../sheet/append.ts";
import { openBook } from "../sheet/find.ts";
import { BATCH_LOG } from "../sheet/log-tabs.ts";
import type { PlainCell, WorkbookPort } from "../sheet/port.ts";
import type { TabSpec } from "../sheet/spec.ts";
import type { BatchEntry, ReplyFor, RequestFor } from "./contract.ts";
import type { Me } from "./me.ts";
import { voidPlaces } from "./standing.ts";

/** Sea water is about 54 mS/cm; 1650 is µS/cm. */
const MOST_MS_CM = 100;
/** A household's batch; more is a slip of the pen. */
const MOST_LITRES = 10_000;

/** An EC within what a meter in mS/cm can show; throws BadInput otherwise. Null stays null. */
export function checkEc(ecMsCm: number | null, what: string): number | null {
  return ecMsCm === null ? null : checkNumber(ecMsCm, { what, unit: "mS/cm", min: 0, max: MOST_MS_CM });
}

export function dayCell(iso: string): PlainCell {
  const day = dayFromIso(iso);
  if (day === null)
    throw new BadInput("not-a-day", `There is no day ${iso}. Give one like 2026-03-01 (year, month, day).`);
  return { day };
}

export const textCell = (text: string): PlainCell => (text === "" ? null : text);

function batchRecord(batch: BatchEntry, who: string): SheetRecord {
  for (const { feed, perLitre, unit } of batch.doses) {
    checkNumber(perLitre, { what: `The dose of ${feed}`, unit: `${unit}/L`, min: 0, max: MOST_PER_LITRE });
  }
  const record: Record<string, PlainCell> = {
    Id: batch.id,
    Date: dayCell(batch.day),
    Who: textCell(who),
    Litres: checkNumber(batch.litres, { what: "The batch", unit: "L", min: 0, max: MOST_LITRES }),
    Water: textCell(batch.water),
    Target: textCell(batch.target),
    Doses: dosesText(batch.doses),
    "Predicted EC": batch.predictedEcMsCm,
    Acid: textCell(batch.acid),
    Note: textCell(batch.note),
    ...(batch.measured === undefined
      ? {}
      : { "Measured EC": checkEc(batch.measured.ecMsCm, "The measured EC"), "Measured pH": batch.measured.pH }),
    ...(batch.state === undefined ? {} : { State: batch.state }),
    ...(batch.corrects === undefined ? {} : { Corrects: batch.corrects }),
  };
  for (const symbol of ELEMENTS) record[symbol] = batch.reached[symbol] ?? null;
  return record;
}

/** Each record once, under the lock. */
export function append(workbook: WorkbookPort, spec: TabSpec, records: readonly SheetRecord[]): ReplyFor<"log batch"> {
  const { written, already, differing } = workbook.locked(() =>
    appendRecords(openBook(workbook, [spec.name]), spec, records),
  );
  return { written, already, differing: [...differing] };
}

/** Throws BadInput when there is no such batch, or another row replaced it already. */
function checkReplaced(log: Log, id: string): void {
  const place = placesById(log).get(id)?.[0];
  if (place === undefined) {
    throw new BadInput(
      "no-row",
      `“${log.tab.name}” has no batch with the Id ${id}, which this one is to replace. Its row may have been deleted. Nothing was written.`,
    );
  }
  if (!voidPlaces(log.values, log.columns, { named: true }).has(place)) return;
  throw new BadInput(
    "corrected-before",
    "This batch was mixed, corrected or taken back before. Read the sheet again, then go on from the newer row. Nothing was written.",
  );
}

/** One row. One found by its Id was logged by an earlier try, and is not asked about again. */
export function logBatch(workbook: WorkbookPort, me: Me, request: RequestFor<"log batch">): ReplyFor<"log batch"> {
  const { batch } = request;
  const record = batchRecord(batch, request.who === "" ? me.name : request.who);
  return workbook.locked(() => {
    const log = openLog(openBook(workbook, [BATCH_LOG.name]), BATCH_LOG);
    if (batch.corrects !== undefined && !placesById(log).has(batch.id)) checkReplaced(log, batch.corrects);
    const { written, already, differing } = appendTo(log, [record]);
    return { written, already, differing: [...differing] };
  });
}
