/** How long each plant's roots have been left alone: an index over the care log, and what is asked of it. */

import { nameKey } from "./cell.ts";
import type { EventRule } from "./events.ts";

export { BUILT_IN_EVENTS, type EventKind, type EventRule, eventRule } from "./events.ts";

export interface LogEntry {
  /** Days since 1970-01-01. */
  readonly day: number;
  readonly plant: string;
  readonly event: string;
}

/** The disturbances of one plant, oldest first: one entry a day. */
interface PlantHistory {
  readonly days: number[];
  /** Events of that day as the list of events spells them, in alphabetical order, joined by a comma. */
  readonly events: string[];
}

export interface RootIndex {
  readonly byPlant: ReadonlyMap<string, PlantHistory>;
  /** Events in the log that the rule does not know, as first spelled; they count as no disturbance. */
  readonly unknownEvents: readonly string[];
}

export interface Disturbance {
  readonly day: number;
  readonly event: string;
}

interface Gathering {
  readonly days: number[];
  readonly events: string[];
  sorted: boolean;
}

/** One entry a day, oldest first, whatever the order of the log. */
function settled({ days, events, sorted }: Gathering): PlantHistory {
  let order: number[] | null = null;
  if (!sorted) order = days.map((_, i) => i).sort((a, b) => (days[a] as number) - (days[b] as number));
  const history: PlantHistory = { days: [], events: [] };
  let sameDay: string[] = [];
  for (let i = 0; i < days.length; i++) {
    const at = order === null ? i : (order[i] as number);
    const day = days[at] as number;
    const event = events[at] as string;
    const last = history.days.length - 1;
    if (last < 0 || history.days[last] !== day) {
      history.days.push(day);
      history.events.push(event);
      sameDay = [event];
    } else if (!sameDay.includes(event)) {
      sameDay.push(event);
      history.events[last] = sameDay.slice().sort().join(", ");
    }
  }
  return history;
}

/**
 * Gathers the disturbances of every plant in one pass; rows may stand in any order. Each spelling of a plant or
 * event is normalised once. Entries without a plant or with a day that is no whole number are passed over.
 */
export function indexDisturbances(entries: Iterable<LogEntry>, rule: EventRule): RootIndex {
  const bySpelling = new Map<string, Gathering>();
  const byKey = new Map<string, Gathering>();
  const unknown = new Map<string, string>();
  for (const { day, plant, event } of entries) {
    const kind = rule.find(event);
    if (kind === null) {
      if (!unknown.has(event)) unknown.set(event, nameKey(event));
      continue;
    }
    if (!kind.disturbsRoots || !Number.isSafeInteger(day)) continue;
    let gathering = bySpelling.get(plant);
    if (gathering === undefined) {
      const key = nameKey(plant);
      if (key === "") continue;
      gathering = byKey.get(key);
      if (gathering === undefined) {
        gathering = { days: [], events: [], sorted: true };
        byKey.set(key, gathering);
      }
      bySpelling.set(plant, gathering);
    }
    const { days } = gathering;
    if (days.length > 0 && (days[days.length - 1] as number) > day) gathering.sorted = false;
    days.push(day);
    gathering.events.push(kind.event);
  }
  const byPlant = new Map<string, PlantHistory>();
  for (const [key, gathering] of byKey) byPlant.set(key, settled(gathering));
  const unknownEvents: string[] = [];
  const seen = new Set<string>([""]);
  for (const [spelling, key] of unknown) {
    if (!seen.has(key)) unknownEvents.push(spelling.trim());
    seen.add(key);
  }
  return { byPlant, unknownEvents };
}

/**
 * The last disturbance of a plant on or before `asOfDay` (null: of all). Several events on that day come joined,
 * "Repot, Root trim". Null for a plant that was never disturbed, never logged, or is logged under another name.
 */
export function lastDisturbance(index: RootIndex, plant: string, asOfDay: number | null): Disturbance | null {
  const history = index.byPlant.get(nameKey(plant));
  if (history === undefined) return null;
  const { days, events } = history;
  let low = 0;
  let high = days.length;
  if (asOfDay === null) low = high;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((days[middle] as number) <= (asOfDay as number)) low = middle + 1;
    else high = middle;
  }
  if (low === 0) return null;
  return { day: days[low - 1] as number, event: events[low - 1] as string };
}

/** Whole days from the last disturbance to `asOfDay`; null where none is on record by then. */
export function daysAtRest(index: RootIndex, plant: string, asOfDay: number): number | null {
  const last = lastDisturbance(index, plant, asOfDay);
  return last === null ? null : asOfDay - last.day;
}

export interface BoardRow {
  readonly plant: string;
  readonly restDays: number | null;
  readonly event: string | null;
  readonly day: number | null;
}

/** Every plant once, longest rest first, never disturbed last; equal ones stay in the order given. Blank names are passed over. */
export function rootBoard(plants: Iterable<string>, index: RootIndex, asOfDay: number): BoardRow[] {
  const rows: BoardRow[] = [];
  const seen = new Set<string>();
  for (const plant of plants) {
    const key = nameKey(plant);
    if (key === "" || seen.has(key)) continue;
    seen.add(key);
    const last = lastDisturbance(index, plant, asOfDay);
    rows.push({
      plant: plant.trim(),
      restDays: last === null ? null : asOfDay - last.day,
      event: last === null ? null : last.event,
      day: last === null ? null : last.day,
    });
  }
  const rank = ({ restDays }: BoardRow) => (restDays === null ? -1 : restDays);
  return rows.sort((a, b) => rank(b) - rank(a));
}

/** What a board says of a plant's roots in words, so that no colour has to say it alone. */
export const REST_WORDS = {
  leave: "Leave alone",
  rested: "Rested long enough",
  none: "No disturbance on record",
} as const;

/** Below `ruleDays` of rest the roots are left alone; the rule is the household's own. */
export function restWord(restDays: number | null, ruleDays: number): string {
  if (restDays === null) return REST_WORDS.none;
  return restDays < ruleDays ? REST_WORDS.leave : REST_WORDS.rested;
}

/** Names that stand more than once in a list of plants, as first spelled: the log cannot tell such plants apart. */
export function plantsTwice(plants: Iterable<string>): string[] {
  const spelling = new Map<string, string>();
  const twice = new Map<string, string>();
  for (const plant of plants) {
    const key = nameKey(plant);
    if (key === "") continue;
    const first = spelling.get(key);
    if (first === undefined) spelling.set(key, plant.trim());
    else twice.set(key, first);
  }
  return [...twice.values()];
}
