/** The Care log of the sample household: everything that happened to all plants, in the order it was typed in. */

import { type CareEntry, careOf } from "./sample-care.ts";
import type { SampleCell } from "./sample-cell.ts";
import { growthOf } from "./sample-growth.ts";
import { PLANTS } from "./sample-household.ts";
import { randomStream } from "./sample-random.ts";

/** Rows that were typed in days later, so that nobody relies on the order of the log. */
const LATE_ROWS = 8;

export function careLog(): CareEntry[] {
  const entries = PLANTS.flatMap((story, index) =>
    [...careOf(story), ...growthOf(story)].map((entry) => ({ entry, index })),
  );
  entries.sort((a, b) => a.entry.day - b.entry.day || a.index - b.index);
  const log = entries.map(({ entry }) => entry);
  const random = randomStream("typed in late");
  for (let row = 0; row < LATE_ROWS; row++) {
    const from = random.whole(60, log.length - 80);
    const [entry] = log.splice(from, 1);
    if (entry !== undefined)
      log.splice(from + random.whole(12, 60), 0, { ...entry, note: entry.note || "Typed in late" });
  }
  return log;
}

export function careRow(entry: CareEntry, index: number): Readonly<Record<string, SampleCell>> {
  return {
    Id: `care-${String(index + 1).padStart(5, "0")}`,
    Date: { day: entry.day },
    Plant: entry.plant,
    Event: entry.event,
    "Amount mL": entry.amountMl ?? null,
    Solution: entry.solution ?? null,
    EC: entry.ecMsCm ?? null,
    pH: entry.pH ?? null,
    Who: entry.who,
    Reason: entry.reason || null,
    Note: entry.note || null,
  };
}
