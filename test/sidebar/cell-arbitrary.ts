/** Any cell a sheet may hold: texts that look like something else among them. */

import fc from "fast-check";
import type { Travelling } from "../../sidebar/export-cells.ts";

/** Characters with which OWASP's page "CSV Injection" says a field must not begin. */
export const DANGEROUS = ["=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠"];

export const text = fc.oneof(
  fc.string(),
  fc.string({ unit: "binary" }).filter((each) => !/[\uD800-\uDFFF]/.test(each)),
  fc.constantFrom(
    "'",
    "''tis",
    "TRUE",
    "false",
    "012",
    "1e5",
    "-5",
    "2026-03-01",
    "2026-02-30",
    " =1+1",
    ";",
    '"',
    "a,b",
  ),
  fc.tuple(fc.constantFrom(...DANGEROUS), fc.string()).map(([start, rest]) => start + rest),
);
const day = fc
  .date({ min: new Date("1900-01-01T00:00:00Z"), max: new Date("2199-12-31T00:00:00Z"), noInvalidDate: true })
  .map((date) => ({ day: date.toISOString().slice(0, 10) }));
const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0 || 0);
export const cell: fc.Arbitrary<Travelling> = fc.oneof(
  fc.constant(null),
  text.filter((each) => each !== ""),
  number,
  fc.boolean(),
  day,
);
