/** The custom function on stock: what is left of each feed on the shelf. */

import { nameKey } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { baseOf, type Entries, entriesByFeed, onHandOf, SUPPLY_UNITS } from "../core/supply.ts";
import { unreadFor } from "../core/supply-log.ts";
import type { FunctionRecord } from "./record.ts";
import { readSupplied } from "./supply-tables.ts";

export const FEED_LEFT_RECORDS = [
  {
    name: "FEED_LEFT",
    group: "FEED",
    args: [
      { name: "feeds", kind: "key" },
      { name: "purchases", kind: "table", columns: ["Date", "Feed", "Amount", "Unit"] },
      { name: "batches", kind: "table", columns: ["Date", "Doses"] },
      { name: "asOf", kind: "day", optional: true },
      { name: "unit", kind: "choice", choices: SUPPLY_UNITS, optional: true },
      { name: "density", kind: "number", unit: "g/mL", min: 0.3, max: 3, optional: true },
      { name: "heading", kind: "heading", optional: true },
    ],
    compute: {
      kind: "rows",
      prepare: (fixed) => {
        const { bought, use, unreadable } = readSupplied(fixed.table("purchases"), fixed.table("batches"));
        const known = bought.map(({ feed }) => feed);
        const byDay = new Map<number | null, ReadonlyMap<string, Entries>>();
        return (row) => {
          const feed = row.text("feeds");
          const today = row.optionalDay("asOf");
          const byFeed = byDay.get(today) ?? entriesByFeed({ bought, used: use.used, today });
          byDay.set(today, byFeed);
          const entries = byFeed.get(nameKey(feed));
          const bare = entries === undefined || entries.bought.length === 0;
          const why = unreadable.get(nameKey(feed)) ?? (bare ? null : unreadFor(feed, use.unread, known));
          if (why !== null) throw new BadInput("log-unreadable", why);
          if (bare) return null;
          const wanted = row.optionalChoice("unit", SUPPLY_UNITS);
          const base = wanted === null ? null : baseOf(wanted);
          const densityGPerMl = row.optionalNumber("density");
          const { onHand } = onHandOf(feed, entries, { densityGPerMl, unit: base?.unit });
          return onHand / (base?.factor ?? 1);
        };
      },
    },
  },
] as const satisfies readonly FunctionRecord[];
