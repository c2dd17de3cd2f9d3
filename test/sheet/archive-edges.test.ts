/** Moving old care: what is asked first, an archive that was rearranged or typed in, and somebody sorting meanwhile. */

import { describe, expect, test } from "vitest";
import type { CellChange, CellValue } from "../../sample-sheet/workbench/standin/grid.ts";
import { BadInput } from "../../src/core/errors.ts";
import { ARCHIVE, archiveCare, archiveWords, NOTHING_OLD } from "../../src/sheet/archive.ts";
import { dateCell, type Options, readyBook, type TestBook } from "./workbook.ts";

type Line = (CellValue | CellChange)[];

const HEADINGS = ["Id", "Date", "Plant", "Event"];
const line = (id: string, day: string, ...more: Line): Line => [id, dateCell(day), "Fern", "Top up", ...more];
const NEW = line("new-row-1", "2026-02-01");

/** The clock stands at 2026-03-10: what was done before 2025 is old. */
const bookOf = (rows: Line[], headings: Line = HEADINGS, options: Options = {}): TestBook =>
  readyBook({ ...options, tabs: { "Care log": { cells: [headings, ...rows] } } });

function refused(call: () => unknown): { code: string; sentence: string } {
  try {
    call();
  } catch (error) {
    if (error instanceof BadInput) return { code: error.code, sentence: error.message };
    throw error;
  }
  throw new Error("Not refused.");
}
const archive = (book: TestBook) => archiveCare(book.workbook());
const ids = (book: TestBook, tab: string, heading = "Id") => {
  const [headings = [], ...rows] = book.values(tab);
  return rows.map((row) => row[headings.indexOf(heading)] ?? null);
};

describe("what is asked first", () => {
  test("says how many go, and the range that goes on counting them", () => {
    const book = bookOf([line("old-row-1", "2023-02-01"), NEW]);
    const width = book.values("Care log")[0]?.length;
    expect(width).toBe(12);
    const words = (archiveWords(book.workbook()) ?? "").split("\n\n");
    expect(words[0]).toBe("1 of 2 rows of “Care log” are of before 2025-01-01 and would move to “Care log archive”.");
    expect(words[2]).toContain("{'Care log'!A1:L; 'Care log archive'!A2:L}");
    expect(words).toHaveLength(4);
  });

  test("counts rows typed by hand, which stay", () => {
    const book = bookOf([line("", "2023-02-01"), line("", "2023-02-02"), line("old-row-1", "2023-02-01"), NEW]);
    expect(archiveWords(book.workbook())).toContain("”. 2 old rows without an Id were typed by hand and stay.");
  });

  test("is nothing where nothing is old", () => {
    const book = bookOf([NEW]);
    expect(archiveWords(book.workbook())).toBeNull();
    expect(archive(book)).toBe(NOTHING_OLD);
    expect(book.grid.tabs().some((tab) => tab.name() === ARCHIVE)).toBe(false);
  });
});

