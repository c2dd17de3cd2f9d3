/** The rows of the Care log that count, as far as a new entry needs to know them: one pass, however long the log. */

import { nameKey, readCell } from "../core/cell.ts";
import { isBadInput } from "../core/errors.ts";
import { TAKEN_BACK } from "../core/events.ts";
import { readDay } from "../core/reading.ts";
import type { Log } from "../sheet/append.ts";
import { voidPlaces } from "./standing.ts";

export interface StandingCare {
  readonly id: string;
  /** Day number. */
  readonly day: number;
  readonly plant: string;
  readonly event: string;
  readonly who: string;
}

/**
 * Rows of these plants, except those in `gone` (places in the log's values); one whose date cannot be read is passed
 * over, the load tells of it.
 */
export function standingCare(
  log: Log,
  plants: Iterable<string>,
  gone: ReadonlySet<number> = voidPlaces(log.values, log.columns),
): StandingCare[] {
  const { values, columns, book } = log;
  const wanted = new Set([...plants].map(nameKey));
  const isWanted = new Map<unknown, boolean>();
  const at = (heading: string) => (columns.at.get(heading) ?? 0) - 1;
  const [idAt, dateAt, plantAt, eventAt, whoAt] = [at("Id"), at("Date"), at("Plant"), at("Event"), at("Who")];
  const text = (raw: unknown): string => (raw === undefined || raw === null ? "" : String(raw).trim());
  const rows: StandingCare[] = [];
  for (let index = 1; index < values.length; index++) {
    const row = values[index] ?? [];
    const raw = row[plantAt];
    let here = isWanted.get(raw);
    if (here === undefined) {
      here = wanted.has(nameKey(text(raw)));
      isWanted.set(raw, here);
    }
    if (!here || gone.has(index)) continue;
    const event = text(row[eventAt]);
    const day = dayOf(row[dateAt], book.workbook.dayOf);
    if (day === null || event === "" || nameKey(event) === nameKey(TAKEN_BACK)) continue;
    rows.push({ id: text(row[idAt]), day, plant: text(raw), event, who: text(row[whoAt]) });
  }
  return rows;
}

/** The same for rows that say the same of the same plant and day, however it is spelled. */
export function sameDeed({
  plant,
  event,
  day,
}: Pick<StandingCare, "plant" | "event"> & { day: number | null }): string {
  return [nameKey(plant), nameKey(event), day].join("\n");
}

function dayOf(raw: unknown, host: (value: unknown) => number | null): number | null {
  const day = host(raw);
  if (day !== null) return day;
  try {
    return readDay(readCell(raw, host), "Date");
  } catch (error) {
    if (!isBadInput(error)) throw error;
    return null;
  }
}
