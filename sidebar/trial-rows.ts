/** Trials as the panel works with them, from the rows of the sheet and of the care log. */

import type { CareRow, FieldRow, Loaded, TrialEntry } from "../src/app/contract.ts";
import { drawRepeats } from "../src/core/assignment.ts";
import { dayFromIso } from "../src/core/calendar.ts";
import { nameKey } from "../src/core/cell.ts";
import { isBadInput } from "../src/core/errors.ts";
import { type Trial, type TrialState, trialState } from "../src/core/trial.ts";
import { MEASURES, type MeasuredRow } from "../src/core/trial-measure.ts";
import { isId, textIn } from "./claim-rows.ts";
import { showDay } from "./show.ts";

export interface TrialRow extends Trial {
  /** "" in a row typed by hand. */
  readonly id: string;
  readonly row: number;
  readonly question: string;
  /** ISO days of `started` and `ends`. */
  readonly from: string;
  readonly to: string;
  readonly groupA: string;
  readonly groupB: string;
  readonly draw: number | null;
  readonly worthSeeing: number | null;
  /** What stands under Result, "" for nothing yet. */
  readonly result: string;
  readonly who: string;
}

const names = (text: string): string[] =>
  text
    .split(";")
    .map((name) => name.trim())
    .filter((name) => name !== "");

function readTrial(row: FieldRow): TrialRow | string {
  const where = `Row ${row.row} of Trials`;
  const measure = MEASURES.find((one) => nameKey(one) === nameKey(textIn(row, "Measure")));
  if (measure === undefined) {
    return `${where} has another measure than the panel knows: “${textIn(row, "Measure")}”. Write one of ${MEASURES.join(", ")}.`;
  }
  const [from, to] = [textIn(row, "Started"), textIn(row, "Ends")];
  const [started, ends] = [dayFromIso(from), dayFromIso(to)];
  if (started === null || ends === null || ends <= started) return `${where} needs a first day and a later last day.`;
  const [plantsA, plantsB] = [names(textIn(row, "Plants A")), names(textIn(row, "Plants B"))];
  if (plantsA.length === 0 || plantsB.length === 0) return `${where} needs plants on both sides.`;
  const design = nameKey(textIn(row, "Design")) === "pairs" ? "Pairs" : "Together";
  if (design === "Pairs" && plantsA.length !== plantsB.length) {
    return `${where} says Pairs, but has ${plantsA.length} plants A and ${plantsB.length} plants B.`;
  }
  const { Draw: draw, "Worth seeing": worth } = row.fields;
  return {
    id: textIn(row, "Id"),
    row: row.row,
    question: textIn(row, "Question"),
    measure,
    design,
    started,
    ends,
    from,
    to,
    plantsA,
    plantsB,
    groupA: textIn(row, "Group A"),
    groupB: textIn(row, "Group B"),
    draw: typeof draw === "number" ? draw : null,
    worthSeeing: typeof worth === "number" ? worth : null,
    result: textIn(row, "Result"),
    who: textIn(row, "Who"),
  };
}

/** Trials newest first, and a sentence on each row that is none. */
export function readTrials(rows: readonly FieldRow[]): {
  readonly trials: readonly TrialRow[];
  readonly problems: readonly string[];
} {
  const read = rows.map(readTrial);
  return {
    trials: read.flatMap((one) => (typeof one === "string" ? [] : [one])).sort((a, b) => b.started - a.started),
    problems: read.flatMap((one) => (typeof one === "string" ? [one] : [])),
  };
}

/** The care log, oldest first; rows with no day are left out. */
export function measuredRows(care: readonly CareRow[]): MeasuredRow[] {
  return [...care].reverse().flatMap(({ day, plant, event, note }) => {
    const number = dayFromIso(day);
    return number === null ? [] : [{ day: number, plant, event, note }];
  });
}

/** Where a trial stands today; a sentence where the log that was sent does not reach back far enough, or it cannot be worked out. */
export function stateOf(trial: TrialRow, { care, today }: Pick<Loaded, "care" | "today">): TrialState | string {
  const now = dayFromIso(today);
  if (now === null) return "The sheet did not say what day it is.";
  if (!care.all && (care.from === null || care.from > trial.from)) {
    return `The panel holds the care log from ${care.from === null ? "today" : showDay(care.from)} on, and this trial began before. Its measures cannot be gathered here.`;
  }
  try {
    return trialState(trial, measuredRows(care.rows), now);
  } catch (error) {
    if (isBadInput(error)) return error.message;
    throw error;
  }
}

/** How the groups came about, and whether the number on record gives them again. */
export function sayDraw({ draw, design, plantsA, plantsB }: TrialRow): string {
  if (draw === null)
    return "No draw is on record. What is said of chance holds only if the groups were drawn at random.";
  const how = design === "Pairs" ? "within pairs" : "from all plants together";
  let again = false;
  try {
    again = drawRepeats({ a: plantsA, b: plantsB }, design, draw);
  } catch (error) {
    if (!isBadInput(error)) throw error;
  }
  return again
    ? `Drawn ${how} by the number ${draw}; the same number gives the same groups.`
    : `The number ${draw} on record gives other groups than these: plants were changed by hand. What is said of chance no longer holds.`;
}

/** A result can be kept: the trial is over, it has a row of its own, and nothing stands there yet. */
export function canKeep(trial: TrialRow, state: TrialState): boolean {
  return trial.result === "" && isId(trial.id) && state.verdict !== "not begun" && state.verdict !== "running";
}

/** The row as the sheet will have it, to be shown until it is read again. */
export function trialFields(entry: TrialEntry, who: string, row: number): FieldRow {
  const fields: FieldRow["fields"] = {
    Id: entry.id,
    Question: entry.question,
    Measure: entry.measure,
    Started: entry.started,
    Ends: entry.ends,
    "Plants A": entry.plantsA.join("; "),
    "Plants B": entry.plantsB.join("; "),
    Design: entry.design,
    Draw: entry.draw,
    Who: who,
  };
  if (entry.groupA !== "") fields["Group A"] = entry.groupA;
  if (entry.groupB !== "") fields["Group B"] = entry.groupB;
  if (entry.worthSeeing !== null) fields["Worth seeing"] = entry.worthSeeing;
  return { row, fields };
}
