/** The desk of "Readings of a batch": the draft, and the button that sends it. */

import type { Loaded } from "../src/app/contract.ts";
import { sayList, sayNumber } from "../src/core/saying.ts";
import { keptStore } from "./drafts.ts";
import { batchesAfter, freshReadings, makeReadings, type ReadingsDraft, readReadings, typing } from "./readings.ts";
import { clearWhenEdited, createSender, type Sender } from "./sending.ts";
import type { Store } from "./store.ts";
import type { PanelWorld } from "./world.ts";

export interface ReadingsDesk {
  readonly draft: Store<ReadingsDraft>;
  readonly sender: Sender;
  /** Puts a batch on the desk, as after it was logged. */
  choose(batchId: string): void;
}

export function createReadingsDesk(world: PanelWorld, loaded: Store<Loaded | null>): ReadingsDesk {
  const draft = keptStore<ReadingsDraft>(world.storage, "stillroot.readings", {
    fresh: freshReadings,
    read: readReadings,
  });
  let sentDraft = draft.get();
  const sender = createSender<"log readings">(world.ask, world.after, {
    make: () => {
      sentDraft = draft.get();
      const all = loaded.get();
      return all === null ? "The sheet has not been read yet." : makeReadings(sentDraft, all);
    },
    settle: (_, sent) => {
      loaded.change((now) => (now === null ? null : { ...now, batches: batchesAfter(now.batches, sent) }));
      draft.change((now) => ({
        ...now,
        batchId: now.batchId === sent.batchId ? "" : now.batchId,
        ec: now.ec === sentDraft.ec ? "" : now.ec,
        pH: now.pH === sentDraft.pH ? "" : now.pH,
      }));
      const what = [
        ...(sent.ecMsCm === null ? [] : [`EC ${sayNumber(sent.ecMsCm)} mS/cm`]),
        ...(sent.pH === null ? [] : [`pH ${sayNumber(sent.pH)}`]),
      ];
      return { sentence: `Logged ${sayList(what, "and")}.` };
    },
  });
  clearWhenEdited(draft, sender);
  return {
    draft,
    sender,
    choose: (batchId) => {
      // Readings already typed belong to the batch they were typed for.
      draft.change((now) => (typing(now) ? now : { ...now, batchId }));
      sender.clear();
    },
  };
}
