/** Dresses the columns of a tab: frozen heading, notes, lists to pick from, number formats, warnings. */

import type { OpenTab } from "./open.ts";
import type { Block, TabPort, TabSetup, Warning, WorkbookPort } from "./port.ts";
import type { ReadyTab } from "./setup.ts";
import { type ColumnSpec, formatOf } from "./spec.ts";

const HEADING_WARNING = "Stillroot: headings, by which columns are found";
const FORMULA_WARNING = "Stillroot: formulas";

/** Formats a cell has before anybody chose one. */
const UNFORMATTED: readonly string[] = ["", "General", "0.###############"];

/** Formulas of the add-on. A person's own are their own business. */
const OUR_FORMULA = /\b(?:FEED|WATER|METER|ROOT|POT|CHECK|TRIAL)_[A-Z0-9]+\s*\(/i;

function noteOf({ help, unit }: ColumnSpec): string {
  return unit === undefined ? help : `${help} In ${unit}.`;
}

/** Adds only what is not there: no note, format or rule that somebody chose is changed. */
export function dressColumns(setup: TabSetup, { spec, tab, columns, fresh, values, width }: ReadyTab): void {
  const look = setup.look(width);
  if (look.frozenRows < 1) setup.freezeHeading();
  for (const column of spec.columns) {
    const at = columns.at.get(column.heading);
    if (at === undefined) continue;
    if ((look.notes[at - 1] ?? "") === "") setup.note(at, noteOf(column));
    const format = formatOf(column);
    const unformatted = UNFORMATTED.includes(look.formats[at - 1] ?? "");
    // A text format would change how cells that are already filled are read, so only new columns get it.
    if (format !== null && unformatted && (format !== "@" || fresh.has(column.heading))) setup.format(at, format);
    if (column.choices && look.ruled[at - 1] !== true) setup.offerChoices(at, column.choices);
  }
  // In a log, values are written and formulas are somebody's doing: shown as their value, and flagged.
  if (spec.alsoKeys) setup.flagFormulas([...columns.at.values()]);
  warn(setup, look.warnings, { row: 1, column: 1, rows: 1, columns: width }, HEADING_WARNING);
  for (const block of formulaBlocks(tab, values)) warn(setup, look.warnings, block, FORMULA_WARNING);
}

function union(a: Block, b: Block): Block {
  const row = Math.min(a.row, b.row);
  const column = Math.min(a.column, b.column);
  return {
    row,
    column,
    rows: Math.max(a.row + a.rows, b.row + b.rows) - row,
    columns: Math.max(a.column + a.columns, b.column + b.columns) - column,
  };
}

/** One warning over the block; one that already touches its columns is made to cover it too. */
function warn(setup: TabSetup, warnings: readonly Warning[], block: Block, text: string): void {
  const there = warnings.find(
    (warning) =>
      warning.text === text &&
      warning.block.column < block.column + block.columns &&
      block.column < warning.block.column + warning.block.columns,
  );
  if (!there) {
    setup.warnOnEdit(block, text);
    return;
  }
  const both = union(there.block, block);
  if (both.rows > there.block.rows || both.columns > there.block.columns) there.stretch(both);
}

/** For each column with formulas of the add-on below the heading, the cells from the first to the last. */
function formulaBlocks(tab: TabPort, values: readonly (readonly unknown[])[]): Block[] {
  if (values.length < 2) return [];
  const columns = values[0]?.length ?? 0;
  const formulas = tab.readFormulas({ row: 2, column: 1, rows: values.length - 1, columns });
  const blocks: Block[] = [];
  for (let column = 1; column <= columns; column++) {
    const rows = formulas.flatMap((row, index) => (OUR_FORMULA.test(row[column - 1] ?? "") ? [index + 2] : []));
    const first = rows[0];
    const last = rows[rows.length - 1];
    if (first !== undefined && last !== undefined) {
      blocks.push({ row: first, column, rows: last - first + 1, columns: 1 });
    }
  }
  return blocks;
}

/** Offers the names of one tab's rows in another tab's cells, where no rule stands yet. */
export function offerNameLists(workbook: WorkbookPort, ready: readonly ReadyTab[], ownPlants: OpenTab | null): void {
  const source = (name: string): { tab: TabPort; column: number } | null => {
    if (name === "Plants" && ownPlants) {
      const column = ownPlants.columns.at.get("Plant");
      return column === undefined ? null : { tab: ownPlants.tab, column };
    }
    const found = ready.find(({ spec }) => spec.name === name);
    const column = found?.columns.at.get(found.spec.key);
    return found && column !== undefined ? { tab: found.tab, column } : null;
  };
  for (const { spec, tab, columns, width } of ready) {
    const referring = spec.columns.filter(({ refersTo, heading }) => refersTo && columns.at.has(heading));
    if (referring.length === 0) continue;
    const setup = workbook.setup(tab);
    const { ruled } = setup.look(width);
    for (const { refersTo, heading } of referring) {
      const at = columns.at.get(heading) ?? 0;
      const from = source(refersTo ?? "");
      if (from && ruled[at - 1] !== true) setup.offerNames(at, from.tab, from.column);
    }
  }
}
