/** When to test: which batches count as made from the same, and the plan for one of the log. */

import { describe, expect, test } from "vitest";
import { acidWithoutAmount, lotChanges, lotOn, partsKey } from "../../sidebar/batch-parts.ts";
import { sayTesting, testing } from "../../sidebar/testing.ts";
import type { BatchRow, FieldRow, Loaded } from "../../src/app/contract.ts";
import { isoFromDay } from "../../src/core/calendar.ts";
import { sheet } from "./sheet.ts";

const first = sheet().batches[0] as BatchRow;
const purchase = (date: string, feed: string, lot: string): FieldRow => ({
  row: 2,
  fields: { Date: date, Feed: feed, Lot: lot },
});
const records = (purchases: FieldRow[] = []) => ({ purchases, meterLog: [], claims: [], trials: [], problems: [] });

/** Batches a week apart up to 8 March 2026, newest first, of steady readings; the newest not tested. */
function steady(many: number, change: (nth: number) => Partial<BatchRow> = () => ({})): BatchRow[] {
  return Array.from({ length: many }, (_, back) => {
    const nth = many - 1 - back;
    const day = isoFromDay(20_520 - 7 * back);
    return {
      ...first,
      id: `batch-${nth}`,
      day,
      measuredPH: back === 0 ? null : 5.9 + 0.02 * (nth % 3),
      ...change(nth),
    };
  });
}
const planOf = (loaded: Loaded, id: string | null, purchases: FieldRow[] = []) => {
  const found = testing(loaded, records(purchases), id);
  if (found === null || typeof found === "string") throw new Error(`No plan: ${found}`);
  return found.plan;
};

describe("made from the same", () => {
  test("is the same water, feeds, lots and acid, whatever the volume and the order", () => {
    const key = (change: Partial<BatchRow>) => partsKey({ ...first, ...change }, "2026-03-01", []);
    expect(key({ doses: "B 1 g/L (10 g); A 2 g/L (20 g)" })).toBe(key({ doses: "a 1 g/L (8 g); b 1 g/L (8 g)" }));
    expect(key({ water: " tap" })).toBe(key({}));
    expect(key({ water: "Rain barrel" })).not.toBe(key({}));
    expect(key({ acid: "Citric acid: 2 g, to pH 5.8" })).not.toBe(key({}));
    expect(key({ acid: "Citric acid: 2 g, to pH 5.8" })).toBe(key({ acid: "Citric acid: 2.5 g, to pH 5.8" }));
  });

  test("acids are told by name, strength and the pH they go to", () => {
    expect(acidWithoutAmount("Phosphoric acid 85 %: 1.48 mL, to pH 5.8")).toBe("Phosphoric acid 85 %, to pH 5.8");
    expect(acidWithoutAmount("citric acid monohydrate 11.3 g")).toBe("citric acid monohydrate");
    expect(acidWithoutAmount("")).toBe("");
  });

  test("a lot counts from the day it was bought", () => {
    const lots = lotChanges([purchase("2026-02-01", "Iron", "B"), purchase("2026-01-01", "iron ", "A")]);
    expect(["2025-12-31", "2026-01-31", "2026-02-01"].map((day) => lotOn(lots, "Iron", day))).toEqual(["", "A", "B"]);
  });
});

describe("the plan", () => {
  test("for a batch that was just logged rests on those before it", () => {
    const plan = planOf(sheet({ batches: steady(9) }), "batch-8");
    expect(plan.run).toHaveLength(8);
    expect(plan).toMatchObject({ every: 2, due: false });
    expect(plan.sentence).toContain("This one need not be tested.");
    expect(planOf(sheet({ batches: steady(9) }), "batch-3")).toMatchObject({ every: 1, due: true });
  });

  test("is said for one batch, with the reason", () => {
    const say = (id: string): string => sayTesting(planOf(sheet({ batches: steady(9) }), id));
    expect(say("batch-8")).toMatch(
      /^The pH need not be tested with this batch, because the last 8 readings are steady\. .* Every 2nd batch is tested\.$/,
    );
    expect(say("batch-3")).toBe(
      "Test the pH of this batch, because there are 3 readings so far. From 6 on, one may be left out.",
    );
    const untested = steady(10, (nth) => (nth === 8 ? { measuredPH: null } : {}));
    expect(sayTesting(planOf(sheet({ batches: untested }), "batch-9"))).toBe(
      "Test the pH of this batch: of those made from the same, every 2nd is tested, and this is its turn.",
    );
  });

  test("for the next batch is due when the last one was left out", () => {
    expect(planOf(sheet({ batches: steady(9) }), null)).toMatchObject({ every: 2, due: true });
  });

  test("begins anew with another lot, water or acid, and after a long pause", () => {
    const feed = "Potassium nitrate";
    const lot = [purchase("2026-03-07", feed, "K-77")];
    expect(planOf(sheet({ batches: steady(9) }), "batch-8", lot)).toMatchObject({ every: 1, reason: "new", due: true });
    const early = [purchase("2025-01-01", feed, "K-76")];
    expect(planOf(sheet({ batches: steady(9) }), "batch-8", early).due).toBe(false);
    const rain = steady(9, (nth) => (nth === 8 ? { water: "Rain barrel" } : {}));
    expect(planOf(sheet({ batches: rain }), "batch-8").reason).toBe("new");
    expect(planOf(sheet({ today: "2026-07-01", batches: steady(9) }), null).reason).toBe("pause");
  });

  test("uses the household's own range", () => {
    const settings = { "pH low": "5.5", "pH high": "5.93" };
    expect(planOf(sheet({ batches: steady(9), settings }), "batch-8").every).toBe(1);
  });

  test("leaves plans and batches without a date out", () => {
    const batches = steady(9, (nth) => (nth === 2 ? { state: "planned" } : nth === 3 ? { day: null } : {}));
    expect(planOf(sheet({ batches }), "batch-8").run).toHaveLength(6);
    expect(testing(sheet({ batches: [] }), records(), null)).toBeNull();
  });

  test("of a reading that cannot be is a sentence", () => {
    const batches = steady(9, (nth) => (nth === 4 ? { measuredPH: 58 } : {}));
    expect(testing(sheet({ batches }), records(), "batch-8")).toBe("The pH is 58. Give a number from 0 to 14.");
  });
});
