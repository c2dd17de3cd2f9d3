/** Which of the chosen plants would be disturbed before their rest is over, as far as the loaded sheet tells. */

import type { Loaded, PlantRow } from "../src/app/contract.ts";
import { dayFromIso } from "../src/core/calendar.ts";
import { nameKey } from "../src/core/cell.ts";
import {
  type EarlyDisturbance,
  earlyDisturbances,
  type RestRule,
  restRuleOr,
  restSettings,
} from "../src/core/rest-rule.ts";
import { eventRule, indexDisturbances, type LogEntry } from "../src/core/roots.ts";
import type { CareDraft } from "./care.ts";
import { settingOf } from "./setting.ts";
import { typedDay } from "./typed.ts";

export function disturbs(event: string, { events }: Pick<Loaded, "events">): boolean {
  return events.some(({ event: name, disturbsRoots }) => disturbsRoots && nameKey(name) === nameKey(event));
}

export function restRuleOf(loaded: Pick<Loaded, "settings">): RestRule {
  return restRuleOr(restSettings((setting) => settingOf(loaded, setting)));
}

/** None where the event leaves roots alone. The sheet asks again by its whole log. */
export function earlyAmong(draft: CareDraft, plants: readonly PlantRow[], loaded: Loaded): EarlyDisturbance[] {
  const day = dayFromIso(typedDay(draft.day, loaded.today) ?? "");
  const today = dayFromIso(loaded.today);
  if (day === null || today === null || !disturbs(draft.event, loaded)) return [];
  const wanted = new Set(plants.map(({ plant }) => nameKey(plant)));
  const entries = loaded.care.rows.flatMap((row): LogEntry[] => {
    const on = row.id !== "" && row.id === draft.corrects ? null : dayFromIso(row.day);
    return on === null || !wanted.has(nameKey(row.plant)) ? [] : [{ day: on, plant: row.plant, event: row.event }];
  });
  // A disturbance older than the rows that were loaded; of several on one day the first will do.
  for (const { plant, restDays, lastEvent } of loaded.care.all ? [] : plants) {
    if (restDays !== null) entries.push({ day: today - restDays, plant, event: lastEvent.split(", ")[0] ?? "" });
  }
  const rule = eventRule(loaded.events);
  const planned = plants.map(({ plant }) => ({ plant, day }));
  return earlyDisturbances(planned, indexDisturbances(entries, rule), restRuleOf(loaded));
}
