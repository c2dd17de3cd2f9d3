/** Takes a row of a log back: a new row says so and the old one no longer counts; nothing is deleted or changed. */

import { nameKey } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { TAKEN_BACK } from "../core/events.ts";
import { appendTo, type Log, openLog, placesOfId, type SheetRecord } from "../sheet/append.ts";
import { columnAt, openBook } from "../sheet/find.ts";
import { BATCH_LOG, CARE_LOG, METER_LOG, PURCHASES } from "../sheet/log-tabs.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import { readRows } from "../sheet/rows.ts";
import type { ReplyFor, RequestFor } from "./contract.ts";
import { textCell } from "./logging.ts";
import type { Me } from "./me.ts";
import { takesBackOnly, voidPlaces } from "./standing.ts";

const LOGS = [CARE_LOG, BATCH_LOG, PURCHASES, METER_LOG];

/** Its place in the log's values; throws BadInput where there is no such row, or more than one. */
function placeOf(log: Log, id: string): number {
  const [place, other] = placesOfId(log, id);
  if (place === undefined) {
    throw new BadInput(
      "no-row",
      `“${log.tab.name}” has no row with the Id ${id}, so nothing was taken back. Its row may have been deleted or moved to another tab.`,
    );
  }
  if (other !== undefined) {
    throw new BadInput(
      "row-twice",
      `Rows ${place + 1} and ${other + 1} of “${log.tab.name}” have the same Id ${id}. Clear the Id of the copy, then try again.`,
    );
  }
  return place;
}

/**
 * The plant of a row that this person may take back or correct; null where that was done already. Throws BadInput
 * for a row of somebody else, of nobody, or one that itself takes another one back.
 */
export function ownRow(
  { log, gone }: { readonly log: Log; readonly gone: ReadonlySet<number> },
  id: string,
  who: string,
): { readonly plant: string } | null {
  const place = placeOf(log, id);
  if (gone.has(place)) return null;
  const { dayOf } = log.book.workbook;
  const [row] = readRows(log.values, log.spec, log.columns, dayOf, [place]);
  const fields = row?.fields ?? {};
  const where = `Row ${place + 1} of “${log.tab.name}”`;
  const event = String(fields.Event ?? "");
  if (takesBackOnly(log.spec, fields) || nameKey(event) === nameKey(TAKEN_BACK)) {
    throw new BadInput("takes-back", `${where} takes another row back itself. Log what was done once more instead.`);
  }
  const author = String(fields.Who ?? "").trim();
  if (author === "") {
    throw new BadInput(
      "nobodys-row",
      `${where} names nobody under Who. Type your name there first; then you can take it back.`,
    );
  }
  if (nameKey(author) !== nameKey(who)) {
    throw new BadInput(
      "not-your-row",
      `${where} was logged by ${author}, and only ${author} can take it back. Ask them, or log what is right as a row of your own.`,
    );
  }
  return { plant: String(fields.Plant ?? "") };
}

/** One marking row for each row taken back, in one write; what was taken back before counts as already. */
export function takeBack(workbook: WorkbookPort, me: Me, request: RequestFor<"take back">): ReplyFor<"take back"> {
  const who = (request.who === "" ? me.name : request.who).trim();
  if (who === "") throw new BadInput("no-name", "Type your name first: a row can only be taken back by who logged it.");
  const spec = LOGS.find(({ name }) => name === request.log) ?? CARE_LOG;
  const asked = [{ id: request.id, takes: request.takes }, ...(request.more ?? [])];
  return workbook.locked(() => {
    const log = openLog(openBook(workbook, [spec.name]), spec);
    columnAt(log.columns, "Corrects");
    if (spec === CARE_LOG) columnAt(log.columns, "Plant");
    const gone = voidPlaces(log.values, log.columns, { named: true });
    const day = { day: workbook.today() };
    const records = asked.flatMap(({ id, takes }): SheetRecord[] => {
      if (placesOfId(log, id).length > 0) return [];
      const row = ownRow({ log, gone }, takes, who);
      if (row === null) return [];
      const marks = spec === CARE_LOG ? { Plant: textCell(row.plant), Event: TAKEN_BACK } : { Note: TAKEN_BACK };
      return [{ Id: id, Date: day, ...marks, Who: who, Corrects: takes }];
    });
    const written = records.length === 0 ? 0 : appendTo(log, records).written;
    return { written, already: asked.length - written };
  });
}
