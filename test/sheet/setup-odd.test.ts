/** The set-up of odd workbooks: what is left alone, what is said, and where rows go when columns stand otherwise. */

import { describe, expect, test } from "vitest";
import { BUILT_IN_EVENTS } from "../../src/core/roots.ts";
import { hasOwnList, setupWords } from "../../src/sheet/setup.ts";
import { openTestBook, readyBook, type TestBook } from "./workbook.ts";

type Cells = NonNullable<NonNullable<NonNullable<Parameters<typeof openTestBook>[0]>["tabs"]>[string]["cells"]>;
const bookWith = (tabs: Readonly<Record<string, Cells>>): TestBook =>
  openTestBook({ tabs: Object.fromEntries(Object.entries(tabs).map(([name, cells]) => [name, { cells }])) });
const rowsOf = (book: TestBook, tab: string): unknown[][] =>
  book.values(tab).map((row) => row.map((cell) => cell ?? ""));

describe("whether plants come from a tab of one's own", () => {
  const has = (...rows: Cells): boolean =>
    hasOwnList(bookWith({ Settings: [["Setting", "Value"], ...rows] }).workbook());

  test("is what Settings says, and false where it says nothing", () => {
    expect(has(["Plant list tab", "Green"])).toBe(true);
    expect(has(["Plant list tab", ""])).toBe(false);
    expect(has(["People", "Ana"])).toBe(false);
    expect(hasOwnList(openTestBook().workbook())).toBe(false);
  });

  test("is false where Settings cannot be told, which the set-up then says", () => {
    const book = bookWith({
      Settings: [
        ["Setting", "Value", "Value"],
        ["Plant list tab", "Green", ""],
      ],
    });
    expect(hasOwnList(book.workbook())).toBe(false);
    const { problems, addedTabs } = book.setUp();
    expect(problems).toEqual([expect.stringMatching(/heading “Value” in columns B and C/)]);
    expect(addedTabs).toContain("Plants");
    expect(rowsOf(book, "Settings")).toHaveLength(2);
  });

  test("is not known when the spreadsheet itself fails: that is thrown, and nothing is set up", () => {
    let fail = false;
    const book = openTestBook({
      tabs: { Settings: { cells: [["Setting", "Value"]] } },
      onCall: (name) => {
        if (fail && /getValues|getSheetValues/.test(name)) throw new Error("Service Spreadsheets failed.");
      },
    });
    fail = true;
    expect(() => hasOwnList(book.workbook())).toThrow("Service Spreadsheets failed.");
    expect(() => book.setUp()).toThrow("Service Spreadsheets failed.");
    expect(book.grid.tabs().map((tab) => tab.name())).toEqual(["Settings"]);
  });
});

test("the report says in words what was added and what was left alone", () => {
  const words = setupWords({
    addedTabs: ["Feeds", "Waters"],
    addedHeadings: ["Note to Plants", "Lot to Feeds"],
    problems: ["A.", "B."],
  });
  expect(words.split("\n\n")).toEqual([
    expect.stringContaining("Feeds, Waters"),
    expect.stringContaining("Note to Plants, Lot to Feeds"),
    "A.",
    "B.",
  ]);
  expect(setupWords({ addedTabs: [], addedHeadings: [], problems: ["A."] })).toBe("A.");
  expect(setupWords({ addedTabs: ["Feeds"], addedHeadings: [], problems: [] })).not.toMatch(/nothing had to be added/);
});

test("headings are named as added only on tabs that were there", () => {
  expect(openTestBook().setUp().addedHeadings).toEqual([]);
  const { addedHeadings } = bookWith({ Events: [["Event"]] }).setUp();
  expect(addedHeadings).toEqual(["Disturbs roots to Events"]);
});

test("a sentence that comes up for every tab is said once", () => {
  let fail = false;
  const book = openTestBook({
    onCall: (name) => {
      if (fail && name === "Range.setNotes") throw new Error("Not today.");
    },
  });
  fail = true;
  const { problems } = book.setUp();
  expect(problems.filter((sentence) => sentence.includes("Not today."))).toHaveLength(problems.length === 0 ? 0 : 1);
});

test("merged cells in the way are told with every heading that belongs there", () => {
  const merges = [{ row: 1, column: 2, rows: 1, columns: 5 }];
  const book = openTestBook({ tabs: { Events: { cells: [["Mine"]], columns: 40, merges } } });
  expect(book.setUp().problems).toEqual([expect.stringMatching(/headings Event, Disturbs roots belong/)]);
  expect(rowsOf(book, "Events")).toEqual([["Mine"]]);
});

