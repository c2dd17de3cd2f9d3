/** The page by itself: no request leaves the machine, changes survive a restart, marks and sorts go as on the host. */

import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import type {} from "../../sample-sheet/workbench/page/hooks.ts";
import { launch } from "../browser/chromium.ts";
import { type Bench, startBench, temporaryFolder } from "../browser/workbench.ts";

const folder = temporaryFolder();
const kept = join(folder.path, "kept.json");
const requests: string[] = [];
let browser: Browser;
let server: Bench;
let page: Page;

async function open(): Promise<void> {
  page = await (await browser.newContext()).newPage();
  page.on("request", (request) => requests.push(request.url()));
  await page.goto(`${server.address}?delay=0`);
  await page.evaluate(() => window.workbench.ready);
}

beforeAll(async () => {
  browser = await launch();
  server = await startBench(kept);
  await open();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await server?.stop();
  folder.remove();
});

test("typed by hand: dates in the sheet's locale, an apostrophe for texts, open ranges shown open", async () => {
  const seen = await page.evaluate(async () => {
    const { workbench } = window;
    for (const [cell, text] of [
      ["AA1", "3/4"],
      ["AA2", "'012"],
      ["AA3", "012"],
      ["AA4", "=ROWS(Plants!A2:A)"],
      ["AA5", "+leaf"],
      ["AA6", '=FEED_PPM("10-5-5", 0-1)'],
    ] as const) {
      await workbench.setCell("Targets", cell, text);
    }
    return {
      values: workbench.getValues("Targets", "AA1:AA6").map((row) => row[0]),
      formulas: workbench.getFormulas("Targets", "AA4:AA5").map((row) => row[0]),
      message: workbench.message("Targets", "AA6"),
    };
  });
  const day = Number(seen.values[0]) - 25_569;
  expect(new Date(day * 86_400_000).toISOString()).toMatch(/-04-03T/);
  expect(seen.values.slice(1)).toEqual(["012", 12, 999, "#NAME?", "#ERROR!"]);
  expect(seen.formulas).toEqual(["=ROWS(Plants!A2:A)", "=+leaf"]);
  expect(seen.message).toContain("-1 g/L");
}, 60_000);

test("a range sorts by a spilled column, and dates that spill arrive as dates", async () => {
  const columns = await page.evaluate(async () => {
    const { workbench } = window;
    await workbench.setCell("Events", "F1", "Day");
    for (const [row, day] of ["2026-03-01", "2026-01-05", "2026-02-10"].entries()) {
      await workbench.setCell("Events", `F${row + 2}`, day);
    }
    await workbench.setCell("Events", "G2", "=F2:F4");
    await workbench.sortRange("Events", "F2:F4", 7, true);
    return workbench.getValues("Events", "F2:G4");
  });
  expect(columns.map((row) => row[1])).toEqual([46027, 46063, 46082]);
}, 60_000);

test("marks stay with their columns through an insert, a rename and a restart of the server", async () => {
  // The sample was never set up, so the set-up asks before it notes on each tab which columns it has.
  const asked: string[] = [];
  page.on("dialog", (dialog) => {
    asked.push(dialog.message());
    void dialog.accept();
  });
  await page.getByRole("button", { name: "Set up tabs" }).click();
  expect(asked.length).toBeGreaterThan(0);
  await page.evaluate(async () => {
    await window.workbench.insertColumn("Plants", 1);
    window.workbench.renameTab("Plants", "Green things");
    await window.workbench.kept();
  });
  await page.context().close();
  await server.stop();
  server = await startBench(kept);
  await open();
  const after = await page.evaluate(() => ({
    marks: window.workbench.marks("Green things"),
    headings: window.workbench.getValues("Green things", "A1:C1")[0],
    typed: window.workbench.getFormulas("Targets", "AA4")[0]?.[0],
  }));
  expect(after.marks).toContainEqual({ column: null, value: "tab:Plants" });
  expect(after.marks).toContainEqual({ column: 2, value: "column:Plants/Plant" });
  expect(after.headings).toEqual([null, "Plant", "Kind"]);
  expect(after.typed).toBe("=ROWS('Green things'!B2:B)");
}, 90_000);

