/** Arguments at their edges: one cell or a range, what a missing one is told, units beside them, odd tables. */

import { describe, expect, it } from "vitest";
import { date, outcome } from "./cells.ts";

const column = (...values: unknown[]): unknown[][] => values.map((value) => [value]);
const LOG = [
  ["Date", "Plant", "Event"],
  [date("2026-03-01"), "Fern", "Repot"],
];
const asOf = date("2026-03-11");

describe("what a missing or blank argument is told", () => {
  it.each<[name: string, args: unknown[], argument: string, give: string]>([
    ["ROOT_LAST", [], "plants", "Give a text."],
    ["FEED_PPM", [], "label", 'Give a label like "10-5-5", or a table of feeds.'],
    ["FEED_PPM", ["10-0-0"], "dose", "Give a number."],
    ["WATER_ACID", [100, 7, 6], "acid", "Give a text."],
    ["ROOT_REST", ["Fern", LOG], "asOf", "Give a date."],
    ["WATER_BALANCE", [], "report", "Give a range with a heading row."],
    ["FEED_MIX", [[["Feed"]]], "recipe", "Give a range with a heading row."],
    ["TRIAL_P", [1], "b", "Give a range of numbers, one column or one row."],
    ["WATER_CONVERT", [1, "dH"], "to", "Give mg/L CaCO3, mmol/L, meq/L, dH, fH, Clark, gpg, mg/L HCO3 or dKH."],
    ["WATER_STATE", [[["Ca"], [1]]], "pH", "Give a number, or balance."],
  ])("%s %j: %s", (name, args, argument, give) => {
    expect(outcome(name, ...args)).toBe(`throws: ${name} also needs ${argument}. ${give}`);
  });

  it("beside a range it is blank for every row", () => {
    expect(outcome("FEED_PPM", "", column(1, 2))).toBe(
      'throws: label is blank. Give a label like "10-5-5", or a table of feeds.',
    );
    expect(outcome("WATER_ACID", column(100, 120), 7, 6, " ")).toBe("throws: acid is blank. Give a text.");
  });
});

it("answers with all elements in their order where none is named", () => {
  // N P K Ca Mg S Fe Mn Zn B Cu Mo; the grade says nothing of the last nine.
  const [row] = outcome("FEED_PPM", "10-0-0", 1) as unknown[][];
  expect(row).toEqual([100, 0, 0, ...Array.from({ length: 9 }, () => "")]);
});

describe("one value where a range could be", () => {
  it("is a group of one", () => {
    // Two values, two ways to part them, both with the same distance.
    expect(outcome("TRIAL_P", 1, 2)).toBe(1);
  });

  it("a heading comes as a text or as a range of one cell; a row of cells is refused, nothing is no heading", () => {
    const rest = (heading: unknown) => outcome("ROOT_REST", column("Plant", "Fern"), LOG, asOf, heading);
    expect(rest("Days")).toEqual(column("Days", 10));
    expect(rest([["Days"]])).toEqual(column("Days", 10));
    expect(rest([["Days", "Weeks"]])).toMatch(/^throws: heading is a range\./);
    for (const none of ["", [[""]], []]) expect(rest(none)).toEqual(column("", 10));
  });

  it("a word stands for a number only where it is the word; digits are read as a number", () => {
    const water = [
      ["Na", "Cl"],
      [23, 35],
    ];
    const state = (pH: unknown) => outcome("WATER_STATE", water, pH) as unknown[][];
    expect(state("7,4")[0]).toEqual(["pH", expect.closeTo(7.4, 9)]);
    expect(state("7.4.1")).toMatch(/^throws: pH is "7\.4\.1"\. .*decimal point/);
    expect(state("roughly")).toBe('throws: pH is "roughly". Give a number, or balance.');
  });
});

it("takes the unit of each row where one value stands beside a range of units", () => {
  // 10 dH are 10 dKH; the text says its unit, so a row that asks for another cannot use it.
  expect(outcome("WATER_CONVERT", "10 dH", column("fH", "dH"), "dKH")).toEqual([
    ['? value is "10 dH". Give a plain number in fH, like 1.2.'],
    [10],
  ]);
});

describe("tables", () => {
  it("an optional one is left out where it is blank, be it one cell or many, and refused where it is something else", () => {
    const rest = (events: unknown) => outcome("ROOT_REST", "Fern", LOG, asOf, "", events);
    for (const none of ["", [["", ""]], column("", "", ""), []]) expect(rest(none)).toBe(10);
    expect(rest("Repot")).toMatch(/^throws: events is one value; give a range with a heading row/);
    expect(
      rest([
        ["Event", ""],
        ["", "Repot"],
      ]),
    ).toMatch(/^throws: events has no column headed "Disturbs roots"/);
  });

  it("says what it found in its first row, trimmed, a dozen headings at most, and when it found nothing", () => {
    expect(outcome("ROOT_REST", "Fern", [[" Day ", "Plant", 5]], asOf)).toBe(
      'throws: log has no column headed "Date", "Event"; its first row reads "Day", "Plant".',
    );
    const wide = Array.from({ length: 20 }, (_, at) => `h${at + 1}`);
    expect(outcome("ROOT_REST", "Fern", [wide], asOf)).toMatch(/"h11", "h12"\.$/);
    expect(outcome("ROOT_REST", "Fern", column("", ""), asOf)).toBe(
      'throws: log has no column headed "Date", "Plant", "Event"; its first row must hold the headings.',
    );
  });
});

it("passes over blank names in the middle of a list that is answered with a table", () => {
  const list = column("Moss", "", " ", "Fern");
  const board = outcome("ROOT_BOARD", list, LOG, asOf) as unknown[][];
  expect(board.map(([plant]) => plant)).toEqual(["Plant", "Fern", "Moss"]);
});
