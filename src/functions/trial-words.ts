/** What is said about the custom function on trials, with examples that tests try; printed, never shipped with a call. */

import type { TRIAL_RECORDS } from "./trial.ts";
import type { WordsOf } from "./words.ts";

const FISHER = "Fisher 1935, The Design of Experiments, chapter II: eight cups, four of each kind, 70 ways to choose";

const VALUES = "one column or one row, one value for each plant; blank cells are passed over.";

export const TRIAL_WORDS: WordsOf<typeof TRIAL_RECORDS> = {
  TRIAL_P: {
    summary: "Says how often chance alone would part two groups by as much as was seen.",
    args: {
      a: `What was measured on the first group: ${VALUES}`,
      b: `What was measured on the second group: ${VALUES}`,
    },
    result:
      "The two-sided exact p of the difference of means: the share of all ways to divide these values into groups of the same sizes that differ at least (≥) as much. Every way is counted, never a sample; up to 21 values in each group always, more where the values have few digits, else it is refused. It holds for plants that were drawn into the groups at random; for pairs, use the panel.",
    examples: [
      {
        formula: "=TRIAL_P(A2:A5, B2:B5)",
        args: [
          [[1], [1], [1], [1]],
          [[0], [0], [0], [0]],
        ],
        gives: 2 / 70,
        source: `${FISHER}; one of them has all four right and one all four wrong.`,
      },
      {
        formula: "=TRIAL_P(A2:A5, B2:B5)",
        args: [
          [[1], [1], [1], [0]],
          [[1], [0], [0], [0]],
        ],
        gives: 34 / 70,
        source: `${FISHER}; 17 of them have three or more right, and as many three or more wrong.`,
      },
    ],
    sources: [FISHER, "Pitman 1937, Supplement to the Journal of the Royal Statistical Society 4, 119"],
    seeAlso: ["CHECK_EVERY", "ROOT_REST"],
  },
};
