/** The desk of "Go away": the draft, the page it makes, and the look back afterwards. */

import type { Loaded } from "../src/app/contract.ts";
import { keptStore } from "./drafts.ts";
import { createJob, type Job } from "./job.ts";
import { clearWhenEdited, createSender, type Sender } from "./sending.ts";
import { type Checked, checkSitting } from "./sitter-check.ts";
import { freshSitter, planSitting, readSitter, type SitterDraft, spanOf } from "./sitter-draft.ts";
import { sitterPage } from "./sitter-page.ts";
import { pageCells, readPageCells } from "./sitter-tab.ts";
import { createStore, type Store } from "./store.ts";
import type { PanelWorld } from "./world.ts";

export interface SitterDesk {
  readonly draft: Store<SitterDraft>;
  readonly sender: Sender;
  readonly checked: Store<Checked | null>;
  readonly check: Job;
}

export function createSitterDesk(world: PanelWorld, loaded: Store<Loaded | null>): SitterDesk {
  const draft = keptStore<SitterDraft>(world.storage, "stillroot.sitter", { fresh: freshSitter, read: readSitter });
  const checked = createStore<Checked | null>(null);

  const sender = createSender<"write sitter page">(world.ask, world.after, {
    make: () => {
      const all = loaded.get();
      if (all === null) return "The sheet has not been read yet.";
      const span = spanOf(draft.get());
      if (typeof span === "string") return span;
      const sitting = planSitting(draft.get(), all, span);
      if (sitting.plan.pours.length === 0)
        return "There is nothing to pour in these days, so there is no page to write.";
      return { ask: "write sitter page", ...pageCells(sitterPage(draft.get(), sitting)) };
    },
    settle: ({ tab, kept }) => ({
      sentence: `The page is on the tab “${tab}”. Print it from there, upright on A4, or here.`,
      notes: kept === null ? [] : [`Somebody had typed on “${kept}”, so that tab was kept as it is.`],
    }),
  });

  const check = createJob(world, async (ask) => {
    checked.set(null);
    const page = await ask<"read sitter page">({ ask: "read sitter page" });
    if (!page.ok) throw new Error(page.sentence);
    if (page.reply.tab === null) return "There is no sitter’s page in this sheet yet.";
    const read = readPageCells(page.reply.rows);
    if (read === null) {
      return `“${page.reply.tab}” has no line left that can be read. Its headings Day and Plant are needed, and days like Sat 1 Aug 2026.`;
    }
    const fresh = await ask<"load">({ ask: "load" });
    if (!fresh.ok) throw new Error(fresh.sentence);
    loaded.set(fresh.reply);
    const found = checkSitting(read, fresh.reply);
    checked.set(found);
    return { sentence: found.summary };
  });

  clearWhenEdited(draft, sender);
  return { draft, sender, checked, check };
}
