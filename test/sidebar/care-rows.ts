/** Rows of a care log for tests of the panel, each with an id of its own. */

import type { CareRow } from "../../src/app/contract.ts";

let made = 0;

export function care(day: string, plant: string, event: string, given: Partial<CareRow> = {}): CareRow {
  made += 1;
  return {
    id: `care-row-${made}`,
    day,
    plant,
    event,
    amountMl: null,
    solution: "",
    ecMsCm: null,
    pH: null,
    who: "Ama",
    reason: "",
    note: "",
    ...given,
  };
}
