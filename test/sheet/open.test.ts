/** How much of a tab is read: as far as its marks go when that is enough, everything otherwise. */

import { describe, expect, test } from "vitest";
import { text } from "../../src/sheet/columns.ts";
import type { Book } from "../../src/sheet/find.ts";
import { readMarked, readTab } from "../../src/sheet/open.ts";
import type { Mark, TabPort } from "../../src/sheet/port.ts";
import type { TabSpec } from "../../src/sheet/spec.ts";

type Values = readonly (readonly unknown[])[];
const WIDE: Values = [
  ["Plant", "", "Mine", "", "Place", "Far"],
  ["Fern", "", 1, "", "Hall", "x"],
];

function opened(marks: readonly (readonly [tabId: number, column: number | null])[], values: Values = WIDE) {
  const calls: string[] = [];
  const tab = {
    ...{ id: 7, name: "Plants" },
    readColumns: (columns: number) => {
      calls.push(`columns ${columns}`);
      return values.map((row) => row.slice(0, columns));
    },
    readAll: () => {
      calls.push("all");
      return values;
    },
  } as Partial<TabPort> as TabPort;
  const placed = marks.map(([tabId, column]): Mark => ({ tabId, column, text: "of another time" }));
  const book = { marks: placed, tabs: [tab] } as Partial<Book> as Book;
  return { calls, tab, book };
}
const columnsOf = (headingRow: readonly unknown[]) => ({
  tabName: "Plants",
  at: new Map([["width", headingRow.length]]),
  doubts: new Map<string, string>(),
});

describe("a tab is read", () => {
  test("as far as its last mark when all is found there, in one call", () => {
    const { calls, tab, book } = opened([
      [7, 5],
      [7, 2],
      [8, 9],
      [7, null],
    ]);
    const { values, columns } = readMarked(book, tab, (row) => ({ columns: columnsOf(row), complete: true }));
    expect(calls).toEqual(["columns 5"]);
    expect(values).toEqual(WIDE.map((row) => row.slice(0, 5)));
    expect(columns.at.get("width")).toBe(5);
  });

  test("as a whole when something is not found there", () => {
    const { calls, tab, book } = opened([[7, 2]]);
    const { values, columns } = readMarked(book, tab, (row) => ({ columns: columnsOf(row), complete: row.length > 2 }));
    expect(calls).toEqual(["columns 2", "all"]);
    expect(values).toBe(WIDE);
    expect(columns.at.get("width")).toBe(6);
  });

  test.each([[[]], [[[7, null] as const]], [[[8, 3] as const]]])(
    "as a whole at once without marks of columns: %j",
    (marks) => {
      const { calls, tab, book } = opened(marks);
      expect(readMarked(book, tab, (row) => ({ columns: columnsOf(row), complete: true })).values).toBe(WIDE);
      expect(calls).toEqual(["all"]);
    },
  );

  test("without a heading row when it is empty", () => {
    for (const marks of [[], [[7, 1] as const]]) {
      const { tab, book } = opened(marks, []);
      const { values, columns } = readMarked(book, tab, (row) => ({ columns: columnsOf(row), complete: true }));
      expect(values).toEqual([]);
      expect(columns.at.get("width")).toBe(0);
    }
  });
});

test("a tab of ours is read as a whole when one of its columns is not among the marked ones", () => {
  const columns = [text("Plant", ""), text("Place", "")];
  const spec: TabSpec = { name: "Plants", key: "Plant", columns, help: "" };
  const near = opened([[7, 5]]);
  expect([...readTab(near.book, spec, near.tab).columns.at]).toEqual([
    ["Plant", 1],
    ["Place", 5],
  ]);
  expect(near.calls).toEqual(["columns 5"]);
  const far = opened([[7, 4]]);
  expect(readTab(far.book, spec, far.tab).columns.at.get("Place")).toBe(5);
  expect(far.calls).toEqual(["columns 4", "all"]);
});
