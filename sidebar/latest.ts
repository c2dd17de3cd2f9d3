/** The latest entries of the care log, those of one press together. */

import type { CareRow } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { count, showDay, showDose } from "./show.ts";

/** Rows of one day, event and person that stand side by side in the log. */
export interface Deed {
  /** The Id of its newest row, or what it says when that has none. */
  readonly key: string;
  readonly rows: readonly CareRow[];
}

const MOST = 6;

/** `rows` stand newest first. */
export function latestDeeds(rows: readonly CareRow[], most = MOST): readonly Deed[] {
  const deeds: { key: string; rows: CareRow[] }[] = [];
  for (const row of rows) {
    const last = deeds[deeds.length - 1];
    const [before] = last?.rows ?? [];
    if (last !== undefined && before !== undefined && same(before, row)) last.rows.push(row);
    else if (deeds.length === most) break;
    else deeds.push({ key: row.id || `${row.day} ${row.plant} ${row.event}`, rows: [row] });
  }
  return deeds;
}

function same(one: CareRow, other: CareRow): boolean {
  return (
    one.day === other.day &&
    nameKey(one.event) === nameKey(other.event) &&
    nameKey(one.who) === nameKey(other.who) &&
    nameKey(one.reason) === nameKey(other.reason)
  );
}

/** "Top up for 12 plants", "Top up for Hoya, 250 mL". */
export function deedWords(rows: readonly CareRow[]): string {
  const [first] = rows;
  if (first === undefined) return "";
  if (rows.length > 1) return `${first.event} for ${count(rows.length, "plant")}`;
  const amount = first.amountMl === null ? "" : `, ${showDose(first.amountMl, "mL")}`;
  return `${first.event} for ${first.plant}${amount}`;
}

/** "today, by Ben", "on 3 Mar 2026". */
export function deedWhen({ day, who }: CareRow, today: string): string {
  const when = day === today ? "today" : `on ${showDay(day)}`;
  return who === "" ? when : `${when}, by ${who}`;
}

/** Only who logged a row may take it back, and only a row with an Id can be pointed at. */
export function mayTakeBack({ id, who }: CareRow, me: string): boolean {
  return /^[a-z0-9-]{8,64}$/.test(id) && nameKey(who) !== "" && nameKey(who) === nameKey(me);
}
