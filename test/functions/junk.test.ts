/** Whatever is put into a formula, it answers with cells or throws a sentence; never NaN, never more rows than it got. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { REFERENCE } from "../../src/functions/reference.ts";
import { drawn } from "../drawn.ts";
import { call, date, hostCells } from "./cells.ts";

/** Cells as hosts, people and mishaps make them. */
const cell = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom<unknown>("", " ", null, undefined, 0, 1, -1, 0.5, 25, 500, 1e308, -0) },
  {
    weight: 3,
    arbitrary: fc.constantFrom<unknown>("10-5-5", "1,2", "1,234", "1.2 g/L", "g/L", "N P K", "dH", "fH", "=1+1"),
  },
  {
    weight: 3,
    arbitrary: fc.constantFrom<unknown>(
      "Fern",
      "Repot",
      "yes",
      "no",
      "balance",
      "nitric 67%",
      "2026-03-01",
      "1/2/3",
      "w/v",
      "organic",
    ),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom<unknown>("#N/A", "#REF!", new Error("#NUM!"), Number.NaN, Number.POSITIVE_INFINITY),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom<unknown>(true, false, date("2026-03-01"), new Date(Number.NaN), date("1899-12-30")),
  },
  { weight: 1, arbitrary: fc.constantFrom<unknown>({}, () => 1, Symbol("x"), 10n, Object.create(null), new Map()) },
  { weight: 1, arbitrary: fc.oneof(fc.string({ unit: "binary" }), fc.double(), fc.integer()) },
);

const headings = [
  ...["Date", "Plant", "Event", "Disturbs roots", "Feed", "Dose", "Unit", "Basis", "Density", "Target", "Water"],
  ...[
    "Na",
    "Cl",
    "NH4",
    "HCO3",
    "CO3",
    "Alkalinity",
    "N",
    "P",
    "K",
    "P2O5",
    "NO3-N",
    "SO4",
    "Ca",
    "Origin",
    "Analysis published",
    " date ",
    "FEED",
    "",
    "Note",
  ],
];
const table = fc
  .array(fc.constantFrom<unknown>(...headings), { minLength: 1, maxLength: 6 })
  .chain((first) =>
    fc
      .array(fc.array(cell, { minLength: first.length, maxLength: first.length }), { maxLength: 5 })
      .map((rows) => [first, ...rows]),
  );
const column = fc.array(fc.tuple(cell), { maxLength: 6 });
const ragged = fc.array(fc.oneof(cell, fc.array(cell, { maxLength: 3 })), { maxLength: 4 });
const argument: fc.Arbitrary<unknown> = fc.oneof(cell, column, table, ragged);

function rowCount(value: unknown): number {
  return Array.isArray(value) ? value.length : 1;
}

function isHostCell(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  if (value instanceof Date) return Number.isFinite(value.getTime());
  return typeof value === "string" || typeof value === "boolean";
}

/** Throws when the answer is nothing a spreadsheet could show. `headingRows`: rows of a table of the function's own. */
function checkAnswer(name: string, args: readonly unknown[], headingRows: number): "answered" | "refused" {
  let answer: unknown;
  try {
    answer = call(name, args);
  } catch (error) {
    expect(error).toBeInstanceOf(Error);
    const { message, name: kind } = error as Error;
    expect(["BadInput", "NoConvergence"], `${kind}: ${message}`).toContain(kind);
    expect(message).toMatch(/^\S.*[.?]$/s);
    return "refused";
  }
  const rows = Array.isArray(answer) ? (answer as unknown[]) : [[answer]];
  expect(rows.length).toBeGreaterThan(0);
  expect(rows.length).toBeLessThanOrEqual(Math.max(1, ...args.map(rowCount)) + headingRows);
  const width = (rows[0] as unknown[]).length;
  for (const row of rows as unknown[][]) {
    expect(row.length).toBe(width);
    for (const one of row) expect(isHostCell(one), `a cell, not ${String(one)}`).toBe(true);
  }
  return "answered";
}

describe.each(REFERENCE.map((one) => [one.name, one] as const))("%s", (name, record) => {
  // ROOT_BOARD puts its heading over a list that came without one; WATER_STATE answers with a table of eight lines.
  const headingRows = name === "ROOT_BOARD" ? 1 : name === "WATER_STATE" ? 8 : 0;

  it("answers or refuses any arguments in any number", () => {
    fc.assert(
      fc.property(fc.array(argument, { maxLength: record.args.length + 1 }), (args) => {
        checkAnswer(name, args, headingRows);
      }),
      { numRuns: drawn(300) },
    );
  });

  it("answers or refuses its own examples with one argument spoilt, or one cell", () => {
    const { examples } = record;
    const outcomes = new Set<string>();
    fc.assert(
      fc.property(
        fc.constantFrom(...examples),
        fc.nat(record.args.length - 1),
        fc.option(fc.tuple(fc.nat(5), fc.nat(5))),
        cell,
        argument,
        (example, at, place, spoiltCell, spoilt) => {
          const args: unknown[] = example.args.map((value) => hostCells(value));
          const whole = args[at];
          if (place !== null && Array.isArray(whole)) {
            const [row, column] = place;
            const line = whole[row % whole.length] as unknown[];
            line[column % line.length] = spoiltCell;
          } else args[at] = spoilt;
          // A skipped place in between arrives as undefined; Array.from fills the holes.
          outcomes.add(checkAnswer(name, Array.from(args), headingRows));
        },
      ),
      { numRuns: drawn(300) },
    );
    expect([...outcomes].sort()).toEqual(["answered", "refused"]);
  });
});

it("never gives more rows than the longest range without its blank end", () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 500, noNaN: true }), { minLength: 1, maxLength: 20 }),
      fc.nat(50),
      (values, blanks) => {
        const open = [...values.map((value) => [value]), ...Array.from({ length: blanks }, () => [""])];
        expect(rowCount(call("WATER_CLASS", [open]))).toBe(values.length);
      },
    ),
  );
});