test("a tab of a newer version is left alone, and that is said", () => {
  const book = readyBook();
  const tab = book.grid.tab("Events");
  tab.putMark({ id: 99_999, key: "stillroot", column: null, value: "schema:Events/3", visibility: "DOCUMENT" });
  tab.deleteColumns(2, 1);
  const before = rowsOf(book, "Events");
  const { problems } = book.setUp();
  expect(problems).toEqual([expect.stringMatching(/“Events” was set up by a newer/)]);
  expect(rowsOf(book, "Events")).toEqual(before);
});

describe("rows that a new tab gets", () => {
  const events = BUILT_IN_EVENTS.map(({ event, disturbsRoots }) => [event, disturbsRoots ? "yes" : "no"]);

  test("go below what somebody typed in columns of their own, and into ours wherever they stand", () => {
    const book = bookWith({
      Events: [
        ["Disturbs roots", "Mine", "Event"],
        ["", "x", ""],
      ],
    });
    book.grid.tab("Events").write(1, 5, [[{ value: "Far off" }]]);
    book.setUp();
    expect(
      rowsOf(book, "Events")
        .slice(1)
        .map((row) => row.slice(0, 3)),
    ).toEqual([["", "x", ""], ...events.map(([event, disturbs]) => [disturbs, "", event])]);
  });

  test("of settings write over none between the name and the value", () => {
    const book = bookWith({
      Settings: [
        ["Note", "Value", "Mine", "Setting"],
        ["", "Ana", "m", "People"],
      ],
    });
    book.setUp();
    const rows = rowsOf(book, "Settings");
    expect(rows[1]).toEqual(["", "Ana", "m", "People"]);
    expect(rows.find((row) => row[3] === "pH low")?.slice(1)).toEqual([5.5, "", "pH low"]);
    expect(rows.find((row) => row[3] === "pH low")?.[0]).toMatch(/pH/);
    expect(rows.filter((row) => row[3] === "People")).toHaveLength(1);
  });

  test("are not written while one of their columns is in doubt", () => {
    for (const [tab, head] of [
      ["Events", ["Event", "Event", "Disturbs roots"]],
      ["Events", ["Event", "Disturbs roots", "Disturbs roots"]],
      ["Settings", ["Setting", "Setting", "Value"]],
      ["Settings", ["Setting", "Value", "Value"]],
    ] as const) {
      const book = bookWith({ [tab]: [[...head]] });
      expect(book.setUp().problems).toHaveLength(1);
      expect(rowsOf(book, tab)).toHaveLength(1);
    }
  });

  test("of events are not added to a list that was begun", () => {
    const book = bookWith({
      Events: [
        ["Disturbs roots", "Event"],
        ["", ""],
        ["yes", "Bath"],
      ],
    });
    book.setUp();
    expect(
      rowsOf(book, "Events")
        .slice(1)
        .filter((row) => row[1] !== ""),
    ).toEqual([["yes", "Bath"]]);
  });
});

describe("marks", () => {
  const marksOf = (book: TestBook, name: string) =>
    book.grid
      .tab(name)
      .marks()
      .map(({ value, column }) => `${value} ${column}`)
      .sort();

  test("stand once each: the tab's, its version's, and one on every column", () => {
    const book = readyBook();
    expect(marksOf(book, "Events")).toEqual([
      "column:Events/Disturbs roots 2",
      "column:Events/Event 1",
      "schema:Events/2 null",
      "tab:Events null",
    ]);
  });

  test("of a copied tab do not stand in for those of the original", () => {
    const book = readyBook();
    const events = book.grid.tab("Events");
    const copy = book.grid.addTab("Copy of Events", { cells: [["Event", "Disturbs roots"]] });
    for (const mark of events.marks()) copy.putMark({ ...mark, id: mark.id + 50_000 });
    const before = marksOf(book, "Events");
    for (const { id, value } of events.marks()) if (value !== "tab:Events") events.removeMark(id);
    book.setUp();
    expect(marksOf(book, "Events")).toEqual(before);
  });

  test("of the version wait until no column is in doubt", () => {
    const book = bookWith({ Events: [["Event", "Event"]] });
    book.setUp();
    expect(marksOf(book, "Events").some((mark) => mark.startsWith("schema:"))).toBe(false);
    book.grid.tab("Events").write(1, 2, [[{ value: "Mine" }]]);
    book.setUp();
    expect(marksOf(book, "Events").some((mark) => mark.startsWith("schema:Events/2"))).toBe(true);
  });
});
