/** One button that sends: under way once however often it is pressed, and fit to be tried again. */

import type { Answered, Ask, ReplyFor, RequestFor } from "../src/app/contract.ts";
import { MAY_HAVE_SAVED } from "../src/core/saying.ts";
import type { AskSheet } from "./calls.ts";
import { createStore, type Store } from "./store.ts";

export type Sending =
  | { readonly state: "idle" }
  | { readonly state: "under way"; readonly slow: boolean }
  /** Something is missing; nothing was sent. */
  | { readonly state: "blocked"; readonly sentence: string }
  | { readonly state: "failed"; readonly sentence: string }
  /** `notes` are sentences on what was found different from what was sent. */
  | { readonly state: "done"; readonly sentence: string; readonly notes: readonly string[] };

/** Runs `run` after `ms`; returns how to call it off. */
export type After = (ms: number, run: () => void) => () => void;

export const afterInBrowser: After = (ms, run) => {
  const timer = setTimeout(run, ms);
  return () => clearTimeout(timer);
};

/** A round trip takes up to two seconds; waiting for another person's write to end can take thirty. */
export const SLOW_AFTER_MS = 8_000;
export const GIVE_UP_AFTER_MS = 75_000;

export const NO_ANSWER_YET = `The sheet has not answered yet. ${MAY_HAVE_SAVED}`;

/** Said in place of "logged" when the sheet found rows of an earlier press that hold other values. */
export const FOUND_OTHERWISE = "An earlier press is in the log already, with other values:";

export interface Outcome {
  readonly sentence: string;
  readonly notes?: readonly string[];
  /** Nothing was written: the sentence is a question, to be answered by another press. */
  readonly asks?: boolean;
}

export interface Press<A extends Ask> {
  /** The request as typed now, or the sentence that says what is missing. */
  readonly make: () => RequestFor<A> | string;
  /** What to do with the answer; returns what to say. */
  readonly settle: (reply: ReplyFor<A>, sent: RequestFor<A>) => Outcome;
}

export interface Sender {
  readonly now: Store<Sending>;
  press(): void;
  /** Takes the last sentence away, when the person goes on. Not while something is under way. */
  clear(): void;
}

export function createSender<A extends Ask>(ask: AskSheet, after: After, press: Press<A>): Sender {
  const now = createStore<Sending>({ state: "idle" });
  let latest = 0;
  let settled = 0;

  const hear = (number: number, sent: RequestFor<A>, answer: Answered<A>): void => {
    if (number <= settled) return;
    // While a newer press waits, it tells the outcome; it found the older one's rows by their ids.
    if (number < latest && now.get().state === "under way") return;
    if (!answer.ok) {
      if (number === latest) now.set({ state: "failed", sentence: answer.sentence });
      return;
    }
    settled = latest;
    const { sentence, notes = [], asks = false } = press.settle(answer.reply, sent);
    now.set(asks ? { state: "blocked", sentence } : { state: "done", sentence, notes });
  };

  return {
    now,
    press: () => {
      if (now.get().state === "under way") return;
      const made = press.make();
      if (typeof made === "string") {
        now.set({ state: "blocked", sentence: made });
        return;
      }
      latest += 1;
      const number = latest;
      now.set({ state: "under way", slow: false });
      const waiting = (): boolean => number === latest && number > settled && now.get().state === "under way";
      const callOffSlow = after(SLOW_AFTER_MS, () => {
        if (waiting()) now.set({ state: "under way", slow: true });
      });
      const callOffGiveUp = after(GIVE_UP_AFTER_MS, () => {
        if (waiting()) now.set({ state: "failed", sentence: NO_ANSWER_YET });
      });
      ask<A>(made).then((answer) => {
        callOffSlow();
        callOffGiveUp();
        hear(number, made, answer);
      });
    },
    clear: () => {
      if (now.get().state !== "under way") now.set({ state: "idle" });
    },
  };
}

/** Takes the last outcome away once the person goes on typing. A failure stays until it is settled. */
export function clearWhenEdited(draft: Store<unknown>, sender: Sender): void {
  draft.listen(() => {
    const { state } = sender.now.get();
    if (state === "done" || state === "blocked") sender.clear();
  });
}
