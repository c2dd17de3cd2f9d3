/** A feed from its printed label to the shelf in a real browser: read, asked, corrected, saved, mixed, counted. */

import type { Frame } from "playwright-core";
import { describe, expect, it } from "vitest";
import { objections } from "./axe.ts";
import { standingSheet } from "./standing-sheet.ts";
import { bench } from "./workbench.ts";

/** Invented: dot leaders, forms of nitrogen, a bare "Magnesium", a number that can be read in two ways, directions. */
const LABEL = `Quillwater Green 9-3-6
GUARANTEED ANALYSIS
Total Nitrogen (N) ............ 9.0%
   1.9% Ammoniacal Nitrogen
   7.1% Nitrate Nitrogen
Available Phosphate (P2O5) .... 3.0%
Soluble Potash (K2O) .......... 6.0%
Iron (Fe) 1.200 mg/kg
Magnesum (Mg) 2%
=HYPERLINK("http://example.org","Shake well")
Derived from: calcium nitrate, magnesium sulfate,
iron EDTA`;

const sheet = standingSheet();
const { records: rowsOf } = sheet;

const feedRow = async (name: string) => (await rowsOf("Feeds")).find(({ Feed }) => Feed === name);
const button = (name: string | RegExp) => sheet.panel.getByRole("button", { name, exact: typeof name === "string" });

async function passesAxe(): Promise<void> {
  const frame = (await (await sheet.page.locator("#side iframe").elementHandle())?.contentFrame()) as Frame;
  expect(await objections(frame)).toEqual([]);
}

describe("what is on hand", () => {
  it("stands in the Feeds tab as a formula in its heading: bought less used", async () => {
    const nitrate = await feedRow("Calcium nitrate tetrahydrate");
    const bought = (await rowsOf("Purchases")).filter(({ Feed }) => Feed === "Calcium nitrate tetrahydrate");
    const used = (await rowsOf("Batch log")).map(({ Doses }) =>
      Number(/Calcium nitrate tetrahydrate [\d.]+ g\/L \(([\d.]+) g\)/.exec(String(Doses))?.[1] ?? 0),
    );
    const sum = (list: number[]) => list.reduce((total, one) => total + one, 0);
    expect(nitrate?.["On hand"]).toBeCloseTo(sum(bought.map(({ Amount }) => Number(Amount))) - sum(used), 6);
  });
});

describe("a pasted label", () => {
  it("is read line by line, asks what can be read in two ways, and leaves visible what it does not understand", async () => {
    const { panel } = sheet;
    await button("Know a feed").click();
    await panel.getByLabel("Printed analysis").fill(LABEL);
    await panel.getByText("nitrate nitrogen NO3-N 7.1 %").waitFor();
    await panel.getByText("potash K2O 6 %").waitFor();
    await panel.getByText('"1.200" can be read in two ways. Which is it?').waitFor();
    expect(await panel.getByLabel("Line 9").inputValue()).toBe("Magnesum (Mg) 2%");
    expect(await panel.getByLabel("Line 10").inputValue()).toContain("Shake well");
    await passesAxe();
  });

  it("writes nothing until every question is settled", async () => {
    const { panel } = sheet;
    const before = await rowsOf("Feeds");
    await panel.getByLabel("Name of this feed").fill("Potassium nitrate");
    await panel.getByText("A feed of this name stands in row 3 of Feeds.").waitFor();
    await panel.getByLabel("Name of this feed").fill("Quillwater Green");
    const save = button("Save this feed");
    await save.click();
    await panel.getByText("Choose what “Iron (Fe) 1.200 mg/kg” means first.").waitFor();
    await panel.getByRole("radio", { name: "1200, so Fe 0.12 %" }).check();
    await save.click();
    await panel.getByText(/^“Magnesum \(Mg\) 2%” is not understood/).waitFor();
    await panel.getByLabel("Line 9").fill("Magnesium (Mg) 2%");
    await panel.getByText("magnesium Mg 2 %").waitFor();
    await button("Leave out line 10").click();
    await save.click();
    await panel.getByText("Choose whether it is a solid or a liquid.").waitFor();
    await panel.getByLabel("It is").selectOption("liquid");
    await panel.getByLabel("Its percents count by").selectOption("w/w");
    await panel.getByLabel("Density in g/mL").fill("1,2");
    await save.click();
    await panel.getByText("Choose what it is made of.").waitFor();
    await panel.getByLabel("Made of").selectOption("mineral");
    expect(await rowsOf("Feeds")).toEqual(before);
    await passesAxe();
  });

  it("is one row after a lost answer and a second try, with its text word for word and as text", async () => {
    const { panel } = sheet;
    const before = (await rowsOf("Feeds")).length;
    await bench(sheet.page, (hooks) => hooks.failNext("Range.setValues", "after"));
    await button("Save this feed").click();
    await button("Try again").click();
    await panel.getByText(/“Quillwater Green” (on the Feeds tab|was there already)/).waitFor();
    expect((await rowsOf("Feeds")).length).toBe(before + 1);
    expect(await feedRow("Quillwater Green")).toMatchObject({
      ...{ Basis: "w/w", N: 9, "NH4-N": 1.9, "NO3-N": 7.1, P2O5: 3, K2O: 6, Fe: 0.12, Mg: 2, Density: 1.2 },
      ...{ Origin: "mineral", "Label text": LABEL },
    });
  });

  it("shows what it leaves short, and what fills it", async () => {
    const { panel } = sheet;
    await panel.getByLabel("Feed", { exact: true }).selectOption("Quillwater Green");
    await panel.getByLabel("Target", { exact: true }).selectOption({ index: 1 });
    await panel.getByText(/^Alone it comes closest at [\d.]+ mL in a litre\./).waitFor();
    await panel.getByRole("heading", { name: /^Calcium: 0 of [\d.]+ mg\/L$/ }).waitFor();
    await panel
      .getByText(/^Calcium nitrate tetrahydrate, [\d.]+ g in a litre, makes it \d+/)
      .first()
      .waitFor();
    await passesAxe();
  });
});

