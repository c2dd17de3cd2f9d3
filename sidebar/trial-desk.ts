/** The desk of "Trials": the draft of one that begins, the button that draws and saves it, and the one that keeps a result. */

import type { FieldRow, RequestFor } from "../src/app/contract.ts";
import type { TrialState } from "../src/core/trial.ts";
import { resultText } from "../src/core/trial.ts";
import { draftOf } from "./claim-draft.ts";
import { type Claim, textIn, withClaim } from "./claim-rows.ts";
import { keptStore } from "./drafts.ts";
import type { RecordsStore } from "./panel-state.ts";
import { clearWhenEdited, createSender, FOUND_OTHERWISE, type Sender } from "./sending.ts";
import type { Store } from "./store.ts";
import { createTakingBack, type TakingBack } from "./taking-back.ts";
import { freshTrial, makeTrial, readTrialDraft, type TrialDraft } from "./trial-draft.ts";
import { type TrialRow, trialFields } from "./trial-rows.ts";
import type { DeskLinks, PanelWorld } from "./world.ts";

export interface TrialDesk {
  readonly draft: Store<TrialDraft>;
  readonly sender: Sender;
  readonly result: Sender;
  readonly takeBack: TakingBack;
  /** Begins a draft that tests this claim. */
  tryClaim(claim: Claim): void;
  /** Chooses the trial whose result `result` keeps, and sends it. */
  keep(trial: TrialRow, state: TrialState): void;
}

type Result = Omit<RequestFor<"save result">, "ask">;

function withResult(rows: readonly FieldRow[], { trialId, result, difference, low, high, p }: Result): FieldRow[] {
  return rows.map((row) => {
    if (textIn(row, "Id") !== trialId) return row;
    const fields: FieldRow["fields"] = { ...row.fields, Result: result };
    for (const [heading, value] of [
      ["Difference", difference],
      ["From", low],
      ["To", high],
      ["p", p],
    ] as const) {
      if (value !== null) fields[heading] = value;
    }
    return { ...row, fields };
  });
}

export function createTrialDesk(world: PanelWorld, links: DeskLinks & { readonly records: RecordsStore }): TrialDesk {
  const { loaded, records } = links;
  const draft = keptStore<TrialDraft>(world.storage, "stillroot.trial", {
    fresh: () => freshTrial(world.newId),
    read: readTrialDraft,
  });
  let sentDraft = draft.get();
  const sender = createSender<"save trial">(world.ask, world.after, {
    make: () => {
      const all = loaded.get();
      if (all === null) return "The sheet has not been read yet.";
      sentDraft = draft.get();
      return makeTrial(sentDraft, links.who(), all);
    },
    settle: (reply, { trial, claim, who }) => {
      records.change((now) => {
        if (now === null) return null;
        const known = now.trials.some((row) => textIn(row, "Id") === trial.id);
        const last = 1 + Math.max(1, ...now.trials.map(({ row }) => row));
        return {
          ...now,
          trials: known ? now.trials : [...now.trials, trialFields(trial, who, last)],
          claims: claim === undefined ? now.claims : withClaim(now.claims, claim, who),
        };
      });
      const isAsSent = reply.differing.length === 0 && draft.get() === sentDraft;
      draft.change((now) => {
        if (now.id !== trial.id) return now;
        // A trial that has begun stays as it was drawn; what was typed meanwhile stays for the next one.
        return isAsSent ? freshTrial(world.newId) : { ...now, id: world.newId(), claim: null };
      });
      links.keepName();
      const sentence = `The groups are drawn, by the number ${trial.draw}. They stand above.`;
      return { sentence: reply.differing.length > 0 ? FOUND_OTHERWISE : sentence, notes: reply.differing };
    },
  });
  clearWhenEdited(draft, sender);

  const takeBack = createTakingBack(world, links, {
    log: "Trials",
    gone: (id) =>
      records.change((now) =>
        now === null ? null : { ...now, trials: now.trials.filter((row) => textIn(row, "Id") !== id) },
      ),
  });

  let kept: Result | null = null;
  const result = createSender<"save result">(world.ask, world.after, {
    make: () => (kept === null ? "Choose a trial that is over." : { ask: "save result", ...kept }),
    settle: (reply, sent) => {
      records.change((now) => (now === null ? null : { ...now, trials: withResult(now.trials, sent) }));
      return { sentence: "The result is in the sheet. Say in Claims what came of it.", notes: reply.differing };
    },
  });
  return {
    draft,
    sender,
    result,
    takeBack,
    tryClaim: (claim) =>
      draft.set({
        ...freshTrial(world.newId),
        question: `${claim.claim.replace(/[.?!\s]+$/, "")}?`,
        claim: { ...draftOf(claim, world.newId), status: "trying" },
      }),
    keep: (trial, state) => {
      kept = {
        trialId: trial.id,
        result: resultText(state),
        difference: state.test?.difference ?? null,
        low: state.interval?.low ?? null,
        high: state.interval?.high ?? null,
        p: state.test?.p ?? null,
      };
      result.press();
    },
  };
}
