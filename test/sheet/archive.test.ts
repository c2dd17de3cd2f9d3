/** Old care moves to the archive whole, whatever fails in between, and no count of days changes by it. */

import { describe, expect, test } from "vitest";
import type { CellChange, CellValue } from "../../sample-sheet/workbench/standin/grid.ts";
import { MemoryGrid } from "../../sample-sheet/workbench/standin/memory.ts";
import type { PaperScreen } from "../../sample-sheet/workbench/standin/ui.ts";
import { archiveOldCare } from "../../src/host/menu.ts";
import { openLog } from "../../src/sheet/append.ts";
import { planArchive } from "../../src/sheet/archive-plan.ts";
import { openBook } from "../../src/sheet/find.ts";
import { CARE_LOG } from "../../src/sheet/log-tabs.ts";
import { copyGrid, differing, stateOf } from "../shared/copy.ts";
import { FAULTS, type Fault, trialOver } from "../shared/faults.ts";
import { dateCell, openTestBook, type TestBook } from "./workbook.ts";

type Cell = CellValue | CellChange;
const HEADINGS = [...CARE_LOG.columns.map(({ heading }) => heading), "Own note"];

function rowOf(fields: Readonly<Record<string, Cell>>): Cell[] {
  return HEADINGS.map((heading) => fields[heading] ?? null);
}

/** 14 rows of two plants over four years; the clock stands at 2026-03-10. */
const ROWS: readonly Readonly<Record<string, Cell>>[] = [
  { Id: "old-repot-1", Date: dateCell("2023-04-01"), Plant: "Fern", Event: "Repot", "Own note": "mine 1" },
  { Id: "old-repot-2", Date: dateCell("2024-04-01"), Plant: "Fern", Event: "Repot", Note: "=1+1" },
  { Id: "old-topup-1", Date: dateCell("2023-05-01"), Plant: "Fern", Event: "Top up", "Amount mL": 100 },
  { Id: "old-topup-2", Date: dateCell("2023-06-01"), Plant: "Fern", Event: "Top up", "Amount mL": 150, "Own note": 7 },
  { Id: "old-topup-3", Date: dateCell("2024-02-29"), Plant: "Fern", Event: "Top up", "Amount mL": 50, EC: 1.2 },
  { Id: "old-wrong-1", Date: dateCell("2024-06-01"), Plant: "Fern", Event: "Top up", "Amount mL": 9000 },
  { Id: "old-right-1", Date: dateCell("2024-06-02"), Plant: "Fern", Event: "Top up", Corrects: "old-wrong-1" },
  { Date: dateCell("2023-07-01"), Plant: "Hoya", Event: "Top up", Note: "typed by hand" },
  { Id: "old-hoya-01", Date: dateCell("2024-01-01"), Plant: "Hoya", Event: "Repot" },
  { Id: "last-chain1", Date: dateCell("2024-12-31"), Plant: "Hoya", Event: "Top up", "Amount mL": 80 },
  { Id: "last-chain2", Date: dateCell("2025-01-01"), Plant: "Hoya", Event: "Top up", Corrects: "last-chain1" },
  { Id: "new-fern-01", Date: dateCell("2025-06-01"), Plant: "Fern", Event: "Top up", "Amount mL": 60 },
  { Id: "new-fern-02", Date: dateCell("2026-01-01"), Plant: "Fern", Event: "Top up", "Amount mL": 70 },
  { Id: "new-hoya-01", Date: dateCell("2026-02-01"), Plant: "Hoya", Event: "Top up", "Amount mL": 90 },
];
const MOVED = ["old-repot-1", "old-topup-1", "old-topup-2", "old-topup-3", "old-wrong-1", "old-right-1"];

function oldGrid(): MemoryGrid {
  const cells = [HEADINGS, ...ROWS.map(rowOf)];
  const grid = new MemoryGrid({
    tabs: {
      Plants: { rows: 6, cells: [["Plant"], ["Fern"], ["Hoya"]] },
      "Care log": { rows: cells.length + 2, columns: HEADINGS.length + 1, cells },
    },
  });
  openTestBook({ grid }).setUp();
  return grid;
}

const START = oldGrid();
const screenOf = (book: TestBook) => book.host.screen as PaperScreen;
const idsOf = (grid: MemoryGrid, name: string): string[] => {
  const tab = grid.tabs().find((each) => each.name() === name);
  if (!tab) return [];
  const { row, column } = tab.extent();
  if (row === 0) return [];
  const cells = tab
    .read({ row: 1, column: 1, rows: row, columns: column })
    .map((line) => line.map(({ value }) => value));
  const at = cells[0]?.indexOf("Id") ?? -1;
  return cells.slice(1).flatMap((line) => (line[at] === null ? [] : [String(line[at])]));
};
const rest = (book: TestBook) => book.reply({ ask: "load" }).plants.map(({ plant, restDays }) => [plant, restDays]);

