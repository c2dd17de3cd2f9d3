/** Cells compared with what was written to them and with what they were. */

import { expect, test } from "vitest";
import { cellOf, isBlank, sameCell, sameRaw } from "../../src/sheet/stored.ts";

const days = { dayOf: (value: unknown) => (value instanceof Date ? Math.floor(value.getTime() / 86_400_000) : null) };
const at = (iso: string) => new Date(`${iso}Z`);

test("blank is no content, spaces are", () => {
  expect(["", null, undefined, " ", 0, false].map(isBlank)).toEqual([true, true, true, false, false, false]);
});

test("a cell holds what was written when it reads the same, a day when it falls on it", () => {
  expect(sameCell("x", "x", days)).toBe(true);
  expect(sameCell("1", 1, days)).toBe(false);
  expect(sameCell(at("2026-03-01T15:00"), { day: 20_513 }, days)).toBe(true);
  expect(sameCell(at("2026-03-02T00:00"), { day: 20_513 }, days)).toBe(false);
  expect(sameCell("2026-03-01", { day: 20_513 }, days)).toBe(false);
  expect(sameCell("", null, days)).toBe(true);
  expect(sameCell(null, "", days)).toBe(true);
  expect(sameCell("x", null, days)).toBe(false);
  expect(sameCell("", "x", days)).toBe(false);
});

test("two readings are the same by value, dates by their instant", () => {
  expect(sameRaw("", null)).toBe(true);
  expect(sameRaw("", 0)).toBe(false);
  expect(sameRaw(0, "")).toBe(false);
  expect(sameRaw("a", "a")).toBe(true);
  expect(sameRaw(1, "1")).toBe(false);
  expect(sameRaw(at("2026-03-01T00:00"), at("2026-03-01T00:00"))).toBe(true);
  expect(sameRaw(at("2026-03-01T00:00"), at("2026-03-01T00:01"))).toBe(false);
  expect(sameRaw(at("2026-03-01T00:00"), at("2026-03-01T00:00").getTime())).toBe(false);
  expect(sameRaw(at("2026-03-01T00:00").getTime(), at("2026-03-01T00:00"))).toBe(false);
});

test("what was read can be written again, but for an error", () => {
  expect(["", null, "x", 7, 0, true, false].map((raw) => cellOf(raw, days))).toEqual([
    null,
    null,
    "x",
    7,
    0,
    true,
    false,
  ]);
  expect(cellOf(at("2026-03-01T15:00"), days)).toEqual({ day: 20_513 });
  expect(cellOf(new Error("#N/A"), days)).toBe(null);
});
