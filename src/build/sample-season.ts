/** The household's year: light, days on which somebody goes round the pots, and who it is. Invented. */

import { civilFromDay } from "../core/calendar.ts";
import { day } from "./sample-cell.ts";
import { type Person, ROOM_KEEPERS } from "./sample-household.ts";
import type { Random } from "./sample-random.ts";

/** 1 at midsummer, 0 at midwinter, northern half of the earth; a smooth curve of whole-number arithmetic only. */
export function summer(on: number): number {
  const fromMidwinter = on - day(`${civilFromDay(on).year - 1}-12-21`);
  const rising = 1 - Math.abs(1 - (2 * (fromMidwinter % 365)) / 365);
  return rising * rising * (3 - 2 * rising);
}

/** Wednesdays and Sundays. Day 0, 1970-01-01, was a Thursday. */
export function isRoundDay(on: number): boolean {
  const weekday = (((on + 4) % 7) + 7) % 7;
  return weekday === 0 || weekday === 3;
}

/** While the others are away in August, Odile goes round all rooms. */
export function keeperOn(on: number, place: string, random: Random): Person {
  const away =
    (on >= day("2025-08-09") && on <= day("2025-08-23")) || (on >= day("2026-08-08") && on <= day("2026-08-22"));
  if (away) return "Odile";
  return random.pick(ROOM_KEEPERS[place] ?? ["Ines"]);
}
