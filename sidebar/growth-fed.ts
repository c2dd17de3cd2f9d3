/** What fed what: for one plant the solutions it got, with what was seen in between; for one solution the plants that got it. */

import type { BatchRow, CareRow, Loaded } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { sayNumber } from "../src/core/saying.ts";

/** A stretch of days in which a plant stood in the same solution. */
export interface Stretch {
  readonly solution: string;
  /** ISO days of the first and the last pour. */
  readonly from: string;
  readonly to: string;
  readonly pours: number;
  readonly amountMl: number;
  /** The batch of that name in the log, if there is one. */
  readonly batch: BatchRow | null;
  /** What was logged from its first pour until the next solution, besides pours. */
  readonly seen: readonly CareRow[];
}

/** The batch that a care row names: by its Id, or by its target when it is the newest one mixed by then. */
export function batchOf(row: Pick<CareRow, "solution" | "day">, batches: readonly BatchRow[]): BatchRow | null {
  const name = nameKey(row.solution);
  if (name === "") return null;
  const byId = batches.find(({ id }) => nameKey(id) === name);
  if (byId !== undefined) return byId;
  return (
    batches.find(
      ({ target, day, state }) => state === "mixed" && day !== null && day <= row.day && nameKey(target) === name,
    ) ?? null
  );
}

const isPour = ({ solution, amountMl, event }: Pick<CareRow, "solution" | "amountMl" | "event">): boolean =>
  solution.trim() !== "" &&
  (amountMl !== null || ["top up", "solution change", "flush in place"].includes(nameKey(event)));

/** Newest first, from the care log as it was sent. */
export function stretchesOf(plant: string, { care, batches }: Pick<Loaded, "care" | "batches">): Stretch[] {
  const own = care.rows.filter((row) => nameKey(row.plant) === nameKey(plant)).reverse();
  const stretches: Stretch[] = [];
  for (const row of own) {
    const last = stretches[stretches.length - 1];
    if (!isPour(row)) {
      if (last !== undefined) stretches[stretches.length - 1] = { ...last, seen: [...last.seen, row] };
      continue;
    }
    const batch = batchOf(row, batches);
    if (last !== undefined && nameKey(last.solution) === nameKey(row.solution)) {
      stretches[stretches.length - 1] = {
        ...last,
        to: row.day,
        pours: last.pours + 1,
        amountMl: last.amountMl + (row.amountMl ?? 0),
      };
    } else {
      const { solution, day } = row;
      stretches.push({ solution, from: day, to: day, pours: 1, amountMl: row.amountMl ?? 0, batch, seen: [] });
    }
  }
  return stretches.reverse();
}

/** "Foliage, half strength; EC 1.1 mS/cm, pH 5.8": what a batch was. */
export function sayBatch({ target, measuredEcMsCm, predictedEcMsCm, measuredPH }: BatchRow): string {
  const ec = measuredEcMsCm ?? predictedEcMsCm;
  const numbers = [
    ...(ec === null ? [] : [`EC ${sayNumber(ec)} mS/cm`]),
    ...(measuredPH === null ? [] : [`pH ${sayNumber(measuredPH)}`]),
  ];
  return [target === "" ? "no target" : target, ...(numbers.length > 0 ? [numbers.join(", ")] : [])].join("; ");
}

/** "2 New leaf, 1 Note": what was seen, most often first. */
export function saySeen(seen: readonly CareRow[]): string {
  const counts = new Map<string, { readonly event: string; count: number }>();
  for (const { event } of seen) {
    const known = counts.get(nameKey(event));
    if (known === undefined) counts.set(nameKey(event), { event, count: 1 });
    else known.count += 1;
  }
  return [...counts.values()]
    .sort((a, b) => b.count - a.count)
    .map(({ event, count }) => `${count} × ${event}`)
    .join(", ");
}

export interface Fed {
  readonly plant: string;
  readonly from: string;
  readonly to: string;
  readonly pours: number;
}

/** The plants that got a solution, those fed last first. */
export function fedBy(solution: string, { care }: Pick<Loaded, "care">): Fed[] {
  const fed = new Map<string, Fed>();
  // Newest first: each older row moves the first day back.
  for (const { plant, day, ...row } of care.rows) {
    if (!isPour(row) || nameKey(row.solution) !== nameKey(solution)) continue;
    const known = fed.get(nameKey(plant));
    fed.set(nameKey(plant), { plant, from: day, to: known?.to ?? day, pours: 1 + (known?.pours ?? 0) });
  }
  return [...fed.values()].sort((a, b) => (a.to < b.to ? 1 : a.to > b.to ? -1 : 0));
}

/** Solutions named in the care log, those poured last first. */
export function solutionsOf({ care }: Pick<Loaded, "care">): string[] {
  const names = new Map<string, string>();
  for (const row of care.rows) {
    const key = nameKey(row.solution);
    if (isPour(row) && !names.has(key)) names.set(key, row.solution.trim());
  }
  return [...names.values()];
}
