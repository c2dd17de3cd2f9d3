/** One press, one row: double presses, failures, lost and late answers, a panel closed meanwhile. */

import { beforeEach, describe, expect, test } from "vitest";
import { SENTENCES } from "../../sidebar/calls.ts";
import { FOUND_OTHERWISE, GIVE_UP_AFTER_MS, NO_ANSWER_YET, SLOW_AFTER_MS } from "../../sidebar/sending.ts";
import { MAY_HAVE_SAVED } from "../../src/core/saying.ts";
import { memoryStorage, openTestPanel, said, type TestPanel } from "./world.ts";

const WRITTEN = { written: 1, already: 0, differing: [] };
const THERE = { written: 0, already: 1, differing: [] };

let t: TestPanel;

/** A batch that is ready to be logged. */
function putTogether({ panel }: TestPanel): void {
  panel.batch.draft.change((now) => ({
    ...now,
    water: "tap",
    target: "rooting, weak",
    feeds: ["Potassium nitrate", "Calcium nitrate tetrahydrate"],
    litres: "8",
  }));
}

function batchIds({ host }: TestPanel): string[] {
  return host.calls.flatMap(({ request }) => (request.ask === "log batch" ? [request.batch.id] : []));
}

beforeEach(async () => {
  t = await openTestPanel();
  putTogether(t);
});

describe("a press", () => {
  test("pressed twice is sent once", async () => {
    t.panel.batch.sender.press();
    t.panel.batch.sender.press();
    expect(batchIds(t)).toEqual(["made-id-1"]);
    await t.host.last().reply(WRITTEN);
    expect(said(t.panel.batch.sender)).toBe("done: Logged 8 L of “Rooting, weak”.");
  });

  test("with something missing is not sent, and the sentence goes when the person types on", () => {
    t.panel.batch.draft.change((now) => ({ ...now, litres: "" }));
    t.panel.batch.sender.press();
    expect(batchIds(t)).toEqual([]);
    expect(said(t.panel.batch.sender)).toBe("blocked: Type how many litres you mix.");
    t.panel.batch.draft.change((now) => ({ ...now, litres: "8" }));
    expect(said(t.panel.batch.sender)).toBe("idle");
  });

  test("puts the batch on the list and on the desk for its readings", async () => {
    t.panel.batch.sender.press();
    await t.host.last().reply(WRITTEN);
    expect(t.panel.loaded.get()?.batches[0]).toMatchObject({ id: "made-id-1", litres: 8, target: "Rooting, weak" });
    expect(t.panel.readings.draft.get().batchId).toBe("made-id-1");
    expect(t.panel.batch.draft.get().logged).toBe(true);
  });

  test("for the next batch gets an id of its own and keeps the choices", async () => {
    t.panel.batch.sender.press();
    await t.host.last().reply(WRITTEN);
    t.panel.batch.another();
    expect(t.panel.batch.draft.get()).toMatchObject({ water: "tap", litres: "8", logged: false });
    t.panel.batch.sender.press();
    const [first, second] = batchIds(t);
    expect(second).not.toBe(first);
  });
});

describe("after a failure", () => {
  test.each<[string, (panel: TestPanel) => Promise<void>, string]>([
    ["said", ({ host }) => host.last().fail("The sheet is busy."), "failed: The sheet is busy."],
    ["lost", ({ host }) => host.last().lose(), `failed: ${SENTENCES.noAnswer} ${MAY_HAVE_SAVED}`],
    [
      "thrown",
      ({ host }) => host.last().raise(new Error("PERMISSION_DENIED")),
      `failed: ${SENTENCES.notAllowed} ${MAY_HAVE_SAVED}`,
    ],
  ])("that was %s, all is still typed and the retry has the same id", async (_, happen, outcome) => {
    const typed = t.panel.batch.draft.get();
    t.panel.batch.sender.press();
    await happen(t);
    expect(said(t.panel.batch.sender)).toBe(outcome);
    expect(t.panel.batch.draft.get()).toEqual(typed);
    t.panel.batch.sender.press();
    expect(batchIds(t)).toEqual(["made-id-1", "made-id-1"]);
    await t.host.last().reply(THERE);
    expect(said(t.panel.batch.sender)).toBe("done: Logged 8 L of “Rooting, weak”.");
    expect(t.panel.loaded.get()?.batches.filter(({ id }) => id === "made-id-1")).toHaveLength(1);
  });

  test("a row that holds something else is told, in the sheet's words", async () => {
    t.panel.batch.sender.press();
    await t.host.last().lose();
    t.panel.batch.draft.change((now) => ({ ...now, litres: "9" }));
    t.panel.batch.sender.press();
    await t.host.last().reply({ ...THERE, differing: ["This record is already in row 9, with another Litres."] });
    expect(t.panel.batch.sender.now.get()).toMatchObject({
      state: "done",
      sentence: FOUND_OTHERWISE,
      notes: ["This record is already in row 9, with another Litres."],
    });
  });

  test("the draft and its id outlive the panel", async () => {
    t.panel.batch.sender.press();
    const again = await openTestPanel({}, t.storage, "other");
    expect(again.panel.batch.draft.get()).toEqual(t.panel.batch.draft.get());
    again.panel.batch.sender.press();
    expect(batchIds(again)).toEqual(["made-id-1"]);
  });

  test("a storage that refuses everything does no harm", async () => {
    const refuse = (): never => {
      throw new Error("The sandbox refuses storage.");
    };
    const shut = await openTestPanel({}, { getItem: refuse, setItem: refuse });
    putTogether(shut);
    shut.panel.batch.sender.press();
    expect(batchIds(shut)).toEqual(["made-id-1"]);
  });

  test("damaged kept text starts a fresh draft", async () => {
    const storage = memoryStorage();
    storage.setItem("stillroot.batch", '{"id":"half');
    const fresh = await openTestPanel({}, storage);
    expect(fresh.panel.batch.draft.get()).toMatchObject({ id: "made-id-1", water: "" });
  });
});

