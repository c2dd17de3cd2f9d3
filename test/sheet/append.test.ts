/** Appending: below the last filled row, once, in one write, and never over what is not ours. */

import { describe, expect, test } from "vitest";
import type { CellChange, CellValue } from "../../sample-sheet/workbench/standin/grid.ts";
import { careEntry, dateCell, openTestBook, readyBook, serialOf, type TestBook } from "./workbook.ts";

type Entry = ReturnType<typeof careEntry>;
const care = (entries: Entry[]) => ({ ask: "log care" as const, who: "Ana", entries });
const plantsOf = (book: TestBook, tab = "Care log") => {
  const [headings, ...rows] = book.values(tab);
  const at = headings?.indexOf("Plant") ?? -1;
  return rows.map((row) => row[at]);
};
const writes = (book: TestBook) => book.calls.filter((name) => name === "Range.setValues").length;

describe("a row", () => {
  test("holds every value under its heading", () => {
    const book = readyBook();
    const entry = careEntry({ solution: "Batch 7", ecMsCm: 1.4, pH: 5.9, reason: "rot", note: "smelled" });
    expect(book.reply(care([entry]))).toEqual({ written: 1, already: 0, differing: [] });
    const [headings, row] = book.values("Care log");
    const fields = Object.fromEntries((headings ?? []).map((heading, index) => [heading, row?.[index]]));
    expect(fields).toEqual({
      Id: entry.id,
      Date: serialOf("2026-03-10"),
      Plant: "Monstera",
      Event: "Top up",
      "Amount mL": 250,
      Solution: "Batch 7",
      EC: 1.4,
      pH: 5.9,
      Who: "Ana",
      Reason: "rot",
      Note: "smelled",
      Corrects: null,
    });
  });

  test("of many comes in one write, in the order sent", () => {
    const book = readyBook();
    const names = Array.from({ length: 40 }, (_, index) => `Plant ${index}`);
    expect(book.reply(care(names.map((plant) => careEntry({ plant })))).written).toBe(40);
    expect(writes(book)).toBe(1);
    expect(plantsOf(book)).toEqual(names);
  });

  test("goes below the last filled one of a 5,000-row log with 200 blank rows in the middle", () => {
    const cells: CellValue[][] = [["Id", "Date", "Plant", "Event"]];
    for (let index = 1; index <= 5000; index++) {
      const blank = index > 2400 && index <= 2600;
      cells.push(blank ? [null, null, null, null] : [`row-${index}`, 46_000, `P${index}`, "Top up"]);
    }
    const book = openTestBook({ tabs: { "Care log": { cells, rows: 5600 } } });
    book.setUp();
    book.reply(care([careEntry({ plant: "Last" })]));
    expect(book.cell("Care log", 5002, "Plant")).toBe("Last");
    expect(book.cell("Care log", 2500, "Plant")).toBeNull();
    expect(book.values("Care log")).toHaveLength(5002);
  });

  test("makes the grid grow when it is full", () => {
    const book = openTestBook({ tabs: { "Care log": { cells: [["Id", "Date", "Plant", "Event"]], rows: 2 } } });
    book.setUp();
    for (let index = 0; index < 4; index++) book.reply(care([careEntry({ plant: `P${index}` })]));
    expect(plantsOf(book)).toEqual(["P0", "P1", "P2", "P3"]);
  });

  test("goes below rows typed by hand without an Id", () => {
    const book = readyBook();
    book.grid.tab("Care log").write(2, 2, [[dateCell("2026-03-01"), { value: "Hoya" }, { value: "Repot" }]]);
    book.reply(care([careEntry({ plant: "Fern" })]));
    expect(plantsOf(book)).toEqual(["Hoya", "Fern"]);
  });

  test("goes below a remark typed by hand in a column of ours", () => {
    const book = readyBook();
    book.grid.tab("Care log").write(4, 11, [[{ value: "buy clay" }]]);
    book.reply(care([careEntry({ plant: "Fern" })]));
    expect(book.cell("Care log", 4, "Note")).toBe("buy clay");
    expect(book.cell("Care log", 5, "Plant")).toBe("Fern");
  });

  test("is a date cell at midnight of the spreadsheet's zone, wherever the script runs", () => {
    for (const [zone, scriptZone] of [
      ["Pacific/Auckland", "America/Los_Angeles"],
      ["America/Sao_Paulo", "Asia/Tokyo"],
    ] as const) {
      const book = readyBook({ zone, scriptZone });
      book.reply(care([careEntry({ day: "2026-03-29" })]));
      expect(book.cell("Care log", 2, "Date")).toBe(serialOf("2026-03-29"));
    }
  });
});

