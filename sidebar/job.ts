/** Work of many requests behind one button: pages read or written one after the other, with a line on how far it is. */

import type { Answered, Ask, RequestFor } from "../src/app/contract.ts";
import type { AskSheet } from "./calls.ts";
import { GIVE_UP_AFTER_MS, NO_ANSWER_YET, type Outcome, type Sender, type Sending } from "./sending.ts";
import { createStore, type Store } from "./store.ts";
import type { PanelWorld } from "./world.ts";

export interface Job extends Sender {
  /** What is being done just now, to be shown while it runs. */
  readonly progress: Store<string>;
}

/** Asks, and gives up on an answer that does not come, so that no job waits for ever. */
function patient({ ask, after }: PanelWorld): AskSheet {
  return <A extends Ask>(request: RequestFor<A>): Promise<Answered<A>> =>
    new Promise((answered) => {
      const callOff = after(GIVE_UP_AFTER_MS, () =>
        answered({ ok: false, code: "no answer", sentence: NO_ANSWER_YET }),
      );
      ask<A>(request).then((answer) => {
        callOff();
        answered(answer);
      });
    });
}

/** `work` throws an Error with a sentence when it cannot go on, and returns a text when something is still missing. */
export function createJob(
  world: PanelWorld,
  work: (ask: AskSheet, say: (progress: string) => void) => Promise<Outcome | string>,
): Job {
  const now = createStore<Sending>({ state: "idle" });
  const progress = createStore("");
  return {
    now,
    progress,
    press: () => {
      if (now.get().state === "under way") return;
      progress.set("");
      now.set({ state: "under way", slow: false });
      work(patient(world), progress.set).then(
        (outcome) => {
          if (typeof outcome === "string") now.set({ state: "blocked", sentence: outcome });
          else now.set({ state: "done", sentence: outcome.sentence, notes: outcome.notes ?? [] });
        },
        (error: unknown) => {
          const sentence = error instanceof Error ? error.message : String(error);
          now.set({ state: "failed", sentence });
        },
      );
    },
    clear: () => {
      if (now.get().state !== "under way") now.set({ state: "idle" });
    },
  };
}
