/** Repairs where somebody else's columns, rows typed by hand or changes of that very moment are about. */

import { describe, expect, test } from "vitest";
import {
  A,
  appended,
  B,
  BLANK,
  C,
  type Case,
  FILLED,
  fine,
  HEAD,
  mended,
  PALM,
  type Row,
  TYPED,
  toMend,
} from "./mending.ts";

const before = { rows: [A, B] };
const landing = appended([A, B], PALM);
const NEW: Row = ["new-1", "Palm", "new", ""];
const FULL: Row = ["b-1", "Ivy", "filled", "y"];

describe("nothing is written", () => {
  test("where a new row, or a cell that was filled, stands as it should", () => {
    expect(toMend({ before, now: { rows: [A, B, NEW] }, landing })).toEqual([]);
    expect(toMend({ before, now: { rows: [A, FULL] }, landing: FILLED })).toEqual([]);
  });

  test("into blank rows that came in, also once blanks were put", () => {
    expect(toMend({ before, now: { rows: [BLANK, A, B, NEW] }, landing, put: [null] })).toEqual([]);
  });
});

test("what strayed into the last columns of the new row, right of those that were read, is cleared", () => {
  const now = { rows: [A, B, [...NEW, "new", "Palm"]] };
  expect(mended({ before, now, landing }).rows[2]).toEqual([...NEW, "", ""]);
});

describe("a column that came in meanwhile", () => {
  const head = ["Id", "", "Plant", "Note", "Mine"];

  test("is cleared of what strayed into it beside another row", () => {
    const rows = [
      ["a-1", "filled", "Fern", "one", "x"],
      ["b-1", "", "Ivy", "two", "y"],
    ];
    expect(mended({ before, now: { head, rows }, landing: FILLED })).toEqual({
      rows: [
        ["a-1", "", "Fern", "one", "x"],
        ["b-1", "", "Ivy", "filled", "y"],
      ],
      ...fine,
    });
  });

  test("keeps what somebody typed there, and the other cells of that row are put right", () => {
    const rows = [
      ["a-1", "hers", "filled", "one", "x"],
      ["b-1", "", "Ivy", "two", "y"],
    ];
    expect(mended({ before, now: { head, rows }, landing: FILLED }).rows[0]).toEqual([
      "a-1",
      "hers",
      "Fern",
      "one",
      "x",
    ]);
  });

  test("leaves columns of somebody else's known by their headings", () => {
    const rows = [
      ["a-1", "", "Fern", "one", "filled"],
      ["b-1", "", "Ivy", "two", "y"],
    ];
    expect(mended({ before, now: { head, rows }, landing: FILLED }).rows[0]).toEqual(["a-1", "", "Fern", "one", "x"]);
  });

  test("with a heading of its own keeps what it holds, and be it the same word", () => {
    const rows = [
      [...A, "filled"],
      [...FULL, ""],
    ];
    expect(mended({ before, now: { head: [...HEAD, "Extra"], rows }, landing: FILLED }).rows).toEqual(rows);
  });
});

describe("somebody else's cell", () => {
  test("gets its own back where ours strayed into it, though the rest of its row is whole", () => {
    const now = { rows: [["a-1", "Fern", "one", "filled"], FULL] };
    expect(mended({ before, now, landing: FILLED }).rows[0]).toEqual(A);
  });

  test("of a row on which a new one fell keeps what was typed there since, and loses what is ours", () => {
    const fallen = (mine: string) => ({ rows: [A, ["new-1", "Palm", "new", mine]] });
    const over = appended([A], PALM);
    expect(mended({ before, now: fallen("yy"), landing: over }).rows[1]).toEqual(["b-1", "Ivy", "two", "yy"]);
    expect(mended({ before, now: fallen("new"), landing: over }).rows[1]).toEqual(B);
  });
});

test("a row with an Id gets back what ours took, and keeps what somebody changed in that moment", () => {
  const now = { rows: [["a-1", "filled", "changed", "x"], FULL] };
  expect(mended({ before, now, landing: FILLED }).rows[0]).toEqual(["a-1", "Fern", "changed", "x"]);
});

test("rows whose Id stands twice keep what strayed into them rather than get another's", () => {
  const twice = ["a-1", "Fern two", "other", ""];
  const rows = [["a-1", "Fern", "filled", "x"], twice, FULL];
  expect(mended({ before: { rows: [A, twice, B] }, now: { rows }, landing: { ...FILLED, rows: [4] } }).rows).toEqual(
    rows,
  );
});

