/** Tabs and columns found by mark, heading and alias, and told apart when they cannot be. */

import { describe, expect, test } from "vitest";
import { headingKey } from "../../src/core/cell.ts";
import { columnAt, findColumns, findTab, openBook } from "../../src/sheet/find.ts";
import { TABS, tabSpec } from "../../src/sheet/tabs.ts";
import { openTestBook, readyBook, type TestBook } from "./workbook.ts";

function columnsOf(book: TestBook, name: "Feeds" | "Care log" | "Waters") {
  const spec = tabSpec(name);
  const open = openBook(book.workbook(), [name]);
  const tab = findTab(open, spec);
  if (!tab) throw new Error(`No ${name}`);
  return findColumns(open, spec, tab, tab.readAll()[0] ?? []);
}

describe("the tabs as data", () => {
  test.each(TABS.map((spec) => [spec.name, spec] as const))("%s tells its columns apart", (_, spec) => {
    const keys = spec.columns.flatMap(({ heading, aliases }) => [heading, ...(aliases ?? [])]).map(headingKey);
    expect(new Set(keys).size).toBe(keys.length);
    const headings = spec.columns.map(({ heading }) => heading);
    expect(headings).toContain(spec.key);
    for (const key of spec.alsoKeys ?? []) expect(headings).toContain(key);
  });

  test("tab names and their aliases are told apart", () => {
    const names = TABS.flatMap(({ name, aliases }) => [name, ...(aliases ?? [])]).map((name) => name.toLowerCase());
    expect(new Set(names).size).toBe(names.length);
  });
});

describe("a tab", () => {
  const find = (book: TestBook) => findTab(openBook(book.workbook(), ["Feeds"]), tabSpec("Feeds"))?.name ?? null;

  test("is found by its mark after it was renamed", () => {
    const book = readyBook();
    book.grid.tab("Feeds").rename("Regal");
    expect(find(book)).toBe("Regal");
  });

  test("is found by its name, case and spaces ignored, where it has no mark", () => {
    expect(find(openTestBook({ tabs: { " FEEDS ": {} } }))).toBe(" FEEDS ");
  });

  test("is found by another usual name", () => {
    expect(find(openTestBook({ tabs: { Fertilisers: {} } }))).toBe("Fertilisers");
  });

  test("that is not there is not found", () => {
    expect(find(openTestBook({ tabs: { Sheet1: {} } }))).toBeNull();
  });

  test("that was renamed goes before a new one that took its name", () => {
    const book = readyBook();
    book.grid.tab("Feeds").rename("Regal");
    book.grid.addTab("Feeds");
    expect(find(book)).toBe("Regal");
  });

  test("whose copy carries its marks is the one with the name; without it, both are named", () => {
    const book = readyBook();
    const copy = book.grid.addTab("Copy of Feeds");
    for (const mark of book.grid.tab("Feeds").marks()) copy.putMark({ ...mark, id: mark.id + 10_000 });
    expect(find(book)).toBe("Feeds");
    book.grid.tab("Feeds").rename("Old feeds");
    expect(() => find(book)).toThrow(
      "Both tabs “Old feeds” and “Copy of Feeds” could be Feeds. Name the right one “Feeds”.",
    );
  });

  test("that could be two by other names is not guessed", () => {
    expect(() => find(openTestBook({ tabs: { Salts: {}, Fertilizers: {} } }))).toThrow(
      /Both tabs “Salts” and “Fertilizers”/,
    );
  });
});

