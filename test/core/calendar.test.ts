/** The calendar against JavaScript's own Date, every day of 400 years. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { civilFromDay, dayFromCivil, dayFromIso, isoFromDay } from "../../src/core/calendar.ts";
import { refusal } from "./refusal.ts";

const DAY_MS = 86_400_000;

describe("days and dates", () => {
  it("agree with Date (ECMA-262, proleptic Gregorian, UTC) on every day of 400 years from 1800", () => {
    const first = Date.UTC(1800, 0, 1) / DAY_MS;
    const wrong: string[] = [];
    for (let day = first; day < first + 146_097; day++) {
      const date = new Date(day * DAY_MS);
      const [year, month, dayOfMonth] = [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate()];
      const civil = civilFromDay(day);
      const iso = date.toISOString().slice(0, 10);
      if (
        civil.year !== year ||
        civil.month !== month ||
        civil.day !== dayOfMonth ||
        dayFromCivil(year, month, dayOfMonth) !== day ||
        isoFromDay(day) !== iso ||
        dayFromIso(iso) !== day
      ) {
        wrong.push(iso);
      }
    }
    expect(wrong).toEqual([]);
  });

  it("agree with Date anywhere between the years 0 and 9999", () => {
    fc.assert(
      fc.property(fc.integer({ min: -719_528, max: 2_932_896 }), (day) => {
        expect(isoFromDay(day)).toBe(new Date(day * DAY_MS).toISOString().slice(0, 10));
      }),
    );
  });

  it("agree with Date on either side of each end of February from 1600 to 2400, century by century", () => {
    for (let year = 1600; year <= 2400; year += 50) {
      const from = Date.UTC(year, 1, 26) / DAY_MS;
      for (let day = from; day < from + 6; day++) {
        const iso = new Date(day * DAY_MS).toISOString().slice(0, 10);
        expect([isoFromDay(day), dayFromIso(iso)]).toEqual([iso, day]);
      }
    }
  });

  it("reach from the first day of the year 0 to the last of 9999", () => {
    expect([dayFromIso("0000-01-01"), isoFromDay(-719_528)]).toEqual([-719_528, "0000-01-01"]);
    expect([dayFromIso("9999-12-31"), isoFromDay(2_932_896)]).toEqual([2_932_896, "9999-12-31"]);
    expect(dayFromIso(" 2026-03-01 ")).toBe(20_513);
  });

  it("each month has its last day and no other: thirty days hath September, April, June and November", () => {
    [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31].forEach((days, at) => {
      expect(isoFromDay(dayFromCivil(2026, at + 1, days)).slice(-2)).toBe(String(days));
      expect(refusal(() => dayFromCivil(2026, at + 1, days + 1))).toContain(`no day ${days + 1} of month ${at + 1}`);
    });
    expect([1900, 2000, 2024, 2100].map((year) => dayFromIso(`${year}-02-29`) !== null)).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });

  it("day 0 is 1970-01-01", () => {
    expect(dayFromCivil(1970, 1, 1)).toBe(0);
    expect(isoFromDay(0)).toBe("1970-01-01");
  });
});

describe("what is no day", () => {
  it.each([
    "2026-02-29",
    "2026-13-01",
    "2026-00-10",
    "2026-04-31",
    "2026-1-1",
    "26-01-01",
    "03/01/2026",
    "",
    "x",
    "x2026-03-01",
    "2026-03-01T00:00",
  ])("%j gives null", (text) => {
    expect(dayFromIso(text)).toBeNull();
  });

  it("says so", () => {
    expect(refusal(() => dayFromCivil(2026, 2, 29))).toBe("There is no day 29 of month 2 in the year 2026.");
    for (const [year, month, day] of [
      [-1, 1, 1],
      [10_000, 1, 1],
      [2026, 1, 0],
      [2026.5, 1, 1],
      [2026, 1.5, 1],
      [2026, 1, 1.5],
      [2026.5, 1.5, 1],
      [2026, 0, 1],
    ] as const)
      expect(refusal(() => dayFromCivil(year, month, day))).toBe(
        `There is no day ${day} of month ${month} in the year ${year}.`,
      );
    expect(refusal(() => civilFromDay(-719_529))).toBe("-719529 is no day between the years 0 and 9999.");
    expect(refusal(() => civilFromDay(0.5))).toBe("0.5 is no day between the years 0 and 9999.");
    expect(refusal(() => isoFromDay(2_932_897))).toBe("2932897 is no day between the years 0 and 9999.");
  });
});
