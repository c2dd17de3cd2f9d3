/** Sheet of the host: one tab. */

import { columnLetters, splitReference } from "./a1.ts";
import { type Book, incoming, type Range, type Sheet, type Spreadsheet, tabById } from "./book.ts";
import { chartsOn, insertChart, newChart, updateChart } from "./charts.ts";
import { readRule, ruleOf } from "./conditional.ts";
import { imitate } from "./gate.ts";
import type { Area, GridTab } from "./grid.ts";
import { makeFinder, markOf, metadataOn, type Places } from "./metadata.ts";
import { makeProtection } from "./protection.ts";
import { makeRange, rangeByA1, within } from "./range.ts";
import { makeTextFinder } from "./text-finder.ts";
import { refuseInvalid } from "./validation.ts";

export function makeSheet(book: Book, tabId: number, parent: () => Spreadsheet): Sheet {
  const { gate } = book;
  const tab = (): GridTab => tabById(book, tabId);
  const read = <T>(name: string, act: (tab: GridTab) => T): T => gate.reach(`Sheet.${name}`, "read", () => act(tab()));
  const write = (name: string, act: (tab: GridTab) => void): Sheet => {
    gate.reach(`Sheet.${name}`, "write", () => act(tab()));
    return sheet;
  };
  const parts = { book, tabId, sheet: () => sheet };
  const rangeAt = (area: Area): Range => makeRange({ ...parts, area });
  const chartParts = { book, tabId, rangeAt };
  const places: Places = { sheetOf: (id) => makeSheet(book, id, parent), rangeOf: (_id, area) => rangeAt(area) };
  const whole = (): Area => ({ row: 1, column: 1, rows: tab().rows(), columns: tab().columns() });

  const sheet: Sheet = imitate<Sheet>()("Sheet", {
    getSheetId: () => tabId,
    getName: () => tab().name(),
    getSheetName: () => tab().name(),
    getParent: parent,
    getIndex: () => book.grid.tabs().findIndex((each) => each.id === tabId) + 1,
    setName: (name: string) =>
      write("setName", (on) => {
        if (book.grid.tabs().some((each) => each.id !== tabId && each.name().toLowerCase() === name.toLowerCase())) {
          throw new Error(`A sheet with the name "${name}" already exists. Please enter another name.`);
        }
        on.rename(name);
      }),
    activate: () => write("activate", () => book.grid.activate(tabId)),

    getLastRow: () => read("getLastRow", (on) => on.extent().row),
    getLastColumn: () => read("getLastColumn", (on) => on.extent().column),
    getMaxRows: () => read("getMaxRows", (on) => on.rows()),
    getMaxColumns: () => read("getMaxColumns", (on) => on.columns()),
    getRange: (rowOrA1: number | string, column: number = 1, rows: number = 1, columns: number = 1) =>
      typeof rowOrA1 === "string"
        ? rangeByA1(parts, splitReference(rowOrA1).a1)
        : rangeAt(within(tab(), { row: rowOrA1, column, rows, columns })),
    getDataRange: () =>
      read("getDataRange", (on) => {
        const { row, column } = on.extent();
        return rangeAt({ row: 1, column: 1, rows: Math.max(1, row), columns: Math.max(1, column) });
      }),
    /** Writes from column A, below the last row with any content, each text as if it were typed. */
    appendRow: (contents: unknown[]) =>
      write("appendRow", (on) => {
        const row = on.extent().row + 1;
        if (row > on.rows()) on.insertRows(on.rows() + 1, row - on.rows());
        if (contents.length > on.columns()) on.insertColumns(on.columns() + 1, contents.length - on.columns());
        const formats = on.read({ row, column: 1, rows: 1, columns: contents.length })[0] ?? [];
        const changes = contents.map((value, c) => {
          const change = incoming(book, value, formats[c]?.format ?? "");
          refuseInvalid(on, row, c + 1, change.value);
          return change;
        });
        on.write(row, 1, [changes]);
      }),

    insertRowsAfter: (after: number, count: number) =>
      write("insertRowsAfter", (on) => on.insertRows(after + 1, count)),
    insertRowsBefore: (before: number, count: number) =>
      write("insertRowsBefore", (on) => on.insertRows(before, count)),
    insertRowAfter: (after: number) => write("insertRowAfter", (on) => on.insertRows(after + 1, 1)),
    insertRowBefore: (before: number) => write("insertRowBefore", (on) => on.insertRows(before, 1)),
    insertColumnsAfter: (after: number, count: number) =>
      write("insertColumnsAfter", (on) => on.insertColumns(after + 1, count)),
    insertColumnsBefore: (before: number, count: number) =>
      write("insertColumnsBefore", (on) => on.insertColumns(before, count)),
    insertColumnAfter: (after: number) => write("insertColumnAfter", (on) => on.insertColumns(after + 1, 1)),
    insertColumnBefore: (before: number) => write("insertColumnBefore", (on) => on.insertColumns(before, 1)),
    deleteRow: (row: number) => write("deleteRow", (on) => on.deleteRows(row, 1)),
    deleteRows: (row: number, count: number) => void write("deleteRows", (on) => on.deleteRows(row, count)),
    deleteColumn: (column: number) => write("deleteColumn", (on) => on.deleteColumns(column, 1)),

    setColumnWidth: (column: number, width: number) =>
      write("setColumnWidth", (on) => {
        if (column < 1 || column > on.columns()) throw new Error("Those columns are out of bounds.");
        on.setColumnWidth(column, width);
      }),
    getFrozenRows: () => read("getFrozenRows", (on) => on.frozenRows()),
    setFrozenRows: (rows: number) => void write("setFrozenRows", (on) => on.freezeRows(rows)),

    addDeveloperMetadata: (key: string, value?: unknown, visibility?: unknown) =>
      write("addDeveloperMetadata", (on) => on.putMark(markOf(book, null, key, value, visibility))),
    getDeveloperMetadata: () =>
      read("getDeveloperMetadata", () => metadataOn(book, places, [tabId], (mark) => mark.column === null)),
    createDeveloperMetadataFinder: () => makeFinder(book, places, () => [tabId]),

    getProtections: () =>
      read("getProtections", (on) =>
        on.protections().map(({ id }) => makeProtection({ book, tabId, id, rangeOf: rangeAt })),
      ),
    getConditionalFormatRules: () =>
      read("getConditionalFormatRules", (on) => on.conditionalRules().map((rule) => ruleOf(rule, rangeAt))),
    setConditionalFormatRules: (rules) =>
      void write("setConditionalFormatRules", (on) => on.setConditionalRules(rules.map(readRule))),
    newChart: () => newChart(chartParts),
    getCharts: () => read("getCharts", () => chartsOn(chartParts)),
    insertChart: (chart) => void write("insertChart", () => insertChart(chartParts, chart)),
    updateChart: (chart) => void write("updateChart", () => updateChart(chartParts, chart)),
    createTextFinder: (text: string) =>
      makeTextFinder({
        book,
        tabId,
        area: whole(),
        text,
        rangeAt: (row, column) => rangeAt({ row, column, rows: 1, columns: 1 }),
      }),
    /** Sorts every row below the frozen ones. */
    sort: (column: number, ascending: boolean = true) =>
      write("sort", (on) => {
        const top = on.frozenRows() + 1;
        const last = on.extent();
        if (column > on.columns()) throw new Error(`There is no column ${columnLetters(column)}.`);
        if (last.row >= top) {
          on.sortRows({ row: top, column: 1, rows: last.row - top + 1, columns: last.column }, column, ascending);
        }
      }),
  });
  return sheet;
}
