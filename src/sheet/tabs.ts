/** All tabs of the add-on as data, in the order in which the set-up makes them. */

import { CLAIMS, EVENTS, PLANTS, SETTINGS, TRIALS } from "./list-tabs.ts";
import { BATCH_LOG, CARE_LOG, METER_LOG, PURCHASES } from "./log-tabs.ts";
import { FEEDS, TARGETS, WATERS } from "./shelf-tabs.ts";
import type { TabName, TabSpec } from "./spec.ts";

export const TABS: readonly TabSpec[] = [
  PLANTS,
  CARE_LOG,
  EVENTS,
  FEEDS,
  WATERS,
  TARGETS,
  BATCH_LOG,
  PURCHASES,
  METER_LOG,
  CLAIMS,
  TRIALS,
  SETTINGS,
];

/** The tab of this name. Every TabName has one. */
export function tabSpec(name: TabName): TabSpec {
  const spec = TABS.find((tab) => tab.name === name);
  if (!spec) throw new Error(`No tab is called ${name}.`);
  return spec;
}
