/** The meter as a check in a real browser: a doubled feed is named and kept, a calibration logged, readings drawn. */

import { describe, expect, it } from "vitest";
import { objections } from "./axe.ts";
import { standingSheet } from "./standing-sheet.ts";
import { bench } from "./workbench.ts";

const sheet = standingSheet();
const { records: logRows } = sheet;

const open = (section: string) => sheet.panel.getByRole("button", { name: section, exact: true }).first().click();

/** What axe-core objects to in the panel. */
async function inPanel(): Promise<string[]> {
  const frame = await (await sheet.panel.locator("body").elementHandle())?.ownerFrame();
  if (!frame) throw new Error("The panel has no frame.");
  return objections(frame);
}

describe("a feed that went in twice", () => {
  it("is named while the reading is typed, and kept in the column Verdict as literal text", async () => {
    const { panel } = sheet;
    await open("Mix a batch");
    await panel.getByLabel("Water", { exact: true }).selectOption({ label: "Low-mineral water" });
    await panel.getByLabel("Target", { exact: true }).selectOption({ label: "Steiner, half" });
    for (const feed of ["Calcium nitrate", "Potassium nitrate", "Magnesium sulfate"]) {
      await panel.getByRole("checkbox", { name: new RegExp(`^${feed}`) }).check();
    }
    await panel.getByLabel("Litres to mix").fill("20");
    await panel.getByLabel("Your name").fill("Wren");
    await panel.getByRole("button", { name: "Log this batch" }).click();
    await panel.getByText(/^Logged 20 L of/).waitFor();
    await panel.getByText("Test the pH of this batch, because there is no reading yet with this water").waitFor();

    const added = (await logRows("Batch log")).at(-1);
    expect(added?.Who).toBe("Wren");
    const calcium = /Calcium nitrate tetrahydrate ([\d.]+) g\/L/.exec(String(added?.Doses))?.[1];
    // By hand: 236.146 g/mol, 2 meq a mmol, 59.47 + 71.42 S cm²/eq (CRC Handbook), less about a tenth for strength.
    const more = ((Number(calcium) / 236.146) * 2000 * 0.9 * 130.89) / 1000;
    const reads = Number(added?.["Predicted EC"]) + more;
    await panel.getByLabel("Measured EC").first().fill(reads.toFixed(2));
    const verdict = panel.getByText(/^Look again: the meter reads/);
    await verdict.waitFor();
    expect(await verdict.textContent()).toContain("Calcium nitrate tetrahydrate went in twice");
    expect(await inPanel()).toEqual([]);
    await panel.getByRole("button", { name: "Log readings" }).click();
    await panel.getByText(/^Logged EC/).waitFor();
    const kept = (await logRows("Batch log")).find(({ Id }) => Id === added?.Id);
    expect(kept?.["Measured EC"]).toBe(Number(reads.toFixed(2)));
    expect(String(kept?.Verdict)).toMatch(/^Look again: .*Calcium nitrate tetrahydrate went in twice/);
  });
});

describe("a reading in a standard", () => {
  it("is a row of the Meter log, and the drift is said anew", async () => {
    const { panel } = sheet;
    const before = await logRows("Meter log");
    await open("Meters");
    await panel.getByLabel("Meter reads").fill("1,31");
    await panel.getByLabel("Standard, °C").fill("25");
    await panel.getByLabel("Then set to the standard").check();
    await panel.getByRole("button", { name: "Log this reading" }).dblclick();
    await panel.getByText("Logged the EC meter in 1.413 mS/cm.").waitFor();
    const after = await logRows("Meter log");
    expect(after.length).toBe(before.length + 1);
    expect(after.at(-1)).toMatchObject({
      Meter: "EC",
      Standard: 1.413,
      Reading: 1.31,
      "Temp C": 25,
      Calibrated: "yes",
      Who: "Wren",
    });
    // (1.31 − 1.413) / 1.413 is 7.3 % low.
    await panel.getByText("1.31 in 1.413 mS/cm, 7.3 % low, then set to it").first().waitFor();
    await panel
      .getByText(/At its last check the meter was adjusted to the standard\. It drifts [\d.]+ % in 30 days\./)
      .first()
      .waitFor();
  });

  it("is taken back by who logged it: the row stays and no longer counts", async () => {
    const { panel } = sheet;
    const before = await logRows("Meter log");
    await panel.getByRole("button", { name: /^Take back: EC 1\.31/ }).click();
    await panel.getByText("Taken back. The row stays in the Meter log and no longer counts.").waitFor();
    expect(await panel.getByText("1.31 in 1.413 mS/cm").count()).toBe(0);
    const after = await logRows("Meter log");
    expect(after.length).toBe(before.length + 1);
    expect(after.at(-1)).toMatchObject({ Corrects: before.at(-1)?.Id });
  });
});

