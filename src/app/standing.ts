/** Rows of a log that still count: those that no standing row corrects or takes back. */

import { type Pointing, voidRows } from "../core/standing.ts";
import type { Columns } from "../sheet/find.ts";
import type { SheetRow } from "../sheet/rows.ts";
import type { TabSpec } from "../sheet/spec.ts";

/**
 * Places in `values` (0 is the heading row) of rows that are void; none when the tab has no such columns. With
 * `named`, a row without an Id makes none void: an earlier try may have got no further than that.
 */
export function voidPlaces(
  values: readonly (readonly unknown[])[],
  columns: Columns,
  { named = false }: { readonly named?: boolean } = {},
): ReadonlySet<number> {
  const [idAt, correctsAt] = [columns.at.get("Id"), columns.at.get("Corrects")];
  if (idAt === undefined || correctsAt === undefined) return new Set();
  const text = (raw: unknown): string => (typeof raw === "string" ? raw.trim() : "");
  return voidRows(
    values.map((row, at): Pointing => {
      if (at === 0) return { id: "", corrects: "" };
      const id = text(row[idAt - 1]);
      return { id, corrects: named && id === "" ? "" : text(row[correctsAt - 1]) };
    }),
  );
}

/** True for a row that only takes another one back: it points at one, and besides its date nothing makes it a record. */
export function takesBackOnly({ alsoKeys = [] }: TabSpec, fields: SheetRow["fields"]): boolean {
  return (
    fields.Corrects !== undefined && alsoKeys.every((heading) => heading === "Date" || fields[heading] === undefined)
  );
}
