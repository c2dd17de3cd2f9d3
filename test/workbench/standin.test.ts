/** The stand-in imitates the host's traps: one row for each that shared notes on the host name. */

import { createContext, runInContext } from "node:vm";
import { expect, test } from "vitest";
import { imitate } from "../../sample-sheet/workbench/standin/gate.ts";
import { createHost, type HostOptions } from "../../sample-sheet/workbench/standin/host.ts";
import { MemoryGrid, type MemoryTabOptions } from "../../sample-sheet/workbench/standin/memory.ts";

const NOON_2026_03_01 = Date.UTC(2026, 2, 1, 12);

function sheetWith(cells: MemoryTabOptions["cells"], options: Partial<HostOptions> & { tab?: MemoryTabOptions } = {}) {
  const grid = new MemoryGrid({ tabs: { Log: { rows: 20, columns: 6, cells: cells ?? [], ...options.tab } } });
  const host = createHost({ grid, spreadsheetTimeZone: "Europe/Zurich", now: () => NOON_2026_03_01, ...options });
  const spreadsheet = host.SpreadsheetApp.getActive();
  const sheet = spreadsheet.getSheets()[0];
  if (!sheet) throw new Error("no tab");
  return { host, spreadsheet, sheet, tab: grid.tab("Log"), grid };
}

/** Serial numbers from the spreadsheet convention: 1899-12-30 is day 0, so 2026-04-03 is 46115. */
const TYPED: readonly [text: string, locale: string, value: unknown, formula: string][] = [
  ["=1+1", "en_GB", { error: "#NAME?" }, "=1+1"],
  ['=IMAGE("https://example.com/a.png")', "en_GB", { error: "#NAME?" }, '=IMAGE("https://example.com/a.png")'],
  ["+leaf", "en_GB", { error: "#NAME?" }, "=+leaf"],
  ["+1", "en_GB", 1, ""],
  ["012", "en_GB", 12, ""],
  ["1e3", "en_GB", 1000, ""],
  ["10%", "en_GB", 0.1, ""],
  ["3/4", "en_GB", 46115, ""],
  ["4/3", "en_US", 46115, ""],
  ["3.4.2026", "de_CH", 46115, ""],
  ["2026-04-03", "en_GB", 46115, ""],
  ["10-5-5", "en_GB", 38482, ""],
  ["1,2", "de_DE", 1.2, ""],
  ["1.2", "en_GB", 1.2, ""],
  ["TRUE", "en_GB", true, ""],
  ["'=1+1", "en_GB", "=1+1", ""],
  ["'3/4", "en_GB", "3/4", ""],
  ["''tis", "en_GB", "'tis", ""],
  ["30/2", "en_GB", "30/2", ""],
  ["Monstera", "en_GB", "Monstera", ""],
  ["", "en_GB", null, ""],
];

test.each(TYPED)("setValue parses %j in %s as if typed", (text, locale, value, formula) => {
  const { sheet, tab } = sheetWith([], { locale });
  sheet.getRange(2, 2).setValue(text);
  expect(tab.read({ row: 2, column: 2, rows: 1, columns: 1 })[0]?.[0]).toMatchObject({ value, formula });
});

test("setValues and appendRow parse like setValue", () => {
  const { sheet } = sheetWith([["Id"]]);
  sheet.getRange(2, 1, 1, 2).setValues([["'012", "012"]]);
  sheet.appendRow(["=A1", "x"]);
  expect(sheet.getRange(2, 1, 1, 2).getValues()).toEqual([["012", 12]]);
  expect(sheet.getRange(3, 1).getFormula()).toBe("=A1");
});

test("a text format keeps 012 a text, but not a formula", () => {
  const { sheet } = sheetWith([]);
  sheet
    .getRange("A1:A2")
    .setNumberFormat("@")
    .setValues([["012"], ["=1+1"]]);
  expect(sheet.getRange("A1").getValue()).toBe("012");
  expect(sheet.getRange("A2").getFormula()).toBe("=1+1");
});

test("a block of another size than the range is refused in the host's words", () => {
  const { sheet } = sheetWith([]);
  expect(() => sheet.getRange(1, 1, 2, 1).setValues([["a"]])).toThrow("The data has 1 but the range has 2");
  expect(() => sheet.getRange(1, 1, 1, 2).setValues([["a"]])).toThrow("The data has 1 column but the range has 2");
});

