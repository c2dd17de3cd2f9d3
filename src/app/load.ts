/** Reads everything the panel needs in one go, with a sentence on whatever could not be used. */

import { isoFromDay } from "../core/calendar.ts";
import { BUILT_IN_EVENTS } from "../core/roots.ts";
import { openBook } from "../sheet/find.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import { asFailure } from "../sheet/refusals.ts";
import { gatherSentences } from "../sheet/sentences.ts";
import {
  METER_SCALE,
  PEOPLE,
  readMeterScale,
  readPeople,
  readSettings,
  refreshToday,
  type Settings,
  TODAY,
} from "../sheet/settings.ts";
import type { TabName } from "../sheet/spec.ts";
import { NO_BATCHES, readBatches } from "./batches.ts";
import { NO_CARE, readCareLog } from "./care-log.ts";
import type { Loaded } from "./contract.ts";
import { readEvents } from "./events.ts";
import { type Loading, missingTabs, part } from "./loading.ts";
import type { Me } from "./me.ts";
import { readPlants } from "./plants.ts";
import { restRuleIn } from "./rest-rule.ts";
import { readFeeds, readTargets, readWaters } from "./shelves.ts";

const NEEDED: readonly TabName[] = [
  "Plants",
  "Care log",
  "Events",
  "Feeds",
  "Waters",
  "Targets",
  "Batch log",
  "Settings",
];

/** At most eleven calls: tabs, marks, time zone, eight tabs; four more when today's date is stale. */
export function load(workbook: WorkbookPort, me: Me): Loaded {
  const loading: Loading = { book: openBook(workbook, NEEDED), say: gatherSentences(), missing: [] };
  const { say } = loading;
  const settings = part(loading, "Settings", null, () => {
    const found = readSettings(loading.book);
    if (!found) loading.missing.push("Settings");
    return found;
  });
  for (const sentence of settings?.problems ?? []) say.add("Settings", sentence);
  // Told here; the panel then goes by the default.
  part(loading, "Settings", null, () => restRuleIn(settings));
  const today = workbook.today();
  const events = part(loading, "Events", BUILT_IN_EVENTS, () => readEvents(loading));
  const { index, care } = part(loading, "Care log", NO_CARE, () => readCareLog(loading, events));
  const { plantTab, plants } = readPlants(loading, { settings, index, today });
  const loaded: Loaded = {
    today: isoFromDay(today),
    who: me.name,
    people: readPeople(settings?.text(PEOPLE) ?? ""),
    meterScale: part(loading, "Settings", null, () => readMeterScale(settings?.text(METER_SCALE) ?? "")),
    settings: settings?.all() ?? {},
    plantTab,
    plants,
    care,
    events: events.map(({ event, disturbsRoots }) => ({ event, disturbsRoots })),
    feeds: part(loading, "Feeds", [], () => readFeeds(loading)),
    waters: part(loading, "Waters", [], () => readWaters(loading)),
    targets: part(loading, "Targets", [], () => readTargets(loading)),
    ...part(loading, "Batch log", NO_BATCHES, () => readBatches(loading)),
    problems: [],
  };
  refreshIfThere(loading, settings, today);
  return {
    ...loaded,
    problems: [...missingTabs(NEEDED.filter((name) => loading.missing.includes(name))), ...say.all()],
  };
}

/** A person who may only read the sheet can still open the panel, so a refusal is told and no more. */
function refreshIfThere({ say }: Loading, settings: Settings | null, today: number): void {
  if (settings === null || settings.row(TODAY) === null) return;
  try {
    refreshToday(settings, today);
  } catch (error) {
    say.add("Settings", `Today's date in Settings could not be refreshed. ${asFailure(error).sentence}`);
  }
}
