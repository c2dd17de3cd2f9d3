/** The loaded care log as the arithmetic of reservoirs reads it, and the household's rules for what is due. */

import type { FieldRow, Loaded, PlantRow } from "../src/app/contract.ts";
import { dayFromIso } from "../src/core/calendar.ts";
import { nameKey } from "../src/core/cell.ts";
import { type Claim, type Due, dueList, type WatchedRow } from "../src/core/due.ts";
import { type DueRules, type DueSetting, dueRules } from "../src/core/due-rules.ts";
import { type EventRule, eventRule } from "../src/core/events.ts";
import { plantsOnce } from "./care.ts";
import { typedNumber } from "./typed.ts";

/** A row of the log with what was poured, by the name it was written down under. */
export interface PouredRow extends WatchedRow {
  readonly solution: string;
}

export interface ReservoirLog {
  readonly rows: readonly PouredRow[];
  readonly events: EventRule;
  readonly rules: DueRules;
  readonly today: number;
  /** Sentences on settings that cannot be read; their defaults count. */
  readonly problems: readonly string[];
}

function settingText(settings: Loaded["settings"], name: string): string {
  const found = Object.entries(settings).find(([setting]) => nameKey(setting) === nameKey(name));
  return found?.[1].trim() ?? "";
}

export function reservoirLog(loaded: Loaded): ReservoirLog {
  const rows = loaded.care.rows.flatMap((row): PouredRow[] => {
    const day = dayFromIso(row.day);
    if (day === null) return [];
    const { plant, event, amountMl, who, ecMsCm, solution } = row;
    return [{ day, plant, event, amountMl, who, ecMsCm, solution }];
  });
  const problems: string[] = [];
  const own = ({ setting, unit, max }: DueSetting): number | "off" | null => {
    const text = settingText(loaded.settings, setting);
    if (/^(?:off|never|no)$/i.test(text)) return "off";
    const { value, problem } = typedNumber(text, { what: `${setting} in Settings`, unit, min: 0, max });
    if (problem !== null) problems.push(problem);
    return value;
  };
  const rules = dueRules(own);
  return { rows, events: eventRule(loaded.events), rules, today: dayFromIso(loaded.today) ?? 0, problems };
}

/** Claims to look at again, those kept or dropped left out, and a sentence on each that has no readable day. */
export function openClaims(rows: readonly FieldRow[]): Claim[] {
  return rows.flatMap(({ fields }): Claim[] => {
    const claim = String(fields.Claim ?? "").trim();
    const lookAgainDay = dayFromIso(String(fields["Look again"] ?? ""));
    const settled = /^(?:kept|dropped)$/i.test(String(fields.Status ?? "").trim());
    return claim === "" || settled || lookAgainDay === null ? [] : [{ claim, lookAgainDay }];
  });
}

export function dueNow(log: ReservoirLog, plants: readonly PlantRow[], claims: readonly Claim[] = []): Due[] {
  const names = plantsOnce(plants).map(({ plant }) => plant);
  return dueList({ plants: names, ...log, asOfDay: log.today, claims });
}

export interface PlaceDue {
  /** "" for plants without a place. */
  readonly place: string;
  readonly due: readonly Due[];
}

/** What is due, place by place in alphabetical order, plants without a place last; claims are left out. */
export function dueByPlace(due: readonly Due[], plants: readonly PlantRow[]): PlaceDue[] {
  const placeOf = new Map(plantsOnce(plants).map(({ plant, place }) => [nameKey(plant), place.trim()]));
  const places = new Map<string, { place: string; due: Due[] }>();
  for (const one of due) {
    if (one.plant === "") continue;
    const place = placeOf.get(nameKey(one.plant)) ?? "";
    const found = places.get(nameKey(place));
    if (found === undefined) places.set(nameKey(place), { place, due: [one] });
    else found.due.push(one);
  }
  return [...places.values()].sort(
    (a, b) => Number(a.place === "") - Number(b.place === "") || a.place.localeCompare(b.place),
  );
}
