/** The desk of the tools: what is typed about scale, syringe, spoons and stocks, and the button that keeps it in Settings. */

import type { Loaded } from "../src/app/contract.ts";
import { isRecord, keptStore, textsOf } from "./drafts.ts";
import { clearWhenEdited, createSender, type Sender } from "./sending.ts";
import type { Store } from "./store.ts";
import { TOOL_ROWS, type ToolKey, type ToolTexts, toolProblems, toolTexts } from "./tools.ts";
import type { PanelWorld } from "./world.ts";

export interface ToolsDesk {
  /** Only what was typed; the rest is as Settings say. */
  readonly draft: Store<Partial<ToolTexts>>;
  readonly sender: Sender;
}

const KEYS = Object.keys(TOOL_ROWS) as ToolKey[];

export function createToolsDesk(world: PanelWorld, loaded: Store<Loaded | null>): ToolsDesk {
  const draft = keptStore<Partial<ToolTexts>>(world.storage, "stillroot.tools", {
    fresh: () => ({}),
    read: (kept) => (isRecord(kept) ? textsOf(kept) : null),
  });
  const sender = createSender<"save settings">(world.ask, world.after, {
    make: () => {
      const all = loaded.get();
      if (all === null) return "The sheet has not been read yet.";
      const texts = { ...toolTexts(all.settings), ...draft.get() };
      const problems = toolProblems(texts);
      const wrong = KEYS.map((key) => problems[key]).find((problem) => problem !== null);
      if (wrong != null) return wrong;
      return {
        ask: "save settings",
        settings: KEYS.map((key) => ({ setting: TOOL_ROWS[key], value: pointed(key, texts[key]) })),
      };
    },
    settle: ({ settings }) => {
      draft.set({});
      loaded.change((now) => (now === null ? null : { ...now, settings }));
      return { sentence: "Kept in Settings." };
    },
  });
  clearWhenEdited(draft, sender);
  return { draft, sender };
}

/** Numbers go into the sheet with a point, so that every reader of Settings takes them for numbers. */
function pointed(key: ToolKey, text: string): string {
  const plain = key !== "spoons" && key !== "stocks";
  return plain && /^\d+,\d+$/.test(text.trim()) ? text.trim().replace(",", ".") : text.trim();
}
