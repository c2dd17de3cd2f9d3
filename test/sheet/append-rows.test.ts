/** Where rows go on small tabs worked out by hand: below what is there, around formulas, once whatever happens meanwhile. */

import { describe, expect, test } from "vitest";
import { halfThere, placesById, type SheetRecord } from "../../src/sheet/append.ts";
import { refusal } from "../core/refusal.ts";
import { auto, type Cell, tabOf } from "./small-tab.ts";

const FERN: SheetRecord = { Id: "n-1", Plant: "Fern", Note: "dry" };
const PALM: SheetRecord = { Id: "n-2", Plant: "Palm", Note: "wet" };
const HEAD = (): Cell[] => ["Id", "Plant", "Note", "Who"];

describe("a new row goes", () => {
  test("below a row that holds a formula in a column that makes it one, and nothing else", () => {
    const tab = tabOf([HEAD(), ["a-1", "Hoya", "", ""], ["", { shows: "Ivy" }, "", ""]]);
    expect(tab.append(FERN)).toEqual({ written: 1, already: 0, differing: [] });
    expect(tab.shows()[1]).toEqual(["", "Ivy", "", ""]);
    expect(tab.shows()[2]).toEqual(["n-1", "Fern", "dry", ""]);
  });

  test("beside formulas filled ahead where it has nothing for them, and they stay", () => {
    const ahead = (): Cell[] => ["", "", "", auto];
    const tab = tabOf([HEAD(), ["a-1", "Hoya", "", auto], ahead(), ahead(), ahead()]);
    expect(tab.append(FERN, PALM).written).toBe(2);
    expect(tab.shows().map((row) => row.join("|"))).toEqual([
      "a-1|Hoya||auto",
      "n-1|Fern|dry|auto",
      "n-2|Palm|wet|auto",
      "|||auto",
    ]);
    expect(tab.writes).toEqual(["3,1 2x3"]);
  });

  test("below the last remark typed among formulas filled ahead", () => {
    const ahead = (note = ""): Cell[] => ["", "", note, auto];
    const tab = tabOf([HEAD(), ["a-1", "Hoya", "", auto], ahead(), ahead(), ahead("buy clay"), ahead(), ahead()]);
    expect(tab.append(FERN).written).toBe(1);
    expect(tab.writes).toEqual(["6,1 1x3"]);
    expect(tab.shows()[3]).toEqual(["", "", "buy clay", "auto"]);
  });

  test("below the last row of the list, however far the formula in a heading fills its column", () => {
    for (const filled of ["Plant", "Who"]) {
      const at = HEAD().indexOf(filled);
      const rows = [
        HEAD(),
        ["a-1", "", "", ""],
        ["a-2", "", "", ""],
        ...[4, 5, 6, 7].map((): Cell[] => ["", "", "", ""]),
      ];
      for (const row of rows) row[at] = "filled";
      (rows[0] as Cell[])[at] = { shows: filled };
      const tab = tabOf(rows);
      expect(tab.append({ Id: "n-1", Note: "dry" }).written, filled).toBe(1);
      expect(tab.shows()[2], filled).toEqual(
        ["n-1", "", "dry", ""].map((cell, index) => (index === at ? "filled" : cell)),
      );
      expect(tab.writes, filled).toEqual(filled === "Who" ? ["4,1 1x3"] : ["4,3 1x2", "4,1 1x1"]);
    }
  });
});

describe("a record", () => {
  test("with something for a column that is not there is refused, also beside one without", () => {
    const tab = tabOf([["Id", "Plant", "Who"]]);
    expect(refusal(() => tab.append(FERN, { Id: "n-2", Plant: "Palm" }))).toMatch(/no column “Note”/);
    expect(refusal(() => tab.append({ Id: "n-2", Plant: "Palm" }, FERN))).toMatch(/no column “Note”/);
    expect(tab.append({ Id: "n-2", Plant: "Palm", Note: "" }).written).toBe(1);
    expect(tab.shows()).toEqual([["n-2", "Palm", ""]]);
  });

  test("whose Id stands in two rows is compared with the upper one, and not written", () => {
    const tab = tabOf([HEAD(), ["n-1", "Fern", "dry", ""], ["", "", "by hand", ""], ["n-1", "Moss", "other", ""]]);
    expect(tab.append(FERN)).toEqual({ written: 0, already: 1, differing: [] });
    const { differing } = tab.append({ Id: "n-1", Plant: "Moss", Note: "other" });
    expect(differing).toEqual([expect.stringMatching(/row 2 of “Care log”.*Plant, Note/)]);
    expect(tab.writes).toEqual([]);
    expect([...placesById(tab.log())]).toEqual([["n-1", [1, 3]]]);
  });
});

