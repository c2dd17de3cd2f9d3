/** The boards: a tab each with one formula that spills, made once and left alone as long as its formula works. */

import { BadInput, isBadInput } from "../core/errors.ts";
import { sayList } from "../core/saying.ts";
import { BOARDS, type BoardSpec, type References } from "./board-specs.ts";
import { type Book, columnAt, findColumns, findTab, noTab, openBook } from "./find.ts";
import { CLAIMS, EVENTS } from "./list-tabs.ts";
import { CARE_LOG } from "./log-tabs.ts";
import { findMade, fixedCell, isMadeMark, type MadeBook, madeMark, openRange } from "./made-tabs.ts";
import { openPlantList } from "./plant-list.ts";
import type { TabPort, WorkbookPort } from "./port.ts";
import { requireSettings, type Settings } from "./settings.ts";
import { DAY_FORMAT, type TabSpec } from "./spec.ts";
import { isBlank } from "./stored.ts";

export interface BoardsReport {
  /** Names of the tabs that were made. */
  readonly made: readonly string[];
  /** Names of those whose formula had lost a range and was written anew. */
  readonly mended: readonly string[];
  /** Sentences on what was left alone and why. */
  readonly problems: readonly string[];
}

/** Where a person may have moved the formula to. */
const LOOKED_AT = { row: 1, column: 1, rows: 30, columns: 26 } as const;

/** Headings reach no further than this. */
const MOST_COLUMNS = 200;

/** Makes what is missing. Run again it changes nothing. Throws BadInput when a tab that is needed is not there. */
export function makeBoards(workbook: WorkbookPort): BoardsReport {
  return workbook.locked(() => {
    const book = openBook(workbook, ["Plants", "Care log", "Events", "Settings", "Claims"], isMadeMark);
    const references = referencesIn(book);
    const report = { made: [] as string[], mended: [] as string[], problems: [] as string[] };
    for (const board of BOARDS) {
      try {
        const { done } = makeBoard(book, board, board.formula(references));
        if (done !== "kept") report[done].push(board.name);
      } catch (error) {
        if (!isBadInput(error)) throw error;
        report.problems.push(error.message);
      }
    }
    return report;
  });
}

/** Ranges and cells that the formulas are given, wherever they stand now. */
function referencesIn(book: Book): References {
  const settings = requireSettings(book);
  const plants = openPlantList(book, settings);
  const valueAt = columnAt(settings.columns, "Value");
  return {
    plants: (firstRow) => openRange(plants.tab.name, [columnAt(plants.columns, "Plant")], firstRow),
    log: requiredRange(book, CARE_LOG),
    events: requiredRange(book, EVENTS),
    rules: openRange(settings.tab.name, [columnAt(settings.columns, "Setting"), valueAt], 1),
    claims: tableRange(book, CLAIMS),
    setting: (name) => settingCell(settings, name),
  };
}

/** The cell beside a setting, as a formula names it. */
export function settingCell(settings: Settings, name: string): string {
  const row = settings.row(name);
  if (row === null) {
    throw new BadInput(
      "no-setting",
      `“${settings.tab.name}” has no row “${name}”. Choose “Set up tabs” from the Stillroot menu to have it added.`,
    );
  }
  return fixedCell(settings.tab.name, columnAt(settings.columns, "Value"), row);
}

/** All our columns of a tab that has to be there. */
export function requiredRange(book: Book, spec: TabSpec): string {
  const range = tableRange(book, spec);
  if (range === null) throw noTab(spec);
  return range;
}

/** All our columns of a tab, from the heading row on; what stands between them comes along. Null where there is none. */
export function tableRange(book: Book, spec: TabSpec): string | null {
  const tab = findTab(book, spec);
  if (!tab) return null;
  const [headingRow = []] = tab.readBlock({ row: 1, column: 1, rows: 1, columns: MOST_COLUMNS });
  const { at } = findColumns(book, spec, tab, headingRow);
  return at.size === 0 ? null : openRange(tab.name, [...at.values()], 1);
}

export interface MadeBoard {
  readonly tab: TabPort;
  /** Where its formula stands. */
  readonly column: number;
  readonly done: "made" | "mended" | "kept";
}

export function makeBoard(
  book: MadeBook,
  board: Pick<BoardSpec, "name" | "functionName" | "dayColumns" | "colours">,
  formula: string,
): MadeBoard {
  const found = findMade(book, board.name);
  const tab = found?.tab ?? book.workbook.addTab(board.name);
  const place = found ? formulaOn(tab, board.functionName) : null;
  if (found && place === null && tab.readAll().some((row) => !row.every(isBlank))) {
    throw new BadInput(
      "board-taken",
      `“${tab.name}” holds something other than the board, so it was left as it is. Rename that tab, or clear it, then make the boards again.`,
    );
  }
  const broken = place?.formula.includes("#REF!") === true;
  if (place === null) tab.writeFormula(1, 1, formula);
  else if (broken) tab.writeFormula(place.row, place.column, formula);
  if (!found?.marked) dress(book, tab, board);
  return { tab, column: place?.column ?? 1, done: place === null ? "made" : broken ? "mended" : "kept" };
}

function formulaOn(tab: TabPort, functionName: string): { formula: string; row: number; column: number } | null {
  const formulas = tab.readFormulas(LOOKED_AT);
  const ours = new RegExp(`\\b${functionName}\\s*\\(`, "i");
  for (const [index, row] of formulas.entries()) {
    const at = row.findIndex((formula) => ours.test(formula));
    if (at !== -1) return { formula: row[at] ?? "", row: index + 1, column: at + 1 };
  }
  return null;
}

/**
 * Frozen heading, date formats, colours, and the mark last; once, so that what a person changes afterwards stays,
 * and again after a failure in between.
 */
function dress(
  { workbook }: MadeBook,
  tab: TabPort,
  { name, dayColumns, colours }: Pick<BoardSpec, "name" | "dayColumns" | "colours">,
): void {
  const setup = workbook.setup(tab);
  setup.freezeHeading();
  for (const column of dayColumns) setup.format(column, DAY_FORMAT);
  setup.colourWords(colours);
  setup.mark(null, madeMark(name));
}

/** The report in words. */
export function boardsWords({ made, mended, problems }: BoardsReport): string {
  const quoted = (names: readonly string[]) =>
    sayList(
      names.map((name) => `“${name}”`),
      "and",
    );
  const done: string[] = [];
  if (made.length > 0) done.push(`Made ${quoted(made)}.`);
  if (mended.length > 0) done.push(`Gave ${quoted(mended)} a formula with the right ranges again.`);
  if (done.length === 0 && problems.length === 0) done.push("The boards are there; nothing had to be done.");
  return [...done, ...problems].join("\n\n");
}
