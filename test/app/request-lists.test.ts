/** How long the lists of a request may be, and the bounds of numbers that say where and how many. */

import { describe, expect, test } from "vitest";
import { readRequest } from "../../src/app/asked.ts";
import type { Ask, RequestFor } from "../../src/app/contract.ts";
import { SAMPLES } from "../shared/samples.ts";

const sample = <A extends Ask>(ask: A): RequestFor<A> => SAMPLES[ask][0]?.request as RequestFor<A>;
const letters = (count: number): string => "n".repeat(count);
const times = <T>(count: number, value: T): T[] => Array.from({ length: count }, () => value);

const accepted = (request: unknown): boolean => {
  try {
    readRequest(request);
    return true;
  } catch {
    return false;
  }
};

describe("a list", () => {
  const past = { id: "past-0001", day: "2026-03-01", plant: "Fern", event: "Repot" };
  const taking = { id: "back-0001", takes: "care-0001" };
  const page = sample("write sitter page");
  const rows = sample("import rows");
  const setting = { setting: "Spoons", value: "" };
  const care = sample("log care");

  test.each<[string, number, (count: number) => object]>([
    ["entries of care", 500, (count) => ({ ...care, entries: times(count, care.entries[0]) })],
    ["rows taken back besides", 500, (count) => ({ ...sample("take back"), more: times(count, taking) })],
    ["past events", 5000, (count) => ({ ...sample("log past"), entries: times(count, past) })],
    ["settings", 50, (count) => ({ ask: "save settings", settings: times(count, setting) })],
    ["rows of a copy", 5000, (count) => ({ ...rows, rows: times(count, ["x"]) })],
    ["headings of a copy", 200, (count) => ({ ...rows, headings: times(count, "x") })],
    ["rows of a page", 5000, (count) => ({ ...page, cells: times(count, ["x"]) })],
    ["columns of a page", 10, (count) => ({ ...page, cells: [times(count, "x")] })],
    ["widths of a page", 10, (count) => ({ ...page, widths: times(count, 100) })],
  ])("of %s holds %d at most", (_, most, request) => {
    expect(accepted(request(most))).toBe(true);
    expect(accepted(request(most + 1))).toBe(false);
  });

  test.each<[string, readonly number[], readonly number[], (value: number) => object]>([
    ["a width in pixels", [10, 2000], [9, 2001, 10.5], (value) => ({ ...page, widths: [value] })],
    ["a bold row", [1, 5000], [0, 5001, 1.5], (value) => ({ ...page, boldRows: [value] })],
    ["the rows read at once", [1, 5000], [0, 5001, 1.5], (value) => ({ ...sample("read page"), rows: value })],
    ["the first row read", [2, 1_000_000], [1, 2.5], (value) => ({ ...sample("read page"), from: value })],
    ["a chance", [0, 1], [-0.01, 1.01], (value) => ({ ...sample("save result"), p: value })],
  ])("and %s stay within their bounds", (_, good, bad, request) => {
    expect(good.filter((value) => !accepted(request(value)))).toEqual([]);
    expect(bad.filter((value) => accepted(request(value)))).toEqual([]);
  });

  test("of cells may hold texts up to what a cell holds, numbers, yes or no, days and nothing", () => {
    const withCell = (cell: unknown) => accepted({ ...rows, rows: [[cell]] });
    for (const cell of ["", letters(50_000), -1.5, true, null, { day: "2026-03-01" }])
      expect(withCell(cell)).toBe(true);
    for (const cell of [letters(50_001), { day: "soon" }, {}, []]) expect(withCell(cell)).toBe(false);
  });
});
