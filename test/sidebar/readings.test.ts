/** Readings of a batch: which batches wait, and that a reading stays with the batch it was typed for. */

import { describe, expect, test } from "vitest";
import { batchWords, waitingBatches } from "../../sidebar/readings.ts";
import { sheet } from "./sheet.ts";
import { openTestPanel, said } from "./world.ts";

const { batches } = sheet();
const [waiting, read] = batches;
if (waiting === undefined || read === undefined) throw new Error("There should be two batches.");

describe("batches that wait", () => {
  test("lack the EC, the pH or both, and have an id that can be found again", () => {
    expect(waitingBatches(batches).map(({ id }) => id)).toEqual(["batch-0000-0002"]);
    expect(waitingBatches([{ ...read, measuredPH: null }])).toHaveLength(1);
    expect(
      waitingBatches([
        { ...waiting, id: "My batch" },
        { ...waiting, id: "" },
      ]),
    ).toEqual([]);
  });

  test("are told apart in words", () => {
    expect(batchWords(waiting)).toBe("1 Mar 2026, 8 L, Rooting, weak");
    expect(batchWords({ ...waiting, day: null, litres: null, target: "", water: "Tap" })).toBe("no date, Tap");
  });
});

describe("readings", () => {
  test("are sent once, with decimal commas read, and cleared", async () => {
    const { panel, host } = await openTestPanel();
    panel.readings.draft.change((now) => ({ ...now, ec: "0,62", pH: "5.9" }));
    panel.readings.sender.press();
    panel.readings.sender.press();
    expect(host.calls).toHaveLength(2);
    expect(host.last().request).toEqual({
      ask: "log readings",
      batchId: "batch-0000-0002",
      ecMsCm: 0.62,
      pH: 5.9,
      verdict: expect.stringMatching(/^As expected: /),
    });
    await host.last().reply({ written: 1, already: 0, differing: [] });
    expect(said(panel.readings.sender)).toBe("done: Logged EC 0.62 mS/cm and pH 5.9.");
    expect(panel.readings.draft.get()).toMatchObject({ ec: "", pH: "" });
    expect(waitingBatches(panel.loaded.get()?.batches ?? [])).toEqual([]);
  });

  test("of one meter leave the other to come", async () => {
    const { panel, host } = await openTestPanel();
    panel.readings.draft.change((now) => ({ ...now, pH: "6" }));
    panel.readings.sender.press();
    expect(host.last().request).toMatchObject({ ecMsCm: null, pH: 6 });
    await host.last().reply({ written: 1, already: 0, differing: [] });
    expect(panel.loaded.get()?.batches[0]).toMatchObject({ measuredEcMsCm: null, measuredPH: 6 });
  });

  test("typed for one batch do not go to a newer one that comes in", async () => {
    const { panel, host } = await openTestPanel();
    panel.readings.draft.change((now) => ({ ...now, batchId: waiting.id, ec: "1.1" }));
    panel.loaded.change((now) =>
      now === null ? null : { ...now, batches: [{ ...waiting, id: "batch-0000-0003" }, ...now.batches] },
    );
    panel.readings.choose("batch-0000-0003");
    panel.readings.sender.press();
    expect(host.last().request).toMatchObject({ batchId: waiting.id });
  });

  test("of a batch that has gone from the list are kept, not sent elsewhere", async () => {
    const { panel, host } = await openTestPanel();
    panel.readings.draft.change((now) => ({ ...now, batchId: "batch-0000-0009", ec: "1.1" }));
    panel.readings.sender.press();
    expect(host.calls).toHaveLength(1);
    expect(said(panel.readings.sender)).toBe(
      "blocked: This batch is no longer among the newest in the log. Choose another.",
    );
    expect(panel.readings.draft.get().ec).toBe("1.1");
  });

  test("that are blank or cannot be are not sent", async () => {
    const { panel } = await openTestPanel();
    panel.readings.sender.press();
    expect(said(panel.readings.sender)).toBe("blocked: Type the EC, the pH or both.");
    panel.readings.draft.change((now) => ({ ...now, pH: "acid" }));
    panel.readings.sender.press();
    expect(said(panel.readings.sender)).toBe('blocked: pH is "acid". Give a plain number like 1.2.');
  });

  test("on a ppm meter are sent in mS/cm", async () => {
    const { panel, host } = await openTestPanel({ meterScale: 500 });
    panel.readings.draft.change((now) => ({ ...now, ec: "600" }));
    panel.readings.sender.press();
    expect(host.last().request).toMatchObject({ ecMsCm: 1.2 });
  });
});
