/** One pot in the panel: what its plant drinks, when it is thirsty, how it recovered, in figures and sentences. */

import { isoFromDay } from "../src/core/calendar.ts";
import { nameKey } from "../src/core/cell.ts";
import { rateOf, trendPercentWeek, type Uptake, uptakes } from "../src/core/drinking.ts";
import { drinkingChange, WATCHED_DAYS } from "../src/core/filled-pots.ts";
import { type FillDay, indexFills, lastDisturbedDay } from "../src/core/fills.ts";
import { type PotState, potState, thirstyDay } from "../src/core/pot-state.ts";
import { type Recovery, recoveries } from "../src/core/recovery.ts";
import { sayNumber } from "../src/core/saying.ts";
import type { ReservoirLog } from "./reservoir-log.ts";
import { count, showDay } from "./show.ts";

export interface Pot {
  readonly fills: readonly FillDay[];
  readonly drunk: readonly Uptake[];
  /** Null for a plant whose reservoir was never filled by the log. */
  readonly state: PotState | null;
  readonly trend: number | null;
  readonly recoveries: readonly Recovery[];
}

export function potOf(log: ReservoirLog, plant: string): Pot {
  const key = nameKey(plant);
  const fills =
    indexFills(
      log.rows.filter((row) => nameKey(row.plant) === key),
      log.events,
    ).get(key) ?? [];
  const drunk = uptakes(fills, log.today);
  return {
    fills,
    drunk,
    state: potState(fills, drunk, log.today),
    trend: trendPercentWeek(drunk, log.today, WATCHED_DAYS),
    recoveries:
      recoveries(
        log.rows.filter((row) => nameKey(row.plant) === key),
        log.events,
        log.today,
      ).get(key) ?? [],
  };
}

/** Growth that comes this late was most often seen before and not logged. */
const LATE_DAYS = 180;

const dayWords = (day: number): string => showDay(isoFromDay(day));

/** What is known of a plant's drinking, a sentence each. */
export function sayDrinking({ fills, drunk, state, trend }: Pot, today: number): string[] {
  if (state === null) return ["No top-up, change or repot of this plant is in the log yet."];
  const { useMlDay, usualMl, lastFillDay } = state;
  const filled = `Last filled on ${dayWords(lastFillDay)}, ${today === lastFillDay ? "today" : `${count(today - lastFillDay, "day")} ago`}.`;
  if (useMlDay === null || usualMl === null) {
    return [filled, "How fast it drinks is told by its next top-up with an amount."];
  }
  const thirsty = thirstyDay(state);
  const change = drinkingChange(drunk, today, lastDisturbedDay(fills, today));
  const said = [`It drinks ${sayNumber(useMlDay)} mL a day, over the last four weeks as far as they are known.`];
  if (change !== null) {
    said.push(
      `Eight weeks ago it was ${sayNumber(change.before.useMlDay)} mL a day, topped up every ${sayNumber(change.before.gapDays)} days; now every ${sayNumber(change.now.gapDays)}.`,
    );
  }
  if (trend !== null) {
    const size = sayNumber(Math.abs(trend));
    said.push(
      size === "0"
        ? "Over eight weeks it drinks neither more nor less."
        : `Over eight weeks it drinks ${size} % ${trend > 0 ? "more" : "less"} each week.`,
    );
  }
  said.push(filled);
  if (thirsty !== null) {
    const when =
      thirsty < today
        ? `was due on ${dayWords(thirsty)}`
        : thirsty === today
          ? "is due today"
          : `is due on ${dayWords(thirsty)}`;
    said.push(`The next top-up, about ${sayNumber(usualMl)} mL, ${when}.`);
  }
  return said;
}

/** What became of each disturbance, newest first. */
export function sayRecoveries(pot: Pot): string[] {
  return [...pot.recoveries].reverse().map(({ day, event, recoveredDay, days, cutShort }) => {
    const what = `${event} on ${dayWords(day)}`;
    if (recoveredDay !== null) {
      const late = days > LATE_DAYS ? " Earlier ones may not have been written down." : "";
      return `${what}: first new leaf or root in the log after ${count(days, "day")}.${late}`;
    }
    if (cutShort) return `${what}: disturbed again after ${count(days, "day")}, without a new leaf or root by then.`;
    return `${what}: no new leaf or root in ${count(days, "day")} yet.`;
  });
}

export interface DrinkRow {
  readonly day: string;
  readonly days: number;
  readonly amountMl: number;
  readonly mlDay: number;
}

/** The intervals of the last half year, newest first. */
export function drinkRows(drunk: readonly Uptake[], today: number): DrinkRow[] {
  return drunk
    .filter(({ toDay }) => toDay > today - 182)
    .map((one) => ({
      day: dayWords(one.toDay),
      days: one.toDay - one.fromDay,
      amountMl: one.amountMl,
      mlDay: rateOf(one),
    }))
    .reverse();
}
