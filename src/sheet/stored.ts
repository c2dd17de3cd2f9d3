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
