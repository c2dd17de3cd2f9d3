/** What stands in the way of an append: refused with a sentence that says what to do, and nothing written. */

import { describe, expect, test } from "vitest";
import { batch, careEntry, openTestBook, readyBook, type TestBook } from "./workbook.ts";

type Entry = ReturnType<typeof careEntry>;
const care = (entries: Entry[]) => ({ ask: "log care" as const, who: "Ana", entries });
const plantsOf = (book: TestBook) =>
  book
    .values("Care log")
    .slice(1)
    .map((row) => row[2]);

describe("in the way", () => {
  test("merged cells are refused with their name, and nothing is written", () => {
    const merges = [{ row: 2, column: 3, rows: 3, columns: 2 }];
    const book = openTestBook({ tabs: { "Care log": { cells: [["Id", "Date", "Plant", "Event"]], merges } } });
    book.setUp();
    const { code, sentence } = book.refusal(care([careEntry()]));
    expect(code).toBe("merged");
    expect(sentence).toBe(
      "The cells C2:D4 of “Care log” are merged, just where something has to be written. Unmerge them, then try again; nothing was written.",
    );
    expect(book.values("Care log")).toHaveLength(1);
  });

  test("a formula filled ahead in a column of ours stays when there is nothing to write over it", () => {
    const book = readyBook();
    const formula = { value: "", formula: '=IF(A2="","",1)' };
    book.grid.tab("Care log").write(2, 11, [[formula], [formula]]);
    book.reply(care([careEntry()]));
    expect(book.grid.tab("Care log").read({ row: 2, column: 11, rows: 1, columns: 1 })[0]?.[0]?.formula).toBe(
      formula.formula,
    );
    expect(book.cell("Care log", 2, "Plant")).toBe("Monstera");
  });

  test("the same formula is named when something belongs there", () => {
    const book = readyBook();
    book.grid.tab("Care log").write(2, 11, [[{ value: "", formula: '=IF(A2="","",1)' }]]);
    const { code, sentence } = book.refusal(care([careEntry({ note: "hello" })]));
    expect(code).toBe("formula-in-the-way");
    expect(sentence).toMatch(/Cell K2 of “Care log” holds a formula where the next “Note” belongs/);
    expect(plantsOf(book).filter((plant) => plant !== null)).toEqual([]);
  });

  test("a column of ours that its heading computes is named when something belongs there", () => {
    const book = readyBook();
    book.grid.tab("Batch log").write(1, 8, [[{ value: "N", formula: '={"N";1}' }]]);
    const { code, sentence } = book.refusal({ ask: "log batch", who: "", batch: batch() });
    expect(code).toBe("column-computed");
    expect(sentence).toMatch(/Column H \(“N”\) of “Batch log” is filled by the formula in its heading/);
    expect(book.values("Batch log")).toHaveLength(1);
  });

  test("a rule that rejects is quoted, and nothing is written", () => {
    const book = readyBook();
    const rule = { kind: "list" as const, values: ["Repot"], allowInvalid: false, help: "" };
    book.grid.tab("Care log").setValidation({ row: 2, column: 4, rows: 900, columns: 1 }, rule);
    expect(book.refusal(care([careEntry()])).sentence).toMatch(/It said: “The data you entered in cell D2 violates/);
    expect(book.values("Care log")).toHaveLength(1);
  });

  test("somebody else's lock is waited for, then told", () => {
    const book = readyBook();
    book.host.locks.elsewhere = true;
    expect(book.refusal(care([careEntry()]))).toEqual({
      code: "busy",
      sentence:
        "Somebody else was writing to this spreadsheet for 10 seconds, so nothing was written. Try again in a moment; what you typed is still here.",
    });
    expect(book.values("Care log")).toHaveLength(1);
  });

  test("a deleted tab says how to get it back", () => {
    const book = readyBook();
    book.grid.removeTab(book.grid.tab("Care log").id);
    expect(book.refusal(care([careEntry()]))).toEqual({
      code: "no-tab",
      sentence:
        "There is no tab “Care log”. Choose “Set up tabs” from the Stillroot menu: it adds what is missing and leaves all else as it is.",
    });
  });

  test("a deleted column is named when something belongs there, and not missed otherwise", () => {
    const book = readyBook();
    book.grid.tab("Care log").deleteColumns(11, 1);
    expect(book.reply(care([careEntry()])).written).toBe(1);
    expect(book.refusal(care([careEntry({ note: "hello" })])).sentence).toMatch(/“Care log” has no column “Note”/);
    expect(plantsOf(book)).toHaveLength(1);
  });

  test("the sheet is flushed before the lock is released", () => {
    const book = readyBook();
    book.reply(care([careEntry()]));
    expect(book.host.warnings).toEqual([]);
    expect(book.calls[book.calls.length - 1]).toBe("SpreadsheetApp.flush");
  });
});
