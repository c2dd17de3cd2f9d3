/** Readings over time: groups, marks, limits and the sentences that stand for the drawings. */

import { describe, expect, test } from "vitest";
import { ALL, groupsOf, historyOf, sayEc, sayPHs } from "../../sidebar/history.ts";
import { ecDrawing, pHDrawing } from "../../sidebar/history-plot.ts";
import type { BatchRow, FieldRow, Records } from "../../src/app/contract.ts";
import { isoFromDay } from "../../src/core/calendar.ts";
import { sheet } from "./sheet.ts";

const first = sheet().batches[0] as BatchRow;
/** A week apart up to 8 March 2026, newest first. */
const batches: BatchRow[] = Array.from({ length: 10 }, (_, back) => ({
  ...first,
  id: `batch-${back}`,
  day: isoFromDay(20_520 - 7 * back),
  water: back === 9 ? "Rain barrel" : "Tap",
  predictedEcMsCm: 1,
  measuredEcMsCm: back === 2 ? null : 0.98 + 0.01 * (back % 4),
  measuredPH: back === 1 ? 6.8 : 5.9,
}));
const purchase = (row: number, fields: FieldRow["fields"]): FieldRow => ({ row, fields });
const records: Records = {
  purchases: [
    purchase(2, { Date: "2026-02-10", Feed: "Potassium nitrate", Lot: "K-77" }),
    purchase(3, { Date: "2026-02-11", Feed: "Iron", Lot: "not used" }),
    purchase(4, { Date: "2027-02-10", Feed: "Potassium nitrate", Lot: "later" }),
  ],
  meterLog: [
    purchase(2, { Date: "2026-02-20", Meter: "pH", Standard: 7.01, Reading: 7.1, Calibrated: true }),
    purchase(3, { Date: "2026-02-21", Meter: "EC", Standard: 1.413, Reading: 1.4, Calibrated: false }),
  ],
  claims: [],
  trials: [],
  problems: [],
};
const loaded = sheet({ batches });
const all = historyOf(ALL, loaded, records, null);

describe("groups", () => {
  test("are one for each water and its feeds, the newest first, then all", () => {
    const groups = groupsOf(batches);
    expect(groups.map(({ words }) => words)).toEqual([
      "Tap, 2 feeds, last 8 Mar 2026: 9 batches",
      "Rain barrel, 2 feeds, last 4 Jan 2026: 1 batch",
      "All batches",
    ]);
    expect(historyOf(groups[0]?.key ?? "", loaded, records, null).batches).toHaveLength(9);
    expect(all.batches).toHaveLength(10);
  });
});

describe("marks", () => {
  test("are lots of the feeds used and calibrations, within the time shown", () => {
    expect(all.marks.map(({ letter, kind, words }) => [letter, kind, words])).toEqual([
      ["L", "lot", "10 Feb 2026: lot K-77 of Potassium nitrate"],
      ["C", "pH", "20 Feb 2026: pH meter calibrated"],
    ]);
  });
});

describe("in words", () => {
  test("say how many, from when to when, from what to what, and what lies outside", () => {
    expect(sayEc(all)).toBe(
      "EC of 9 batches from 4 Jan 2026 to 8 Mar 2026: 0.98 to 1.01 mS/cm, last 0.98. 9 of 9 lie where this meter usually reads.",
    );
    expect(sayPHs(all)).toBe(
      "pH of 10 batches from 4 Jan 2026 to 8 Mar 2026: 5.9 to 6.8, last 5.9. 1 of 10 lies outside 5.5 to 6.",
    );
    const unread = sheet({ batches: [{ ...first, measuredPH: null, measuredEcMsCm: null }] });
    expect(sayEc(historyOf(ALL, unread, records, null))).toBe("No EC was read yet.");
    const once = sheet({ batches: [{ ...first, measuredPH: 5.8, measuredEcMsCm: 0.6 }] });
    expect(sayPHs(historyOf(ALL, once, records, null))).toBe(
      "pH of 1 batch of 1 Mar 2026: 5.8. It lies within 5.5 to 6.",
    );
  });
});

describe("drawings", () => {
  test("have a line each for what was read, what was expected and the limits, as long as the days", () => {
    const { data } = ecDrawing(all);
    expect(data).toHaveLength(5);
    expect(new Set(data.map((line) => line.length))).toEqual(new Set([10]));
    expect(data[1]?.[7]).toBeNull();
    expect(ecDrawing(all).something).toBe(true);
    const unread = sheet({ batches: batches.map((batch) => ({ ...batch, measuredEcMsCm: null })) });
    expect(ecDrawing(historyOf(ALL, unread, records, null)).something).toBe(false);
    const chart = { mean: 5.9, meanMovingRange: 0.02, low: 5.85, high: 5.95 };
    expect(pHDrawing(all).data).toHaveLength(4);
    expect(pHDrawing({ ...all, chart }).data.slice(4)).toEqual([Array(10).fill(5.85), Array(10).fill(5.95)]);
  });
});
