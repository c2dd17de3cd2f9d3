/** A workbook in memory copied cell by cell, so that a thousand trials can start from one that was set up once. */

import type { CellChange } from "../../sample-sheet/workbench/standin/grid.ts";
import { MemoryGrid } from "../../sample-sheet/workbench/standin/memory.ts";

export function copyGrid(from: MemoryGrid): MemoryGrid {
  const grid = new MemoryGrid({ name: from.name });
  for (const tab of from.tabs()) {
    const to = grid.addTab(tab.name(), { rows: tab.rows(), columns: tab.columns(), merges: tab.merges() });
    const { row, column } = tab.extent();
    const cells: CellChange[][] = tab
      .read({ row: 1, column: 1, rows: Math.max(1, row), columns: Math.max(1, column) })
      .map((line) => line.map(({ value, formula, format }) => ({ value, formula, format })));
    to.write(1, 1, cells);
    for (let at = 1; at <= tab.columns(); at++) {
      const note = tab.note(1, at);
      if (note !== "") to.setNote(1, at, note);
      // Rules and formats are given to whole columns from row 2 on, so one cell tells of all.
      const rule = tab.validation(2, at);
      if (rule) to.setValidation({ row: 2, column: at, rows: tab.rows() - 1, columns: 1 }, rule);
      const format = tab.read({ row: tab.rows(), column: at, rows: 1, columns: 1 })[0]?.[0]?.format ?? "";
      if (format !== "") to.setFormat({ row: 2, column: at, rows: tab.rows() - 1, columns: 1 }, format);
    }
    to.freezeRows(tab.frozenRows());
    for (const mark of tab.marks()) to.putMark(mark);
    for (const protection of tab.protections()) to.putProtection(protection);
  }
  return grid;
}

/** Every cell, note, rule, mark and warning by a name of its own: "Care log!2,3" → what is there. */
export function stateOf(grid: MemoryGrid): Map<string, string> {
  const state = new Map<string, string>();
  for (const tab of grid.tabs()) {
    const name = `${tab.name()}#${tab.id}`;
    state.set(`${name} tab`, "there");
    if (tab.frozenRows() > 0) state.set(`${name} frozen`, String(tab.frozenRows()));
    const { row: rows, column: columns } = tab.extent();
    if (rows > 0) {
      tab.read({ row: 1, column: 1, rows, columns }).forEach((line, r) => {
        line.forEach(({ value, formula }, c) => {
          if (value !== null || formula !== "")
            state.set(`${name}!${r + 1},${c + 1}`, JSON.stringify([value, formula]));
        });
      });
    }
    for (let at = 1; at <= Math.max(columns, 1); at++) {
      if (tab.note(1, at) !== "") state.set(`${name} note ${at}`, tab.note(1, at));
      const rule = tab.validation(2, at);
      if (rule) state.set(`${name} rule ${at}`, JSON.stringify(rule));
    }
    for (const { column, value } of tab.marks()) state.set(`${name} mark ${column} ${value}`, "there");
    for (const { area, description } of tab.protections())
      state.set(`${name} warning ${description} ${area.column}`, JSON.stringify(area));
  }
  return state;
}

/** Names of what differs. */
export function differing(a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>): string[] {
  return [...new Set([...a.keys(), ...b.keys()])].filter((key) => a.get(key) !== b.get(key));
}
