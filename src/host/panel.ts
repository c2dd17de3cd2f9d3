/** What the panel calls: one JSON text in, one JSON text out, never a throw. */

import type { Answered, Ask } from "../app/contract.ts";
import { handle } from "../app/handlers.ts";
import type { Me } from "../app/me.ts";
import { ONLY_READ } from "../app/requests.ts";
import { asFailure } from "../sheet/refusals.ts";
import { activeWorkbook } from "./workbook.ts";

/** Where this person's name is kept; seen by nobody else. */
const NAME_KEY = "name";

function me(): Me {
  const properties = PropertiesService.getUserProperties();
  let begun = false;
  return {
    name: properties.getProperty(NAME_KEY) ?? "",
    saveName: (name) => {
      begun = true;
      properties.setProperty(NAME_KEY, name);
    },
    begun: () => begun,
  };
}

function readJson(json: unknown): unknown {
  if (typeof json !== "string") return null;
  try {
    return JSON.parse(json);
  } catch {
    return null;
  }
}

/** Answers a request of the panel. What is no JSON is answered like any other request that is not understood. */
export function panelRequest(json: unknown): string {
  const sent = readJson(json);
  let answer: Answered<Ask>;
  try {
    answer = handle(sent, activeWorkbook(), me());
  } catch (error) {
    // A service could not be reached, before anything was done.
    const { ask } = (sent ?? {}) as { readonly ask?: unknown };
    answer = { ok: false, ...asFailure(error, ONLY_READ.some((each) => each === ask) ? undefined : false) };
  }
  return JSON.stringify(answer);
}
