/** Reservoirs that fill with roots: plants that drink more and more and ask for a top-up ever more often. */

import { lineOfUse, meanUse, type Uptake } from "./drinking.ts";
import { sayNumber } from "./saying.ts";
import { median } from "./theil-sen.ts";

/** The use of the last four weeks is held against that of the four weeks that ended eight weeks ago. */
export const USE_DAYS = 28;
export const WATCHED_DAYS = 56;
/** Four weeks of which less is known say nothing. */
const LEAST_KNOWN_DAYS = 12;
const LEAST_INTERVALS = 1;
/** A plant that was disturbed drinks ever more again while it roots, for about six weeks: that is no full reservoir. Common practice, no source. */
const SETTLING_DAYS = 42;
/** Top-ups come closer together by this share at least: less is the rhythm of a household's rounds. Common practice, no source. */
const SHORTER_SHARE = 0.1;
/** With this many plants whose use is known, what the middle one does is the season and no matter of roots. */
const LEAST_PLANTS = 5;

/** Rise over eight weeks from which a reservoir counts as filling: 0.3 for 30 %. Common practice, no source. */
export const RISE_SHARE = 0.3;

/** Four weeks of one plant. */
interface Weeks {
  readonly useMlDay: number;
  /** Mean days from one filling to the next. */
  readonly gapDays: number;
}

/** A plant's drinking now and eight weeks ago. */
export interface Change {
  readonly before: Weeks;
  readonly now: Weeks;
  /** Whether the Theil–Sen line through the eight weeks rises. */
  readonly rising: boolean;
}

export interface Filling extends Change {
  /** Own rise, 0.6 for 60 % more. */
  readonly riseShare: number;
  /** What the middle plant did meanwhile; 0 with fewer than five plants to tell from. */
  readonly commonShare: number;
}

function weeksTo(drunk: readonly Uptake[], endDay: number): Weeks | null {
  const startDay = endDay - USE_DAYS;
  const inside = drunk.filter(({ fromDay, toDay }) => fromDay < endDay && toDay > startDay);
  const knownDays = inside.reduce(
    (sum, { fromDay, toDay }) => sum + Math.min(toDay, endDay) - Math.max(fromDay, startDay),
    0,
  );
  const whole = inside.filter(({ fromDay, toDay }) => fromDay + toDay > 2 * startDay && fromDay + toDay <= 2 * endDay);
  const useMlDay = meanUse(inside, endDay, USE_DAYS);
  if (knownDays < LEAST_KNOWN_DAYS || whole.length < LEAST_INTERVALS || useMlDay === null) return null;
  return { useMlDay, gapDays: whole.reduce((sum, { fromDay, toDay }) => sum + toDay - fromDay, 0) / whole.length };
}

/**
 * How a plant drinks now and eight weeks ago, told from its uptakes since `disturbedDay`, its last root disturbance (null
 * for none): the six weeks after it do not count for the earlier use. Null where fewer than twelve days, or no interval with its middle there, are
 * known of either four weeks.
 */
export function drinkingChange(drunk: readonly Uptake[], asOfDay: number, disturbedDay: number | null): Change | null {
  const now = weeksTo(drunk, asOfDay);
  const settled =
    disturbedDay === null ? drunk : drunk.filter(({ fromDay }) => fromDay >= disturbedDay + SETTLING_DAYS);
  const before = now === null ? null : weeksTo(settled, asOfDay - WATCHED_DAYS);
  if (now === null || before === null) return null;
  return { before, now, rising: (lineOfUse(drunk, asOfDay, WATCHED_DAYS)?.slope ?? 0) > 0 };
}

/** The share by which the middle plant's use changed, 0.2 for 20 % more; 0 with fewer than five plants. */
export function commonRise(changes: readonly Change[]): number {
  if (changes.length < LEAST_PLANTS) return 0;
  return median(changes.map(({ before, now }) => now.useMlDay / before.useMlDay)) - 1;
}

/**
 * Whether a reservoir is filling with roots, from one plant's change and the common one: the use rose by more than
 * `riseShare` beyond what the middle plant did, still rises, and the top-ups come closer together. Null when not.
 */
export function filling(change: Change, commonShare: number, riseShare = RISE_SHARE): Filling | null {
  const { before, now, rising } = change;
  const ratio = now.useMlDay / before.useMlDay;
  const beyondSeason = ratio / (1 + commonShare) - 1;
  if (!rising || beyondSeason <= riseShare || now.gapDays > before.gapDays * (1 - SHORTER_SHARE)) return null;
  return { ...change, riseShare: ratio - 1, commonShare };
}

function percent(share: number): string {
  return `${sayNumber(Math.round(100 * share))} %`;
}

/** What is said of a reservoir that fills with roots, with its numbers. */
export function sayFilling({ before, now, riseShare, commonShare }: Filling): string {
  const season = Math.round(100 * commonShare);
  const others =
    season === 0
      ? ""
      : `, while the collection's middle plant drinks ${percent(Math.abs(commonShare))} ${season > 0 ? "more" : "less"}`;
  return (
    `Reservoir filling with roots: it drinks ${sayNumber(now.useMlDay)} mL a day, eight weeks ago it was ` +
    `${sayNumber(before.useMlDay)}, so ${percent(riseShare)} more${others}, and it is topped up every ` +
    `${sayNumber(now.gapDays)} days instead of every ${sayNumber(before.gapDays)}. That is the reason to pot up.`
  );
}
