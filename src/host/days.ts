/** Dates of this host against calendar days, both in the spreadsheet's own time zone. */

const DAY_MS = 86_400_000;
const QUARTER_MS = 900_000;

/** What the rest of the add-on may ask about dates; days count from 1970-01-01. */
export interface Days {
  /** The calendar day a host's date falls on, null when the value is no valid date. */
  dayOf(value: unknown): number | null;
  /** The first instant of a day. A day the zone left out (Samoa, 2011-12-30) gives the first instant after it. */
  dateOf(day: number): Date;
}

/** Years 100 to 9999: more than a spreadsheet holds; outside them a value is no date. */
const EARLIEST = Date.UTC(100, 0, 2);
const LATEST = Date.UTC(9999, 11, 31);

/** Milliseconds of a Date from this realm or another, where instanceof fails; null for anything else. */
function instantOf(value: unknown): number | null {
  if (typeof value !== "object" || Object.prototype.toString.call(value) !== "[object Date]") return null;
  try {
    const instant = Date.prototype.getTime.call(value);
    return instant >= EARLIEST && instant < LATEST ? instant : null;
  } catch {
    return null;
  }
}

/** A zone written as a fixed distance, "GMT-03:00", which not every Intl knows; in milliseconds. */
function fixedOffsetMs(timeZone: string): number | null {
  const parts = /^(?:GMT|UTC)?([+-])(\d{1,2})(?::?(\d{2}))?$/.exec(timeZone);
  if (!parts) return null;
  return (parts[1] === "-" ? -1 : 1) * (Number(parts[2]) * 60 + Number(parts[3] ?? 0)) * 60_000;
}

/** Asks Intl for the calendar day of an instant; the slow but sure way, a few microseconds a call. */
function civilDayReader(timeZone: string): (instant: number) => number {
  const fixed = fixedOffsetMs(timeZone);
  if (fixed !== null) return (instant) => Math.floor((instant + fixed) / DAY_MS);
  const format = new Intl.DateTimeFormat("en-US", {
    timeZone,
    calendar: "gregory",
    numberingSystem: "latn",
    year: "numeric",
    month: "numeric",
    day: "numeric",
  } as Intl.DateTimeFormatOptions);
  return (instant) => {
    const [month, day, year] = format.format(instant).split("/").map(Number) as [number, number, number];
    return Date.UTC(year, month - 1, day) / DAY_MS;
  };
}

/** First instant whose calendar day is `day` or later, by halving: also where midnight does not exist. */
function firstInstant(day: number, civilDay: (instant: number) => number): number {
  let before = (day - 2) * DAY_MS;
  let from = (day + 2) * DAY_MS;
  while (from - before > 1) {
    const middle = Math.floor((before + from) / 2);
    if (civilDay(middle) < day) before = middle;
    else from = middle;
  }
  return from;
}

/**
 * Days in one time zone. Days are kept per quarter hour, because a log of 100,000 rows must not ask Intl
 * 100,000 times, and every change of a zone's clock that matters here falls on a quarter hour or is seen
 * by comparing both ends of it. Throws RangeError for a zone that Intl does not know.
 */
export function daysIn(timeZone: string): Days {
  const civilDay = civilDayReader(timeZone);
  /** Day of each quarter hour met so far; null where the day changes within it. */
  const dayOfQuarter = new Map<number, number | null>();
  const dates = new Map<number, number>();
  /** How far the last midnight found lies from the same day's midnight in UTC; most often the next one's too. */
  let lastShiftMs = 0;

  function dayAt(instant: number): number {
    const quarter = Math.floor(instant / QUARTER_MS);
    let day = dayOfQuarter.get(quarter);
    if (day === undefined) {
      const start = civilDay(quarter * QUARTER_MS);
      const end = civilDay((quarter + 1) * QUARTER_MS - 1);
      day = start === end ? start : null;
      dayOfQuarter.set(quarter, day);
    }
    return day ?? civilDay(instant);
  }

  return {
    dayOf(value) {
      const instant = instantOf(value);
      return instant === null ? null : dayAt(instant);
    },
    dateOf(day) {
      let instant = dates.get(day);
      if (instant === undefined) {
        const likely = day * DAY_MS + lastShiftMs;
        const isFirst = civilDay(likely) === day && civilDay(likely - 1) === day - 1;
        instant = isFirst ? likely : firstInstant(day, civilDay);
        lastShiftMs = instant - day * DAY_MS;
        dates.set(day, instant);
      }
      return new Date(instant);
    },
  };
}
