/** Range of the host: reading and writing blocks of cells. */

import { a1Of, areaOf, columnLetters, overlaps } from "./a1.ts";
import { type Book, incoming, outgoing, type Range, type Sheet, shown, tabById } from "./book.ts";
import { imitate } from "./gate.ts";
import type { Area, CellChange, GridCell, GridTab } from "./grid.ts";
import { markOf } from "./metadata.ts";
import { makeProtection } from "./protection.ts";
import { makeTextFinder } from "./text-finder.ts";
import { formulaAs } from "./typed.ts";
import { readValidation, refuseInvalid, validationOf } from "./validation.ts";

export interface RangeParts {
  readonly book: Book;
  readonly tabId: number;
  readonly area: Area;
  readonly sheet: () => Sheet;
}

/** The block must be as large as the range: the host's own words. */
function fits(values: readonly (readonly unknown[])[], area: Area): void {
  if (!Array.isArray(values)) throw new Error("The parameters don't match the method signature for Range.setValues.");
  const count = (n: number, word: string): string => `${n} ${word}${n === 1 ? "" : "s"}`;
  if (values.length !== area.rows) {
    throw new Error(
      `The number of rows in the data does not match the number of rows in the range. The data has ${values.length} but the range has ${area.rows}.`,
    );
  }
  for (const row of values) {
    if (row.length !== area.columns) {
      throw new Error(
        `The number of columns in the data does not match the number of columns in the range. The data has ${count(row.length, "column")} but the range has ${area.columns}.`,
      );
    }
  }
}

/** Cells of a merged block other than its first are hidden: what is written to them is lost without a word. */
function hiddenByMerge(tab: GridTab, row: number, column: number): boolean {
  return tab
    .merges()
    .some(
      (merge) =>
        overlaps(merge, { row, column, rows: 1, columns: 1 }) && (merge.row !== row || merge.column !== column),
    );
}

