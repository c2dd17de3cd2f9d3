/** The codes of what formulas refuse: what tests and the panel go by, so they stay as they are. */

import { expect, it } from "vitest";
import { hostRow } from "../../src/functions/answers.ts";
import { call, date } from "./cells.ts";

const FEEDS = [
  ["Feed", "N", "Origin"],
  ["Salt", 10, ""],
  ["Worm tea", 1, "organic"],
];
const LOG = [["Date", "Plant", "Event"]];
const BROKEN = [...LOG, ["soon", "Fern", "Repot"]];
const asOf = date("2026-03-31");

it.each<[code: string, name: string, args: unknown[]]>([
  ["unknown-function", "FEED_NOTHING", []],
  ["too-many", "WATER_CLASS", [1, 2]],
  ["too-few", "WATER_CONVERT", [1]],
  ["blank", "METER_AT25", [1.2, ""]],
  ["out-of-bounds", "METER_AT25", [1.2, 80]],
  ["error-cell", "WATER_CLASS", ["#N/A"]],
  ["not-one-column", "METER_TDS", [[[1, 2]], 500]],
  [
    "not-one-column",
    "CHECK_EVERY",
    [
      [
        [1, 2],
        [3, 4],
      ],
    ],
  ],
  ["not-one-value", "ROOT_REST", [[["Fern"]], LOG, asOf, [["a"], ["b"]]]],
  ["not-one-value", "ROOT_BOARD", [[["Fern"]], LOG, [[asOf], [asOf]]]],
  ["not-a-number", "WATER_STATE", [[["Ca"], [1]], "about right"]],
  ["not-a-table", "ROOT_LAST", ["Fern", "log"]],
  ["heading-twice", "ROOT_LAST", ["Fern", [["Date", "Plant", "Event", "Date"]]]],
  ["column-missing", "ROOT_LAST", ["Fern", [["Date"]]]],
  ["column-missing", "FEED_EC", [[["Feed"], ["x"]]]],
  ["not-one-row", "FEED_SOLVE", [[["N"], [1], [2]], FEEDS]],
  ["log-unreadable", "ROOT_LAST", ["Fern", BROKEN]],
  [
    "log-unreadable",
    "POT_USE",
    [
      "Fern",
      [
        ["Date", "Plant", "Event", "Amount mL"],
        ["soon", "Fern", "Top up", 50],
      ],
      asOf,
    ],
  ],
  [
    "blank",
    "ROOT_LAST",
    [
      "Fern",
      LOG,
      "",
      [
        ["Event", "Disturbs roots"],
        ["Photo", ""],
      ],
    ],
  ],
  ["no-feeds", "FEED_SOLVE", [[["N"], [1]], [["Feed", "N"]]]],
  ["no-litres", "FEED_SOLVE", [[["N"], [1]], FEEDS, "", "", 0.1]],
  ["grade-became-date", "FEED_PPM", [date("2010-05-05"), 1]],
  ["not-a-number", "FEED_PPM", ["10-0-0", "much"]],
])("%s: %s", (code, name, args) => {
  try {
    call(name, args);
  } catch (error) {
    expect(error).toMatchObject({ name: "BadInput", code });
    return;
  }
  expect.unreachable(`${name} answered`);
});

it("not-finite: a number that is none never becomes a cell", () => {
  const told = (): unknown => {
    try {
      return hostRow(Number.POSITIVE_INFINITY, (day) => day);
    } catch (error) {
      return error;
    }
  };
  expect(told()).toMatchObject({ name: "BadInput", code: "not-finite" });
});