describe("a column", () => {
  test("is found by its mark after it was moved and renamed", () => {
    const book = readyBook();
    const tab = book.grid.tab("Feeds");
    tab.moveColumn(12, 2);
    tab.write(1, 2, [[{ value: "Lime" }]]);
    expect(columnsOf(book, "Feeds").at.get("Ca")).toBe(2);
  });

  test("is found by heading, case and spaces ignored, and by alias", () => {
    const columns = columnsOf(
      openTestBook({ tabs: { Feeds: { cells: [["  feed ", "Calcium", "no3 - n", "MGO"]] } } }),
      "Feeds",
    );
    expect([...columns.at]).toEqual([
      ["Feed", 1],
      ["NO3-N", 3],
      ["Ca", 2],
      ["MgO", 4],
    ]);
  });

  test("goes by its exact heading rather than by an alias", () => {
    const columns = columnsOf(openTestBook({ tabs: { Feeds: { cells: [["Name", "Feed"]] } } }), "Feeds");
    expect(columns.at.get("Feed")).toBe(2);
  });

  test("with a heading that stands twice is in doubt", () => {
    const columns = columnsOf(openTestBook({ tabs: { Feeds: { cells: [["Feed", "N", "n"]] } } }), "Feeds");
    expect(columns.at.has("N")).toBe(false);
    expect(() => columnAt(columns, "N")).toThrow(
      "“Feeds” has the heading “N” in columns B and C. Rename the one that is not meant.",
    );
  });

  test("with two possible other names is in doubt", () => {
    const columns = columnsOf(openTestBook({ tabs: { Feeds: { cells: [["Name", "Product"]] } } }), "Feeds");
    expect(() => columnAt(columns, "Feed")).toThrow(/columns A \(“Name”\) and B \(“Product”\) could all be “Feed”/);
  });

  test("that is missing says what to do", () => {
    const columns = columnsOf(openTestBook({ tabs: { Feeds: { cells: [["Feed"]] } } }), "Feeds");
    expect(() => columnAt(columns, "Ca")).toThrow(
      "“Feeds” has no column “Ca”. Type the heading over the right column in row 1, or choose “Set up tabs” from the Stillroot menu to have it added.",
    );
  });

  test("whose contents were cut and pasted elsewhere is found where its heading went", () => {
    const book = readyBook();
    const tab = book.grid.tab("Feeds");
    const width = tab.extent().column;
    tab.write(1, 12, [[{ value: null }]]);
    if (tab.columns() <= width) tab.insertColumns(width + 1, 1);
    tab.write(1, width + 1, [[{ value: "Ca" }]]);
    expect(columnsOf(book, "Feeds").at.get("Ca")).toBe(width + 1);
  });

  test("that lost its heading is in doubt and says where", () => {
    const book = readyBook();
    book.grid.tab("Feeds").write(1, 12, [[{ value: null }]]);
    expect(() => columnAt(columnsOf(book, "Feeds"), "Ca")).toThrow(
      "Column L of “Feeds” was “Ca” and has lost its heading. Type Ca in cell L1.",
    );
  });

  test("goes with its heading when two headings were typed over each other", () => {
    const book = readyBook();
    const tab = book.grid.tab("Waters");
    tab.write(1, 4, [[{ value: "Mg" }, { value: "Ca" }]]);
    const columns = columnsOf(book, "Waters");
    expect([columns.at.get("Mg"), columns.at.get("Ca")]).toEqual([4, 5]);
  });

  test("that was given the heading of another is in doubt, the other is not", () => {
    const book = readyBook();
    book.grid.tab("Waters").write(1, 4, [[{ value: "Mg" }]]);
    const columns = columnsOf(book, "Waters");
    expect(columns.at.get("Mg")).toBe(5);
    expect(() => columnAt(columns, "Ca")).toThrow(/Column D of “Waters” was “Ca” and is now headed “Mg”/);
  });

  test("that was renamed while another took its heading is in doubt", () => {
    const book = readyBook();
    const tab = book.grid.tab("Waters");
    tab.write(1, 4, [[{ value: "Lime" }]]);
    tab.write(1, tab.extent().column + 1, [[{ value: "Ca" }]]);
    expect(() => columnAt(columnsOf(book, "Waters"), "Ca")).toThrow(
      /both columns R \(“Ca”\) and D \(“Lime”\) could be “Ca”/,
    );
  });

  test("that bears the marks of two and the heading of neither is in doubt for both", () => {
    const book = readyBook();
    const tab = book.grid.tab("Waters");
    tab.write(1, 4, [[{ value: "Lime" }, { value: null }]]);
    const ofMg = tab.marks().find(({ value }) => value === "column:Waters/Mg");
    if (!ofMg) throw new Error("Mg has no mark.");
    tab.putMark({ ...ofMg, id: 99_999, column: 4 });
    const columns = columnsOf(book, "Waters");
    expect([columns.at.has("Ca"), columns.at.has("Mg"), columns.at.has("Na")]).toEqual([false, false, true]);
    for (const heading of ["Ca", "Mg"]) {
      expect(() => columnAt(columns, heading)).toThrow(/Column D of “Waters” could be “Ca” or “Mg”\. Give each/);
    }
  });

  test("that another of ours was renamed to by one of its other names is not taken for it", () => {
    const book = readyBook();
    const tab = book.grid.tab("Waters");
    // what was Source is now headed Calcium, and the column Ca is gone
    tab.deleteColumns(4, 1);
    tab.write(1, 3, [[{ value: "Calcium" }]]);
    const columns = columnsOf(book, "Waters");
    expect(columns.at.has("Ca")).toBe(false);
    expect(() => columnAt(columns, "Ca")).toThrow(/has no column “Ca”/);
    expect(() => columnAt(columns, "Source")).toThrow(/Column C of “Waters” was “Source” and is now headed “Calcium”/);
    expect(columns.at.get("Mg")).toBe(4);
  });

  test("headed by a number is found by its mark, as by any other heading", () => {
    const book = readyBook();
    book.grid.tab("Waters").write(1, 4, [[{ value: 2024 }]]);
    expect(columnsOf(book, "Waters").at.get("Ca")).toBe(4);
    book.grid.tab("Waters").write(1, 4, [[{ value: true }]]);
    expect(columnsOf(book, "Waters").at.has("Ca")).toBe(false);
  });

  test("is not looked for outside row 1", () => {
    const columns = columnsOf(openTestBook({ tabs: { Feeds: { cells: [["My shelf"], ["Feed", "Ca"]] } } }), "Feeds");
    expect(columns.at.size).toBe(0);
  });
});
