/** A move from soil into water culture, step by step: what the care log says was done, and what is due next. */

import { nameKey } from "./cell.ts";

export const MOVE = "Move from soil";
/** Events that carry a step, with the reason that says so; kept in the care log, nowhere else. */
export const WEAK_REASON = "Weak solution after move from soil";
export const FULL_REASON = "Full strength after move from soil";
export const LOOK_REASON = "No water roots yet after move from soil";

/** Common practice, no source: the weeks before full strength, and how often to refill and to look. */
export const LEAST_WEAK_DAYS = 14;
export const MOST_WEAK_DAYS = 42;
export const REFILL_DAYS = 14;
export const LOOK_DAYS = 7;
/** A move whose washing is longer ago is taken for over, whether its end was logged or not. */
export const OVER_AFTER_DAYS = 84;

export type MoveStep = "wash" | "weak" | "look" | "roots" | "full";

/** How each step is written: its event, and its reason where the event alone does not tell. */
export const STEP_ROWS: Readonly<Record<MoveStep, { readonly event: string; readonly reason: string }>> = {
  wash: { event: MOVE, reason: "" },
  weak: { event: "Solution change", reason: WEAK_REASON },
  look: { event: "Note", reason: LOOK_REASON },
  roots: { event: "New root", reason: "" },
  full: { event: "Solution change", reason: FULL_REASON },
};

export interface MoveRow {
  /** Day number. */
  readonly day: number;
  readonly plant: string;
  readonly event: string;
  readonly reason: string;
}

export interface Done {
  readonly step: MoveStep;
  readonly day: number;
}

export interface Due {
  readonly step: MoveStep;
  /** The first day on which it is to be done. */
  readonly day: number;
}

export interface Move {
  readonly plant: string;
  /** Oldest first, from the washing on. */
  readonly done: readonly Done[];
  /** The next one first; none once the plant is on full strength. */
  readonly due: readonly Due[];
  /** The day from which missing water roots are a reason to look for rot; null once roots were seen. */
  readonly lookForRotFrom: number | null;
}

function stepOf({ event, reason }: MoveRow): MoveStep | null {
  const [eventKey, reasonKey] = [nameKey(event), nameKey(reason)];
  for (const step of ["wash", "weak", "look", "roots", "full"] as const) {
    const row = STEP_ROWS[step];
    if (eventKey === nameKey(row.event) && (row.reason === "" || reasonKey === nameKey(row.reason))) return step;
  }
  return null;
}

const ORDER: readonly MoveStep[] = ["wash", "weak", "look", "roots", "full"];

/**
 * The newest move of each plant that is not over on `asOfDay`, in the order in which the plants were washed; rows may
 * stand in any order. Of new roots only the first belongs to the move.
 */
export function movesFromSoil(rows: Iterable<MoveRow>, asOfDay: number): Move[] {
  const byPlant = new Map<string, { plant: string; steps: Done[] }>();
  for (const row of rows) {
    const step = stepOf(row);
    const key = nameKey(row.plant);
    if (step === null || key === "" || !Number.isSafeInteger(row.day)) continue;
    const found = byPlant.get(key) ?? { plant: row.plant.trim(), steps: [] };
    byPlant.set(key, found);
    found.steps.push({ step, day: row.day });
  }
  const moves: Move[] = [];
  for (const { plant, steps } of byPlant.values()) {
    const washed = steps.reduce((latest, { step, day }) => (step === "wash" && day > latest ? day : latest), -Infinity);
    if (washed < asOfDay - OVER_AFTER_DAYS) continue;
    const since = steps
      .filter(({ day }) => day >= washed)
      .sort((a, b) => a.day - b.day || ORDER.indexOf(a.step) - ORDER.indexOf(b.step));
    const roots = since.find(({ step }) => step === "roots");
    const done = since.filter((each) => each.step !== "roots" || each === roots);
    moves.push({ plant, done, ...ahead(done, washed) });
  }
  return moves.sort((a, b) => (a.done[0]?.day ?? 0) - (b.done[0]?.day ?? 0));
}

function ahead(done: readonly Done[], washed: number): Pick<Move, "due" | "lookForRotFrom"> {
  const days = (step: MoveStep): number[] => done.flatMap((each) => (each.step === step ? [each.day] : []));
  const [firstRoots] = days("roots");
  const lookForRotFrom = firstRoots === undefined ? washed + MOST_WEAK_DAYS : null;
  if (days("full").length > 0) return { due: [], lookForRotFrom: null };
  const weak = days("weak");
  const lastWeak = weak[weak.length - 1];
  const lastLook = days("look").pop();
  const due: Due[] = [{ step: "weak", day: lastWeak === undefined ? washed : lastWeak + REFILL_DAYS }];
  if (firstRoots === undefined) {
    const next = lastLook === undefined ? washed + LEAST_WEAK_DAYS : lastLook + LOOK_DAYS;
    due.push({ step: "roots", day: next });
  } else due.push({ step: "full", day: Math.max(firstRoots, washed + LEAST_WEAK_DAYS) });
  return { due: due.sort((a, b) => a.day - b.day), lookForRotFrom };
}
