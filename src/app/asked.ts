/** Checks what the panel sent; a request that is not one is refused with what was sent and what is accepted. */

import type * as z from "zod/mini";
import { BadInput } from "../core/errors.ts";
import type { Request } from "./contract.ts";
import { requestSchemas } from "./requests.ts";

/** The fields of requests that a person calls by another name. */
const WORDS: Readonly<Record<string, string>> = {
  amountMl: "amount in mL",
  batchId: "batch",
  densityGPerMl: "density in g/mL",
  doses: "list of doses",
  ecMsCm: "EC in mS/cm",
  entries: "list of entries",
  labelText: "text of the label",
  litres: "number of litres",
  numbers: "list of numbers",
  percents: "list of percents",
  perBatch: "dose for the batch",
  perLitre: "dose per litre",
  reached: "mg/L reached",
  takes: "row to take back",
  who: "name",
};

function accepted(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case "too_small":
      if (issue.origin === "array") return "at least one is needed";
      if (issue.origin === "string") return "it must not be blank";
      return issue.inclusive === false
        ? `it must be more than ${issue.minimum}`
        : `it must be ${issue.minimum} or more`;
    case "too_big":
      if (issue.origin === "array") return `at most ${issue.maximum} at a time`;
      if (issue.origin === "string") return `at most ${issue.maximum} characters`;
      return `it must be ${issue.maximum} or less`;
    case "invalid_type":
      return `a ${issue.expected} is needed`;
    case "invalid_format":
      return "it is not written as it should be";
    case "invalid_value":
      return `one of ${issue.values.join(", ")} is needed`;
    case "unrecognized_keys":
      return `there is no ${issue.keys.join(" or ")}`;
    default:
      return "nothing of that kind can stand there";
  }
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  let at = value;
  for (const step of path) {
    if (typeof at !== "object" || at === null) return undefined;
    at = (at as Record<PropertyKey, unknown>)[step];
  }
  return at;
}

function quoted(value: unknown): string {
  if (value === undefined) return "missing";
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}

/** Throws BadInput "request" with a sentence on the first thing that is wrong. */
export function readRequest(sent: unknown): Request {
  const asked = Object.entries(requestSchemas()).find(([ask]) => ask === valueAt(sent, ["ask"]))?.[1];
  const read = asked?.safeParse(sent);
  if (read?.success) return read.data;
  const issue = read?.error.issues[0];
  const path = issue?.path ?? [];
  const named = [...path].reverse().find((step) => typeof step === "string");
  const index = path.find((step) => typeof step === "number");
  if (!issue) {
    throw new BadInput(
      "request",
      "The panel asked for something the sheet does not know. Reload the browser page, so that both are the same version.",
    );
  }
  const what = WORDS[String(named)] ?? String(named);
  const which = typeof index === "number" ? ` of entry ${index + 1}` : "";
  throw new BadInput(
    "request",
    `The ${what}${which} is ${quoted(valueAt(sent, path))}: ${accepted(issue)}. Nothing was written.`,
  );
}
