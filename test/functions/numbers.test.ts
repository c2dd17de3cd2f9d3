/** Arguments that are read as a list of numbers: which cells count, and what is refused where. */

import { describe, expect, it } from "vitest";
import { date, outcome } from "./cells.ts";

const column = (...values: unknown[]): unknown[][] => values.map((value) => [value]);
const steady = [5.75, 5.77, 5.73, 5.76, 5.74, 5.75];

describe("a list of numbers", () => {
  it("is a column or a row, with blank cells passed over and numbers as people write them", () => {
    expect(outcome("CHECK_EVERY", column(...steady))).toBe(2);
    expect(outcome("CHECK_EVERY", [steady])).toBe(2);
    expect(outcome("CHECK_EVERY", column(...steady.slice(0, 3), "", null, ...steady.slice(3), "", ""))).toBe(2);
    expect(outcome("CHECK_EVERY", column("5,75", "5.77", ...steady.slice(2)))).toBe(2);
    expect(outcome("CHECK_EVERY", 5.75)).toBe(1);
    expect(outcome("CHECK_EVERY", column("", ""))).toBe(1);
    // An open range over a wide grid: columns that are blank do not count.
    expect(
      outcome(
        "TRIAL_P",
        [
          [1, ""],
          [2, ""],
        ],
        column(3, 4),
      ),
    ).toBeCloseTo(2 / 6, 12);
  });

  it.each([
    [column(...steady, "Measured pH"), 'readings, in row 7, is "Measured pH". Give a plain number like 1.2.'],
    [column(...steady, "#N/A"), "readings, in row 7, is an error cell (#N/A). Mend that cell or clear it."],
    [[[...steady, 15]], "readings, in column 7, is 15. Give a number from 0 to 14."],
    [
      [
        [1, 2],
        [3, 4],
      ],
      "readings is a range of 2 rows and 2 columns. Give one column or one row.",
    ],
  ])("%j is refused, naming the place", (given, sentence) => {
    expect(outcome("CHECK_EVERY", given)).toBe(`throws: ${sentence}`);
  });

  it("names no place where one value was given", () => {
    expect(outcome("CHECK_EVERY", "high")).toBe('throws: readings is "high". Give a plain number like 1.2.');
  });

  it("a date is no number, an empty group no group, limits have their order", () => {
    expect(outcome("TRIAL_P", column(1, date("2026-03-01")), column(1))).toMatch(/^throws: a, in row 2, is the date/);
    expect(outcome("TRIAL_P", column(""), column(1))).toBe(
      "throws: A group holds no number. Give at least one value for each.",
    );
    expect(outcome("CHECK_EVERY", column(...steady), 6, 5.5)).toBe(
      "throws: The limits are 6 and 5.5. Give the lower one first.",
    );
    expect(outcome("CHECK_EVERY")).toBe(
      "throws: CHECK_EVERY also needs readings. Give a range of numbers, one column or one row.",
    );
  });
});
