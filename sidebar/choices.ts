/** Waters and targets as one chooses them. */

import type { FieldRow } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import type { Amounts } from "../src/core/elements.ts";
import { isBadInput } from "../src/core/errors.ts";
import { readTarget, readWater } from "../src/core/waters.ts";

export interface Choice {
  /** Stays the same when the tab is sorted. */
  readonly key: string;
  readonly name: string;
  /** mg/L. */
  readonly amounts: Amounts;
}

/** Water that brings nothing: always there, for those who mix with distilled or reverse-osmosis water. */
export const PURE_WATER: Choice = { key: "(pure water)", name: "Pure water", amounts: {} };

/** The waters of the sheet, then pure water. */
export function waterChoices(rows: readonly FieldRow[]): readonly Choice[] {
  return [...choices(rows, "Water", (row, where) => readWater(row.fields, where).amounts), PURE_WATER];
}

export function targetChoices(rows: readonly FieldRow[]): readonly Choice[] {
  return choices(rows, "Target", (row, where) => readTarget(row.fields, where).wanted);
}

export function chosen(choices: readonly Choice[], key: string): Choice | null {
  return choices.find((choice) => choice.key === key) ?? null;
}

/** Each name once; the load tells of a row that cannot be used, and sends none. */
function choices(
  rows: readonly FieldRow[],
  column: "Water" | "Target",
  read: (row: FieldRow, where: string) => Amounts,
): readonly Choice[] {
  const byKey = new Map<string, Choice>();
  for (const row of rows) {
    const name = String(row.fields[column] ?? "").trim();
    const key = nameKey(name);
    if (key === "" || byKey.has(key)) continue;
    try {
      byKey.set(key, { key, name, amounts: read(row, `row ${row.row} of ${column}s`) });
    } catch (error) {
      if (!isBadInput(error)) throw error;
    }
  }
  return [...byKey.values()];
}

/** The water that a log names; null where it is no longer there. */
export function namedWater(choices: readonly Choice[], name: string): Choice | null {
  return chosen(choices, nameKey(name)) ?? (nameKey(name) === nameKey(PURE_WATER.name) ? PURE_WATER : null);
}
