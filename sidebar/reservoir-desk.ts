/** The desk of "Reservoirs": what is chosen there, and the way from what is due to its row in "Log care". */

import type { Loaded } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import type { DueKind } from "../src/core/due.ts";
import type { CareDesk } from "./care-desk.ts";
import { keptStore } from "./drafts.ts";
import { freshReservoir, type ReservoirDraft, readReservoir } from "./reservoir-draft.ts";
import type { Store } from "./store.ts";
import type { PanelWorld } from "./world.ts";

export interface ReservoirDesk {
  readonly draft: Store<ReservoirDraft>;
  /** Opens "Log care" with these plants and the event of what is due chosen; nothing is sent. */
  log(due: DueKind, plants: readonly string[]): void;
}

/** The event that settles what is due. A look is written down as a note. */
export const EVENT_OF: Readonly<Record<Exclude<DueKind, "Look again">, string>> = {
  "Top up": "Top up",
  Flush: "Flush in place",
  Change: "Solution change",
  "Pot up": "Pot up",
  "Look at": "Note",
};

export function createReservoirDesk(
  world: PanelWorld,
  links: { readonly loaded: Store<Loaded | null>; readonly care: CareDesk; readonly section: Store<string> },
): ReservoirDesk {
  const { loaded, care, section } = links;
  const draft = keptStore<ReservoirDraft>(world.storage, "stillroot.reservoir", {
    fresh: freshReservoir,
    read: readReservoir,
  });
  return {
    draft,
    log(due, plants) {
      if (due === "Look again") return;
      const wanted = nameKey(EVENT_OF[due]);
      const event = loaded.get()?.events.find((one) => nameKey(one.event) === wanted)?.event ?? "";
      if (care.draft.get().corrects !== "") care.stopCorrecting();
      care.choose(Object.keys(care.draft.get().chosen), false);
      care.choose(plants, true);
      care.draft.change((now) => ({ ...now, event, find: "", place: "", day: "", amountMl: "", oneByOne: "", at: "" }));
      section.set("care");
    },
  };
}
