/** The workbook port over SpreadsheetApp. Nothing in it decides anything; it only carries. */

import type { Mark, TabPort, WorkbookPort } from "../sheet/port.ts";
import { busy } from "../sheet/refusals.ts";
import { type Days, daysIn } from "./days.ts";
import { MARK_KEY, setupOf } from "./setup.ts";
import { tabOf } from "./tab.ts";

/** How long to wait for the document lock before saying that somebody else is writing. */
const LOCK_WAIT_S = 10;

/**
 * The spreadsheet the script is bound to or opened from. The methods used, and so to be imitated in full:
 *
 * - SpreadsheetApp: getActiveSpreadsheet, flush, newDataValidation, newConditionalFormatRule, getUi, ProtectionType.RANGE,
 *   DeveloperMetadataVisibility.DOCUMENT, DeveloperMetadataLocationType.COLUMN and .SHEET
 * - Spreadsheet: getSheets, getSpreadsheetTimeZone, insertSheet(name, index), createDeveloperMetadataFinder
 * - DeveloperMetadataFinder: withKey, find; DeveloperMetadata: getValue, getLocation;
 *   its location: getLocationType, getSheet, getColumn
 * - Sheet: getSheetId, getName, getRange(row, column, rows, columns), getRange("A:C"),
 *   getMaxRows, getMaxColumns, insertRowsAfter, insertColumnsAfter, getFrozenRows, setFrozenRows,
 *   addDeveloperMetadata(key, value, visibility), getProtections, setColumnWidth,
 *   getConditionalFormatRules, setConditionalFormatRules, newChart, getCharts, insertChart, updateChart
 * - Range: getValues, setValues, setFormula, setFontWeights, setWrap, getFormulas, getMergedRanges, getNotes, setNote, getNumberFormats,
 *   setNumberFormat, getDataValidations, setDataValidation, addDeveloperMetadata, protect,
 *   getSheet, getRow, getColumn, getNumRows, getNumColumns
 * - DataValidationBuilder: requireValueInList, requireValueInRange, setAllowInvalid, build
 * - ConditionalFormatRuleBuilder: whenFormulaSatisfied, setBackground, setFontColor, setRanges, build; its rule:
 *   getBooleanCondition, getCriteriaValues
 * - Protection: getDescription, setDescription, setWarningOnly, getRange, setRange
 * - EmbeddedChart: getOptions().get("title"), getRanges, modify; its builder: asLineChart, clearRanges, addRange,
 *   setNumHeaders, setOption, setPosition, build
 * - LockService: getDocumentLock, tryLock, releaseLock
 *
 * What counts as a call: anything that reads or writes cells, marks, rules or the size of the grid, finding
 * marks, and flush. Getters on an object already fetched (a name, an id, where a mark sits) do not.
 */
export function activeWorkbook(): WorkbookPort {
  const spreadsheet = SpreadsheetApp.getActiveSpreadsheet();
  let days: Days | null = null;
  const daysHere = (): Days => {
    days ??= daysIn(spreadsheet.getSpreadsheetTimeZone());
    return days;
  };
  const dateOf = (day: number): Date => daysHere().dateOf(day);
  let begun = false;
  const begin = (): void => {
    begun = true;
  };

  /** Sheets by the tab handed out for them, for the set-up. */
  const sheets = new Map<number, GoogleAppsScript.Spreadsheet.Sheet>();
  const handOut = (sheet: GoogleAppsScript.Spreadsheet.Sheet): TabPort => {
    const tab = tabOf(sheet, { dateOf, begin });
    sheets.set(tab.id, sheet);
    return tab;
  };
  const sheetOf = (tab: TabPort): GoogleAppsScript.Spreadsheet.Sheet => {
    const sheet = sheets.get(tab.id);
    if (!sheet) throw new Error(`The tab “${tab.name}” is not of this spreadsheet.`);
    return sheet;
  };

  return {
    tabs: () => spreadsheet.getSheets().map(handOut),
    marks(wanted) {
      const found: Mark[] = [];
      for (const metadata of spreadsheet.createDeveloperMetadataFinder().withKey(MARK_KEY).find()) {
        const text = metadata.getValue() ?? "";
        if (!wanted(text)) continue;
        const location = metadata.getLocation();
        const type = location.getLocationType();
        if (type === SpreadsheetApp.DeveloperMetadataLocationType.SHEET) {
          const sheet = location.getSheet();
          if (sheet) found.push({ tabId: sheet.getSheetId(), column: null, text });
        } else if (type === SpreadsheetApp.DeveloperMetadataLocationType.COLUMN) {
          const range = location.getColumn();
          if (range) found.push({ tabId: range.getSheet().getSheetId(), column: range.getColumn(), text });
        }
      }
      return found;
    },
    dayOf: (value) => (typeof value === "object" && value !== null ? daysHere().dayOf(value) : null),
    today() {
      const day = daysHere().dayOf(new Date());
      if (day === null) throw new Error("The clock of the spreadsheet gives no date.");
      return day;
    },
    addTab(name) {
      begin();
      return handOut(spreadsheet.insertSheet(name, sheets.size));
    },
    setup(tab) {
      begin();
      return setupOf(sheetOf(tab), (other) => sheetOf(other));
    },
    begun: () => begun,
    locked(work) {
      const lock = LockService.getDocumentLock();
      if (!lock.tryLock(LOCK_WAIT_S * 1000)) throw busy(LOCK_WAIT_S);
      try {
        return work();
      } finally {
        // Pending writes must reach the sheet before the next holder of the lock reads it.
        try {
          SpreadsheetApp.flush();
        } finally {
          lock.releaseLock();
        }
      }
    },
  };
}
