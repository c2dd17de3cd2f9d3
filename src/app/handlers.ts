/** Answers a request of the panel: one handler each, and every failure as a sentence. */

import { BadInput } from "../core/errors.ts";
import { boardsWords, makeBoards } from "../sheet/boards.ts";
import { showOnHand } from "../sheet/on-hand.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import { drawReadings } from "../sheet/readings-chart.ts";
import { asFailure } from "../sheet/refusals.ts";
import { readRequest } from "./asked.ts";
import { logCare } from "./care.ts";
import { saveClaim } from "./claims.ts";
import type { Answered, Ask, ReplyFor, RequestFor } from "./contract.ts";
import { logFeed } from "./feeds.ts";
import { load } from "./load.ts";
import { logBatch } from "./logging.ts";
import type { Me } from "./me.ts";
import { logMeter } from "./meter-log.ts";
import { choosePlantList, lookAtTabs, readOwnTab } from "./own-list.ts";
import { importRows, readPage } from "./pages.ts";
import { logPast } from "./past.ts";
import { logPurchase } from "./purchases.ts";
import { logReadings } from "./readings.ts";
import { readRecords } from "./records.ts";
import { ONLY_READ } from "./requests.ts";
import { saveSettings } from "./save-settings.ts";
import { getSittersPage, putSittersPage } from "./sitter.ts";
import { takeBack } from "./take-back.ts";
import { saveResult, saveTrial } from "./trials.ts";
import { logWater } from "./waters.ts";

function setName(me: Me, who: string): ReplyFor<"set name"> {
  const name = who.trim();
  if (name === "") throw new BadInput("no-name", "Type the name that the log should show for you.");
  me.saveName(name);
  return { who: name };
}

type Handlers = {
  readonly [A in Ask]: (workbook: WorkbookPort, me: Me, request: RequestFor<A>) => ReplyFor<A>;
};

/** One line for each thing that can be asked. */
export const HANDLERS: Handlers = {
  load: (workbook, me) => load(workbook, me),
  records: (workbook) => readRecords(workbook),
  "log care": logCare,
  "take back": takeBack,
  "log batch": logBatch,
  "log readings": (workbook, _, request) => logReadings(workbook, request),
  "log meter": logMeter,
  "log water": (workbook, _, request) => logWater(workbook, request),
  "log feed": (workbook, _, request) => logFeed(workbook, request),
  "log purchase": logPurchase,
  "save claim": saveClaim,
  "save trial": saveTrial,
  "save result": (workbook, _, request) => saveResult(workbook, request),
  "save settings": (workbook, _, request) => saveSettings(workbook, request),
  "set name": (_, me, request) => setName(me, request.who),
  "look at tabs": (workbook) => lookAtTabs(workbook),
  "read list": (workbook, _, request) => readOwnTab(workbook, request),
  "log past": logPast,
  "use plant list": (workbook, _, request) => choosePlantList(workbook, request),
  "read page": (workbook, _, request) => readPage(workbook, request),
  "import rows": (workbook, _, request) => importRows(workbook, request),
  "write sitter page": (workbook, _, request) => putSittersPage(workbook, request),
  "read sitter page": (workbook) => getSittersPage(workbook),
  "draw chart": (workbook) => ({ sentence: drawReadings(workbook) }),
  "make boards": (workbook) => ({ sentence: boardsWords(makeBoards(workbook)) }),
  "show on hand": (workbook) => ({ sentence: showOnHand(workbook) }),
};

function reply<A extends Ask>(request: RequestFor<A>, workbook: WorkbookPort, me: Me): ReplyFor<A> {
  return HANDLERS[request.ask as A](workbook, me, request);
}

/** Never throws: bad requests, refusals and errors of the spreadsheet all come back as a failure. */
export function handle(request: unknown, workbook: WorkbookPort, me: Me): Answered<Ask> {
  let writes = false;
  try {
    const asked = readRequest(request);
    writes = !ONLY_READ.includes(asked.ask);
    return { ok: true, reply: reply(asked, workbook, me) } as Answered<Ask>;
  } catch (error) {
    return { ok: false, ...asFailure(error, writes ? workbook.begun() || me.begun() : undefined) };
  }
}
