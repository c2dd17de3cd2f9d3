/** Custom functions on a mixed solution: the EC it should show, and what may fall out of it. */

import { conductivity } from "../core/conductivity.ts";
import { riskText } from "../core/precipitation.ts";
import { solutionAt, USUAL_PH } from "../core/solution.ts";
import { readSolution, SOLUTION_HEADINGS } from "./chemistry-tables.ts";
import type { FunctionRecord, RowsArgument } from "./record.ts";
import { PH_RANGE, TEMPERATURE } from "./water-chemistry.ts";

const solution = { name: "solution", kind: "rows", anyOf: SOLUTION_HEADINGS } as const satisfies RowsArgument;

export const FEED_CHEMISTRY_RECORDS = [
  {
    name: "FEED_EC",
    group: "FEED",
    args: [solution, TEMPERATURE],
    compute: {
      kind: "rows",
      prepare: () => (row) =>
        conductivity(solutionAt(readSolution(row.tableRow("solution")), { tempC: row.optionalNumber("tempC") ?? 25 }))
          .atTempMsCm,
    },
  },
  {
    name: "FEED_RISK",
    group: "FEED",
    args: [solution, { name: "pH", kind: "number", ...PH_RANGE, optional: true }],
    compute: {
      kind: "rows",
      prepare: () => (row) =>
        riskText(readSolution(row.tableRow("solution")), { pH: row.optionalNumber("pH") ?? USUAL_PH }),
    },
  },
] as const satisfies readonly FunctionRecord[];
