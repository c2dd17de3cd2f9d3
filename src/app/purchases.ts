/** Writes what came onto the shelf, or left it by another way than a batch, into Purchases. */

import { BadInput } from "../core/errors.ts";
import { checkNumber } from "../core/reading.ts";
import { appendRecords, type SheetRecord } from "../sheet/append.ts";
import { openBook } from "../sheet/find.ts";
import { PURCHASES } from "../sheet/log-tabs.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import type { PurchaseEntry, ReplyFor, RequestFor } from "./contract.ts";
import { dayCell, textCell } from "./logging.ts";
import type { Me } from "./me.ts";

/** A household's shelf, in whatever unit; more is a slip of the pen. */
const MOST = 1_000_000;

function purchaseRecord(entry: PurchaseEntry, who: string): SheetRecord {
  const { feed, amount, price } = entry;
  if (amount === 0) throw new BadInput("no-amount", `Say how much of ${feed} it was.`);
  return {
    Id: entry.id,
    Date: dayCell(entry.day),
    Feed: feed,
    Amount: checkNumber(amount, { what: `The amount of ${feed}`, min: -MOST, max: MOST }),
    Unit: entry.unit,
    Price: price === null ? null : checkNumber(price, { what: `The price of ${feed}`, min: 0, max: MOST }),
    Lot: textCell(entry.lot),
    Who: textCell(who),
    Note: textCell(entry.note),
    Corrects: textCell(entry.corrects ?? ""),
  };
}

/** One row, once for its Id. A name in the request goes before the one kept for this person. */
export function logPurchase(
  workbook: WorkbookPort,
  me: Me,
  { who, entry }: RequestFor<"log purchase">,
): ReplyFor<"log purchase"> {
  const record = purchaseRecord(entry, who === "" ? me.name : who);
  const { written, already, differing } = workbook.locked(() =>
    appendRecords(openBook(workbook, [PURCHASES.name]), PURCHASES, [record]),
  );
  return { written, already, differing: [...differing] };
}
