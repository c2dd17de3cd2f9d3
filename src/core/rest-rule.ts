/** How long roots are left alone before they may be disturbed without a reason, by season if wished. */

import { civilFromDay } from "./calendar.ts";
import { BadInput, isBadInput } from "./errors.ts";
import { monthNamed } from "./months.ts";
import { readNumber } from "./reading.ts";
import { type Disturbance, lastDisturbance, type RootIndex } from "./roots.ts";

export interface RestRule {
  readonly days: number;
  /** Another number of days in some months, 1 to 12; null where no season is set. */
  readonly season: { readonly days: number; readonly months: ReadonlySet<number> } | null;
}

/** As they stand in Settings; "" where a row is blank or not there. */
export interface RestSettings {
  readonly days: string;
  readonly seasonDays: string;
  readonly seasonMonths: string;
}

/** The same by the names that the settings have. */
export function restSettings(text: (setting: string) => string): RestSettings {
  return {
    days: text("Rest days"),
    seasonDays: text("Rest days in season"),
    seasonMonths: text("Season months"),
  };
}

/** Half a year: common practice, no source. */
export const REST_DAYS = 180;
const MOST_DAYS = 3650;

function daysOf(text: string, setting: string): number | null {
  const cell = text === "" ? ({ kind: "blank" } as const) : ({ kind: "text", value: text } as const);
  return readNumber(cell, { what: `“${setting}” in Settings`, unit: "days", min: 0, max: MOST_DAYS });
}

/** 1 to 12 for "4", "apr" or "April"; null for anything else. */
function monthOf(text: string): number | null {
  if (/^\d{1,2}$/.test(text)) return Number(text) >= 1 && Number(text) <= 12 ? Number(text) : null;
  return monthNamed(text);
}

/** Months as one writes them: "Apr to Sep", "Oct to Mar", "May, June". A range may run over the end of the year. */
export function readMonths(text: string): ReadonlySet<number> {
  const months = new Set<number>();
  for (const part of text.toLowerCase().split(/[,;]|\band\b/)) {
    const ends = part.split(/\bto\b|[–—-]/).map((end) => monthOf(end.trim()));
    const [first, last = first] = ends;
    if (first == null || last == null || ends.length > 2) {
      throw new BadInput(
        "months",
        `“Season months” in Settings is “${text}”. Write months by name, like Apr to Sep or Oct to Mar.`,
      );
    }
    for (let month = first; ; month = (month % 12) + 1) {
      months.add(month);
      if (month === last) break;
    }
  }
  return months;
}

/** Throws BadInput naming the setting that cannot be read. A season needs both its days and its months. */
export function readRestRule({ days, seasonDays, seasonMonths }: RestSettings): RestRule {
  const all = daysOf(days.trim(), "Rest days") ?? REST_DAYS;
  const inSeason = daysOf(seasonDays.trim(), "Rest days in season");
  if (inSeason === null && seasonMonths.trim() === "") return { days: all, season: null };
  if (inSeason === null || seasonMonths.trim() === "") {
    throw new BadInput(
      "half-a-season",
      "Settings has only one of “Rest days in season” and “Season months”. Fill in both, or clear both.",
    );
  }
  return { days: all, season: { days: inSeason, months: readMonths(seasonMonths) } };
}

/** Days of rest the rule asks for before roots are disturbed on this day. */
export function restNeeded({ days, season }: RestRule, dayNumber: number): number {
  return season?.months.has(civilFromDay(dayNumber).month) === true ? season.days : days;
}

export interface PlannedDisturbance {
  readonly plant: string;
  /** Day number. */
  readonly day: number;
}

export interface EarlyDisturbance {
  readonly plant: string;
  readonly restDays: number;
  readonly neededDays: number;
  readonly last: Disturbance;
}

/**
 * Those that come before the rest is over, with what was disturbed last. A plant without a disturbance on record
 * is not among them, nor one whose roots were disturbed that very day: that is the same act.
 */
export function earlyDisturbances(
  planned: Iterable<PlannedDisturbance>,
  index: RootIndex,
  rule: RestRule,
): EarlyDisturbance[] {
  const early: EarlyDisturbance[] = [];
  for (const { plant, day } of planned) {
    const last = lastDisturbance(index, plant, day);
    if (last === null || last.day === day) continue;
    const restDays = day - last.day;
    const neededDays = restNeeded(rule, day);
    if (restDays < neededDays) early.push({ plant, restDays, neededDays, last });
  }
  return early;
}

/** The reasons that are offered; any other may be said. Common practice, no source. */
export const REASONS: readonly string[] = ["Rot", "Pests", "Pot full of roots", "Broken pot"];

/** The sentences that ask for a reason: the plant with the shortest rest, and how many more. */
export function whyEarly(early: readonly EarlyDisturbance[]): string {
  const [first, ...others] = [...early].sort((a, b) => a.restDays - b.restDays);
  if (first === undefined) return "";
  const { plant, restDays, neededDays, last } = first;
  const rested = `${plant} has been at rest for ${restDays} ${restDays === 1 ? "day" : "days"} since “${last.event}”; Settings asks for ${neededDays}.`;
  const more =
    others.length === 0
      ? ""
      : ` ${others.length} more of these plants ${others.length === 1 ? "has" : "have"} not rested long enough either.`;
  return `${rested}${more} Say why the roots are disturbed now: rot, pests, a pot full of roots, a broken pot, or another reason.`;
}

/** A rule for showing: the default where Settings cannot be read, which the load tells of. */
export function restRuleOr(settings: RestSettings): RestRule {
  try {
    return readRestRule(settings);
  } catch (error) {
    if (!isBadInput(error)) throw error;
    return { days: REST_DAYS, season: null };
  }
}
