/** The desk of "Mix a batch": the draft, what it works out to, and the button that logs it. */

import type { BatchEntry, BatchRow, Records } from "../src/app/contract.ts";
import { dosesText } from "../src/core/dose-text.ts";
import { sayNumber } from "../src/core/saying.ts";
import { type AcidDraft, acidOfText } from "./acid-draft.ts";
import { work } from "./batch.ts";
import { batchChemistry } from "./batch-chemistry.ts";
import { type BatchDraft, freshBatch, makeBatch, nextBatch, readBatch } from "./batch-draft.ts";
import { readChoices, type Shelf } from "./batch-shelf.ts";
import { type BottlesDraft, bottlesStore } from "./bottles-draft.ts";
import { keptStore } from "./drafts.ts";
import { correctBatch, repeatBatch } from "./old-batch.ts";
import { packOf } from "./packs.ts";
import type { PastBatch } from "./past-batch.ts";
import { clearWhenEdited, createSender, FOUND_OTHERWISE, type Sender } from "./sending.ts";
import { onHandIn } from "./stock.ts";
import { createStore, type Store } from "./store.ts";
import type { DeskLinks, PanelWorld } from "./world.ts";

export interface BatchDesk {
  readonly draft: Store<BatchDraft>;
  readonly shelf: Store<Shelf>;
  readonly sender: Sender;
  readonly bottles: Store<BottlesDraft>;
  /** Begins another batch after one was logged, or leaves an old one that was taken up again. */
  another(): void;
  repeat(past: PastBatch): void;
  correct(past: PastBatch, row: Pick<BatchRow, "note" | "state">): void;
}

/** The row as the log shows it, until the sheet is read again. */
export function rowOf(batch: BatchEntry, who: string): BatchRow {
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
    measuredEcMsCm: batch.measured?.ecMsCm ?? null,
    measuredPH: batch.measured?.pH ?? null,
    verdict: "",
    note: batch.note,
    state: batch.state ?? "mixed",
    corrects: batch.corrects ?? "",
  };
}

/** The batches of the panel once this one is in the log: the row it replaces no longer stands. */
export function withBatch(batches: readonly BatchRow[], batch: BatchEntry, who: string): BatchRow[] {
  if (batches.some(({ id }) => id === batch.id)) return [...batches];
  return [rowOf(batch, who), ...batches.filter(({ id }) => batch.corrects === undefined || id !== batch.corrects)];
}

interface BatchLinks extends DeskLinks {
  readonly acid: Store<AcidDraft>;
  readonly records: Store<Records | null>;
  /** Told the id of each batch that was logged. */
  logged(batchId: string): void;
}

function loggedSentence({ litres, target, state, corrects }: BatchEntry): string {
  const what = `${sayNumber(litres)} L${target === "" ? "" : ` of “${target}”`}`;
  if (state === "planned") return `Planned ${what}. Log it as mixed once it is.`;
  return corrects === undefined ? `Logged ${what}.` : `Logged ${what}; the old row no longer counts.`;
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
    const further = records.get();
    const purchases = further?.purchases ?? [];
    const parts = [now.feeds, now.waters, now.targets, now.settings, now.batches, further?.purchases];
    if (parts.every((part, at) => part === read[at])) return;
    read = parts;
    shelf.set(readChoices(now, { packOf: (feed) => packOf(feed, purchases), onHandOf: onHandIn(now, further) }));
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
      loaded.change((now) => (now === null ? now : { ...now, batches: withBatch(now.batches, batch, who) }));
      links.keepName();
      if (batch.state !== "planned") links.logged(batch.id);
      return {
        sentence: reply.differing.length > 0 ? FOUND_OTHERWISE : loggedSentence(batch),
        notes: reply.differing,
      };
    },
  });

  /** The acid of an old batch is taken up with it, where its text can be read. */
  const takeAcid = ({ acid: text }: PastBatch): void => {
    acid.change((now) => acidOfText(text) ?? { ...now, acid: "", strength: "", measuredPH: "", thin: null });
  };

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
    repeat: (past) => {
      draft.set(repeatBatch(draft.get(), past, world.newId));
      takeAcid(past);
      sender.clear();
    },
    correct: (past, { note, state }) => {
      const planned = state === "planned";
      draft.set(correctBatch(draft.get(), past, { shelf: shelf.get(), note, planned, newId: world.newId }));
      takeAcid(past);
      sender.clear();
    },
  };
}
