/** Numbers as water reports print them, each read by hand. */

import { describe, expect, it } from "vitest";
import { readPrinted } from "../../src/core/report-number.ts";

const readings = (text: string) => readPrinted(text).map((one) => one.readings);

describe("one number", () => {
  it.each<[string, readonly number[]]>([
    ["34.5", [34.5]],
    ["34,5", [34.5]],
    [".5", [0.5]],
    [",5", [0.5]],
    ["-3", [-3]],
    ["−3", [-3]],
    ["1234", [1234]],
    // A mark before three digits is one of two.
    ["1,234", [1.234, 1234]],
    ["1.234", [1.234, 1234]],
    ["-1,234", [-1.234, -1234]],
    ["12.345", [12.345, 12_345]],
    ["0.234", [0.234]],
    ["0,234", [0.234]],
    ["1234.567", [1234.567]],
    // Two kinds of mark, or one kind repeated, say which is which.
    ["1,234.5", [1234.5]],
    ["1.234,56", [1234.56]],
    ["1,234,567", [1_234_567]],
    ["1.234.567", [1_234_567]],
    ["1'234.5", [1234.5]],
    ["1’234", [1234]],
    ["1 234", [1234]],
    ["1 234", [1234]],
    ["1 234 567", [1_234_567]],
    ["1\u00a0234", [1234]],
    ["1\u2009234", [1234]],
    ["1\u202f234\u202f567", [1_234_567]],
    // Groups that no way of writing has.
    ["1,23,456.7", []],
    ["12.34.56", []],
    ["1,2345", [1.2345]],
    ["9".repeat(400), []],
  ])("%s", (text, expected) => expect(readPrinted(text)).toEqual([{ readings: expected, note: "" }]));

  it("a space before other than three digits ends it", () => expect(readings("1 23")).toEqual([[1], [23]]));
});

describe("limits and ranges", () => {
  it.each(["<0.1", "< 0.1", "<=0.1", "≤ 0.1", "less than 0.1", "LESS  THAN 0.1", "below 0.1"])(
    "%s counts as half of it, and says so",
    (text) => {
      const [one, ...more] = readPrinted(text);
      expect([one?.readings, more]).toEqual([[0.05], []]);
      expect(one?.note).toMatch(/less than 0\.1.*half/);
    },
  );

  it("half of either reading where the limit has two", () => expect(readings("<1,234")).toEqual([[0.617, 617]]));

  it.each([">200", ">= 200", "≥200", "more than 200"])("%s is no measurement", (text) =>
    expect(readPrinted(text)).toEqual([{ readings: [], note: "" }]),
  );

  it.each(["20-30", "20 – 30", "20—30", "20 to 30", "20..30", "20...30", "20…30", "20 TO 30"])(
    "%s counts as the middle, and says so",
    (text) => {
      const [one, ...more] = readPrinted(text);
      expect([one?.readings, more]).toEqual([[25], []]);
      expect(one?.note).toMatch(/20 to 30.*middle/);
    },
  );

  it.each(["30-20", "1,234-2,345", "1-2,345", "1,234-2345"])("%s is no range that can be counted", (text) =>
    expect(readPrinted(text)).toEqual([{ readings: [], note: "" }]),
  );

  it("a range may be of one number", () => expect(readings("20-20")).toEqual([[20]]));
});

describe("none found", () => {
  it.each([
    "not detected",
    "Not  Detectable",
    "n.d.",
    "ND",
    "n. d.",
    "none",
    "none detected",
    "BDL",
    "b.d.l.",
    "absent",
  ])("%s counts as 0, and says so", (text) =>
    expect(readPrinted(text)).toEqual([{ readings: [0], note: expect.stringContaining("counted as 0") }]),
  );

  it.each(["", "Nitrate", "nonesuch", "indeed", "windy"])("%j holds no number", (text) =>
    expect(readPrinted(text)).toEqual([]),
  );

  it("a number beside it counts", () => expect(readings("not detected 5")).toEqual([[5]]));
});

it("several numbers come one after the other", () => expect(readings("12; 0.5 and <3")).toEqual([[12], [0.5], [1.5]]));