describe("refused, with the log as it was:", () => {
  test.each(HEADINGS)("a log without its column %s", (heading) => {
    const book = bookOf([line("old-row-1", "2023-02-01"), NEW]);
    book.grid.tab("Care log").deleteColumns(HEADINGS.indexOf(heading) + 1, 1);
    const { code, sentence } = refused(() => archive(book));
    expect(code).toBe("no-column");
    expect(sentence).toContain(`“${heading}”`);
  });

  test("a workbook without the log", () => {
    const book = bookOf([]);
    book.grid.removeTab(book.grid.tab("Care log").id);
    expect(refused(() => archiveWords(book.workbook())).code).toBe("no-tab");
  });

  test("old rows in more than sixty places; sixty are moved", () => {
    const mixed = (places: number) =>
      bookOf(
        Array.from({ length: 2 * places }, (_, at) =>
          line(`row-${1000 + at}`, at % 2 === 0 ? "2023-02-01" : "2026-02-01"),
        ),
      );
    expect(archive(mixed(60))).toMatch(/^Moved 60 rows to “Care log archive”; 60 of 120 are left/);
    const { code, sentence } = refused(() => archive(mixed(61)));
    expect([code, sentence]).toEqual(["unsorted", expect.stringContaining("lie in 61 places")]);
  });

  test("an old row whose Id stands twice", () => {
    const book = bookOf([
      ...[line("old-row-1", "2023-02-01"), line("old-row-1", "2023-02-02"), line("old-row-2", "2023-02-02")],
      NEW,
    ]);
    const before = book.values("Care log");
    const { code, sentence } = refused(() => archive(book));
    expect([code, sentence]).toEqual(["id-twice", expect.stringContaining("“Care log”")]);
    expect(book.values("Care log")).toEqual(before);
  });

  test("an archive that has a heading of the log twice", () => {
    const book = bookOf([line("old-row-1", "2023-02-01"), NEW]);
    book.grid.addTab(ARCHIVE, { cells: [["Id", "Date", "Date"]] });
    const { code, sentence } = refused(() => archive(book));
    expect([code, sentence]).toEqual(["archive-headings", expect.stringContaining("“Date” twice")]);
    expect(ids(book, "Care log")).toEqual(["old-row-1", "new-row-1"]);
  });

  test.each([
    ["another amount", 5, { 4: 7 }],
    ["no amount", 5, { 4: null }],
    ["another day", 5, { 1: 7 }],
  ])("rows of which the archive holds %s", (_, amount, wrong: Readonly<Record<number, CellValue>>) => {
    const book = bookOf(
      [line("old-row-1", "2023-02-01", amount), line("old-row-2", "2023-02-01", 1), NEW],
      [...HEADINGS, "Amount mL"],
    );
    const there = ["old-row-1", dateCell("2023-02-01"), "Fern", "Top up", amount].map((cell, at) =>
      at in wrong ? (wrong[at] ?? null) : cell,
    );
    book.grid.addTab(ARCHIVE, { cells: [[...HEADINGS, "Amount mL"], there] });
    const { code, sentence } = refused(() => archive(book));
    expect([code, sentence]).toEqual(["archive-differs", expect.stringMatching(/^1 rows in “Care log archive”/)]);
    expect(ids(book, "Care log")).toEqual(["old-row-1", "old-row-2", "new-row-1"]);
  });
});

describe("the archive", () => {
  test("gets later rows under its headings, wherever they stand by now, and those of one's own stay", () => {
    const book = bookOf([line("old-row-1", "2023-02-01", "first"), NEW], [...HEADINGS, "Mine"]);
    archive(book);
    const tab = book.grid.tab(ARCHIVE);
    tab.moveColumn(1, 4);
    tab.insertColumns(2, 1);
    tab.write(1, 2, [[{ value: "Ours", formula: '={"Ours"}' }], [{ value: "kept" }]]);
    tab.rename("Old care");
    book.grid.tab("Care log").insertRows(2, 1);
    book.grid
      .tab("Care log")
      .write(2, 1, [
        line("old-row-2", "2023-03-01", "second").map((cell) =>
          typeof cell === "object" && cell !== null && "value" in cell
            ? (cell as CellChange)
            : { value: cell as CellValue },
        ),
      ]);
    archive(book);
    expect(ids(book, "Old care")).toEqual(["old-row-1", "old-row-2"]);
    expect(ids(book, "Old care", "Mine")).toEqual(["first", "second"]);
    expect(ids(book, "Old care", "Plant")).toEqual(["Fern", "Fern"]);
    expect(ids(book, "Old care", "Ours")).toEqual(["kept", null]);
    expect(tab.read({ row: 1, column: 2, rows: 1, columns: 1 })[0]?.[0]?.formula).toBe('={"Ours"}');
    expect(tab.marks()).toHaveLength(1);
    expect(book.grid.tabs().filter((each) => each.name() === ARCHIVE)).toEqual([]);
  });

  test("names a column without a heading by its letter, and takes what stood in it along", () => {
    const book = bookOf([line("old-row-1", "2023-02-01", "x", "y"), NEW], [...HEADINGS, null, "Mine"]);
    archive(book);
    expect(ids(book, ARCHIVE, "Column E")).toEqual(["x"]);
    expect(ids(book, ARCHIVE, "Mine")).toEqual(["y"]);
  });

  test("may hold more than the log does of a row", () => {
    const book = bookOf([line("old-row-1", "2023-02-01"), NEW]);
    book.grid.addTab(ARCHIVE, {
      cells: [
        [...HEADINGS, "Amount mL"],
        ["old-row-1", dateCell("2023-02-01"), "Fern", "Top up", 7],
      ],
    });
    expect(archive(book)).toMatch(/^Moved 1 rows/);
    expect(ids(book, ARCHIVE, "Amount mL")).toEqual([7]);
  });

  test("gets thousands of rows in their order", () => {
    const rows = Array.from({ length: 5_002 }, (_, at) => line(`row-${10_000 + at}`, "2023-02-01"));
    const book = bookOf([...rows, NEW]);
    expect(archive(book)).toMatch(/^Moved 5002 rows/);
    expect(ids(book, ARCHIVE)).toEqual(rows.map(([id]) => id));
    expect(ids(book, "Care log")).toEqual(["new-row-1"]);
  });

  test("takes the rows of a log that was renamed, and whose headings were", () => {
    const book = bookOf([line("old-row-1", "2023-02-01"), NEW]);
    book.grid.tab("Care log").write(1, 1, [[{ value: "a" }, { value: "b" }, { value: "c" }, { value: "d" }]]);
    book.grid.tab("Care log").rename("Our log");
    expect(archive(book)).toBe("Moved 1 rows to “Care log archive”; 1 of 2 are left in “Our log”.");
    expect(ids(book, ARCHIVE, "a")).toEqual(["old-row-1"]);
  });
});

