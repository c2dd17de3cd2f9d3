/** What is being typed about a purchase, and the row it makes. */

import type { Loaded, RequestFor } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { SUPPLY_UNITS } from "../src/core/supply.ts";
import { isRecord, textOf } from "./drafts.ts";
import type { NewId } from "./ids.ts";
import type { Purchase } from "./stock.ts";
import { type Typed, typedDay, typedNumber } from "./typed.ts";

export interface StockDraft {
  /** Of the row, made once and kept until it is in the sheet. */
  readonly id: string;
  /** Name of the feed as it stands on the shelf. */
  readonly feed: string;
  /** It came onto the shelf, or left it by another way than a batch. */
  readonly way: "came" | "left";
  readonly amount: string;
  /** "" for the unit of the feed's latest purchase. */
  readonly unit: "" | (typeof SUPPLY_UNITS)[number];
  readonly price: string;
  readonly lot: string;
  /** ISO day, "" for today. */
  readonly day: string;
  readonly note: string;
}

export function freshStock(newId: NewId): StockDraft {
  return {
    ...{ id: newId(), feed: "", way: "came", amount: "", unit: "" },
    ...{ price: "", lot: "", day: "", note: "" },
  };
}

export function readStock(kept: unknown): StockDraft | null {
  if (!isRecord(kept) || !/^[a-z0-9-]{8,64}$/.test(textOf(kept, "id"))) return null;
  return {
    id: textOf(kept, "id"),
    feed: textOf(kept, "feed"),
    way: kept.way === "left" ? "left" : "came",
    amount: textOf(kept, "amount"),
    unit: SUPPLY_UNITS.find((unit) => unit === kept.unit) ?? "",
    price: textOf(kept, "price"),
    lot: textOf(kept, "lot"),
    day: textOf(kept, "day"),
    note: textOf(kept, "note"),
  };
}

/** The unit that is chosen, else that of the feed's latest purchase; "" where there is neither. */
export function unitOf({ feed, unit }: StockDraft, purchases: readonly Purchase[]): StockDraft["unit"] {
  if (unit !== "") return unit;
  const mine = purchases.filter((one) => nameKey(one.feed) === nameKey(feed));
  return [...mine].sort((a, b) => (a.day ?? 0) - (b.day ?? 0))[mine.length - 1]?.unit ?? "";
}

export interface StockNumbers {
  readonly amount: Typed;
  readonly price: Typed;
}

export function stockNumbers(draft: StockDraft, unit: StockDraft["unit"]): StockNumbers {
  const inUnit = unit === "" ? {} : { unit };
  return {
    amount: typedNumber(draft.amount, { what: "The amount", ...inUnit, min: 0, max: 1_000_000 }),
    price: typedNumber(draft.price, { what: "The price", min: 0, max: 1_000_000 }),
  };
}

/** The request for what is typed now, or the sentence that says what is missing. */
export function makePurchase(
  draft: StockDraft,
  { who, today, purchases }: { who: string; today: Loaded["today"]; purchases: readonly Purchase[] },
): RequestFor<"log purchase"> | string {
  if (who === "") return "Type your name first, so that the log can say who did this.";
  if (draft.feed === "") return "Choose a feed.";
  const unit = unitOf(draft, purchases);
  const { amount, price } = stockNumbers(draft, unit);
  const came = draft.way === "came";
  const problem = amount.problem ?? (came ? price.problem : null);
  if (problem !== null) return problem;
  if (amount.value === null || amount.value === 0) return "Type how much it was.";
  if (unit === "") return "Choose the unit of the amount.";
  const day = typedDay(draft.day, today);
  if (day === null) return "Choose the date.";
  return {
    ask: "log purchase",
    who,
    entry: {
      id: draft.id,
      day,
      feed: draft.feed,
      amount: came ? amount.value : -amount.value,
      unit,
      price: came ? price.value : null,
      lot: came ? draft.lot.trim() : "",
      note: draft.note.trim(),
    },
  };
}
