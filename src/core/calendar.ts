/** Calendar days as whole numbers: days since 1970-01-01 in the proleptic Gregorian calendar. */

import { BadInput } from "./errors.ts";

export interface Civil {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  /** 1 to 31. */
  readonly day: number;
}

/** 400 years repeat exactly: 97 leap days. */
const DAYS_IN_400_YEARS = 146_097;
/** Days from 0000-03-01 to 1970-01-01. Years are counted from March, so that a leap day ends its year. */
const EPOCH_FROM_MARCH_0 = 719_468;
/** Beyond this a day has no ISO text of four year digits. */
const FIRST_DAY = -719_528;
const LAST_DAY = 2_932_896;

function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

function isCivil(year: number, month: number, day: number): boolean {
  return (
    Number.isInteger(year) &&
    Number.isInteger(month) &&
    Number.isInteger(day) &&
    year >= 0 &&
    year <= 9999 &&
    month >= 1 &&
    month <= 12 &&
    day >= 1 &&
    day <= daysInMonth(year, month)
  );
}

/** Day number of a date. Throws BadInput for a date that does not exist or a year outside 0 to 9999. */
export function dayFromCivil(year: number, month: number, day: number): number {
  if (!isCivil(year, month, day)) {
    throw new BadInput("no-such-day", `There is no day ${day} of month ${month} in the year ${year}.`);
  }
  const fromMarch = month > 2 ? month - 3 : month + 9;
  const marchYear = month > 2 ? year : year - 1;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  // Months from March run 31 30 31 30 31 | 31 30 31 30 31 | 31 28: 153 days every five.
  const dayOfYear = Math.floor((153 * fromMarch + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * DAYS_IN_400_YEARS + dayOfEra - EPOCH_FROM_MARCH_0;
}

/** Date of a day number. Throws BadInput for anything but a whole number between the years 0 and 9999. */
export function civilFromDay(dayNumber: number): Civil {
  if (!Number.isInteger(dayNumber) || dayNumber < FIRST_DAY || dayNumber > LAST_DAY) {
    throw new BadInput("no-such-day", `${dayNumber} is no day between the years 0 and 9999.`);
  }
  const fromMarch0 = dayNumber + EPOCH_FROM_MARCH_0;
  const era = Math.floor(fromMarch0 / DAYS_IN_400_YEARS);
  const dayOfEra = fromMarch0 - era * DAYS_IN_400_YEARS;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const fromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * fromMarch + 2) / 5) + 1;
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  return { year: era * 400 + yearOfEra + (month <= 2 ? 1 : 0), month, day };
}

/** Day number of an ISO text "2026-03-01" (ISO 8601, extended form); null for any other text or a day that does not exist. */
export function dayFromIso(text: string): number | null {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text.trim());
  if (found === null) return null;
  const year = Number(found[1]);
  const month = Number(found[2]);
  const day = Number(found[3]);
  return isCivil(year, month, day) ? dayFromCivil(year, month, day) : null;
}

/** ISO text of a day number. Throws BadInput as civilFromDay does. */
export function isoFromDay(dayNumber: number): string {
  const { year, month, day } = civilFromDay(dayNumber);
  const two = (part: number) => String(part).padStart(2, "0");
  return `${String(year).padStart(4, "0")}-${two(month)}-${two(day)}`;
}
