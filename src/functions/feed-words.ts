/** What is said about the custom functions on feeds, with examples that tests try; printed, never shipped with a call. */

import { DOSE_UNITS } from "../core/dose.ts";
import { ELEMENTS } from "../core/elements.ts";
import type { FEED_RECORDS } from "./feed.ts";
import type { ExampleValue, WordsOf } from "./words.ts";

/** Percent by formula weight [CIAAW 2021], as a label of the pure salt would print it. */
const SALTS: ExampleValue = [
  ["Feed", "N", "P", "K", "Ca", "Mg", "S"],
  ["Potassium nitrate", 13.854, "", 38.672, "", "", ""],
  ["Calcium nitrate 4-hydrate", 11.863, "", "", 16.972, "", ""],
  ["Monopotassium phosphate", "", 22.761, 28.731, "", "", ""],
  ["Magnesium sulfate 7-hydrate", "", "", "", "", 9.861, 13.008],
];
const HOAGLAND =
  "Hoagland & Arnon 1950, California Agricultural Experiment Station Circular 347, solution 1 (read in reprints)";
const GRADE_LAW =
  "Uniform state fertilizer law, e.g. Arizona Rev. Stat. § 3-275: P as P2O5, K as K2O, percent by weight";
const HANDBOOK_44 = "NIST Handbook 44, Appendix C, for the units";
const WEIGHTS = "CIAAW 2021 atomic weights";

const ELEMENTS_HELP = `Optional. Elements wanted, such as "N P K" or "Fe"; ${ELEMENTS.join(" ")} when left out.`;
const FEEDS_HELP =
  "The feeds with their heading row, as on the Feeds tab: Feed, and percent of what the label prints (N, P2O5, K2O, P, K, Ca, Mg and so on), Basis, Density.";
const WATER_HELP =
  "Optional. The water before any feed: a heading row as on the Waters tab and one row of mg/L; pure water when left out.";

