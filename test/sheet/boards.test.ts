/** Boards: one formula in a tab of its own with ranges where the columns are now, made once, found after a rename, never over somebody's cells. */

import { describe, expect, test } from "vitest";
import { DUE_KINDS } from "../../src/core/due.ts";
import { boardsWords, makeBoards } from "../../src/sheet/boards.ts";
import { dump } from "./dump.ts";
import { openTestBook, readyBook, type TestBook } from "./workbook.ts";

const LOOK = { row: 1, column: 1, rows: 1, columns: 1 };
const formulaOf = (book: TestBook, tab: string): string => book.grid.tab(tab).read(LOOK)[0]?.[0]?.formula ?? "";
const make = (book: TestBook) => makeBoards(book.workbook());

describe("a board that is made", () => {
  test("has one formula over whole tabs, with today and the rules from Settings", () => {
    const book = readyBook();
    expect(make(book).made).toContain("Root board");
    const row = book.values("Settings").findIndex(([name]) => name === "Today") + 1;
    expect(formulaOf(book, "Root board")).toBe(
      `=ROOT_BOARD('Plants'!A2:A, 'Care log'!A1:L, 'Settings'!$B$${row}, 'Events'!A1:B, 'Settings'!A1:B)`,
    );
  });

  test("is given the columns where they stand now, and tabs by the names they have now", () => {
    const book = readyBook();
    book.grid.tab("Care log").insertColumns(1, 2);
    book.grid.tab("Care log").rename("Mia's log");
    book.grid.tab("Plants").moveColumn(1, 3);
    make(book);
    expect(formulaOf(book, "Root board")).toContain("=ROOT_BOARD('Plants'!C2:C, 'Mia''s log'!C1:N,");
  });

  test("of what is due gets the rules and the claims as well, and goes without claims where there is no such tab", () => {
    const book = readyBook();
    make(book);
    const today = book.values("Settings").findIndex(([name]) => name === "Today") + 1;
    const start = `=POT_DUE('Plants'!A2:A, 'Care log'!A1:L, 'Settings'!$B$${today}, 'Events'!A1:B, 'Settings'!A1:B`;
    expect(formulaOf(book, "Due board")).toMatch(/, 'Claims'!A1:[A-Z]+\)$/);
    expect(formulaOf(book, "Due board").startsWith(`${start}, `)).toBe(true);
    book.grid.removeTab(book.grid.tab("Due board").id);
    book.grid.removeTab(book.grid.tab("Claims").id);
    expect(make(book).made).toEqual(["Due board"]);
    expect(formulaOf(book, "Due board")).toBe(`${start})`);
  });

  test("reads a plant list of one's own", () => {
    const book = readyBook({
      tabs: {
        Green: {
          cells: [
            ["Room", "Who is it"],
            ["Hall", "Fern"],
          ],
        },
      },
    });
    book.reply({
      ask: "use plant list",
      tab: "Green",
      columns: { Plant: "Who is it", Place: "Room" },
    });
    make(book);
    expect(formulaOf(book, "Root board")).toContain("=ROOT_BOARD('Green'!B2:B, ");
  });

  test("has a colour for each kind of thing that is due", () => {
    const book = readyBook();
    make(book);
    const words = book.grid
      .tab("Due board")
      .conditionalRules()
      .map(({ formula }) => formula);
    expect(words).toEqual(DUE_KINDS.map((kind) => `=$B1="${kind}"`));
  });

  test("has a colour for each word, with the word in the row", () => {
    const book = readyBook();
    make(book);
    const rules = book.grid.tab("Root board").conditionalRules();
    expect(rules.map(({ formula }) => formula)).toEqual([
      '=$E1="Leave alone"',
      '=$E1="Rested long enough"',
      '=$E1="No disturbance on record"',
    ]);
    for (const { areas } of rules) expect(areas[0]).toMatchObject({ row: 1, column: 1, columns: 5 });
  });
});

describe("making them again", () => {
  test("changes nothing, also after a board was renamed and its colours and formula changed by hand", () => {
    const book = readyBook();
    make(book);
    const tab = book.grid.tab("Root board");
    tab.rename("Wall by the door");
    tab.setConditionalRules([]);
    tab.write(1, 1, [[{ value: null, formula: "=SORT(ROOT_BOARD('Plants'!A2:A, 'Care log'!A1:L, 'Settings'!$B$2))" }]]);
    const before = dump(book.grid);
    expect(boardsWords(make(book))).toBe("The boards are there; nothing had to be done.");
    expect(dump(book.grid)).toBe(before);
  });

  test("writes a formula anew that lost its range, where it stands now", () => {
    const book = readyBook();
    make(book);
    const tab = book.grid.tab("Root board");
    tab.insertRows(1, 2);
    tab.write(3, 1, [[{ value: null, formula: "=ROOT_BOARD(#REF!, 'Care log'!A1:L, 'Settings'!$B$2)" }]]);
    const report = make(book);
    expect(report).toMatchObject({ made: [], mended: ["Root board"], problems: [] });
    expect(boardsWords(report)).toBe("Gave “Root board” a formula with the right ranges again.");
    expect(tab.read({ ...LOOK, row: 3 })[0]?.[0]?.formula).toContain("=ROOT_BOARD('Plants'!A2:A,");
  });

  test("leaves a tab of that name alone in which somebody keeps something else", () => {
    const book = readyBook({ tabs: { "Root board": { cells: [["Mia's carrots"], ["three"]] } } });
    const before = dump(book.grid);
    expect(make(book).problems).toEqual([
      "“Root board” holds something other than the board, so it was left as it is. Rename that tab, or clear it, then make the boards again.",
    ]);
    expect(JSON.parse(dump(book.grid))[0]).toEqual(JSON.parse(before)[0]);
  });

  test("adds its colours behind those that a person set", () => {
    const book = readyBook({ tabs: { "Root board": {} } });
    const own = { formula: "=$B1>300", areas: [{ ...LOOK }], background: "#ff0000", fontColor: null };
    book.grid.tab("Root board").setConditionalRules([own]);
    make(book);
    const rules = book.grid.tab("Root board").conditionalRules();
    expect(rules[0]).toEqual(own);
    expect(rules).toHaveLength(4);
  });
});

test("a sheet that was not set up is told what to do, by menu and panel alike", () => {
  const book = openTestBook();
  expect(() => make(book)).toThrow(/^There is no tab “Settings”\. Choose “Set up tabs”/);
  expect(book.refusal({ ask: "make boards" }).sentence).toMatch(/^There is no tab “Settings”/);
});

test.each(["de_DE", "en_GB"])("in the locale %s the formulas can be read, with a comma in a tab's name", (locale) => {
  const book = openTestBook({ locale });
  book.setUp();
  book.grid.tab("Care log").rename("Log, old");
  make(book);
  for (const name of ["Root board", "Due board"]) {
    // The grid of the tests knows no functions; a formula that cannot be read would be #ERROR!.
    expect(book.values(name)[0]?.[0], name).toEqual({ error: "#NAME?" });
    expect(formulaOf(book, name)).toContain("'Log, old'!A1:");
  }
});