test("a blank cell is '', an error cell its text", () => {
  const { sheet } = sheetWith([[null, { error: "#N/A" }, false]]);
  expect(sheet.getRange("A1:C1").getValues()).toEqual([["", "#N/A", false]]);
});

test("dates are of the script's realm, at midnight in the spreadsheet's zone, not the script's", () => {
  const makeDate = runInContext("(ms) => new Date(ms)", createContext({})) as (ms: number) => Date;
  const { sheet } = sheetWith([[{ value: 46115, format: "yyyy-mm-dd" }]], {
    makeDate,
    spreadsheetTimeZone: "Pacific/Auckland",
    scriptTimeZone: "America/Los_Angeles",
  });
  const value = sheet.getRange("A1").getValue() as Date;
  expect(value instanceof Date).toBe(false);
  expect(Object.prototype.toString.call(value)).toBe("[object Date]");
  // 3 April 2026 is still New Zealand daylight time, UTC+13, until 5 April (New Zealand Daylight Time Order 2007).
  expect(value.toISOString()).toBe("2026-04-02T11:00:00.000Z");
});

test("where clocks skip midnight, a date cell is the first instant of its day", () => {
  const { sheet } = sheetWith([[{ value: 43408, format: "yyyy-mm-dd" }]], { spreadsheetTimeZone: "America/Sao_Paulo" });
  // Brazil's clocks went from 00:00 to 01:00 on 4 November 2018 (IANA tz database, southamerica).
  expect((sheet.getRange("A1").getValue() as Date).toISOString()).toBe("2018-11-04T03:00:00.000Z");
});

test("a written Date becomes the spreadsheet's local time, with a date format", () => {
  const { sheet, tab } = sheetWith([]);
  sheet.getRange("A1").setValue(new Date("2026-04-02T22:00:00Z"));
  expect(tab.read({ row: 1, column: 1, rows: 1, columns: 1 })[0]?.[0]).toMatchObject({
    value: 46115,
    format: "dd/MM/yyyy",
  });
  expect(sheet.getRange("A1").getDisplayValue()).toBe("03/04/2026");
});

test("an open range has every row of the grid; one outside the grid is refused", () => {
  const { sheet } = sheetWith([["a"]]);
  expect(sheet.getRange("A2:A").getValues()).toHaveLength(19);
  expect(sheet.getRange("A:A").getNumRows()).toBe(20);
  expect(() => sheet.getRange(21, 1)).toThrow("outside the dimensions of the sheet");
});

test("getLastRow counts any content, so appendRow leaves a hole under a column of checkboxes", () => {
  const { sheet } = sheetWith([["Plant", "Done"], ["Fern"], [null, null], [null, false]]);
  expect(sheet.getLastRow()).toBe(4);
  sheet.appendRow(["Ivy"]);
  expect(sheet.getRange("A5").getValue()).toBe("Ivy");
});

test("metadata stays with its column through inserts, moves, renames and sorts, and goes with a deletion", () => {
  const { sheet, spreadsheet, tab } = sheetWith([["Id", "Date", "Plant"], ["b"], ["a"]]);
  sheet.getRange("C:C").addDeveloperMetadata("column", "Log/Plant");
  const found = () =>
    spreadsheet
      .createDeveloperMetadataFinder()
      .withKey("column")
      .find()
      .map((mark) => [mark.getValue(), mark.getLocation().getColumn()?.getColumn()]);
  sheet.insertColumnBefore(1);
  sheet.getRange("D1").setValue("My plants");
  sheet.setName("Journal");
  sheet.setFrozenRows(1);
  sheet.sort(2);
  expect(found()).toEqual([["Log/Plant", 4]]);
  tab.moveColumn(4, 1);
  expect(found()).toEqual([["Log/Plant", 1]]);
  expect(sheet.getRange("A1").getValue()).toBe("My plants");
  sheet.deleteColumn(1);
  expect(found()).toEqual([]);
});

test("metadata goes on whole columns only", () => {
  const { sheet } = sheetWith([["Id"]]);
  expect(() => sheet.getRange("A1").addDeveloperMetadata("column", "x")).toThrow("arbitrary ranges");
});

test("what is written to the hidden cells of a merged block is lost without a word", () => {
  const { sheet } = sheetWith([["a", "b"]], { tab: { merges: [{ row: 2, column: 1, rows: 1, columns: 2 }] } });
  sheet.getRange("A2:B2").setValues([["x", "y"]]);
  expect(sheet.getRange("A2:B2").getValues()).toEqual([["x", ""]]);
  expect(sheet.getRange("B2").isPartOfMerge()).toBe(true);
  expect(() => sheet.getRange("A1:B3").sort(1)).toThrow("merged cells");
});

