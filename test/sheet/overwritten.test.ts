/** Which rows are gone because what was written fell on them: worked out by hand for small tabs. */

import { describe, expect, test } from "vitest";
import { overwritten } from "../../src/sheet/overwritten.ts";
import type { Scene } from "../../src/sheet/repair.ts";

type Row = readonly unknown[];
const HEAD: Row = ["Id", "Plant", "Note", "Mine"];
const BLANK: Row = ["", "", "", ""];
const NEW: Row = ["new-1", "Palm", "new", ""];
const A: Row = ["a-1", "Fern", "one", "x"];
const B: Row = ["b-1", "Ivy", "two", "y"];
const C: Row = ["c-1", "Moss", "three", ""];
const TYPED: Row = ["", "Hoya", "by hand", ""];
const TYPED2: Row = ["", "Reed", "by hand too", ""];

/** Columns of the tab before and now, from 1: Id, Plant, Note and one of somebody else's. */
function gone(before: readonly Row[], now: readonly Row[], places: readonly (number | null)[], is = [1, 2, 3, 4]) {
  const headings = ["Id", "Plant", "Note", null];
  const scene = {
    before: { values: [HEAD, ...before] },
    now: { values: now },
    tracks: headings.map((heading, at) => ({ heading, was: at + 1, is: is[at] ?? 0 })),
    ...{ keyWas: 1, keyIs: is[0] ?? 0 },
  } as unknown as Scene;
  return overwritten(scene, places);
}

describe("nothing is gone", () => {
  test.each<[string, readonly Row[], readonly Row[], number]>([
    ["when the new row stands below", [A, TYPED], [HEAD, A, TYPED, NEW], 3],
    ["when rows were inserted and the new one still stands below", [A, B], [HEAD, BLANK, A, B, NEW], 4],
    ["when rows were sorted", [A, TYPED, B], [HEAD, B, NEW, TYPED, A], 2],
    ["when a row with an Id was changed", [A, B], [HEAD, ["a-1", "Fern", "changed", "x"], B, NEW], 3],
    ["when a row typed by hand was changed", [A, TYPED], [HEAD, A, ["", "Hoya", "changed", ""], NEW], 3],
    ["when a row got an Id", [TYPED, A], [HEAD, ["t-1", "Hoya", "by hand", ""], ["", "z", "z", ""], A, NEW], 4],
    ["when cells of a row, its Id among them, were blanked", [A, B], [HEAD, ["", "", "one", "x"], B, NEW], 3],
    ["when a heading was renamed", [A], [["Id", "Plant", "Notiz", "Mine"], A, NEW], 2],
    ["when rows were blank before, but for somebody else's cells", [A, ["", "", "", "z"]], [HEAD, A, NEW], 2],
    ["when cells beyond the end were not read before", [["a-1", "Fern"]], [HEAD, ["a-1", "Fern", "", ""], NEW], 2],
  ])("%s", (_, before, now, place) => expect(gone(before, now, [place])).toEqual([]));
});

describe("gone is", () => {
  test.each<[string, readonly Row[], readonly Row[], readonly (number | null)[], readonly number[]]>([
    ["the row that an insertion moved under the new one", [A, B], [HEAD, BLANK, A, NEW], [3], [2]],
    ["each of two, the upper one first", [A, B, C], [HEAD, BLANK, BLANK, A, NEW, NEW], [4, 5], [2, 3]],
    ["one typed by hand", [A, TYPED], [HEAD, BLANK, A, NEW], [3], [2]],
    [
      "the lower of two typed by hand, where one is missing",
      [TYPED, TYPED2],
      [HEAD, ["", "Hoya", "changed", ""], NEW, NEW],
      [2, 3],
      [2],
    ],
    ["both typed by hand, where two are missing", [A, TYPED, TYPED2], [HEAD, A, NEW, NEW], [2, 3], [2, 3]],
    ["one of two that say the same", [A, TYPED, TYPED], [HEAD, BLANK, A, TYPED, NEW], [4], [2]],
    ["no more than there are new rows", [A, B, C], [HEAD, NEW], [1], [3]],
    ["one beside another of which cells were blanked", [A, B], [HEAD, ["", "", "one", ""], NEW], [2], [2]],
    ["one that the row without an Id cannot be", [A, B], [HEAD, ["", "Fern", "other", ""], B, NEW], [3], [1]],
    [
      "one that a row without an Id would be but for somebody else's cell",
      [A],
      [HEAD, ["", "Fern", "one", "z"], NEW],
      [2],
      [1],
    ],
    ["one under a new row that stands nowhere", [A, B], [HEAD, A], [null], [2]],
    ["one typed by hand, when the new row has no Id yet", [TYPED], [HEAD, BLANK, ["", "Palm", "new", ""]], [2], [1]],
    [
      "one typed by hand, when the heading Id was deleted",
      [TYPED],
      [["", "Plant", "Note", "Mine"], BLANK, NEW],
      [2],
      [1],
    ],
    [
      "one typed by hand, when only somebody else's cell is left of it",
      [TYPED],
      [HEAD, ["", "", "", "w"], NEW],
      [2],
      [1],
    ],
  ])("%s", (_, before, now, places, expected) => expect(gone(before, now, places)).toEqual(expected));
});

test("columns are followed to where they stand now", () => {
  const moved = (row: Row): Row => [row[2], "mark", row[0], row[3], row[1]];
  const is = [3, 5, 1, 4];
  const [head, blank, a, b, fresh] = [HEAD, BLANK, A, B, NEW].map(moved) as [Row, Row, Row, Row, Row];
  expect(gone([A, B], [head, a, b, fresh], [3], is)).toEqual([]);
  expect(gone([A, B], [head, blank, a, fresh], [3], is)).toEqual([2]);
  expect(gone([A, TYPED], [head, blank, a, fresh], [3], is)).toEqual([2]);
});

test("the same day read twice is the same", () => {
  const day = (at: number): Row => ["a-1", new Date(at), "", ""];
  expect(gone([day(0)], [HEAD, day(0), NEW], [2])).toEqual([]);
  expect(gone([["", new Date(0), "", ""], TYPED], [HEAD, ["", new Date(0), "", ""], NEW], [2])).toEqual([2]);
});
