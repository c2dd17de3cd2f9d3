/** A Univer workbook as the stand-in's grid. */

import type { IRange } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import {
  InsertColMutation,
  InsertRowMutation,
  RemoveColMutation,
  RemoveRowMutation,
} from "@univerjs/preset-sheets-core";
import type { Area, Grid } from "../standin/grid.ts";
import type { CellReader } from "./cells.ts";
import { tabIdOf, UniverTab } from "./univer-tab.ts";

type FWorkbook = ReturnType<FUniver["createWorkbook"]>;

const NEW_ROWS = 1000;
const NEW_COLUMNS = 26;

/** An area after rows or columns came (count > 0) or went (count < 0) at `at`, along one direction. */
function shifted(start: number, length: number, at: number, count: number): { start: number; length: number } {
  if (count > 0)
    return at <= start
      ? { start: start + count, length }
      : { start, length: length + (at < start + length ? count : 0) };
  const gone = (upTo: number): number => Math.max(0, Math.min(upTo, at - count) - at);
  return { start: start - gone(start), length: length - (gone(start + length) - gone(start)) };
}

function areaAfter(area: Area, id: string, range: IRange): Area {
  const rows = range.endRow - range.startRow + 1;
  const columns = range.endColumn - range.startColumn + 1;
  if (id === InsertRowMutation.id || id === RemoveRowMutation.id) {
    const after = shifted(area.row, area.rows, range.startRow + 1, id === InsertRowMutation.id ? rows : -rows);
    return { ...area, row: after.start, rows: after.length };
  }
  const after = shifted(
    area.column,
    area.columns,
    range.startColumn + 1,
    id === InsertColMutation.id ? columns : -columns,
  );
  return { ...area, column: after.start, columns: after.length };
}

export class UniverGrid implements Grid {
  private readonly api: FUniver;
  private readonly workbook: FWorkbook;
  private readonly reader: CellReader;
  private readonly touched: () => void;

  constructor(api: FUniver, workbook: FWorkbook, reader: CellReader, touched: () => void) {
    this.api = api;
    this.workbook = workbook;
    this.reader = reader;
    this.touched = touched;
    const shifting = new Set([InsertRowMutation.id, InsertColMutation.id, RemoveRowMutation.id, RemoveColMutation.id]);
    api.onCommandExecuted((command) => {
      const params = command.params as { subUnitId?: string; range?: IRange } | undefined;
      if (!shifting.has(command.id) || !params?.subUnitId || !params.range) return;
      const tab = this.tabs().find(({ id }) => id === tabIdOf(params.subUnitId ?? ""));
      for (const protection of tab?.protections() ?? []) {
        const area = areaAfter(protection.area, command.id, params.range);
        if (area.rows > 0 && area.columns > 0) tab?.putProtection({ ...protection, area });
        else tab?.removeProtection(protection.id);
      }
    });
  }

  get name(): string {
    return this.workbook.getName();
  }

  tabs(): readonly UniverTab[] {
    const { api, workbook, reader, touched } = this;
    return workbook.getSheets().map((sheet) => new UniverTab({ api, workbook, sheet, reader, touched }));
  }

  tabNamed(name: string): UniverTab {
    const found = this.tabs().find((tab) => tab.name() === name);
    if (!found) throw new Error(`There is no tab named “${name}”.`);
    return found;
  }

  addTab(name: string): UniverTab {
    const { api, workbook, reader, touched } = this;
    const sheet = workbook.create(name, NEW_ROWS, NEW_COLUMNS, { index: workbook.getNumSheets() });
    return new UniverTab({ api, workbook, sheet, reader, touched });
  }

  private sheet(id: number) {
    const found = this.workbook.getSheets().find((sheet) => tabIdOf(sheet.getSheetId()) === id);
    if (!found) throw new Error("The sheet was deleted: it is no longer part of the spreadsheet.");
    return found;
  }
  removeTab(id: number): void {
    this.workbook.deleteSheet(this.sheet(id));
  }
  activeTabId(): number {
    return tabIdOf(this.workbook.getActiveSheet().getSheetId());
  }
  activate(id: number): void {
    this.workbook.setActiveSheet(this.sheet(id));
  }
}
