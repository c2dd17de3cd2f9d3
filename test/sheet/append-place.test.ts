/** Where new rows go, what is written there, and when rows of an earlier try are finished. */

import { describe, expect, test } from "vitest";
import { appendTo, halfThere, type Log, type SheetRecord } from "../../src/sheet/append.ts";
import { findColumns } from "../../src/sheet/find.ts";
import type { Block, Mark, PlainCell } from "../../src/sheet/port.ts";
import type { TabSpec } from "../../src/sheet/spec.ts";
import { refusal } from "../core/refusal.ts";

/** Ours but Mine; Top and Sum are filled by the formulas in their headings. */
const HEAD = ["Top", "Date", "Plant", "Mine", "Note", "Id", "Who", "Sum"];
const SPEC = {
  name: "Care log",
  key: "Id",
  alsoKeys: ["Date", "Plant"],
  help: "",
  columns: HEAD.filter((heading) => heading !== "Mine").map((heading) => ({ heading, kind: "text", help: "" })),
} as unknown as TabSpec;

interface Options {
  /** Cells that show what their formula gives, as "row,column". */
  readonly formulas?: readonly string[];
  readonly head?: readonly string[];
  readonly marks?: readonly Mark[];
  /** Whether the look before the write finds the row taken, the first time, the second, … */
  readonly taken?: (look: number) => boolean;
}

function tabOf(rows: readonly (readonly unknown[])[], given: Options = {}) {
  const head = given.head ?? HEAD;
  const cells: unknown[][] = [[...head], ...rows.map((row) => [...row])];
  const written: string[] = [];
  let looks = 0;
  let formulasRead = 0;
  const shown = (row: number, column: number): unknown => cells[row - 1]?.[column - 1] ?? "";
  const isFormula = (row: number, column: number) =>
    (row === 1 && ["Top", "Sum"].includes(head[column - 1] ?? "")) ||
    (given.formulas ?? []).includes(`${row},${column}`);
  const each = <Cell>({ row, column, rows: high, columns: wide }: Block, of: (row: number, column: number) => Cell) =>
    Array.from({ length: high }, (_, r) => Array.from({ length: wide }, (__, c) => of(row + r, column + c)));
  const copy = () => cells.map((row) => head.map((_, at) => row[at] ?? ""));
  const tab = {
    id: 1,
    name: "Care log",
    readAll: copy,
    readColumns: copy,
    readFormulas(block: Block) {
      formulasRead++;
      return each(block, (row, column) => (isFormula(row, column) ? "=1" : ""));
    },
    readBlock(block: Block) {
      const look = written.length === 0 ? ++looks : 0;
      const isTaken = look > 0 && given.taken?.(look) === true;
      return each(block, (row, column) => (isTaken && row > 1 && column === 2 ? "somebody" : shown(row, column)));
    },
    mergedIn: () => [],
    write(row: number, column: number, values: readonly (readonly PlainCell[])[]) {
      written.push(`${row},${column} ${values.length}x${values[0]?.length}`);
      values.forEach((line, r) => {
        line.forEach((cell, c) => {
          const at = row - 1 + r;
          while (cells.length <= at) cells.push([]);
          (cells[at] as unknown[])[column - 1 + c] = cell ?? "";
        });
      });
    },
  };
  const workbook = {
    dayOf: () => null,
    today: () => 0,
    tabs: () => [tab],
    marks: (which: (text: string) => boolean) => (given.marks ?? []).filter(({ text }) => which(text)),
  };
  const book = { workbook, tabs: [tab], marks: given.marks ?? [] } as unknown as Log["book"];
  const values = copy();
  const log = { book, spec: SPEC, tab, values, columns: findColumns(book, SPEC, tab as never, values[0] ?? []) };
  return { log: log as unknown as Log, written, copy, looks: () => looks, formulasRead: () => formulasRead };
}

const A: SheetRecord = { Id: "a-1", Date: "1 May", Plant: "Fern", Note: "wilted", Who: "Ana" };
const B: SheetRecord = { Id: "b-1", Date: "2 May", Plant: "Ivy", Note: "fine", Who: "Ben" };
const row = (date: string, plant: string, note = "", id = "", who = "") => ["t", date, plant, "m", note, id, who, "s"];
const OLD = row("1 April", "Moss", "", "old-1", "Ana");
/** What is not ours is filled in ahead, as tick boxes are. */
const AHEAD = [row("", ""), row("", ""), row("", "")];

