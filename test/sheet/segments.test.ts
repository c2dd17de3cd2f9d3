/** The blocks in which new rows are written: nothing of somebody else's is touched, in whichever of the rows it stands. */

import { expect, test } from "vitest";
import type { Columns } from "../../src/sheet/find.ts";
import { CARE_LOG } from "../../src/sheet/log-tabs.ts";
import { type Layout, segmentsOf } from "../../src/sheet/segments.ts";
import { careEntry, readyBook } from "./workbook.ts";

const two = (first: object = {}, second: object = {}) => ({
  ask: "log care" as const,
  who: "Ana",
  entries: [careEntry(first), careEntry(second)],
});

test.each([2, 3])("a cell of somebody else's in row %i alone stays", (row) => {
  const book = readyBook();
  const tab = book.grid.tab("Care log");
  tab.insertColumns(3, 1);
  tab.write(1, 3, [[{ value: "Mine" }]]);
  tab.write(row, 3, [[{ value: "mine" }]]);
  expect(book.reply(two({ plant: "Fern" }, { plant: "Hoya" })).written).toBe(2);
  expect([2, 3].map((at) => book.cell("Care log", at, "Mine"))).toEqual(row === 2 ? ["mine", null] : [null, "mine"]);
  expect([2, 3].map((at) => book.cell("Care log", at, "Plant"))).toEqual(["Fern", "Hoya"]);
});

test("a formula filled ahead is in the way as soon as one of the rows has something for it", () => {
  const book = readyBook();
  const at = (book.values("Care log")[0] ?? []).indexOf("Note") + 1;
  book.grid.tab("Care log").write(3, at, [[{ value: "", formula: '=""' }]]);
  expect(book.refusal(two({ note: "" }, { note: "wilted" })).code).toBe("formula-in-the-way");
  expect(book.refusal(two({ note: "wilted" }, { note: "" })).code).toBe("formula-in-the-way");
  expect(book.reply(two()).written).toBe(2);
});

/** Id, Date and Plant in columns 4, 1 and 2; column 3 is somebody else's. */
function layout(given: { readonly filled?: boolean; readonly keyAt?: number }): Layout {
  const keyAt = given.keyAt ?? 4;
  const at = new Map([
    ["Id", keyAt],
    ["Date", 1],
    ["Plant", 2],
  ]);
  const columns: Columns = { tabName: "Care log", at, doubts: new Map() };
  const values = [[], ["", "", given.filled === false ? "" : "mine", ""]];
  return {
    log: { spec: CARE_LOG, tab: { name: "Care log" } as never, values, columns, ours: [...at.values()] },
    writing: { records: [{ Id: "care-0001", Plant: "Fern" }], computed: new Set() },
    row: 2,
    hasFormula: () => false,
  };
}

test("are one where nothing stands between, and otherwise the one with the key comes last", () => {
  expect(segmentsOf(layout({ filled: false }))).toEqual([{ from: 1, to: 4 }]);
  expect(segmentsOf(layout({}))).toEqual([
    { from: 1, to: 2 },
    { from: 4, to: 4 },
  ]);
  const keyFirst = layout({});
  const at = new Map([
    ["Id", 1],
    ["Date", 2],
    ["Plant", 4],
  ]);
  const columns = { ...keyFirst.log.columns, at };
  expect(segmentsOf({ ...keyFirst, log: { ...keyFirst.log, columns } })).toEqual([
    { from: 4, to: 4 },
    { from: 1, to: 2 },
  ]);
});

test("the one with the key comes last, also when the key is its last column", () => {
  const given = layout({});
  const at = new Map([
    ["Date", 1],
    ["Id", 2],
    ["Plant", 4],
  ]);
  const columns = { ...given.log.columns, at };
  expect(segmentsOf({ ...given, log: { ...given.log, columns } })).toEqual([
    { from: 4, to: 4 },
    { from: 1, to: 2 },
  ]);
});

test("none begins or ends with a blank column of somebody else's", () => {
  const given = layout({});
  const at = new Map([
    ["Id", 5],
    ["Date", 1],
  ]);
  const columns = { ...given.log.columns, at };
  const values = [[], ["", "", "mine", "", ""]];
  expect(segmentsOf({ ...given, log: { ...given.log, columns, values, ours: [5, 1] } })).toEqual([
    { from: 1, to: 1 },
    { from: 5, to: 5 },
  ]);
});
