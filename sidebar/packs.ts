/** What the packs of a feed cost, from the purchases on record. */

import type { FieldRow } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import type { Pack } from "../src/core/cost.ts";
import type { Feed } from "../src/core/feeds.ts";
import { SUPPLY_UNITS } from "../src/core/supply.ts";

const IN_BASE = { g: 1, kg: 1000, mL: 1, L: 1000 } as const;

/** The newest purchase of the feed that says amount, unit and price; null where there is none. */
export function packOf(feed: Feed, purchases: readonly FieldRow[]): Pack | null {
  let newest: { readonly day: string; readonly pack: Pack } | null = null;
  for (const { fields } of purchases) {
    if (nameKey(String(fields.Feed ?? "")) !== nameKey(feed.name)) continue;
    const unit = SUPPLY_UNITS.find((one) => nameKey(one) === nameKey(String(fields.Unit ?? "")));
    const { Amount: amount, Price: price } = fields;
    if (unit === undefined || typeof amount !== "number" || typeof price !== "number" || !(amount > 0)) continue;
    const bought = amount * IN_BASE[unit];
    const liquid = unit === "mL" || unit === "L";
    const density = feed.densityGPerMl;
    // Bought by weight and dosed by volume, or the other way about: the density tells.
    if (liquid !== feed.liquid && density === null) continue;
    const holds = liquid === feed.liquid ? bought : feed.liquid ? bought / (density ?? 1) : bought * (density ?? 1);
    const day = String(fields.Date ?? "");
    if (newest === null || day >= newest.day) newest = { day, pack: { price, holds } };
  }
  return newest?.pack ?? null;
}
