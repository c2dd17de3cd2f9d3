/** What the set-up does to one tab, over a Sheet: frozen heading, marks, notes, lists, formats, warnings. */

import { columnLetters } from "../sheet/find.ts";
import type { Block, TabPort, TabSetup, WordColour } from "../sheet/port.ts";
import { drawChart } from "./chart.ts";
import { blockOf } from "./tab.ts";

type Sheet = GoogleAppsScript.Spreadsheet.Sheet;

/** The key of the add-on's developer metadata; the value says what the tab or column is. */
export const MARK_KEY = "stillroot";

/** Dark ink on a pale ground, 7:1 and more. */
const FORMULA_COLOURS = { background: "#f9dfd3", ink: "#6f2607" } as const;

/** True in a row whose cell in `column` holds the word; written for a range that begins in row 1. */
function wordFormula({ column, word }: WordColour): string {
  return `=$${columnLetters(column)}1="${word}"`;
}

/** `sheetOf` finds the sheet of another tab of the same workbook. */
export function setupOf(sheet: Sheet, sheetOf: (tab: TabPort) => Sheet): TabSetup {
  const rangeOf = (block: Block) => sheet.getRange(block.row, block.column, block.rows, block.columns);
  /** A whole column of any tab, which is what marks and open lists are tied to. */
  const wholeColumn = (of: Sheet, column: number) => {
    const letters = columnLetters(column);
    return of.getRange(`${letters}:${letters}`);
  };
  let rowsInGrid: number | null = null;
  const belowHeading = (of: Sheet, column: number) => {
    let rows = of === sheet ? rowsInGrid : null;
    rows ??= of.getMaxRows();
    if (rows < 2) {
      of.insertRowsAfter(rows, 1);
      rows = 2;
    }
    if (of === sheet) rowsInGrid = rows;
    return of.getRange(2, column, rows - 1, 1);
  };

  return {
    look(columns) {
      // Row 2 is asked for its formats and rules, so it has to be there.
      belowHeading(sheet, 1);
      const heading = { row: 1, column: 1, rows: 1, columns };
      const first = { row: 2, column: 1, rows: 1, columns };
      return {
        frozenRows: sheet.getFrozenRows(),
        notes: rangeOf(heading).getNotes()[0] ?? [],
        formats: rangeOf(first).getNumberFormats()[0] ?? [],
        ruled: (rangeOf(first).getDataValidations()[0] ?? []).map((rule) => rule !== null),
        warnings: sheet.getProtections(SpreadsheetApp.ProtectionType.RANGE).map((protection) => ({
          text: protection.getDescription(),
          block: blockOf(protection.getRange()),
          stretch: (block: Block) => {
            protection.setRange(rangeOf(block));
          },
        })),
      };
    },
    freezeHeading() {
      sheet.setFrozenRows(1);
    },
    mark(column, text) {
      const visibility = SpreadsheetApp.DeveloperMetadataVisibility.DOCUMENT;
      if (column === null) sheet.addDeveloperMetadata(MARK_KEY, text, visibility);
      else wholeColumn(sheet, column).addDeveloperMetadata(MARK_KEY, text, visibility);
    },
    note(column, text) {
      rangeOf({ row: 1, column, rows: 1, columns: 1 }).setNote(text);
    },
    offerChoices(column, choices) {
      const rule = SpreadsheetApp.newDataValidation()
        .requireValueInList([...choices], true)
        .setAllowInvalid(true)
        .build();
      belowHeading(sheet, column).setDataValidation(rule);
    },
    offerNames(column, fromTab, fromColumn) {
      const rule = SpreadsheetApp.newDataValidation()
        .requireValueInRange(belowHeading(sheetOf(fromTab), fromColumn), true)
        .setAllowInvalid(true)
        .build();
      belowHeading(sheet, column).setDataValidation(rule);
    },
    format(column, pattern) {
      belowHeading(sheet, column).setNumberFormat(pattern);
    },
    warnOnEdit(block, text) {
      rangeOf(block).protect().setDescription(text).setWarningOnly(true);
    },
    colourWords(colours) {
      const rules = sheet.getConditionalFormatRules();
      const there = rules.map((rule) => rule.getBooleanCondition()?.getCriteriaValues()[0]);
      const fresh = colours.filter((colour) => !there.includes(wordFormula(colour)));
      if (fresh.length === 0) return;
      const built = fresh.map((colour) =>
        SpreadsheetApp.newConditionalFormatRule()
          .whenFormulaSatisfied(wordFormula(colour))
          .setBackground(colour.background)
          .setFontColor(colour.ink)
          .setRanges([rangeOf({ row: 1, column: 1, rows: sheet.getMaxRows(), columns: colour.columns })])
          .build(),
      );
      // Setting replaces every rule of the tab, so those of other people go back in front.
      sheet.setConditionalFormatRules([...rules, ...built]);
    },
    flagFormulas(columns) {
      const rules = sheet.getConditionalFormatRules();
      const isThere = rules.some((rule) =>
        String(rule.getBooleanCondition()?.getCriteriaValues()[0]).startsWith("=ISFORMULA("),
      );
      const sorted = [...columns].sort((a, b) => a - b);
      if (isThere || sorted.length === 0) return;
      const rule = SpreadsheetApp.newConditionalFormatRule()
        .whenFormulaSatisfied(`=ISFORMULA(${columnLetters(sorted[0] ?? 1)}2)`)
        .setBackground(FORMULA_COLOURS.background)
        .setFontColor(FORMULA_COLOURS.ink)
        .setRanges(sorted.map((column) => belowHeading(sheet, column)))
        .build();
      sheet.setConditionalFormatRules([...rules, rule]);
    },
    drawChart: (chart) => drawChart(sheet, chart),
    layOut({ widths, rows, boldRows, wrapped }) {
      widths.forEach((width, index) => {
        sheet.setColumnWidth(index + 1, width);
      });
      const weights = Array.from({ length: rows }, (_, index) =>
        widths.map(() => (boldRows.includes(index + 1) ? ("bold" as const) : ("normal" as const))),
      );
      rangeOf({ row: 1, column: 1, rows, columns: widths.length }).setFontWeights(weights).setWrap(false);
      if (wrapped) {
        const { from, to } = wrapped;
        rangeOf({ row: from, column: 1, rows: to - from + 1, columns: widths.length }).setWrap(true);
      }
    },
  };
}
