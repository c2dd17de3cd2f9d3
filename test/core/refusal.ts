/** What a call refuses with: for tests of sentences. */

import { BadInput } from "../../src/core/errors.ts";

/** The sentence a call throws as BadInput, with a code of small letters; any other outcome fails the test. */
export function refusal(call: () => unknown): string {
  let answer: unknown;
  try {
    answer = call();
  } catch (error) {
    if (!(error instanceof BadInput)) throw error;
    if (!/^[a-z]+(-[a-z]+)*$/.test(error.code)) throw new Error(`"${error.code}" is no code: ${error.message}`);
    return error.message;
  }
  throw new Error(`expected a refusal, got ${JSON.stringify(answer)}`);
}
