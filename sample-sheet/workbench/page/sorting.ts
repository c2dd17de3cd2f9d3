/** Sorting as the host does it: spilled values count, numbers before texts before booleans, blanks last. */

import type { IRange, Worksheet } from "@univerjs/core";
import { ICommandService, IUniverInstanceService } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { getSheetCommandTarget, ReorderRangeCommand } from "@univerjs/preset-sheets-core";
import { type ISortRangeCommandParams, SortRangeCommand } from "@univerjs/preset-sheets-sort";
import { type CellValue, isCellError } from "../standin/grid.ts";
import type { CellReader } from "./cells.ts";

export interface SortKey {
  /** Counted from 0. */
  readonly column: number;
  readonly ascending: boolean;
}

const words = new Intl.Collator("en", { numeric: true, sensitivity: "base" });

function kindOf(value: CellValue): number {
  if (typeof value === "number") return 0;
  if (typeof value === "string") return 1;
  return isCellError(value) ? 3 : 2;
}

function compare(a: CellValue, b: CellValue, ascending: boolean): number {
  if (a === null || b === null) return Number(a === null) - Number(b === null);
  const kinds = kindOf(a) - kindOf(b);
  const plain =
    kinds !== 0
      ? kinds
      : typeof a === "number" && typeof b === "number"
        ? a - b
        : typeof a === "boolean" && typeof b === "boolean"
          ? Number(a) - Number(b)
          : words.compare(String(a), String(b));
  return ascending ? plain : -plain;
}

/** Which row (value) comes to stand where (key); rows hidden or filtered out stay where they are. */
export function orderBy(
  sheet: Worksheet,
  reader: CellReader,
  range: IRange,
  keys: readonly SortKey[],
): Record<number, number> {
  const places: number[] = [];
  for (let row = range.startRow; row <= range.endRow; row++) {
    if (!sheet.getRowFiltered(row) && sheet.getRowRawVisible(row)) places.push(row);
  }
  const rows = places.map((row) => ({ row, values: keys.map(({ column }) => reader.read(sheet, row, column).value) }));
  rows.sort((one, other) => {
    for (const [index, { ascending }] of keys.entries()) {
      const by = compare(one.values[index] ?? null, other.values[index] ?? null, ascending);
      if (by !== 0) return by;
    }
    return one.row - other.row;
  });
  return Object.fromEntries(rows.map(({ row }, index) => [places[index] ?? row, row]));
}

export interface Reorder {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly range: IRange;
  readonly order: Record<number, number>;
}

export function reorder(api: FUniver, params: Reorder): void {
  api.syncExecuteCommand(ReorderRangeCommand.id, params);
}

/**
 * Univer's own sort, from its menus too, looks only at what lies in the cells and so ignores spilled columns.
 * Its command is given this way of ordering instead. Before the plugin registers it.
 */
export function sortBySpilledValuesToo(readerOf: () => CellReader): void {
  SortRangeCommand.handler = (accessor, given) => {
    if (!given) return false;
    const params = given as ISortRangeCommandParams;
    const target = getSheetCommandTarget(accessor.get(IUniverInstanceService), params);
    if (!target) return false;
    const { hasTitle, orderRules, unitId, subUnitId } = params;
    const range = hasTitle ? { ...params.range, startRow: params.range.startRow + 1 } : params.range;
    const keys = orderRules.map(({ colIndex, type }) => ({ column: colIndex, ascending: String(type) === "asc" }));
    const order = orderBy(target.worksheet, readerOf(), range, keys);
    return accessor
      .get(ICommandService)
      .syncExecuteCommand(ReorderRangeCommand.id, { unitId, subUnitId, range, order });
  };
}
