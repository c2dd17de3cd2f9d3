/** The Try it tab: formulas with a line of explanation each, and cells to change. */

import type { SampleCell, SampleRow, SampleTab } from "./sample-cell.ts";
import { DOSED_FEEDS, FEED_ROWS } from "./sample-feeds.ts";
import { AS_OF, LOG } from "./sample-formulas.ts";
import { rangeOn, wholeTab } from "./sample-ranges.ts";
import { WATER_ROWS } from "./sample-waters.ts";

/** Rows of one question; the first row's number is given to write references with. Column A says or names, B on answers. */
type Block = (row: number) => readonly SampleRow[];

const formula = (text: string): SampleCell => ({ formula: `=${text}` });

/** A formula that is copied down or sorted must not take its ranges along. */
const fixed = (range: string): string => range.replace(/!([A-Z]+)(\d+):([A-Z]+)$/, "!$$$1$$$2:$$$3");
const LOG_FIXED = fixed(LOG);

/** The feeds sold by weight stand first on the shelf. */
const SALTS = DOSED_FEEDS.slice(0, -1);
const MAIN = ["N", "P", "K", "Ca", "Mg", "S"];
const MAIN_TEXT = `"${MAIN.join(" ")}"`;
const ALL = [...MAIN, "Fe", "Mn", "Zn", "B", "Cu", "Mo"];
const FIRST_WATER = wholeTab("Waters", 2);

const ppm: readonly Block[] = [
  () => [
    ["What a feed brings to the water, mg/L", ...ALL],
    ["1 g of a 10-5-5 feed in a litre", formula('FEED_PPM("10-5-5", 1)')],
    ["A 10-5-5 with more on its label, 0.5 g in a litre", formula('FEED_PPM("10-5-5 Ca 4 Mg 1.2 Fe 0.1", 0.5)')],
    [
      "A liquid 10-5-5 of 1.2 g/mL, one US teaspoon in a US gallon",
      formula('FEED_PPM("10-5-5", 1, "tsp/gal", "N P K", 1.2)'),
    ],
  ],
  (row) => [
    ["Grams of a 10-5-5 in a litre: change these", "N, mg/L"],
    [0.25, formula(`FEED_PPM("10-5-5", A${row + 1}:A${row + 3}, "g/L", "N")`)],
    [0.5],
    [1],
  ],
  () => [
    ["1 g of each salt on the shelf in a litre, mg/L", ...MAIN, "Fe"],
    ...SALTS.map((name, at): SampleRow => {
      const shelf = wholeTab("Feeds", SALTS.length + 1);
      return at === 0 ? [name, formula(`FEED_PPM(${shelf}, 1, "g/L", "${MAIN.join(" ")} Fe")`)] : [name];
    }),
  ],
];

const mixing: readonly Block[] = [
  (row) => [
    ["A recipe for a litre: change a dose", "Feed", "Dose", "Unit"],
    [null, "Calcium nitrate tetrahydrate", 0.5, "g/L"],
    [null, "Potassium nitrate", 0.3, "g/L"],
    [null, "Monopotassium phosphate", 0.07, "g/L"],
    [null, "Magnesium sulfate heptahydrate", 0.25, "g/L"],
    ["What it makes of the first water on the Waters tab, mg/L", ...MAIN],
    [null, formula(`FEED_MIX(${wholeTab("Feeds")}, B${row}:D${row + 4}, ${FIRST_WATER}, ${MAIN_TEXT})`)],
  ],
  () => [
    ["Doses for 20 litres that come closest to the first target on the Targets tab, and which feeds may not be used"],
    [null, formula(`FEED_SOLVE(${wholeTab("Targets", 2)}, ${wholeTab("Feeds")}, ${FIRST_WATER}, 20)`)],
    // A line for each feed, and room for a longer shelf.
    ...Array.from({ length: FEED_ROWS.length + 5 }, (): SampleRow => [null]),
  ],
];

function waterColumn(heading: string): string {
  return rangeOn("Waters", { from: heading, to: heading, firstRow: 2, lastRow: WATER_ROWS.length + 1 });
}

