/** The short lists of the sample sheet: Events, Claims, Trials, Settings. Claims and trial are invented. */

import { BUILT_IN_EVENTS } from "../core/roots.ts";
import { settingRows } from "../sheet/settings.ts";
import { SCALE_STEP_G, SYRINGE_STEP_ML } from "./sample-batches.ts";
import type { CareEntry } from "./sample-care.ts";
import { day, type SampleCell } from "./sample-cell.ts";
import { PEOPLE, TODAY } from "./sample-household.ts";
import { PH_HIGH, PH_LOW } from "./sample-readings.ts";
import { OWN_EVENT } from "./sample-roots.ts";
import { TRIAL_A, TRIAL_B, TRIAL_FROM, TRIAL_TO } from "./sample-trial.ts";

type Row = Readonly<Record<string, SampleCell>>;

export const EVENT_ROWS: readonly Row[] = [
  ...BUILT_IN_EVENTS.map(({ event, disturbsRoots }) => ({
    Event: event,
    "Disturbs roots": disturbsRoots ? "yes" : "no",
  })),
  { Event: OWN_EVENT, "Disturbs roots": "yes" },
];

const TRIAL_ID = "trial-0001";

export const CLAIM_ROWS: readonly Row[] = [
  {
    Id: "claim-0001",
    Claim: "A plant in clay should be left alone for at least half a year after a repot",
    "Heard from": "Marit, at the plant swap",
    "Years at it": 11,
    "Their setup": "Clay in net pots, rain water, north windows",
    "Our setup": "Clay in nursery pots, low-mineral water, all windows",
    Status: "kept",
    "Look again": { day: day("2027-03-01") },
    Note: "The board is sorted by this",
  },
  {
    Id: "claim-0002",
    Claim: "More ammonium makes more leaves on foliage plants",
    "Heard from": "A leaflet in the library",
    "Their setup": "Greenhouse, drip on rockwool",
    "Our setup": "Passive reservoirs, half strength",
    Status: "trying",
    "Look again": { day: day("2026-12-06") },
    Trial: TRIAL_ID,
  },
  {
    Id: "claim-0003",
    Claim: "pH need not be tested with every batch once many in a row agree",
    "Heard from": "Marit, at the plant swap",
    "Years at it": 11,
    "Their setup": "Same water and feeds for years",
    "Our setup": "Water changed twice in two years",
    Status: "kept",
    "Look again": { day: day("2027-04-15") },
    Note: "Test again after every change of water, feed or lot",
  },
  {
    Id: "claim-0004",
    Claim: "A spoon of plant extract in the reservoir keeps roots white",
    "Heard from": "Neighbour downstairs",
    "Years at it": 2,
    "Their setup": "Soil",
    "Our setup": "Clay without soil life",
    Status: "dropped",
    Note: "The inch plant's reservoir smelled after four days",
  },
  {
    Id: "claim-0005",
    Claim: "Tap water left standing overnight is safe for every plant",
    "Heard from": "Odile",
    "Years at it": 40,
    "Their setup": "Soil, terracotta",
    "Our setup": "Standing lets free chlorine go, not chloramine, and takes no lime out",
    Status: "heard",
    "Look again": { day: day("2027-01-10") },
  },
];

/** New leaves a plant on each side, counted from the log, so that the result agrees with it. */
function meanLeaves(entries: readonly CareEntry[], plants: readonly string[]): string {
  const [from, to] = [day(TRIAL_FROM), day(TRIAL_TO)];
  const leaves = entries.filter(
    (entry) => entry.event === "New leaf" && plants.includes(entry.plant) && entry.day >= from && entry.day <= to,
  );
  return (leaves.length / plants.length).toFixed(1);
}

export function trialRows(entries: readonly CareEntry[]): Row[] {
  return [
    {
      Id: TRIAL_ID,
      Question: "Do plants make more leaves with part of their nitrogen as ammonium?",
      Measure: "New leaves from first to last day",
      Started: { day: day(TRIAL_FROM) },
      Ends: { day: day(TRIAL_TO) },
      "Plants A": TRIAL_A.join("; "),
      "Plants B": TRIAL_B.join("; "),
      Result: `A ${meanLeaves(entries, TRIAL_A)}, B ${meanLeaves(entries, TRIAL_B)} new leaves a plant. Six plants a side of different kinds: not enough plants to tell.`,
    },
  ];
}

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
