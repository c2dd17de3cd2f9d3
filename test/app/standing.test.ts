/** Which rows are void as the sheet has them: headings, numbers, spaces and rows without an Id among them. */

import { describe, expect, test } from "vitest";
import { takesBackOnly, voidPlaces } from "../../src/app/standing.ts";
import type { Columns } from "../../src/sheet/find.ts";
import { SETTINGS } from "../../src/sheet/list-tabs.ts";
import { BATCH_LOG, CARE_LOG } from "../../src/sheet/log-tabs.ts";

const columns = (at: Readonly<Record<string, number>>): Columns => ({
  tabName: "Care log",
  at: new Map(Object.entries(at)),
  doubts: new Map(),
});
const BOTH = columns({ Id: 1, Corrects: 2 });
const gone = (rows: readonly (readonly unknown[])[], at = BOTH, named?: boolean) =>
  [...voidPlaces([["Id", "Corrects"], ...rows], at, named === undefined ? undefined : { named })].sort();

describe("void rows", () => {
  test("are those that another row points at, spaces around the Ids or not", () => {
    expect(
      gone([
        ["a-1", ""],
        [" b-1 ", " a-1 "],
        ["c-1", ""],
      ]),
    ).toEqual([1]);
    expect(
      gone([
        ["a-1", ""],
        ["b-1", "a-1"],
        ["c-1", "b-1"],
      ]),
    ).toEqual([2]);
  });

  test("are none where one of the columns is missing", () => {
    const rows = [
      ["a-1", ""],
      ["b-1", "a-1"],
    ];
    expect(gone(rows, columns({ Id: 1 }))).toEqual([]);
    expect(gone(rows, columns({ Corrects: 2 }))).toEqual([]);
    expect(gone(rows, columns({}))).toEqual([]);
  });

  test("are not made by a number, a date or a tick, nor by the heading row", () => {
    expect(
      gone([
        [7, ""],
        ["b-1", 7],
        [true, ""],
        ["c-1", true],
      ]),
    ).toEqual([]);
    expect([
      ...voidPlaces(
        [
          ["top", "a-1"],
          ["a-1", ""],
          ["b-1", "top"],
        ],
        BOTH,
      ),
    ]).toEqual([]);
  });

  test("are made by a row without an Id, unless only named rows are to count", () => {
    const rows = [
      ["a-1", ""],
      ["", "a-1"],
    ];
    expect(gone(rows)).toEqual([1]);
    expect(gone(rows, BOTH, false)).toEqual([1]);
    expect(gone(rows, BOTH, true)).toEqual([]);
    expect(
      gone(
        [
          ["a-1", ""],
          ["b-1", "a-1"],
        ],
        BOTH,
        true,
      ),
    ).toEqual([1]);
  });
});

test("a row only takes back when it points at one and nothing but a date makes it a record", () => {
  expect(takesBackOnly(BATCH_LOG, { Corrects: "a-1", Date: "2026-03-01", Who: "Ana" })).toBe(true);
  expect(takesBackOnly(BATCH_LOG, { Corrects: "a-1", Doses: "Salt 1 g/L (1 g)" })).toBe(false);
  expect(takesBackOnly(BATCH_LOG, { Date: "2026-03-01" })).toBe(false);
  expect(takesBackOnly(CARE_LOG, { Corrects: "a-1", Plant: "Fern" })).toBe(false);
  expect(takesBackOnly(SETTINGS, { Corrects: "a-1" })).toBe(true);
});
