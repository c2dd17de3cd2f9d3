/** Custom function on trials: the exact test of a difference between two groups. */

import { permutationTest } from "../core/permutation.ts";
import type { FunctionRecord } from "./record.ts";

/** Beyond this, sums of values lose their last digits. */
const VALUE_BOUNDS = { min: -1e9, max: 1e9 } as const;

export const TRIAL_RECORDS = [
  {
    name: "TRIAL_P",
    group: "TRIAL",
    args: [
      { name: "a", kind: "numbers", ...VALUE_BOUNDS },
      { name: "b", kind: "numbers", ...VALUE_BOUNDS },
    ],
    compute: {
      kind: "whole",
      answer: (fixed) => [[permutationTest([{ a: fixed.numbers("a"), b: fixed.numbers("b") }]).p]],
    },
  },
] as const satisfies readonly FunctionRecord[];
