/** The newest batches of the Batch log. */

import { nameKey } from "../core/cell.ts";
import { ELEMENTS } from "../core/elements.ts";
import { dosesUsed } from "../core/supply-log.ts";
import { BATCH_LOG } from "../sheet/log-tabs.ts";
import { readRows, type SheetRow } from "../sheet/rows.ts";
import type { BatchRow, Loaded } from "./contract.ts";
import { type Loading, openTab } from "./loading.ts";
import { takesBackOnly, voidPlaces } from "./standing.ts";

const BATCHES_SHOWN = 200;

export const NO_BATCHES: Pick<Loaded, "batches" | "usedBefore"> = { batches: [], usedBefore: { used: [], unread: [] } };

const isPlanned = ({ fields }: SheetRow): boolean => nameKey(String(fields.State ?? "")) === "planned";

/** Feeds and doses of batches that are not sent, so that what is left of a feed counts the whole log. */
function usedBefore(rows: readonly SheetRow[]): Loaded["usedBefore"] {
  const mixed = rows.filter((row) => !isPlanned(row));
  const { used, unread } = dosesUsed(
    mixed.map(({ fields, where }) => ({ day: null, doses: String(fields.Doses ?? ""), where })),
  );
  const sums = new Map<string, Loaded["usedBefore"]["used"][number]>();
  for (const { feed, amount, unit } of used) {
    const key = `${nameKey(feed)} ${unit}`;
    sums.set(key, { feed, unit, amount: (sums.get(key)?.amount ?? 0) + amount });
  }
  return { used: [...sums.values()], unread: unread.map(({ text, sentence }) => ({ text, sentence })) };
}

/** The newest first; of one day, the one further down. What older ones used comes summed up. */
export function readBatches(loading: Loading): Pick<Loaded, "batches" | "usedBefore"> {
  const open = openTab(loading, BATCH_LOG, ["Id", "Date", "Litres", "Doses", "Measured EC", "Measured pH"]);
  if (!open) return NO_BATCHES;
  const gone = voidPlaces(open.values, open.columns);
  const rows = readRows(open.values, BATCH_LOG, open.columns, loading.book.workbook.dayOf).filter(
    ({ row, fields }) => !gone.has(row - 1) && !takesBackOnly(BATCH_LOG, fields),
  );
  const dayOf = ({ fields, problems }: SheetRow) =>
    problems.some(({ heading }) => heading === "Date") ? "" : String(fields.Date ?? "");
  const sorted = [...rows].sort((a, b) => (dayOf(a) === dayOf(b) ? b.row - a.row : dayOf(a) < dayOf(b) ? 1 : -1));
  const newest = sorted.slice(0, BATCHES_SHOWN);
  for (const { problems } of newest) for (const { sentence } of problems) loading.say.add("Batch log", sentence);
  const batches = newest.map((row): BatchRow => {
    const text = (heading: string) => String(row.fields[heading] ?? "");
    const number = (heading: string) => {
      const value = row.fields[heading];
      return typeof value === "number" ? value : null;
    };
    return {
      id: text("Id"),
      day: dayOf(row) === "" ? null : dayOf(row),
      who: text("Who"),
      litres: number("Litres"),
      water: text("Water"),
      target: text("Target"),
      doses: text("Doses"),
      reached: Object.fromEntries(
        ELEMENTS.flatMap((symbol) => (number(symbol) === null ? [] : [[symbol, number(symbol) ?? 0]])),
      ),
      predictedEcMsCm: number("Predicted EC"),
      acid: text("Acid"),
      measuredEcMsCm: number("Measured EC"),
      measuredPH: number("Measured pH"),
      verdict: text("Verdict"),
      note: text("Note"),
      state: isPlanned(row) ? "planned" : "mixed",
      corrects: text("Corrects"),
    };
  });
  return { batches, usedBefore: usedBefore(sorted.slice(BATCHES_SHOWN)) };
}