/** Columns of somebody else's that are filled stand between ours, so that a row is written in blocks. */
const LAYOUTS = [
  "Id,Plant,Mine,Note,Who",
  "Plant,Id,Mine,Note,Who",
  "Who,Note,Mine,Plant,Id",
  "Who,Note,Mine,Id,Plant",
  "Note,Mine,Id,Plant,Who",
];

describe.each(LAYOUTS)("an earlier try that wrote a part, columns %s:", (layout) => {
  const headings = layout.split(",");
  const row = (cells: Readonly<Record<string, Cell>>): Cell[] =>
    headings.map((heading) => cells[heading] ?? (heading === "Mine" ? "mine" : heading === "Who" ? auto : ""));
  const HOYA = { Id: "a-1", Plant: "Hoya", Note: "moved" };
  /** A tab with these rows and two more to which only somebody else's cells and the formulas were filled down. */
  const open = (...rows: Readonly<Record<string, Cell>>[]) => tabOf([[...headings], ...[...rows, {}, {}].map(row)]);
  const mineNot = (cell: Cell): Cell => (cell === "mine" ? "" : cell);
  /** Row, Id, Plant and Note of every row that holds one of them. */
  const held = (tab: ReturnType<typeof open>) =>
    tab.shows().flatMap((cells, index) => {
      const ours = ["Id", "Plant", "Note"].map((heading) => cells[headings.indexOf(heading)]);
      return ours.join("") === "" ? [] : [[index + 2, ...ours].join(" ")];
    });

  test("its rows are finished where they stand, at the top of the tab too", () => {
    const top = open({ Note: "dry" }, { Note: "wet" });
    expect(halfThere(top.log(), [FERN, PALM])).toBe(true);
    expect(top.append(FERN, PALM).written).toBe(2);
    expect(held(top)).toEqual(["2 n-1 Fern dry", "3 n-2 Palm wet"]);
    const below = open(HOYA, { Note: "dry" });
    expect(halfThere(below.log(), [FERN])).toBe(true);
    expect(below.append(FERN).written).toBe(1);
    expect(held(below)).toEqual(["2 a-1 Hoya moved", "3 n-1 Fern dry"]);
  });

  test("also where somebody else's cells reach no further down than they do", () => {
    const tab = tabOf([[...headings], ...[HOYA, { Note: "dry" }, { Note: "wet" }].map(row)]);
    expect(halfThere(tab.log(), [FERN, PALM])).toBe(true);
    expect(tab.append(FERN, PALM).written).toBe(2);
    expect(held(tab)).toEqual(["2 a-1 Hoya moved", "3 n-1 Fern dry", "4 n-2 Palm wet"]);
    const one = tabOf([[...headings], ...[HOYA, { Note: "dry" }].map(row), row({ Note: "wet" }).map(mineNot)]);
    expect(one.append(FERN, PALM).written).toBe(2);
    expect(held(one)).toEqual(["2 a-1 Hoya moved", "3 n-1 Fern dry", "4 n-2 Palm wet"]);
  });

  test("also where one of the records has nothing for that part", () => {
    const plain = { Id: "n-2", Plant: "Palm" };
    const last = open(HOYA, { Note: "dry" }, {});
    expect(last.append(FERN, plain).written).toBe(2);
    expect(held(last)).toEqual(["2 a-1 Hoya moved", "3 n-1 Fern dry", "4 n-2 Palm "]);
    const first = open(HOYA, {}, { Note: "dry" });
    expect(first.append(plain, FERN).written).toBe(2);
    expect(held(first)).toEqual(["2 a-1 Hoya moved", "3 n-2 Palm ", "4 n-1 Fern dry"]);
  });

  test.each<[string, Readonly<Record<string, Cell>>[]]>([
    ["of which one says something else", [{ Note: "dry" }, { Note: "other" }]],
    ["in another order", [{ Note: "wet" }, { Note: "dry" }]],
    [
      "with a plant, typed by hand",
      [
        { Plant: "Fern", Note: "dry" },
        { Plant: "Palm", Note: "wet" },
      ],
    ],
    ["of which the last has a plant", [{ Note: "dry" }, { Plant: "Palm", Note: "wet" }]],
    [
      "with Ids of their own",
      [
        { Id: "a-2", Note: "dry" },
        { Id: "a-3", Note: "wet" },
      ],
    ],
  ])("rows %s are none, and stay", (_, rows) => {
    const tab = open(HOYA, ...rows);
    const before = held(tab);
    expect(halfThere(tab.log(), [FERN, PALM])).toBe(false);
    expect(tab.append(FERN, PALM).written).toBe(2);
    expect(held(tab)).toEqual([...before, "5 n-1 Fern dry", "6 n-2 Palm wet"]);
  });

  test("is none further up, however much a remark there says the same", () => {
    const tab = open({ Note: "dry" }, HOYA);
    expect(tab.append(FERN).written).toBe(1);
    expect(held(tab)).toEqual(["2   dry", "3 a-1 Hoya moved", "4 n-1 Fern dry"]);
  });

  test("is none without records, nor without rows", () => {
    expect(halfThere(open({ Note: "dry" }).log(), [])).toBe(false);
    expect(halfThere(open().log(), [FERN, PALM])).toBe(false);
    expect(halfThere(open(HOYA).log(), [{ Id: "n-1", Plant: "Fern" }])).toBe(false);
  });
});

