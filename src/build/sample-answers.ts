/** What the formulas of the sample sheet answer, worked out by the project's own functions at build time. */

import { createRunner } from "../functions/runner.ts";
import type { SampleCell, SampleTab } from "./sample-cell.ts";
import { type Formula, type Range, readFormula } from "./sample-formula.ts";

/** A value as a cell shows it; a day stands for a date cell, "" for a blank one. */
export type Answered = string | number | boolean | { readonly day: number };

/** A formula's block of answers; one cell unless it spills. */
export interface Spill {
  readonly row: number;
  readonly column: number;
  readonly formula: string;
  readonly values: readonly (readonly Answered[])[];
}

export interface AnsweredTab {
  readonly tab: SampleTab;
  readonly spills: readonly Spill[];
  /** Everything a person sees, spilled answers included; rows from 0, blank cells "". */
  readonly shown: readonly (readonly Answered[])[];
}

type Grid = Answered[][];

function isDay(value: unknown): value is { day: number } {
  return typeof value === "object" && value !== null && "day" in value;
}

const call = createRunner({ dayOf: (value) => (isDay(value) ? value.day : null), dateOf: (day) => ({ day }) });

function isFormula(cell: SampleCell | undefined): cell is { readonly formula: string } {
  return typeof cell === "object" && cell !== null && "formula" in cell;
}

/** The plain cells of a tab; formulas are blank until they are answered. */
function plainGrid(tab: SampleTab): Grid {
  return tab.rows.map((row) => row.map((cell) => (cell === null || isFormula(cell) ? "" : cell)));
}

class Sheets {
  readonly #grids: ReadonlyMap<string, Grid>;

  constructor(tabs: readonly SampleTab[]) {
    this.#grids = new Map(tabs.map((tab) => [tab.name, plainGrid(tab)]));
  }

  grid(name: string): Grid {
    const grid = this.#grids.get(name);
    if (grid === undefined) throw new Error(`No tab is called "${name}".`);
    return grid;
  }

  read(range: Range, own: string): Answered[][] {
    const grid = this.grid(range.tab ?? own);
    const lastRow = range.lastRow ?? Math.max(grid.length - 1, range.firstRow);
    const rows: Answered[][] = [];
    for (let row = range.firstRow; row <= lastRow; row++) {
      const cells: Answered[] = [];
      for (let column = range.firstColumn; column <= range.lastColumn; column++) cells.push(grid[row]?.[column] ?? "");
      rows.push(cells);
    }
    return rows;
  }
}

function evaluate(formula: Formula, sheets: Sheets, own: string): unknown {
  switch (formula.kind) {
    case "value":
      return formula.value;
    case "range": {
      const rows = sheets.read(formula.range, own);
      return formula.single ? rows[0]?.[0] : rows;
    }
    case "operation":
      return operate(formula.sign, evaluate(formula.left, sheets, own), evaluate(formula.right, sheets, own));
    case "call": {
      const arg = (at: number): unknown => {
        const found = formula.args[at];
        return found === undefined ? "" : evaluate(found, sheets, own);
      };
      if (formula.name === "IF") return arg(0) === true ? arg(1) : arg(2);
      return call(
        formula.name,
        formula.args.map((_, at) => arg(at)),
      );
    }
  }
}

/** As a spreadsheet does it: a day counts as its number, texts are compared without case. */
function operate(sign: "=" | "+" | "-", left: unknown, right: unknown): unknown {
  const plain = (value: unknown): unknown => (isDay(value) ? value.day : value);
  const [a, b] = [plain(left), plain(right)];
  if (sign === "=") return String(a).toLowerCase() === String(b).toLowerCase();
  if (typeof a !== "number" || typeof b !== "number") throw new Error(`${String(a)} ${sign} ${String(b)} is no sum.`);
  return sign === "+" ? a + b : a - b;
}

function block(answer: unknown): Answered[][] {
  const rows = Array.isArray(answer) ? answer : [[answer]];
  return rows.map((row: unknown) => (Array.isArray(row) ? row : [row]) as Answered[]);
}

/** Puts the answers into the grid, as a spreadsheet would; throws where they would cover something. */
function spill(tab: SampleTab, grid: Grid, { row, column, values, formula }: Spill): void {
  values.forEach((cells, down) => {
    cells.forEach((value, right) => {
      const [r, c] = [row + down, column + right];
      const covered = (down > 0 || right > 0) && ((tab.rows[r]?.[c] ?? null) !== null || (grid[r]?.[c] ?? "") !== "");
      if (covered) throw new Error(`${formula} on ${tab.name} would cover row ${r + 1}, column ${c + 1}.`);
      while (grid.length <= r) grid.push([]);
      const cellsThere = grid[r] as Answered[];
      while (cellsThere.length <= c) cellsThere.push("");
      cellsThere[c] = value;
    });
  });
}

/**
 * Answers every formula, tab by tab and row by row from the top left; so a formula may refer to answers above it,
 * left of it, or on a tab before it. An error in one of them throws: the sample has none.
 */
export function answerTabs(tabs: readonly SampleTab[]): AnsweredTab[] {
  const sheets = new Sheets(tabs);
  return tabs.map((tab) => {
    const grid = sheets.grid(tab.name);
    const spills: Spill[] = [];
    tab.rows.forEach((cells, row) => {
      cells.forEach((cell, column) => {
        if (!isFormula(cell)) return;
        const values = block(evaluate(readFormula(cell.formula), sheets, tab.name));
        const answered: Spill = { row, column, formula: cell.formula, values };
        spill(tab, grid, answered);
        spills.push(answered);
      });
    });
    return { tab, spills, shown: grid };
  });
}
