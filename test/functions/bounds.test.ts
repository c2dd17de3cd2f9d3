/** The least and the most that each number may be: taken at its bound, refused beyond it with the bounds in the sentence. */

import { describe, expect, it } from "vitest";
import { date, outcome } from "./cells.ts";

const HERE = Symbol("the number that is tried");
const SALT = [
  ["Feed", "N"],
  ["Salt", 10],
];
const TARGET = [["N"], [100]];
const POTS = [["Date", "Plant", "Event", "Amount mL"]];
const BATCHES = [["Date", "Measured EC", "Measured pH"]];
const BOUGHT = [["Date", "Feed", "Amount", "Unit"]];
const MIXED = [["Date", "Doses"]];
const IONS = [
  ["Na", "Cl"],
  [23, 35],
];
const asOf = date("2026-03-01");

type Case = readonly [
  name: string,
  args: readonly unknown[],
  argument: string,
  unit: string,
  low: number,
  high: number,
];

const told = (args: readonly unknown[], name: string, value: unknown): string =>
  String(outcome(name, ...args.map((arg) => (arg === HERE ? value : arg))));

// pH: 0 to 14 is what meters read, 2 to 12 what the solver was held against; °C likewise. A density from 0.3 to 3 g/mL
// is that of powders and liquids. The rest catches slips of the pen: a factor of a thousand, another unit, a year.
const BOUNDED: readonly Case[] = [
  ["METER_AT25", [1, HERE], "tempC", "°C", 0, 50],
  ["METER_TDS", [HERE, 500], "ec", "mS/cm", 0, 100],
  ["METER_HISTORY", [BATCHES, HERE, 14], "low", "", 0, 14],
  ["METER_HISTORY", [BATCHES, 0, HERE], "high", "", 0, 14],
  ["CHECK_EVERY", [HERE], "readings", "", 0, 14],
  ["CHECK_EVERY", [[[6]], HERE, 14], "low", "", 0, 14],
  ["CHECK_EVERY", [[[6]], 0, HERE], "high", "", 0, 14],
  ["WATER_ACID", [HERE, 7, 6, "citric"], "alkalinity", "mg/L CaCO3", 0, 100_000],
  ["WATER_ACID", [100, HERE, 6, "citric"], "pH", "", 2, 12],
  ["WATER_ACID", [100, 7, HERE, "citric"], "target", "", 2, 12],
  ["WATER_ACID", [100, 7, 6, "citric", HERE], "litres", "L", 0.001, 1_000_000],
  ["WATER_STATE", [IONS, HERE], "pH", "", 2, 12],
  ["WATER_STATE", [IONS, 7, HERE], "tempC", "°C", 5, 35],
  ["FEED_EC", [IONS, HERE], "tempC", "°C", 5, 35],
  ["FEED_RISK", [IONS, HERE], "pH", "", 2, 12],
  ["FEED_PPM", ["10-0-0", 1, "mL/L", "N", HERE], "density", "g/mL", 0.3, 3],
  ["FEED_LEFT", ["Salt", BOUGHT, MIXED, "", "g", HERE], "density", "g/mL", 0.3, 3],
  ["FEED_SOLVE", [TARGET, SALT, "", HERE], "litres", "L", 0.001, 1_000_000],
  ["FEED_SOLVE", [TARGET, SALT, "", 10, HERE], "step", "", 0.000001, 1_000_000],
  ["POT_USE", ["Fern", POTS, asOf, HERE], "days", "days", 1, 3650],
  ["POT_TREND", ["Fern", POTS, asOf, HERE], "days", "days", 1, 3650],
  ["POT_SALT", [HERE, 1, 1, 1], "fill", "", 0, 1_000_000],
  ["POT_SALT", [1, HERE, 1, 1], "topup", "", 0, 1_000_000],
  ["POT_SALT", [1, 1, HERE, 1], "used", "", 0, 1_000_000],
  ["POT_SALT", [1, 1, 1, HERE], "volume", "", 0.000001, 1_000_000],
  ["TRIAL_P", [HERE, 1], "a", "", -1e9, 1e9],
  ["TRIAL_P", [1, HERE], "b", "", -1e9, 1e9],
];

describe.each(BOUNDED)("%s %j: %s in “%s” from %f to %f", (name, args, argument, unit, low, high) => {
  const after = unit === "" ? "" : ` ${unit}`;

  it("is taken at its bounds", () => {
    for (const value of [low, high]) expect(told(args, name, value)).not.toMatch(`throws: ${argument} is `);
    if (unit !== "") expect(told(args, name, `${high}${after}`)).not.toMatch(`throws: ${argument} is `);
  });

  it("is refused beyond them, with both in the sentence", () => {
    for (const value of [low - Math.abs(low) / 100 - 1e-9, high + Math.abs(high) / 100]) {
      expect(told(args, name, value)).toMatch(`throws: ${argument} is `);
      expect(told(args, name, value)).toMatch(`Give a number from ${low} to ${high}${after}.`);
    }
  });
});

describe.each<readonly [name: string, args: readonly unknown[], argument: string, unit: string]>([
  ["METER_AT25", [HERE, 20], "ec", "mS/cm"],
  ["METER_EC", [HERE, 500], "tds", "ppm"],
  ["WATER_HARDNESS", [HERE, 1], "calcium", "mg/L"],
  ["WATER_HARDNESS", [1, HERE], "magnesium", "mg/L"],
  ["WATER_CLASS", [HERE], "hardness", "mg/L CaCO3"],
  ["WATER_CONVERT", [HERE, "dH", "fH"], "value", "dH"],
  ["WATER_BLEND", [HERE, 0, 0], "tap", ""],
  ["WATER_BLEND", [0, HERE, 0], "low", ""],
  ["WATER_BLEND", [0, 0, HERE], "target", ""],
  ["FEED_PPM", ["10-0-0", HERE], "dose", "g/L"],
])("%s %j: %s in “%s”", (name, args, argument, unit) => {
  const after = unit === "" ? "" : ` ${unit}`;

  it("is taken from 0 on, with its unit, and refused below", () => {
    expect(told(args, name, 0)).not.toMatch(`throws: ${argument} is `);
    expect(told(args, name, `0${after}`)).not.toMatch(`throws: ${argument} is `);
    expect(told(args, name, -0.01)).toBe(`throws: ${argument} is -0.01${after}. Give a number of 0${after} or more.`);
  });
});
