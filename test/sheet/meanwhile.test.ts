/**
 * Somebody does one thing at the sheet while a record is written, before each of our calls in turn: every row keeps
 * what it held, the record stands there once, and what was refused is there after pressing again.
 */

import { describe, expect, test } from "vitest";
import type { CellValue } from "../../sample-sheet/workbench/standin/grid.ts";
import type { MemoryGrid } from "../../sample-sheet/workbench/standin/memory.ts";
import type { Ask, RequestFor } from "../../src/app/contract.ts";
import { copyGrid } from "../shared/copy.ts";
import { careEntry, dateCell, openTestBook, readyBook } from "./workbook.ts";

type Tab = ReturnType<MemoryGrid["tab"]>;
type Fields = Readonly<Record<string, CellValue>>;

const DAY = dateCell("2026-02-01").value;
const CARE: readonly Fields[] = [
  { Id: "care-0001", Date: DAY, Plant: "Hoya", Event: "Top up", "Amount mL": 120, Note: "d", Mine: "one" },
  { Date: DAY, Plant: "Ivy", Event: "Repot", Note: "typed by hand", Mine: "two" },
  { Id: "care-0003", Date: DAY, Plant: "Moss", Event: "Note", Note: "a", Mine: "three" },
  { Date: DAY, Plant: "Reed", Event: "Top up", Note: "typed last", Mine: "four" },
];
const BATCHES: readonly Fields[] = [
  { Id: "batch-0001", Date: DAY, Litres: 10, Doses: "Salt 1 g/L (10 g)", Note: "c", Mine: "one" },
  { Id: "batch-0002", Date: DAY, Litres: 5, Doses: "Salt 2 g/L (10 g)", Note: "a", Mine: "two" },
  { Date: DAY, Litres: 3, Doses: "by eye", Note: "typed by hand", Mine: "three" },
];
const SETTINGS: readonly Fields[] = [
  { Setting: "Spoonfuls at most", Value: 12, Note: "b", Mine: "one" },
  { Setting: "Scale step g", Value: 0.1, Note: "c", Mine: "two" },
  { Setting: "Our own", Value: "x", Note: "a", Mine: "three" },
];

const tabOf = (grid: MemoryGrid, name: string): Tab =>
  grid.tabs().find((tab) => tab.marks().some(({ value }) => value === `tab:${name}`)) as Tab;

function startingGrid(): MemoryGrid {
  const { grid } = readyBook();
  for (const [name, rows] of Object.entries({ "Care log": CARE, "Batch log": BATCHES, Settings: SETTINGS })) {
    const tab = grid.tab(name);
    const { row: last, column: width } = tab.extent();
    if (last > 1) tab.deleteRows(2, last - 1);
    tab.write(1, width + 1, [[{ value: "Mine" }]]);
    const [headings = []] = tab.read({ row: 1, column: 1, rows: 1, columns: width + 1 });
    const lines = rows.map((fields) =>
      headings.map(({ value: heading }) => {
        const value = fields[String(heading)] ?? null;
        return heading === "Date" ? { value, format: "yyyy-mm-dd" } : { value };
      }),
    );
    tab.write(2, 1, lines);
  }
  return grid;
}

/** Rows by our headings, wherever their columns are by now; a value in nobody's column is told by its place. */
function rowsOf(grid: MemoryGrid, name: string): string[] {
  const tab = tabOf(grid, name);
  const { row, column } = tab.extent();
  const lines = tab.read({ row: 1, column: 1, rows: row, columns: column });
  const headingAt = new Map<number, string>();
  for (const { value, column: at } of tab.marks()) {
    if (at !== null && value.startsWith(`column:${name}/`)) headingAt.set(at, value.slice(name.length + 8));
  }
  lines[0]?.forEach(({ value }, at) => {
    if (value === "Mine") headingAt.set(at + 1, "Mine");
  });
  return lines.slice(1).flatMap((line) => {
    const fields = line.flatMap(({ value }, at) =>
      value === null ? [] : [[headingAt.get(at + 1) ?? `in column ${at + 1}`, value] as const],
    );
    return fields.length === 0 ? [] : [said(Object.fromEntries(fields))];
  });
}
const said = (fields: Fields): string => JSON.stringify(Object.entries(fields).sort(([a], [b]) => (a < b ? -1 : 1)));

