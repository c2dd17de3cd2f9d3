/** Makes the n-th call of an action fail in one of the ways in which the host does, over the real host code. */

import type { MemoryGrid } from "../../sample-sheet/workbench/standin/memory.ts";
import { makeRunner } from "../../sample-sheet/workbench/standin/run.ts";
import { createAsk } from "../../sidebar/calls.ts";
import type { Ask, RequestFor } from "../../src/app/contract.ts";
import { panelRequest } from "../../src/host/panel.ts";
import { openTestBook, type TestBook } from "../sheet/workbook.ts";

/** Thrown by every call once the host has ended a script; nothing the script then does reaches the sheet. */
const ENDED = "Exceeded maximum execution time";

export const FAULTS = {
  /** The call fails, once, undone. */
  exception: { before: true, lasts: false, says: "Service Spreadsheets failed while accessing document." },
  /** The call fails, once, after it was done. */
  "answer of the call lost": { before: false, lasts: false, says: "Service Spreadsheets timed out." },
  /** The call is done and the script then ended: no clean-up of ours runs. */
  "ended after the call": { before: false, lasts: true, says: ENDED },
  /** From this call on the day's quota is used up. */
  quota: { before: true, lasts: true, says: "Service invoked too many times for one day: spreadsheet." },
  "authorisation lost": {
    before: true,
    lasts: true,
    says: "Authorization is required to perform that action.",
  },
} as const;

export type Fault = keyof typeof FAULTS;

/** Faults that strike the whole request, not one call. */
export const WHOLE_FAULTS = ["lock not had", "null answer", "answer lost after success"] as const;
export type WholeFault = (typeof WHOLE_FAULTS)[number];

export interface Trial {
  readonly book: TestBook;
  /** Calls and services reached by the last action. */
  reached(): number;
  /** Arms a fault for the next action. */
  arm(fault: Fault | WholeFault | null, at?: number): void;
  /** Asks as the panel does and gives what the panel would say. */
  ask(request: RequestFor<Ask>): Promise<{ readonly ok: boolean; readonly sentence: string }>;
}

export function trialOver(grid: MemoryGrid): Trial {
  let count = 0;
  let armed: { fault: Fault | WholeFault; at: number } | null = null;
  let ended = false;
  const strike = (when: "before" | "after") => {
    if (when === "before") count++;
    if (ended) throw new Error(armed && armed.fault in FAULTS ? FAULTS[armed.fault as Fault].says : ENDED);
    if (armed === null || !(armed.fault in FAULTS) || armed.at !== count) return;
    const { before, lasts, says } = FAULTS[armed.fault as Fault];
    if (before !== (when === "before")) return;
    if (lasts) ended = true;
    throw new Error(says);
  };
  const book = openTestBook({
    grid,
    onCall: () => strike("before"),
    afterCall: () => strike("after"),
    onService: () => strike("before"),
    afterService: () => strike("after"),
  });
  const run = () =>
    makeRunner({
      call: (_name, [json]) => {
        const answer = panelRequest(json);
        if (ended && armed?.fault === "ended after the call") throw new Error(ENDED);
        if (armed?.fault === "null answer") return undefined;
        if (armed?.fault === "answer lost after success")
          throw new Error("NetworkError: Connection failure due to HTTP 0");
        return answer;
      },
      isPublic: (name) => name === "panelRequest",
      delayMs: 0,
      later: (act) => act(),
    }) as never;
  const askSheet = createAsk(run);
  return {
    book,
    reached: () => count,
    arm(fault, at = 0) {
      count = 0;
      ended = false;
      armed = fault === null ? null : { fault, at };
      book.host.locks.elsewhere = fault === "lock not had";
    },
    async ask(request) {
      const answer = await askSheet(request);
      if (!answer.ok) return { ok: false, sentence: answer.sentence };
      // Some answers tell what went wrong with a part of the work in their own sentence.
      const { sentence = "" } = answer.reply as { readonly sentence?: string };
      return sentence.includes("did not let this be done") ? { ok: false, sentence } : { ok: true, sentence: "" };
    },
  };
}
