/** The look before a write and the look after it: what is seen, and what is read for it. */

import { describe, expect, test } from "vitest";
import type { Log, SheetRecord } from "../../src/sheet/append.ts";
import type { Block } from "../../src/sheet/port.ts";
import { settle, stillFree } from "../../src/sheet/settle.ts";
import { refusal } from "../core/refusal.ts";

type Row = readonly unknown[];
const HEAD: Row = ["Id", "Plant", "Mine"];
const A: Row = ["a-1", "Fern", "x"];
const B: Row = ["b-1", "Ivy", "y"];
const BLANK: Row = ["", "", ""];

interface Tab {
  readonly log: Log;
  /** Blocks that were read: "1,1 3x3" from row 1, column 1, three rows of three columns. */
  readonly read: string[];
  /** How often the whole tab was read. */
  whole(): number;
}

/** A tab that was read as `before` and holds `now` by now; a blank cell is "". */
function tabOf(before: readonly Row[], now: readonly Row[], head: Row = HEAD): Tab {
  const read: string[] = [];
  let whole = 0;
  const at = new Map(["Id", "Plant"].map((heading) => [heading, HEAD.indexOf(heading) + 1]));
  const cell = (row: number, column: number): unknown => [head, ...now][row - 1]?.[column - 1] ?? "";
  const tab = {
    id: 1,
    name: "Care log",
    readBlock({ row, column, rows, columns }: Block) {
      read.push(`${row},${column} ${rows}x${columns}`);
      return Array.from({ length: rows }, (_, r) =>
        Array.from({ length: columns }, (__, c) => cell(row + r, column + c)),
      );
    },
    readAll() {
      whole++;
      return [head, ...now];
    },
    write() {
      throw new Error("Nothing is to be written here.");
    },
  };
  const workbook = { dayOf: () => null, tabs: () => [tab], marks: () => [] };
  const log = {
    book: { workbook, tabs: [tab], marks: [] },
    spec: { name: "Care log", key: "Id", columns: [{ heading: "Id" }, { heading: "Plant" }] },
    tab,
    values: [HEAD, ...before],
    columns: { tabName: "Care log", at, doubts: new Map() },
  } as unknown as Log;
  return { log, read, whole: () => whole };
}

describe("rows about to be written", () => {
  const before = [A, B];
  /** Whether two rows from row 4 on are free. */
  const free = (now: readonly Row[], head?: Row) => stillFree(tabOf(before, now, head).log, 4, 2);

  test("are free as long as they, the row above and our headings are as they were read", () => {
    expect(free([A, B])).toBe(true);
    expect(free([A, B, BLANK, BLANK, ["", "", "below"]])).toBe(true);
  });

  test.each<[string, readonly Row[]]>([
    ["the row above was changed", [A, ["b-1", "Palm", "y"]]],
    ["a row came in further up", [BLANK, A, B]],
    ["rows were sorted", [B, A]],
    ["somebody typed into the first of them", [A, B, ["", "Palm", ""]]],
    ["somebody typed into the second of them", [A, B, BLANK, ["new", "", ""]]],
    ["somebody typed beside our columns in one of them", [A, B, BLANK, ["", "", "z"]]],
  ])("are not when %s", (_, now) => expect(free(now)).toBe(false));

  test("are not when one of our headings moved or went, whatever became of others", () => {
    expect(free([A, B], ["Plant", "Id", "Mine"])).toBe(false);
    expect(free([A, B], ["Id", "", "Mine"])).toBe(false);
    expect(free([A, B], ["Id", "Plant", "Ours"])).toBe(true);
  });

  test("are so whatever somebody else's cells show above them, for a formula may show something else at any time", () => {
    expect(free([A, ["b-1", "Ivy", "yy"]])).toBe(true);
    expect(stillFree(tabOf([A, B, ["", "", "ahead"]], [A, B, ["", "", "other"]]).log, 4, 1)).toBe(true);
    expect(stillFree(tabOf([A, B, ["", "", "ahead"]], [A, B, ["", "", ""]]).log, 4, 1)).toBe(true);
  });

  test("further up nothing is looked at", () => {
    expect(free([["a-1", "Fig", "x"], B])).toBe(true);
  });

  test("are read in one call: all that is above on a short tab, from the row above on a long one", () => {
    const rows = (count: number): Row[] => Array.from({ length: count }, (_, k) => [`id-${k}`, "Fern", ""]);
    for (const [row, count, block] of [
      [4, 2, "1,1 5x3"],
      [100, 1, "1,1 100x3"],
      [101, 1, "100,1 2x3"],
      [250, 3, "249,1 4x3"],
    ] as const) {
      const { log, read } = tabOf(rows(row - 2), rows(row - 2));
      expect(stillFree(log, row, count)).toBe(true);
      expect(read).toEqual([block]);
    }
    const long = tabOf(rows(248), [...rows(247), ["other", "", ""]]);
    expect(stillFree(long.log, 250, 1)).toBe(false);
    // on a long tab the headings are not among what is read
    expect(stillFree(tabOf(rows(248), rows(248), ["Plant", "Id", "Mine"]).log, 250, 1)).toBe(true);
  });
});

