/** The desk of "Move from soil": writes the step that was done into the care log. */

import { type MoveStep, STEP_ROWS } from "../src/core/move.ts";
import { loadedAfter } from "./care-after.ts";
import { doublesWords } from "./doubles.ts";
import { MOVE_WORDS } from "./move-words.ts";
import { createSender, type Sender } from "./sending.ts";
import { showDay } from "./show.ts";
import { createStore, type Store } from "./store.ts";
import { typedDay } from "./typed.ts";
import type { DeskLinks, PanelWorld } from "./world.ts";

export interface MoveDesk {
  /** ISO day of the step, "" for today. */
  readonly day: Store<string>;
  /** What is filled in with the step; "" for not said. */
  readonly solution: Store<string>;
  readonly sender: Sender;
  /** The plant and step last pressed; null before the first. */
  readonly pressed: Store<{ readonly plant: string; readonly step: MoveStep } | null>;
  did(plant: string, step: MoveStep): void;
}

export function createMoveDesk(world: PanelWorld, links: DeskLinks): MoveDesk {
  const { loaded } = links;
  const day = createStore("");
  const solution = createStore("");
  const pressed = createStore<{ readonly plant: string; readonly step: MoveStep } | null>(null);
  const ids = new Map<string, string>();
  let asked = "";

  const sender = createSender<"log care">(world.ask, world.after, {
    make: () => {
      const all = loaded.get();
      const now = pressed.get();
      const who = links.who();
      if (all === null || now === null) return "The sheet has not been read yet.";
      if (who === "") return "Type your name first, so that the log can say who did this.";
      const on = typedDay(day.get(), all.today);
      if (on === null) return "Choose the date.";
      const key = `${now.plant}\n${now.step}\n${on}`;
      const id = ids.get(key) ?? world.newId();
      ids.set(key, id);
      const entry = {
        ...STEP_ROWS[now.step],
        id,
        day: on,
        plant: now.plant,
        amountMl: null,
        solution: now.step === "weak" || now.step === "full" ? solution.get().trim() : "",
        ecMsCm: null,
        pH: null,
        note: "",
      };
      return { ask: "log care", who, entries: [entry], ...(asked === key ? { again: true } : {}) };
    },
    settle: (reply, sent) => {
      const [entry] = sent.entries;
      const now = pressed.get();
      const key = `${now?.plant}\n${now?.step}\n${entry?.day}`;
      if (reply.doubles !== undefined && reply.doubles.length > 0) {
        asked = key;
        const words = doublesWords(reply.doubles, {
          today: loaded.get()?.today ?? "",
          nowMs: world.nowMs(),
        });
        return { sentence: `${words} Press the step again to log it all the same.`, asks: true };
      }
      asked = "";
      ids.delete(key);
      loaded.change((all) => (all === null ? null : loadedAfter(all, sent.entries, sent.who)));
      links.keepName();
      const step = now === null ? "" : MOVE_WORDS[now.step].done;
      return { sentence: `Logged for ${entry?.plant ?? ""}: ${step}, ${showDay(entry?.day ?? "")}.` };
    },
  });
  return {
    day,
    solution,
    sender,
    pressed,
    did: (plant, step) => {
      if (sender.now.get().state !== "under way") pressed.set({ plant, step });
      sender.press();
    },
  };
}
