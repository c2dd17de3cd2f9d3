/** The plants of the panel: from the list in use, each with how long its roots have been at rest. */

import { nameKey } from "../core/cell.ts";
import { isBadInput } from "../core/errors.ts";
import { lastDisturbance, type RootIndex } from "../core/roots.ts";
import { noTab } from "../sheet/find.ts";
import { PLANTS } from "../sheet/list-tabs.ts";
import { openPlantList } from "../sheet/plant-list.ts";
import { columnProblems, readRows } from "../sheet/rows.ts";
import type { Settings } from "../sheet/settings.ts";
import type { PlantRow } from "./contract.ts";
import { type Loading, part } from "./loading.ts";

export interface PlantsInUse {
  /** The tab that lists them; "" when there is none. */
  readonly plantTab: string;
  readonly plants: PlantRow[];
}

interface Given {
  readonly settings: Settings | null;
  readonly index: RootIndex;
  /** Day number. */
  readonly today: number;
}

export function readPlants(loading: Loading, { settings, index, today }: Given): PlantsInUse {
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
        medium: String(fields.Medium ?? ""),
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
