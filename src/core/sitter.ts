/** What somebody has to pour while the household is away: visit by visit, from how each plant drinks. */

import { nameKey } from "./cell.ts";
import { uptakes } from "./drinking.ts";
import type { EventRule } from "./events.ts";
import { type CareRow, type FillDay, indexFills } from "./fills.ts";
import { potState } from "./pot-state.ts";

export interface SitterPlant {
  readonly plant: string;
  /** "" where none is said. */
  readonly place: string;
}

export interface SitterTask {
  readonly plants: readonly SitterPlant[];
  /** Rows taken back are left out before. */
  readonly rows: readonly CareRow[];
  readonly events: EventRule;
  /** The day up to which the log tells. */
  readonly todayDay: number;
  /** First day away. */
  readonly fromDay: number;
  /** Last day away. */
  readonly toDay: number;
  /** 1: somebody comes every day. */
  readonly everyDays: number;
  /** Everything is filled on the day before `fromDay`. */
  readonly filledBefore: boolean;
  /** For a plant whose own drinking is not known; null: it is then only named. */
  readonly topUpDays: number | null;
}

export interface Pour extends SitterPlant {
  readonly day: number;
  /** What it will have drunk by then; null where its use is not known: to the mark. */
  readonly amountMl: number | null;
}

export interface SitterPlan {
  /** By day, then place, then in the order of the plants. Each visit that has something to do. */
  readonly pours: readonly Pour[];
  /** The days on which somebody comes, also those with nothing to do. */
  readonly visitDays: readonly number[];
  readonly totalMl: number;
  /** Plants that drink what they hold before the next visit, with the days it lasts. */
  readonly tooRare: readonly (SitterPlant & { readonly lastsDays: number })[];
  /** Plants without a filling in the log, so nothing can be said of them. */
  readonly unknown: readonly SitterPlant[];
}

/** How a plant drinks, as far as a sitter must know. */
interface Drinker {
  readonly lastFillDay: number;
  /** Days for which a filling lasts; at least one. */
  readonly lastsDays: number;
  readonly useMlDay: number | null;
  readonly usualMl: number | null;
  /** The most that was ever poured at once. */
  readonly mostMl: number | null;
}

function drinker(fills: readonly FillDay[], { todayDay, topUpDays }: SitterTask): Drinker | null {
  const drunk = uptakes(fills, todayDay);
  const state = potState(fills, drunk, todayDay);
  if (state === null) return null;
  const { lastFillDay, useMlDay, usualMl } = state;
  const own = useMlDay !== null && usualMl !== null && useMlDay > 0 ? usualMl / useMlDay : null;
  const lasts = own ?? topUpDays;
  if (lasts === null) return null;
  const mostMl = drunk.length === 0 ? null : Math.max(...drunk.map(({ amountMl }) => amountMl));
  return { lastFillDay, lastsDays: Math.max(1, Math.round(lasts)), useMlDay, usualMl, mostMl };
}

/** The last filling before the time away: by the household as usual, or of everything on the day before. */
function filledUntil({ lastFillDay, lastsDays }: Drinker, { fromDay, filledBefore }: SitterTask): number {
  if (filledBefore) return Math.max(lastFillDay, fromDay - 1);
  const until = fromDay - 1;
  if (lastFillDay >= until) return lastFillDay;
  return lastFillDay + lastsDays * Math.floor((until - lastFillDay) / lastsDays);
}

/** No more than was ever poured at once: a reservoir that stood dry holds no more than that. */
function amountAfter(days: number, { useMlDay, usualMl, mostMl }: Drinker): number | null {
  const amount = useMlDay !== null && useMlDay > 0 ? useMlDay * days : usualMl;
  return amount === null || mostMl === null ? amount : Math.min(amount, mostMl);
}

/**
 * A plant is poured on the last visit on or before the day on which it has drunk what is usually poured in, so that
 * none waits for the next one; a plant that drinks faster than somebody comes is poured on each visit and named. After
 * `toDay` the household is back. Each plant counts once, names compared with case and spaces ignored.
 */
