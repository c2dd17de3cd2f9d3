/** Tabs that could be two are told and left out, whatever is loaded; and columns without which a record says nothing. */

import { describe, expect, test } from "vitest";
import { SCHEMA } from "../../src/sheet/schema.ts";
import type { TabName } from "../../src/sheet/spec.ts";
import { dateCell, readyBook, type TestBook } from "../sheet/workbook.ts";
import { bookWith, load } from "./book.ts";

/** Two tabs with the mark of `name`, neither of that name. */
function doubled(name: TabName): TestBook {
  const book = readyBook();
  book.grid.tab(name).rename("One");
  const mark = { id: 99_999, column: null, key: "stillroot", visibility: "DOCUMENT" as const };
  book.grid.addTab("Two", { cells: [["Id"], ["x"]] }).putMark({ ...mark, value: `tab:${name}` });
  return book;
}
const told = (name: TabName) => expect.stringMatching(`^Both tabs “One” and “Two” could be ${name}\\.`) as string;

describe("two tabs that could be meant", () => {
  test.each<[TabName, object]>([
    ["Plants", { plants: [], plantTab: "" }],
    ["Care log", { care: { rows: [], from: null, all: true } }],
    ["Feeds", { feeds: [] }],
    ["Waters", { waters: [] }],
    ["Targets", { targets: [] }],
    ["Batch log", { batches: [], usedBefore: { used: [], unread: [] } }],
    ["Settings", { settings: {}, people: [] }],
  ])("are told, and nothing of either is loaded: %s", (name, part) => {
    const reply = load(doubled(name));
    expect(reply).toMatchObject(part);
    expect(reply.problems).toEqual([told(name)]);
  });

  test("are told, and the built-in events stand in for Events", () => {
    const reply = load(doubled("Events"));
    expect(reply.events).toContainEqual({ event: "Repot", disturbsRoots: true });
    expect(reply.problems).toEqual([told("Events")]);
  });

  test.each<[TabName, "purchases" | "meterLog" | "claims" | "trials"]>([
    ["Purchases", "purchases"],
    ["Meter log", "meterLog"],
    ["Claims", "claims"],
    ["Trials", "trials"],
  ])("are told among the records, and there are none: %s", (name, part) => {
    const reply = doubled(name).reply({ ask: "records" });
    expect(reply[part]).toEqual([]);
    expect(reply.problems).toEqual([told(name)]);
  });
});

test.each<[TabName, string, boolean]>([
  ["Purchases", "Id", true],
  ["Purchases", "Date", true],
  ["Purchases", "Feed", true],
  ["Purchases", "Amount", true],
  ["Purchases", "Price", false],
  ["Meter log", "Standard", true],
  ["Claims", "Claim", true],
  ["Trials", "Question", true],
  ["Trials", "Note", false],
])("of %s, a column %s that is not there is told: %s", (name, heading, isTold) => {
  const book = readyBook();
  const at = book.values(name)[0]?.indexOf(heading) ?? -1;
  expect(at).toBeGreaterThanOrEqual(0);
  book.grid.tab(name).deleteColumns(at + 1, 1);
  const { problems } = book.reply({ ask: "records" });
  expect(problems).toEqual(isTold ? [expect.stringContaining(`“${name}” has no column “${heading}”`)] : []);
});

test("records of a tab that is not there are none", () => {
  const book = readyBook();
  book.grid.removeTab(book.grid.tab("Claims").id);
  expect(book.reply({ ask: "records" })).toMatchObject({ claims: [], problems: [expect.stringContaining("“Claims”")] });
});

test("a tab of a newer version is loaded as well as it can be, and that is said with both versions", () => {
  const book = bookWith({
    Waters: [
      ["Water", "Ca"],
      ["Tap", 80],
    ],
  });
  const mark = { id: 99_999, column: null, key: "stillroot", visibility: "DOCUMENT" as const };
  book.grid.tab("Waters").putMark({ ...mark, value: `schema:Waters/${SCHEMA + 1}` });
  const { waters, problems } = load(book);
  expect(waters).toHaveLength(1);
  expect(problems).toEqual([expect.stringMatching(`^“Waters” .* version ${SCHEMA + 1}, this one knows ${SCHEMA}`)]);
});

test("Settings without the row Today is left without it", () => {
  const book = readyBook();
  const row = book.values("Settings").findIndex(([name]) => name === "Today") + 1;
  expect(row).toBeGreaterThan(1);
  book.grid.tab("Settings").write(row, 1, [[{ value: null }, { value: null }]]);
  const before = book.values("Settings");
  expect(load(book).problems).toEqual([]);
  expect(book.values("Settings")).toEqual(before);
});

describe("plants", () => {
  test("without their column are none, and the list is still named", () => {
    const book = bookWith({
      Plants: [
        ["Plant", "Pot mL"],
        ["Fern", "big"],
      ],
    });
    book.grid.tab("Plants").deleteColumns(1, 1);
    const reply = load(book);
    expect(reply).toMatchObject({ plants: [], plantTab: "Plants" });
    expect(reply.problems).toEqual([expect.stringContaining("“Plants” has no column “Plant”")]);
  });

  test("whose name is blank or a date are left out; the date is told", () => {
    const reply = load(
      bookWith({
        Plants: [
          ["Plant", "Place"],
          ["", "Hall"],
          [dateCell("2026-03-01"), "Hall"],
          ["Fern", "Hall"],
        ],
      }),
    );
    expect(reply.plants.map(({ plant }) => plant)).toEqual(["Fern"]);
    expect(reply.problems).toEqual([expect.stringMatching(/^Plant in row 3 of Plants is the date 2026-03-01/)]);
  });
});
