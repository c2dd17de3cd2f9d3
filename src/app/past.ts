/** Brings days of past repots and the like from a plant list of one's own into the Care log, each once. */

import { dayFromIso } from "../core/calendar.ts";
import { appendTo, halfThere, openLog, type SheetRecord } from "../sheet/append.ts";
import { openBook } from "../sheet/find.ts";
import { CARE_LOG } from "../sheet/log-tabs.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import type { ReplyFor, RequestFor } from "./contract.ts";
import { dayCell, textCell } from "./logging.ts";
import type { Me } from "./me.ts";
import { type StandingCare, sameDeed, standingCare } from "./standing-care.ts";

type PastEntry = RequestFor<"log past">["entries"][number];

const NOTE = "From the plant list";

/**
 * One row each, in one write. What the log has already of that plant, event and day, taken back or not, or under
 * that Id, is left alone and counted. Past deeds are not asked a reason for.
 */
export function logPast(workbook: WorkbookPort, me: Me, request: RequestFor<"log past">): ReplyFor<"log past"> {
  const who = request.who === "" ? me.name : request.who;
  const { entries } = request;
  return workbook.locked(() => {
    const log = openLog(openBook(workbook, [CARE_LOG.name]), CARE_LOG);
    const rows = standingCare(
      log,
      entries.map(({ plant }) => plant),
      new Set(),
    );
    const recordsOf = (there: readonly StandingCare[]): SheetRecord[] =>
      missing(entries, there).map(({ id, day, plant, event }) => ({
        Id: id,
        Date: dayCell(day),
        Plant: plant,
        Event: event,
        Who: textCell(who),
        Note: NOTE,
      }));
    // Rows without an Id are somebody's, typed by hand, unless an earlier try of this press stopped half-way.
    const whole = rows.filter(({ id }) => id !== "");
    const half = whole.length < rows.length ? recordsOf(whole) : [];
    const { written } = appendTo(log, halfThere(log, half) ? half : recordsOf(rows));
    return { written, already: entries.length - written };
  });
}

/** Entries whose deed is none of `rows`, each deed once. */
function missing(entries: readonly PastEntry[], rows: readonly StandingCare[]): PastEntry[] {
  const there = new Set(rows.map(sameDeed));
  return entries.filter(({ plant, event, day }) => {
    const deed = sameDeed({ plant, event, day: dayFromIso(day) });
    const first = !there.has(deed);
    there.add(deed);
    return first;
  });
}
