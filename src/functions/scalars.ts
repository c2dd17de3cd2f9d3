/** Scalar arguments: one value or a column of them, and how a cell is read by the argument's kind. */

import { type Cell, type DayReader, headingKey, readCell } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { readChoice, readDay, readNumber, readText, readYesNo } from "../core/reading.ts";
import { sayList } from "../core/saying.ts";
import type { Argument, LabelArgument, LabelSource, NumberArgument, RowsArgument, ScalarArgument } from "./record.ts";
import { isBlankCell, needOneColumn, readTable, rowsOf, withoutBlankEnd } from "./table.ts";

/** What a scalar argument holds in one row once it is read; null where an optional one is left out. */
export type ScalarValue = number | string | boolean | LabelSource | null;

/** A scalar argument as it came: a single value (`rowCount` null) or one value for each row. */
export interface Scalar {
  readonly argument: ScalarArgument;
  readonly rowCount: number | null;
  isBlank(row: number): boolean;
  /**
   * Throws BadInput that names the argument, the value and what is accepted. `unit` is what the argument of
   * its `unitFrom` holds in this row.
   */
  read(row: number, unit?: string): ScalarValue;
}

/** Tells a single value from a column. A range of one cell is a single value, as the host itself makes it one. */
export function readScalar(raw: unknown, argument: ScalarArgument, dayOf: DayReader): Scalar {
  if (argument.kind === "rows") return tableRows(raw, argument, dayOf);
  const all = rowsOf(raw);
  const width = all === null ? 1 : all.reduce((most, row) => Math.max(most, row.length), 0);
  if (all === null || (all.length <= 1 && width <= 1)) {
    const value = all === null ? raw : all[0]?.[0];
    let kept: { readonly value: ScalarValue; readonly unit: string | undefined } | undefined;
    return {
      argument,
      rowCount: null,
      isBlank: () => isBlankCell(value),
      read(_, unit) {
        if (kept === undefined || kept.unit !== unit) {
          kept = { value: readValue(value, argument, { dayOf, unit }), unit };
        }
        return kept.value;
      },
    };
  }
  if (width > 1) {
    if (argument.kind === "label") return tableRows(raw, argument, dayOf);
    throw new BadInput(
      "not-one-column",
      `${argument.name} is a range of ${width} columns. Give one cell or a range of one column.`,
    );
  }
  const rows = withoutBlankEnd(all);
  return {
    argument,
    rowCount: rows.length,
    isBlank: (row) => isBlankCell(rows[row]?.[0]),
    read: (row, unit) => readValue(rows[row]?.[0], argument, { dayOf, unit }),
  };
}

/** Throws BadInput for one value, or a table without any of the columns that are known. */
function tableRows(raw: unknown, argument: LabelArgument | RowsArgument, dayOf: DayReader): Scalar {
  const table = readTable(raw, argument.name, [], dayOf);
  if (argument.kind === "rows") needOneColumn(table, argument.anyOf);
  return {
    argument,
    rowCount: table.rowCount,
    isBlank: (row) => table.isBlank(row),
    read: (row) => ({ kind: "row", table, row }),
  };
}

interface Reading {
  readonly dayOf: DayReader;
  readonly unit: string | undefined;
}

/** What is told when an argument that is not optional is blank or not given. */
export function wanted(argument: Argument, unit?: string): string {
  switch (argument.kind) {
    case "number": {
      const number = unit === undefined ? "Give a number" : `Give a number in ${unit}`;
      return argument.word === undefined ? number : `${number}, or ${argument.word}`;
    }
    case "yesNo":
      return "Give TRUE or FALSE";
    case "choice":
      return `Give ${sayList(argument.choices, "or")}`;
    case "day":
      return "Give a date";
    case "text":
    case "key":
      return "Give a text";
    case "label":
      return 'Give a label like "10-5-5", or a table of feeds';
    case "rows":
    case "table":
      return "Give a range with a heading row";
    case "numbers":
      return "Give a range of numbers, one column or one row";
    case "heading":
      return "Give a text, such as Days at rest";
  }
}

function readValue(raw: unknown, argument: ScalarArgument, { dayOf, unit }: Reading): ScalarValue {
  const expected = argument.kind === "number" ? (unit ?? argument.unit) : undefined;
  const value = readGiven(raw, argument, { dayOf, unit: expected });
  if (value === null && argument.optional !== true) {
    throw new BadInput("blank", `${argument.name} is blank. ${wanted(argument, expected)}.`);
  }
  return value;
}

function readGiven(raw: unknown, argument: ScalarArgument, { dayOf, unit }: Reading): ScalarValue {
  const what = argument.name;
  const cell = readCell(raw, dayOf);
  switch (argument.kind) {
    case "number":
      return wordIn(cell, argument) ?? readNumber(cell, { what, unit, min: argument.min, max: argument.max });
    case "yesNo":
      return readYesNo(cell, what) ?? argument.fallback;
    case "choice":
      return readChoice(cell, { what, choices: argument.choices }) ?? argument.fallback ?? null;
    case "day":
      return readDay(cell, what);
    case "text":
      return readText(cell, what) ?? argument.fallback ?? null;
    case "key":
      return readText(cell, what);
    case "label":
      return cell.kind === "blank" ? null : { kind: "cell", cell };
    case "rows":
      throw new Error("A table that is answered row by row is read as a whole.");
  }
}

/** The word that may stand instead of a number, or null. Throws BadInput for any other word. */
function wordIn(cell: Cell, { name, word }: NumberArgument): string | null {
  if (word === undefined || cell.kind !== "text") return null;
  if (headingKey(cell.value) === word) return word;
  if (/\d/.test(cell.value)) return null;
  throw new BadInput("not-a-number", `${name} is "${cell.value}". Give a number, or ${word}.`);
}
