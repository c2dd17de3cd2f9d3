/** Waters and targets as one chooses them: each with its words, or with the reason why it cannot be used. */

import type { FieldRow } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import type { Amounts } from "../src/core/elements.ts";
import { isBadInput } from "../src/core/errors.ts";
import { readTarget, readWater } from "../src/core/waters.ts";
import { showDay } from "./show.ts";

export interface Choice {
  /** Stays the same when the tab is sorted. */
  readonly key: string;
  /** As it stands in the list. */
  readonly words: string;
  /** As it is written into the log. */
  readonly name: string;
  /** mg/L; null when the row cannot be used. */
  readonly amounts: Amounts | null;
  readonly reason: string | null;
}

/** Water that brings nothing: always there, for those who mix with distilled or reverse-osmosis water. */
export const PURE_WATER: Choice = {
  key: "pure water",
  words: "Pure water (brings nothing)",
  name: "Pure water",
  amounts: {},
  reason: null,
};

/** The waters of the sheet, then pure water. A name that stands twice is told apart by its date, then its row. */
export function waterChoices(rows: readonly FieldRow[]): readonly Choice[] {
  return [...choices(rows, "Water", (row, where) => readWater(row.fields, where).amounts), PURE_WATER];
}

export function targetChoices(rows: readonly FieldRow[]): readonly Choice[] {
  return choices(rows, "Target", (row, where) => readTarget(row.fields, where).wanted);
}

export function chosen(choices: readonly Choice[], key: string): Choice | null {
  return choices.find((choice) => choice.key === key && choice.amounts !== null) ?? null;
}

function choices(
  rows: readonly FieldRow[],
  column: "Water" | "Target",
  read: (row: FieldRow, where: string) => Amounts,
): readonly Choice[] {
  const named = rows
    .map((row) => ({ row, name: String(row.fields[column] ?? "").trim(), date: dateOf(row) }))
    .filter(({ name }) => name !== "");
  const often = (words: string): boolean =>
    named.filter(({ name, date }) => nameKey(name) === nameKey(words) || nameKey(dated(name, date)) === nameKey(words))
      .length > 1;
  return named.map(({ row, name, date }) => {
    const words = !often(name)
      ? name
      : often(dated(name, date))
        ? `${dated(name, date)}, row ${row.row}`
        : dated(name, date);
    const where = `row ${row.row} of ${column}s`;
    try {
      return { key: nameKey(words), words, name, amounts: read(row, where), reason: null };
    } catch (error) {
      if (!isBadInput(error)) throw error;
      return { key: nameKey(words), words, name, amounts: null, reason: error.message };
    }
  });
}

function dateOf(row: FieldRow): string {
  const date = row.fields.Date;
  return typeof date === "string" ? date : "";
}

function dated(name: string, date: string): string {
  return date === "" ? name : `${name}, ${showDay(date)}`;
}