describe("the same press twice", () => {
  test("is written once, for one and for many", () => {
    const book = readyBook();
    const entries = [careEntry({ plant: "A" }), careEntry({ plant: "B" })];
    book.reply(care(entries));
    expect(book.reply(care(entries))).toEqual({ written: 0, already: 2, differing: [] });
    expect(book.reply(care([...entries, careEntry({ plant: "C" })]))).toEqual({
      written: 1,
      already: 2,
      differing: [],
    });
    expect(plantsOf(book)).toEqual(["A", "B", "C"]);
  });

  test("is written once although rows were sorted and columns moved in between", () => {
    const book = readyBook();
    const entries = [careEntry({ plant: "B" }), careEntry({ plant: "A" })];
    book.reply(care(entries));
    const tab = book.grid.tab("Care log");
    tab.sortRows({ row: 2, column: 1, rows: 999, columns: 11 }, 3, true);
    tab.moveColumn(1, 8);
    expect(book.reply(care(entries)).already).toBe(2);
    expect(plantsOf(book)).toEqual(["A", "B"]);
  });

  test("is written once when the answer of the first was lost after the write", () => {
    let lose = false;
    const book = readyBook({
      afterCall: (name) => {
        if (lose && name === "Range.setValues") throw new Error("Service Spreadsheets timed out.");
      },
    });
    lose = true;
    const entries = [careEntry()];
    const { sentence } = book.refusal(care(entries));
    expect(sentence).toContain("Service Spreadsheets timed out.");
    lose = false;
    expect(book.reply(care(entries))).toEqual({ written: 0, already: 1, differing: [] });
    expect(plantsOf(book)).toHaveLength(1);
  });

  test("with one Id twice in a request counts once; two different records under one Id are refused", () => {
    const book = readyBook();
    const entry = careEntry();
    expect(book.reply(care([entry, entry])).written).toBe(1);
    const other = careEntry();
    expect(book.refusal(care([other, { ...other, plant: "Fern" }])).code).toBe("id-twice");
    expect(plantsOf(book)).toHaveLength(1);
  });

  test("with other values leaves the row as it is and says which differ", () => {
    const book = readyBook();
    const entry = careEntry();
    book.reply(care([entry]));
    const answer = book.reply(care([{ ...entry, amountMl: 300, note: "more" }]));
    expect(answer).toMatchObject({ written: 0, already: 1 });
    expect(answer.differing).toEqual([
      "This record is already in row 2 of “Care log”, with another Amount mL, Note. It was left as it is; change it there if it is wrong.",
    ]);
    expect(book.cell("Care log", 2, "Amount mL")).toBe(250);
  });
});

describe("columns that are not ours", () => {
  /** A log with a column "Mine" between Plant and Event. */
  function withForeign(below: readonly (CellChange | null)[], heading: CellChange = { value: "Mine" }): TestBook {
    const book = readyBook();
    const tab = book.grid.tab("Care log");
    tab.insertColumns(4, 1);
    tab.write(1, 4, [[heading], ...below.map((cell) => [cell])]);
    return book;
  }

  test("blank and without formulas are written along, in one write", () => {
    const book = withForeign([]);
    book.reply(care([careEntry()]));
    expect(writes(book)).toBe(1);
    expect(book.cell("Care log", 2, "Event")).toBe("Top up");
    expect(book.cell("Care log", 2, "Mine")).toBeNull();
  });

  test.each<[string, CellChange]>([
    ["text", { value: "keep me" }],
    ["a tick box", { value: false }],
    ["a zero", { value: 0 }],
    ["a formula that shows nothing", { value: "", formula: '=IF(A2="","",1)' }],
    ["an error", { value: { error: "#N/A" }, formula: "=NA()" }],
  ])("filled ahead with %s are left alone", (_, cell) => {
    const book = withForeign([cell, cell]);
    book.reply(care([careEntry(), careEntry()]));
    const [first, second] = book.grid.tab("Care log").read({ row: 2, column: 4, rows: 2, columns: 1 });
    expect(first?.[0]).toMatchObject({ value: cell.value, formula: cell.formula ?? "" });
    expect(second?.[0]).toMatchObject({ value: cell.value, formula: cell.formula ?? "" });
    expect([2, 3].map((row) => book.cell("Care log", row, "Event"))).toEqual(["Top up", "Top up"]);
    expect(writes(book)).toBe(2);
  });

  test("filled by a formula in their heading are left alone", () => {
    const book = withForeign([], { value: "Mine", formula: '={"Mine";A2:A}' });
    book.reply(care([careEntry()]));
    expect(writes(book)).toBe(2);
    expect(book.grid.tab("Care log").read({ row: 1, column: 4, rows: 1, columns: 1 })[0]?.[0]?.formula).toBe(
      '={"Mine";A2:A}',
    );
  });

  test("never hold up a retry: a row written in part has no Id and is finished, not doubled", () => {
    for (const failing of [1, 2]) {
      let left = failing;
      let armed = false;
      const book = readyBook({
        onCall: (name) => {
          if (armed && name === "Range.setValues" && left-- === 1) throw new Error("Service error: Spreadsheets");
        },
      });
      const tab = book.grid.tab("Care log");
      tab.insertColumns(4, 1);
      tab.write(1, 4, [[{ value: "Mine" }], ...Array.from({ length: 9 }, (): CellChange[] => [{ value: false }])]);
      book.reply(care([careEntry({ plant: "Before" })]));
      const entries = [careEntry({ plant: "A" }), careEntry({ plant: "B", note: "second" })];
      armed = true;
      expect(book.refusal(care(entries)).sentence).toContain("Service error: Spreadsheets");
      armed = false;
      expect(
        tab
          .read({ row: 3, column: 1, rows: 2, columns: 1 })
          .flat()
          .every(({ value }) => value === null),
      ).toBe(true);
      expect(book.reply(care(entries))).toEqual({ written: 2, already: 0, differing: [] });
      expect(plantsOf(book).filter((plant) => plant !== null)).toEqual(["Before", "A", "B"]);
      expect(book.cell("Care log", 4, "Note")).toBe("second");
      expect(book.reply(care(entries)).already).toBe(2);
    }
  });
});
