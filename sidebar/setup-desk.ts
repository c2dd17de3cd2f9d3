/** The desk of "Set up": one's name, and a plant list of one's own. */

import type { Loaded, ReplyFor } from "../src/app/contract.ts";
import { isRecord, keptStore, textOf, textsOf } from "./drafts.ts";
import type { FunctionHelp } from "./formulas.ts";
import { columnsOf } from "./list-guess.ts";
import { columnsProblem, guessColumns, rememberedColumns } from "./own-list.ts";
import { makePast, type Past, type PastDraft, pastOf } from "./past.ts";
import { clearWhenEdited, createSender, type Sender } from "./sending.ts";
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
  /** Chooses a tab, proposes its columns by their headings, and looks into it for a better guess. */
  chooseTab(tab: string): void;
  /** The chosen tab as it stands; null until it was read. */
  readonly own: Store<ReplyFor<"read list"> | null>;
  readonly ownSender: Sender;
  readonly past: Store<PastDraft>;
  /** What the chosen tab tells of the past, null until it was read. */
  pastNow(): Past | null;
  readonly pastSender: Sender;
  readonly formulas: readonly FunctionHelp[];
  readonly find: Store<string>;
}

export function createSetupDesk(
  world: PanelWorld,
  { loaded, reload }: { readonly loaded: Store<Loaded | null>; readonly reload: () => void },
): SetupDesk {
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

  const own = createStore<ReplyFor<"read list"> | null>(null);
  /** The columns as they were proposed by their headings; a person who changed them meanwhile keeps theirs. */
  let proposed: OwnListDraft["columns"] | null = null;
  const ownSender = createSender<"read list">(world.ask, world.after, {
    make: () => {
      const { tab } = list.get();
      return tab === "" ? "Choose a tab." : { ask: "read list", tab };
    },
    settle: (reply, sent) => {
      if (list.get().tab !== sent.tab) {
        // Another tab was chosen meanwhile; this sender is free again once this answer is settled.
        world.after(0, () => ownSender.press());
        return { sentence: "Looking into the other tab…" };
      }
      own.set(reply);
      if (list.get().columns === proposed) list.set({ tab: sent.tab, columns: guessColumns(reply.headings, reply) });
      const more = reply.left === 0 ? "" : ` ${count(reply.left, "row")} below them were not looked at.`;
      return { sentence: `Looked at ${count(reply.rows.length, "row")}.${more}` };
    },
  });

  const past = keptStore<PastDraft>(world.storage, "stillroot.past", {
    fresh: () => ({ events: {}, orders: {} }),
    read: (kept) => (isRecord(kept) ? { events: textsOf(kept.events), orders: textsOf(kept.orders) } : null),
  });
  const pastNow = (): Past | null => {
    const [tab, all] = [own.get(), loaded.get()];
    if (tab === null || all === null) return null;
    return pastOf(past.get(), { tab, columns: columnsOf(tab), plantHeading: list.get().columns.Plant ?? "" }, all);
  };
  const pastSender = createSender<"log past">(world.ask, world.after, {
    make: () => {
      const now = pastNow();
      const who = loaded.get()?.who.trim() || name.get()?.trim() || "";
      return now === null ? "Choose a tab first." : makePast(now, who);
    },
    settle: ({ written, already }) => {
      if (written > 0) reload();
      const there = already === 0 ? "" : ` ${count(already, "entry", "entries")} stood there already.`;
      return { sentence: `Wrote ${count(written, "entry", "entries")} into the care log.${there}` };
    },
  });
  clearWhenEdited(past, pastSender);

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
      const kept = rememberedColumns(tab, loaded.get());
      proposed = kept === null ? guessColumns(headings) : null;
      list.set({ tab, columns: kept ?? proposed ?? {} });
      own.set(null);
      past.set({ events: {}, orders: {} });
      if (tab !== "") ownSender.press();
    },
    own,
    ownSender,
    past,
    pastNow,
    pastSender,
  };
}
