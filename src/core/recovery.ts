/** How long plants take to grow again after their roots were disturbed; those that have not yet are kept, as not yet. */

import { nameKey } from "./cell.ts";
import type { EventRule } from "./events.ts";
import type { LogEntry } from "./roots.ts";

export interface Recovery {
  /** Day of the disturbance. */
  readonly day: number;
  /** Events of that day as the list of events spells them, in alphabetical order, joined by a comma. */
  readonly event: string;
  /** First new leaf or root on a later day, before the next disturbance; null for none so far. */
  readonly recoveredDay: number | null;
  /** Days to it; where there is none, the days watched in vain: up to the next disturbance or the day asked for. */
  readonly days: number;
  /** Not recovered when the next disturbance came; false also for one that is still being watched. */
  readonly cutShort: boolean;
}

interface Gathering {
  readonly disturbed: Map<number, Set<string>>;
  readonly grown: number[];
}

/** New growth is what says that a plant has recovered. Common practice, no source. */
export function isGrowth(event: string): boolean {
  const key = nameKey(event);
  return key === "new leaf" || key === "new root";
}

function recoveriesOf({ disturbed, grown }: Gathering, asOfDay: number): Recovery[] {
  const days = [...disturbed.keys()].sort((a, b) => a - b);
  grown.sort((a, b) => a - b);
  let at = 0;
  return days.map((day, index) => {
    const next = days[index + 1];
    const end = next ?? asOfDay;
    while (at < grown.length && (grown[at] as number) <= day) at += 1;
    const growth = grown[at];
    const recoveredDay = growth !== undefined && (next === undefined || growth <= next) ? growth : null;
    return {
      day,
      event: [...(disturbed.get(day) as Set<string>)].sort().join(", "),
      recoveredDay,
      days: (recoveredDay ?? end) - day,
      cutShort: recoveredDay === null && next !== undefined,
    };
  });
}

/**
 * What followed each disturbance up to `asOfDay`, by nameKey of the plant, oldest first; rows may stand in any order. A new
 * leaf or root on the day of a disturbance counts for the one before it: it was there already. Rows taken back
 * are left out before.
 */
export function recoveries(
  rows: Iterable<LogEntry>,
  rule: EventRule,
  asOfDay: number,
): ReadonlyMap<string, readonly Recovery[]> {
  const byPlant = new Map<string, Gathering>();
  for (const { day, plant, event } of rows) {
    if (!Number.isSafeInteger(day) || day > asOfDay) continue;
    const kind = rule.find(event);
    if (kind === null || !(kind.disturbsRoots || isGrowth(kind.event))) continue;
    const key = nameKey(plant);
    if (key === "") continue;
    let that = byPlant.get(key);
    if (that === undefined) {
      that = { disturbed: new Map(), grown: [] };
      byPlant.set(key, that);
    }
    if (!kind.disturbsRoots) that.grown.push(day);
    else that.disturbed.set(day, (that.disturbed.get(day) ?? new Set<string>()).add(kind.event));
  }
  const found = new Map<string, readonly Recovery[]>();
  for (const [key, that] of byPlant) if (that.disturbed.size > 0) found.set(key, recoveriesOf(that, asOfDay));
  return found;
}
