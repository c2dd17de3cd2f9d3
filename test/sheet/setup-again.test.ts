/** The set-up run again on a workbook that people have changed since. */

import { describe, expect, test } from "vitest";
import { hasOwnList, setUp } from "../../src/sheet/setup.ts";
import { openTestBook, readyBook } from "./workbook.ts";

test("a tab that was removed comes back, with its marks, and nothing else changes", () => {
  const book = readyBook();
  book.grid.removeTab(book.grid.tab("Waters").id);
  const { addedTabs, addedHeadings, problems } = book.setUp();
  expect({ addedTabs, addedHeadings, problems }).toEqual({ addedTabs: ["Waters"], addedHeadings: [], problems: [] });
  const marks = book.grid.tab("Waters").marks();
  expect(marks).toContainEqual(expect.objectContaining({ column: null, value: "tab:Waters" }));
});

test("a list of one's own is known also where Settings got another name", () => {
  const book = readyBook();
  const row = book.values("Settings").findIndex(([name]) => name === "Plant list tab") + 1;
  book.grid.tab("Settings").write(row, 2, [[{ value: "Mine" }]]);
  book.grid.tab("Settings").rename("House rules");
  expect(hasOwnList(book.workbook())).toBe(true);
});

describe("headings", () => {
  test("that merged cells keep out are not named as added", () => {
    const merges = [{ row: 1, column: 2, rows: 1, columns: 9 }];
    const book = openTestBook({ tabs: { Events: { cells: [["Event"]], columns: 40, merges } } });
    const { addedHeadings, problems } = setUp(book.workbook());
    expect(addedHeadings).toEqual([]);
    expect(problems).toEqual([expect.stringMatching(/^Row 1 of “Events” has merged cells/)]);
  });

  test("that changed places each get the mark where they stand now", () => {
    const book = readyBook();
    const tab = book.grid.tab("Feeds");
    const headings = book.values("Feeds")[0] ?? [];
    const [at, other] = [headings.indexOf("N") + 1, headings.indexOf("K") + 1];
    tab.write(1, at, [[{ value: "K" }]]);
    tab.write(1, other, [[{ value: "N" }]]);
    expect(book.setUp().problems).toEqual([]);
    const marks = tab.marks().map(({ column, value }) => `${column} ${value}`);
    expect(marks).toEqual(expect.arrayContaining([`${at} column:Feeds/K`, `${other} column:Feeds/N`]));
  });
});

test("settings are filled in while the column of their notes is in doubt, and nothing beside their columns", () => {
  const book = openTestBook({ tabs: { Settings: { cells: [["Setting", "Note", "Value", "Note"]] } } });
  expect(book.setUp().problems).toEqual([
    expect.stringMatching(/“Settings” has the heading “Note” in columns B and D/),
  ]);
  const [, ...rows] = book.values("Settings");
  expect(rows.find(([setting]) => setting === "Rest days")).toEqual(["Rest days", null, 180, null]);
});
