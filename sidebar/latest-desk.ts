/** The desk of "Latest entries": takes rows of the care log back. */

import type { CareRow } from "../src/app/contract.ts";
import { deedWords } from "./latest.ts";
import { createSender, type Sender } from "./sending.ts";
import { createStore, type Store } from "./store.ts";
import type { DeskLinks, PanelWorld } from "./world.ts";

export interface LatestDesk {
  readonly sender: Sender;
  /** Said where an entry cannot be corrected just now; "" for nothing. */
  readonly refusal: Store<string>;
  takeBack(rows: readonly CareRow[]): void;
}

export function createLatestDesk(world: PanelWorld, links: DeskLinks): LatestDesk {
  /** Id of the row taken back → Id of the row that says so, kept so that a second try writes nothing twice. */
  const ids = new Map<string, string>();
  let taking: readonly CareRow[] = [];
  let taken: readonly CareRow[] = [];
  const sender = createSender<"take back">(world.ask, world.after, {
    make: () => {
      const who = links.who();
      if (who === "") return "Type your name first: a row can only be taken back by who logged it.";
      taken = taking;
      const [first, ...more] = taking.map(({ id: takes }) => {
        const id = ids.get(takes) ?? world.newId();
        ids.set(takes, id);
        return { id, takes };
      });
      if (first === undefined) return "Choose an entry.";
      return { ask: "take back", who, log: "Care log", ...first, ...(more.length > 0 ? { more } : {}) };
    },
    settle: (reply) => {
      links.reload();
      const words = deedWords(taken);
      return {
        sentence:
          reply.written === 0
            ? `${words}: taken back before.`
            : `Taken back: ${words}. The row stays in the log, with a new one that says so.`,
      };
    },
  });
  return {
    sender,
    refusal: createStore(""),
    takeBack: (rows) => {
      if (sender.now.get().state !== "under way") taking = rows;
      sender.press();
    },
  };
}
