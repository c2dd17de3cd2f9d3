/** What is said when somebody else logged the same of a plant that day. */

import type { Loaded, ReplyFor } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { sayList } from "../src/core/saying.ts";
import { agoWords, timeOfId } from "./ids.ts";
import { count, showDay } from "./show.ts";

export type Double = NonNullable<ReplyFor<"log care">["doubles"]>[number];

const NAMED = 4;

export interface Now {
  /** ISO day of the sheet. */
  readonly today: string;
  /** Unix time of this browser, ms. */
  readonly nowMs: number;
}

/** The longest ago that is known of all of them; null when one of them does not say. */
function agoOf(rows: readonly Double[], { today, nowMs }: Now): string | null {
  if (rows.some(({ day, id }) => day !== today || agoWords(id, nowMs) === null)) return null;
  const first = [...rows].sort((a, b) => (timeOfId(a.id) ?? 0) - (timeOfId(b.id) ?? 0))[0];
  return first === undefined ? null : agoWords(first.id, nowMs);
}

/** "Ben logged Top up for Hoya and Fern an hour ago." One sentence for each who did. */
export function doublesWords(doubles: readonly Double[], now: Now): string {
  const byWho = new Map<string, Double[]>();
  for (const double of doubles) byWho.set(double.who, [...(byWho.get(double.who) ?? []), double]);
  return [...byWho]
    .map(([who, rows]) => {
      const [first] = rows;
      const names = rows.slice(0, NAMED).map(({ plant }) => plant);
      const more = rows.length > NAMED ? [count(rows.length - NAMED, "more plant")] : [];
      const day = first?.day === now.today ? "today already" : `on ${showDay(first?.day ?? "")} already`;
      const when = agoOf(rows, now) ?? day;
      return `${who === "" ? "Somebody" : who} logged ${first?.event ?? ""} for ${sayList([...names, ...more], "and")} ${when}.`;
    })
    .join(" ");
}

/** By nameKey of the plant: who did this to it that day, as the loaded log has it; "" where nobody is named. */
export function doneThatDay({ care }: Pick<Loaded, "care">, event: string, day: string): ReadonlyMap<string, string> {
  const wanted = nameKey(event);
  const done = new Map<string, string>();
  for (const row of care.rows) {
    if (row.day < day) break;
    if (row.day === day && nameKey(row.event) === wanted) done.set(nameKey(row.plant), row.who);
  }
  return done;
}
