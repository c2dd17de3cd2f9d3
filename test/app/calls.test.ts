/**
 * How many calls to the spreadsheet an action costs, whatever the number of rows: at most thirteen, and up to two more
 * where columns bear other headings than ours, or at the first opening of a day. Two of them look before a write
 * whether its rows are free still, and after it whether it landed there, because people sort and insert while others log.
 */

import { describe, expect, test } from "vitest";
import type { CellChange, CellValue } from "../../sample-sheet/workbench/standin/grid.ts";
import { batch, careEntry, dateCell, readyBook, type TestBook } from "../sheet/workbook.ts";

const MOST = 13;
const MOST_RENAMED = 15;
const MOST_AT_OPENING = 15;

/** A workbook whose logs and lists have `count` rows, with yesterday's date in Settings. */
function bookOf(count: number, spareRows = 100): TestBook {
  const rows = (make: (index: number) => (CellValue | CellChange)[]) =>
    Array.from({ length: count }, (_, index) => make(index));
  const day = dateCell("2026-01-01");
  const tabs: Record<string, (CellValue | CellChange)[][]> = {
    Plants: [["Plant"], ...rows((index) => [`Plant ${index}`])],
    "Care log": [
      ["Id", "Date", "Plant", "Event"],
      ...rows((index) => [`care-${index}-id`, day, `Plant ${index}`, "Repot"]),
    ],
    Feeds: [["Feed", "N"], ...rows((index) => [`Feed ${index}`, 10])],
    Waters: [["Water", "Ca"], ...rows((index) => [`Water ${index}`, 80])],
    Targets: [["Target", "N"], ...rows((index) => [`Target ${index}`, 100])],
    "Batch log": [["Id", "Date", "Litres"], ...rows((index) => [`batch-${index}-id`, day, 10])],
    Settings: [
      ["Setting", "Value"],
      ["Today", dateCell("2026-03-09")],
    ],
  };
  return readyBook({
    tabs: Object.fromEntries(
      Object.entries(tabs).map(([name, cells]) => [name, { cells, rows: cells.length + spareRows }]),
    ),
  });
}

function callsOf(book: TestBook, act: (book: TestBook) => unknown): string[] {
  book.calls.length = 0;
  act(book);
  return [...book.calls];
}

const ACTIONS: readonly (readonly [string, (book: TestBook) => unknown])[] = [
  ["opening the sidebar", (book) => book.reply({ ask: "load" })],
  ["appending a batch", (book) => book.reply({ ask: "log batch", who: "Ana", batch: batch() })],
  [
    "logging care for 30 plants",
    (book) => book.reply({ ask: "log care", who: "Ana", entries: Array.from({ length: 30 }, () => careEntry()) }),
  ],
  ["taking a page of the log out", (book) => book.reply({ ask: "read page", tab: "Care log", from: 2, rows: 150 })],
  [
    "bringing rows of the log back",
    (book) =>
      book.reply({
        ask: "import rows",
        tab: "Care log",
        headings: ["Id", "Date", "Plant"],
        rows: Array.from({ length: 100 }, (_, at) => [`import-${at}`, { day: "2026-03-01" }, "Plant 1"]),
      }),
  ],
  [
    "entering readings",
    (book) => book.reply({ ask: "log readings", batchId: "batch-5-id", ecMsCm: 1.5, pH: 6, verdict: "As expected." }),
  ],
];

describe.each(ACTIONS)("%s", (what, act) => {
  const most = what === "opening the sidebar" ? MOST_AT_OPENING : MOST;

  test("costs the same few calls for 200 and for 10,000 rows", () => {
    const few = callsOf(bookOf(200), act);
    const many = callsOf(bookOf(10_000), act);
    expect(many).toEqual(few);
    expect(few.length).toBeLessThanOrEqual(most);
  });

  test("costs no more than that when the grid is full", () => {
    expect(callsOf(bookOf(10, 0), act).length).toBeLessThanOrEqual(most);
  });

  test("costs no more than that after columns were moved and renamed", () => {
    const book = bookOf(10);
    for (const tab of ["Care log", "Batch log", "Feeds"]) {
      book.grid.tab(tab).moveColumn(2, 6);
      book.grid.tab(tab).write(1, 7, [[{ value: "Renamed" }]]);
    }
    expect(callsOf(book, act).length).toBeLessThanOrEqual(MOST_RENAMED);
  });
});

test("opening the sidebar with a plant list of one's own costs no more", () => {
  const book = bookOf(10);
  book.grid.addTab("Mine", {
    cells: [
      ["Nr", "Name"],
      [1, "Hoya"],
    ],
  });
  book.reply({ ask: "use plant list", tab: "Mine", columns: { Plant: "Name" } });
  const calls = callsOf(book, (open) => expect(open.reply({ ask: "load" }).plantTab).toBe("Mine"));
  expect(calls.length).toBeLessThanOrEqual(MOST_AT_OPENING);
});

test("a sitter's page goes onto its tab in a bounded number of calls, however long it is", () => {
  const page = (lines: number) => ({
    ask: "write sitter page" as const,
    cells: Array.from({ length: lines }, (_, at) => [
      "Sun 1 Mar 2026",
      "Hall",
      `Plant ${at}`,
      "Top up to the mark",
      150,
      null,
    ]),
    widths: [118, 105, 160, 165, 70, 90],
    boldRows: [1],
    wrapped: { from: 1, to: lines },
  });
  const book = bookOf(10);
  const first = callsOf(book, (open) => open.reply(page(20)));
  const longer = callsOf(book, (open) => open.reply(page(900)));
  // Six column widths, five looks at the tab as it was, and what every write takes.
  expect(first.length).toBeLessThanOrEqual(26);
  expect(longer.length).toBeLessThanOrEqual(26);
});

test("making the boards costs as much for 10,000 rows as for 200, and making them again less than half", () => {
  const make = (open: TestBook) => open.reply({ ask: "make boards" });
  const few = callsOf(bookOf(200), make);
  const book = bookOf(10_000);
  expect(callsOf(book, make)).toEqual(few);
  expect(callsOf(book, make).length).toBeLessThan(few.length / 2);
});
