/** What is due now: thirsty plants, flushes, changes, reservoirs full of roots, recovering plants, claims to look at again. */

import { isoFromDay } from "./calendar.ts";
import { nameKey } from "./cell.ts";
import { uptakes } from "./drinking.ts";
import type { DueRules } from "./due-rules.ts";
import type { EventRule } from "./events.ts";
import { commonRise, drinkingChange, type Filling, filling, sayFilling } from "./filled-pots.ts";
import { type CareRow, type FillDay, indexFills, lastDisturbedDay } from "./fills.ts";
import { type PotState, potState, thirstyDay } from "./pot-state.ts";
import { isGrowth, type Recovery, recoveries } from "./recovery.ts";
import { sayNumber } from "./saying.ts";

export const DUE_KINDS = ["Top up", "Flush", "Change", "Pot up", "Look at", "Look again"] as const;
export type DueKind = (typeof DUE_KINDS)[number];

export interface Due {
  /** "" for a claim to look at again. */
  readonly plant: string;
  readonly due: DueKind;
  /** The first day on which it was due. */
  readonly sinceDay: number;
  /** The reason with its numbers. */
  readonly why: string;
}

/** A care row with what a meter read in the reservoir; null where nothing was read. */
export interface WatchedRow extends CareRow {
  readonly ecMsCm: number | null;
}

export interface Claim {
  readonly claim: string;
  readonly lookAgainDay: number;
}

export interface DueTask {
  readonly plants: readonly string[];
  /** Rows taken back are left out before. */
  readonly rows: readonly WatchedRow[];
  readonly events: EventRule;
  readonly asOfDay: number;
  readonly rules: DueRules;
  /** Claims that are still open. */
  readonly claims?: readonly Claim[];
}

/** How long back filling is looked for week by week. */
const WEEKS_BACK = 8;

interface Reading {
  readonly day: number;
  readonly ecMsCm: number;
}

/** Latest day on which somebody looked at each plant without pouring, and all EC readings. */
interface Looks {
  readonly lastLook: ReadonlyMap<string, number>;
  readonly readings: ReadonlyMap<string, readonly Reading[]>;
}

function looks({ rows, events, asOfDay }: DueTask): Looks {
  const lastLook = new Map<string, number>();
  const readings = new Map<string, Reading[]>();
  for (const { day, plant, event, ecMsCm } of rows) {
    const kind = day > asOfDay ? null : events.find(event);
    if (kind === null) continue;
    const name = nameKey(kind.event);
    const key = nameKey(plant);
    if (isGrowth(name) || name === "reading" || name === "note" || name === "decay removed") {
      lastLook.set(key, Math.max(lastLook.get(key) ?? day, day));
    }
    // What is read at a change may be the old solution or the new one.
    if (ecMsCm !== null && name !== "solution change") {
      const list = readings.get(key);
      if (list === undefined) readings.set(key, [{ day, ecMsCm }]);
      else list.push({ day, ecMsCm });
    }
  }
  return { lastLook, readings };
}

function days(count: number): string {
  return count === 1 ? "1 day" : `${count} days`;
}

function thirst(state: PotState, { asOfDay, rules }: DueTask): Omit<Due, "plant"> | null {
  const { lastFillDay, useMlDay, usualMl } = state;
  const since = asOfDay - lastFillDay;
  const own = thirstyDay(state);
  if (own !== null) {
    if (own > asOfDay) return null;
    const why = `It drinks ${sayNumber(useMlDay as number)} mL a day, about ${sayNumber((useMlDay as number) * since)} mL in the ${days(since)} since ${isoFromDay(lastFillDay)}; ${sayNumber(usualMl as number)} mL is its usual top-up.`;
    return { due: "Top up", sinceDay: own, why };
  }
  if (rules.topUpDays === null || since < rules.topUpDays) return null;
  const why = `Last filled ${days(since)} ago, on ${isoFromDay(lastFillDay)}; how fast it drinks is not known yet, so the rule of ${sayNumber(rules.topUpDays)} days counts.`;
  return { due: "Top up", sinceDay: lastFillDay + Math.ceil(rules.topUpDays), why };
}

function renewal(state: PotState, readings: readonly Reading[], { asOfDay, rules }: DueTask): Omit<Due, "plant">[] {
  const { freshDay, flushedDay } = state;
  const { changeDays, flushDays, ecCeilingMsCm } = rules;
  if (changeDays !== null && asOfDay - freshDay >= changeDays) {
    const why = `The same solution for ${days(asOfDay - freshDay)}, since ${isoFromDay(freshDay)}; the rule is ${sayNumber(changeDays)} days.`;
    return [{ due: "Change", sinceDay: freshDay + Math.ceil(changeDays), why }];
  }
  const [salty] = readings
    .filter(({ day, ecMsCm }) => ecCeilingMsCm !== null && day > flushedDay && ecMsCm >= ecCeilingMsCm)
    .sort((a, b) => a.day - b.day);
  if (salty !== undefined) {
    const why = `EC ${sayNumber(salty.ecMsCm)} mS/cm on ${isoFromDay(salty.day)}, not flushed since; the ceiling is ${sayNumber(ecCeilingMsCm as number)}.`;
    return [{ due: "Flush", sinceDay: salty.day, why }];
  }
  if (flushDays === null || asOfDay - flushedDay < flushDays) return [];
  const why = `Neither flushed nor changed for ${days(asOfDay - flushedDay)}, since ${isoFromDay(flushedDay)}; the rule is ${sayNumber(flushDays)} days.`;
  return [{ due: "Flush", sinceDay: flushedDay + Math.ceil(flushDays), why }];
}