describe("a row that was written", () => {
  const NEW: SheetRecord = { Id: "new-1", Plant: "Palm" };
  const row = (plant = "Palm", mine = ""): Row => ["new-1", plant, mine];
  const fresh = (at: number) => ({ records: [NEW], rows: [at], headings: ["Id", "Plant"], fresh: true });
  const filled = (at: number) => ({
    records: [{ Id: "b-1", Plant: "Ivy" }],
    rows: [at],
    headings: ["Plant"],
    fresh: false,
  });

  test("and stands where it belongs needs one look", () => {
    const { log, read, whole } = tabOf([A, B], [A, B, row()]);
    expect(settle(log, fresh(4))).toEqual([]);
    expect([read, whole()]).toEqual([["1,1 4x3"], 0]);
  });

  test("on a long tab needs two: the row with the one above, and the headings", () => {
    const rows: Row[] = Array.from({ length: 200 }, (_, k) => [`id-${k}`, "Fern", ""]);
    const { log, read, whole } = tabOf(rows, [...rows, row()]);
    expect(settle(log, fresh(202))).toEqual([]);
    expect([read, whole()]).toEqual([["201,1 2x3", "1,1 1x3"], 0]);
    const filledIn = tabOf(rows, rows);
    const [id, plant] = rows[149] as [string, string];
    expect(
      settle(filledIn.log, { records: [{ Id: id, Plant: plant }], rows: [151], headings: ["Plant"], fresh: false }),
    ).toEqual([]);
    expect(filledIn.read).toEqual(["151,1 1x3", "1,1 1x3"]);
  });

  test.each<[string, readonly Row[], Row]>([
    ["a cell of ours holds something else", [A, B, row("Date palm")], HEAD],
    ["its Id is gone", [A, B, ["", "Palm", ""]], HEAD],
    ["the row above is another", [B, A, row()], HEAD],
    ["any heading is another, somebody else's too", [A, B, row()], ["Id", "Plant", "Ours"]],
    ["a heading of ours went", [A, B, row()], ["Id", "", "Mine"]],
  ])("is looked at whole when %s", (_, now, head) => {
    const { log, whole } = tabOf([A, B], now, head);
    // here nothing may be written, so that a repair fails
    try {
      settle(log, fresh(4));
    } catch {}
    expect(whole()).toBeGreaterThan(0);
  });

  test("that was filled in is held against its key and what was written, not against its neighbours", () => {
    expect(settle(tabOf([A, B], [["a-1", "Fig", "x"], B]).log, filled(3))).toEqual([]);
    const moved = tabOf([A, B], [A, ["c-1", "Ivy", "y"]]);
    expect(refusal(() => settle(moved.log, filled(3)))).toMatch(/being rearranged/);
  });

  test("that was sorted away needs no repair; one that stands nowhere is given back", () => {
    expect(settle(tabOf([A, B], [row(), A, B]).log, fresh(4))).toEqual([]);
    expect(settle(tabOf([A, B], [A, B]).log, fresh(4))).toEqual([NEW]);
  });
});
