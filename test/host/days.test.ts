/** Dates against calendar days in awkward zones; the second opinion is Intl's own formatting of the same instant. */

import vm from "node:vm";
import { describe, expect, it } from "vitest";
import { daysIn } from "../../src/host/days.ts";

const DAY_MS = 86_400_000;
const dayFromIso = (iso: string): number => Date.parse(`${iso}T00:00:00Z`) / DAY_MS;
const isoFromDay = (day: number): string => new Date(day * DAY_MS).toISOString().slice(0, 10);

/** "2018-11-04 01:00:00" in the zone; Swedish writes dates the ISO way. */
function civilTime(timeZone: string): (instant: Date | number) => string {
  const format = new Intl.DateTimeFormat("sv-SE", { timeZone, dateStyle: "short", timeStyle: "medium" });
  return (instant) => format.format(instant);
}

const FIRST = dayFromIso("1985-01-01");
const LAST = dayFromIso("2037-12-31");

const ZONES = [
  { zone: "Europe/Zurich", missing: [] },
  { zone: "America/Sao_Paulo", missing: [] },
  { zone: "Australia/Lord_Howe", missing: [] },
  { zone: "America/St_Johns", missing: [] },
  { zone: "Asia/Kathmandu", missing: [] },
  { zone: "Pacific/Apia", missing: ["2011-12-30"] },
] as const;

describe.each(ZONES)("every day of 1985 to 2037 in $zone", ({ zone, missing }) => {
  it("goes to its first instant and back, as Intl writes it", () => {
    const days = daysIn(zone);
    const written = civilTime(zone);
    const wrong: string[] = [];
    for (let day = FIRST; day <= LAST; day++) {
      const iso = isoFromDay(day);
      if ((missing as readonly string[]).includes(iso)) continue;
      const date = days.dateOf(day);
      if (days.dayOf(date) !== day) wrong.push(`${iso} comes back as day ${days.dayOf(date)}`);
      if (written(date).slice(0, 10) !== iso) wrong.push(`${iso} is written ${written(date)}`);
      if (written(date.getTime() - 1).slice(0, 10) >= iso) wrong.push(`${iso} begins before ${written(date)}`);
    }
    expect(wrong).toEqual([]);
  });

  it("reads any instant of the day as that day", () => {
    const days = daysIn(zone);
    const written = civilTime(zone);
    const wrong: string[] = [];
    for (let instant = FIRST * DAY_MS; instant < LAST * DAY_MS; instant += 7 * 3_600_000 + 60_007) {
      const iso = written(instant).slice(0, 10);
      if (days.dayOf(new Date(instant)) !== dayFromIso(iso)) wrong.push(new Date(instant).toISOString());
    }
    expect(wrong).toEqual([]);
  });
});

describe("awkward days", () => {
  it("begins at 01:00 where midnight does not exist (Sao Paulo, 2018-11-04)", () => {
    const zone = "America/Sao_Paulo";
    const date = daysIn(zone).dateOf(dayFromIso("2018-11-04"));
    expect(civilTime(zone)(date)).toBe("2018-11-04 01:00:00");
    expect(date.toISOString()).toBe("2018-11-04T03:00:00.000Z");
  });

  it("gives the first instant after a day the zone left out (Apia, 2011-12-30)", () => {
    const days = daysIn("Pacific/Apia");
    expect(days.dateOf(dayFromIso("2011-12-30")).toISOString()).toBe("2011-12-30T10:00:00.000Z");
    expect(days.dayOf(new Date("2011-12-30T10:00:00Z"))).toBe(dayFromIso("2011-12-31"));
    expect(days.dayOf(new Date("2011-12-30T09:59:59.999Z"))).toBe(dayFromIso("2011-12-29"));
  });

  it("sees a clock that is put back one minute after midnight (St. John's, 2006-10-29)", () => {
    const days = daysIn("America/St_Johns");
    // 00:00:30 on the 29th comes first, then the 28th again from 23:01 for most of an hour.
    expect(days.dayOf(new Date("2006-10-29T02:30:30Z"))).toBe(dayFromIso("2006-10-29"));
    expect(days.dayOf(new Date("2006-10-29T02:31:30Z"))).toBe(dayFromIso("2006-10-28"));
  });

  it("counts days across a change of the clock (Zurich, 2026-03-29 and 2026-10-25)", () => {
    const days = daysIn("Europe/Zurich");
    for (const change of ["2026-03-29", "2026-10-25"]) {
      const day = dayFromIso(change);
      const span = days.dateOf(day + 1).getTime() - days.dateOf(day).getTime();
      expect(span).toBe((change === "2026-03-29" ? 23 : 25) * 3_600_000);
    }
  });

  it("takes midnight in the spreadsheet's zone as that day, whatever the script's own zone is", () => {
    // The script's zone plays no part: the same instant is another day in another spreadsheet's zone.
    const instant = new Date("2026-02-28T23:00:00Z");
    expect(daysIn("Europe/Zurich").dayOf(instant)).toBe(dayFromIso("2026-03-01"));
    expect(daysIn("America/New_York").dayOf(instant)).toBe(dayFromIso("2026-02-28"));
  });

  it("understands a zone written as a distance", () => {
    expect(daysIn("GMT-03:00").dayOf(new Date("2026-03-01T02:59:00Z"))).toBe(dayFromIso("2026-02-28"));
    expect(daysIn("GMT+5:30").dateOf(dayFromIso("2026-03-01")).toISOString()).toBe("2026-02-28T18:30:00.000Z");
  });
});

describe("what is a date", () => {
  const days = daysIn("Europe/Zurich");

  it("takes a Date of another realm", () => {
    const foreign: unknown = vm.runInNewContext("new Date(Date.UTC(2026, 2, 1, 12))");
    expect(foreign instanceof Date).toBe(false);
    expect(days.dayOf(foreign)).toBe(dayFromIso("2026-03-01"));
  });

  const NO_DATES: Readonly<Record<string, unknown>> = {
    "a number": 20000,
    "a text": "2026-03-01",
    null: null,
    undefined: undefined,
    "an invalid Date": new Date(Number.NaN),
    "an object that says it is a Date": { [Symbol.toStringTag]: "Date" },
    "an Error": new Error("#N/A"),
    "the last Date there is": new Date(8.64e15),
    "a Date before year 1": new Date("-000001-01-01T00:00:00Z"),
  };
  it.each(Object.keys(NO_DATES))("gives null for %s", (name) => {
    expect(days.dayOf(NO_DATES[name])).toBeNull();
  });

  it("holds dates of the 19th century, as a spreadsheet's day zero is one", () => {
    expect(days.dayOf(days.dateOf(dayFromIso("1899-12-30")))).toBe(dayFromIso("1899-12-30"));
  });
});
