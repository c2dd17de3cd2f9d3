/** Logs care: one row for each plant, after asking about what somebody else did today and about roots at rest. */

import { dayFromIso } from "../core/calendar.ts";
import { nameKey } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { BUILT_IN_EVENTS, type EventRule, eventRule } from "../core/events.ts";
import { earlyDisturbances, whyEarly } from "../core/rest-rule.ts";
import { indexDisturbances } from "../core/roots.ts";
import { appendTo, type Log, openLog, type SheetRecord } from "../sheet/append.ts";
import { openBook } from "../sheet/find.ts";
import { CARE_LOG } from "../sheet/log-tabs.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import { gatherSentences } from "../sheet/sentences.ts";
import { readSettings } from "../sheet/settings.ts";
import type { CareEntry, ReplyFor, RequestFor } from "./contract.ts";
import { readEvents } from "./events.ts";
import { part } from "./loading.ts";
import { checkEc, dayCell, textCell } from "./logging.ts";
import type { Me } from "./me.ts";
import { restRuleIn } from "./rest-rule.ts";
import { type StandingCare, sameDeed, standingCare } from "./standing-care.ts";
import { ownRow, ownRows } from "./take-back.ts";

function careRecord(entry: CareEntry, who: string): SheetRecord {
  return {
    Id: entry.id,
    Date: dayCell(entry.day),
    Plant: entry.plant,
    Event: entry.event,
    "Amount mL": entry.amountMl,
    Solution: textCell(entry.solution),
    EC: checkEc(entry.ecMsCm, `EC for ${entry.plant}`),
    pH: entry.pH,
    Who: textCell(who),
    Reason: textCell(entry.reason),
    Note: textCell(entry.note),
    ...(entry.corrects === undefined ? {} : { Corrects: entry.corrects }),
  };
}

/** What may well stand twice on one day. */
const OFTEN: ReadonlySet<string> = new Set(["Note", "Reading"].map(nameKey));

/** Rows of somebody else, by name, that say the same of the same plant and day. */
function doublesOf(entries: readonly CareEntry[], rows: readonly StandingCare[], who: string) {
  const others = new Map<string, StandingCare>();
  for (const row of rows) {
    // A row without a name may be half of what an earlier try of this very press wrote.
    if (row.who !== "" && nameKey(row.who) !== nameKey(who)) others.set(sameDeed(row), row);
  }
  return entries.flatMap(({ plant, event, day }) => {
    const deed = sameDeed({ plant, event, day: dayFromIso(day) });
    const other = OFTEN.has(nameKey(event)) ? undefined : others.get(deed);
    return other === undefined ? [] : [{ plant, event, day, who: other.who, id: other.id }];
  });
}

/** Throws BadInput with the question when roots at rest are to be disturbed and an entry says no reason. */
function askWhy(log: Log, entries: readonly CareEntry[], rows: readonly StandingCare[]): void {
  const silent = entries.filter(({ reason }) => reason.trim() === "");
  if (silent.length === 0) return;
  const loading = { book: log.book, say: gatherSentences(), missing: [] };
  const events: EventRule = eventRule(part(loading, "Events", BUILT_IN_EVENTS, () => readEvents(loading)));
  const planned = silent.flatMap(({ plant, event, day }) => {
    const on = events.find(event)?.disturbsRoots === true ? dayFromIso(day) : null;
    return on === null ? [] : [{ plant, day: on }];
  });
  const index = indexDisturbances(rows, events);
  if (!planned.some(({ plant }) => index.byPlant.has(nameKey(plant)))) return;
  const rule = restRuleIn(readSettings(log.book));
  const early = earlyDisturbances(planned, index, rule);
  if (early.length > 0) throw new BadInput("no-reason", `${whyEarly(early)} Nothing was written.`);
}

/** Throws BadInput when an entry corrects a row that is not this person's, or was corrected before. */
function checkCorrected(log: Log, entries: readonly CareEntry[], who: string): void {
  const corrected = entries.flatMap(({ corrects }) => corrects ?? []);
  if (corrected.length === 0) return;
  const rows = ownRows(log);
  for (const id of corrected) {
    if (ownRow(rows, id, who) !== null) continue;
    throw new BadInput(
      "corrected-before",
      "This entry was corrected or taken back before. Read the sheet again, then correct the newer one. Nothing was written.",
    );
  }
}

/**
 * One row for each plant, in one write. A name in the request goes before the one kept for this person. Entries
 * found by their Id were logged by an earlier try and are not asked about again. When somebody else logged the same
 * that day, nothing is written and the reply says so, unless the request says `again`.
 */
export function logCare(workbook: WorkbookPort, me: Me, request: RequestFor<"log care">): ReplyFor<"log care"> {
  const who = request.who === "" ? me.name : request.who;
  const records = request.entries.map((entry) => careRecord(entry, who));
  return workbook.locked(() => {
    const log = openLog(openBook(workbook, ["Care log", "Events", "Settings"]), CARE_LOG);
    const idAt = (log.columns.at.get("Id") ?? 0) - 1;
    const ids = new Set(log.values.map((row) => row[idAt]));
    const fresh = request.entries.filter(({ id }) => !ids.has(id));
    if (fresh.length > 0) {
      checkCorrected(log, fresh, who);
      const replaced = new Set(fresh.map(({ corrects }) => corrects));
      const rows = standingCare(
        log,
        fresh.map(({ plant }) => plant),
      ).filter(({ id }) => id === "" || !replaced.has(id));
      const doubles = request.again === true ? [] : doublesOf(fresh, rows, who);
      if (doubles.length > 0) return { written: 0, already: 0, differing: [], doubles };
      askWhy(log, fresh, rows);
    }
    const { written, already, differing } = appendTo(log, records);
    return { written, already, differing: [...differing] };
  });
}