describe("readings over time", () => {
  it("are drawn, said in a sentence and listed as numbers, for each water and its feeds", async () => {
    const { panel } = sheet;
    await panel.getByLabel("Water and feeds").selectOption("all");
    const drawings = panel.getByRole("img");
    await expect.poll(() => drawings.count()).toBe(2);
    const rows = await logRows("Batch log");
    const read = rows.filter((row) => typeof row["Measured EC"] === "number");
    const values = read.map((row) => Number(row["Measured EC"]));
    const label = await drawings.first().getAttribute("aria-label");
    expect(label).toContain(`EC of ${read.length} batches from `);
    expect(label).toContain(`: ${Math.min(...values).toFixed(2)} to ${Math.max(...values).toFixed(2)} mS/cm`);
    // Something is on the canvas, and it is as wide as the panel allows.
    const drawn = await panel
      .locator(".plot canvas")
      .first()
      .evaluate((canvas: HTMLCanvasElement) => {
        const { data } = canvas.getContext("2d")?.getImageData(0, 0, canvas.width, canvas.height) ?? { data: [] };
        return { inked: data.some((value) => value > 0), width: canvas.getBoundingClientRect().width };
      });
    expect(drawn.inked).toBe(true);
    expect(drawn.width).toBeGreaterThan(200);
    expect(drawn.width).toBeLessThanOrEqual(300);
    await panel.getByText("The numbers, newest first").click();
    const table = panel.getByRole("table", { name: "EC and pH of these batches" });
    expect(await table.locator("tbody tr").count()).toBe(rows.length);
    expect(await inPanel()).toEqual([]);
  });

  it("are laid out and drawn once on a tab of their own, however often it is asked for", async () => {
    const { panel, page } = sheet;
    const charts = () =>
      bench(
        page,
        (hooks) =>
          hooks.services.SpreadsheetApp.getActiveSpreadsheet().getSheetByName("Readings over time")?.getCharts().length,
      );
    const draw = panel.getByRole("button", { name: "Draw this on a tab of its own" });
    await draw.click();
    await panel.getByText(/^Drawn on a tab of its own, “Readings over time”/).waitFor();
    await draw.click();
    await panel.getByText("The chart on “Readings over time” is up to date.").waitFor();
    expect(await charts()).toBe(1);
    const laidOut = () => bench(page, (hooks) => hooks.getValues("Readings over time", "A1:J200"));
    await expect.poll(async () => (await laidOut())[0]?.[1], { timeout: 10_000 }).toBe("EC");
    const [headings = [], ...rows] = (await laidOut()).filter(([day]) => day !== null && day !== "");
    const read = (heading: string) =>
      rows.map((row) => row[headings.indexOf(heading)]).filter((value) => typeof value === "number");
    const log = await logRows("Batch log");
    expect(read("pH").length).toBe(log.filter((row) => typeof row["Measured pH"] === "number").length);
    expect(read("Calibrated").length).toBeGreaterThan(5);
    expect(read("New lot").length).toBeGreaterThan(0);
  });

  it("nothing came from outside, and nothing was thrown", () => {
    expect(sheet.outside).toEqual([]);
    expect(sheet.errors).toEqual([]);
  });
});
