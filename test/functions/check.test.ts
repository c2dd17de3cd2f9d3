/** When to test, from a formula: the limits that are left out. */

import { expect, it } from "vitest";
import { call } from "./cells.ts";

/** Twelve readings around a middle, with a standard deviation of 0.017, for which 0.02 counts. */
const around = (middle: number) => Array.from({ length: 12 }, (_, k) => [middle + ([0, 0.02, -0.02][k % 3] as number)]);

it("holds readings within 5.5 to 6.0 where no limits are given", () => {
  // Howe's k2 for 12 readings, 90 % of batches with 95 % confidence, is 2.7: they reach 0.053 to either side of the
  // middle; for 98.6 % it is below 4.9, 0.1 to either side.
  expect(call("CHECK_EVERY", [around(5.75)])).toBe(8);
  expect(call("CHECK_EVERY", [around(5.54)])).toBe(1);
  expect(call("CHECK_EVERY", [around(5.96)])).toBe(1);
  expect(call("CHECK_EVERY", [around(5.54), 5])).toBe(8);
  expect(call("CHECK_EVERY", [around(5.96), "", 6.5])).toBe(8);
  expect(call("CHECK_EVERY", [around(5.54), "", 6.5])).toBe(1);
  expect(call("CHECK_EVERY", [around(5.96), 5])).toBe(1);
});
