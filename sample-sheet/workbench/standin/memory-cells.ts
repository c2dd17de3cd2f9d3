/** Cells of the grid in memory: what one holds, how answers of more than one cell spill, and how rows are ordered. */

import type { CellValue, Validation } from "./grid.ts";

export interface Stored {
  value: CellValue;
  formula: string;
  format: string;
  note: string;
  validation: Validation | null;
  /** The cell whose formula filled this one. */
  filledBy?: Stored;
  /** The cells that this one's formula filled. */
  fills?: Stored[];
}

/** Works out a formula, or says that it is not known, as the host does; a block of values spills. */
export type Calculate = (formula: string, tab: string) => CellValue | readonly (readonly CellValue[])[];

export const UNKNOWN_NAME: Calculate = () => ({ error: "#NAME?" });

/** Cells with rows and columns counted from where they are. */
export type CellAt = (down: number, right: number) => Stored;

/** Whatever the cell filled is blank again. */
export function takeBack(cell: Stored): void {
  for (const filled of cell.fills ?? []) {
    if (filled.filledBy !== cell) continue;
    filled.value = null;
    delete filled.filledBy;
  }
  delete cell.fills;
}

/** Something is written over a cell that another one fills: that one then has no room and says so. */
export function blockFilling(cell: Stored): void {
  const from = cell.filledBy;
  if (!from) return;
  delete cell.filledBy;
  takeBack(from);
  from.value = { error: "#REF!" };
}

/** Puts a formula's answer into its cell, and what is more than one value into the blank cells right of it and below. */
export function fill(anchor: Stored, answer: CellValue | readonly (readonly CellValue[])[], at: CellAt): void {
  if (!Array.isArray(answer)) {
    anchor.value = answer as CellValue;
    return;
  }
  const block = answer as readonly (readonly CellValue[])[];
  const places = block.flatMap((line, down) => line.map((value, right) => ({ value, down, right }))).slice(1);
  const cells = places.map(({ value, down, right }) => ({ value, cell: at(down, right) }));
  if (cells.some(({ cell }) => cell.value !== null || cell.formula !== "")) {
    anchor.value = { error: "#REF!" };
    return;
  }
  anchor.value = block[0]?.[0] ?? null;
  anchor.fills = cells.map(({ value, cell }) => {
    cell.value = value;
    cell.filledBy = anchor;
    return cell;
  });
}

/** Numbers before text before booleans, blanks last whatever the direction, as the host sorts. */
export function compareCells(a: CellValue, b: CellValue, ascending: boolean): number {
  if (a === null || b === null) return Number(a === null) - Number(b === null);
  const rank = (value: CellValue): number => (typeof value === "number" ? 0 : typeof value === "string" ? 1 : 2);
  const order =
    typeof a === "number" && typeof b === "number" ? a - b : rank(a) - rank(b) || String(a).localeCompare(String(b));
  return ascending ? order : -order;
}
