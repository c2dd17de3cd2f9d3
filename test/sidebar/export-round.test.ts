/** Out of one spreadsheet and into another, through both halves of the add-on: the same tabs, once, in pages. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CellChange, type CellValue, isDateFormat } from "../../sample-sheet/workbench/standin/grid.ts";
import type { AskSheet } from "../../sidebar/calls.ts";
import type { Travelling } from "../../sidebar/export-cells.ts";
import { createExportDesk, createImportDesk, rowsToWrite } from "../../sidebar/export-desk.ts";
import { RECORD_TABS } from "../../sidebar/export-read.ts";
import { KEYS } from "../../sidebar/import-plan.ts";
import { createStore } from "../../sidebar/store.ts";
import type { PanelWorld } from "../../sidebar/world.ts";
import type { Loaded } from "../../src/app/contract.ts";
import { TAB_NAMES } from "../../src/sheet/spec.ts";
import { TABS, tabSpec } from "../../src/sheet/tabs.ts";
import { dateCell, readyBook, serialOf, type TestBook } from "../sheet/workbook.ts";
import { cell } from "./cell-arbitrary.ts";

/** A panel's world over a workbook in memory. */
function worldOf(book: TestBook): PanelWorld {
  const ask: AskSheet = (request) => Promise.resolve(book.ask(request as never) as never);
  return { ask, after: () => () => undefined, newId: () => "unused-id", nowMs: () => 0, storage: null, formulas: [] };
}

const settle = (): Promise<void> => new Promise((done) => setTimeout(done, 0));

async function ended(job: { now: { get(): { state: string } } }): Promise<unknown> {
  while (job.now.get().state === "under way") await settle();
  return job.now.get();
}

async function zipOfBook(book: TestBook): Promise<Uint8Array> {
  const desk = createExportDesk(worldOf(book), createStore<Loaded | null>(null));
  desk.job.press();
  expect(await ended(desk.job)).toMatchObject({ state: "done" });
  const zip = desk.zip.get();
  if (zip === null) throw new Error("no zip");
  return zip.bytes;
}

async function bring(book: TestBook, bytes: Uint8Array, settings = true) {
  const loaded = createStore<Loaded | null>(book.reply({ ask: "load" }));
  const desk = createImportDesk(worldOf(book), loaded, () => undefined);
  desk.choose(bytes);
  const looked = await ended(desk.look);
  desk.withSettings.set(settings);
  const plan = desk.plan.get() ?? [];
  desk.write.press();
  return { looked, plan, wrote: await ended(desk.write) };
}

function changeOf(value: Travelling): CellChange {
  if (value !== null && typeof value === "object") return { value: serialOf(value.day), format: "yyyy-mm-dd" };
  return { value: value === "" ? null : value };
}

/** Values and date formats of a tab below its headings, blank rows left out, in any order. */
function content(book: TestBook, tab: string): string[] {
  const { row, column } = book.grid.tab(tab).extent();
  const cells = book.grid.tab(tab).read({ row: 1, column: 1, rows: Math.max(1, row), columns: Math.max(1, column) });
  return cells
    .slice(1)
    .filter((line) => line.some(({ value }) => value !== null))
    .map((line) =>
      JSON.stringify(line.map(({ value, format }) => [value, typeof value === "number" && isDateFormat(format)])),
    )
    .sort();
}

test("every tab of records is known here, with the key it has there", () => {
  expect([...RECORD_TABS].sort()).toEqual([...TAB_NAMES].sort());
  expect(KEYS).toEqual(Object.fromEntries(TABS.map(({ name, key }) => [name, key])));
});

