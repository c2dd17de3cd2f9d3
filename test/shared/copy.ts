/** A workbook in memory copied as far as it is written to, so that thousands of trials can start from one. */

import type { CellChange } from "../../sample-sheet/workbench/standin/grid.ts";
import { MemoryGrid, type MemoryTabOptions } from "../../sample-sheet/workbench/standin/memory.ts";

type Tab = ReturnType<MemoryGrid["tab"]>;

const WRITES: ReadonlySet<PropertyKey> = new Set([
  ...["rename", "write", "setFormat", "setLook", "insertRows", "insertColumns", "deleteRows", "deleteColumns"],
  ...["moveColumn", "freezeRows", "setNote", "putMark", "removeMark", "setValidation", "putProtection"],
  ...["removeProtection", "setConditionalRules", "sortRows"],
]);

/** The original of a copy that was not written to yet. */
const UNTOUCHED = Symbol("untouched");

function cloned(tab: Tab): Tab {
  const options = { rows: tab.rows(), columns: tab.columns(), merges: tab.merges() };
  const to = new MemoryGrid().addTab(tab.name(), options);
  const { row, column } = tab.extent();
  const filled = { row: 1, column: 1, rows: Math.max(1, row), columns: Math.max(1, column) };
  const cells = tab
    .read(filled)
    .map((line) => line.map(({ value, formula, format }): CellChange => ({ value, formula, format })));
  to.write(1, 1, cells);
  const below = (at: number) => ({ row: 2, column: at, rows: tab.rows() - 1, columns: 1 });
  for (let at = 1; at <= tab.columns(); at++) {
    const note = tab.note(1, at);
    if (note !== "") to.setNote(1, at, note);
    if (tab.rows() < 2) continue;
    // Rules and formats are given to whole columns from row 2 on, so one cell tells of all.
    const rule = tab.validation(2, at);
    if (rule) to.setValidation(below(at), rule);
    const format = tab.read({ row: tab.rows(), column: at, rows: 1, columns: 1 })[0]?.[0]?.format ?? "";
    if (format !== "") to.setFormat(below(at), format);
  }
  to.freezeRows(tab.frozenRows());
  for (const mark of tab.marks()) to.putMark(mark);
  for (const protection of tab.protections()) to.putProtection(protection);
  to.setConditionalRules(tab.conditionalRules());
  return to;
}

function lazyCopy(original: Tab): Tab {
  let tab = original;
  return new Proxy(original, {
    get(_, key) {
      if (key === UNTOUCHED) return tab === original ? original : undefined;
      if (key === "id") return original.id;
      if (WRITES.has(key) && tab === original) tab = cloned(original);
      const value: unknown = Reflect.get(tab, key);
      return typeof value === "function" ? value.bind(tab) : value;
    },
  });
}

/** Behaves as a copy of the whole; nothing that is done to it shows in `from`. */
export function copyGrid(from: MemoryGrid): MemoryGrid {
  let tabs = from.tabs().map(lazyCopy);
  const maker = new MemoryGrid();
  let active = from.activeTabId();
  const grid = {
    name: from.name,
    tabs: () => tabs,
    tab(name: string) {
      const found = tabs.find((tab) => tab.name() === name);
      if (!found) throw new Error(`No tab named "${name}".`);
      return found;
    },
    addTab(name: string, options?: MemoryTabOptions) {
      let tab = maker.addTab(name, options);
      while (tabs.some(({ id }) => id >= tab.id)) tab = maker.addTab(name, options);
      tabs = [...tabs, tab];
      return tab;
    },
    removeTab(id: number) {
      tabs = tabs.filter((tab) => tab.id !== id);
    },
    activeTabId: () => active,
    activate(id: number) {
      active = id;
    },
  };
  return grid as unknown as MemoryGrid;
}

type Entries = readonly (readonly [name: string, value: string])[];

const known = new WeakMap<Tab, Entries>();

function entriesOf(tab: Tab): Entries {
  const entries: [string, string][] = [["tab", tab.name()]];
  if (tab.frozenRows() > 0) entries.push(["frozen", String(tab.frozenRows())]);
  const { row: rows, column: columns } = tab.extent();
  if (rows > 0) {
    tab.read({ row: 1, column: 1, rows, columns }).forEach((line, r) => {
      line.forEach(({ value, formula }, c) => {
        if (value !== null || formula !== "") entries.push([`${r + 1},${c + 1}`, JSON.stringify([value, formula])]);
      });
    });
  }
  for (let at = 1; at <= Math.max(columns, 1); at++) {
    if (tab.note(1, at) !== "") entries.push([`note ${at}`, tab.note(1, at)]);
    const rule = tab.validation(2, at);
    if (rule) entries.push([`rule ${at}`, JSON.stringify(rule)]);
  }
  for (const { column, value } of tab.marks()) entries.push([`mark ${column} ${value}`, "there"]);
  for (const { area, description } of tab.protections())
    entries.push([`warning ${description} ${area.column}`, JSON.stringify(area)]);
  for (const rule of tab.conditionalRules()) entries.push([`colour ${rule.formula}`, JSON.stringify(rule)]);
  return entries;
}

/** Every cell, note, rule, mark and warning by a name of its own: "Care log 2,3" → what is there. */
export function stateOf(grid: MemoryGrid): Map<string, string> {
  const state = new Map<string, string>();
  for (const tab of grid.tabs()) {
    const original = (tab as { [UNTOUCHED]?: Tab })[UNTOUCHED];
    const entries = (original && known.get(original)) ?? entriesOf(tab);
    if (original) known.set(original, entries);
    for (const [name, value] of entries) state.set(`${tab.id} ${tab.name()} ${name}`, value);
  }
  return state;
}

/** Names of what differs. */
export function differing(a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>): string[] {
  return [...new Set([...a.keys(), ...b.keys()])].filter((key) => a.get(key) !== b.get(key));
}
