/** What a small household's sheet answers to "load": invented plants, salts by chemical name with analyses from their formulas. */

import type { FunctionHelp } from "../../sidebar/formulas.ts";
import type { Loaded } from "../../src/app/contract.ts";

/**
 * Percent of each element by weight, from the formulas and the CIAAW 2021 abridged atomic weights, worked out by
 * hand: KNO3 101.102, Ca(NO3)2·4H2O 236.146, KH2PO4 136.084, MgSO4·7H2O 246.466 g/mol.
 */
const FEEDS = [
  { Feed: "Potassium nitrate", "NO3-N": 13.854, N: 13.854, K: 38.672 },
  { Feed: "Calcium nitrate tetrahydrate", N: 11.863, "NO3-N": 11.863, Ca: 16.972 },
  { Feed: "Potassium dihydrogen phosphate", P: 22.761, K: 28.731 },
  { Feed: "Magnesium sulfate heptahydrate", Mg: 9.861, S: 13.008 },
  { Feed: "Complete liquid 4-2-6", N: 4, P2O5: 2, K2O: 6, Density: 1.12 },
  { Feed: "Fish and kelp brew", N: 2, P2O5: 1, K2O: 1, Origin: "organic" },
  { Feed: "Green bottle without a label", "Analysis published": "no" },
];

const PLACES = ["Kitchen sill", "Stairwell", "North room"];
const KINDS = ["Fern", "Arum", "Hoya", "Peperomia"];

export function sheet(change: Partial<Loaded> = {}): Loaded {
  return {
    today: "2026-03-14",
    who: "Ama",
    people: ["Ama", "Bo"],
    meterScale: null,
    settings: {},
    care: { rows: [], from: null, all: true },
    plantTab: "Plants",
    plants: Array.from({ length: 12 }, (_, index) => ({
      plant: `${KINDS[index % 4]} ${index + 1}`,
      kind: KINDS[index % 4] ?? "",
      place: PLACES[index % 3] ?? "",
      potMl: 500,
      medium: "Clay",
      restDays: index === 4 ? null : index * 17,
      lastEvent: index === 4 ? "" : "Repot",
    })),
    events: [
      { event: "Repot", disturbsRoots: true },
      { event: "Root trim", disturbsRoots: true },
      { event: "Top up", disturbsRoots: false },
      { event: "Solution change", disturbsRoots: false },
      { event: "Note", disturbsRoots: false },
    ],
    feeds: FEEDS.map((fields, index) => ({ row: index + 2, fields: fields as Record<string, string | number> })),
    waters: [
      { row: 2, fields: { Water: "Tap", Date: "2026-01-10", Ca: 62, Mg: 9, Na: 14, SO4: 31, Cl: 22, "NO3-N": 2.1 } },
      { row: 3, fields: { Water: "Rain barrel", Ca: 3, Mg: "0,4", Na: 1 } },
    ],
    targets: [
      {
        row: 2,
        fields: { Target: "Foliage, half strength", N: 105, P: 15.5, K: 117.5, Ca: 80, Mg: 24.3, S: 32, Fe: 1 },
      },
      { row: 3, fields: { Target: "Rooting, weak", N: 42, P: 6, K: 47, Ca: 32, Mg: 10 } },
    ],
    batches: [
      {
        id: "batch-0000-0002",
        day: "2026-03-01",
        who: "Bo",
        litres: 8,
        water: "Tap",
        target: "Rooting, weak",
        doses: "Potassium nitrate 0.101 g/L (0.808 g); Calcium nitrate tetrahydrate 0.0943 g/L (0.7544 g)",
        // By hand: 0.101 × 138.54 and 386.72, 0.0943 × 118.63 and 169.72 mg/L, on top of the tap water.
        reached: { N: 27.28, K: 39.06, Ca: 78, Mg: 9, S: 10.35 },
        predictedEcMsCm: 0.62,
        acid: "",
        verdict: "",
        note: "",
        state: "mixed",
        corrects: "",
        measuredEcMsCm: null,
        measuredPH: null,
      },
      {
        id: "batch-0000-0001",
        day: "2026-02-15",
        who: "Ama",
        litres: 10,
        water: "Tap",
        target: "Foliage, half strength",
        doses: "Potassium nitrate 0.253 g/L (2.53 g)",
        reached: {},
        predictedEcMsCm: 1.09,
        acid: "",
        verdict: "",
        note: "",
        state: "mixed",
        corrects: "",
        measuredEcMsCm: 1.1,
        measuredPH: 5.9,
      },
    ],
    usedBefore: { used: [], unread: [] },
    problems: [
      'Ca in row 4 of Waters is "a lot". Give a plain number in mg/L, like 1.2.',
      "This spreadsheet has no tab “Events”. Choose “Set up tabs” from the Stillroot menu: it adds what is missing and leaves all else as it is.",
    ],
    ...change,
  };
}

/** Help on two formulas, in words of the test's own. */
export const FORMULAS: readonly FunctionHelp[] = [
  {
    name: "WATER_HARDNESS",
    summary: "Gives the total hardness of a water.",
    call: "WATER_HARDNESS(calcium, magnesium, [unit])",
    args: [
      { name: "calcium", help: "Calcium in mg/L.", optional: false },
      { name: "magnesium", help: "Magnesium in mg/L.", optional: false },
      { name: "unit", help: "Unit of the answer, mg/L CaCO3 when left out.", optional: true },
    ],
    result: "Hardness in the unit asked for.",
    examples: ["=WATER_HARDNESS(62, 9)", '=WATER_HARDNESS(B2:B, C2:C, "dH")'],
  },
  {
    name: "ROOT_REST",
    summary: "Counts the whole days since each plant's roots were last disturbed.",
    call: "ROOT_REST(plants, log, asOf, [heading], [events])",
    args: [{ name: "plants", help: "Names of plants.", optional: false }],
    result: "Days; blank where no disturbance is on record.",
    examples: ["=ROOT_REST(A2:A, 'Care log'!A:G, Settings!B2)"],
  },
];
