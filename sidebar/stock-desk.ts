/** The desk of "Keep stock": the draft of a purchase, the button that logs it, and the one that takes it back. */

import type { FieldRow, PurchaseEntry } from "../src/app/contract.ts";
import { sayGiven } from "../src/core/saying.ts";
import { keptStore } from "./drafts.ts";
import type { RecordsStore } from "./panel-state.ts";
import { clearWhenEdited, createSender, FOUND_OTHERWISE, type Sender } from "./sending.ts";
import { readPurchases } from "./stock.ts";
import { freshStock, makePurchase, readStock, type StockDraft } from "./stock-draft.ts";
import type { Store } from "./store.ts";
import { createTakingBack, type TakingBack } from "./taking-back.ts";
import type { DeskLinks, PanelWorld } from "./world.ts";

export interface StockDesk {
  readonly draft: Store<StockDraft>;
  readonly sender: Sender;
  readonly takeBack: TakingBack;
  /** Has the column On hand of the Feeds tab count by itself. */
  readonly inSheet: Sender;
}

/** The tab with the new row, until the sheet is read again. */
function withRow(rows: readonly FieldRow[], entry: PurchaseEntry, who: string): FieldRow[] {
  if (rows.some(({ fields }) => fields.Id === entry.id)) return [...rows];
  const row = 1 + Math.max(1, ...rows.map((one) => one.row));
  const { id, day, feed, amount, unit, lot } = entry;
  return [...rows, { row, fields: { Id: id, Date: day, Feed: feed, Amount: amount, Unit: unit, Lot: lot, Who: who } }];
}

const done = ({ feed, amount, unit }: PurchaseEntry): string =>
  `Logged: ${sayGiven(Math.abs(amount))} ${unit} of ${feed} ${amount < 0 ? "left the shelf" : "bought"}.`;

export function createStockDesk(world: PanelWorld, links: DeskLinks & { readonly records: RecordsStore }): StockDesk {
  const { loaded, records } = links;
  const draft = keptStore<StockDraft>(world.storage, "stillroot.stock", {
    fresh: () => freshStock(world.newId),
    read: readStock,
  });
  const sender = createSender<"log purchase">(world.ask, world.after, {
    make: () => {
      const [all, rows] = [loaded.get(), records.get()];
      if (all === null || rows === null) return "The sheet has not been read yet.";
      const { purchases } = readPurchases(rows.purchases);
      return makePurchase(draft.get(), { who: links.who(), today: all.today, purchases });
    },
    settle: (reply, { entry, who }) => {
      records.change((now) => (now === null ? null : { ...now, purchases: withRow(now.purchases, entry, who) }));
      draft.change((now) => (now.id === entry.id ? { ...freshStock(world.newId), day: now.day } : now));
      links.keepName();
      return { sentence: reply.differing.length > 0 ? FOUND_OTHERWISE : done(entry), notes: reply.differing };
    },
  });
  clearWhenEdited(draft, sender);
  const takeBack = createTakingBack(world, links, {
    log: "Purchases",
    gone: (id) =>
      records.change((now) =>
        now === null ? null : { ...now, purchases: now.purchases.filter(({ fields }) => fields.Id !== id) },
      ),
  });
  const inSheet = createSender<"show on hand">(world.ask, world.after, {
    make: () => ({ ask: "show on hand" }),
    settle: ({ sentence }) => ({ sentence }),
  });
  return { draft, sender, takeBack, inSheet };
}
