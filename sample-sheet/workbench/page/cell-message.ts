/** The line above the grid for the selected cell: why its formula failed, its note, the warning on it. */

import type { areaOf } from "../standin/a1.ts";
import type { Grid, GridTab } from "../standin/grid.ts";
import { isCellError } from "../standin/grid.ts";
import { byId } from "./screen.ts";

const NOTHING = "Here stands the note of the selected cell, or why its formula failed.";

export interface MessageParts {
  readonly grid: Grid;
  /** What the failed function in this cell said, if it did. */
  readonly failure: (tab: GridTab, row: number, column: number) => string | undefined;
}

/** Row and column count from 1. */
export function cellMessage(
  { grid, failure }: MessageParts,
  row: number,
  column: number,
): { text: string; wrong: boolean } {
  const tab = grid.tabs().find((each) => each.id === grid.activeTabId());
  if (!tab) return { text: "", wrong: false };
  const value = tab.read({ row, column, rows: 1, columns: 1 })[0]?.[0]?.value ?? null;
  const said = isCellError(value) ? failure(tab, row, column) : undefined;
  const warnings = tab
    .protections()
    .filter(({ area }) => inside(area, row, column))
    .map(({ description }) => description);
  const text = [said, tab.note(row, column), ...warnings].filter((part) => part !== undefined && part !== "");
  return { text: text.join(" · "), wrong: said !== undefined };
}

function inside(area: NonNullable<ReturnType<typeof areaOf>>, row: number, column: number): boolean {
  return row >= area.row && row < area.row + area.rows && column >= area.column && column < area.column + area.columns;
}

export function showCellMessage(parts: MessageParts, row: number, column: number): void {
  const line = byId("cell-message");
  const { text, wrong } = cellMessage(parts, row, column);
  line.textContent = text === "" ? NOTHING : text;
  line.classList.toggle("nothing", text === "");
  line.classList.toggle("wrong", wrong);
}
