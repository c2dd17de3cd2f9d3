/** Takes a row of a log back: a new row says so and the old one no longer counts; nothing is deleted or changed. */

import { nameKey } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { TAKEN_BACK } from "../core/events.ts";
import { appendTo, type Log, openLog, placesById, type SheetRecord } from "../sheet/append.ts";
import { columnAt, openBook } from "../sheet/find.ts";
import { CLAIMS, TRIALS } from "../sheet/list-tabs.ts";
import { BATCH_LOG, CARE_LOG, METER_LOG, PURCHASES } from "../sheet/log-tabs.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import { readRows } from "../sheet/rows.ts";
import type { ReplyFor, RequestFor } from "./contract.ts";
import { textCell } from "./logging.ts";
import type { Me } from "./me.ts";
import { takesBackOnly, voidPlaces } from "./standing.ts";

const LOGS = [CARE_LOG, BATCH_LOG, PURCHASES, METER_LOG, CLAIMS, TRIALS];

/** A log with what is asked of it for each row. */
export interface OwnRows {
  readonly log: Log;
  readonly places: ReadonlyMap<unknown, readonly number[]>;
  /** Void by rows with an Id of their own: one without may be half of what an earlier try wrote. */
  readonly gone: ReadonlySet<number>;
}

export function ownRows(log: Log): OwnRows {
  return { log, places: placesById(log), gone: voidPlaces(log.values, log.columns, { named: true }) };
}

/** Its place in the log's values; throws BadInput where there is no such row, or more than one. */
function placeOf({ log, places }: OwnRows, id: string): number {
  const [place, other] = places.get(id) ?? [];
  if (place === undefined) {
    throw new BadInput(
      "no-row",
      `“${log.tab.name}” has no row with the Id ${id}, so nothing was written. That row may have been deleted or moved to another tab.`,
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
export function ownRow(rows: OwnRows, id: string, who: string): { readonly plant: string } | null {
  const { log, gone } = rows;
  const place = placeOf(rows, id);
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
      `${where} names nobody under Who. Type your name there first; then you can take it back or correct it.`,
    );
  }
  if (nameKey(author) !== nameKey(who)) {
    throw new BadInput(
      "not-your-row",
      `${where} was logged by ${author}, and only ${author} can take it back or correct it. Ask them, or log what is right as a row of your own.`,
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
    const rows = ownRows(log);
    const day = { day: workbook.today() };
    const records = asked.flatMap(({ id, takes }): SheetRecord[] => {
      if (rows.places.has(id)) return [];
      const row = ownRow(rows, takes, who);
      if (row === null) return [];
      const marks = spec === CARE_LOG ? { Plant: textCell(row.plant), Event: TAKEN_BACK } : { Note: TAKEN_BACK };
      return [{ Id: id, Date: day, ...marks, Who: who, Corrects: takes }];
    });
    const { written } = appendTo(log, records);
    return { written, already: asked.length - written };
  });
}