function lookAt(last: Recovery, lastLook: number | undefined, { asOfDay, rules }: DueTask): Omit<Due, "plant"> | null {
  const { lookDays, recoveryDays } = rules;
  if (last.recoveredDay !== null || lookDays === null) return null;
  if (recoveryDays !== null && last.days > recoveryDays) return null;
  const looked = Math.max(last.day, lastLook ?? last.day);
  if (asOfDay - looked < lookDays) return null;
  const when = looked === last.day ? "not looked at since" : `last looked at ${isoFromDay(looked)}`;
  const why = `${last.event} on ${isoFromDay(last.day)}, ${days(last.days)} without a new leaf or root in the log; ${when}.`;
  return { due: "Look at", sinceDay: looked + Math.ceil(lookDays), why };
}

/** Reservoirs filling with roots by nameKey, with the day since which each look, week by week backwards, finds it so. */
function fillingPots(fills: ReadonlyMap<string, readonly FillDay[]>, task: DueTask): Map<string, [Filling, number]> {
  const { asOfDay, rules } = task;
  const found = new Map<string, [Filling, number]>();
  if (rules.riseShare === null) return found;
  const keys = [...new Set(task.plants.map(nameKey))];
  for (let week = 0; week < WEEKS_BACK; week++) {
    const day = asOfDay - 7 * week;
    if (week > 0 && ![...found.values()].some(([, since]) => since === day + 7)) break;
    const changes = new Map(
      keys.flatMap((key) => {
        const mine = fills.get(key) ?? [];
        const change = drinkingChange(uptakes(mine, day), day, lastDisturbedDay(mine, day));
        return change === null ? [] : [[key, change] as const];
      }),
    );
    const common = commonRise([...changes.values()]);
    for (const [key, change] of changes) {
      const told = filling(change, common, rules.riseShare);
      const before = found.get(key);
      if (told === null || (week > 0 && before?.[1] !== day + 7)) continue;
      found.set(key, [before?.[0] ?? told, day]);
    }
  }
  return found;
}

/**
 * All that is due on `asOfDay`, by kind in the order of DUE_KINDS, the longest due first, equal ones in the order of
 * `plants`. Each plant counts once; one that is not in the log has nothing due. Where a change is due no flush is asked
 * for besides. Rows after `asOfDay` are not yet counted.
 */
export function dueList(task: DueTask): Due[] {
  const { plants, rows, events, asOfDay, claims = [] } = task;
  const fills = indexFills(rows, events);
  const recovering = recoveries(rows, events, asOfDay);
  const { lastLook, readings } = looks(task);
  const filled = fillingPots(fills, task);
  const list: Due[] = [];
  const seen = new Set<string>();
  for (const name of plants) {
    const key = nameKey(name);
    if (key === "" || seen.has(key)) continue;
    seen.add(key);
    const plant = name.trim();
    const add = (due: Omit<Due, "plant"> | null) => {
      if (due !== null) list.push({ plant, ...due });
    };
    const mine = fills.get(key) ?? [];
    const state = potState(mine, uptakes(mine, asOfDay), asOfDay);
    if (state !== null) {
      add(thirst(state, task));
      for (const due of renewal(state, readings.get(key) ?? [], task)) add(due);
    }
    const full = filled.get(key);
    if (full !== undefined) add({ due: "Pot up", sinceDay: full[1], why: sayFilling(full[0]) });
    const history = recovering.get(key) ?? [];
    const last = history[history.length - 1];
    if (last !== undefined) add(lookAt(last, lastLook.get(key), task));
  }
  for (const { claim, lookAgainDay } of claims) {
    if (lookAgainDay > asOfDay) continue;
    list.push({ plant: "", due: "Look again", sinceDay: lookAgainDay, why: `Claim: ${claim}` });
  }
  const rank = new Map(DUE_KINDS.map((kind, at) => [kind, at]));
  return list
    .map((due, at) => ({ due, at }))
    .sort(
      (a, b) =>
        (rank.get(a.due.due) as number) - (rank.get(b.due.due) as number) ||
        a.due.sinceDay - b.due.sinceDay ||
        a.at - b.at,
    )
    .map(({ due }) => due);
}
