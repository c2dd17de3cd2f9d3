/** The desk of "Mix a batch": the draft, what it works out to, and the button that logs it. */

import type { BatchEntry, BatchRow, Records } from "../src/app/contract.ts";
import { dosesText } from "../src/core/dose-text.ts";
import { sayNumber } from "../src/core/saying.ts";
import type { AcidDraft } from "./acid-draft.ts";
import { work } from "./batch.ts";
import { batchChemistry } from "./batch-chemistry.ts";
import { type BatchDraft, freshBatch, makeBatch, nextBatch, readBatch } from "./batch-draft.ts";
import { readChoices, type Shelf } from "./batch-shelf.ts";
import { type BottlesDraft, bottlesStore } from "./bottles-draft.ts";
import { keptStore } from "./drafts.ts";
import { packOf } from "./packs.ts";
import { clearWhenEdited, createSender, FOUND_OTHERWISE, type Sender } from "./sending.ts";
import { createStore, type Store } from "./store.ts";
import type { DeskLinks, PanelWorld } from "./world.ts";

export interface BatchDesk {
  readonly draft: Store<BatchDraft>;
  readonly shelf: Store<Shelf>;
  readonly sender: Sender;
  readonly bottles: Store<BottlesDraft>;
  /** Begins another batch after one was logged. */
  another(): void;
}

/** The row as the log shows it, until the sheet is read again. */
function rowOf(batch: BatchEntry, who: string): BatchRow {
  return {
    id: batch.id,
    day: batch.day,
    who,
    litres: batch.litres,
    water: batch.water,
    target: batch.target,
    doses: dosesText(batch.doses),
    reached: { ...batch.reached },
    predictedEcMsCm: batch.predictedEcMsCm,
    acid: batch.acid,
    measuredEcMsCm: null,
    measuredPH: null,
    verdict: "",
    note: batch.note,
    state: batch.state ?? "mixed",
    corrects: batch.corrects ?? "",
  };
}

interface BatchLinks extends DeskLinks {
  readonly acid: Store<AcidDraft>;
  readonly records: Store<Records | null>;
  /** Told the id of each batch that was logged. */
  logged(batchId: string): void;
}

export function createBatchDesk(world: PanelWorld, links: BatchLinks): BatchDesk {
  const { loaded, acid, records } = links;
  const draft = keptStore<BatchDraft>(world.storage, "stillroot.batch", {
    fresh: () => freshBatch(world.newId),
    read: readBatch,
  });
  const shelf = createStore<Shelf>(readChoices({ feeds: [], waters: [], targets: [] }));
  let read: readonly unknown[] = [];
  const refresh = (): void => {
    const now = loaded.get();
    if (now === null) return;
    const purchases = records.get()?.purchases ?? [];
    const parts = [now.feeds, now.waters, now.targets, now.settings, purchases];
    if (parts.every((part, at) => part === read[at])) return;
    read = parts;
    shelf.set(readChoices(now, { packOf: (feed) => packOf(feed, purchases), onHandOf: () => null }));
  };
  loaded.listen(refresh);
  records.listen(refresh);

  const sender = createSender<"log batch">(world.ask, world.after, {
    make: () => {
      const all = loaded.get();
      if (all === null) return "The sheet has not been read yet.";
      const now = draft.get();
      const worked = work(now, shelf.get());
      const chemistry = batchChemistry(worked, acid.get(), shelf.get());
      return makeBatch(now, worked, { who: links.who(), today: all.today, chemistry });
    },
    settle: (reply, { batch, who }) => {
      draft.change((now) => (now.id === batch.id ? { ...now, logged: true } : now));
      loaded.change((now) =>
        now === null || now.batches.some(({ id }) => id === batch.id)
          ? now
          : { ...now, batches: [rowOf(batch, who), ...now.batches] },
      );
      links.keepName();
      links.logged(batch.id);
      const of = batch.target === "" ? "" : ` of “${batch.target}”`;
      return {
        sentence: reply.differing.length > 0 ? FOUND_OTHERWISE : `Logged ${sayNumber(batch.litres)} L${of}.`,
        notes: reply.differing,
      };
    },
  });

  clearWhenEdited(draft, sender);
  return {
    draft,
    shelf,
    sender,
    bottles: bottlesStore(world.storage),
    another: () => {
      draft.set(nextBatch(draft.get(), world.newId));
      sender.clear();
    },
  };
}