describe("rows of an earlier try that got no further than its first block", () => {
  const [halfA, halfB] = [row("1 May", "Fern"), row("2 May", "Ivy")];

  test.each<[what: string, rows: unknown[][], there: boolean]>([
    ["below others", [OLD, halfA, halfB], true],
    ["right below the headings", [halfA, halfB], true],
    ["with a cell that is still blank", [OLD, row("1 May", ""), halfB], true],
    ["not there", [OLD], false],
    ["further up, with others below", [halfA, halfB, OLD, row("3 April", "Reed", "", "old-2", "Ana")], false],
    ["one alone", [OLD, halfB], false],
    ["with another date in the first", [OLD, row("3 May", "Fern"), halfB], false],
    ["with another plant in the first", [OLD, row("1 May", "Reed"), halfB], false],
    ["with another plant in the last", [OLD, halfA, row("2 May", "Reed")], false],
    ["the first of them blank", [OLD, row("", ""), halfB], false],
    ["with the first cell of the last block filled", [OLD, halfA, row("2 May", "Ivy", "fine")], false],
    ["with the last cell of the last block filled", [OLD, halfA, row("2 May", "Ivy", "", "", "Ben")], false],
    ["with Ids of their own", [OLD, row("1 May", "Fern", "", "x-1"), row("2 May", "Ivy", "", "x-2")], false],
  ])("%s", (_, rows, there) => {
    expect(halfThere(tabOf([...rows, ...AHEAD]).log, [A, B])).toBe(there);
  });

  test("are none where there is nothing to write", () => {
    expect(halfThere(tabOf([OLD, halfA, ...AHEAD]).log, [])).toBe(false);
    // Not even where the Ids are filled by a formula in their heading.
    const { log } = tabOf([OLD]);
    const tab = { ...log.tab, readFormulas: () => [HEAD.map(() => "=X(1)")] };
    expect(halfThere({ ...log, tab }, [])).toBe(false);
  });

  test("may reach below the last row that was read, where records have nothing for the first block", () => {
    const [second, third]: SheetRecord[] = [
      { Id: "b-1", Who: "Ben" },
      { Id: "c-1", Who: "Ben" },
    ];
    const tab = tabOf([halfA, row("", "")]);
    expect(halfThere(tab.log, [A, second as SheetRecord, third as SheetRecord])).toBe(true);
  });

  test("are finished where they stand", () => {
    const tab = tabOf([OLD, halfA, halfB, ...AHEAD]);
    expect(appendTo(tab.log, [A, B])).toEqual({ written: 2, already: 0, differing: [] });
    expect(tab.copy().slice(1)).toEqual([
      OLD,
      row("1 May", "Fern", "wilted", "a-1", "Ana"),
      row("2 May", "Ivy", "fine", "b-1", "Ben"),
      ...AHEAD,
    ]);
  });
});

describe("new rows", () => {
  test("go below the last one, in blocks around what is not ours and what headings compute, the Id last", () => {
    const tab = tabOf([OLD, ...AHEAD]);
    appendTo(tab.log, [A, B]);
    expect(tab.written).toEqual(["3,2 2x2", "3,5 2x3"]);
    expect(tab.copy()[2]).toEqual(row("1 May", "Fern", "wilted", "a-1", "Ana"));
  });

  test("go below a row of which only a formula in one of its keys shows something", () => {
    const tab = tabOf([OLD, row("", "Reed")], { formulas: ["3,3"] });
    appendTo(tab.log, [A]);
    expect(tab.copy().map((cells) => cells[5])).toEqual(["Id", "old-1", "", "a-1"]);
  });

  test("go above formulas filled in ahead, whatever they show, and leave them", () => {
    const ahead = Array.from({ length: 4 }, () => row("", "", "shown"));
    const tab = tabOf([OLD, ...ahead], { formulas: [3, 4, 5, 6].map((at) => `${at},5`) });
    const { Note: _, ...noted } = A;
    appendTo(tab.log, [noted]);
    expect(tab.copy()[2]).toEqual(row("1 May", "Fern", "shown", "a-1", "Ana"));
  });

  test("go below what somebody typed beside such formulas", () => {
    const tab = tabOf([OLD, row("", "", "shown"), row("", "", "shown", "", "Cleo")], { formulas: ["3,5", "4,5"] });
    const { Note: _, ...noted } = A;
    appendTo(tab.log, [noted]);
    expect(tab.copy().map((cells) => cells[5])).toEqual(["Id", "old-1", "", "", "a-1"]);
  });

  test("that are there already cost no look at all", () => {
    const tab = tabOf([row("1 May", "Fern", "wilted", "a-1", "Ana")]);
    expect(appendTo(tab.log, [A])).toEqual({ written: 0, already: 1, differing: [] });
    expect([tab.looks(), tab.formulasRead()]).toEqual([0, 0]);
  });

  test("whose Id stands there twice are held against the first", () => {
    const tab = tabOf([row("1 May", "Fern", "wilted", "a-1", "Ana"), row("1 May", "Reed", "wilted", "a-1", "Ana")]);
    expect(appendTo(tab.log, [A]).differing).toEqual([]);
  });

  test("need a column as soon as one of them has something for it", () => {
    const head = HEAD.map((heading) => (heading === "Note" ? "Mine too" : heading));
    const { Note: _, ...noted } = A;
    const refused = refusal(() => appendTo(tabOf([OLD], { head }).log, [noted, B]));
    expect(refused).toMatch(/no column “Note”/);
  });
});

describe("a row taken at the last look", () => {
  const renamed = { head: HEAD.map((heading) => (heading === "Plant" ? "Wer" : heading)) };
  const marks: Mark[] = [{ tabId: 1, column: 3, text: "column:Care log/Plant" }];

  test("is looked for anew, by marks as well", () => {
    const tab = tabOf([OLD], { ...renamed, marks, taken: (look) => look === 1 });
    expect(appendTo(tab.log, [A]).written).toBe(1);
    expect(tab.copy()[2]?.slice(1, 3)).toEqual(["1 May", "Fern"]);
    expect(tab.looks()).toBe(2);
  });

  test("again and again is refused in the end, with nothing written", () => {
    const tab = tabOf([OLD], { taken: () => true });
    expect(refusal(() => appendTo(tab.log, [A]))).toMatch(/was being rearranged/);
    expect(tab.written).toEqual([]);
    expect(tab.looks()).toBe(4);
  });
});
