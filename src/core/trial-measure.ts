/** What the care log says of each plant of a trial: new leaves, days to the first new leaf or root, or a score. */

import { nameKey } from "./cell.ts";

export const MEASURES = ["New leaves", "Days to first new leaf", "Days to first new root", "Score"] as const;
export type Measure = (typeof MEASURES)[number];

export interface MeasuredRow {
  /** Days since 1970-01-01. */
  readonly day: number;
  readonly plant: string;
  readonly event: string;
  readonly note: string;
}

export interface PlantMeasure {
  readonly plant: string;
  /** Leaves, days or points; null when the log says nothing about the plant in that time. */
  readonly value: number | null;
  /** Waited for in vain so far: the value is the days waited. */
  readonly notYet: boolean;
}

export interface Span {
  /** First day; what was there on it does not count. */
  readonly started: number;
  /** Last day that counts. */
  readonly until: number;
}

const FIRST_OF: Readonly<Record<string, string>> = {
  "Days to first new leaf": "new leaf",
  "Days to first new root": "new root",
};

/** The number after "score" at the beginning of a note: "Score 7", "score: 6,5". Null for any other note, and for more than two decimals. */
export function scoreOf(note: string): number | null {
  const found = /^\s*score\b\s*[:=]?\s*(-?\d{1,4}(?:[.,]\d{1,2})?)(?![\d.,]*\d)/i.exec(note);
  return found?.[1] === undefined ? null : Number(found[1].replace(",", "."));
}

function measured(
  measure: Measure,
  own: readonly MeasuredRow[],
  { started, until }: Span,
): Omit<PlantMeasure, "plant"> {
  if (measure === "Score") {
    const scores = own.flatMap(({ day, note }) => {
      const score = scoreOf(note);
      return score === null ? [] : [{ day, score }];
    });
    // The newest; of one day the one that stands last.
    const last = scores.reduce<(typeof scores)[number] | null>(
      (so, one) => (so === null || one.day >= so.day ? one : so),
      null,
    );
    return { value: last === null ? null : last.score, notYet: false };
  }
  if (own.length === 0) return { value: null, notYet: false };
  if (measure === "New leaves") {
    return { value: own.filter(({ event }) => nameKey(event) === "new leaf").length, notYet: false };
  }
  const days = own.filter(({ event }) => nameKey(event) === FIRST_OF[measure]).map(({ day }) => day - started);
  if (days.length === 0) return { value: until - started, notYet: true };
  return { value: Math.min(...days), notYet: false };
}

/**
 * The measure of each plant, in their order, from rows after the first day up to the last. Rows oldest first where
 * two stand on one day. A plant without any row in that time was not looked after by this log, so it has no value;
 * a score needs a note that begins with "score" and a number.
 */
export function measurePlants(
  measure: Measure,
  plants: readonly string[],
  { rows, span }: { readonly rows: readonly MeasuredRow[]; readonly span: Span },
): PlantMeasure[] {
  const byPlant = new Map<string, MeasuredRow[]>(plants.map((plant) => [nameKey(plant), []]));
  for (const row of rows) {
    if (row.day > span.started && row.day <= span.until) byPlant.get(nameKey(row.plant))?.push(row);
  }
  return plants.map((plant) => ({ plant, ...measured(measure, byPlant.get(nameKey(plant)) ?? [], span) }));
}
