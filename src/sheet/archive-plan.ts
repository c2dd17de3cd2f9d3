/** Which rows of the Care log are old enough to move to the archive, and which stay so that no day count changes. */

import { civilFromDay, dayFromCivil } from "../core/calendar.ts";
import { nameKey } from "../core/cell.ts";
import type { Log } from "./append.ts";
import { isBlank } from "./stored.ts";

export interface ArchivePlan {
  /** Places in the log's values (0 is the heading row), rising. */
  readonly places: readonly number[];
  /** Rows in all. */
  readonly rows: number;
  /** Day number: rows before it are old. */
  readonly before: number;
  /** Old rows without an Id: typed by hand, they stay. */
  readonly withoutId: number;
  /** True when there are more than go at a time. */
  readonly more: boolean;
}

/** What fits well into six minutes at a slow sheet's pace. */
export const MOST_ROWS = 20_000;

/**
 * Old is what was done before the last calendar year. Of every plant and event the newest row stays, so that days at
 * rest and days due count on as before; and rows that correct or take back one another go together or not at all.
 */
export function planArchive({ values, columns, book }: Log, today: number, mostRows = MOST_ROWS): ArchivePlan {
  const { dayOf } = book.workbook;
  const before = dayFromCivil(civilFromDay(today).year - 1, 1, 1);
  const cell = (place: number, heading: string): unknown => values[place]?.[(columns.at.get(heading) ?? 0) - 1] ?? "";
  const text = (place: number, heading: string) => String(cell(place, heading)).trim();
  const newest = new Map<string, { place: number; day: number }>();
  const days = values.map((_, place) => dayOf(cell(place, "Date")));
  days.forEach((day, place) => {
    if (day === null) return;
    const key = `${nameKey(text(place, "Plant"))}\n${nameKey(text(place, "Event"))}`;
    const known = newest.get(key);
    if (!known || day >= known.day) newest.set(key, { place, day });
  });
  const stays = new Set([...newest.values()].map(({ place }) => place));
  const placeOf = new Map<string, number>();
  let rows = 0;
  let withoutId = 0;
  values.forEach((row, place) => {
    if (place === 0 || row.every(isBlank)) return;
    rows++;
    const id = text(place, "Id");
    const isOld = (days[place] ?? before) < before;
    if (id === "" && isOld) withoutId++;
    if (!isOld) stays.add(place);
    if (id !== "") placeOf.set(id, place);
  });
  // What stays keeps what it points at and what points at it, to the end of the chain.
  const linked = new Map<number, number[]>();
  const link = (a: number, b: number) => linked.set(a, [...(linked.get(a) ?? []), b]);
  for (const place of placeOf.values()) {
    const other = placeOf.get(text(place, "Corrects"));
    if (other === undefined) continue;
    link(place, other);
    link(other, place);
  }
  const waiting = [...stays];
  for (let place = waiting.pop(); place !== undefined; place = waiting.pop()) {
    for (const other of linked.get(place) ?? []) {
      if (stays.has(other)) continue;
      stays.add(other);
      waiting.push(other);
    }
  }
  const places = [...placeOf.values()].filter((place) => !stays.has(place)).sort((a, b) => a - b);
  const chosen = places.length <= mostRows ? places : wholeChains(places, linked, mostRows);
  return { places: chosen, rows, before, withoutId, more: chosen.length < places.length };
}

/** At most about `most` rows from the top, with all that hangs on them. */
function wholeChains(
  places: readonly number[],
  linked: ReadonlyMap<number, readonly number[]>,
  most: number,
): number[] {
  const chosen = new Set<number>();
  for (const place of places) {
    if (chosen.size >= most) break;
    const waiting = [place];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      if (chosen.has(next)) continue;
      chosen.add(next);
      waiting.push(...(linked.get(next) ?? []));
    }
  }
  return [...chosen].sort((a, b) => a - b);
}
