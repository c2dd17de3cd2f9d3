/** A panel without a page: a sheet whose answers the test gives when it likes, a clock it moves by hand, ids in a row. */

import type { ScriptRun } from "../../sidebar/calls.ts";
import { createAsk } from "../../sidebar/calls.ts";
import type { DraftStorage } from "../../sidebar/drafts.ts";
import { createPanel, type Panel } from "../../sidebar/panel-state.ts";
import type { Ask, Loaded, RequestFor } from "../../src/app/contract.ts";
import { FORMULAS, sheet } from "./sheet.ts";

/** One call that waits for its answer. */
export interface Waiting {
  readonly request: RequestFor<Ask>;
  reply(reply: unknown): Promise<void>;
  fail(sentence: string): Promise<void>;
  /** What the host does when it loses an answer. */
  lose(): Promise<void>;
  raise(error: unknown): Promise<void>;
}

export interface FakeHost {
  readonly run: ScriptRun;
  /** Every call so far, oldest first. */
  readonly calls: readonly Waiting[];
  last(): Waiting;
}

/** Lets promises that are settled run on. */
const settle = (): Promise<void> => new Promise((done) => setImmediate(done));

export function fakeHost(): FakeHost {
  const calls: Waiting[] = [];
  const runner = (success: (answer: unknown) => void, failure: (error: unknown) => void): ScriptRun => ({
    withSuccessHandler: (heard) => runner(heard, failure),
    withFailureHandler: (heard) => runner(success, heard),
    panelRequest: (json) => {
      const answer = (value: unknown): Promise<void> => {
        success(value);
        return settle();
      };
      calls.push({
        request: JSON.parse(json) as RequestFor<Ask>,
        reply: (reply) => answer(JSON.stringify({ ok: true, reply })),
        fail: (sentence) => answer(JSON.stringify({ ok: false, code: "test", sentence })),
        lose: () => answer(null),
        raise: (error) => {
          failure(error);
          return settle();
        },
      });
    },
  });
  return {
    run: runner(
      () => undefined,
      () => undefined,
    ),
    calls,
    last: () => {
      const last = calls[calls.length - 1];
      if (last === undefined) throw new Error("Nothing was asked.");
      return last;
    },
  };
}

/** Timers that run when the test says so. */
export function fakeClock(): { after: (ms: number, run: () => void) => () => void; pass(ms: number): void } {
  let now = 0;
  const timers = new Set<{ at: number; run: () => void }>();
  return {
    after: (ms, run) => {
      const timer = { at: now + ms, run };
      timers.add(timer);
      return () => timers.delete(timer);
    },
    pass: (ms) => {
      now += ms;
      for (const timer of [...timers].filter(({ at }) => at <= now).sort((a, b) => a.at - b.at)) {
        timers.delete(timer);
        timer.run();
      }
    },
  };
}

export function memoryStorage(): DraftStorage {
  const kept = new Map<string, string>();
  return { getItem: (key) => kept.get(key) ?? null, setItem: (key, value) => void kept.set(key, value) };
}

export interface TestPanel {
  readonly panel: Panel;
  readonly host: FakeHost;
  readonly clock: ReturnType<typeof fakeClock>;
  readonly storage: DraftStorage;
}

/** A panel that has read the sheet; another `storage` makes it one that is opened again. */
export async function openTestPanel(
  change: Partial<Loaded> = {},
  storage: DraftStorage = memoryStorage(),
  prefix = "made",
): Promise<TestPanel> {
  const host = fakeHost();
  const clock = fakeClock();
  let count = 0;
  const panel = createPanel({
    ask: createAsk(() => host.run),
    after: clock.after,
    newId: () => {
      count += 1;
      return `${prefix}-id-${count}`;
    },
    nowMs: () => 0,
    storage,
    formulas: FORMULAS,
  });
  panel.loading.press();
  await host.last().reply(sheet(change));
  return { panel, host, clock, storage };
}

/** "failed: sentence" and so on, to compare in one go. */
export function said(sender: Panel["loading"]): string {
  const now = sender.now.get();
  return "sentence" in now ? `${now.state}: ${now.sentence}` : now.state;
}