describe("of two rows typed by hand", () => {
  const other = ["", "Hoya", "other", ""];
  const typed = { rows: [TYPED, other, B] };
  const filled = { ...FILLED, rows: [4] };

  test("the one that is gone is the one that was hit", () => {
    const hit = ["", "Hoya", "filled", ""];
    expect(mended({ before: typed, now: { rows: [TYPED, hit, FULL] }, landing: filled }).rows).toEqual([
      TYPED,
      other,
      FULL,
    ]);
    expect(mended({ before: typed, now: { rows: [hit, other, FULL] }, landing: filled }).rows).toEqual([
      TYPED,
      other,
      FULL,
    ]);
  });

  test("none is taken for one that was hit when it differs in more than that", () => {
    const rows = [TYPED, ["", "Fig", "filled", ""], FULL];
    expect(mended({ before: typed, now: { rows }, landing: filled }).rows).toEqual(rows);
  });
});

test("a row that was to be filled and is gone is refused, though its value fell on another, which gets its own back", () => {
  const now = { rows: [["a-1", "Fern", "filled", "x"], C] };
  expect(mended({ before: { rows: [A, B, C] }, now, landing: FILLED })).toEqual({
    ...fine,
    rows: [A, C],
    refused: true,
  });
});

test("a row put back before and damaged again in a cell of its own is known by its Id and put back", () => {
  const now = { rows: [A, ["b-1", "new", "two", "y"], NEW] };
  expect(mended({ before, now, landing, put: ["b-1", "Ivy", "two"], restored: [2] }).rows).toEqual([A, B, NEW]);
});

describe("a row put back before", () => {
  test("that a new one fell on again is put back again", () => {
    const now = { rows: [A, ["new-1", "Palm", "new", "y"]] };
    expect(mended({ before, now, landing: appended([A], PALM), put: ["b-1", "Ivy", "two"], restored: [2] })).toEqual({
      rows: [A, B],
      again: ["new-1"],
      refused: false,
      restored: [2],
    });
  });

  test("that lost a cell since is known by its Id and gets it back", () => {
    const now = { rows: [A, ["b-1", "Ivy", "", "y"], NEW] };
    expect(mended({ before, now, landing, put: ["b-1", "Ivy", "two"], restored: [2] }).rows).toEqual([A, B, NEW]);
  });

  test("that stands beside its columns is known by what it held in ours, whatever became of others", () => {
    const now = {
      head: ["", ...HEAD],
      rows: [
        ["", ...A],
        ["b-1", "Ivy", "two", "", "yy"],
        ["", "new-1", "Palm", "new", ""],
      ],
    };
    const { rows, again } = mended({ before, now, landing, put: ["b-1", "Ivy", "two"], restored: [2] });
    expect(rows[1]).toEqual(["", "b-1", "Ivy", "two", "yy"]);
    expect(again).toEqual([]);
  });

  test("and nowhere to be found leaves the headings alone", () => {
    const now = { rows: [NEW, C] };
    const given = {
      before: { rows: [A, B, C] },
      now,
      landing: appended([], PALM),
      put: ["a-1", "b-1"],
      restored: [1, 2],
    };
    const { rows } = mended(given);
    expect(rows).toEqual([["b-1", "Ivy", "two", ""], C]);
    expect(toMend(given).filter(({ row }) => row < 2)).toEqual([]);
  });
});

test("of two alike typed by hand, one that a new row fell on comes back", () => {
  const now = { rows: [TYPED, NEW] };
  const { rows, again } = mended({ before: { rows: [TYPED, TYPED] }, now, landing: appended([TYPED], PALM) });
  expect({ rows, again }).toEqual({ rows: [TYPED, TYPED], again: ["new-1"] });
});

test("a row typed by hand that holds the same word of its own is not taken for one that was deleted", () => {
  const own = ["", "Hoya", "filled", ""];
  const now = { rows: [own, FULL] };
  const typed = { rows: [own, ["", "Hoya", "other", ""], B] };
  expect(mended({ before: typed, now, landing: { ...FILLED, rows: [4] } }).rows).toEqual(now.rows);
});

