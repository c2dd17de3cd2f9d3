/** The desk of "Readings of a batch": the draft, and the button that sends it. */

import type { Loaded } from "../src/app/contract.ts";
import { readShelf, type ShelfFeed } from "../src/core/feeds.ts";
import { sayList, sayNumber } from "../src/core/saying.ts";
import { keptStore } from "./drafts.ts";
import { batchesAfter, freshReadings, makeReadings, type ReadingsDraft, readReadings, typing } from "./readings.ts";
import { clearWhenEdited, createSender, type Sender } from "./sending.ts";
import type { Store } from "./store.ts";
import type { PanelWorld } from "./world.ts";

export interface ReadingsDesk {
  readonly draft: Store<ReadingsDraft>;
  readonly sender: Sender;
  /** The feeds as read last. */
  shelf(): readonly ShelfFeed[];
  /** Puts a batch on the desk, as after it was logged. */
  choose(batchId: string): void;
}

/** The shelf, read once for each load. */
function shelfOf(loaded: Store<Loaded | null>): () => readonly ShelfFeed[] {
  let rows: Loaded["feeds"] = [];
  let shelf: readonly ShelfFeed[] = [];
  return () => {
    const now = loaded.get()?.feeds ?? [];
    if (now !== rows) {
      rows = now;
      shelf = readShelf(now.map(({ row, fields }) => ({ fields, where: `row ${row} of Feeds` })));
    }
    return shelf;
  };
}

export function createReadingsDesk(world: PanelWorld, loaded: Store<Loaded | null>): ReadingsDesk {
  const shelf = shelfOf(loaded);
  const draft = keptStore<ReadingsDraft>(world.storage, "stillroot.readings", {
    fresh: freshReadings,
    read: readReadings,
  });
  let sentDraft = draft.get();
  const sender = createSender<"log readings">(world.ask, world.after, {
    make: () => {
      sentDraft = draft.get();
      const all = loaded.get();
      return all === null ? "The sheet has not been read yet." : makeReadings(sentDraft, all, shelf());
    },
    settle: (reply, sent) => {
      loaded.change((now) => (now === null ? null : { ...now, batches: batchesAfter(now.batches, sent) }));
      draft.change((now) => ({
        ...now,
        batchId: now.batchId === sent.batchId ? "" : now.batchId,
        ec: now.ec === sentDraft.ec ? "" : now.ec,
        pH: now.pH === sentDraft.pH ? "" : now.pH,
        temp: "",
      }));
      const what = [
        ...(sent.ecMsCm === null ? [] : [`EC ${sayNumber(sent.ecMsCm)} mS/cm`]),
        ...(sent.pH === null ? [] : [`pH ${sayNumber(sent.pH)}`]),
      ];
      const alarm = sent.verdict !== "" && !sent.verdict.startsWith("As expected") && reply.differing.length === 0;
      return {
        sentence: `Logged ${sayList(what, "and")}.`,
        notes: [...(alarm ? [sent.verdict] : []), ...reply.differing],
      };
    },
  });
  clearWhenEdited(draft, sender);
  return {
    draft,
    sender,
    shelf,
    choose: (batchId) => {
      // Readings already typed belong to the batch they were typed for.
      draft.change((now) => (typing(now) ? now : { ...now, batchId }));
      sender.clear();
    },
  };
}
