/** The desk of "Know a feed": the draft, and the button that puts the label into the Feeds tab. */

import type { FeedEntry, FieldRow } from "../src/app/contract.ts";
import { editOnce, keptStore } from "./drafts.ts";
import { type FeedDraft, freshFeed, readFeedDraft } from "./feed-draft.ts";
import { readTypedLabel, rowOfName } from "./feed-label.ts";
import { makeFeed } from "./feed-save.ts";
import { clearWhenEdited, createSender, type Sender } from "./sending.ts";
import type { Store } from "./store.ts";
import type { DeskLinks, PanelWorld } from "./world.ts";

export interface FeedDesk {
  readonly draft: Store<FeedDraft>;
  readonly sender: Sender;
  /** Changes the label or the row it becomes; after it was saved, that makes it another one. */
  edit(step: (now: FeedDraft) => FeedDraft): void;
  /** Begins another label. */
  another(): void;
}

/** The tab with the new row, until the sheet is read again. */
function withRow(rows: readonly FieldRow[], entry: FeedEntry): FieldRow[] {
  if (rowOfName(entry.feed, rows) !== null) return [...rows];
  const row = 1 + Math.max(1, ...rows.map((one) => one.row));
  const words = { Basis: entry.basis, "Label text": entry.labelText, Note: entry.note };
  const filled = Object.entries(words).filter(([, text]) => text !== "");
  const density = entry.densityGPerMl === null ? {} : { Density: entry.densityGPerMl };
  const fields = { ...entry.percents, ...density, ...Object.fromEntries(filled), Origin: entry.origin };
  return [...rows, { row, fields: { Feed: entry.feed, "Analysis published": entry.published, ...fields } }];
}

export function createFeedDesk(world: PanelWorld, { loaded }: Pick<DeskLinks, "loaded">): FeedDesk {
  const draft = keptStore<FeedDraft>(world.storage, "stillroot.feed", { fresh: freshFeed, read: readFeedDraft });
  const sender = createSender<"log feed">(world.ask, world.after, {
    make: () => {
      if (loaded.get() === null) return "The sheet has not been read yet.";
      return makeFeed(draft.get(), readTypedLabel(draft.get()));
    },
    settle: (reply, { entry }) => {
      loaded.change((now) => (now === null ? null : { ...now, feeds: withRow(now.feeds, entry) }));
      draft.change((now) => (now.id === entry.id ? { ...now, saved: true } : now));
      const sentence =
        reply.written > 0 ? `Saved “${entry.feed}” on the Feeds tab.` : `“${entry.feed}” was there already, just so.`;
      return { sentence, notes: reply.differing };
    },
  });
  clearWhenEdited(draft, sender);
  return {
    draft,
    sender,
    edit: editOnce(draft, world.newId),
    another: () => {
      const { gapTarget, gapWater } = draft.get();
      draft.set({ ...freshFeed(), gapTarget, gapWater });
      sender.clear();
    },
  };
}
