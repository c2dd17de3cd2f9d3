/** Answers a request of the panel: one handler each, and every failure as a sentence. */

import { BadInput } from "../core/errors.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import { asFailure } from "../sheet/refusals.ts";
import { readRequest } from "./asked.ts";
import type { Answered, Ask, ReplyFor, Request } from "./contract.ts";
import { load } from "./load.ts";
import { logBatch, logCare } from "./logging.ts";
import type { Me } from "./me.ts";
import { choosePlantList, lookAtTabs } from "./own-list.ts";
import { logReadings } from "./readings.ts";
import { logWater } from "./waters.ts";

function setName(me: Me, who: string): ReplyFor<"set name"> {
  const name = who.trim();
  if (name === "") throw new BadInput("no-name", "Type the name that the log should show for you.");
  me.saveName(name);
  return { who: name };
}

function reply(request: Request, workbook: WorkbookPort, me: Me): ReplyFor<Ask> {
  switch (request.ask) {
    case "load":
      return load(workbook, me);
    case "log care":
      return logCare(workbook, me, request);
    case "log batch":
      return logBatch(workbook, me, request);
    case "log readings":
      return logReadings(workbook, request);
    case "log water":
      return logWater(workbook, request);
    case "set name":
      return setName(me, request.who);
    case "look at tabs":
      return lookAtTabs(workbook);
    case "use plant list":
      return choosePlantList(workbook, request);
  }
}

/** Never throws: bad requests, refusals and errors of the spreadsheet all come back as a failure. */
export function handle(request: unknown, workbook: WorkbookPort, me: Me): Answered<Ask> {
  try {
    return { ok: true, reply: reply(readRequest(request), workbook, me) } as Answered<Ask>;
  } catch (error) {
    return { ok: false, ...asFailure(error) };
  }
}
