/** Takes one row of a log back, by the person who logged it: the row stays in the sheet and no longer counts. */

import type { RequestFor } from "../src/app/contract.ts";
import { createSender, type Sender } from "./sending.ts";
import type { DeskLinks, PanelWorld } from "./world.ts";

export interface TakingBack {
  readonly sender: Sender;
  /** Chooses the row, and sends. */
  row(id: string): void;
}

/** `gone` is told the Id of the row that no longer counts. */
export function createTakingBack(
  world: PanelWorld,
  links: Pick<DeskLinks, "who">,
  { log, gone }: { readonly log: RequestFor<"take back">["log"]; readonly gone: (id: string) => void },
): TakingBack {
  let taking = { id: "", takes: "" };
  const sender = createSender<"take back">(world.ask, world.after, {
    make: () => {
      const who = links.who();
      if (who === "") return "Type your name first: a row can only be taken back by who logged it.";
      return { ask: "take back", who, log, ...taking };
    },
    settle: (_, { takes }) => {
      gone(takes);
      const tab = log.endsWith(" log") ? `the ${log}` : log;
      return { sentence: `Taken back. The row stays in ${tab} and no longer counts.` };
    },
  });
  return {
    sender,
    row: (takes) => {
      // The same row again is the same press: its id stays.
      if (taking.takes !== takes) taking = { id: world.newId(), takes };
      sender.press();
    },
  };
}
