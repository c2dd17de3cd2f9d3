/** How what landed elsewhere is put right: which cells are written, in what order, and what is looked at before. */

import { describe, expect, test } from "vitest";
import type { Log, SheetRecord } from "../../src/sheet/append.ts";
import { findColumns, openBook } from "../../src/sheet/find.ts";
import type { Block, Mark, PlainCell } from "../../src/sheet/port.ts";
import { type Landing, marksHold, settle, stillFree } from "../../src/sheet/settle.ts";
import type { TabSpec } from "../../src/sheet/spec.ts";
import { refusal } from "../core/refusal.ts";

type Row = readonly unknown[];
const HEAD: Row = ["Id", "Plant", "Note", "Mine"];
const SPEC = {
  name: "Care log",
  key: "Id",
  help: "",
  columns: ["Id", "Plant", "Note"].map((heading) => ({ heading, kind: "text", help: "" })),
} as unknown as TabSpec;
const A: Row = ["a-1", "Fern", "one", "x"];
const B: Row = ["b-1", "Ivy", "two", "y"];
const C: Row = ["c-1", "Moss", "three", "z"];
const PALM: SheetRecord = { Id: "new-1", Plant: "Palm", Note: "new" };
const LIME: SheetRecord = { Id: "new-2", Plant: "Lime", Note: "newer" };
const appended = (row: number, ...records: SheetRecord[]): Landing => ({
  records,
  rows: records.map((_, at) => row + at),
  headings: ["Id", "Plant", "Note"],
  fresh: true,
});
/** The note of the row c-1, in row 4. */
const FILLED: Landing = { records: [{ Id: "c-1", Note: "filled" }], rows: [4], headings: ["Note"], fresh: false };

interface Options {
  /** The marks, as they are each time they are asked for. */
  readonly marks?: (time: number) => readonly Mark[];
  /** Happens just before a row is looked at, the first time, the second, … once the tab was read again. */
  readonly onLook?: (cells: unknown[][], time: number) => void;
  /** Nothing that is written stays. */
  readonly deaf?: boolean;
}

/** A tab that was read as `before` and holds `now` by now, heading row first. */
function tabOf(before: readonly Row[], now: readonly Row[], given: Options = {}) {
  const cells = now.map((row) => [...row]);
  const width = Math.max(...now.map((row) => row.length));
  const written: string[] = [];
  const count = { whole: 0, looks: 0, marks: 0 };
  const tab = {
    id: 1,
    name: "Care log",
    readAll() {
      count.whole++;
      return cells.map((row) => Array.from({ length: width }, (_, at) => row[at] ?? ""));
    },
    readBlock({ row, column, rows, columns }: Block) {
      if (count.whole > 0) given.onLook?.(cells, ++count.looks);
      return Array.from({ length: rows }, (_, r) =>
        Array.from({ length: columns }, (__, c) => cells[row - 1 + r]?.[column - 1 + c] ?? ""),
      );
    },
    write(row: number, column: number, values: readonly (readonly PlainCell[])[]) {
      written.push(`${row},${column} ${values.length}x${values[0]?.length}`);
      if (given.deaf) return;
      values.forEach((line, r) => {
        line.forEach((cell, c) => {
          (cells[row - 1 + r] as unknown[])[column - 1 + c] = cell ?? "";
        });
      });
    },
  };
  const marks = (which: (text: string) => boolean) =>
    (given.marks?.(count.marks++) ?? []).filter(({ text }) => which(text));
  const workbook = { dayOf: () => null, tabs: () => [tab], marks } as never;
  const book = openBook(workbook, [SPEC.name]);
  const log = {
    book,
    spec: SPEC,
    tab,
    values: before,
    columns: findColumns(book, SPEC, tab as never, before[0] ?? []),
  };
  return { log: log as unknown as Log, cells, written, count };
}

const mark = (heading: string, column: number, tabId = 1): Mark => ({
  tabId,
  column,
  text: `column:Care log/${heading}`,
});

describe("marks hold", () => {
  const renamed: Row = ["Id", "Wer", "Note", "Mine"];
  const then = [mark("Plant", 2), mark("Note", 3), mark("Id", 1, 2)];
  const hold = (now: readonly Mark[], head: Row = renamed) =>
    marksHold(tabOf([head, A], [head, A], { marks: (time) => (time === 0 ? then : now) }).log);

  test("when each is where it was, in whatever order they come, and whatever those of other tabs do", () => {
    expect(hold(then)).toBe(true);
    expect(hold([mark("Id", 7, 2), mark("Note", 3), mark("Plant", 2)])).toBe(true);
  });

  test("not when one of them moved or is gone", () => {
    expect(hold([mark("Plant", 3), mark("Note", 3)])).toBe(false);
    expect(hold([mark("Plant", 2)])).toBe(false);
    expect(hold([])).toBe(false);
  });

  test("without a call where each column bears a heading of its own", () => {
    const { log, count } = tabOf([HEAD, A], [HEAD, A]);
    const { marks } = count;
    expect(marksHold(log)).toBe(true);
    expect(count.marks).toBe(marks);
  });
});