test("whatever stands in the cells, an empty sheet gets the same tabs, and the second time nothing", async () => {
  const LISTS = ["Plants", "Care log", "Feeds", "Claims"] as const;
  const rows = (name: (typeof LISTS)[number]) => {
    const { columns, key } = tabSpec(name);
    const cells = columns.map(({ heading, kind }) => {
      if (heading === key) return fc.uuid().map((id): Travelling => id);
      // A plain number under a date format is a date, on the host too.
      return kind === "day" ? cell.filter((each) => typeof each !== "number") : cell;
    });
    return fc.array(fc.tuple(...cells), { minLength: 2, maxLength: 9 });
  };
  await fc.assert(
    fc.asyncProperty(fc.tuple(...LISTS.map(rows)), async (lists) => {
      const first = readyBook();
      LISTS.forEach((name, at) => {
        const lines = (lists[at] ?? []).map((line) => line.map(changeOf));
        if (lines.length > 0) first.grid.tab(name).write(2, 1, lines);
      });
      const before = Object.fromEntries(TAB_NAMES.map((name) => [name, content(first, name)]));
      const bytes = await zipOfBook(first);
      const second = readyBook();
      const { wrote } = await bring(second, bytes);
      expect(wrote).toMatchObject({ state: "done", notes: [] });
      for (const name of TAB_NAMES) expect(content(second, name), name).toEqual(before[name]);
      const again = await bring(second, bytes);
      expect(again.plan.flatMap(({ rows: left }) => left)).toEqual([]);
    }),
    // Two workbooks and four readings a run: few runs with many cells each.
    { numRuns: 4, endOnFailure: true },
  );
});

/** Row of a setting on its tab, heading = 1. */
const rowOf = (book: TestBook, setting: string): number =>
  book.values("Settings").findIndex(([name]) => name === setting) + 1;

describe("a household's sheet", () => {
  const household = (): TestBook => {
    const book = readyBook();
    book.grid.tab("Plants").write(1, 8, [[{ value: "Luck" }], [{ value: "=not a formula" }]]);
    book.grid
      .tab("Plants")
      .write(2, 1, [[{ value: "Fern" }, { value: "Nephrolepis" }, { value: "Hall" }, { value: 800 }]]);
    book.grid.tab("Settings").write(rowOf(book, "Rest days"), 2, [[{ value: 90 }]]);
    // Typed by hand, so without an Id; twice the same.
    const typed: CellChange[] = [{ value: null }, dateCell("2026-03-01"), { value: "Fern" }, { value: "Top up" }];
    book.grid.tab("Care log").write(2, 1, [typed, typed]);
    return book;
  };

  test("brings settings only where they are wanted, and says what it cannot take", async () => {
    const bytes = await zipOfBook(household());
    const second = readyBook();
    const { plan, wrote, looked } = await bring(second, bytes, false);
    expect(looked).toMatchObject({
      state: "done",
      sentence: "3 rows of this file are not in the sheet yet. Nothing has been written.",
    });
    expect(plan.find(({ tab }) => tab === "Plants")?.notes).toEqual([
      "“Luck” is no heading of “Plants” in this sheet, so what stands there is left out. To keep it, type the heading in row 1 first, then choose the file again.",
    ]);
    expect(rowsToWrite(plan, false).map(({ tab }) => tab)).toEqual(["Plants", "Care log"]);
    expect(wrote).toMatchObject({ sentence: "Wrote 3 rows. Choosing the file again would add nothing twice." });
    expect(second.values("Settings")[rowOf(second, "Rest days") - 1]?.[1]).toBe(180);
    expect(
      second
        .values("Care log")
        .slice(1)
        .map((row) => row.slice(1, 4)),
    ).toEqual([
      [serialOf("2026-03-01"), "Fern", "Top up"],
      [serialOf("2026-03-01"), "Fern", "Top up"],
    ]);
    const { plan: settings } = await bring(second, bytes);
    expect(settings.find(({ tab }) => tab === "Settings")?.rows).toEqual([["Rest days", 90]]);
    expect(second.values("Settings")[rowOf(second, "Rest days") - 1]?.[1]).toBe(90);
  });

  test("keeps a column of one's own whose heading was typed first", async () => {
    const bytes = await zipOfBook(household());
    const second = readyBook();
    second.grid.tab("Plants").write(1, 8, [[{ value: "Luck" }]]);
    await bring(second, bytes);
    expect(second.values("Plants")[1]?.[7]).toBe("=not a formula");
  });

  test("writes nothing twice when it is brought back home", async () => {
    const book = household();
    const bytes = await zipOfBook(book);
    const { plan } = await bring(book, bytes);
    expect(plan.flatMap(({ rows }) => rows)).toEqual([]);
  });

  test("goes on after a failure half-way, without a row too many", async () => {
    const bytes = await zipOfBook(household());
    let fail = true;
    const opened: TestBook[] = [];
    const second = readyBook({
      afterCall: (name) => {
        if (name === "Range.setValues" && fail && opened[0] && opened[0].grid.tab("Care log").extent().row > 1) {
          fail = false;
          throw new Error("Service Spreadsheets failed while accessing the document.");
        }
      },
    });
    opened.push(second);
    const { wrote } = await bring(second, bytes);
    expect(wrote).toMatchObject({
      state: "failed",
      sentence: expect.stringContaining("What was written so far stays; trying again adds only the rest."),
    });
    await bring(second, bytes);
    expect(second.values("Care log")).toHaveLength(3);
    expect(second.values("Plants")).toHaveLength(2);
  });
});

