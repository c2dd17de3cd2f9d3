/** What is said when somebody else logged the same of a plant that day. */

import type { Loaded, ReplyFor } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { sayList } from "../src/core/saying.ts";
import { count, showDay } from "./show.ts";

export type Double = NonNullable<ReplyFor<"log care">["doubles"]>[number];

const NAMED = 4;

/** "Ben logged Top up for Hoya and Fern today already." One sentence for each who did. */
export function doublesWords(doubles: readonly Double[], today: string): string {
  const byWho = new Map<string, Double[]>();
  for (const double of doubles) byWho.set(double.who, [...(byWho.get(double.who) ?? []), double]);
  return [...byWho]
    .map(([who, rows]) => {
      const [first] = rows;
      const names = rows.slice(0, NAMED).map(({ plant }) => plant);
      const more = rows.length > NAMED ? [count(rows.length - NAMED, "more plant")] : [];
      const when = first?.day === today ? "today" : `on ${showDay(first?.day ?? "")}`;
      return `${who === "" ? "Somebody" : who} logged ${first?.event ?? ""} for ${sayList([...names, ...more], "and")} ${when} already.`;
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
