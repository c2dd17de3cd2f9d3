/** Filling cells of a row that stands there: in as few writes as it takes, and never where something is in the way. */

import { describe, expect, test } from "vitest";
import { BadInput } from "../../src/core/errors.ts";
import { type Log, openLog } from "../../src/sheet/append.ts";
import { type Filling, fillRow } from "../../src/sheet/fill-row.ts";
import { openBook } from "../../src/sheet/find.ts";
import { CARE_LOG } from "../../src/sheet/log-tabs.ts";
import { type Options, openTestBook, type TestBook } from "./workbook.ts";

const ROWS = [
  ["care-0001", null, "Hoya", "Top up"],
  ["care-0002", null, "Fern", "Top up"],
];

/** With a log whose columns stand as they were set up: Amount mL is E, Solution F, EC G, pH H, Note K. */
function opened(options: Options & { merges?: object } = {}): { book: TestBook; log: Log } {
  const merges = (options.merges ?? []) as never;
  const cells = [["Id", "Date", "Plant", "Event"], ...ROWS];
  const book = openTestBook({ ...options, tabs: { "Care log": { cells, merges } } });
  book.setUp();
  const log = openLog(openBook(book.workbook(), ["Care log"]), CARE_LOG);
  book.calls.length = 0;
  return { book, log };
}
const filling = (heading: string, value: Filling["value"], log: Log): Filling => ({
  ...{ heading, value, column: log.columns.at.get(heading) ?? 0 },
});
const fill = (log: Log, values: Readonly<Record<string, Filling["value"]>>): void =>
  fillRow(log, {
    ...{ row: 3, id: "care-0002" },
    fillings: Object.entries(values).map(([heading, value]) => filling(heading, value, log)),
  });
const writes = (book: TestBook) => book.calls.filter((name) => name === "Range.setValues").length;

function code(call: () => void): string {
  try {
    call();
  } catch (error) {
    if (error instanceof BadInput) return `${error.code}: ${error.message}`;
    throw error;
  }
  return "not refused";
}

describe("cells of a row", () => {
  test("side by side are filled in one write, in whatever order they come", () => {
    const { book, log } = opened();
    fill(log, { pH: 6, "Amount mL": 80, EC: 1.2, Solution: "=1+1" });
    expect(book.values("Care log")[2]).toEqual([
      "care-0002",
      null,
      "Fern",
      "Top up",
      80,
      "=1+1",
      1.2,
      6,
      null,
      null,
      null,
      null,
    ]);
    expect(book.values("Care log")[1]?.slice(4)).toEqual(Array(8).fill(null));
    expect(writes(book)).toBe(1);
    // A look just before, and one just after, which finds nothing to put right.
    expect(book.calls.filter((name) => name === "Range.getValues")).toHaveLength(2);
  });

  test("apart are filled one by one, and what stands between them stays", () => {
    const { book, log } = opened();
    book.grid.tab("Care log").write(3, 6, [[{ value: "", formula: '=IF(A3="","",B3)' }]]);
    fill(log, { EC: 1.2, "Amount mL": 80 });
    expect([book.cell("Care log", 3, "Amount mL"), book.cell("Care log", 3, "EC")]).toEqual([80, 1.2]);
    expect(book.grid.tab("Care log").read({ row: 3, column: 6, rows: 1, columns: 1 })[0]?.[0]?.formula).toMatch(/^=IF/);
    expect(writes(book)).toBe(2);
    expect(book.calls.filter((name) => name === "Range.getValues")).toHaveLength(2);
  });

  test("are none when there is nothing to fill, and no call is made", () => {
    const { book, log } = opened();
    fill(log, {});
    expect(book.calls).toEqual([]);
  });
});

describe("refused, with nothing written:", () => {
  test("where a formula stands, which is named with its cell", () => {
    const { book, log } = opened();
    book.grid.tab("Care log").write(3, 7, [[{ value: "", formula: '=""' }]]);
    const said = code(() => fill(log, { EC: 1.2, "Amount mL": 80 }));
    expect(said).toMatch(/^formula-in-the-way: Cell G3 of “Care log” holds a formula where “EC” belongs/);
    expect(writes(book)).toBe(0);
  });

  test.each([
    ["over the cell", { row: 3, column: 7, rows: 1, columns: 2 }, "G3:H3"],
    ["that ends in the cell", { row: 2, column: 6, rows: 2, columns: 2 }, "F2:G3"],
    ["that begins in the other cell", { row: 3, column: 5, rows: 2, columns: 1 }, "E3:E4"],
  ])("a merged block %s", (_, merged, name) => {
    const { book, log } = opened({ merges: [merged] });
    expect(code(() => fill(log, { EC: 1.2, "Amount mL": 80 }))).toMatch(
      new RegExp(`^merged: The cells ${name} of “Care log”`),
    );
    expect(writes(book)).toBe(0);
  });

  test("a row in which somebody typed since it was read, or that has moved", () => {
    for (const column of [3, 7]) {
      const { book, log } = opened();
      book.grid.tab("Care log").write(3, column, [[{ value: "typed" }]]);
      expect(code(() => fill(log, { EC: 1.2 }))).toMatch(/^moved: “Care log”/);
      expect(writes(book)).toBe(0);
    }
    const { book, log } = opened();
    book.grid.tab("Care log").insertRows(2, 1);
    expect(code(() => fill(log, { EC: 1.2 }))).toMatch(/^moved: /);
    expect(writes(book)).toBe(0);
  });

  test("a tab whose renamed column has moved since", () => {
    const { book } = opened();
    const tab = book.grid.tab("Care log");
    tab.write(1, 7, [[{ value: "Strength" }]]);
    const log = openLog(openBook(book.workbook(), ["Care log"]), CARE_LOG);
    tab.insertColumns(13, 1);
    fill(log, { EC: 1.2 });
    expect(book.cell("Care log", 3, "Strength")).toBe(1.2);
    const again = openLog(openBook(book.workbook(), ["Care log"]), CARE_LOG);
    tab.moveColumn(7, 8);
    tab.write(1, 7, [[{ value: "Strength" }, { value: "pH" }]]);
    book.calls.length = 0;
    expect(code(() => fill(again, { "Amount mL": 80 }))).toMatch(/^moved: /);
    expect(writes(book)).toBe(0);
  });
});

test("merged cells beside those to be filled are in nobody's way", () => {
  const beside = [
    { row: 3, column: 6, rows: 1, columns: 1 },
    { row: 3, column: 8, rows: 1, columns: 2 },
    { row: 2, column: 7, rows: 1, columns: 1 },
  ];
  const { book, log } = opened({ merges: beside });
  fill(log, { EC: 1.2, "Amount mL": 80 });
  expect([book.cell("Care log", 3, "Amount mL"), book.cell("Care log", 3, "EC")]).toEqual([80, 1.2]);
});
