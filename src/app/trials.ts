/** Writes a trial as it begins, and its result into the same row when it is over. */

import { nameKey } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { appendTo, openLog, placesById, type SheetRecord } from "../sheet/append.ts";
import { type Filling, fillRow } from "../sheet/fill-row.ts";
import { columnAt, openBook } from "../sheet/find.ts";
import { CLAIMS, TRIALS } from "../sheet/list-tabs.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import { isBlank } from "../sheet/stored.ts";
import { claimRecord } from "./claims.ts";
import type { ReplyFor, RequestFor, TrialEntry } from "./contract.ts";
import { dayCell, textCell } from "./logging.ts";
import type { Me } from "./me.ts";

function trialRecord(entry: TrialEntry, who: string): SheetRecord {
  const { plantsA, plantsB, started, ends } = entry;
  if (ends <= started) throw new BadInput("ends-before", `The trial ends on ${ends}. Give a day after ${started}.`);
  const seen = new Set<string>();
  for (const plant of [...plantsA, ...plantsB]) {
    if (plant.includes(";")) {
      throw new BadInput("semicolon", `“${plant}” has a semicolon in its name. Rename the plant without it.`);
    }
    if (seen.has(nameKey(plant))) throw new BadInput("plant-twice", `${plant} stands twice among the plants.`);
    seen.add(nameKey(plant));
  }
  if (entry.design === "Pairs" && plantsA.length !== plantsB.length) {
    throw new BadInput(
      "not-paired",
      `In pairs there are as many plants A as plants B; here are ${plantsA.length} and ${plantsB.length}.`,
    );
  }
  return {
    Id: entry.id,
    Question: entry.question,
    Measure: entry.measure,
    Started: dayCell(started),
    Ends: dayCell(ends),
    "Group A": textCell(entry.groupA),
    "Group B": textCell(entry.groupB),
    "Plants A": plantsA.join("; "),
    "Plants B": plantsB.join("; "),
    Design: entry.design,
    Draw: entry.draw,
    "Worth seeing": entry.worthSeeing,
    Who: textCell(who),
    Note: textCell(entry.note),
  };
}

/** The trial's row, and the claim's new one where it comes of a claim; each once for its Id. */
export function saveTrial(workbook: WorkbookPort, me: Me, request: RequestFor<"save trial">): ReplyFor<"save trial"> {
  const who = request.who === "" ? me.name : request.who;
  const record = trialRecord(request.trial, who);
  const claim = request.claim === undefined ? null : claimRecord(request.claim, who);
  return workbook.locked(() => {
    const book = openBook(workbook, [TRIALS.name, CLAIMS.name]);
    // Both are opened before either is written, so that a missing tab leaves nothing half done.
    const trials = openLog(book, TRIALS);
    const claims = claim && { log: openLog(book, CLAIMS), record: claim };
    const done = appendTo(trials, [record]);
    const alsoDone = claims && appendTo(claims.log, [claims.record]);
    return {
      written: done.written + (alsoDone?.written ?? 0),
      already: done.already + (alsoDone?.already ?? 0),
      differing: [...done.differing, ...(alsoDone?.differing ?? [])],
    };
  });
}

/**
 * The result beside its trial, in blank cells only: the same again counts as already there, another one is refused
 * and nothing is written. A trial is judged once.
 */
export function saveResult(workbook: WorkbookPort, request: RequestFor<"save result">): ReplyFor<"save result"> {
  return workbook.locked(() => {
    const log = openLog(openBook(workbook, [TRIALS.name]), TRIALS);
    const { tab, values, columns } = log;
    const [place, other] = placesById(log).get(request.trialId) ?? [];
    if (place === undefined) {
      throw new BadInput(
        "no-trial",
        `“${tab.name}” has no trial with the Id ${request.trialId}. Its row may have been deleted; bring it back with undo.`,
      );
    }
    if (other !== undefined) {
      throw new BadInput(
        "trial-twice",
        `Rows ${place + 1} and ${other + 1} of “${tab.name}” have the same Id ${request.trialId}. Clear the Id of the copy, then try again.`,
      );
    }
    const given: Filling[] = [];
    for (const [heading, value] of [
      ["Result", request.result],
      ["Difference", request.difference],
      ["From", request.low],
      ["To", request.high],
      ["p", request.p],
    ] as const) {
      if (value !== null) given.push({ heading, value, column: columnAt(columns, heading) });
    }
    const missing = given.filter(({ heading, value, column }) => {
      const now = values[place]?.[column - 1];
      if (isBlank(now)) return true;
      if (now === value) return false;
      throw new BadInput(
        "result-there",
        `${heading} of this trial already stands as ${String(now)} in row ${place + 1} of “${tab.name}”, so nothing was written. If it is wrong, change it there.`,
      );
    });
    if (missing.length === 0) return { written: 0, already: 1, differing: [] };
    fillRow(log, { row: place + 1, id: request.trialId, fillings: missing });
    return { written: 1, already: 0, differing: [] };
  });
}
