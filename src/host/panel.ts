/** What the panel calls: one JSON text in, one JSON text out, never a throw. */

import type { Answered, Ask } from "../app/contract.ts";
import { handle } from "../app/handlers.ts";
import type { Me } from "../app/me.ts";
import { asFailure } from "../sheet/refusals.ts";
import { activeWorkbook } from "./workbook.ts";

/** Where this person's name is kept; seen by nobody else. */
const NAME_KEY = "name";

function me(): Me {
  const properties = PropertiesService.getUserProperties();
  return {
    name: properties.getProperty(NAME_KEY) ?? "",
    saveName: (name) => {
      properties.setProperty(NAME_KEY, name);
    },
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
  let answer: Answered<Ask>;
  try {
    answer = handle(readJson(json), activeWorkbook(), me());
  } catch (error) {
    answer = { ok: false, ...asFailure(error) };
  }
  return JSON.stringify(answer);
}