describe("archiving", () => {
  test("shows first what would move, and does nothing without a yes", () => {
    const book = openTestBook({ grid: copyGrid(START) });
    const before = stateOf(book.grid);
    screenOf(book).agree = false;
    archiveOldCare();
    expect(screenOf(book).alerts[0]).toMatch(
      /6 of 14 rows of “Care log” are of before 2025-01-01 and would move to “Care log archive”/,
    );
    expect(screenOf(book).alerts[0]).toMatch(/1 old rows without an Id were typed by hand and stay/);
    expect(screenOf(book).alerts[1]).toBe("Nothing was changed.");
    expect(differing(before, stateOf(book.grid))).toEqual([]);
  });

  test("moves whole rows, other people's columns too, and changes no count of days", () => {
    const book = openTestBook({ grid: copyGrid(START) });
    const before = rest(book);
    archiveOldCare();
    expect(screenOf(book).alerts[1]).toBe("Moved 6 rows to “Care log archive”; 8 of 14 are left in “Care log”.");
    expect(idsOf(book.grid, "Care log archive").sort()).toEqual([...MOVED].sort());
    expect(idsOf(book.grid, "Care log")).toEqual([
      "old-repot-2",
      "old-hoya-01",
      "last-chain1",
      "last-chain2",
      "new-fern-01",
      "new-fern-02",
      "new-hoya-01",
    ]);
    const [headings = [], ...rows] = book.values("Care log archive");
    expect(headings.slice(0, HEADINGS.length)).toEqual(HEADINGS);
    const moved = ROWS.filter(({ Id }) => MOVED.includes(String(Id)));
    expect(rows).toEqual(
      moved.map((fields) =>
        rowOf(fields).map((cell) => (typeof cell === "object" && cell !== null && "value" in cell ? cell.value : cell)),
      ),
    );
    expect(rest(book)).toEqual(before);
    archiveOldCare();
    expect(screenOf(book).alerts[2]).toMatch(/^No row of the Care log is old enough/);
  });

  test("goes on where any call failed in any way: at no time is a row nowhere, and in the end each is once", () => {
    const clean = trialOver(copyGrid(START));
    clean.arm(null);
    archiveOldCare();
    const calls = clean.reached();
    const after = stateOf(clean.book.grid);
    const ids = ROWS.flatMap(({ Id }) => (Id ? [String(Id)] : []));
    const wrong: string[] = [];
    let count = 0;
    for (let at = 1; at <= calls; at++) {
      for (const fault of Object.keys(FAULTS) as Fault[]) {
        count++;
        const trial = trialOver(copyGrid(START));
        const { grid } = trial.book;
        trial.arm(fault, at);
        try {
          archiveOldCare();
        } catch {
          // The script was ended, or its message could not be shown.
        }
        const there = [...idsOf(grid, "Care log"), ...idsOf(grid, "Care log archive")];
        const nowhere = ids.filter((id) => !there.includes(id));
        if (nowhere.length > 0) wrong.push(`${fault} at call ${at}: nowhere ${nowhere.join(", ")}`);
        trial.arm(null);
        archiveOldCare();
        const left = differing(after, stateOf(grid));
        if (left.length > 0) wrong.push(`${fault} at call ${at}: ${left.slice(0, 6).join("; ")}`);
      }
    }
    console.log(`Archive: ${count} faults.`);
    expect(wrong.slice(0, 10)).toEqual([]);
  }, 60_000);

  test("takes nothing out of a tab that is sorted meanwhile", () => {
    const grid = copyGrid(START);
    const log = grid.tab("Care log");
    let left = 0;
    const book = openTestBook({
      grid,
      onCall: (name) => {
        // Somebody sorts just before the rows are looked at for the last time.
        if (name === "Range.setValues") left = 2;
        else if (left > 0 && name === "Range.getValues" && --left === 0) {
          log.sortRows({ row: 2, column: 1, rows: ROWS.length, columns: HEADINGS.length }, 3, false);
        }
      },
    });
    archiveOldCare();
    expect(screenOf(book).alerts[1]).toMatch(/was being rearranged, so no more rows were taken out/);
    const ids = ROWS.flatMap(({ Id }) => (Id ? [String(Id)] : []));
    expect(idsOf(grid, "Care log").sort()).toEqual([...ids].sort());
  });

  test("asks for sorted rows when the old ones lie all over the tab", () => {
    const mixed = Array.from({ length: 200 }, (_, at) => ({
      Id: `row-${String(at).padStart(6, "0")}`,
      Date: dateCell(at % 2 === 0 ? "2023-01-01" : "2026-01-01"),
      Plant: "Fern",
      Event: "Top up",
    }));
    const book = openTestBook({ tabs: { "Care log": { cells: [HEADINGS, ...mixed.map(rowOf)] } } });
    book.setUp();
    archiveOldCare();
    expect(screenOf(book).alerts[1]).toMatch(/lie in 100 places. Sort the tab by Date first/);
    expect(book.grid.tabs().some((tab) => tab.name() === "Care log archive")).toBe(false);
  });

  test("moves no more at a time than fits into a run, with whole chains", () => {
    const book = openTestBook({ grid: copyGrid(START) });
    const log = openLog(openBook(book.workbook(), ["Care log"]), CARE_LOG);
    const plan = planArchive(log, book.workbook().today(), 3);
    expect(plan.more).toBe(true);
    expect(plan.places).toEqual([1, 3, 4]);
    // The fourth row would bring the one that corrects it.
    expect(planArchive(log, book.workbook().today(), 5).places).toEqual([1, 3, 4, 5, 6, 7]);
  });
});