describe("a late answer", () => {
  test("is waited for, with a word after a while", async () => {
    t.panel.batch.sender.press();
    t.clock.pass(SLOW_AFTER_MS);
    expect(t.panel.batch.sender.now.get()).toEqual({ state: "under way", slow: true });
    await t.host.last().reply(WRITTEN);
    t.clock.pass(GIVE_UP_AFTER_MS);
    expect(said(t.panel.batch.sender)).toContain("done");
  });

  test("after giving up still counts", async () => {
    t.panel.batch.sender.press();
    t.clock.pass(GIVE_UP_AFTER_MS);
    expect(said(t.panel.batch.sender)).toBe(`failed: ${NO_ANSWER_YET}`);
    await t.host.last().reply(WRITTEN);
    expect(said(t.panel.batch.sender)).toContain("done");
  });

  test("of the first press leaves the second, which waits, alone", async () => {
    t.panel.batch.sender.press();
    const first = t.host.last();
    t.clock.pass(GIVE_UP_AFTER_MS);
    t.panel.batch.sender.press();
    await first.fail("Too late.");
    expect(said(t.panel.batch.sender)).toBe("under way");
    await first.reply(WRITTEN);
    expect(said(t.panel.batch.sender)).toBe("under way");
    await t.host.last().reply(THERE);
    expect(said(t.panel.batch.sender)).toContain("done");
  });

  test("of a press that is settled changes nothing any more", async () => {
    t.panel.batch.sender.press();
    const first = t.host.last();
    t.clock.pass(GIVE_UP_AFTER_MS);
    t.panel.batch.sender.press();
    await t.host.last().reply(WRITTEN);
    t.panel.batch.another();
    await first.fail("Far too late.");
    expect(said(t.panel.batch.sender)).toBe("idle");
    expect(t.panel.batch.draft.get().logged).toBe(false);
  });
});

describe("reading the sheet", () => {
  test("that fails at first can be tried again, and what was typed stays", async () => {
    t.panel.loading.press();
    await t.host.last().lose();
    expect(said(t.panel.loading)).toBe(`failed: ${SENTENCES.noAnswer}`);
    expect(t.panel.loaded.get()?.who).toBe("Ama");
    expect(t.panel.batch.draft.get().litres).toBe("8");
  });
});

describe("a name that is not known yet", () => {
  test("is asked for, goes into the row as typed, and is kept after the row was written", async () => {
    const nameless = await openTestPanel({ who: "" });
    putTogether(nameless);
    nameless.panel.batch.sender.press();
    expect(said(nameless.panel.batch.sender)).toContain("Type your name first");
    nameless.panel.setup.name.set(" Bo ");
    nameless.panel.batch.sender.press();
    expect(nameless.host.last().request).toMatchObject({ ask: "log batch", who: "Bo" });
    await nameless.host.last().reply(WRITTEN);
    expect(nameless.host.last().request).toEqual({ ask: "set name", who: "Bo" });
    await nameless.host.last().reply({ who: "Bo" });
    expect(nameless.panel.loaded.get()?.who).toBe("Bo");
  });
});
