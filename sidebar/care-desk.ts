/** The desk of "Log care": the draft, and the button that sends its rows. */

import type { CareEntry } from "../src/app/contract.ts";
import { type CareDraft, careDone, choosePlants, freshCare, makeCare, plantsAfter, readCare } from "./care.ts";
import { keptStore } from "./drafts.ts";
import { clearWhenEdited, createSender, FOUND_OTHERWISE, type Sender } from "./sending.ts";
import { count, showDay } from "./show.ts";
import type { Store } from "./store.ts";
import type { DeskLinks, PanelWorld } from "./world.ts";

export interface CareDesk {
  readonly draft: Store<CareDraft>;
  readonly sender: Sender;
  choose(names: readonly string[], on: boolean): void;
}

export function createCareDesk(world: PanelWorld, links: DeskLinks): CareDesk {
  const { loaded } = links;
  const draft = keptStore<CareDraft>(world.storage, "stillroot.care", { fresh: freshCare, read: readCare });
  let sentDraft = draft.get();

  const done = (entries: readonly CareEntry[]): string => {
    const [first] = entries;
    const on = first === undefined ? "" : ` on ${showDay(first.day)}`;
    const whom = entries.length === 1 ? (first?.plant ?? "") : count(entries.length, "plant");
    return `Logged ${first?.event ?? ""} for ${whom}${on}.`;
  };

  const sender = createSender<"log care">(world.ask, world.after, {
    make: () => {
      const all = loaded.get();
      if (all === null) return "The sheet has not been read yet.";
      sentDraft = draft.get();
      return makeCare(sentDraft, links.who(), all);
    },
    settle: (reply, sent) => {
      loaded.change((now) => (now === null ? null : { ...now, plants: [...plantsAfter(now, sent.entries)] }));
      const ids = new Set(sent.entries.map(({ id }) => id));
      draft.change((now) => careDone(now, sentDraft, { ids, keep: reply.differing.length > 0 }));
      links.keepName();
      // Rows that hold something else were not logged by this press, whatever the sentence of a common one says.
      const sentence = reply.differing.length > 0 ? FOUND_OTHERWISE : done(sent.entries);
      return { sentence, notes: reply.differing };
    },
  });

  clearWhenEdited(draft, sender);
  return {
    draft,
    sender,
    choose: (names, on) => draft.set(choosePlants(draft.get(), names, on, world.newId)),
  };
}
