/** Compares what a cell holds with what was written to it. */

import type { PlainCell, WorkbookPort } from "./port.ts";

/** A cell without content; a text of spaces only is content. */
export function isBlank(raw: unknown): boolean {
  return raw === "" || raw === null || raw === undefined;
}

/** Whether a cell that now reads `raw` holds `cell`. */
export function sameCell(raw: unknown, cell: PlainCell, workbook: Pick<WorkbookPort, "dayOf">): boolean {
  if (isBlank(cell)) return isBlank(raw);
  if (typeof cell === "object" && cell !== null) return workbook.dayOf(raw) === cell.day;
  return raw === cell;
}

/** Whether two values read from cells are the same; dates by their instant. */
export function sameRaw(a: unknown, b: unknown): boolean {
  if (isBlank(a) || isBlank(b)) return isBlank(a) && isBlank(b);
  if (typeof a === "object" && typeof b === "object") return Number(a) === Number(b);
  return a === b;
}

/** What to write so that a cell holds again what was read from it; an error cell cannot be written. */
export function cellOf(raw: unknown, workbook: Pick<WorkbookPort, "dayOf">): PlainCell {
  if (isBlank(raw)) return null;
  if (typeof raw === "string" || typeof raw === "number" || typeof raw === "boolean") return raw;
  const day = workbook.dayOf(raw);
  return day === null ? null : { day };
}