test("a rule that rejects makes a write throw; one that only marks lets it pass", () => {
  const { host, sheet } = sheetWith([]);
  const rule = (allow: boolean) =>
    host.SpreadsheetApp.newDataValidation().requireValueInList(["Repot", "Top up"]).setAllowInvalid(allow).build();
  sheet.getRange("A1").setDataValidation(rule(false));
  sheet.getRange("A2").setDataValidation(rule(true));
  expect(() => sheet.getRange("A1").setValue("Party")).toThrow("violates the data validation rules");
  sheet.getRange("A2").setValue("Party");
  expect(sheet.getRange("A2").getValue()).toBe("Party");
});

test("checkboxes fill the cells with false", () => {
  const { host, sheet } = sheetWith([]);
  sheet.getRange("A1:A3").setDataValidation(host.SpreadsheetApp.newDataValidation().requireCheckbox().build());
  expect(sheet.getLastRow()).toBe(3);
});

test("conditional rules are replaced as a whole", () => {
  const { host, sheet } = sheetWith([]);
  const rule = (formula: string) =>
    host.SpreadsheetApp.newConditionalFormatRule()
      .whenFormulaSatisfied(formula)
      .setRanges([sheet.getRange("A2:A")])
      .build();
  sheet.setConditionalFormatRules([rule("=A2=1"), rule("=A2=2")]);
  sheet.setConditionalFormatRules([rule("=A2=3")]);
  expect(sheet.getConditionalFormatRules().map((each) => each.getBooleanCondition()?.getCriteriaValues())).toEqual([
    ["=A2=3"],
  ]);
});

test("a protection is hard until it is told to warn only", () => {
  const { sheet } = sheetWith([["a"]]);
  const protection = sheet.getRange("A1:B1").protect();
  expect(protection.isWarningOnly()).toBe(false);
  protection.setDescription("Headings").setWarningOnly(true);
  const kept = sheet.getProtections("RANGE" as unknown as GoogleAppsScript.Spreadsheet.ProtectionType);
  expect(kept.map((each) => [each.getDescription(), each.isWarningOnly(), each.getRange().getA1Notation()])).toEqual([
    ["Headings", true, "A1:B1"],
  ]);
});

test("someone else's lock: tryLock says no, waitLock throws", () => {
  const { host } = sheetWith([]);
  host.locks.elsewhere = true;
  const lock = host.LockService.getDocumentLock();
  expect(lock.tryLock(10)).toBe(false);
  expect(() => lock.waitLock(10)).toThrow("Lock timeout");
});

test("a lock released before a flush is noticed", () => {
  const { host, sheet } = sheetWith([]);
  const lock = host.LockService.getDocumentLock();
  lock.waitLock(10);
  sheet.getRange("A1").setValue("x");
  host.SpreadsheetApp.flush();
  lock.releaseLock();
  expect(host.warnings).toEqual([]);
  lock.waitLock(10);
  sheet.getRange("A1").setValue("y");
  lock.releaseLock();
  expect(host.warnings).toHaveLength(1);
});

test("properties: 9 kB a value, 500 kB a store", () => {
  const { host } = sheetWith([]);
  const properties = host.PropertiesService.getUserProperties();
  expect(properties.getProperty("who")).toBe(null);
  expect(() => properties.setProperty("big", "x".repeat(9300))).toThrow("Argument too large");
  expect(() => {
    for (let n = 0; n < 60; n++) properties.setProperty(`p${n}`, "x".repeat(9000));
  }).toThrow("storage quota");
});

test("onOpen without authorisation may build a menu and nothing else; a loading script may do nothing", () => {
  const { host, spreadsheet } = sheetWith([["a"]]);
  host.as("none", () => {
    host.SpreadsheetApp.getUi().createAddonMenu().addItem("Open", "openPanel").addToUi();
    expect(() => spreadsheet.getSheets()).toThrow("Authorization is required");
    expect(() => host.PropertiesService.getUserProperties()).toThrow("Authorization is required");
  });
  expect(() => host.as("loading", () => host.SpreadsheetApp.getUi())).toThrow("do not have permission to call getUi");
});

test("a custom function may read, and may not write", () => {
  const { host, sheet } = sheetWith([["a"]]);
  host.as("formula", () => {
    expect(sheet.getRange("A1").getValue()).toBe("a");
    expect(() => sheet.getRange("A1").setValue("b")).toThrow("You do not have permission to call setValue");
  });
});