test("an earlier try may have failed after any block but the last", () => {
  const head = (): Cell[] => ["Note", "Mine", "Plant", "Mine", "Id", "Who"];
  const open = (...rows: [Cell, Cell][]) =>
    tabOf([
      head(),
      ...[...rows, ["", ""], ["", ""]].map(([note = "", plant = ""]): Cell[] => [note, "mine", plant, "mine", "", ""]),
    ]);
  const inPlace = [
    ["dry", "mine", "Fern", "mine", "n-1", ""],
    ["wet", "mine", "Palm", "mine", "n-2", ""],
  ];
  for (const tab of [open(["dry", ""], ["wet", ""]), open(["dry", "Fern"], ["wet", "Palm"])]) {
    expect(tab.append(FERN, PALM).written).toBe(2);
    expect(tab.shows().slice(0, 2)).toEqual(inPlace);
  }
});

test("a row in which a formula shows what is to be written is none of an earlier try, and nothing is refused for it", () => {
  const tab = tabOf([
    ["Note", "Mine", "Plant", "Mine", "Id", "Who"],
    ["dry", "mine", { shows: "Fern" }, "mine", "", ""],
  ]);
  expect(tab.append(FERN).written).toBe(1);
  expect(tab.shows()[1]).toEqual(["dry", "", "Fern", "", "n-1", ""]);
  const second = tabOf([
    ["Note", "Mine", "Plant", "Mine", "Id", "Who"],
    ["dry", "mine", "", "mine", "", ""],
    ["wet", "mine", { shows: "Palm" }, "mine", "", ""],
  ]);
  expect(second.append(FERN, PALM).written).toBe(2);
  expect(second.shows().slice(2)).toEqual([
    ["dry", "", "Fern", "", "n-1", ""],
    ["wet", "", "Palm", "", "n-2", ""],
  ]);
});

test("a row of which only a formula shows something is none of an earlier try of a record that has nothing but its Id", () => {
  const line = (plant: string): Cell[] => ["", "mine", { shows: plant }, "mine", "", ""];
  const tab = tabOf([["Note", "Mine", "Plant", "Mine", "Id", "Who"], line("Ivy"), line("")]);
  expect(tab.append({ Id: "n-1" }).written).toBe(1);
  expect(tab.shows()).toEqual([
    ["", "mine", "Ivy", "mine", "", ""],
    ["", "mine", "", "mine", "n-1", ""],
  ]);
});
