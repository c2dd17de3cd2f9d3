/** What tests drive the page with: the same commands that a person's edits run. */

import type { ICellData, Univer } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import {
  FormulaCalculationSessionService,
  SetRangeValuesCommand,
  SheetInterceptorService,
} from "@univerjs/preset-sheets-core";
import { areaOf } from "../standin/a1.ts";
import type { Area } from "../standin/grid.ts";
import { isCellError } from "../standin/grid.ts";
import type { Services } from "../standin/host.ts";
import { cellMessage, type MessageParts } from "./cell-message.ts";
import type { Keeper } from "./keep.ts";
import type { UniverGrid } from "./univer-grid.ts";
import type { UniverTab } from "./univer-tab.ts";

export type Shown = string | number | boolean | null;

export interface WorkbenchHooks {
  /** Resolves when the sheet is there, the script is loaded and the first formulas are worked out. */
  readonly ready: Promise<void>;
  /** Types a text into a cell and waits for the formulas: "=…" is a formula, "012" and "3/4" go as if typed. */
  setCell(tab: string, a1: string, text: string): Promise<void>;
  /** Values as they lie in the cells, spilled ones too: dates as serial numbers, errors as "#N/A", blanks as null. */
  getValues(tab: string, a1Range: string): Shown[][];
  /** Formulas with their open ranges, "" where there is none. */
  getFormulas(tab: string, a1Range: string): string[][];
  /** `column` counts from 1 on the sheet; sorts just the rows of the range. */
  sortRange(tab: string, a1Range: string, column: number, ascending: boolean): Promise<void>;
  /** A new column before the one that is number `column` now, counted from 1. */
  insertColumn(tab: string, column: number): Promise<void>;
  renameTab(tab: string, name: string): void;
  activate(tab: string): void;
  tabs(): string[];
  /** The line a person reads when this cell is selected. */
  message(tab: string, a1: string): string;
  /** Developer metadata on a tab (column null) and its columns, counted from 1. */
  marks(tab: string): { column: number | null; value: string }[];
  /** Resolves when no formula is waiting any more. */
  settled(): Promise<void>;
  /** Resolves when everything done so far lies in the file. */
  kept(): Promise<void>;
  /** Calls to the spreadsheet by menu and panel since the last time this was asked, by name; not those of formulas. */
  takeCalls(): string[];
  /** The next call of this name by menu or panel fails: "before" it is done, or "after", its answer lost. */
  failNext(name: string, when: "before" | "after"): void;
  /** The host's services as the script has them. */
  readonly services: Services;
}

declare global {
  interface Window {
    workbench: WorkbenchHooks;
  }
}

/** A fault to come: the named call fails, before it is done or when its answer should arrive. */
export interface Fault {
  readonly name: string;
  readonly when: "before" | "after";
}

export interface HookParts {
  readonly services: Services;
  readonly faults: Fault[];
  readonly ready: Promise<void>;
  readonly univer: Univer;
  readonly api: FUniver;
  readonly grid: UniverGrid;
  readonly keeper: Keeper;
  readonly messages: MessageParts;
  readonly calls: string[];
}

const SETTLE_MS = 30_000;

export function makeHooks({
  ready,
  univer,
  api,
  grid,
  keeper,
  messages,
  calls,
  services,
  faults,
}: HookParts): WorkbenchHooks {
  const injector = univer.__getInjector();
  const areaIn = (tab: UniverTab, a1: string): Area => {
    const area = areaOf(a1, { rows: tab.rows(), columns: tab.columns() });
    if (!area) throw new Error(`“${a1}” is no range.`);
    return area;
  };
  const settled = async (): Promise<void> => {
    await injector.get(FormulaCalculationSessionService).waitForLatestApplied(SETTLE_MS, 100);
  };
  return {
    ready,
    settled,
    async setCell(tabName, a1, text) {
      const tab = grid.tabNamed(tabName);
      const { row, column } = areaIn(tab, a1);
      // Number formats of what is typed go to the sheet on the screen.
      grid.activate(tab.id);
      const workbook = api.getActiveWorkbook();
      const sheet = workbook?.getSheetByName(tabName);
      if (!workbook || !sheet) throw new Error(`There is no tab named “${tabName}”.`);
      const typed: ICellData = text.startsWith("=")
        ? { f: text, v: null, p: null, si: null }
        : { v: text === "" ? null : text, t: null, f: null, p: null, si: null };
      const written = injector
        .get(SheetInterceptorService)
        .onWriteCell(workbook.getWorkbook(), sheet.getSheet(), row - 1, column - 1, typed);
      api.syncExecuteCommand(SetRangeValuesCommand.id, {
        unitId: workbook.getId(),
        subUnitId: sheet.getSheetId(),
        value: { [row - 1]: { [column - 1]: written } },
      });
      await settled();
    },
    getValues(tabName, a1Range) {
      const tab = grid.tabNamed(tabName);
      const shown = tab.read(areaIn(tab, a1Range));
      return shown.map((row) => row.map(({ value }): Shown => (isCellError(value) ? value.error : value)));
    },
    getFormulas(tabName, a1Range) {
      const tab = grid.tabNamed(tabName);
      return tab.read(areaIn(tab, a1Range)).map((row) => row.map(({ formula }) => formula));
    },
    async sortRange(tabName, a1Range, column, ascending) {
      const tab = grid.tabNamed(tabName);
      const area = areaIn(tab, a1Range);
      const range = api
        .getActiveWorkbook()
        ?.getSheetByName(tabName)
        ?.getRange(area.row - 1, area.column - 1, area.rows, area.columns);
      range?.sort({ column: column - area.column, ascending });
      await settled();
    },
    async insertColumn(tabName, column) {
      grid.tabNamed(tabName).insertColumns(column, 1);
      await settled();
    },
    renameTab(tabName, name) {
      grid.tabNamed(tabName).rename(name);
    },
    activate(tabName) {
      grid.activate(grid.tabNamed(tabName).id);
    },
    tabs: () => grid.tabs().map((tab) => tab.name()),
    message(tabName, a1) {
      const tab = grid.tabNamed(tabName);
      grid.activate(tab.id);
      const { row, column } = areaIn(tab, a1);
      return cellMessage(messages, row, column).text;
    },
    marks: (tabName) =>
      grid
        .tabNamed(tabName)
        .marks()
        .map(({ column, value }) => ({ column, value })),
    kept: () => keeper.kept(),
    takeCalls: () => calls.splice(0),
    failNext: (name, when) => void faults.push({ name, when }),
    services,
  };
}
