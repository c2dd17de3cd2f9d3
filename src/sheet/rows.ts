/** Reads the rows of a tab by our own headings; what cannot be read becomes a sentence, and the rows around it stand. */

import { isoFromDay } from "../core/calendar.ts";
import { type Cell, type DayReader, readCell } from "../core/cell.ts";
import { isBadInput } from "../core/errors.ts";
import { readDay, readNumber, readYesNo } from "../core/reading.ts";
import { type Columns, noColumns } from "./find.ts";
import type { ColumnSpec, TabSpec } from "./spec.ts";

/** A cell as it travels: days as ISO text. */
export type FieldValue = string | number | boolean;

export interface CellProblem {
  readonly heading: string;
  readonly sentence: string;
  /** No arithmetic needs this cell. */
  readonly aside: boolean;
}

export interface SheetRow {
  /** Row on the tab, heading = 1. */
  readonly row: number;
  /** "row 7 of Feeds", with the name the tab has now. */
  readonly where: string;
  /** By our own headings; blank cells are not there, a cell that cannot be read stands as its raw text. */
  readonly fields: Readonly<Record<string, FieldValue>>;
  readonly problems: readonly CellProblem[];
}

/** Sentences on columns in doubt, and one on those of `needed` that are missing. */
export function columnProblems(columns: Columns, needed: readonly string[]): string[] {
  const missing = needed.filter((heading) => !columns.at.has(heading) && !columns.doubts.has(heading));
  return [...columns.doubts.values(), ...(missing.length === 0 ? [] : [noColumns(columns.tabName, missing)])];
}

/** An error cell as text that core knows for one; hosts hand over strings or Error objects. */
function rawText(raw: unknown, cell: Cell): FieldValue {
  if (typeof raw === "string" || typeof raw === "boolean") return raw;
  if (cell.kind === "number") return cell.value;
  if (cell.kind === "day") return isoFromDay(cell.day);
  return "#ERROR!";
}

function readByKind(cell: Cell, column: ColumnSpec, what: string): FieldValue | null {
  switch (column.kind) {
    case "number":
      return readNumber(cell, { what, unit: column.unit?.split(" ")[0] });
    case "day": {
      const day = readDay(cell, what);
      return day === null ? null : isoFromDay(day);
    }
    case "yes-no":
      return readYesNo(cell, what);
    default:
      return null;
  }
}

interface Place {
  readonly where: string;
  readonly spec: TabSpec;
}

/** A cell that holds text: as it stands, spaces included; a number or a tick as it is said. */
function readText(raw: unknown, cell: Cell, column: ColumnSpec, { where, spec }: Place): FieldValue | CellProblem {
  const isName = column.heading === spec.key || column.kind === "name";
  const aside = !isName && column.kind !== "choice";
  if (cell.kind === "error") {
    const sentence = `${column.heading} in ${where} is an error cell (${cell.text}). Mend that cell or clear it.`;
    return { heading: column.heading, sentence, aside };
  }
  if (cell.kind === "day" && isName) {
    const sentence = `${column.heading} in ${where} is the date ${isoFromDay(cell.day)}, not a name. If you typed a name like 10-5-5, the sheet took it for a date: type it again with ' in front.`;
    return { heading: column.heading, sentence, aside };
  }
  if (cell.kind === "boolean") return cell.value ? "yes" : "no";
  const value = rawText(raw, cell);
  return typeof value === "number" ? String(value) : value;
}

/**
 * `values` is the whole tab, heading row first. Rows in which all our columns are blank are skipped. With `places`
 * (0 is the heading row), only those rows are read, in that order.
 */
export function readRows(
  values: readonly (readonly unknown[])[],
  spec: TabSpec,
  columns: Columns,
  dayOf: DayReader,
  places?: readonly number[],
): SheetRow[] {
  const found = spec.columns.flatMap((column) => {
    const at = columns.at.get(column.heading);
    return at === undefined ? [] : [{ column, index: at - 1 }];
  });
  const rows: SheetRow[] = [];
  const last = places?.length ?? values.length - 1;
  for (let count = 0; count < last; count++) {
    const index = places?.[count] ?? count + 1;
    const raws = values[index] ?? [];
    const where = `row ${index + 1} of ${columns.tabName}`;
    const fields: Record<string, FieldValue> = {};
    const problems: CellProblem[] = [];
    for (const { column, index: at } of found) {
      const raw = raws[at];
      if (raw === "") continue;
      const cell = readCell(raw, dayOf);
      if (cell.kind === "blank") continue;
      const { heading } = column;
      if (column.kind === "number" || column.kind === "day" || column.kind === "yes-no") {
        try {
          const value = readByKind(cell, column, `${heading} in ${where}`);
          if (value !== null) fields[heading] = value;
        } catch (error) {
          if (!isBadInput(error)) throw error;
          fields[heading] = rawText(raw, cell);
          problems.push({ heading, sentence: error.message, aside: column.aside === true });
        }
        continue;
      }
      const text = readText(raw, cell, column, { where, spec });
      if (typeof text === "object") {
        fields[heading] = rawText(raw, cell);
        problems.push(text);
      } else fields[heading] = text;
    }
    if (Object.keys(fields).length > 0) rows.push({ row: index + 1, where, fields, problems });
  }
  return rows;
}
