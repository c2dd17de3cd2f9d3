/** Numbers as people type them, and the unit that another argument names. */

import { describe, expect, it } from "vitest";
import { outcome } from "./cells.ts";

const column = (...values: unknown[]): unknown[][] => values.map((value) => [value]);

describe("numbers typed as text", () => {
  it.each([
    ["1.2", 600],
    ["1,2", 600],
    [" 1.2 mS/cm", 600],
    ["1.2mS/cm", 600],
  ])("reads %j", (typed, ppm) => {
    expect(outcome("METER_TDS", typed, "500")).toBeCloseTo(ppm, 9);
  });

  it.each(["1,234.5", "1.234.5", "1 234", "1e3", "1.2 µS/cm", "1.2.3", "--1"])("refuses %j", (typed) => {
    expect(outcome("METER_AT25", typed, 20)).toMatch(/^throws: ec is "/);
  });

  it("refuses what has two readings and says how to type each", () => {
    expect(outcome("WATER_CLASS", "1,234")).toBe(
      'throws: hardness is "1,234", which can be read in two ways. Type 1.2340 or 1234.',
    );
  });

  it("accepts the unit that another argument names", () => {
    expect(outcome("FEED_PPM", "10-0-0", " 1.2 g/L", "", "N")).toBeCloseTo(120, 9);
    expect(outcome("FEED_PPM", "10-0-0 w/v", "1,2 mL/L", "mL/L", "N")).toBeCloseTo(120, 9);
    expect(outcome("FEED_PPM", "10-0-0", "1.2 g/L", "g/gal", "N")).toBe(
      'throws: dose is "1.2 g/L". Give a plain number in g/gal, like 1.2.',
    );
    expect(outcome("WATER_CONVERT", column("10 dH", 1), "dH", "dKH")).toEqual(column(10, 1));
    expect(outcome("WATER_CONVERT", "10 dH", column("dH", "fH"), "dKH")).toEqual(
      column(10, '? value is "10 dH". Give a plain number in fH, like 1.2.'),
    );
  });
});
