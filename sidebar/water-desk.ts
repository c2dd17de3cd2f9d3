/** The desk of "Know a water": the draft, and the button that puts the report into the Waters tab. */

import type { FieldRow, WaterEntry } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { editOnce, keptStore } from "./drafts.ts";
import { clearWhenEdited, createSender, type Sender } from "./sending.ts";
import type { Store } from "./store.ts";
import { freshWater, makeWater, readWaterDraft, type WaterDraft } from "./water-draft.ts";
import { readTyped } from "./water-report.ts";
import type { DeskLinks, PanelWorld } from "./world.ts";

export interface WaterDesk {
  readonly draft: Store<WaterDraft>;
  readonly sender: Sender;
  /** Changes the report or the row it becomes; after it was saved, that makes it another one. */
  edit(step: (now: WaterDraft) => WaterDraft): void;
  /** Begins another report. */
  another(): void;
}

/** The tab with the new row, until the sheet is read again. */
function withRow(rows: readonly FieldRow[], entry: WaterEntry): FieldRow[] {
  const key = nameKey(entry.water);
  if (rows.some(({ fields }) => nameKey(String(fields.Water ?? "")) === key)) return [...rows];
  const row = 1 + Math.max(1, ...rows.map((one) => one.row));
  const words = { Source: entry.source, Disinfectant: entry.disinfectant, Note: entry.note };
  const filled = Object.entries(words).filter(([, text]) => text !== "");
  return [
    ...rows,
    { row, fields: { Water: entry.water, Date: entry.day, ...entry.numbers, ...Object.fromEntries(filled) } },
  ];
}

export function createWaterDesk(world: PanelWorld, { loaded }: Pick<DeskLinks, "loaded">): WaterDesk {
  const draft = keptStore<WaterDraft>(world.storage, "stillroot.water", {
    fresh: freshWater,
    read: readWaterDraft,
  });
  const sender = createSender<"log water">(world.ask, world.after, {
    make: () => {
      const all = loaded.get();
      if (all === null) return "The sheet has not been read yet.";
      return makeWater(draft.get(), readTyped(draft.get()), all);
    },
    settle: (reply, { entry }) => {
      loaded.change((now) => (now === null ? null : { ...now, waters: withRow(now.waters, entry) }));
      draft.change((now) => (now.id === entry.id ? { ...now, saved: true } : now));
      const sentence =
        reply.written > 0
          ? `Saved “${entry.water}” on the Waters tab.`
          : `“${entry.water}” was there already, just so.`;
      return { sentence, notes: reply.differing };
    },
  });
  clearWhenEdited(draft, sender);
  return {
    draft,
    sender,
    edit: editOnce(draft, world.newId),
    another: () => {
      draft.change((now) => ({ ...freshWater(), source: now.source }));
      sender.clear();
    },
  };
}
