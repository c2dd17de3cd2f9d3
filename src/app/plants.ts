/** The plants of the panel: from the list in use, each with how long its roots have been at rest. */

import { nameKey, readCell } from "../core/cell.ts";
import { isBadInput } from "../core/errors.ts";
import { readDay } from "../core/reading.ts";
import {
  type EventKind,
  eventRule,
  indexDisturbances,
  type LogEntry,
  lastDisturbance,
  type RootIndex,
} from "../core/roots.ts";
import { noTab } from "../sheet/find.ts";
import { PLANTS } from "../sheet/list-tabs.ts";
import { CARE_LOG } from "../sheet/log-tabs.ts";
import { openPlantList } from "../sheet/plant-list.ts";
import { columnProblems, readRows } from "../sheet/rows.ts";
import type { Settings } from "../sheet/settings.ts";
import type { PlantRow } from "./contract.ts";
import { type Loading, openTab, part } from "./loading.ts";

export interface PlantsInUse {
  /** The tab that lists them; "" when there is none. */
  readonly plantTab: string;
  readonly plants: PlantRow[];
}

interface Given {
  readonly settings: Settings | null;
  readonly events: readonly EventKind[];
  /** Day number. */
  readonly today: number;
}

export function readPlants(loading: Loading, { settings, events, today }: Given): PlantsInUse {
  const index = part(loading, "Care log", EMPTY, () => readDisturbances(loading, events));
  const none: PlantsInUse = { plantTab: "", plants: [] };
  return part(loading, "Plants", none, () => {
    const list = openPlantListOrNote(loading, settings);
    if (!list) return none;
    const { tab, values, columns } = list;
    for (const sentence of columnProblems(columns, ["Plant"])) loading.say.add(tab.name, sentence);
    const firstRow = new Map<string, number>();
    const plants: PlantRow[] = [];
    if (!columns.at.has("Plant")) return { plantTab: tab.name, plants };
    for (const { row, where, fields, problems } of readRows(values, PLANTS, columns, loading.book.workbook.dayOf)) {
      for (const { sentence } of problems) loading.say.add(tab.name, sentence);
      if (problems.some(({ heading }) => heading === "Plant")) continue;
      const plant = String(fields.Plant ?? "").trim();
      if (plant === "") continue;
      const earlier = firstRow.get(nameKey(plant));
      if (earlier !== undefined) {
        loading.say.add(
          tab.name,
          `“${plant}” in ${where} also stands in row ${earlier}. The log cannot tell them apart, so give one of them another name.`,
        );
        continue;
      }
      firstRow.set(nameKey(plant), row);
      const last = lastDisturbance(index, plant, today);
      plants.push({
        plant,
        kind: String(fields.Kind ?? ""),
        place: String(fields.Place ?? ""),
        potMl: typeof fields["Pot mL"] === "number" ? fields["Pot mL"] : null,
        restDays: last === null ? null : today - last.day,
        lastEvent: last?.event ?? "",
      });
    }
    return { plantTab: tab.name, plants };
  });
}

/** The missing Plants tab is told with the other missing tabs. */
function openPlantListOrNote(loading: Loading, settings: Settings | null) {
  try {
    return openPlantList(loading.book, settings);
  } catch (error) {
    if (!isBadInput(error) || error.code !== noTab(PLANTS).code) throw error;
    loading.missing.push(PLANTS.name);
    return null;
  }
}

const EMPTY: RootIndex = { byPlant: new Map(), unknownEvents: [] };

/** One pass over the log; only Date, Plant and Event are looked at, since it may have 100,000 rows. */
function readDisturbances(loading: Loading, events: readonly EventKind[]): RootIndex {
  const needed = ["Date", "Plant", "Event"];
  const open = openTab(loading, CARE_LOG, needed);
  if (!open || needed.some((heading) => !open.columns.at.has(heading))) return EMPTY;
  const { values, columns } = open;
  const at = (heading: string) => (columns.at.get(heading) ?? 0) - 1;
  const [dateAt, plantAt, eventAt] = [at("Date"), at("Plant"), at("Event")];
  const { dayOf } = loading.book.workbook;
  const entries: LogEntry[] = [];
  for (let index = 1; index < values.length; index++) {
    const row = values[index] ?? [];
    const plant = row[plantAt];
    const event = row[eventAt];
    if (plant === "" || event === "" || plant === undefined || event === undefined) continue;
    const raw = row[dateAt];
    let day = dayOf(raw);
    if (day === null) {
      try {
        day = readDay(readCell(raw, dayOf), `Date in row ${index + 1} of ${columns.tabName}`);
      } catch (error) {
        if (!isBadInput(error)) throw error;
        loading.say.add("Care log", `${error.message} Until then that row is not counted.`);
        continue;
      }
    }
    if (day === null)
      loading.say.add(
        "Care log",
        `There is no date in row ${index + 1} of ${columns.tabName}, so that row is not counted.`,
      );
    else entries.push({ day, plant: String(plant), event: String(event) });
  }
  const found = indexDisturbances(entries, eventRule(events));
  if (found.unknownEvents.length > 0) {
    const names = found.unknownEvents.slice(0, 8).join(", ");
    loading.say.add(
      "Care log",
      `“${columns.tabName}” has events that Events does not list: ${names}. They count as leaving the roots alone; add them to Events if they do not.`,
    );
  }
  return found;
}