test("what is not imitated says so", () => {
  const { host, sheet } = sheetWith([]);
  expect(() => sheet.getImages()).toThrow("not imitated: Sheet.getImages");
  expect(() => sheet.getRange("A1").breakApart()).toThrow("not imitated: Range.breakApart");
  expect(() => host.Utilities.sleep(1)).toThrow("not imitated: Utilities.sleep");
});

test("an imitation must have the host's own types", () => {
  // @ts-expect-error a name is a text
  const wrong = imitate<GoogleAppsScript.Spreadsheet.Sheet>()("Sheet", { getName: () => 3 });
  // @ts-expect-error there is no such method
  const made = imitate<GoogleAppsScript.Spreadsheet.Sheet>()("Sheet", { getNom: () => "Plants" });
  expect([wrong, made]).toHaveLength(2);
});

test("every call that reaches the spreadsheet is counted in one place, and can fail there before or after it is done", () => {
  const names: string[] = [];
  let fail = "";
  const { sheet } = sheetWith([["a"]], {
    onCall: (name) => {
      if (fail === `before ${name}`) throw new Error("Service Spreadsheets timed out.");
      names.push(name);
    },
    afterCall: (name) => {
      if (fail === `after ${name}`) throw new Error("Service Spreadsheets timed out.");
    },
  });
  names.length = 0;
  sheet.getRange(1, 1, 1, 1).getValues();
  sheet.getLastRow();
  expect(names).toEqual(["Range.getValues", "Sheet.getLastRow"]);
  fail = "before Range.setValues";
  expect(() => sheet.getRange("A1").setValues([["b"]])).toThrow("timed out");
  expect(sheet.getRange("A1").getValue()).toBe("a");
  fail = "after Range.setValues";
  expect(() => sheet.getRange("A1").setValues([["b"]])).toThrow("timed out");
  expect(sheet.getRange("A1").getValue()).toBe("b");
});

test("setFormula spills an answer of more than one cell, gives way to blanks and to nothing else", () => {
  const answer = [
    ["Plant", "Days"],
    ["Fern", 2],
  ];
  const grid = new MemoryGrid({ calculate: () => answer, tabs: { Log: { rows: 5, columns: 4 } } });
  const host = createHost({ grid, spreadsheetTimeZone: "Europe/Zurich" });
  const sheet = host.SpreadsheetApp.getActive().getSheets()[0];
  if (!sheet) throw new Error("no tab");
  sheet.getRange("A1").setFormula("=BOARD()");
  expect(sheet.getRange("A1:B2").getValues()).toEqual(answer);
  expect(sheet.getRange("A1:B2").getFormulas()).toEqual([
    ["=BOARD()", ""],
    ["", ""],
  ]);
  sheet.getRange("A2:B2").setValues([["", ""]]);
  expect(sheet.getRange("A1:B2").getValues()).toEqual(answer);
  sheet.getRange("B2").setValue("typed over");
  expect(sheet.getRange("A1:B2").getValues()).toEqual([
    ["#REF!", ""],
    ["", "typed over"],
  ]);
  sheet.getRange("C1").setFormula("=BOARD()");
  sheet.getRange("B1").setFormula("=BOARD()");
  expect(sheet.getRange("B1:C1").getValues()).toEqual([["#REF!", "Plant"]]);
  sheet.getRange("C1").setValue("x");
  expect(sheet.getRange("C1:D2").getValues()).toEqual([
    ["x", ""],
    ["", ""],
  ]);
});

test.each([
  ["en_GB", '=F(A1; "a;b"; 2)', '=F(A1, "a;b", 2)', null],
  ["en_GB", "=F(A1, 2)", "=F(A1, 2)", null],
  ["de_DE", "=F('my; tab'!A1; 2)", "=F('my; tab'!A1; 2)", null],
  ["de_DE", "=F(A1, 2)", "=F(A1, 2)", "#ERROR!"],
])("setFormula in %s takes %s as %s", (locale, formula, kept, error) => {
  const { sheet } = sheetWith([], { locale });
  sheet.getRange("A1").setFormula(formula);
  expect(sheet.getRange("A1").getFormula()).toBe(kept);
  // The grid of the tests knows no functions: a formula that can be read at all is a name it does not know.
  expect(sheet.getRange("A1").getValue()).toBe(error ?? "#NAME?");
});
