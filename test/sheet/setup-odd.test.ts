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

  test("is read from a Settings tab by whatever name, below headings of whatever words", () => {
    const book = readyBook();
    const tab = book.grid.tab("Settings");
    const row = rowsOf(book, "Settings").findIndex(([name]) => name === "Plant list tab") + 1;
    tab.write(row, 2, [[{ value: "Green" }]]);
    tab.rename("House rules");
    tab.write(1, 1, [[{ value: "What" }, { value: "How" }]]);
    expect(hasOwnList(book.workbook())).toBe(true);
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
  const { problems, addedHeadings } = book.setUp();
  expect(problems).toEqual([expect.stringMatching(/headings Event, Disturbs roots belong/)]);
  expect(addedHeadings).toEqual([]);
  expect(rowsOf(book, "Events")).toEqual([["Mine"]]);
});

test("a tab that was taken out comes again, and the others stay as they are", () => {
  const book = readyBook();
  book.grid.removeTab(book.grid.tab("Events").id);
  const feeds = rowsOf(book, "Feeds");
  expect(book.setUp()).toEqual({ addedTabs: ["Events"], addedHeadings: [], problems: [] });
  expect(rowsOf(book, "Events")).toHaveLength(1 + BUILT_IN_EVENTS.length);
  expect(rowsOf(book, "Feeds")).toEqual(feeds);
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

  test("of settings come without notes while the column for notes is in doubt", () => {
    const book = bookWith({ Settings: [["Setting", "Value", "Note", "Note"]] });
    expect(book.setUp().problems).toEqual([expect.stringMatching(/heading “Note” in columns C and D/)]);
    const rows = rowsOf(book, "Settings").slice(1);
    expect(rows.map((row) => row.slice(0, 2))).toContainEqual(["pH low", 5.5]);
    expect(rows.flatMap((row) => row.slice(2)).join("")).toBe("");
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

  test("are added to the column that bears a heading by now, though they stand on another, and though it bears another", () => {
    const book = readyBook();
    const log = book.grid.tab("Care log");
    const [head = []] = rowsOf(book, "Care log");
    const [plant, event] = [head.indexOf("Plant") + 1, head.indexOf("Event") + 1];
    log.write(1, plant, [[{ value: "Event" }]]);
    log.write(1, event, [[{ value: "Plant" }]]);
    expect(book.setUp().problems).toEqual([]);
    expect(marksOf(book, "Care log")).toEqual(
      expect.arrayContaining([`column:Care log/Plant ${event}`, `column:Care log/Event ${plant}`]),
    );
    const feeds = book.grid.tab("Feeds");
    const [feedHead = []] = rowsOf(book, "Feeds");
    feeds.write(1, feedHead.indexOf("Note") + 1, [[{ value: "" }]]);
    feeds.insertColumns(feedHead.length + 1, 1);
    feeds.write(1, feedHead.length + 1, [[{ value: "Note" }]]);
    expect(book.setUp().problems).toEqual([]);
    expect(marksOf(book, "Feeds")).toContain(`column:Feeds/Note ${feedHead.length + 1}`);
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

test("a setting that is missing is added, though the heading above was given its name", () => {
  const book = readyBook();
  const tab = book.grid.tab("Settings");
  const names = () => rowsOf(book, "Settings").map(([name]) => name);
  tab.write(names().indexOf("Spoons") + 1, 1, [[{ value: "Ours" }]]);
  tab.write(1, 1, [[{ value: "Spoons" }]]);
  expect(book.setUp().problems).toEqual([]);
  expect(names().lastIndexOf("Spoons")).toBeGreaterThan(1);
});

test("a tab that was emptied has each of its headings told as lost", () => {
  const book = readyBook();
  book.grid.tab("Events").write(
    1,
    1,
    rowsOf(book, "Events").map((row) => row.map(() => ({ value: null }))),
  );
  expect(book.setUp().problems).toEqual(
    expect.arrayContaining([
      expect.stringMatching(/^Column A of “Events” was “Event” and has lost its heading/),
      expect.stringMatching(/^Column B of “Events” was “Disturbs roots” and has lost its heading/),
    ]),
  );
});
