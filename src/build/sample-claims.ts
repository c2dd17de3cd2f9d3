/** Claims and Trials of the sample household: what was heard, what is tried, and what came of it. Invented. */

import { drawPairs } from "../core/assignment.ts";
import { resultText, type Trial, trialState } from "../core/trial.ts";
import type { CareEntry } from "./sample-care.ts";
import { day, rounded, type SampleCell } from "./sample-cell.ts";
import { TODAY } from "./sample-household.ts";
import { TRIAL_A, TRIAL_B, TRIAL_DRAW, TRIAL_FROM, TRIAL_TO } from "./sample-trial.ts";

type Row = Readonly<Record<string, SampleCell>>;

const AMMONIUM_TRIAL = "trial-0001";
const TURNING_TRIAL = "trial-0002";

const OURS = "Clay in nursery pots, half strength, all windows";

export const CLAIM_ROWS: readonly Row[] = [
  {
    Id: "claim-0001",
    Claim: "A plant in clay should be left alone for at least half a year after a repot",
    "Heard from": "Marit, at the plant swap",
    "Years at it": 11,
    "Their setup": "Clay in net pots, rain water, north windows",
    "Our setup": "Clay in nursery pots, low-mineral water, all windows",
    Agrees: "Clay, standing in a reservoir",
    Differs: "Pots, water, light",
    Status: "kept",
    "Heard on": { day: day("2024-12-07") },
    "Look again": { day: day("2027-03-01") },
    "What came of it": "No plant was repotted twice within a year; the board is sorted by this",
    Who: "Ines",
  },
  {
    Id: "claim-0002",
    Claim: "More ammonium makes more leaves on foliage plants",
    "Heard from": "A leaflet in the library",
    "Their setup": "Greenhouse, drip on rockwool",
    "Our setup": OURS,
    Agrees: "Foliage plants, mineral feeds",
    Differs: "Light, medium, strength, how they are watered",
    Status: "heard",
    "Heard on": { day: day("2026-05-09") },
    Who: "Tomas",
  },
  {
    Id: "claim-0003",
    Claim: "pH need not be tested with every batch once many in a row agree",
    "Heard from": "Marit, at the plant swap",
    "Years at it": 11,
    "Their setup": "Same water and feeds for years",
    "Our setup": "Water changed twice in two years",
    Differs: "They know their water; ours changes",
    Status: "kept",
    "Heard on": { day: day("2025-03-15") },
    "Look again": { day: day("2027-04-15") },
    "What came of it": "Test again after every change of water, feed or lot",
    Who: "Ines",
  },
  {
    Id: "claim-0004",
    Claim: "A spoon of plant extract in the reservoir keeps roots white",
    "Heard from": "Neighbour downstairs",
    "Years at it": 2,
    "Their setup": "Soil",
    "Our setup": "Clay without soil life",
    Differs: "Soil breaks it down, clay does not",
    Status: "dropped",
    "Heard on": { day: day("2025-06-02") },
    "What came of it": "The inch plant's reservoir smelled after four days",
    Who: "Wren",
  },
  {
    Id: "claim-0005",
    Claim: "Tap water left standing overnight is safe for every plant",
    "Heard from": "Odile",
    "Years at it": 40,
    "Their setup": "Soil, terracotta",
    "Our setup": "Standing lets free chlorine go, not chloramine, and takes no lime out",
    Differs: "Soil and lime get along better than clay and lime",
    Status: "heard",
    "Heard on": { day: day("2026-01-10") },
    "Look again": { day: day("2027-01-10") },
    Who: "Tomas",
  },
  {
    Id: "claim-0006",
    Claim: "A quarter turn towards the window every week makes more leaves",
    "Heard from": "Odile",
    "Years at it": 40,
    "Their setup": "Soil, winter garden, light from three sides",
    "Our setup": OURS,
    Agrees: "The same kinds of plants",
    Differs: "Light from one side here",
    Status: "trying",
    "Heard on": { day: day("2026-10-18") },
    "Look again": { day: day("2027-03-01") },
    Trial: TURNING_TRIAL,
    Who: "Odile",
  },
  {
    Id: "claim-0007",
    Claim: "More ammonium makes more leaves on foliage plants",
    "Heard from": "A leaflet in the library",
    "Their setup": "Greenhouse, drip on rockwool",
    "Our setup": OURS,
    Agrees: "Foliage plants, mineral feeds",
    Differs: "Light, medium, strength, how they are watered",
    Status: "trying",
    "Heard on": { day: day("2026-05-09") },
    "Look again": { day: day("2026-12-06") },
    Trial: AMMONIUM_TRIAL,
    "What came of it": "Six pairs were too few to tell; try again with more plants",
    Who: "Tomas",
    Corrects: "claim-0002",
  },
];

/** Alike by kind, place and pot as far as this household has them. */
const TURNING_PAIRS = [
  ["Fiddle-leaf", "Weeping fig"],
  ["Big monstera", "Rubber tree"],
  ["Odile's lily", "Peace lily, large"],
  ["Corner dracaena", "Red-edge dracaena"],
  ["Golden pothos", "Marble pothos"],
  ["Spider plant one", "Spider plant two"],
  ["Calathea", "Rattlesnake"],
  ["Heartleaf", "Red philodendron"],
] as const;
const TURNING_DRAW = 48_213_377;
const PAIRED = "Pairs";
const LEAVES = "New leaves";

/** The finished trial's result is worked out from the log, as the panel does it. */
export function trialRows(entries: readonly CareEntry[]): Row[] {
  const trial: Trial = {
    measure: LEAVES,
    design: PAIRED,
    started: day(TRIAL_FROM),
    ends: day(TRIAL_TO),
    plantsA: TRIAL_A,
    plantsB: TRIAL_B,
  };
  const rows = entries.map(({ note = "", ...entry }) => ({ ...entry, note }));
  const state = trialState(trial, rows, day(TODAY));
  const { test, interval } = state;
  if (test === null || interval === null) throw new Error("The sample's trial has too few plants.");
  const turning = drawPairs(TURNING_PAIRS, TURNING_DRAW);
  return [
    {
      Id: AMMONIUM_TRIAL,
      Question: "Do plants make more leaves with part of their nitrogen as ammonium?",
      Measure: LEAVES,
      Started: { day: trial.started },
      Ends: { day: trial.ends },
      "Group A": "Feed with part of its nitrogen as ammonium",
      "Group B": "Feed with nitrate only",
      "Plants A": TRIAL_A.join("; "),
      "Plants B": TRIAL_B.join("; "),
      Design: PAIRED,
      Draw: TRIAL_DRAW,
      "Worth seeing": 2,
      Result: resultText(state),
      Difference: rounded(test.difference, 4),
      From: rounded(interval.low, 3),
      To: rounded(interval.high, 3),
      p: rounded(test.p, 5),
      Who: "Tomas",
    },
    {
      Id: TURNING_TRIAL,
      Question: "Does a quarter turn every week make more leaves?",
      Measure: LEAVES,
      Started: { day: day("2026-11-01") },
      Ends: { day: day("2027-02-28") },
      "Group A": "A quarter turn every Sunday",
      "Group B": "Left as they stand",
      "Plants A": turning.a.join("; "),
      "Plants B": turning.b.join("; "),
      Design: PAIRED,
      Draw: TURNING_DRAW,
      "Worth seeing": 2,
      Who: "Odile",
    },
  ];
}
