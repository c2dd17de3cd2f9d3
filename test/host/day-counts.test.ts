/** Day counts of formulas on every day of 400 years under four time zones, against a calendar walked day by day. */

import { describe, expect, it } from "vitest";
import { createRunner } from "../../src/functions/runner.ts";
import { daysIn } from "../../src/host/days.ts";

const FIRST_YEAR = 1800;
const LAST_YEAR = 2199;

/** Leap years by the rule of Inter gravissimas (1582), month lengths as everybody learns them. */
function isLeap(year: number): boolean {
  if (year % 400 === 0) return true;
  if (year % 100 === 0) return false;
  return year % 4 === 0;
}
const MONTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

interface Walked {
  readonly iso: string;
  /** Steps from the first day. */
  readonly count: number;
}

/** Every day, one step after the other: nothing of the project's arithmetic is used. */
function walk(): Walked[] {
  const days: Walked[] = [];
  for (let year = FIRST_YEAR; year <= LAST_YEAR; year++) {
    MONTHS.forEach((length, month) => {
      const last = month === 1 && isLeap(year) ? 29 : length;
      for (let day = 1; day <= last; day++) {
        const iso = `${year}-${String(month + 1).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
        days.push({ iso, count: days.length });
      }
    });
  }
  return days;
}

const DAYS = walk();

/** The first instant at which a clock in the zone shows the day, found with Intl alone: a guess from UTC, then stepping. */
function midnights(zone: string): Date[] {
  const format = new Intl.DateTimeFormat("sv-SE", { timeZone: zone, dateStyle: "short" });
  let shiftMs = 0;
  return DAYS.map(({ iso }) => {
    const utc = Date.parse(`${iso}T00:00:00Z`);
    const shows = (instant: number) => format.format(instant);
    if (shows(utc + shiftMs) !== iso || shows(utc + shiftMs - 1) >= iso) {
      // From a day before on in steps of a quarter, then second by second: zones once kept odd seconds.
      let instant = utc - 86_400_000;
      while (shows(instant) < iso) instant += 900_000;
      while (shows(instant - 1000) >= iso) instant -= 1000;
      shiftMs = instant - utc;
      return new Date(instant);
    }
    return new Date(utc + shiftMs);
  });
}

it("400 years are 146,097 days", () => {
  expect(DAYS.length).toBe(146_097);
});

describe.each(["Etc/UTC", "Europe/Zurich", "America/St_Johns", "Australia/Lord_Howe"])("in %s", (zone) => {
  const { dayOf, dateOf } = daysIn(zone);
  const call = createRunner({ dayOf, dateOf });
  const dates = midnights(zone);

  it("ROOT_REST counts the steps walked since the first day, on every day", () => {
    const log = [
      ["Date", "Plant", "Event"],
      [dates[0], "Fern", "Repot"],
    ];
    const rest = call("ROOT_REST", [DAYS.map(() => ["Fern"]), log, dates.map((date) => [date])]) as unknown[][];
    const wrong = DAYS.filter(({ count }) => rest[count]?.[0] !== count).map(({ iso }) => iso);
    expect(wrong).toEqual([]);
  });

  it("POT_USE finds 3 mL a day and POT_TREND none of change, where 3 mL were poured for each day walked", () => {
    const fills = DAYS.filter(({ iso }) => /-(?:01-01|03-01|10-28)$/.test(iso));
    const rows = fills.map(({ count }, at) => [
      dates[count],
      "Fern",
      "Top up",
      at === 0 ? "" : 3 * (count - (fills[at - 1] as Walked).count),
    ]);
    // In no order: odd rows first, backwards.
    const mixed = [...rows.filter((_, at) => at % 2 === 1).reverse(), ...rows.filter((_, at) => at % 2 === 0)];
    const log = [["Date", "Plant", "Event", "Amount mL"], ...mixed];
    const asked = fills.slice(3);
    const asOf = asked.map(({ count }) => [dates[count]]);
    const plants = asked.map(() => ["Fern"]);
    const use = call("POT_USE", [plants, log, asOf]) as unknown[][];
    const trend = call("POT_TREND", [plants, log, asOf, 3000]) as unknown[][];
    const wrong = asked.filter((_, at) => {
      const [mL, percent] = [use[at]?.[0], trend[at]?.[0]];
      return (
        typeof mL !== "number" || Math.abs(mL - 3) > 1e-9 || typeof percent !== "number" || Math.abs(percent) > 1e-9
      );
    });
    expect(wrong.map(({ iso }) => iso)).toEqual([]);
  });
});