describe("what landed beside its columns", () => {
  const head: Row = ["", ...HEAD];
  const moved = [head, ["", ...A], ["", ...B]];

  test("is put there in one write for each row, from the top, and what it left is cleared", () => {
    const tab = tabOf([HEAD, A, B], [...moved, ["new-1", "Palm", "new", "", ""], ["new-2", "Lime", "newer", "", ""]]);
    expect(settle(tab.log, appended(4, PALM, LIME))).toEqual([]);
    expect(tab.cells.slice(3)).toEqual([
      ["", "new-1", "Palm", "new", ""],
      ["", "new-2", "Lime", "newer", ""],
    ]);
    expect(tab.written).toEqual(["4,1 1x4", "5,1 1x4"]);
  });

  test("is found by its marks where a heading was deleted, and read again when they moved meanwhile", () => {
    const deleted: Row = ["", "Id", "", "Note", "Mine"];
    const rows = [deleted, ["", ...A], ["", ...B], ["new-1", "Palm", "new", "", ""]];
    const tab = tabOf([HEAD, A, B], rows, { marks: (time) => [mark("Plant", time < 2 ? 2 : 3)] });
    expect(settle(tab.log, appended(4, PALM))).toEqual([]);
    expect(tab.cells[3]).toEqual(["", "new-1", "Palm", "new", ""]);
    // The first reading was between two places of the mark; then once more, and once to see that all is right.
    expect(tab.count.whole).toBe(3);
  });

  test("is put right as well when the marks come in another order each time", () => {
    const two = [mark("Id", 2), mark("Plant", 3)];
    const tab = tabOf([HEAD, A, B], [...moved, ["new-1", "Palm", "new", "", ""]], {
      marks: (time) => (time % 2 === 0 ? two : [...two].reverse()),
    });
    expect(settle(tab.log, appended(4, PALM))).toEqual([]);
    expect(tab.count.whole).toBe(2);
  });
});

test("cells of different rows are written apart, though their columns follow each other", () => {
  const now = [HEAD, ["a-1", "filled", "one", "x"], ["b-1", "Ivy", "filled", "y"], C];
  const tab = tabOf([HEAD, A, B, C], now);
  expect(settle(tab.log, FILLED)).toEqual([]);
  expect(tab.cells).toEqual([HEAD, A, B, ["c-1", "Moss", "filled", "z"]]);
  expect(tab.written).toEqual(["2,2 1x1", "3,3 1x1", "4,3 1x1"]);
});

test("a row that moved on before it could be put right is left to the next round, and no other is hit", () => {
  const once = { 1: ["3,2", "4,3", "5,3"], 2: ["2,2", "4,3", "5,3"], 3: ["2,2", "3,3", "5,3"] } as const;
  for (const when of [1, 2, 3] as const) {
    const now = [HEAD, ["a-1", "filled", "one", "x"], ["b-1", "Ivy", "filled", "y"], C];
    const tab = tabOf([HEAD, A, B, C], now, {
      onLook: (cells, time) => {
        if (time === when) cells.splice(1, 0, ["", "", "", "x"]);
      },
    });
    expect(settle(tab.log, FILLED)).toEqual([]);
    expect(tab.cells.filter((row) => row[0] !== "")).toEqual([HEAD, A, B, ["c-1", "Moss", "filled", "z"]]);
    expect(tab.cells).toContainEqual(["", "", "", "x"]);
    expect(tab.written.map((block) => block.split(" ")[0])).toEqual(once[when]);
  }
});

test("of two new rows the one that is not whole is put right, though the other is", () => {
  const tab = tabOf([HEAD, A], [HEAD, A, ["new-1", "Palm", "new", ""], ["new-2", "", "newer", ""]]);
  expect(settle(tab.log, appended(3, PALM, LIME))).toEqual([]);
  expect(tab.cells.slice(2)).toEqual([
    ["new-1", "Palm", "new", ""],
    ["new-2", "Lime", "newer", ""],
  ]);
});

test("a row is free no more when somebody typed beside our columns in it, but may be when they did so above", () => {
  const free = (mine: readonly string[]) => {
    const now = [HEAD, A, ["b-1", "Ivy", "two", mine[0]], ["", "", "", mine[1]], ["", "", "", mine[2]]];
    return stillFree(tabOf([HEAD, A, ["b-1", "Ivy", "two", ""]], now).log, 4, 2);
  };
  expect(free(["", "", ""])).toBe(true);
  expect(free(["typed", "", ""])).toBe(true);
  expect(free(["", "typed", ""])).toBe(false);
  expect(free(["", "", "typed"])).toBe(false);
});

describe("refused", () => {
  test("is a row to be filled that is gone", () => {
    const tab = tabOf([HEAD, A, B, C], [HEAD, A, B, ["d-1", "Reed", "four", "w"]]);
    expect(refusal(() => settle(tab.log, FILLED))).toMatch(/“Care log” was being rearranged/);
    expect(tab.written).toEqual([]);
  });

  test("is what cannot be put right, and marks that never stand still", () => {
    const deaf = tabOf([HEAD, A, B, C], [HEAD, A, B, C], { deaf: true });
    expect(refusal(() => settle(deaf.log, FILLED))).toMatch(/was being rearranged/);
    const restless = tabOf([HEAD, A, B, C], [HEAD, A, B, C], { marks: (time) => [mark("Note", time + 1)] });
    expect(refusal(() => settle(restless.log, FILLED))).toMatch(/was being rearranged/);
  });
});

test("what was written to a tab that somebody emptied just then has to be appended again", () => {
  const tab = tabOf([HEAD, A, B], []);
  expect(settle(tab.log, appended(4, PALM))).toEqual([PALM]);
  expect(tab.written).toEqual([]);
});
