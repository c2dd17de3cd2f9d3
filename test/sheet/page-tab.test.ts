/** The tab of the sitter's page: made over while nobody typed on it, and never written over once somebody did. */

import { describe, expect, test } from "vitest";
import { listMark } from "../../src/sheet/find.ts";
import { readSittersPage, SITTERS_PAGE, writeSittersPage } from "../../src/sheet/page-tab.ts";
import { openTestBook, type TestBook } from "./workbook.ts";

const page = (...cells: (string | number | null)[][]) => ({
  cells,
  widths: [120, 90],
  boldRows: [1],
  wrapped: { from: 1, to: cells.length },
});
const put = (book: TestBook, ...cells: (string | number | null)[][]) =>
  writeSittersPage(book.workbook(), page(...cells));
const tabs = (book: TestBook) => book.grid.tabs().map((tab) => tab.name());

describe("writing the page", () => {
  test("makes a tab with literal texts", () => {
    const book = openTestBook();
    expect(put(book, ["For Mira", null], ["=1+1", 150])).toEqual({ tab: SITTERS_PAGE, kept: null });
    expect(tabs(book)).toEqual(["Sheet1", "Sitter’s page"]);
    expect(book.values(SITTERS_PAGE)).toEqual([
      ["For Mira", null],
      ["=1+1", 150],
    ]);
    expect(book.host.warnings).toEqual([]);
  });

  test("again, it takes the same tab, also after it was renamed and moved, and leaves nothing of a longer page behind", () => {
    const book = openTestBook();
    put(book, ["For Mira", 1], ["a", 2], ["b", 3]);
    book.grid.tab(SITTERS_PAGE).rename("On the fridge");
    expect(put(book, ["For Lou", 4])).toEqual({ tab: "On the fridge", kept: null });
    expect(book.values("On the fridge")).toEqual([["For Lou", 4]]);
    expect(put(book, ["For Lou", 4], ["c", 5]).tab).toBe("On the fridge");
    expect(tabs(book)).toEqual(["Sheet1", "On the fridge"]);
  });

  test("passes over a plant list of one's own whose name ends in a number", () => {
    const list = "Plant list of 2025";
    const book = openTestBook({ tabs: { [list]: { cells: [["Name"]] } } });
    const workbook = book.workbook();
    for (const tab of workbook.tabs()) workbook.setup(tab).mark(null, listMark(list));
    expect(put(book, ["For Mira", null])).toEqual({ tab: SITTERS_PAGE, kept: null });
    expect(tabs(book)).toEqual([list, SITTERS_PAGE]);
  });

  test.each([
    ["a word under Done", 2, 2],
    ["a remark beside the page", 1, 5],
    ["a line below it", 9, 1],
  ])("once somebody typed %s it is kept, and a new one made", (_, row, column) => {
    const book = openTestBook();
    put(book, ["For Mira", null], ["a", null]);
    book.grid.tab(SITTERS_PAGE).write(row, column, [[{ value: "done, M" }]]);
    const before = book.values(SITTERS_PAGE);
    expect(put(book, ["For Lou", null])).toEqual({ tab: `${SITTERS_PAGE} 2`, kept: SITTERS_PAGE });
    expect(book.values(SITTERS_PAGE)).toEqual(before);
    expect(put(book, ["For Kim", null])).toEqual({ tab: `${SITTERS_PAGE} 2`, kept: null });
    expect(readSittersPage(book.workbook())).toEqual({ tab: `${SITTERS_PAGE} 2`, rows: [["For Kim"]] });
  });

  test("a changed or cleared cell counts as typed, too", () => {
    const book = openTestBook();
    put(book, ["For Mira", 100], ["a", 200]);
    book.grid.tab(SITTERS_PAGE).write(2, 2, [[{ value: null }]]);
    expect(put(book, ["For Lou", 1]).kept).toBe(SITTERS_PAGE);
  });

  test("blank cells and rows at the ends of a page are no change", () => {
    const book = openTestBook();
    put(book, ["For Mira", null, null], ["a", 1, null], [null, null, null]);
    book.grid.tab(SITTERS_PAGE).write(5, 4, [[{ value: "" }]]);
    expect(put(book, ["For Lou"])).toEqual({ tab: SITTERS_PAGE, kept: null });
  });

  test("that was cleared whole is made over", () => {
    const book = openTestBook();
    put(book, ["For Mira", 1]);
    book.grid.tab(SITTERS_PAGE).write(1, 1, [[{ value: null }, { value: null }]]);
    expect(put(book, ["For Lou", 2])).toEqual({ tab: SITTERS_PAGE, kept: null });
  });

  test.each([
    ["one letter for another", "Mira", "Mirb"],
    ["letters beyond the first 256", "Миρα", "Миρβ"],
    ["letters that differ in their upper half only", "\u0141a", "\u0241a"],
    ["a text for a number", 12, "12"],
  ])("is kept when somebody typed %s", (_, was, is) => {
    const book = openTestBook();
    put(book, [was, 1]);
    book.grid.tab(SITTERS_PAGE).write(1, 1, [[{ value: is }]]);
    expect(put(book, ["For Lou", 2]).kept).toBe(SITTERS_PAGE);
  });

  test("is the newest of several, whatever order they stand in, and not a column that bears its mark", () => {
    const book = openTestBook();
    for (const name of ["Mira", "Lou", "Kim"]) {
      const { tab } = put(book, [name, 1]);
      book.grid.tab(tab).write(9, 9, [[{ value: "typed" }]]);
    }
    expect(readSittersPage(book.workbook())?.tab).toBe(`${SITTERS_PAGE} 3`);
    const other = book.grid.tab("Sheet1");
    const mark = { id: 99_999, key: "stillroot", visibility: "DOCUMENT" } as const;
    other.putMark({ ...mark, column: 2, value: `made:${SITTERS_PAGE} 7` });
    other.putMark({ ...mark, id: 99_998, column: null, value: "made:Days at rest" });
    expect(readSittersPage(book.workbook())?.tab).toBe(`${SITTERS_PAGE} 3`);
  });

  test("is the one of the highest number, also where an older one stands behind it", () => {
    const book = openTestBook();
    const mark = { column: null, key: "stillroot", visibility: "DOCUMENT" } as const;
    for (const [name, id] of [
      ["Sitter’s page 2", 99_998],
      ["Sitter’s page", 99_999],
    ] as const)
      book.grid.addTab(name, { cells: [[name]] }).putMark({ ...mark, id, value: `made:${name}` });
    expect(readSittersPage(book.workbook())?.tab).toBe("Sitter’s page 2");
  });

  test("that could not be made over is still known for ours, and made over by the next try", () => {
    let fail = false;
    const book = openTestBook({
      onCall: (name) => {
        if (name === "Range.setValues" && fail) throw new Error("Service Spreadsheets failed.");
      },
    });
    put(book, ["For Mira", 1], ["a", 2]);
    fail = true;
    expect(() => put(book, ["For Lou", 4])).toThrow();
    fail = false;
    expect(put(book, ["For Kim", 5])).toEqual({ tab: SITTERS_PAGE, kept: null });
    expect(book.values(SITTERS_PAGE)).toEqual([["For Kim", 5]]);
  });

  test("of a longer page before leaves nothing behind to the right, and its widths are laid out", () => {
    const book = openTestBook();
    put(book, ["For Mira", 1, "x", "y"], ["a", 2, "x", "y"], ["b", 3, "x", "y"]);
    put(book, ["For Lou", 4]);
    expect(book.values(SITTERS_PAGE)).toEqual([["For Lou", 4]]);
  });

  test("a tab of that name of one's own is left alone", () => {
    const book = openTestBook({ tabs: { [SITTERS_PAGE]: { cells: [["mine"]] } } });
    expect(put(book, ["For Mira"])).toEqual({ tab: `${SITTERS_PAGE} 2`, kept: null });
    expect(book.values(SITTERS_PAGE)).toEqual([["mine"]]);
  });

  test("an earlier try that failed half-way leaves no second tab behind", () => {
    for (const failing of [
      "Spreadsheet.insertSheet",
      "Sheet.addDeveloperMetadata",
      "Range.setNote",
      "Range.setValues",
      "Range.setWrap",
    ]) {
      let fail = true;
      const book = openTestBook({
        afterCall: (name) => {
          if (name !== failing || !fail) return;
          fail = false;
          throw new Error("Service Spreadsheets failed.");
        },
      });
      expect(() => put(book, ["For Mira", 1], ["a", 2])).toThrow();
      expect(put(book, ["For Mira", 1], ["a", 2]), failing).toEqual({ tab: SITTERS_PAGE, kept: null });
      expect(tabs(book)).toEqual(["Sheet1", SITTERS_PAGE]);
    }
  });
});

test("without a page there is none to read", () => {
  const book = openTestBook();
  expect(book.reply({ ask: "read sitter page" })).toEqual({ tab: null, rows: [] });
});