const water: readonly Block[] = [
  (row) => [
    ["Water", "Hardness, mg/L CaCO3", "Class (USGS)"],
    ...WATER_ROWS.map((found, at): SampleRow => {
      const name = found.Water ?? null;
      if (at > 0) return [name];
      const hardness = formula(`WATER_HARDNESS(${waterColumn("Ca")}, ${waterColumn("Mg")})`);
      return [name, hardness, formula(`WATER_CLASS(B${row + 1}:B${row + WATER_ROWS.length})`)];
    }),
  ],
  (row) => [
    ["Hardness in mg/L CaCO3: change it", "German degrees", "French degrees", "Grains a US gallon", "mmol/L"],
    [
      200,
      ...["dH", "fH", "gpg", "mmol/L"].map((unit) => formula(`WATER_CONVERT(A${row + 1}, "mg/L CaCO3", "${unit}")`)),
    ],
  ],
];

const meter: readonly Block[] = [
  (row) => [
    ["Uncompensated reading, mS/cm: change it", "Temperature, °C", "EC at 25 °C"],
    [1.305, 21, formula(`METER_AT25(A${row + 1}, B${row + 1})`)],
  ],
  (row) => [
    ["EC, mS/cm: the same water as ppm on three meters", "500 scale", "640 scale", "700 scale"],
    [1.41, ...["500", "640", "700"].map((scale) => formula(`METER_TDS(A${row + 1}, ${scale})`))],
  ],
  (row) => [
    ["ppm on a meter with the 500 scale", "EC, mS/cm"],
    [700, formula(`METER_EC(A${row + 1}, 500)`)],
  ],
];

const roots: readonly Block[] = [
  (row) => [
    ["Plant: type another", "Last disturbed", "Days at rest"],
    ["Big monstera", formula(`ROOT_LAST(A${row + 1}, ${LOG})`), formula(`ROOT_REST(A${row + 1}, ${LOG}, ${AS_OF})`)],
  ],
  (row) => [
    ["A list of one's own, one formula a row: sort it by either column", "Days at rest"],
    ...["Weeping fig", "Snake plant", "Calathea", "Peace lily, large", "Inch plant"].map((plant, at): SampleRow => {
      const rest = `ROOT_REST($A${row + 1 + at}, ${LOG_FIXED}, ${AS_OF})`;
      return [plant, formula(rest)];
    }),
  ],
];

const POT_LOG = rangeOn("Care log", { from: "Date", to: "Amount mL" });

const pots: readonly Block[] = [
  (row) => [
    ["Plant: type another", "Drinks, mL a day", "Change, % a week"],
    [
      "Big monstera",
      formula(`POT_USE(A${row + 1}, ${POT_LOG}, ${AS_OF})`),
      formula(`POT_TREND(A${row + 1}, ${POT_LOG}, ${AS_OF})`),
    ],
  ],
  () => [
    ["Sodium in half a litre of reservoir after three litres were drunk and replaced, mg/L: 20 in the water"],
    [null, formula("POT_SALT(20, 20, 3, 0.5)")],
  ],
];

const learning: readonly Block[] = [
  (row) => [
    ["pH of twelve batches mixed alike, oldest first: change the last one", "Test every so many batches"],
    ...[5.72, 5.76, 5.74, 5.79, 5.71, 5.75, 5.77, 5.73, 5.76, 5.7, 5.74, 5.78].map(
      (pH, at): SampleRow => (at === 0 ? [pH, formula(`CHECK_EVERY(A${row + 1}:A${row + 12})`)] : [pH]),
    ),
  ],
  (row) => [
    ["New leaves of plants that got it: change one", "of plants that did not", "Chance alone does as much (p)"],
    ...[
      [4, 2],
      [5, 3],
      [3, 3],
      [6, 4],
      [4, 1],
      [5, 4],
    ].map(
      (leaves, at): SampleRow =>
        at === 0 ? [...leaves, formula(`TRIAL_P(A${row + 1}:A${row + 6}, B${row + 1}:B${row + 6})`)] : leaves,
    ),
  ],
];

export function tryItTab(): SampleTab {
  const rows: SampleRow[] = [["Try it: change a number or a name, and see the answers follow"]];
  for (const block of [...ppm, ...mixing, ...water, ...meter, ...roots, ...pots, ...learning]) {
    rows.push([null]);
    rows.push(...block(rows.length + 1));
  }
  return { name: "Try it", rows };
}