test("rows that a sort between the last look and the taking out had put there stand again at the end", () => {
  let armed = true;
  const holder: TestBook[] = [];
  const book = bookOf(
    [line("old-row-1", "2023-02-01", 5), line("old-row-2", "2023-02-02", 6), NEW, line("new-row-2", "2026-02-02", 8)],
    [...HEADINGS, "Amount mL"],
    {
      onCall: (name) => {
        if (name !== "Sheet.deleteRows" || !armed) return;
        armed = false;
        holder[0]?.grid.tab("Care log").sortRows({ row: 2, column: 1, rows: 4, columns: 12 }, 2, false);
      },
    },
  );
  holder.push(book);
  expect(archive(book)).toBe(
    "Moved 2 rows to “Care log archive”; 2 of 4 are left in “Care log”. 2 rows that had got in between were put back at the end.",
  );
  expect(ids(book, ARCHIVE)).toEqual(["old-row-1", "old-row-2"]);
  expect(ids(book, "Care log").sort()).toEqual(["new-row-1", "new-row-2", "old-row-1", "old-row-2"]);
  const back = book.values("Care log").find(([id]) => id === "new-row-2");
  expect(back?.slice(1, 5)).toEqual([dateCell("2026-02-02").value, "Fern", "Top up", 8]);
  // The next run takes out what is in the archive already, and copies nothing twice.
  archive(book);
  expect(ids(book, ARCHIVE)).toEqual(["old-row-1", "old-row-2"]);
  expect(ids(book, "Care log").sort()).toEqual(["new-row-1", "new-row-2"]);
});

test("a sort before the last look is seen, and nothing more is taken out", () => {
  let looks = 0;
  const holder: TestBook[] = [];
  const book = bookOf([line("old-row-1", "2023-02-01"), NEW], HEADINGS, {
    onCall: (name) => {
      if (name === "Range.setValues" && holder[0]) looks = 2;
      else if (name === "Range.getValues" && looks > 0 && --looks === 0) {
        holder[0]?.grid.tab("Care log").sortRows({ row: 2, column: 1, rows: 2, columns: 12 }, 2, false);
      }
    },
  });
  holder.push(book);
  const { code, sentence } = refused(() => archive(book));
  expect([code, sentence]).toEqual(["moved", expect.stringContaining("safe in “Care log archive”")]);
  expect(ids(book, "Care log").sort()).toEqual(["new-row-1", "old-row-1"]);
});

test("a row whose Id is the word of the heading is moved like any other, also to an archive that is there", () => {
  const book = bookOf([line("old-row-1", "2023-02-01"), NEW]);
  archive(book);
  book.grid
    .tab("Care log")
    .write(3, 1, [[{ value: "Id" }, dateCell("2023-03-01"), { value: "Fern" }, { value: "Top up" }]]);
  archive(book);
  expect(ids(book, ARCHIVE)).toEqual(["old-row-1", "Id"]);
  expect(ids(book, "Care log")).toEqual(["new-row-1"]);
});
