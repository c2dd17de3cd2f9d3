/** All records out of the sample sheet and into an empty one, in a real browser, and a second time without a row too many. */

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { objections } from "./axe.ts";
import { standingSheet } from "./standing-sheet.ts";
import { bench } from "./workbench.ts";

const RECORDS = ["Plants", "Events", "Feeds", "Waters", "Targets", "Batch log", "Care log", "Trials", "Claims"];

const sheet = standingSheet(async (opened) => {
  opened.page.setDefaultTimeout(30_000);
  await opened.panel.getByRole("button", { name: "Sheet", exact: true }).click();
});
const zipFile = join(sheet.folder, "out.zip");
let before: Record<string, unknown[][]> = {};

/** Our columns of a tab, without blank rows; the columns that the sample adds with formulas are left aside. */
async function rowsOf(tab: string): Promise<unknown[][]> {
  const all = await bench(
    sheet.page,
    (hooks, name) => {
      const found = hooks.services.SpreadsheetApp.getActiveSpreadsheet().getSheetByName(name);
      const [rows, columns] = [found?.getLastRow() ?? 1, name === "Plants" ? 7 : (found?.getLastColumn() ?? 1)];
      const letters = (at: number): string =>
        (at > 26 ? letters(Math.floor((at - 1) / 26)) : "") + String.fromCharCode(65 + ((at - 1) % 26));
      return hooks.getValues(name, `A1:${letters(columns)}${rows}`);
    },
    tab,
  );
  return all.filter((row) => row.some((value) => value !== null && value !== ""));
}

describe("taking a copy", () => {
  it("saves one zip with a CSV for each tab, as many rows as the sheet has", async () => {
    before = Object.fromEntries(await Promise.all(RECORDS.map(async (tab) => [tab, await rowsOf(tab)] as const)));
    await sheet.panel.getByRole("button", { name: "Export all records" }).click();
    const link = sheet.panel.getByRole("link", { name: /^Save stillroot-\d{4}-\d{2}-\d{2}\.zip$/ });
    await link.waitFor({ timeout: 30_000 });
    const [download] = await Promise.all([sheet.page.waitForEvent("download"), link.click()]);
    expect(download.suggestedFilename()).toMatch(/^stillroot-.*\.zip$/);
    await download.saveAs(zipFile);
    const files = unzipSync(new Uint8Array(readFileSync(zipFile)));
    for (const tab of RECORDS) {
      const csv = strFromU8(files[`${tab}.csv`] ?? new Uint8Array());
      const lines = Papa.parse(csv.trim(), { delimiter: "," }).data;
      expect(lines.length, tab).toBe(before[tab]?.length);
    }
    expect(strFromU8(files["About this export.txt"] ?? new Uint8Array())).toContain("apostrophe");
  }, 60_000);
});

describe("bringing it back", () => {
  /** As a person does it: a click on the field, then a file. */
  const choose = async (): Promise<void> => {
    const asked = sheet.page.waitForEvent("filechooser");
    await sheet.panel.getByLabel("Zip with the records").click();
    await (await asked).setFiles(zipFile);
  };
  const looked = sheetSays;

  it("into the sheet it came from writes nothing", async () => {
    await choose();
    await looked(/^Every row of this file is in the sheet already\./);
    expect(await sheet.panel.getByRole("button", { name: "Write these rows" }).count()).toBe(0);
  }, 60_000);

  it("into an emptied one lists first, writes then, and the tabs are the same", async () => {
    await bench(sheet.page, (hooks) => {
      const book = hooks.services.SpreadsheetApp.getActiveSpreadsheet();
      for (const name of ["Plants", "Feeds", "Waters", "Targets", "Batch log", "Care log", "Trials", "Claims"]) {
        const tab = book.getSheetByName(name);
        if (tab) book.deleteSheet(tab);
      }
    });
    sheet.page.once("dialog", (dialog) => void dialog.accept());
    await sheet.page.getByRole("button", { name: "Set up tabs" }).click();
    await sheet.panel.getByRole("button", { name: "Read the sheet again" }).click();
    await sheet.panel.locator("footer", { hasText: "Reading" }).waitFor({ state: "detached" });
    await choose();
    await looked(/rows of this file are not in the sheet yet\. Nothing has been written\.$/);
    expect((await rowsOf("Care log")).length).toBe(1);
    const list = sheet.panel.locator("main .sentences li");
    const logged = (before["Care log"]?.length ?? 0) - 1;
    expect(await list.filter({ hasText: "Care log" }).textContent()).toBe(`Care log: ${logged} rows to write. `);
    await sheet.panel.getByRole("button", { name: "Write these rows" }).click();
    await looked(/^Wrote \d+ rows\./);
    await bench(sheet.page, (hooks) => hooks.settled());
    for (const tab of RECORDS) expect(await rowsOf(tab), tab).toEqual(before[tab]);
  }, 120_000);

  it("a second time writes nothing", async () => {
    await choose();
    await looked(/^Every row of this file is in the sheet already\./);
    for (const tab of RECORDS) expect((await rowsOf(tab)).length, tab).toBe(before[tab]?.length);
  }, 60_000);

  it("says in a sentence when the file is another one", async () => {
    await sheet.panel
      .getByLabel("Zip with the records")
      .setInputFiles({ name: "x.zip", mimeType: "application/zip", buffer: Buffer.from("no zip at all") });
    await sheet.panel.getByText(/^This file is no zip, or it is damaged\./).waitFor();
  });
});

function sheetSays(words: RegExp): Promise<void> {
  return sheet.panel.locator("main .outcome", { hasText: words }).waitFor({ timeout: 60_000 });
}

it("the section passes axe, and nothing was asked for from outside", async () => {
  const frame = await (await sheet.page.locator("#side iframe").elementHandle())?.contentFrame();
  expect(frame && (await objections(frame))).toEqual([]);
  expect([sheet.outside, sheet.errors]).toEqual([[], []]);
});