export const FEED_WORDS: WordsOf<typeof FEED_RECORDS> = {
  FEED_PPM: {
    summary: "Works out how much of each element a dose of a feed brings into the water.",
    args: {
      label:
        'The printed analysis: "10-5-5", "10-5-5 Ca 4 Mg 1.2 Fe 0.1", "N 10 P 2.2 K 4.2 elemental", with w/v where the label counts by volume; or a table of feeds with its heading row. In a cell, type a grade with an apostrophe in front, or it becomes a date.',
      dose: "How much of the feed goes into the water; a cell or a range. Beside a table of feeds the doses begin with the first feed, not with the heading.",
      unit: `Optional. Unit of the dose: ${DOSE_UNITS.join(", ")} (US measures); g/L when left out.`,
      elements: ELEMENTS_HELP,
      density:
        "Optional. Density of the feed in g/mL; needed for a volume of a feed whose label counts by weight. In a table of feeds its own column Density goes first.",
    },
    result: "mg/L (ppm) of each element, one row per dose; nothing for an element the label does not state.",
    examples: [
      {
        formula: '=FEED_PPM("10-5-5", 1, "g/L", "N P K")',
        args: ["10-5-5", 1, "g/L", "N P K"],
        gives: [[100, 21.82, 41.51]],
        within: 2e-4,
        source: `${GRADE_LAW}; ${WEIGHTS}: P = 0.43643 P2O5, K = 0.83015 K2O.`,
      },
      {
        formula: '=FEED_PPM("10-5-5", 1, "tsp/gal", "N P K", 1.2)',
        args: ["10-5-5", 1, "tsp/gal", "N P K", 1.2],
        gives: [[156.25, 34.1, 64.86]],
        within: 2e-4,
        source: `${HANDBOOK_44}: a US teaspoon is 4.92892 mL, a US gallon 3785.41 mL.`,
      },
      {
        formula: '=FEED_PPM("10-5-5", A2:A4, "g/L", "N")',
        args: ["10-5-5", [[0.5], [1], [2]], "g/L", "N"],
        gives: [[50], [100], [200]],
        source: "Definition of percent by weight: 10 % of 1 g is 100 mg.",
      },
      {
        formula: '=FEED_PPM(A2:A3, B2:B3, "g/L", "P K")',
        args: [[["0-20-0"], ["0-0-10"]], [[1], [1]], "g/L", "P K"],
        gives: [
          [88, 0],
          [0, 83],
        ],
        within: 1e-2,
        source: "Penn State Extension: 20 % P2O5 is 8.8 % P, 10 % K2O is 8.3 % K, printed with two figures.",
      },
    ],
    sources: [GRADE_LAW, WEIGHTS, HANDBOOK_44],
    seeAlso: ["FEED_MIX", "FEED_SOLVE"],
  },
  FEED_MIX: {
    summary: "Adds up what all feeds of a recipe and the water bring together.",
    args: {
      feeds: FEEDS_HELP,
      recipe: `The recipe with its heading row: Feed, Dose, and Unit per litre or gallon (${DOSE_UNITS.join(", ")}).`,
      water: WATER_HELP,
      elements: ELEMENTS_HELP,
    },
    result: "mg/L of each element in one row; nothing for an element that neither a label nor the water states.",
    examples: [
      {
        formula: '=FEED_MIX(Feeds!A1:G5, A1:C5, , "N P K Ca Mg S")',
        args: [
          SALTS,
          [
            ["Feed", "Dose", "Unit"],
            ["Potassium nitrate", 0.50551, "g/L"],
            ["Calcium nitrate 4-hydrate", 1.18073, "g/L"],
            ["Monopotassium phosphate", 0.136084, "g/L"],
            ["Magnesium sulfate 7-hydrate", 0.492932, "g/L"],
          ],
          "",
          "N P K Ca Mg S",
        ],
        gives: [[210, 31, 235, 200, 48.6, 64]],
        within: 3e-3,
        source: `${HOAGLAND}: 5, 5, 1 and 2 mmol/L of the four salts make these mg/L.`,
      },
      {
        formula: '=FEED_MIX(A1:D2, A4:C5, A7:B8, "Mg")',
        args: [
          [
            ["Feed", "Mg", "S", "Basis"],
            ["Magnesium sulfate 7-hydrate", 9.861, 13.008, "w/w"],
          ],
          [
            ["Unit", "Feed", "Dose"],
            ["g/L", "magnesium sulfate 7-hydrate", 0.246466],
          ],
          [
            ["Water", "Mg"],
            ["Tap", 5],
          ],
          "Mg",
        ],
        gives: 29.305,
        within: 1e-4,
        source: `${WEIGHTS}: 1 mmol/L of the salt brings 24.305 mg/L of magnesium, and the water 5.`,
      },
    ],
    sources: [HOAGLAND, WEIGHTS, HANDBOOK_44],
    seeAlso: ["FEED_PPM", "FEED_SOLVE"],
  },
  FEED_SOLVE: {
    summary: "Finds the doses of the feeds at hand that come closest to a target.",
    args: {
      target:
        "The target: a heading row of elements, as on the Targets tab, and one row of mg/L. A blank is not counted, 0 is wanted to be 0.",
      feeds: FEEDS_HELP,
      water: WATER_HELP,
      litres: "Optional. Litres of the batch; the column Batch then gives grams or mL for all of it.",
      step: "Optional. The smallest step that can be measured, in grams or mL for the whole batch: 0.1 for a kitchen scale that shows tenths. Needs litres.",
    },
    result:
      "A table Feed, Dose, Unit, Batch: the doses per litre, none negative, for the least sum of squared relative errors; with step, the least among amounts that can be measured; below them the feeds that may not enter, and why.",
    examples: [
      {
        formula: "=FEED_SOLVE(Targets!A1:F2, Feeds!A1:G5)",
        args: [
          [
            ["N", "P", "K", "Ca", "Mg", "S"],
            [210, 31, 235, 200, 48.6, 64],
          ],
          SALTS,
        ],
        gives: [
          ["Feed", "Dose", "Unit", "Batch"],
          ["Potassium nitrate", 0.506, "g/L", ""],
          ["Calcium nitrate 4-hydrate", 1.181, "g/L", ""],
          ["Monopotassium phosphate", 0.136, "g/L", ""],
          ["Magnesium sulfate 7-hydrate", 0.493, "g/L", ""],
        ],
        within: 5e-3,
        source: `${HOAGLAND}: 5, 5, 1 and 2 mmol/L, in grams by formula weight.`,
      },
      {
        formula: "=FEED_SOLVE(A1:C2, Feeds!A1:C2, E1:F2, 10)",
        args: [
          [
            ["Target", "Mg", "S"],
            ["Half", 29.305, 32.06],
          ],
          [
            ["Feed", "Mg", "S"],
            ["Magnesium sulfate 7-hydrate", 9.861, 13.008],
          ],
          [
            ["Water", "Mg"],
            ["Tap", 5],
          ],
          10,
        ],
        gives: [
          ["Feed", "Dose", "Unit", "Batch"],
          ["Magnesium sulfate 7-hydrate", 0.246466, "g/L", 2.46466],
        ],
        within: 1e-4,
        source: `${WEIGHTS}: the target is 1 mmol/L of the salt above the water's magnesium, 246.466 mg of it.`,
      },
      {
        formula: "=FEED_SOLVE(A1:C2, Feeds!A1:C2, , 10, 0.5)",
        args: [
          [
            ["Target", "Mg", "S"],
            ["Half", 24.305, 32.06],
          ],
          [
            ["Feed", "Mg", "S"],
            ["Magnesium sulfate 7-hydrate", 9.861, 13.008],
          ],
          "",
          10,
          0.5,
        ],
        gives: [
          ["Feed", "Dose", "Unit", "Batch"],
          ["Magnesium sulfate 7-hydrate", 0.25, "g/L", 2.5],
        ],
        source: `${WEIGHTS}: 1 mmol/L of the salt in 10 L is 2.46466 g, and 2.5 is the nearest half gram.`,
      },
    ],
    sources: [HOAGLAND, "Lawson & Hanson 1974, Solving Least Squares Problems, ch. 23"],
    seeAlso: ["FEED_MIX", "FEED_PPM"],
  },
};
