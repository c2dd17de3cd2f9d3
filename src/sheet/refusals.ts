/** Refusals of the spreadsheet side that more than one place gives, each a sentence with what to do. */

import { BadInput, isBadInput } from "../core/errors.ts";
import { MAY_HAVE_SAVED } from "../core/saying.ts";

/** Somebody else is writing just now. */
export function busy(waitedSeconds: number): BadInput {
  return new BadInput(
    "busy",
    `Somebody else was writing to this spreadsheet for ${waitedSeconds} seconds, so nothing was written. Try again in a moment; what you typed is still here.`,
  );
}

/**
 * The code and sentence of anything thrown; an error of the spreadsheet itself is quoted. For a request that
 * writes, `begun` says whether a write had been sent when it happened.
 */
export function asFailure(thrown: unknown, begun?: boolean): { readonly code: string; readonly sentence: string } {
  if (isBadInput(thrown)) return { code: thrown.code, sentence: thrown.message };
  const message = (thrown as { message?: unknown } | null | undefined)?.message;
  const said = typeof message === "string" && message !== "" ? message : String(thrown);
  const quoted = `The spreadsheet did not let this be done. It said: “${said}”`;
  if (begun === true) return { code: "unexpected", sentence: `${quoted} ${MAY_HAVE_SAVED}` };
  const nothing = begun === false ? " Nothing was written." : "";
  return { code: "unexpected", sentence: `${quoted}${nothing} Try again; if it keeps happening, reload the page.` };
}
