/** An id that is the same whenever it is made from the same words: a record brought in again is found again. */

import { fnv1a64 } from "../src/core/fnv.ts";

/** "past-" and 16 hexadecimal digits. */
export function stableId(...words: readonly string[]): string {
  return `past-${fnv1a64(new TextEncoder().encode(words.join("\n")))}`;
}
