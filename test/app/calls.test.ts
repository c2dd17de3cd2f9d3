/**
 * How many calls to the spreadsheet an action costs, whatever the number of rows: at most thirteen, and one or two more
 * where columns bear other headings than ours. Two of them look before a write whether its rows are free still, and
 * after it whether it landed there, because people sort and insert while others log.
 */

import { describe, expect, test } from "vitest";
import type { CellChange, CellValue } from "../../sample-sheet/workbench/standin/grid.ts";
import { batch, careEntry, dateCell, readyBook, type TestBook } from "../sheet/workbook.ts";

const MOST = 13;
const MOST_RENAMED = 15;

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
  [
    "entering readings",
    (book) => book.reply({ ask: "log readings", batchId: "batch-5-id", ecMsCm: 1.5, pH: 6, verdict: "As expected." }),
  ],
];

describe.each(ACTIONS)("%s", (_, act) => {
  test("costs the same few calls for 200 and for 10,000 rows", () => {
    const few = callsOf(bookOf(200), act);
    const many = callsOf(bookOf(10_000), act);
    expect(many).toEqual(few);
    expect(few.length).toBeLessThanOrEqual(MOST);
  });

  test("costs no more than that when the grid is full", () => {
    expect(callsOf(bookOf(10, 0), act).length).toBeLessThanOrEqual(MOST);
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
  expect(calls.length).toBeLessThanOrEqual(MOST);
});
