/** When to test the pH of a batch, from the Batch log as the panel has it. */

import type { BatchRow, Loaded, Records } from "../src/app/contract.ts";
import { dayFromIso } from "../src/core/calendar.ts";
import { isBadInput } from "../src/core/errors.ts";
import { type PlanReading, type TestPlan, testPlan } from "../src/core/test-plan.ts";
import { lotChanges, partsKey } from "./batch-parts.ts";
import { pHRange } from "./ph-range.ts";

/** Mixed batches with a date, oldest first. */
export function mixedBatches(batches: readonly BatchRow[]): (BatchRow & { readonly day: string })[] {
  return [...batches]
    .reverse()
    .flatMap((batch) => (batch.state === "mixed" && batch.day !== null ? [{ ...batch, day: batch.day }] : []));
}

/** What the plan means for one batch: "Test the pH of this batch, because …". */
export function sayTesting({ due, every, why }: TestPlan): string {
  const nth = every === 2 ? "2nd" : `${every}th`;
  if (!due) return `The pH need not be tested with this batch, because ${why} Every ${nth} batch is tested.`;
  if (every === 1) return `Test the pH of this batch, because ${why}`;
  return `Test the pH of this batch: of those made from the same, every ${nth} is tested, and this is its turn.`;
}

export interface Testing {
  readonly batch: BatchRow & { readonly day: string };
  readonly plan: TestPlan;
}

/**
 * The plan for the batch with that id, from those before it; or, without an id, for the next batch if it is made today
 * from the same as the newest. Null where there is no such batch; a sentence where a reading in the log cannot be used.
 */
export function testing(loaded: Loaded, { purchases }: Records, id: string | null): Testing | string | null {
  const all = mixedBatches(loaded.batches);
  const at = id === null ? all.length - 1 : all.findIndex((batch) => batch.id === id);
  const batch = all[at];
  if (batch === undefined) return null;
  const lots = lotChanges(purchases);
  const reading = (one: BatchRow & { readonly day: string }): PlanReading => ({
    day: dayFromIso(one.day) ?? 0,
    pH: one.measuredPH,
    key: partsKey(one, one.day, lots),
  });
  const nextDay = id === null ? loaded.today : batch.day;
  try {
    const plan = testPlan({
      ...pHRange(loaded.settings),
      readings: all.slice(0, id === null ? all.length : at).map(reading),
      next: { day: dayFromIso(nextDay) ?? 0, key: partsKey(batch, nextDay, lots) },
    });
    return { batch, plan };
  } catch (error) {
    if (isBadInput(error)) return error.message;
    throw error;
  }
}
