/** What one record of each log and list may hold: the bounds of every field, on schemas that are made anew each time. */

import { describe, expect, test } from "vitest";
import type { Ask, RequestFor } from "../../src/app/contract.ts";
import { type RequestEntries, requestEntries } from "../../src/app/request-entries.ts";
import { requestKinds } from "../../src/app/request-kinds.ts";
import { SAMPLES } from "../shared/samples.ts";
import { batch, careEntry } from "../sheet/workbook.ts";

type Name = keyof RequestEntries;

const sample = <A extends Ask>(ask: A): RequestFor<A> => SAMPLES[ask][0]?.request as RequestFor<A>;
const letters = (count: number): string => "n".repeat(count);
const times = <T>(count: number, value: T): T[] => Array.from({ length: count }, () => value);

/** One record of each kind that is taken as it is. */
const GOOD: Readonly<Record<Name, Readonly<Record<string, unknown>>>> = {
  careEntry: careEntry({ id: "care-00001" }),
  batchDose: { feed: "Iron", perLitre: 0.5, unit: "mL", perBatch: 5 },
  batchEntry: batch({ id: "batch-00001" }),
  waterEntry: sample("log water").entry,
  meterEntry: sample("log meter").entry,
  feedEntry: sample("log feed").entry,
  purchaseEntry: sample("log purchase").entry,
  claimEntry: sample("save claim").claim,
  trialEntry: sample("save trial").trial,
};

const takes = (name: Name, changed: Readonly<Record<string, unknown>>): boolean =>
  requestEntries(requestKinds())[name].safeParse(changed).success;

type Values = readonly unknown[];
const NAME: [Values, Values] = [
  ["n", letters(200)],
  ["", letters(201), 7, null],
];
const TEXT: [Values, Values] = [
  ["", letters(2000)],
  [letters(2001), 7, null],
];
const SENTENCE: [Values, Values] = [
  ["n", letters(2000)],
  ["", letters(2001), null],
];
const ID: [Values, Values] = [
  ["care-001", "0".repeat(64)],
  ["care-01", "0".repeat(65), "Care-0001", "care 0001", " care-001", "care-001\n", "", null],
];
const DAY: [Values, Values] = [
  ["2026-03-01"],
  ["2026-3-01", "12026-03-01", "2026-03-011", "2026-03-0a", "", 46_000, null],
];
const COUNT: [Values, Values] = [
  [0, 0.001, 5000],
  [-0.001, "1", null, Number.POSITIVE_INFINITY, Number.NaN],
];
const COUNT_OR_NULL: [Values, Values] = [
  [0, 0.001, null],
  [-0.001, "1", undefined, Number.NaN],
];
const ABOVE_0: [Values, Values] = [
  [0.001, 5000],
  [0, -1, "1", null],
];
const ABOVE_0_OR_NULL: [Values, Values] = [
  [0.001, null],
  [0, -1, "1", undefined],
];
const PH_OR_NULL: [Values, Values] = [
  [0, 14, 6.25, null],
  [-0.01, 14.01, "6", undefined],
];
const LINK: [Values, Values] = [["care-0001"], ["", "care", null, 5]];
const YES_NO: [Values, Values] = [
  [true, false],
  ["yes", 1, null],
];
const words = (...all: string[]): [Values, Values] => [all, ["other", ` ${all[0]}`, `${all.at(-1)}x`, null]];

const WATER_NUMBERS = ["Ca", "Mg", "Na", "K", "Alkalinity", "SO4", "Cl", "NO3-N", "Fe", "B", "EC", "pH"];
const ELEMENTS = ["N", "P", "K", "Ca", "Mg", "S", "Fe", "Mn", "Zn", "B", "Cu", "Mo", "Si", "Na", "Cl"];
const FORMS = ["P2O5", "K2O", "CaO", "MgO", "SO3", "Na2O", "SiO2", "NO3-N", "NH4-N", "Urea-N", "Other-N"];
/** An object with one number under each of these names, and none under others. */
const numbered = (...names: string[]): [Values, Values] => [
  [{}, ...names.map((one) => ({ [one]: 0 })), Object.fromEntries(names.map((one) => [one, 2.5]))],
  [{ Xx: 1 }, { [names[0] ?? ""]: -1 }, { [names[0] ?? ""]: "1" }, { [names[0] ?? ""]: undefined }, [], null],
];

