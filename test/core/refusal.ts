/** What a call refuses with: for tests of sentences. */

import { BadInput } from "../../src/core/errors.ts";

/** The sentence a call throws as BadInput; any other outcome fails the test. */
export function refusal(call: () => unknown): string {
  let answer: unknown;
  try {
    answer = call();
  } catch (error) {
    if (error instanceof BadInput) return error.message;
    throw error;
  }
  throw new Error(`expected a refusal, got ${JSON.stringify(answer)}`);
}
