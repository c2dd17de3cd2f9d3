/** Writes a claim into Claims: a new row each time it changes, so that what was thought before stays. */

import { checkNumber } from "../core/reading.ts";
import type { SheetRecord } from "../sheet/append.ts";
import { CLAIMS } from "../sheet/list-tabs.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import type { ClaimEntry, ReplyFor, RequestFor } from "./contract.ts";
import { append, dayCell, textCell } from "./logging.ts";
import type { Me } from "./me.ts";

/** Nobody has grown anything for longer. */
const MOST_YEARS = 100;

export function claimRecord(entry: ClaimEntry, who: string): SheetRecord {
  const { yearsAtIt } = entry;
  return {
    Id: entry.id,
    Claim: entry.claim,
    "Heard from": textCell(entry.heardFrom),
    "Years at it": yearsAtIt === null ? null : checkNumber(yearsAtIt, { what: "Years at it", min: 0, max: MOST_YEARS }),
    "Their setup": textCell(entry.theirSetup),
    "Our setup": textCell(entry.ourSetup),
    Agrees: textCell(entry.agrees),
    Differs: textCell(entry.differs),
    Status: entry.status,
    "Heard on": entry.heardOn === null ? null : dayCell(entry.heardOn),
    "Look again": entry.lookAgain === null ? null : dayCell(entry.lookAgain),
    Trial: textCell(entry.trial),
    "What came of it": textCell(entry.outcome),
    Who: textCell(who),
    Note: textCell(entry.note),
    Corrects: textCell(entry.corrects ?? ""),
  };
}

/** One row, once for its Id. A name in the request goes before the one kept for this person. */
export function saveClaim(workbook: WorkbookPort, me: Me, request: RequestFor<"save claim">): ReplyFor<"save claim"> {
  return append(workbook, CLAIMS, [claimRecord(request.claim, request.who === "" ? me.name : request.who)]);
}
