/** The verdict on a reading, from the rows of the log to the cell that keeps it. */

import { describe, expect, test } from "vitest";
import { freshReadings, readingsCheck, verdictText } from "../../sidebar/readings.ts";
import { checkBatch, ratiosOf } from "../../sidebar/readings-check.ts";
import type { BatchRow, Loaded } from "../../src/app/contract.ts";
import { readShelf } from "../../src/core/feeds.ts";
import { sheet } from "./sheet.ts";
import { openTestPanel, said } from "./world.ts";

const loaded = sheet();
const shelf = readShelf(loaded.feeds.map(({ row, fields }) => ({ fields, where: `row ${row} of Feeds` })));
const [first, second] = loaded.batches;
if (first === undefined || second === undefined) throw new Error("There should be two batches.");
const meter = { scale: null, tempC: null, corrected: null };

/** Half-strength salts in pure water; the EC to expect by equivalent conductivities of the CRC Handbook is near 1.0. */
const batch: BatchRow = {
  ...first,
  water: "Pure water",
  litres: 10,
  doses:
    "Potassium nitrate 0.2528 g/L (2.528 g); Calcium nitrate tetrahydrate 0.5904 g/L (5.904 g); Magnesium sulfate heptahydrate 0.2465 g/L (2.465 g)",
  reached: { N: 105.06, K: 97.76, Ca: 100.2, Mg: 24.31, S: 32.06 },
  predictedEcMsCm: 1.1,
};
const history = (ratios: readonly number[]): BatchRow[] =>
  ratios.map((ratio, k) => ({ ...second, id: `earlier-00${k}`, predictedEcMsCm: 1, measuredEcMsCm: ratio }));
const steady = [1.01, 0.99, 1.02, 1, 0.98, 1.03, 1.01, 0.99, 1, 1.02];
const ask = (ecMsCm: number, change: Partial<BatchRow> = {}, all: Partial<Loaded> = {}, feeds = shelf) => {
  const row = { ...batch, ...change };
  const batches = [row, ...history(steady)];
  return checkBatch({ batch: row, ecMsCm, meter, shelf: feeds }, { batches, waters: loaded.waters, ...all });
};

describe("a reading", () => {
  test("near the EC that was logged is as expected", () => {
    const { check, unchecked } = ask(1.11);
    expect(check?.verdict).toBe("as expected");
    expect(check?.predictedMsCm).toBeCloseTo(1.1, 9);
    expect(unchecked).toEqual([]);
  });

  test("of a doubled calcium nitrate names it first", () => {
    // By hand: 5.0 meq/L of Ca and NO3 more, 59.47 + 71.42 S cm²/eq (CRC Handbook), less a twentieth for strength.
    const { check } = ask(1.1 + 0.95 * 5 * 0.1309);
    expect(check?.verdict).toBe("look again");
    expect(check?.slips[0]).toMatchObject({ kind: "doubled", feed: "Calcium nitrate tetrahydrate" });
  });

  test("of a volume this household fills besides names that volume", () => {
    const others = history(steady).map((row) => ({ ...row, litres: 8 }));
    const { check } = ask(1.1 * (10 / 8) * 0.995, {}, { batches: [batch, ...others] });
    expect(check?.slips.map(({ words }) => words)).toContain("there were 8 L of water, not 10");
  });

  test("of a batch whose feed has left the shelf is judged all the same, and says what cannot be checked", () => {
    const { check, unchecked } = ask(
      1.7,
      {},
      {},
      shelf.filter(({ name }) => name !== "Calcium nitrate tetrahydrate"),
    );
    expect(check?.verdict).toBe("look again");
    expect(check?.predictedMsCm).toBeCloseTo(1.1, 9);
    expect(unchecked).toEqual([
      "Calcium nitrate tetrahydrate is no longer on the shelf, so whether it went in twice or was left out cannot be checked.",
    ]);
  });

  test("of a batch with doses typed in one's own way says so", () => {
    const { check, unchecked } = ask(2, { doses: "two spoons of blue" });
    expect(check?.verdict).toBe("look again");
    expect(unchecked[0]).toMatch(/^“two spoons of blue” is not a dose\./);
    expect(unchecked[0]).toMatch(/So no slip with a feed can be checked\.$/);
  });

  test("of a batch the log knows nothing of has no verdict", () => {
    const nothing = { doses: "", reached: {}, predictedEcMsCm: null };
    expect(ask(1, nothing)).toEqual({
      check: null,
      unchecked: [
        "The log has no EC to expect for this batch.",
        "The log has no doses for this batch. So no slip with a feed can be checked.",
      ],
    });
  });
});