describe("stock", () => {
  it("follows a purchase and a batch, in the panel and in the sheet alike", async () => {
    const { panel } = sheet;
    await button("Keep stock").click();
    await panel.getByLabel("Feed", { exact: true }).selectOption("Quillwater Green");
    await panel.getByLabel("Amount").fill("1");
    await panel.getByLabel("Unit").selectOption("L");
    await panel.getByLabel("Lot").fill("=7");
    const name = panel.getByLabel("Your name");
    if ((await name.count()) > 0) {
      await name.fill("Wren");
      await button("Save name").click();
      await name.waitFor({ state: "detached" });
    }
    await button("Log this purchase").dblclick();
    await panel.getByText("Logged: 1 L of Quillwater Green bought.").waitFor();
    const logged = (await rowsOf("Purchases")).filter(({ Feed }) => Feed === "Quillwater Green");
    expect(logged).toMatchObject([{ Amount: 1, Unit: "L", Lot: "=7", Who: "Wren" }]);
    await bench(sheet.page, (hooks) => hooks.settled());
    expect((await feedRow("Quillwater Green"))?.["On hand"]).toBe(1000);
    await passesAxe();

    await button("Mix a batch").click();
    await panel.getByRole("radio", { name: /Give doses/ }).check();
    await panel.getByLabel("Water", { exact: true }).selectOption({ label: "Pure water" });
    await panel.getByRole("checkbox", { name: "Quillwater Green" }).check();
    await panel.getByLabel("Dose of Quillwater Green", { exact: true }).fill("2");
    await panel.getByLabel("Litres to mix").fill("600");
    await panel.getByText("This batch takes 1200 mL of Quillwater Green, but only 1000 mL are on hand").waitFor();
    await panel.getByLabel("Litres to mix").fill("10");
    await button("Log this batch").click();
    await panel.getByText(/^Logged 10 L/).waitFor();

    await button("Keep stock").click();
    const line = panel.getByRole("listitem").filter({ hasText: "Quillwater Green" });
    await line.getByText("980 mL").waitFor();
    await line.getByText(/^Enough for 49 batches/).waitFor();
    await bench(sheet.page, (hooks) => hooks.settled());
    expect((await feedRow("Quillwater Green"))?.["On hand"]).toBeCloseTo(980, 6);
  });

  it("a purchase is taken back by who logged it, and no longer counts", async () => {
    const { panel } = sheet;
    await panel.getByText("On record: 15 purchases").click();
    await passesAxe();
    await button(/^Take back 1 L of Quillwater Green/).click();
    await panel.getByText("Taken back. The row stays in Purchases and no longer counts.").waitFor();
    await bench(sheet.page, (hooks) => hooks.settled());
    expect((await feedRow("Quillwater Green"))?.["On hand"] ?? "").toBe("");
    expect((await rowsOf("Purchases")).filter(({ Feed }) => Feed === "Quillwater Green")).toHaveLength(1);
  });

  it("is counted in the sheet by one formula, which is there in the sample and left alone", async () => {
    await button("Count it there too").click();
    await sheet.panel.getByText(/^Column [A-Z]+ \(“On hand”\) of “Feeds” counts what is on hand already\.$/).waitFor();
    await passesAxe();
  });

  it("asked for nothing from outside and threw nothing", () => {
    expect(sheet.outside).toEqual([]);
    expect(sheet.errors).toEqual([]);
  });
});
