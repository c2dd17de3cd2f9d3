/** Writing a setting while somebody rearranges the tab: each stands once, with its value, and no other row changes. */

import { expect, test } from "vitest";
import { openBook } from "../../src/sheet/find.ts";
import { requireSettings, type Settings, writeSettings } from "../../src/sheet/settings.ts";
import { refusal } from "../core/refusal.ts";
import { openTestBook, readyBook, type TestBook } from "./workbook.ts";

type Cells = NonNullable<NonNullable<NonNullable<Parameters<typeof openTestBook>[0]>["tabs"]>[string]["cells"]>;

const settingsOf = (book: TestBook): Settings => requireSettings(openBook(book.workbook(), ["Settings"]));
const rowsOf = (book: TestBook): unknown[][] => book.values("Settings").map((row) => row.map((cell) => cell ?? ""));
const OWN: Cells = [
  ["Setting", "Value", "Note", "Mine"],
  ["People", "Ana", "", "one"],
  ["", "", "", ""],
  ["Rest days", 180, "", "three"],
];

/** Inserts a row at the top each time just before our write goes out, `times` times. */
function insertingBook(times: number): TestBook {
  let left = times;
  const book = openTestBook({
    tabs: { Settings: { cells: OWN } },
    onCall: (name) => {
      if (name !== "Range.setValues" || left === 0) return;
      left--;
      book.grid.tab("Settings").insertRows(2, 1);
    },
  });
  return book;
}

const written = (book: TestBook): unknown[][] => rowsOf(book).filter((row) => row.some((cell) => cell !== ""));

test("is done again when a row was inserted further up meanwhile, and no other row changes", () => {
  const book = insertingBook(1);
  writeSettings(settingsOf(book), [["Spoons", "Salt: 2 g"]]);
  expect(written(book)).toEqual([
    ["Setting", "Value", "Note", "Mine"],
    ["People", "Ana", "", "one"],
    ["Rest days", 180, "", "three"],
    ["Spoons", "Salt: 2 g", "", ""],
  ]);
});

test("is done again when rows are inserted again and again, and every setting stands once", () => {
  for (const times of [2, 3, 4, 6, 1000]) {
    const book = insertingBook(times);
    writeSettings(settingsOf(book), [["Spoons", "Salt: 2 g"]]);
    const named = written(book).map(([setting, value]) => [setting, value]);
    expect(named.filter(([setting]) => setting !== "")).toEqual([
      ["Setting", "Value"],
      ["People", "Ana"],
      ["Rest days", 180],
      ["Spoons", "Salt: 2 g"],
    ]);
  }
});

test("beside a setting is put right when rows were inserted above it meanwhile", () => {
  const book = insertingBook(1);
  writeSettings(settingsOf(book), [["Rest days", 200]]);
  expect(written(book)).toEqual([
    ["Setting", "Value", "Note", "Mine"],
    ["People", "Ana", "", "one"],
    ["Rest days", 200, "", "three"],
  ]);
});

test("of a new one in two pieces, or while a column comes in, leaves both of its cells right", () => {
  const change = (cells: Cells, at: number, work: (book: TestBook) => void): TestBook => {
    let writes = 0;
    const book = openTestBook({
      tabs: { Settings: { cells } },
      onCall: (name) => {
        if (name === "Range.setValues" && ++writes === at) work(book);
      },
    });
    writeSettings(settingsOf(book), [["Spoons", 3]]);
    return book;
  };
  const apart = change(
    [
      ["Setting", "Mine", "Value"],
      ["People", "m", "Ana"],
    ],
    2,
    (book) => book.grid.tab("Settings").insertRows(2, 1),
  );
  expect(written(apart).slice(1)).toEqual([
    ["People", "m", "Ana"],
    ["Spoons", "", 3],
  ]);
  const shifted = change(OWN, 1, (book) => book.grid.tab("Settings").insertColumns(1, 1));
  expect(written(shifted).at(-1)?.slice(0, 3)).toEqual(["", "Spoons", 3]);
});

test("is refused when a column known by its mark alone has moved since", () => {
  const book = readyBook();
  const tab = book.grid.tab("Settings");
  tab.write(1, 2, [[{ value: "Wert" }]]);
  const settings = settingsOf(book);
  tab.insertColumns(1, 1);
  const before = rowsOf(book);
  expect(refusal(() => writeSettings(settings, [["Rest days", 200]]))).toMatch(/was being rearranged/);
  expect(rowsOf(book)).toEqual(before);
});

test("a setting whose row was removed meanwhile is refused, and its value stands nowhere", () => {
  let removed = false;
  const book = openTestBook({
    tabs: { Settings: { cells: OWN } },
    onCall: (name) => {
      if (name !== "Range.setValues" || removed) return;
      removed = true;
      book.grid.tab("Settings").deleteRows(4, 1);
    },
  });
  expect(refusal(() => writeSettings(settingsOf(book), [["Rest days", 200]]))).toMatch(/was being rearranged/);
  expect(rowsOf(book).flat()).not.toContain(200);
});