describe("a reading in ppm", () => {
  const onMeter = (ppm: number, scale: number) =>
    readingsCheck(
      { ...freshReadings(), batchId: batch.id, ec: String(ppm) },
      sheet({ meterScale: scale, batches: [batch, ...history(steady)] }),
      shelf,
    )?.check;

  test("is judged in mS/cm", () => {
    expect(onMeter(550, 500)).toMatchObject({ verdict: "as expected", slips: [] });
  });

  test("of a meter that was set to another scale names that scale", () => {
    // 1.1 mS/cm shows as 770 on the scale 700; taken for the scale 500 that is 1.54 mS/cm.
    const check = onMeter(770, 500);
    expect(check?.verdict).toBe("look again");
    expect(check?.slips.slice(0, 2).map(({ words }) => words)).toContain("the meter was set to the 700 scale, not 500");
  });

  test("not corrected for the temperature of the solution is named once that is known", () => {
    const cold = { ...freshReadings(), batchId: batch.id, ec: String(1.1 * (1 + 0.0191 * (16 - 25))), temp: "16" };
    const all = sheet({ batches: [batch, ...history(steady)] });
    expect(readingsCheck(cold, all, shelf)?.check?.slips[0]?.words).toBe(
      "the reading was not corrected from 16 to 25 °C",
    );
    expect(readingsCheck({ ...cold, temp: "" }, all, shelf)?.check?.slips.map(({ kind }) => kind)).not.toContain(
      "not corrected",
    );
  });
});

test("a check is worked out between two keys, with 200 batches in the log", () => {
  const many = Array.from({ length: 20 }, () => history(steady)).flat();
  const all = { batches: [batch, ...many], waters: loaded.waters };
  const given = { batch, ecMsCm: 1.7, meter: { scale: 500, tempC: 18, corrected: null }, shelf };
  checkBatch(given, all);
  const start = performance.now();
  for (let turn = 0; turn < 10; turn++) checkBatch(given, all);
  // Two keys of a fast typist are 100 ms apart.
  expect((performance.now() - start) / 10).toBeLessThan(100);
});

describe("the history", () => {
  test("is every other mixed batch with both numbers, oldest first", () => {
    const rows = [
      { ...second, id: "c", predictedEcMsCm: 1, measuredEcMsCm: 1.2 },
      { ...second, id: "plan", state: "planned" as const, predictedEcMsCm: 1, measuredEcMsCm: 9 },
      { ...second, id: "b", predictedEcMsCm: null },
      { ...second, id: "a", predictedEcMsCm: 2, measuredEcMsCm: 1.8 },
    ];
    expect(ratiosOf(rows, "x")).toEqual([0.9, 1.2]);
    expect(ratiosOf(rows, "a")).toEqual([1.2]);
  });
});

describe("the verdict in the log", () => {
  const range = { low: 5.5, high: 6.5 };

  test("is the sentence on the EC, and the pH only where it is out of range", () => {
    const check = ask(1.11);
    expect(verdictText(check, 5.9, range)).toBe(check.check?.sentence);
    expect(verdictText(check, 6.9, range)).toBe(`${check.check?.sentence} pH 6.9 is above 5.5 to 6.5.`);
  });

  test("is never too long to be sent", () => {
    const check = ask(1.9);
    if (check.check === null) throw new Error("There should be a check.");
    const long = { ...check, check: { ...check.check, sentence: "x".repeat(5000) } };
    expect(verdictText(long, 5.9, range)).toHaveLength(2000);
  });

  test("waits for an EC", () => {
    expect(verdictText(null, 6.9, range)).toBe("");
  });

  test("goes with the readings, and is said again once it is kept", async () => {
    const { panel, host } = await openTestPanel();
    panel.readings.draft.change((now) => ({ ...now, ec: "0.62", pH: "6.9" }));
    panel.readings.sender.press();
    const { verdict } = host.last().request as { verdict: string };
    expect(verdict).toMatch(/^As expected: the meter reads 0\.62 mS\/cm, .* pH 6\.9 is above 5\.5 to 6\.$/);
    await host.last().reply({ written: 1, already: 0, differing: [] });
    expect(said(panel.readings.sender)).toBe("done: Logged EC 0.62 mS/cm and pH 6.9.");
    expect(panel.loaded.get()?.batches[0]?.verdict).toBe(verdict);
  });

  test("that another one kept out is told", async () => {
    const { panel, host } = await openTestPanel();
    panel.readings.draft.change((now) => ({ ...now, ec: "0.62" }));
    panel.readings.sender.press();
    await host.last().reply({ written: 1, already: 0, differing: ["The verdict in the log is another one."] });
    expect(panel.readings.sender.now.get()).toMatchObject({ notes: ["The verdict in the log is another one."] });
  });
});