const FIELDS: readonly [Name, string, [Values, Values]][] = [
  ["careEntry", "id", ID],
  ["careEntry", "day", DAY],
  ["careEntry", "plant", NAME],
  ["careEntry", "event", NAME],
  ["careEntry", "amountMl", COUNT_OR_NULL],
  ["careEntry", "solution", TEXT],
  ["careEntry", "ecMsCm", COUNT_OR_NULL],
  ["careEntry", "pH", PH_OR_NULL],
  ["careEntry", "reason", TEXT],
  ["careEntry", "note", TEXT],
  ["careEntry", "corrects", LINK],
  ["batchDose", "feed", NAME],
  ["batchDose", "perLitre", COUNT],
  ["batchDose", "unit", words("g", "mL")],
  ["batchDose", "perBatch", COUNT],
  ["batchEntry", "id", ID],
  ["batchEntry", "day", DAY],
  ["batchEntry", "litres", ABOVE_0],
  ["batchEntry", "water", TEXT],
  ["batchEntry", "target", TEXT],
  [
    "batchEntry",
    "doses",
    [
      [[GOOD.batchDose], times(3, GOOD.batchDose)],
      [[], [{}], GOOD.batchDose, null],
    ],
  ],
  ["batchEntry", "reached", numbered(...ELEMENTS)],
  ["batchEntry", "predictedEcMsCm", COUNT_OR_NULL],
  ["batchEntry", "acid", TEXT],
  ["batchEntry", "note", TEXT],
  [
    "batchEntry",
    "measured",
    [
      [
        { ecMsCm: 0, pH: 14 },
        { ecMsCm: null, pH: null },
      ],
      [{ ecMsCm: 1 }, { pH: 6 }, { ecMsCm: -1, pH: 6 }, { ecMsCm: 1, pH: 15 }, null],
    ],
  ],
  ["batchEntry", "state", words("planned")],
  ["batchEntry", "corrects", LINK],
  ["waterEntry", "id", ID],
  ["waterEntry", "water", NAME],
  ["waterEntry", "day", DAY],
  ["waterEntry", "source", TEXT],
  ["waterEntry", "numbers", numbered(...WATER_NUMBERS)],
  ["waterEntry", "disinfectant", words("", "none", "chlorine", "chloramine")],
  ["waterEntry", "note", TEXT],
  ["meterEntry", "id", ID],
  ["meterEntry", "day", DAY],
  ["meterEntry", "meter", words("EC", "pH")],
  ["meterEntry", "standard", ABOVE_0],
  ["meterEntry", "reading", COUNT],
  [
    "meterEntry",
    "tempC",
    [
      [0, 50, null],
      [-0.1, 50.1, "20", undefined],
    ],
  ],
  ["meterEntry", "calibrated", YES_NO],
  ["meterEntry", "note", TEXT],
  ["feedEntry", "id", ID],
  ["feedEntry", "feed", NAME],
  ["feedEntry", "basis", words("", "w/w", "w/v")],
  ["feedEntry", "percents", numbered(...ELEMENTS, ...FORMS)],
  ["feedEntry", "densityGPerMl", ABOVE_0_OR_NULL],
  ["feedEntry", "origin", words("mineral", "organic")],
  ["feedEntry", "published", YES_NO],
  [
    "feedEntry",
    "labelText",
    [
      ["", letters(20_000)],
      [letters(20_001), null],
    ],
  ],
  ["feedEntry", "note", TEXT],
  ["purchaseEntry", "id", ID],
  ["purchaseEntry", "day", DAY],
  ["purchaseEntry", "feed", NAME],
  [
    "purchaseEntry",
    "amount",
    [
      [-2.5, 0, 2.5],
      ["2", null, Number.NaN],
    ],
  ],
  ["purchaseEntry", "unit", words("g", "kg", "mL", "L")],
  ["purchaseEntry", "price", COUNT_OR_NULL],
  ["purchaseEntry", "lot", TEXT],
  ["purchaseEntry", "note", TEXT],
  ["purchaseEntry", "corrects", LINK],
  ["claimEntry", "id", ID],
  ["claimEntry", "claim", SENTENCE],
  ["claimEntry", "heardFrom", TEXT],
  ["claimEntry", "yearsAtIt", COUNT_OR_NULL],
  ["claimEntry", "theirSetup", TEXT],
  ["claimEntry", "ourSetup", TEXT],
  ["claimEntry", "agrees", TEXT],
  ["claimEntry", "differs", TEXT],
  ["claimEntry", "status", words("heard", "trying", "kept", "dropped")],
  [
    "claimEntry",
    "heardOn",
    [
      ["2026-03-01", null],
      ["", "1 March", undefined],
    ],
  ],
  [
    "claimEntry",
    "lookAgain",
    [
      ["2026-03-01", null],
      ["", "1 March", undefined],
    ],
  ],
  ["claimEntry", "trial", TEXT],
  ["claimEntry", "outcome", TEXT],
  ["claimEntry", "note", TEXT],
  ["claimEntry", "corrects", LINK],
  ["trialEntry", "id", ID],
  ["trialEntry", "question", SENTENCE],
  ["trialEntry", "measure", words("New leaves", "Days to first new leaf", "Days to first new root", "Score")],
  ["trialEntry", "started", DAY],
  ["trialEntry", "ends", DAY],
  ["trialEntry", "groupA", TEXT],
  ["trialEntry", "groupB", TEXT],
  [
    "trialEntry",
    "plantsA",
    [
      [["Fern"], times(100, "Fern")],
      [[], times(101, "Fern"), [""], "Fern"],
    ],
  ],
  [
    "trialEntry",
    "plantsB",
    [
      [["Fern"], times(100, "Fern")],
      [[], times(101, "Fern"), [""], "Fern"],
    ],
  ],
  ["trialEntry", "design", words("Pairs", "Together")],
  [
    "trialEntry",
    "draw",
    [
      [0, 99_999_999],
      [-1, 100_000_000, 1.5, "1", null],
    ],
  ],
  ["trialEntry", "worthSeeing", ABOVE_0_OR_NULL],
  ["trialEntry", "note", TEXT],
];

describe("a field", () => {
  test.each(FIELDS)("of %s, %s, takes what it may hold and nothing beside", (name, field, [good, bad]) => {
    const put = (value: unknown): boolean => takes(name, { ...GOOD[name], [field]: value });
    expect(good.filter((value) => !put(value))).toEqual([]);
    expect(bad.filter(put)).toEqual([]);
  });

  test("of every record is looked at here", () => {
    const optional: readonly string[] = ["corrects", "measured", "state"];
    for (const [name, whole] of Object.entries(GOOD)) {
      const listed = FIELDS.filter(([of]) => of === name).map(([, field]) => field);
      expect(listed.filter((field) => !optional.includes(field)).sort(), name).toEqual(Object.keys(whole).sort());
    }
  });

  test.each(Object.keys(GOOD) as Name[])("of %s cannot be missing", (name) => {
    const whole = GOOD[name];
    expect(takes(name, whole)).toBe(true);
    for (const left of Object.keys(whole)) {
      const rest = Object.fromEntries(Object.entries(whole).filter(([field]) => field !== left));
      expect(takes(name, rest), left).toBe(false);
    }
  });
});
