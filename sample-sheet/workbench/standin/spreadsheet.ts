/** Spreadsheet and SpreadsheetApp of the host: the one workbook the script is bound to. */

import { splitReference } from "./a1.ts";
import type { Book, Range, Sheet, Spreadsheet } from "./book.ts";
import { makeRuleBuilder } from "./conditional.ts";
import { imitate } from "./gate.ts";
import { LOCATION_TYPE, makeFinder, type Places, VISIBILITY } from "./metadata.ts";
import { PROTECTION_TYPE } from "./protection.ts";
import { makeRange } from "./range.ts";
import { makeSheet } from "./sheet.ts";
import type { Screen } from "./ui.ts";
import { makeUi } from "./ui.ts";
import { makeValidationBuilder, VALIDATION_CRITERIA } from "./validation.ts";

type App = GoogleAppsScript.Spreadsheet.SpreadsheetApp;

/** A time zone or locale is part of the workbook and may be changed by a script. */
export interface Ways {
  readonly setTimeZone: (zone: string) => void;
}

function makeSpreadsheet(book: Book, screen: Screen, ways: Ways): Spreadsheet {
  const { gate, grid } = book;
  const sheetOf = (tabId: number): Sheet => makeSheet(book, tabId, () => spreadsheet);
  const places: Places = {
    sheetOf,
    rangeOf: (tabId, area) => makeRange({ book, tabId, area, sheet: () => sheetOf(tabId) }),
  };
  const byName = (name: string): Sheet | null => {
    const tab = grid.tabs().find((each) => each.name() === name);
    return tab ? sheetOf(tab.id) : null;
  };
  const spreadsheet: Spreadsheet = imitate<Spreadsheet>()("Spreadsheet", {
    getName: () => grid.name,
    getSheets: () => gate.reach("Spreadsheet.getSheets", "read", () => grid.tabs().map(({ id }) => sheetOf(id))),
    getSheetByName: (name: string) => gate.reach("Spreadsheet.getSheetByName", "read", () => byName(name)),
    getActiveSheet: () => gate.reach("Spreadsheet.getActiveSheet", "read", () => sheetOf(grid.activeTabId())),
    setActiveSheet: (sheet: Sheet) =>
      gate.reach("Spreadsheet.setActiveSheet", "write", () => {
        grid.activate(sheet.getSheetId());
        return sheet;
      }),
    /** `index` counts from 0: the new tab stands before the one that is there now. */
    insertSheet: (name?: unknown, index?: unknown) =>
      gate.reach("Spreadsheet.insertSheet", "write", () => {
        if (typeof name !== "string") throw new Error("not imitated: Spreadsheet.insertSheet without a name");
        const last = index === undefined || (typeof index === "number" && index >= grid.tabs().length);
        if (!last) throw new Error("not imitated: Spreadsheet.insertSheet before another tab");
        if (grid.tabs().some((tab) => tab.name().toLowerCase() === name.toLowerCase())) {
          throw new Error(`A sheet with the name "${name}" already exists. Please enter another name.`);
        }
        const tab = grid.addTab(name);
        grid.activate(tab.id);
        return sheetOf(tab.id);
      }),
    deleteSheet: (sheet: Sheet) =>
      gate.reach("Spreadsheet.deleteSheet", "write", () => {
        if (grid.tabs().length === 1) throw new Error("You can't remove all the sheets in a document.");
        grid.removeTab(sheet.getSheetId());
      }),
    getRange: (reference: string): Range => {
      const { tab, a1 } = splitReference(reference);
      const sheet = tab === null ? sheetOf(grid.activeTabId()) : byName(tab);
      if (!sheet) throw new Error(`Range not found: "${reference}".`);
      return sheet.getRange(a1);
    },
    getSpreadsheetTimeZone: () => gate.reach("Spreadsheet.getSpreadsheetTimeZone", "read", () => book.timeZone),
    setSpreadsheetTimeZone: (zone: string) =>
      gate.reach("Spreadsheet.setSpreadsheetTimeZone", "write", () => ways.setTimeZone(zone)),
    getSpreadsheetLocale: () => gate.reach("Spreadsheet.getSpreadsheetLocale", "read", () => book.locale),
    createDeveloperMetadataFinder: () => makeFinder(book, places, () => grid.tabs().map(({ id }) => id)),
    toast: (message: string) => gate.reach("Spreadsheet.toast", "ui", () => screen.toast(message)),
  });
  return spreadsheet;
}

export function makeSpreadsheetApp(book: Book, screen: Screen, ways: Ways): App {
  const spreadsheet = makeSpreadsheet(book, screen, ways);
  const active = (name: string): Spreadsheet => book.gate.reach(`SpreadsheetApp.${name}`, "service", () => spreadsheet);
  return imitate<App>()("SpreadsheetApp", {
    DeveloperMetadataVisibility: VISIBILITY,
    DeveloperMetadataLocationType: LOCATION_TYPE,
    ProtectionType: PROTECTION_TYPE,
    DataValidationCriteria: VALIDATION_CRITERIA,
    getActive: () => active("getActive"),
    getActiveSpreadsheet: () => active("getActiveSpreadsheet"),
    getActiveSheet: () => spreadsheet.getActiveSheet(),
    flush: () => book.gate.flush(),
    getUi: () => book.gate.reach("SpreadsheetApp.getUi", "ui", () => makeUi(book.gate, screen)),
    newDataValidation: () => makeValidationBuilder(book),
    newConditionalFormatRule: () => makeRuleBuilder(),
  });
}