describe("a row is not taken for the headings", () => {
  const head = ["", ...HEAD];

  test("when its name is that of the heading above it", () => {
    const record = { ...PALM, Id: "Id" };
    const now = { rows: [A, B, ["Id", "Palm", "new", ""]] };
    expect(toMend({ before, now, landing: appended([A, B], record) })).toEqual([]);
  });

  test("when all that was written is the word of a heading, and stands beside its column", () => {
    const now = { head, rows: [...[A, B].map((row) => ["", ...row]), ["Note", "", "", "", ""]] };
    expect(mended({ before, now, landing: appended([A, B], { Id: "Note" }) }).rows[2]).toEqual([
      "",
      "Note",
      "",
      "",
      "",
    ]);
  });

  test.each<[string, Row]>([
    ["the name of the heading above it", ["Id", "Ivy", "two", "y"]],
    ["nothing but the word of a heading", ["", "Note", "", ""]],
  ])("when it was put back and holds %s", (_, row) => {
    const rows = [A, row];
    expect(toMend({ before: { rows }, now: { rows: [...rows, NEW] }, landing, restored: [2] })).toEqual([]);
  });

  test("when something strayed into it and it bears the name of the heading above it", () => {
    const there = { rows: [["Id", "Fern", "one", "x"], B] };
    const now = { rows: [["Id", "filled", "one", "x"], B] };
    expect(mended({ before: there, now, landing: FILLED }).rows).toEqual([...there.rows.slice(0, 1), FULL]);
  });
});

test("a row typed by hand that is whole gets nothing of a like one that is gone, once blanks were put", () => {
  const typed: Row = ["", "Hoya", "", "x"];
  const rows = [A, B, typed, ["", "Hoya", "by hand", "x"]];
  expect(toMend({ before: { rows }, now: { rows: [A, FULL, typed] }, landing: FILLED, put: [null] })).toEqual([]);
});

test("a row typed by hand that comes back leaves alone one that holds its word and more", () => {
  const rows: Row[] = [
    ["c-1", "Hoya", "three", "z"],
    ["", "Hoya", "", ""],
  ];
  const now = { rows: [rows[0] as Row, NEW] };
  expect(mended({ before: { rows }, now, landing: appended(rows, PALM) }).rows).toEqual(rows);
  // The round after: both stand, the new one is missing, and there is nothing to mend.
  const next = { before: { rows }, now: { rows }, landing: appended(rows, PALM), restored: [2] };
  expect(mended(next)).toMatchObject({ rows, again: ["new-1"], restored: [2] });
  // Nor is it taken for one without an Id that holds more, nor for what somebody types just now beside an Id.
  const typed: Row[] = [
    ["", "Hoya", "dry", ""],
    ["", "Hoya", "", ""],
  ];
  expect(mended({ ...next, before: { rows: typed }, now: { rows: typed } }).rows).toEqual(typed);
  const edited: Row[] = [["c-1", "Hoya", "other", "z"], rows[1] as Row];
  expect(mended({ ...next, now: { rows: edited } }).rows).toEqual(edited);
  expect(mended({ ...next, now: { rows: [edited[0] as Row] } }).rows).toEqual([edited[0]]);
});

describe("a row typed by hand that was put back in an earlier round", () => {
  const hoya: Row = ["", "Hoya", "", ""];
  const later = (rows: Row[], now: Row[], more: Partial<Case> = {}) =>
    mended({ before: { rows }, now: { rows: now }, landing: appended(rows, PALM), restored: [rows.length], ...more })
      .rows;

  test("is cleared of what strayed into somebody else's cell of it", () => {
    expect(later([C, hoya], [C, ["", "Hoya", "", "Palm"]])).toEqual([C, hoya]);
  });

  test("is put right again where its cells stand in each other's columns", () => {
    expect(later([C, TYPED], [C, ["", "by hand", "Hoya", ""]])).toEqual([C, TYPED]);
  });

  test("is not taken for another that has one of its cells, or all of them and more", () => {
    const other: Row = ["", "Hoya", "just now", ""];
    expect(later([C, TYPED], [C, other])).toEqual([C, other]);
    const dry: Row = ["", "Hoya", "dry", ""];
    expect(later([dry, hoya], [dry])).toEqual([dry]);
  });

  test("for the first time this round is looked for nowhere else", () => {
    const ivy: Row = ["", "Ivy", "", ""];
    const other: Row = ["", "Hoya", "just now", ""];
    expect(later([ivy, hoya], [other, NEW], { restored: [] })).toEqual([other, hoya]);
  });

  test("keeps what stands in a column that came meanwhile", () => {
    const now = { head: [...HEAD, "Theirs"], rows: [C, [...NEW, "kept"]] };
    expect(mended({ before: { rows: [C, hoya] }, now, landing: appended([C, hoya], PALM) }).rows).toEqual([
      [...C, ""],
      [...hoya, "kept"],
    ]);
  });
});
