/** The newest batches of the Batch log. */

import { nameKey } from "../core/cell.ts";
import { ELEMENTS } from "../core/elements.ts";
import { BATCH_LOG } from "../sheet/log-tabs.ts";
import { readRows, type SheetRow } from "../sheet/rows.ts";
import type { BatchRow } from "./contract.ts";
import { type Loading, openTab } from "./loading.ts";
import { takesBackOnly, voidPlaces } from "./standing.ts";

const BATCHES_SHOWN = 200;

/** The newest first; of one day, the one further down. */
export function readBatches(loading: Loading): BatchRow[] {
  const open = openTab(loading, BATCH_LOG, ["Id", "Date", "Litres", "Doses", "Measured EC", "Measured pH"]);
  if (!open) return [];
  const gone = voidPlaces(open.values, open.columns);
  const rows = readRows(open.values, BATCH_LOG, open.columns, loading.book.workbook.dayOf).filter(
    ({ row, fields }) => !gone.has(row - 1) && !takesBackOnly(BATCH_LOG, fields),
  );
  const dayOf = ({ fields, problems }: SheetRow) =>
    problems.some(({ heading }) => heading === "Date") ? "" : String(fields.Date ?? "");
  const newest = [...rows]
    .sort((a, b) => (dayOf(a) === dayOf(b) ? b.row - a.row : dayOf(a) < dayOf(b) ? 1 : -1))
    .slice(0, BATCHES_SHOWN);
  for (const { problems } of newest) for (const { sentence } of problems) loading.say.add("Batch log", sentence);
  return newest.map((row) => {
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
      state: nameKey(text("State")) === "planned" ? "planned" : "mixed",
      corrects: text("Corrects"),
    };
  });
}