export function makeRange(parts: RangeParts): Range {
  const { book, tabId, area, sheet } = parts;
  const { gate } = book;
  const tab = (): GridTab => tabById(book, tabId);
  const read = <T>(name: string, act: (tab: GridTab) => T): T => gate.reach(`Range.${name}`, "read", () => act(tab()));
  const write = (name: string, act: (tab: GridTab) => void): Range => {
    gate.reach(`Range.${name}`, "write", () => act(tab()));
    return range;
  };
  const cells = <T>(name: string, pick: (cell: GridCell) => T): T[][] =>
    read(name, (on) => on.read(area).map((row) => row.map(pick)));
  const put = (name: string, values: readonly (readonly unknown[])[]): Range =>
    write(name, (on) => {
      fits(values, area);
      const before = on.read(area);
      const changes = values.map((row, r) =>
        row.map((value, c): CellChange | null => {
          const change = incoming(book, value, before[r]?.[c]?.format ?? "");
          refuseInvalid(on, area.row + r, area.column + c, change.value);
          return hiddenByMerge(on, area.row + r, area.column + c) ? null : change;
        }),
      );
      on.write(area.row, area.column, changes);
    });
  const filled = <T>(value: T): T[][] =>
    Array.from({ length: area.rows }, () => new Array<T>(area.columns).fill(value));
  const putFormulas = (name: string, formulas: readonly (readonly string[])[]): Range =>
    write(name, (on) => {
      fits(formulas, area);
      const changes = formulas.map((row) =>
        row.map((text): CellChange => {
          if (text === "") return { value: null };
          return formulaAs(text.startsWith("=") ? text : `=${text}`, book.locale);
        }),
      );
      on.write(area.row, area.column, changes);
    });
  const first = <T>(rows: T[][]): T => (rows[0] as T[])[0] as T;
  const inner = (row: number, column: number, rows: number, columns: number): Range =>
    makeRange({ ...parts, area: { row, column, rows, columns } });
  const wholeColumn = (): boolean => area.row === 1 && area.rows === tab().rows() && area.columns === 1;
  const notesOf = (on: GridTab): string[][] =>
    on.read(area).map((row, r) => row.map((_cell, c) => on.note(area.row + r, area.column + c)));

  const range: Range = imitate<Range>()("Range", {
    getRow: () => area.row,
    getColumn: () => area.column,
    getNumRows: () => area.rows,
    getNumColumns: () => area.columns,
    getLastRow: () => area.row + area.rows - 1,
    getLastColumn: () => area.column + area.columns - 1,
    getHeight: () => area.rows,
    getWidth: () => area.columns,
    getA1Notation: () => {
      const letters = columnLetters(area.column);
      return wholeColumn() ? `${letters}:${letters}` : a1Of(area);
    },
    getSheet: sheet,
    getGridId: () => tabId,
    getCell: (row: number, column: number) => inner(area.row + row - 1, area.column + column - 1, 1, 1),
    offset: (row: number, column: number, rows: number = area.rows, columns: number = area.columns) =>
      inner(area.row + row, area.column + column, rows, columns),

    getValues: () => cells("getValues", (cell) => outgoing(book, cell)),
    getValue: () => outgoing(book, first(cells("getValue", (cell) => cell))),
    getDisplayValues: () => cells("getDisplayValues", shown),
    getDisplayValue: () => shown(first(cells("getDisplayValue", (cell) => cell))),
    getFormulas: () => cells("getFormulas", (cell) => cell.formula),
    getFormula: () => first(cells("getFormula", (cell) => cell.formula)),
    isBlank: () =>
      read("isBlank", (on) =>
        on.read(area).every((row) => row.every((cell) => cell.value === null && cell.formula === "")),
      ),
    setValues: (values: unknown[][]) => put("setValues", values),
    setValue: (value: unknown) => put("setValue", filled(value)),
    setFormulas: (formulas: string[][]) => putFormulas("setFormulas", formulas),
    setFormula: (formula: string) => putFormulas("setFormula", filled(formula)),
    clearContent: () => write("clearContent", (on) => on.write(area.row, area.column, filled({ value: null }))),

    getNumberFormats: () => cells("getNumberFormats", (cell) => cell.format || "General"),
    getNumberFormat: () => first(cells("getNumberFormat", (cell) => cell.format || "General")),
    setNumberFormat: (format: string) => write("setNumberFormat", (on) => on.setFormat(area, format)),
    getNotes: () => read("getNotes", notesOf),
    getNote: () => first(read("getNote", notesOf)),
    setNote: (text: string | null) => write("setNote", (on) => on.setNote(area.row, area.column, text ?? "")),
    setNotes: (notes: unknown[][]) =>
      write("setNotes", (on) => {
        fits(notes, area);
        for (const [r, row] of notes.entries()) {
          for (const [c, text] of row.entries()) on.setNote(area.row + r, area.column + c, String(text ?? ""));
        }
      }),
    setFontWeight: (weight: string | null) =>
      write("setFontWeight", (on) => on.setLook(area, { bold: weight === "bold" })),
    setFontWeights: (weights: unknown[][]) =>
      write("setFontWeights", (on) => {
        fits(weights, area);
        // Rows of one weight in a row go as one look: a page has hundreds of rows and a handful of bold ones.
        for (let from = 0; from < weights.length; ) {
          const line = weights[from] ?? [];
          let to = from + 1;
          while (to < weights.length && weights[to]?.every((weight, c) => weight === line[c])) to++;
          const even = line.every((weight) => weight === line[0]);
          for (const [c, weight] of even ? [[0, line[0]] as const] : line.entries()) {
            const columns = even ? area.columns : 1;
            on.setLook(
              { row: area.row + from, column: area.column + c, rows: to - from, columns },
              { bold: weight === "bold" },
            );
          }
          from = to;
        }
      }),
    setWrap: (wrap: boolean) => write("setWrap", (on) => on.setLook(area, { wrap })),
    setBackground: (color: string | null) => write("setBackground", (on) => on.setLook(area, { background: color })),
    setFontColor: (color: string | null) => write("setFontColor", (on) => on.setLook(area, { fontColor: color })),

    getDataValidation: () =>
      read("getDataValidation", (on) => validationOf(book, on.validation(area.row, area.column))),
    getDataValidations: () =>
      read("getDataValidations", (on) =>
        on
          .read(area)
          .map((row, r) => row.map((_cell, c) => validationOf(book, on.validation(area.row + r, area.column + c)))),
      ) as ReturnType<Range["getDataValidations"]>,
    setDataValidation: (rule) => write("setDataValidation", (on) => on.setValidation(area, readValidation(rule))),
    clearDataValidations: () => write("clearDataValidations", (on) => on.setValidation(area, null)),

    addDeveloperMetadata: (key: string, value?: unknown, visibility?: unknown) =>
      write("addDeveloperMetadata", (on) => {
        if (!wholeColumn()) {
          throw new Error(
            "Adding developer metadata to arbitrary ranges is not currently supported. Developer metadata may only be added to the top-level spreadsheet, an individual sheet, or an entire row or column.",
          );
        }
        on.putMark(markOf(book, area.column, key, value, visibility));
      }),
    protect: () => {
      const id = book.newId();
      gate.reach("Range.protect", "write", () =>
        tab().putProtection({ id, area, description: "", warningOnly: false }),
      );
      return makeProtection({ book, tabId, id, rangeOf: (at) => inner(at.row, at.column, at.rows, at.columns) });
    },
    isPartOfMerge: () => read("isPartOfMerge", (on) => on.merges().some((merge) => overlaps(merge, area))),
    getMergedRanges: () =>
      read("getMergedRanges", (on) =>
        on
          .merges()
          .filter((merge) => overlaps(merge, area))
          .map((at) => inner(at.row, at.column, at.rows, at.columns)),
      ),
    createTextFinder: (text: string) =>
      makeTextFinder({ book, tabId, area, text, rangeAt: (row, column) => inner(row, column, 1, 1) }),
    sort: (spec: unknown) =>
      write("sort", (on) => {
        const one = (Array.isArray(spec) ? spec[0] : spec) as number | { column: number; ascending?: boolean };
        const [column, ascending] = typeof one === "number" ? [one, true] : [one.column, one.ascending !== false];
        if (on.merges().some((merge) => overlaps(merge, area))) {
          throw new Error("You can't sort a range that contains merged cells.");
        }
        on.sortRows(area, column, ascending);
      }),
  });
  return range;
}

/** The range an A1 text names on a tab; throws as the host does. */
export function rangeByA1(parts: Omit<RangeParts, "area">, a1: string): Range {
  const tab = tabById(parts.book, parts.tabId);
  const area = areaOf(a1, { rows: tab.rows(), columns: tab.columns() });
  if (!area) throw new Error(`Range not found: "${a1}".`);
  return makeRange({ ...parts, area: within(tab, area) });
}

/** A range must lie on the grid. */
export function within(tab: GridTab, area: Area): Area {
  const { row, column, rows, columns } = area;
  if (rows < 1) throw new Error("The number of rows in the range must be at least 1.");
  if (columns < 1) throw new Error("The number of columns in the range must be at least 1.");
  if (row < 1) throw new Error("The starting row of the range is too small.");
  if (column < 1) throw new Error("The starting column of the range is too small.");
  if (row + rows - 1 > tab.rows() || column + columns - 1 > tab.columns()) {
    throw new Error("The coordinates of the range are outside the dimensions of the sheet.");
  }
  return area;
}
