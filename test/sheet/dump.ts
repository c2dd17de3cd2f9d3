/** A whole workbook as one text, to see whether anything changed. */

import type { MemoryGrid } from "../../sample-sheet/workbench/standin/memory.ts";

/** Everything there is in a workbook, to be compared as one text. */
export function dump(grid: MemoryGrid): string {
  return JSON.stringify(
    grid.tabs().map((tab) => {
      const width = Math.max(1, tab.extent().column);
      const height = Math.max(2, tab.extent().row);
      const columns = Array.from({ length: width }, (_, index) => index + 1);
      return {
        name: tab.name(),
        size: [tab.rows(), tab.columns()],
        cells: tab.read({ row: 1, column: 1, rows: height, columns: width }),
        frozen: tab.frozenRows(),
        notes: columns.map((column) => tab.note(1, column)),
        rules: columns.map((column) => [tab.validation(2, column), tab.validation(tab.rows(), column)]),
        marks: tab.marks(),
        protections: tab.protections(),
        conditional: tab.conditionalRules(),
      };
    }),
  );
}
