/** The desk of "Log care": the draft, the button that sends its rows, and what is asked before they are written. */

import type { CareEntry, CareRow } from "../src/app/contract.ts";
import { type CareDraft, choosePlants, chosenPlants, correctingDraft, freshCare, makeCare, readCare } from "./care.ts";
import { careDone, loadedAfter } from "./care-after.ts";
import { type Double, doublesWords } from "./doubles.ts";
import { keptStore } from "./drafts.ts";
import { backRound, stepRound } from "./round.ts";
import { clearWhenEdited, createSender, FOUND_OTHERWISE, type Sender } from "./sending.ts";
import { count, showDay } from "./show.ts";
import { createStore, type Store } from "./store.ts";
import type { DeskLinks, PanelWorld } from "./world.ts";

export interface CareDesk {
  readonly draft: Store<CareDraft>;
  readonly sender: Sender;
  choose(names: readonly string[], on: boolean): void;
  /** One by one: the plant shown was done, or is passed over. */
  step(did: boolean): void;
  back(): void;
  /** What somebody else logged that day, while that is asked about. */
  readonly doubles: Store<readonly Double[]>;
  logAllTheSame(): void;
  leaveDoublesOut(): void;
  /** Puts an entry into the form, to be corrected. Gives a sentence when something else is under way there. */
  correct(row: CareRow): string | null;
  stopCorrecting(): void;
}

function doneWords(entries: readonly CareEntry[]): string {
  const [first] = entries;
  const on = first === undefined ? "" : ` on ${showDay(first.day)}`;
  const whom = entries.length === 1 ? (first?.plant ?? "") : count(entries.length, "plant");
  const did = first?.corrects === undefined ? "Logged" : "Corrected:";
  return `${did} ${first?.event ?? ""} for ${whom}${on}.`;
}

export function createCareDesk(world: PanelWorld, links: DeskLinks): CareDesk {
  const { loaded } = links;
  const draft = keptStore<CareDraft>(world.storage, "stillroot.care", { fresh: freshCare, read: readCare });
  const doubles = createStore<readonly Double[]>([]);
  let sentDraft = draft.get();
  let again = false;

  const sender = createSender<"log care">(world.ask, world.after, {
    make: () => {
      const all = loaded.get();
      if (all === null) return "The sheet has not been read yet.";
      sentDraft = draft.get();
      const made = makeCare(sentDraft, links.who(), all);
      return typeof made === "string" || !again ? made : { ...made, again };
    },
    settle: (reply, sent) => {
      if (reply.doubles !== undefined && reply.doubles.length > 0) {
        doubles.set(reply.doubles);
        const words = doublesWords(reply.doubles, {
          today: loaded.get()?.today ?? "",
          nowMs: world.nowMs(),
        });
        return { sentence: `${words} Nothing was written yet.`, asks: true };
      }
      const corrected = sent.entries.some(({ corrects }) => corrects !== undefined);
      if (corrected) links.reload();
      else loaded.change((now) => (now === null ? null : loadedAfter(now, sent.entries, sent.who)));
      const ids = new Set(sent.entries.map(({ id }) => id));
      draft.change((now) => careDone(now, sentDraft, { ids, keep: reply.differing.length > 0 }));
      links.keepName();
      // Rows that hold something else were not logged by this press, whatever the sentence of a common one says.
      const sentence = reply.differing.length > 0 ? FOUND_OTHERWISE : doneWords(sent.entries);
      return { sentence, notes: reply.differing };
    },
  });

  clearWhenEdited(draft, sender);
  draft.listen(() => {
    again = false;
    doubles.set([]);
  });
  const plants = () => loaded.get()?.plants ?? [];
  return {
    draft,
    sender,
    doubles,
    choose: (names, on) => draft.set(choosePlants(draft.get(), names, on, world.newId)),
    step: (did) => draft.set(stepRound(draft.get(), plants(), did, world.newId)),
    back: () => draft.set(backRound(draft.get(), plants())),
    logAllTheSame: () => {
      again = true;
      doubles.set([]);
      sender.press();
    },
    leaveDoublesOut: () => {
      const names = doubles.get().map(({ plant }) => plant);
      draft.set(choosePlants(draft.get(), names, false, world.newId));
      if (chosenPlants(draft.get(), plants()).length > 0) sender.press();
    },
    correct: (row) => {
      const { corrects, chosen } = draft.get();
      if (corrects === "" && Object.keys(chosen).length > 0) {
        return "Plants are chosen above. Log that first, or clear the choice, then correct this entry.";
      }
      draft.set(correctingDraft(row, world.newId));
      return null;
    },
    stopCorrecting: () => draft.set(freshCare()),
  };
}
