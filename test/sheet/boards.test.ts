/** Boards: one formula in a tab of its own with ranges where the columns are now, made once, found after a rename, never over somebody's cells. */

import { describe, expect, test } from "vitest";
import type { CellChange } from "../../sample-sheet/workbench/standin/grid.ts";
import { DUE_KINDS } from "../../src/core/due.ts";
import { boardsWords, makeBoard, makeBoards } from "../../src/sheet/boards.ts";
import { openBook } from "../../src/sheet/find.ts";
import { isMadeMark } from "../../src/sheet/made-tabs.ts";
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

  test("finds every tab and column by its mark after all of them were renamed", () => {
    const book = readyBook();
    make(book);
    const plain = ["Root board", "Due board"].map((name) => formulaOf(book, name));
    const other = readyBook();
    for (const tab of other.grid.tabs()) {
      tab.write(1, 1, [Array.from({ length: tab.extent().column }, (_, at) => ({ value: `word ${at}` }))]);
      tab.rename(`Our ${tab.name()}`);
    }
    make(other);
    const renamed = ["Root board", "Due board"].map((name) => formulaOf(other, name));
    expect(renamed.map((formula) => formula.replaceAll("'Our ", "'"))).toEqual(plain);
    expect(renamed[1]?.match(/'Our /g)).toHaveLength(6);
  });

  test("bears a mark by which later versions find it too", () => {
    const book = readyBook();
    make(book);
    expect(book.grid.tab("Root board").marks()).toMatchObject([{ column: null, value: "made:Root board" }]);
  });

  test("goes without claims where their tab has no headings any more", () => {
    const book = readyBook();
    const width = book.grid.tab("Claims").extent().column;
    book.grid.tab("Claims").write(1, 1, [Array.from({ length: width }, () => ({ value: null }))]);
    make(book);
    expect(formulaOf(book, "Due board")).toMatch(/, 'Settings'!A1:B\)$/);
  });

  test("shows its days as days", () => {
    const book = readyBook();
    make(book);
    const formats = (name: string) =>
      book.grid
        .tab(name)
        .read({ row: 2, column: 1, rows: 1, columns: 6 })[0]
        ?.flatMap(({ format }, at) => (format === "" ? [] : [[at + 1, format]]));
    expect(formats("Root board")).toEqual([[4, "yyyy-mm-dd"]]);
    expect(formats("Due board")).toEqual([[3, "yyyy-mm-dd"]]);
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

  test("has ink that is seen on its ground: at least 7 to 1 (WCAG 2.2, 1.4.6), the most urgent in its own colour", () => {
    const book = readyBook();
    make(book);
    // Relative luminance as WCAG 2.2 defines it, from sRGB.
    const luminance = (colour: string | null): number => {
      const parts = /^#(..)(..)(..)$/.exec(colour ?? "")?.slice(1) ?? [];
      const [r = 0, g = 0, b = 0] = parts.map((part) => {
        const c = Number.parseInt(part, 16) / 255;
        return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
      });
      return parts.length === 3 ? 0.2126 * r + 0.7152 * g + 0.0722 * b : Number.NaN;
    };
    const rules = ["Root board", "Due board"].flatMap((name) => book.grid.tab(name).conditionalRules());
    for (const { formula, background, fontColor } of rules) {
      const contrast = (luminance(background) + 0.05) / (luminance(fontColor) + 0.05);
      expect(contrast, formula).toBeGreaterThanOrEqual(7);
    }
    const potUp = rules.find(({ formula }) => formula.includes("Pot up"));
    expect(rules.filter(({ background }) => background === potUp?.background)).toEqual([potUp]);
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

  test("finds its formula in small letters, and writes nothing where a call fails in between", () => {
    let fails = false;
    const book = readyBook({
      onCall: (name) => {
        if (fails && name === "Range.setFormula") throw new Error("Service Spreadsheets failed");
      },
    });
    make(book);
    book.grid.tab("Due board").write(1, 1, [[{ value: null, formula: "=pot_due (#REF!)" }]]);
    fails = true;
    expect(() => make(book)).toThrow("Service Spreadsheets failed");
    fails = false;
    expect(make(book).mended).toEqual(["Due board"]);
  });

  test.each<[string, CellChange[][]]>([
    ["one cell", [[{ value: "mine" }, { value: null }, { value: 3 }]]],
    ["another formula", [[{ value: 4, formula: "=SUM(1, 3)" }]]],
  ])("leaves tabs of their names alone that hold %s", (_, cells) => {
    const book = readyBook({ tabs: { "Root board": { cells }, "Due board": { cells } } });
    const before = book.values("Root board");
    const report = make(book);
    expect(report).toMatchObject({ made: [], mended: [] });
    expect(report.problems).toHaveLength(2);
    expect(book.values("Root board")).toEqual(before);
    expect(boardsWords(report)).toBe(report.problems.join("\n\n"));
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

test("without today's row in Settings none is made, and what needs it is refused", () => {
  const book = readyBook();
  const row = book.values("Settings").findIndex(([name]) => name === "Today") + 1;
  book.grid.tab("Settings").deleteRows(row, 1);
  const report = make(book);
  expect(report).toMatchObject({ made: [], mended: [] });
  for (const sentence of report.problems) expect(sentence).toContain("“Settings” has no row “Today”");
  expect(report.problems).toHaveLength(2);
  expect(book.refusal({ ask: "show on hand" }).code).toBe("no-setting");
});

test("without Events none is made, and the sentence names that tab", () => {
  const book = readyBook();
  book.grid.removeTab(book.grid.tab("Events").id);
  const { code, sentence } = book.refusal({ ask: "make boards" });
  expect([code, sentence]).toEqual(["no-tab", expect.stringContaining("“Events”")]);
  expect(book.grid.tabs().some((tab) => tab.name() === "Root board")).toBe(false);
});

test("a board says where its formula stands, and one that is taken is refused with its code", () => {
  const book = readyBook({ tabs: { Mine: { cells: [["carrots"]] } } });
  const spec = { name: "Mine", functionName: "ROOT_BOARD", dayColumns: [], colours: [] };
  const board = () => makeBoard(openBook(book.workbook(), [], isMadeMark), spec, "=ROOT_BOARD(A1:A)");
  expect(board).toThrow(expect.objectContaining({ code: "board-taken" }));
  book.grid.tab("Mine").write(1, 1, [[{ value: null }]]);
  expect(board()).toMatchObject({ column: 1, done: "made" });
  book.grid.tab("Mine").insertColumns(1, 2);
  expect(board()).toMatchObject({ column: 3, done: "kept" });
});

test("the report names each board, and then what was left alone", () => {
  const words = boardsWords({ made: ["One", "Two"], mended: ["Three"], problems: ["Four is taken."] });
  expect(words).toMatch(/“One” and “Two”.*\n\n.*“Three”.*\n\nFour is taken\.$/);
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