interface Press {
  readonly tab: string;
  readonly request: RequestFor<Ask>;
  readonly rows: readonly Fields[];
}

const entry = (id: string, plant: string) =>
  careEntry({ id, plant, day: "2026-02-01", event: "Top up", amountMl: 250, note: `${plant} was dry` });
const written = (id: string, plant: string): Fields => ({
  ...{ Id: id, Date: DAY, Plant: plant, Event: "Top up", "Amount mL": 250, Who: "Ana", Note: `${plant} was dry` },
});

const PRESSES: Readonly<Record<string, Press>> = {
  "logging one": {
    tab: "Care log",
    request: { ask: "log care", who: "Ana", entries: [entry("meanwhile-1", "Fern")] },
    rows: [...CARE, written("meanwhile-1", "Fern")],
  },
  "logging two": {
    tab: "Care log",
    request: { ask: "log care", who: "Ana", entries: [entry("meanwhile-2", "Fern"), entry("meanwhile-3", "Palm")] },
    rows: [...CARE, written("meanwhile-2", "Fern"), written("meanwhile-3", "Palm")],
  },
  "filling in readings": {
    tab: "Batch log",
    request: { ask: "log readings", batchId: "batch-0002", ecMsCm: 1.4, pH: 5.9, verdict: "" },
    rows: BATCHES.map((row) => (row.Id === "batch-0002" ? { ...row, "Measured EC": 1.4, "Measured pH": 5.9 } : row)),
  },
  "keeping settings, one of them new": {
    tab: "Settings",
    request: {
      ask: "save settings",
      settings: [
        { setting: "Scale step g", value: "0.01" },
        { setting: "Spoons", value: "Salt: 2 g" },
      ],
    },
    rows: [
      ...SETTINGS.map((row) => (row.Setting === "Scale step g" ? { ...row, Value: 0.01 } : row)),
      { Setting: "Spoons", Value: "Salt: 2 g" },
    ],
  },
};

const sort = (tab: Tab, heading: string, ascending: boolean): void => {
  const { row, column } = tab.extent();
  const [headings = []] = tab.read({ row: 1, column: 1, rows: 1, columns: column });
  const by = headings.findIndex(({ value }) => value === heading) + 1;
  if (row > 2) tab.sortRows({ row: 2, column: 1, rows: row - 1, columns: column }, by, ascending);
};

const DEEDS: Readonly<Record<string, (tab: Tab) => void>> = {
  "inserts a row at the top": (tab) => tab.insertRows(2, 1),
  "inserts two rows at the top": (tab) => tab.insertRows(2, 2),
  "inserts a row in the middle": (tab) => tab.insertRows(4, 1),
  "inserts a row below the last": (tab) => tab.insertRows(tab.extent().row + 1, 1),
  "sorts by note": (tab) => sort(tab, "Note", true),
  "sorts the other way round": (tab) => sort(tab, "Mine", false),
  "inserts a column on the left": (tab) => tab.insertColumns(1, 1),
  "inserts a column in between": (tab) => tab.insertColumns(3, 1),
  "moves a column to the right": (tab) => tab.moveColumn(2, 7),
  "moves a column to the left": (tab) => tab.moveColumn(3, 1),
  "renames the tab": (tab) => tab.rename("Our own word"),
  "renames a heading": (tab) => tab.write(1, 2, [[{ value: "Our own word" }]]),
};

const start = startingGrid();

describe.each(Object.entries(PRESSES))("%s while somebody", (_, { tab: name, request, rows }) => {
  const expected = rows.map(said).sort();

  function pressed(deed: ((tab: Tab) => void) | null, moment: number) {
    const grid = copyGrid(start);
    let count = 0;
    const book = openTestBook({
      grid,
      onCall: () => {
        if (++count === moment) deed?.(tabOf(grid, name));
      },
    });
    const first = book.ask(request);
    const calls = count;
    if (!first.ok) expect(first.sentence).toMatch(/[.”]$/);
    if (!first.ok) book.reply(request);
    return { calls, found: rowsOf(grid, name).sort() };
  }

  const { calls, found } = pressed(null, 0);

  test("looks on writes what was sent", () => expect(found).toEqual(expected));

  test.each(Object.entries(DEEDS))("%s", (_what, deed) => {
    for (let moment = 1; moment <= calls; moment++) {
      expect(pressed(deed, moment).found, `before call ${moment} of ${calls}`).toEqual(expected);
    }
  });
});
