/** Ids made from words, against the published test vectors of 64-bit FNV-1a. */

import { expect, test } from "vitest";
import { stableId } from "../../sidebar/stable-id.ts";
import { fnv1a64 } from "../../src/core/fnv.ts";

/** Test vectors of the FNV authors, as other implementations repeat them. */
test.each([
  ["", "cbf29ce484222325"],
  ["a", "af63dc4c8601ec8c"],
  ["foobar", "85944171f73967e8"],
])("64-bit FNV-1a of “%s” is %s", (text, hash) => {
  expect(fnv1a64(new TextEncoder().encode(text))).toBe(hash);
});

/** A second way to the same number: whole numbers of any size, offset basis and prime as the draft gives them. */
test("agrees with arithmetic in whole numbers of any size", () => {
  for (const text of ["Fern\n2025-03-01\nRepot", "Фикус 7", "é\u0301 ".repeat(40)]) {
    let hash = 0xcbf29ce484222325n;
    for (const byte of new TextEncoder().encode(text)) {
      hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
    }
    expect(fnv1a64(new TextEncoder().encode(text))).toBe(hash.toString(16).padStart(16, "0"));
  }
});

test("an id is fit for a record and tells words apart", () => {
  const id = stableId("fern", "2025-03-01", "repot");
  expect(id).toMatch(/^[a-z0-9-]{8,64}$/);
  expect(stableId("fern", "2025-03-01", "repot")).toBe(id);
  expect(stableId("fern 2", "025-03-01", "repot")).not.toBe(id);
});
