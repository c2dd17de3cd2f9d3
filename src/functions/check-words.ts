/** What is said about the custom function on when to test, with examples that tests try; printed, never shipped with a call. */

import type { CHECK_RECORDS } from "./check.ts";
import type { WordsOf } from "./words.ts";

const CHART = "NIST/SEMATECH e-Handbook 6.3.2.2, individuals chart (d2 = 1.128), and 6.3.2, Western Electric rule 4";
const TOLERANCE =
  "NIST/SEMATECH e-Handbook 7.2.6.3, tolerance intervals of a normal distribution (Howe's k2, Natrella's k1)";
const RANGE = "pH 5.5 to 6.0 for foliage plants: common practice, no source";

const column = (...readings: readonly number[]) => readings.map((reading) => [reading]);

export const CHECK_WORDS: WordsOf<typeof CHECK_RECORDS> = {
  CHECK_EVERY: {
    summary: "Says whether to test the pH of every batch, or only of every 2nd, 4th or 8th.",
    args: {
      readings:
        "pH of the batches tested so far, oldest first, all of the same water, feeds, lots and acid: one column or one row. Blank cells are passed over.",
      low: "Optional. Lowest pH you want; 5.5 when left out.",
      high: "Optional. Highest pH you want; 6.0 when left out.",
    },
    result:
      "1, 2, 4 or 8: test every batch, every 2nd, every 4th or every 8th. From 6 readings in a row on it may be 2, from 9 on 4, from 12 on 8, if the tolerance interval of the readings (95 % confidence; 90, 96 or 98 % of batches) lies within the limits and a change of 0.4 pH would show at the next test. After a reading out of the limits or off the chart it is 1 again. Start a new range when water, feed, lot or acid changes, or after a long pause.",
    examples: [
      {
        formula: "=CHECK_EVERY(A2:A6)",
        args: [column(5.75, 5.78, 5.72, 5.76, 5.74)],
        gives: 1,
        source: "By the rule: six readings in a row are needed before one is left out.",
      },
      {
        formula: "=CHECK_EVERY(A2:A13, 5.5, 6)",
        args: [column(5.75, 5.77, 5.73, 5.75, 5.77, 5.73, 5.75, 5.77, 5.73, 5.75, 5.77, 5.73), 5.5, 6],
        gives: 8,
        source:
          "By hand: mean 5.75, s 0.017 (0.02 counts at least), k2 for 98.6 % of batches below 4.9, so all within 0.1 of 5.75; chart limits 0.077 away.",
      },
      {
        formula: "=CHECK_EVERY(A2:A13, 5.5, 6)",
        args: [column(5.75, 5.77, 5.73, 5.75, 5.77, 5.73, 5.75, 5.77, 5.73, 5.75, 5.77, 6.15), 5.5, 6],
        gives: 1,
        source: "By the rule: the last reading lies outside 5.5 to 6.0.",
      },
    ],
    sources: [CHART, TOLERANCE, RANGE],
    seeAlso: ["METER_AT25", "TRIAL_P"],
  },
};
