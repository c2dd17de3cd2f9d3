/** Refusals of the spreadsheet side that more than one place gives, each a sentence with what to do. */

import { BadInput, isBadInput } from "../core/errors.ts";

/** Somebody else is writing just now. */
export function busy(waitedSeconds: number): BadInput {
  return new BadInput(
    "busy",
    `Somebody else was writing to this spreadsheet for ${waitedSeconds} seconds, so nothing was written. Try again in a moment; what you typed is still here.`,
  );
}

/** The code and sentence of anything thrown; an error of the spreadsheet itself is quoted. */
export function asFailure(thrown: unknown): { readonly code: string; readonly sentence: string } {
  if (isBadInput(thrown)) return { code: thrown.code, sentence: thrown.message };
  const message = (thrown as { message?: unknown } | null | undefined)?.message;
  const said = typeof message === "string" && message !== "" ? message : String(thrown);
  return {
    code: "unexpected",
    sentence: `The spreadsheet did not let this be done. It said: “${said}” Try again; if it keeps happening, reload the page.`,
  };
}
