/** FNV-1a, 64 bits, against the test vectors of its authors' own list (draft-eastlake-fnv, appendix; memory). */

import { expect, it } from "vitest";
import { fnv1a64 } from "../../src/core/fnv.ts";

const bytesOf = (text: string) => [...text].map((letter) => letter.charCodeAt(0));

it.each([
  ["", "cbf29ce484222325"],
  ["a", "af63dc4c8601ec8c"],
  ["b", "af63df4c8601f1a5"],
  ["foobar", "85944171f73967e8"],
])("%j", (text, mark) => expect(fnv1a64(bytesOf(text))).toBe(mark));

it("is what whole numbers of any size give", () => {
  // The rule itself: for each byte, xor, then times the prime, modulo 2^64.
  const bytes = Array.from({ length: 300 }, (_, k) => (k * 37) % 256);
  let hash = 0xcbf29ce484222325n;
  for (const byte of bytes) hash = ((hash ^ BigInt(byte)) * 0x100000001b3n) % 2n ** 64n;
  expect(fnv1a64(bytes)).toBe(hash.toString(16).padStart(16, "0"));
});

it("keeps its leading zeros, so that every mark is 16 letters long", () => {
  for (let k = 0; k < 200; k++) expect(fnv1a64([k, 7 * k])).toMatch(/^[0-9a-f]{16}$/);
});
