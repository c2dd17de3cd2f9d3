/** How a plant's reservoir stands on a day: when it was filled and renewed, how fast it is drunk, when it will be low. */

import { meanUse, type Uptake, usualAmountMl } from "./drinking.ts";
import { USE_DAYS } from "./filled-pots.ts";
import type { FillDay } from "./fills.ts";

/** A usual amount is told from this many top-ups. */
const USUAL_OF = 8;

/** A plant's reservoir as it stands on a day. */
export interface PotState {
  readonly lastFillDay: number;
  /** Last change or disturbance, else the first filling on record. */
  readonly freshDay: number;
  /** Last of these or a flush. */
  readonly flushedDay: number;
  readonly useMlDay: number | null;
  readonly usualMl: number | null;
}

/** Null for a plant whose reservoir was never filled by then. */
export function potState(fills: readonly FillDay[], drunk: readonly Uptake[], asOfDay: number): PotState | null {
  const seen = fills.filter(({ day }) => day <= asOfDay);
  const [first, last] = [seen[0], seen[seen.length - 1]];
  if (first === undefined || last === undefined) return null;
  let [freshDay, flushedDay] = [first.day, first.day];
  for (const { day, changed, disturbed, flushed } of seen) {
    if (changed || disturbed) freshDay = day;
    if (changed || disturbed || flushed) flushedDay = day;
  }
  const firstKnown = drunk[0];
  const useMlDay =
    meanUse(drunk, asOfDay, USE_DAYS) ??
    (firstKnown === undefined ? null : meanUse(drunk, asOfDay, asOfDay - firstKnown.fromDay));
  return { lastFillDay: last.day, freshDay, flushedDay, useMlDay, usualMl: usualAmountMl(drunk.slice(-USUAL_OF)) };
}

/** The day by which a plant has drunk what is usually poured in; null where that is not known. */
export function thirstyDay({ lastFillDay, useMlDay, usualMl }: PotState): number | null {
  if (useMlDay === null || usualMl === null || useMlDay === 0) return null;
  return lastFillDay + Math.max(1, Math.round(usualMl / useMlDay));
}
