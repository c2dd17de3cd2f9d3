/** On hand as a formula: ranges where the columns are now, written once, mended when broken, never over what somebody typed. */

import { describe, expect, test } from "vitest";
import type { CellChange } from "../../sample-sheet/workbench/standin/grid.ts";
import { readyBook, type TestBook } from "./workbook.ts";

const SHOW = { ask: "show on hand" } as const;
const at = (book: TestBook): number => (book.values("Feeds")[0] ?? []).indexOf("On hand") + 1;
const cell = (book: TestBook, column: number, row = 1) =>
  book.grid.tab("Feeds").read({ row, column, rows: 1, columns: 1 })[0]?.[0];
const put = (book: TestBook, row: number, change: CellChange) =>
  book.grid.tab("Feeds").write(row, at(book), [[change]]);

test("is given the columns and tabs where they stand now, and today from Settings", () => {
  const book = readyBook();
  book.grid.tab("Purchases").rename("Mia's bills");
  book.grid.tab("Feeds").moveColumn(1, 3);
  const column = at(book);
  expect(book.reply(SHOW).sentence).toMatch(/^Column [A-Z]+ \(“On hand”\) of “Feeds” now counts/);
  const row = book.values("Settings").findIndex(([name]) => name === "Today") + 1;
  expect(cell(book, column)?.formula).toMatch(
    new RegExp(
      `^=FEED_LEFT\\('Feeds'!C1:C, 'Mia''s bills'!A1:J, 'Batch log'!A1:[A-Z]+, 'Settings'!\\$B\\$${row}, 'Feeds'!([A-Z]+)1:\\1, 'Feeds'!([A-Z]+)1:\\2, "On hand"\\)$`,
    ),
  );
});

test("finds Settings by its marks, and does without a unit or a density", () => {
  const book = readyBook();
  book.grid.tab("Settings").write(1, 1, [[{ value: "What" }, { value: "How" }]]);
  book.grid.tab("Settings").rename("Agreed");
  const unit = (book.values("Feeds")[0] ?? []).indexOf("Unit") + 1;
  book.grid.tab("Feeds").deleteColumns(unit, 1);
  const column = at(book);
  book.reply(SHOW);
  expect(cell(book, column)?.formula).toMatch(/, 'Agreed'!\$B\$\d+, , 'Feeds'!([A-Z]+)1:\1, "On hand"\)$/);
});

test("knows its formula by the name of the function, however it is spaced", () => {
  const book = readyBook();
  put(book, 1, { value: "On hand", formula: "=feed_left (A1:A)" });
  expect(book.reply(SHOW).sentence).toContain("counts what is on hand already");
  put(book, 1, { value: "On hand", formula: "=FEED_LEFTOVER(A1:A)" });
  expect(book.refusal(SHOW).code).toBe("on-hand-taken");
});

test("is left alone once it is there, and written anew when it lost a range", () => {
  const book = readyBook();
  const column = at(book);
  book.reply(SHOW);
  const formula = cell(book, column)?.formula;
  expect(book.reply(SHOW).sentence).toContain("counts what is on hand already");
  book.grid
    .tab("Feeds")
    .write(1, column, [[{ value: "On hand", formula: "=FEED_LEFT(A1:A, #REF!, 'Batch log'!A1:C)" }]]);
  expect(book.reply(SHOW).sentence).toContain("now counts");
  expect(cell(book, column)?.formula).toBe(formula);
});

describe("refused, with nothing written:", () => {
  test.each<[string, number, CellChange, RegExp]>([
    ["a number typed by hand", 3, { value: 640 }, /holds something in row 3\. Log those amounts as purchases/],
    ["a formula of somebody's in the heading", 1, { value: "On hand", formula: "=B1" }, /has a formula of its own/],
  ])("%s", (_, row, change, words) => {
    const book = readyBook();
    put(book, row, change);
    const column = at(book);
    expect(book.refusal(SHOW).sentence).toMatch(words);
    expect(cell(book, column, row)).toMatchObject(change);
    if (row > 1) expect(cell(book, column)?.formula).toBe("");
  });

  test("many numbers are named by a few of their rows", () => {
    const book = readyBook();
    for (let row = 2; row < 10; row++) put(book, row, { value: row });
    expect(book.refusal(SHOW).sentence).toContain("rows 2, 3, 4, 5, 6 and 3 more.");
    for (let row = 7; row < 10; row++) put(book, row, { value: null });
    expect(book.refusal(SHOW).sentence).toContain("rows 2, 3, 4, 5 and 6.");
  });

  test("a workbook without Purchases", () => {
    const book = readyBook();
    book.grid.removeTab(book.grid.tab("Purchases").id);
    expect(book.refusal(SHOW).sentence).toContain("Purchases");
    book.grid.removeTab(book.grid.tab("Feeds").id);
    const { code, sentence } = book.refusal(SHOW);
    expect([code, sentence]).toEqual(["no-tab", expect.stringContaining("“Feeds”")]);
  });
});
