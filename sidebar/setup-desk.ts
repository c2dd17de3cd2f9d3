/** The desk of "Set up": one's name, and a plant list of one's own. */

import type { Loaded, ReplyFor } from "../src/app/contract.ts";
import { isRecord, keptStore, textOf, textsOf } from "./drafts.ts";
import type { FunctionHelp } from "./formulas.ts";
import { columnsProblem, guessColumns } from "./own-list.ts";
import { createSender, type Sender } from "./sending.ts";
import { count } from "./show.ts";
import { createStore, type Store } from "./store.ts";
import type { PanelWorld } from "./world.ts";

export interface OwnListDraft {
  readonly tab: string;
  /** Our heading → theirs, "" for none. */
  readonly columns: Readonly<Record<string, string>>;
}

export type Tabs = ReplyFor<"look at tabs">["tabs"];

export interface SetupDesk {
  /** The name as typed; "" until the person types, then the loaded one is shown. */
  readonly name: Store<string | null>;
  readonly nameSender: Sender;
  /** null until they were asked for. */
  readonly tabs: Store<Tabs | null>;
  readonly tabsSender: Sender;
  readonly list: Store<OwnListDraft>;
  readonly listSender: Sender;
  /** Chooses a tab and proposes its columns. */
  chooseTab(tab: string): void;
  readonly formulas: readonly FunctionHelp[];
  readonly find: Store<string>;
}

export function createSetupDesk(world: PanelWorld, loaded: Store<Loaded | null>, reload: () => void): SetupDesk {
  const name = keptStore<string | null>(world.storage, "stillroot.name", {
    fresh: () => null,
    read: (kept) => (typeof kept === "string" ? kept : null),
  });
  const list = keptStore<OwnListDraft>(world.storage, "stillroot.list", {
    fresh: () => ({ tab: "", columns: {} }),
    read: (kept) => (isRecord(kept) ? { tab: textOf(kept, "tab"), columns: textsOf(kept.columns) } : null),
  });
  const find = keptStore<string>(world.storage, "stillroot.find", {
    fresh: () => "",
    read: (kept) => (typeof kept === "string" ? kept : null),
  });
  const tabs = createStore<Tabs | null>(null);

  const nameSender = createSender<"set name">(world.ask, world.after, {
    make: () => {
      const who = (name.get() ?? loaded.get()?.who ?? "").trim();
      return who === "" ? "Type your name." : { ask: "set name", who };
    },
    settle: ({ who }) => {
      loaded.change((now) => (now === null ? null : { ...now, who }));
      name.set(null);
      return { sentence: `Rows you log now say ${who}.` };
    },
  });

  const tabsSender = createSender<"look at tabs">(world.ask, world.after, {
    make: () => ({ ask: "look at tabs" }),
    settle: (reply) => {
      tabs.set(reply.tabs);
      return {
        sentence:
          reply.tabs.length === 0 ? "The sheet has no tab with headings." : `Found ${count(reply.tabs.length, "tab")}.`,
      };
    },
  });

  const listSender = createSender<"use plant list">(world.ask, world.after, {
    make: () => {
      const { tab, columns } = list.get();
      if (tab === "") return "Choose a tab.";
      return columnsProblem(columns) ?? { ask: "use plant list", tab, columns: { ...columns } };
    },
    settle: (reply) => {
      reload();
      return { sentence: `Plants now come from “${reply.plantTab}”: ${count(reply.plants, "plant")}.` };
    },
  });

  return {
    name,
    nameSender,
    tabs,
    tabsSender,
    list,
    listSender,
    formulas: world.formulas,
    find,
    chooseTab: (tab) => {
      const headings = tabs.get()?.find((entry) => entry.tab === tab)?.headings ?? [];
      list.set({ tab, columns: guessColumns(headings) });
    },
  };
}
