/** What is said about the custom function on readings over time, with examples that tests try; printed, never shipped with a call. */

import type { METER_HISTORY_RECORDS } from "./meter-history.ts";
import type { ExampleValue, WordsOf } from "./words.ts";

const HEADINGS = ["Date", "EC", "EC expected", "EC low", "EC high", "pH", "pH low", "pH high", "Calibrated", "New lot"];
const BATCHES: ExampleValue = [
  ["Date", "Predicted EC", "Measured EC", "Measured pH"],
  [{ day: "2026-03-09" }, 1.2, 1.22, 5.8],
  [{ day: "2026-03-02" }, 1.2, "", 5.9],
];
const METERS: ExampleValue = [
  ["Date", "Calibrated"],
  [{ day: "2026-03-05" }, "yes"],
  [{ day: "2026-03-06" }, "no"],
];
const BY_HAND = "By hand: the rows in the order of their days, the readings as they stand; the batches are made up.";

export const METER_HISTORY_WORDS: WordsOf<typeof METER_HISTORY_RECORDS> = {
  METER_HISTORY: {
    summary:
      "Lays out the EC and pH of all batches over time, with their limits, calibrations and new lots, to be drawn.",
    args: {
      batches:
        "The Batch log with its heading row; it needs the columns Date, Measured EC and Measured pH, and Predicted EC if it is there. Planned batches and rows that were corrected or taken back do not count.",
      low: "Optional. Lowest pH you want, such as the cell beside pH low in Settings; 5.5 when left out.",
      high: "Optional. Highest pH you want; 6.0 when left out.",
      meters: "Optional. The Meter log with its heading row; it needs the columns Date and Calibrated.",
      purchases: "Optional. The tab Purchases with its heading row; it needs the columns Date, Feed and Lot.",
    },
    result:
      "A table Date, EC, EC expected, EC low, EC high, pH, pH low, pH high, Calibrated, New lot, by day. EC low and EC high are where your meter usually reads, from eight readings with an expected EC on. Calibrated stands on the lower limit of the pH at the first batch after a calibration, New lot on the upper one at the first after another lot was bought, so that a chart shows them as dots. A row of batches that cannot be read comes last, with what is wrong with it; one of the other two tables is told in its own column.",
    examples: [
      {
        formula: "=METER_HISTORY('Batch log'!A1:D3)",
        args: [BATCHES],
        gives: [
          HEADINGS,
          [{ day: "2026-03-02" }, "", 1.2, "", "", 5.9, 5.5, 6, "", ""],
          [{ day: "2026-03-09" }, 1.22, 1.2, "", "", 5.8, 5.5, 6, "", ""],
        ],
        source: BY_HAND,
      },
      {
        formula: "=METER_HISTORY('Batch log'!A1:D3, 5.4, 6.2, 'Meter log'!A1:B3)",
        args: [BATCHES, 5.4, 6.2, METERS],
        gives: [
          HEADINGS,
          [{ day: "2026-03-02" }, "", 1.2, "", "", 5.9, 5.4, 6.2, "", ""],
          [{ day: "2026-03-09" }, 1.22, 1.2, "", "", 5.8, 5.4, 6.2, 5.4, ""],
        ],
        source: BY_HAND,
      },
    ],
    sources: [
      "Band of the EC: median and MAD of measured over expected EC (Croux & Rousseeuw 1992), Student's t for 99 %",
      "pH 5.5 to 6.0 for foliage plants: common practice, no source",
    ],
    seeAlso: ["CHECK_EVERY", "METER_AT25"],
  },
};
