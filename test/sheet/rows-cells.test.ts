/** One cell of each kind under one column of each kind: what it is read as, what is told, and whether arithmetic minds. */

import { describe, expect, test } from "vitest";
import { choice, day, nameOf, number, text, yesNo } from "../../src/sheet/columns.ts";
import type { Columns } from "../../src/sheet/find.ts";
import { columnProblems, readRows } from "../../src/sheet/rows.ts";
import type { TabSpec } from "../../src/sheet/spec.ts";

const SPEC: TabSpec = {
  ...{ name: "Feeds", key: "Feed", help: "" },
  columns: [
    text("Feed", ""),
    number("N", "", { unit: "% by weight" }),
    day("Date", "", { aside: true }),
    yesNo("Wet", ""),
    nameOf("Plants", "Plant", ""),
    choice("Origin", "", ["mineral", "organic"]),
    text("Note", ""),
  ],
};
const HEADINGS = SPEC.columns.map(({ heading }) => heading);
/** A day as the host hands it over, and an error. */
const DAY = { day: 20_513 };
const ERROR = { error: true };
const dayOf = (raw: unknown): number | null => (raw === DAY ? DAY.day : null);

const columns = (headings: readonly string[], doubts: readonly (readonly [string, string])[] = []): Columns => ({
  ...{ tabName: "Our feeds", at: new Map(headings.map((heading, at) => [heading, at + 1])), doubts: new Map(doubts) },
});
const read = (rows: readonly (readonly unknown[])[], places?: readonly number[]) =>
  readRows([HEADINGS, ...rows], SPEC, columns(HEADINGS), dayOf, places);
/** One cell under a heading, beside the name of the row. */
function cell(heading: string, raw: unknown) {
  const [row] = read([HEADINGS.map((each) => (each === heading ? raw : each === "Feed" ? "Salt" : ""))]);
  return { value: row?.fields[heading], problems: row?.problems ?? [] };
}

describe("a cell is read as", () => {
  test.each<[string, unknown, unknown]>([
    ["N", 15.5, 15.5],
    ["N", "15,5 %", 15.5],
    ["Date", DAY, "2026-03-01"],
    ["Date", "2026-03-01", "2026-03-01"],
    ["Wet", "Yes", true],
    ["Wet", false, false],
    ["Plant", " Fern ", " Fern "],
    ["Plant", 12, "12"],
    ["Plant", true, "yes"],
    ["Note", false, "no"],
    ["Note", DAY, "2026-03-01"],
    ["Note", 0, "0"],
    ["Origin", "of the sea", "of the sea"],
    ["Origin", DAY, "2026-03-01"],
  ])("%s %j → %j", (heading, raw, value) => {
    expect(cell(heading, raw)).toEqual({ value, problems: [] });
  });

  test.each(["", "   ", null, undefined])("nothing when it is blank: %j", (raw) => {
    for (const heading of HEADINGS.slice(1)) expect(cell(heading, raw)).toEqual({ value: undefined, problems: [] });
  });
});

describe("a cell that cannot be read stands as it is and is told:", () => {
  test.each<[string, unknown, unknown, boolean, RegExp]>([
    ["N", "lots", "lots", false, /^N in row 2 of Our feeds is "lots".*%/],
    ["N", true, true, false, /^N in row 2 of Our feeds is yes/],
    ["N", DAY, "2026-03-01", false, /is the date 2026-03-01/],
    ["N", ERROR, "#ERROR!", false, /error/],
    ["Date", 5, 5, true, /^Date in row 2 of Our feeds is the number 5/],
    ["Wet", "perhaps", "perhaps", false, /Write yes or no/],
    ["Plant", DAY, "2026-03-01", false, /^Plant in row 2 of Our feeds is the date 2026-03-01, not a name/],
    ["Plant", ERROR, "#ERROR!", false, /^Plant in row 2 of Our feeds is an error cell/],
    ["Origin", "#N/A", "#N/A", false, /^Origin in row 2 of Our feeds is an error cell \(#N\/A\)/],
    ["Note", ERROR, "#ERROR!", true, /^Note in row 2 of Our feeds is an error cell/],
  ])("%s %j", (heading, raw, value, aside, sentence) => {
    const found = cell(heading, raw);
    expect(found.value).toBe(value);
    expect(found.problems).toEqual([{ heading, aside, sentence: expect.stringMatching(sentence) }]);
  });

  test("the name of the row, which is a date or an error", () => {
    for (const raw of [DAY, ERROR]) {
      const [row] = read([[raw, 5]]);
      expect(row?.problems).toMatchObject([{ heading: "Feed", aside: false }]);
      expect(row?.fields.N).toBe(5);
    }
  });
});

describe("rows", () => {
  const ROWS = [
    ["a", 1],
    ["", ""],
    ["c", 3],
    [null, undefined],
    ["e", 5],
  ];

  test("are those with something in one of our columns, with their number on the tab", () => {
    expect(read(ROWS).map(({ row, where, fields }) => [row, where, fields.Feed])).toEqual([
      [2, "row 2 of Our feeds", "a"],
      [4, "row 4 of Our feeds", "c"],
      [6, "row 6 of Our feeds", "e"],
    ]);
  });

  test("are only those asked for, in that order", () => {
    const asked = (places: readonly number[]) => read(ROWS, places).map(({ fields }) => fields.Feed);
    expect([asked([5, 1]), asked([1]), asked([2]), asked([]), asked([9])]).toEqual([["e", "a"], ["a"], [], [], []]);
  });

  test("have nothing of a column that is not there", () => {
    const [row] = readRows([["Feed"], ["a", 1]], SPEC, columns(["Feed"]), dayOf);
    expect(row?.fields).toEqual({ Feed: "a" });
  });
});

test("columns in doubt are told one by one, missing ones together, unless they are in doubt", () => {
  const found = columns(["Feed"], [["N", "Two columns could be N."]]);
  expect(columnProblems(found, ["Feed", "N", "Date", "Wet"])).toEqual([
    "Two columns could be N.",
    expect.stringMatching(/“Our feeds” has no column “Date” or “Wet”/),
  ]);
  expect(columnProblems(found, ["Feed", "N"])).toEqual(["Two columns could be N."]);
  expect(columnProblems(columns(HEADINGS), HEADINGS)).toEqual([]);
});