export function sitterPlan(task: SitterTask): SitterPlan {
  const { plants, fromDay, toDay, everyDays } = task;
  const visitDays: number[] = [];
  for (let day = fromDay; day <= toDay; day += everyDays) visitDays.push(day);
  const fills = indexFills(task.rows, task.events);
  const pours: Pour[] = [];
  const tooRare: (SitterPlant & { lastsDays: number })[] = [];
  const unknown: SitterPlant[] = [];
  const seen = new Set<string>();
  plants.forEach(({ plant, place }) => {
    const key = nameKey(plant);
    if (key === "" || seen.has(key)) return;
    seen.add(key);
    const drinks = drinker(fills.get(key) ?? [], task);
    if (drinks === null) {
      unknown.push({ plant, place });
      return;
    }
    let filled = filledUntil(drinks, task);
    visitDays.forEach((day, at) => {
      const next = visitDays[at + 1] ?? toDay + 1;
      if (filled >= day || filled + drinks.lastsDays >= next) return;
      pours.push({ day, plant, place, amountMl: amountAfter(day - filled, drinks) });
      filled = day;
    });
    if (drinks.lastsDays < everyDays && visitDays.length > 1)
      tooRare.push({ plant, place, lastsDays: drinks.lastsDays });
  });
  pours.sort((a, b) => a.day - b.day || comparePlaces(a.place, b.place));
  return {
    pours,
    visitDays,
    totalMl: pours.reduce((sum, { amountMl }) => sum + (amountMl ?? 0), 0),
    tooRare,
    unknown,
  };
}

/** By name; plants without a place last. */
function comparePlaces(a: string, b: string): number {
  if (a === b) return 0;
  if (a === "" || b === "") return a === "" ? 1 : -1;
  return a < b ? -1 : 1;
}

/** One line of the page as it was written. */
export interface Planned {
  readonly day: number;
  readonly plant: string;
  readonly amountMl: number | null;
}

export interface Compared {
  readonly planned: Planned;
  /** The filling in the log that answers it; null when there is none. */
  readonly done: { readonly day: number; readonly amountMl: number | null; readonly who: string } | null;
}

export interface Comparison {
  readonly lines: readonly Compared[];
  /** Fillings of these days that no line of the page asked for. */
  readonly besides: readonly CareRow[];
}

/** A pour answers a line from two days before it to the day before the plant's next line. Common practice, no source. */
const EARLY_DAYS = 2;

/** Holds what the log says of the days `fromDay` to `toDay` against the page. Each filling answers one line at most. */
export function compareSitting(
  planned: readonly Planned[],
  rows: readonly CareRow[],
  {
    fromDay,
    toDay,
    fills,
  }: { readonly fromDay: number; readonly toDay: number; readonly fills: (row: CareRow) => boolean },
): Comparison {
  const poured = rows
    .filter((row) => row.day >= fromDay && row.day <= toDay && fills(row))
    .map((row) => ({ row, key: nameKey(row.plant), used: false }))
    .sort((a, b) => a.row.day - b.row.day);
  const lines = planned.map((line): Compared => {
    const key = nameKey(line.plant);
    const later = planned.filter((other) => other.day > line.day && nameKey(other.plant) === key);
    const before = Math.min(toDay + 1, ...later.map(({ day }) => day));
    const from = line.day - EARLY_DAYS;
    const fitting = poured.filter(
      (each) => !each.used && each.key === key && each.row.day >= from && each.row.day < before,
    );
    const [best] = fitting.sort((a, b) => Math.abs(a.row.day - line.day) - Math.abs(b.row.day - line.day));
    if (best === undefined) return { planned: line, done: null };
    best.used = true;
    const { day, amountMl, who } = best.row;
    return { planned: line, done: { day, amountMl, who } };
  });
  return { lines, besides: poured.filter(({ used }) => !used).map(({ row }) => row) };
}
