/** Custom function on when to test a batch. */

import { checkEvery, USUAL_PH } from "../core/check-every.ts";
import type { FunctionRecord } from "./record.ts";

const PH_BOUNDS = { min: 0, max: 14 } as const;

export const CHECK_RECORDS = [
  {
    name: "CHECK_EVERY",
    group: "CHECK",
    args: [
      { name: "readings", kind: "numbers", ...PH_BOUNDS },
      { name: "low", kind: "number", ...PH_BOUNDS, optional: true },
      { name: "high", kind: "number", ...PH_BOUNDS, optional: true },
    ],
    compute: {
      kind: "whole",
      answer: (fixed, row) => [
        [
          checkEvery(fixed.numbers("readings"), {
            low: row.optionalNumber("low") ?? USUAL_PH.low,
            high: row.optionalNumber("high") ?? USUAL_PH.high,
          }),
        ],
      ],
    },
  },
] as const satisfies readonly FunctionRecord[];
