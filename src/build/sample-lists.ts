/** The short lists of the sample sheet: Events and Settings. */

import { BUILT_IN_EVENTS } from "../core/roots.ts";
import { settingRows } from "../sheet/settings.ts";
import { SCALE_STEP_G, SYRINGE_STEP_ML } from "./sample-batches.ts";
import { day, type SampleCell } from "./sample-cell.ts";
import { PEOPLE, TODAY } from "./sample-household.ts";
import { PH_HIGH, PH_LOW } from "./sample-readings.ts";
import { OWN_EVENT } from "./sample-roots.ts";

type Row = Readonly<Record<string, SampleCell>>;

export const EVENT_ROWS: readonly Row[] = [
  ...BUILT_IN_EVENTS.map(({ event, disturbsRoots }) => ({
    Event: event,
    "Disturbs roots": disturbsRoots ? "yes" : "no",
  })),
  { Event: OWN_EVENT, "Disturbs roots": "yes" },
];

/** What this household has put beside the settings; the rest stands as the set-up leaves it. */
const OWN_VALUES: Readonly<Record<string, string | number>> = {
  People: PEOPLE.join(", "),
  "Scale step g": SCALE_STEP_G,
  "Syringe step mL": SYRINGE_STEP_ML,
  "pH low": PH_LOW,
  "pH high": PH_HIGH,
};

/** "Today" stands first: formulas point at its cell. */
export const SETTING_ROWS: readonly Row[] = settingRows(day(TODAY)).map(({ setting, value, note }) => ({
  Setting: setting,
  Value: OWN_VALUES[setting] ?? (typeof value === "boolean" ? String(value) : value),
  Note: note,
}));
