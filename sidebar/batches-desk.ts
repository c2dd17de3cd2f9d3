/** The desk of the batches in the log: a plan logged as mixed, a batch taken back, and how many are on show. */

import type { BatchRow, RequestFor } from "../src/app/contract.ts";
import { parseDoses } from "../src/core/dose-text.ts";
import { SYMBOLS } from "../src/core/elements.ts";
import { isBadInput } from "../src/core/errors.ts";
import { withBatch } from "./batch-desk.ts";
import { createSender, FOUND_OTHERWISE, type Sender } from "./sending.ts";
import { stableId } from "./stable-id.ts";
import { createStore, type Store } from "./store.ts";
import { createTakingBack, type TakingBack } from "./taking-back.ts";
import type { DeskLinks, PanelWorld } from "./world.ts";

export interface BatchesDesk {
  /** How many batches are on show. */
  readonly shown: Store<number>;
  readonly mixing: Sender;
  readonly takingBack: TakingBack;
  /** Logs a planned batch as mixed, today, by whoever presses. */
  mixed(row: BatchRow): void;
  takeBack(id: string): void;
}

/** The request for a plan that was mixed as it stands, or the sentence that says why it cannot be sent. */
export function mixedRequest(
  row: BatchRow,
  { who, today }: { readonly who: string; readonly today: string },
): RequestFor<"log batch"> | string {
  if (who === "") return "Type your name first, so that the log can say who did this.";
  if (row.litres === null || !(row.litres > 0)) return "Its litres cannot be read in the log. Mend that cell first.";
  try {
    return {
      ask: "log batch",
      who,
      batch: {
        // The same from every panel, so that two who press at once log one batch.
        id: stableId("mixed", row.id),
        day: today,
        litres: row.litres,
        water: row.water,
        target: row.target,
        doses: parseDoses(row.doses),
        reached: Object.fromEntries(
          SYMBOLS.flatMap((symbol) => (row.reached[symbol] === undefined ? [] : [[symbol, row.reached[symbol]]])),
        ),
        predictedEcMsCm: row.predictedEcMsCm,
        acid: row.acid,
        note: row.note,
        corrects: row.id,
      },
    };
  } catch (error) {
    if (isBadInput(error)) return error.message;
    throw error;
  }
}

interface BatchesLinks extends DeskLinks {
  reload(): void;
  /** Told the id of each batch that was logged as mixed. */
  logged(batchId: string): void;
}

export function createBatchesDesk(world: PanelWorld, links: BatchesLinks): BatchesDesk {
  const { loaded } = links;
  let plan: BatchRow | null = null;
  const mixing = createSender<"log batch">(world.ask, world.after, {
    make: () => {
      const all = loaded.get();
      if (all === null || plan === null) return "The sheet has not been read yet.";
      return mixedRequest(plan, { who: links.who(), today: all.today });
    },
    settle: (reply, { batch, who }) => {
      loaded.change((now) => (now === null ? now : { ...now, batches: withBatch(now.batches, batch, who) }));
      links.keepName();
      links.logged(batch.id);
      return {
        sentence: reply.differing.length > 0 ? FOUND_OTHERWISE : "Logged as mixed. Its readings can go in now.",
        notes: reply.differing,
      };
    },
  });
  const takingBack = createTakingBack(world, links, {
    log: "Batch log",
    gone: (id) => {
      const corrected = loaded.get()?.batches.find((batch) => batch.id === id)?.corrects ?? "";
      loaded.change((now) =>
        now === null ? now : { ...now, batches: now.batches.filter((batch) => batch.id !== id) },
      );
      // The row that it had corrected counts again.
      if (corrected !== "") links.reload();
    },
  });
  return {
    shown: createStore(5),
    mixing,
    takingBack,
    mixed: (row) => {
      if (mixing.now.get().state === "under way") return;
      plan = row;
      mixing.press();
    },
    takeBack: (id) => takingBack.row(id),
  };
}