test("the stand-in works over the grid as over memory: rules, notes, warnings, literal texts", async () => {
  const seen = await page.evaluate(() => {
    const { SpreadsheetApp } = window.workbench.services;
    const sheet = SpreadsheetApp.getActive().insertSheet("Scratch");
    const range = sheet.getRange("A1:B2");
    range.setValues([
      ["'=1+1", "''tis"],
      ["'012", "3/4"],
    ]);
    range.setNote("Mind the cat");
    sheet.getRange("A1:B1").protect().setDescription("Headings").setWarningOnly(true);
    sheet.insertColumnBefore(1);
    const choices = SpreadsheetApp.newDataValidation()
      .requireValueInList(["Repot", "Top up"], true)
      .setAllowInvalid(false);
    sheet.getRange("D1:D5").setDataValidation(choices.build());
    const green = SpreadsheetApp.newConditionalFormatRule().whenFormulaSatisfied("=B2=3").setBackground("#c0ffc0");
    sheet.setConditionalFormatRules([green.setRanges([sheet.getRange("B2:B9")]).build()]);
    let refused = "";
    try {
      sheet.getRange("D2").setValue("Party");
    } catch (error) {
      refused = (error as Error).message;
    }
    const protections = sheet.getProtections("RANGE" as unknown as GoogleAppsScript.Spreadsheet.ProtectionType);
    return {
      texts: sheet.getRange("B1:C1").getValues(),
      second: [sheet.getRange("B2").getValue(), Object.prototype.toString.call(sheet.getRange("C2").getValue())],
      note: sheet.getRange("B1").getNote(),
      warned: protections.map((each) => each.getRange().getA1Notation()),
      rule: sheet.getRange("D3").getDataValidation()?.getCriteriaValues()[0] as unknown,
      rules: sheet
        .getConditionalFormatRules()
        .map((each) => each.getBooleanCondition()?.getCriteriaValues()[0] as unknown),
      last: [sheet.getLastRow(), sheet.getLastColumn()],
      refused,
    };
  });
  expect(seen).toEqual({
    texts: [["=1+1", "'tis"]],
    second: ["012", "[object Date]"],
    note: "Mind the cat",
    warned: ["B1:C1"],
    rule: ["Repot", "Top up"],
    rules: ["=B2=3"],
    last: [2, 3],
    refused: "The data you entered in cell D2 violates the data validation rules set on this cell.",
  });
}, 60_000);

test("rows appended below the grid make it longer, and open ranges reach them", async () => {
  const seen = await page.evaluate(async () => {
    const { workbench } = window;
    await workbench.setCell("Targets", "AC1", "=COUNTA(Events!A1:A)");
    const before = Number(workbench.getValues("Targets", "AC1")[0]?.[0]);
    const sheet = workbench.services.SpreadsheetApp.getActive().getSheetByName("Events");
    const rows = sheet?.getMaxRows() ?? 0;
    sheet?.insertRowsAfter(rows, 1);
    sheet?.getRange(rows + 1, 1).setValue("New leaf");
    sheet?.appendRow(["New root", "no"]);
    await workbench.settled();
    const after = Number(workbench.getValues("Targets", "AC1")[0]?.[0]);
    return { grown: (sheet?.getMaxRows() ?? 0) - rows, counted: after - before };
  });
  expect(seen).toEqual({ grown: 2, counted: 2 });
}, 60_000);

test("no request left the machine", async () => {
  await page.getByRole("button", { name: "Open the panel" }).click();
  await page.frameLocator("#side iframe").locator("body").waitFor();
  expect(requests.length).toBeGreaterThan(3);
  const elsewhere = requests.filter((url) => !/^(?:http:\/\/127\.0\.0\.1:\d+\/|data:|blob:)/.test(url));
  expect(elsewhere).toEqual([]);
}, 60_000);
