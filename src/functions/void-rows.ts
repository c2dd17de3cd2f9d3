/** Which rows of a log given as a range no longer count, because a later row corrects them or takes them back. */

import { voidRows } from "../core/standing.ts";
import type { Table } from "./record.ts";

/** Row numbers as the table counts them; none when it lacks the columns Id and Corrects. */
export function voidRowsOf(table: Table): ReadonlySet<number> {
  const [idColumn, correctsColumn] = [table.column("Id"), table.column("Corrects")];
  if (idColumn === -1 || correctsColumn === -1) return new Set();
  const text = (raw: unknown): string => (typeof raw === "string" ? raw.trim() : "");
  const rows: { id: string; corrects: string }[] = [];
  for (let row = 0; row < table.rowCount; row++) {
    rows.push({ id: text(table.raw(row, idColumn)), corrects: text(table.raw(row, correctsColumn)) });
  }
  return voidRows(rows);
}