test("a plant list of one's own is exported under our headings, and never written to", async () => {
  const tabs = {
    Green: {
      cells: [
        ["Room", "Who"],
        ["Hall", "Fern"],
      ] as CellValue[][],
    },
  };
  const own = () => {
    const book = readyBook({ tabs });
    book.reply({ ask: "use plant list", tab: "Green", columns: { Plant: "Who", Place: "Room" } });
    return book;
  };
  const bytes = await zipOfBook(own());
  const fresh = readyBook();
  await bring(fresh, bytes);
  expect([fresh.cell("Plants", 2, "Plant"), fresh.cell("Plants", 2, "Place")]).toEqual(["Fern", "Hall"]);
  const other = own();
  other.grid.tab("Green").write(2, 2, [[{ value: "Ivy" }]]);
  const { plan } = await bring(other, bytes);
  expect(plan.find(({ tab }) => tab === "Plants")).toMatchObject({
    rows: [],
    notes: [expect.stringContaining("never changed")],
  });
  expect(other.refusal({ ask: "import rows", tab: "Plants", headings: ["Plant"], rows: [["Moss"]] }).sentence).toMatch(
    /^Plants come from a list of your own/,
  );
});

test("a long log goes in pages, and a sort between two of them is noticed", async () => {
  const book = readyBook();
  const log = book.grid.tab("Care log");
  const lines = Array.from({ length: 7000 }, (_, at): CellChange[] => [
    { value: `row-${String(at).padStart(6, "0")}` },
    dateCell("2026-03-01"),
    { value: `Plant ${at % 9}` },
    { value: "Top up" },
  ]);
  log.insertRows(1001, 7000);
  log.write(2, 1, lines);
  const desk = createExportDesk(worldOf(book), createStore<Loaded | null>(null));
  desk.job.press();
  // 7,000 rows and what an empty sheet that was set up holds: 14 events and the settings.
  const lists = ["Events", "Settings"].map((name) => book.values(name).length - 1);
  expect(await ended(desk.job)).toMatchObject({
    sentence: `${7000 + (lists[0] ?? 0) + (lists[1] ?? 0)} rows of 12 tabs are ready to be saved.`,
  });

  let pages = 0;
  const world = worldOf(book);
  const watched: PanelWorld = {
    ...world,
    ask: (request) => {
      const asked = request as { ask: string; tab?: string };
      if (asked.ask === "read page" && asked.tab === "Care log") {
        pages++;
        if (pages === 2) log.sortRows({ row: 2, column: 1, rows: 7000, columns: 4 }, 1, false);
      }
      return world.ask(request);
    },
  };
  const disturbed = createExportDesk(watched, createStore<Loaded | null>(null));
  disturbed.job.press();
  expect(await ended(disturbed.job)).toMatchObject({
    state: "failed",
    sentence: expect.stringMatching(/^Somebody changed the sheet/),
  });
});
