/** The desk of "Log care": the draft, and the button that sends its rows. */

import type { CareEntry } from "../src/app/contract.ts";
import {
  type CareDraft,
  careDone,
  careRenewed,
  careSent,
  choosePlants,
  freshCare,
  makeCare,
  plantsAfter,
  readCare,
} from "./care.ts";
import { keptStore } from "./drafts.ts";
import { createSender, type Sender } from "./sending.ts";
import { count, showDay } from "./show.ts";
import type { Store } from "./store.ts";
import { maybeStale } from "./tries.ts";
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
      const request = makeCare(draft.get(), links.who(), all);
      if (typeof request !== "string") {
        draft.set(careSent(draft.get(), request.entries));
        sentDraft = draft.get();
      }
      return request;
    },
    settle: (reply, sent) => {
      const stale = maybeStale(draft.get().tries, sent.entries, reply.already);
      const now = loaded.get();
      if (stale.length > 0) {
        draft.set(careRenewed(draft.get(), stale, world.newId));
        return {
          failed: `${count(reply.already, "row")} of an earlier press ${reply.already === 1 ? "is" : "are"} in the log already, as typed then. Correct ${reply.already === 1 ? "it" : "them"} there, or press again to add what you see here as well.`,
        };
      }
      if (now !== null) loaded.set({ ...now, plants: [...plantsAfter(now, sent.entries)] });
      draft.set(careDone(draft.get(), sentDraft, sent.entries));
      links.keepName();
      return done(sent.entries);
    },
  });

  return {
    draft,
    sender,
    choose: (names, on) => draft.set(choosePlants(draft.get(), names, on, world.newId)),
  };
}
