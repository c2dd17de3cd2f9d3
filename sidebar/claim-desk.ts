/** The desk of "Claims": the draft of one claim, new or changed, and the button that saves it. */

import { type ClaimDraft, claimEntry, draftOf, freshClaim, readClaim } from "./claim-draft.ts";
import { type Claim, withClaim } from "./claim-rows.ts";
import { keptStore } from "./drafts.ts";
import type { RecordsStore } from "./panel-state.ts";
import { clearWhenEdited, createSender, FOUND_OTHERWISE, type Sender } from "./sending.ts";
import type { Store } from "./store.ts";
import { createTakingBack, type TakingBack } from "./taking-back.ts";
import type { DeskLinks, PanelWorld } from "./world.ts";

export interface ClaimDesk {
  readonly draft: Store<ClaimDraft>;
  readonly sender: Sender;
  readonly takeBack: TakingBack;
  /** Puts a claim into the form; what is saved replaces its row. */
  change(claim: Claim): void;
  /** An empty form again. */
  leave(): void;
}

export function createClaimDesk(world: PanelWorld, links: DeskLinks & { readonly records: RecordsStore }): ClaimDesk {
  const { loaded, records } = links;
  const draft = keptStore<ClaimDraft>(world.storage, "stillroot.claim", {
    fresh: () => freshClaim(world.newId),
    read: readClaim,
  });
  let sentDraft = draft.get();
  const sender = createSender<"save claim">(world.ask, world.after, {
    make: () => {
      const all = loaded.get();
      if (all === null) return "The sheet has not been read yet.";
      const who = links.who();
      if (who === "") return "Type your name first, so that the sheet can say who wrote this.";
      sentDraft = draft.get();
      const claim = claimEntry(sentDraft, all);
      return typeof claim === "string" ? claim : { ask: "save claim", who, claim };
    },
    settle: (reply, { claim, who }) => {
      records.change((now) => (now === null ? null : { ...now, claims: withClaim(now.claims, claim, who) }));
      const isAsSent = reply.differing.length === 0 && draft.get() === sentDraft;
      draft.change((now) => {
        if (now.id !== claim.id) return now;
        // What was typed meanwhile, or is not what an earlier press wrote, becomes a change of that row.
        return isAsSent ? freshClaim(world.newId) : { ...now, id: world.newId(), corrects: claim.id };
      });
      links.keepName();
      const sentence = claim.corrects === undefined ? "The claim is saved." : "The change is saved; the old row stays.";
      return { sentence: reply.differing.length > 0 ? FOUND_OTHERWISE : sentence, notes: reply.differing };
    },
  });
  clearWhenEdited(draft, sender);
  const takeBack = createTakingBack(world, links, {
    log: "Claims",
    // The row that it replaced counts again, and only the sheet has that one.
    gone: () => links.reload(),
  });
  return {
    draft,
    sender,
    takeBack,
    change: (claim) => draft.set(draftOf(claim, world.newId)),
    leave: () => draft.set(freshClaim(world.newId)),
  };
}
