/** Which rows are old: by day, plant and event, whatever their order, and with all that they point at. */

import { describe, expect, test } from "vitest";
import { dayFromIso } from "../../src/core/calendar.ts";
import type { Log } from "../../src/sheet/append.ts";
import { planArchive } from "../../src/sheet/archive-plan.ts";
import { CARE_LOG } from "../../src/sheet/log-tabs.ts";

const HEADINGS = ["Id", "Date", "Plant", "Event", "Corrects"];
type Row = readonly [id: string, day: string, plant: string, event: string, corrects?: string];

/** A log whose dates are day numbers; it is 2026-03-10, so what was done before 2025 is old. */
function plan(rows: readonly Row[], mostRows?: number, headings = HEADINGS) {
  const values = [
    HEADINGS,
    ...rows.map(([id, day, plant, event, corrects = ""]) => [id, dayFromIso(day) ?? "", plant, event, corrects]),
  ];
  const log = {
    book: { workbook: { dayOf: (raw: unknown) => (typeof raw === "number" ? raw : null) }, tabs: [], marks: [] },
    spec: CARE_LOG,
    tab: {},
    values,
    columns: { tabName: "Care log", at: new Map(headings.map((heading, at) => [heading, at + 1])), doubts: new Map() },
  } as unknown as Log;
  return planArchive(log, dayFromIso("2026-03-10") ?? 0, mostRows);
}
/** A row of the same plant and event, so new that it stays and lets the others go. */
const NEW: Row = ["new-1", "2026-02-01", "Fern", "Top up"];

describe("old rows", () => {
  test("are those before the last calendar year began, and there is nothing more", () => {
    const { places, rows, before, withoutId, more } = plan([
      ["a", "2024-12-31", "Fern", "Top up"],
      ["b", "2025-01-01", "Fern", "Top up"],
      ["c", "", "Fern", "Top up"],
      ["", "2024-01-01", "Fern", "Top up"],
      ["  ", "2023-01-01", "fern ", "top  up"],
      ["", "2025-02-01", "Fern", "Top up"],
      ["", "", "", ""],
      NEW,
    ]);
    expect([places, rows, withoutId, more]).toEqual([[1], 7, 2, false]);
    expect(before).toBe(dayFromIso("2025-01-01"));
  });

  test("leave the newest of each plant and event, the lower one of a day, in whatever order they stand", () => {
    const old = (id: string, day: string, event = "Top up", plant = "Fern"): Row => [id, day, plant, event];
    expect(plan([old("a", "2024-03-01"), old("b", "2024-02-01"), old("c", "2024-01-01")]).places).toEqual([2, 3]);
    expect(plan([old("a", "2024-03-01"), old("b", "2024-03-01"), old("c", "2024-01-01")]).places).toEqual([1, 3]);
    expect(plan([old("a", "2024-03-01"), old("b", "2024-02-01"), old("c", "")]).places).toEqual([2]);
    expect(plan([old("a", "2024-03-01"), old("b", "2024-02-01", "Repot")]).places).toEqual([]);
    expect(plan([old("a", "2024-03-01"), old("b", "2024-02-01", "Top up", "Ivy")]).places).toEqual([]);
  });

  test("leave the newest day before 1970 as well, whatever stands there without a date", () => {
    const old: Row = ["a", "1969-05-01", "Fern", "Top up"];
    const undated: Row = ["b", "", "Fern", "Top up"];
    expect(plan([old, undated]).places).toEqual([]);
    expect(plan([undated, old]).places).toEqual([]);
  });

  test("go with what they correct or stay with it, spaces around the Ids or not", () => {
    const chain: Row[] = [
      ["a", "2024-01-01", "Fern", "Top up"],
      [" b ", "2024-02-01", "Fern", "Top up", " a "],
      ["c", "2025-02-01", "Fern", "Top up", "b"],
      ["d", "2024-02-02", "Fern", "Top up", "gone"],
      NEW,
    ];
    expect(plan(chain).places).toEqual([4]);
    expect(plan(chain.filter(([id]) => id !== "c")).places).toEqual([1, 2, 3]);
    // Without the column nothing hangs together.
    expect(plan(chain, undefined, HEADINGS.slice(0, 4)).places).toEqual([1, 2, 4]);
  });

  test("are given rising, also where an Id stands twice or a chain reaches far down", () => {
    const old = (id: string, corrects = ""): Row => [id, "2024-01-01", "Fern", "Top up", corrects];
    expect(plan([old("a"), old("b"), old("a"), NEW]).places).toEqual([2, 3]);
    const rows = [old("a"), old("b"), old("c"), old("d"), old("e", "a"), NEW];
    expect(plan(rows, 3)).toMatchObject({ places: [1, 2, 5], more: true });
    expect(plan(rows, 4)).toMatchObject({ places: [1, 2, 3, 5], more: true });
    expect(plan(rows, 5)).toMatchObject({ places: [1, 2, 3, 4, 5], more: false });
    // A chain is not parted, though it brings more than were asked for.
    expect(plan(rows, 1)).toMatchObject({ places: [1, 5], more: true });
  });
});
