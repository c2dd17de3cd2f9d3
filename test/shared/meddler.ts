/** Somebody at the sheet while others log: sorts, inserts, moves, renames, deletes headings, types a row of their own. */

import type { CellValue } from "../../sample-sheet/workbench/standin/grid.ts";
import type { MemoryGrid } from "../../sample-sheet/workbench/standin/memory.ts";
import type { Random } from "../../src/build/sample-random.ts";
import { BATCH_LOG, CARE_LOG, PURCHASES } from "../../src/sheet/log-tabs.ts";
import { dateCell } from "../sheet/workbook.ts";

type Tab = ReturnType<MemoryGrid["tab"]>;

/** Where the column of a mark is now; the mark travels with it. */
export function columnOf(tab: Tab, mark: string): number | null {
  return tab.marks().find(({ value }) => value === mark)?.column ?? null;
}

export interface Typed {
  readonly tabId: number;
  /** By our headings; each row typed by hand has a note that no other row has. */
  readonly cells: Readonly<Record<string, CellValue>>;
}

export interface Meddler {
  /** Does one thing to one of the tabs; `mayType`: also type a row of one's own. */
  act(mayType: boolean): void;
  /** Does what the sentences ask for: types deleted headings again. */
  obey(): void;
  readonly typed: readonly Typed[];
  readonly did: readonly string[];
}

const LOGS = [CARE_LOG, BATCH_LOG, PURCHASES];

export interface Ways {
  /** Also moves columns and inserts rows. */
  readonly rough: boolean;
  readonly tell: (what: string) => void;
}

export function meddlerOver(grid: MemoryGrid, random: Random, { rough, tell }: Ways): Meddler {
  const typed: Typed[] = [];
  const did: string[] = [];
  const deleted: { tab: Tab; mark: string; heading: CellValue }[] = [];
  const tabs = grid.tabs().filter((tab) => tab.marks().some(({ value }) => /^tab:(Care|Batch|Purch|Sett)/.test(value)));
  let names = 0;

  function sort(tab: Tab): void {
    const { row, column } = tab.extent();
    if (row < 3) return;
    tab.sortRows(
      { row: 2, column: 1, rows: row - 1, columns: tab.columns() },
      random.whole(1, column),
      random.chance(0.5),
    );
  }

  function deleteHeading(tab: Tab): void {
    const marks = tab.marks().filter(({ column }) => column !== null);
    const { column, value: mark } = random.pick(marks);
    const heading = tab.read({ row: 1, column: column ?? 1, rows: 1, columns: 1 })[0]?.[0]?.value ?? null;
    if (column === null || heading === null) return;
    deleted.push({ tab, mark, heading });
    tab.write(1, column, [[{ value: null }]]);
  }

  function typeRow(tab: Tab): void {
    const spec = LOGS.find(({ name }) => tab.marks().some(({ value }) => value === `tab:${name}`));
    if (!spec) return;
    const keys = [spec.key, ...(spec.alsoKeys ?? [])].flatMap((heading) => {
      const at = columnOf(tab, `column:${spec.name}/${heading}`);
      return at === null ? [] : [at];
    });
    let row = tab.extent().row;
    const filled = (at: number) =>
      keys.some((column) => tab.read({ row: at, column, rows: 1, columns: 1 })[0]?.[0]?.value !== null);
    while (row > 1 && !filled(row)) row--;
    if (row + 1 > tab.rows()) tab.insertRows(row + 1, 1);
    const cells: Record<string, CellValue> = { Date: dateCell("2026-02-14").value, Note: `typed by hand ${++names}` };
    for (const [heading, value] of Object.entries(cells)) {
      const column = columnOf(tab, `column:${spec.name}/${heading}`);
      if (column !== null) tab.write(row + 1, column, [[heading === "Date" ? dateCell("2026-02-14") : { value }]]);
    }
    typed.push({ tabId: tab.id, cells });
  }

  const deeds: readonly (readonly [string, (tab: Tab) => void])[] = [
    ["typed a row into", typeRow],
    ["sorted", sort],
    ["sorted", sort],
    ["inserted a column in", (tab) => tab.insertColumns(random.whole(1, tab.extent().column + 1), 1)],
    ["renamed", (tab) => tab.rename(`Renamed ${++names}`)],
    ["deleted a heading of", deleteHeading],
  ];
  /** What also shifts rows, or tears columns out of their order. */
  const rougher: typeof deeds = [
    ["moved a column of", (tab) => tab.moveColumn(random.whole(1, tab.columns()), random.whole(1, tab.columns()))],
    ["inserted a row in", (tab) => tab.insertRows(random.whole(2, tab.extent().row + 1), 1)],
  ];

  return {
    typed,
    did,
    act(mayType) {
      const tab = random.pick(tabs);
      const [what, deed] = random.pick((rough ? [...deeds, ...rougher] : deeds).slice(mayType ? 0 : 1));
      did.push(`${what} ${tab.name()}`);
      tell(`    ${what} ${tab.name()}`);
      deed(tab);
    },
    obey() {
      for (const { tab, mark, heading } of deleted.splice(0)) {
        const column = columnOf(tab, mark);
        if (column !== null) tab.write(1, column, [[{ value: heading }]]);
      }
    },
  };
}
