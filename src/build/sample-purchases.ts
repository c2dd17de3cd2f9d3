/** What the sample household bought for its shelf in two years: invented, and enough at every batch for what its log used. */

import { day, type SampleCell } from "./sample-cell.ts";
import type { Person } from "./sample-household.ts";

type Row = Readonly<Record<string, SampleCell>>;

interface Came {
  readonly feed: string;
  readonly on: string;
  /** Below 0: it left the shelf by another way than a batch. */
  readonly amount: number;
  readonly unit: "g" | "kg" | "mL" | "L";
  readonly who: Person;
  readonly price?: number;
  readonly lot?: string;
  readonly note?: string;
  /** Position, from 1, of the row that this one replaces. */
  readonly corrects?: number;
}

/** The lot of the latest pack is the one that stands on the shelf. */
const CAME: readonly Came[] = [
  {
    feed: "Calcium nitrate tetrahydrate",
    on: "2024-11-16",
    amount: 250,
    unit: "g",
    who: "Tomas",
    price: 7.9,
    lot: "L-2416",
  },
  { feed: "Potassium nitrate", on: "2024-11-16", amount: 100, unit: "g", who: "Tomas", price: 5.2, lot: "L-2409" },
  {
    feed: "Monopotassium phosphate",
    on: "2024-11-16",
    amount: 100,
    unit: "g",
    who: "Tomas",
    price: 4.4,
    lot: "L-2433",
  },
  {
    feed: "Magnesium sulfate heptahydrate",
    on: "2024-11-16",
    amount: 0.5,
    unit: "kg",
    who: "Tomas",
    price: 4.6,
    lot: "L-2507",
  },
  { feed: "Potassium sulfate", on: "2024-11-16", amount: 100, unit: "g", who: "Tomas", price: 3.9, lot: "L-2440" },
  {
    feed: "Iron chelate, sodium Fe-EDTA",
    on: "2024-11-16",
    amount: 10,
    unit: "g",
    who: "Ines",
    price: 11,
    lot: "L-2525",
  },
  {
    feed: "Micronutrient stock",
    on: "2024-11-20",
    amount: 0.5,
    unit: "L",
    who: "Ines",
    price: 3.1,
    lot: "L-HOME-3",
    note: "Made at home",
  },
  {
    feed: "Fermented plant extract",
    on: "2025-03-22",
    amount: 500,
    unit: "mL",
    who: "Odile",
    price: 9.5,
    lot: "L-2419",
    note: "For the herbs",
  },
  {
    feed: "Green drops, old bottle",
    on: "2025-05-31",
    amount: 90,
    unit: "mL",
    who: "Wren",
    note: "Came with a plant, about full",
  },
  {
    feed: "Magnesium sulfate heptahydrate",
    on: "2025-09-13",
    amount: -40,
    unit: "g",
    who: "Wren",
    note: "Spilled on the floor",
  },
  { feed: "Potassium nitrate", on: "2026-01-31", amount: 1000, unit: "g", who: "Ines", price: 5.6, lot: "L-2518" },
  {
    feed: "Potassium nitrate",
    on: "2026-01-31",
    amount: 100,
    unit: "g",
    who: "Ines",
    price: 5.6,
    lot: "L-2518",
    note: "One nought less",
    corrects: 11,
  },
  {
    feed: "Monoammonium phosphate",
    on: "2026-05-09",
    amount: 50,
    unit: "g",
    who: "Tomas",
    price: 3.7,
    lot: "L-2512",
    note: "For the trial",
  },
  {
    feed: "Micronutrient stock",
    on: "2026-07-25",
    amount: 250,
    unit: "mL",
    who: "Ines",
    price: 1.6,
    lot: "L-HOME-4",
    note: "Made at home",
  },
  {
    feed: "Calcium nitrate tetrahydrate",
    on: "2026-10-17",
    amount: 250,
    unit: "g",
    who: "Tomas",
    price: 8.4,
    lot: "L-2601",
  },
];

const idOf = (at: number): string => `purchase-${String(at).padStart(4, "0")}`;

export const PURCHASE_ROWS: readonly Row[] = CAME.map(
  ({ feed, on, amount, unit, who, price, lot, note, corrects }, at): Row => ({
    Id: idOf(at + 1),
    Date: { day: day(on) },
    Feed: feed,
    Amount: amount,
    Unit: unit,
    Price: price ?? null,
    Lot: lot ?? null,
    Who: who,
    Note: note ?? null,
    Corrects: corrects === undefined ? null : idOf(corrects),
  }),
);
