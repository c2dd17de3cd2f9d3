/** One batch from the printed label of a feed to its card in a real browser: read, saved, measured, mixed, checked, printed. */

import { describe, expect, it } from "vitest";
import { objections } from "./axe.ts";
import { standingSheet } from "./standing-sheet.ts";

/** Invented: a dry feed without calcium. */
const LABEL = `Millrace Leaf Feed 12-4-18
Guaranteed analysis
Total Nitrogen (N) 12 %
  Nitrate nitrogen 12 %
Available phosphate (P2O5) 4 %
Soluble potash (K2O) 18 %
Magnesium (Mg) 2 %
Sulfur (S) 2.6 %
Iron (Fe) 0.15 %`;

const FEED = "Millrace Leaf Feed 12-4-18";

const sheet = standingSheet();
const { panelFrame, records } = sheet;

const open = (section: string) => sheet.panel.getByRole("button", { name: section, exact: true }).first().click();

let batch: Record<string, unknown> | undefined;

describe("from a printed label", () => {
  it("a feed comes to the shelf as its label says", async () => {
    const { panel } = sheet;
    await open("Know a feed");
    await panel.getByLabel("Printed analysis").fill(LABEL);
    await panel.getByLabel("Name of this feed").fill(FEED);
    await panel.getByLabel("It is").selectOption("solid");
    await panel.getByLabel("Made of").selectOption("mineral");
    await panel.getByRole("button", { name: "Save this feed" }).click();
    await panel.getByText(`“${FEED}” on the Feeds tab`).waitFor();
    const row = (await records("Feeds")).find(({ Feed }) => Feed === FEED);
    expect(row).toMatchObject({ N: 12, "NO3-N": 12, P2O5: 4, K2O: 18, Mg: 2, S: 2.6, Fe: 0.15, "Label text": LABEL });
  });

  it("it is measured out with this household's scale, and the log has what the label makes of those grams", async () => {
    const { panel } = sheet;
    await open("Mix a batch");
    await panel.getByText(/^Measured with:/).click();
    await panel.getByLabel("Scale step, g").fill("0.1");
    await panel.getByRole("button", { name: "Keep these tools" }).click();
    await panel.getByText("Kept in Settings.").waitFor();
    await panel.getByLabel("Water", { exact: true }).selectOption({ label: "Pure water" });
    await panel.getByLabel("Target", { exact: true }).selectOption({ label: "Steiner, half" });
    await panel.getByRole("checkbox", { name: FEED }).check();
    await panel.getByRole("checkbox", { name: /^Calcium nitrate/ }).check();
    await panel.getByLabel("Litres to mix").fill("15");
    await panel.getByLabel("Your name").fill("Wren");
    await panel.getByRole("button", { name: "Log this batch" }).click();
    await panel.getByText(/^Logged 15 L of/).waitFor();
    batch = (await records("Batch log")).at(-1);
    const grams = Number(/Millrace Leaf Feed 12-4-18 [\d.]+ g\/L \(([\d.]+) g\)/.exec(String(batch?.Doses))?.[1]);
    expect(grams).toBeGreaterThan(1);
    expect(Math.abs(grams * 10 - Math.round(grams * 10))).toBeLessThan(1e-9);
    // The state fertilizer laws' factor (Ariz. Rev. Stat. § 3-275): P is 0.43643 of the P2O5 on the label, here 4 %.
    expect(Number(batch?.P)).toBeCloseTo((grams / 15) * 1000 * 0.04 * 0.43643, 2);
    expect(Number(batch?.Mg)).toBeCloseTo((grams / 15) * 1000 * 0.02, 3);
  });

  it("its reading is as expected, and the verdict stays beside it", async () => {
    const { panel } = sheet;
    const reading = Number(batch?.["Predicted EC"]).toFixed(2);
    await panel.getByLabel("Measured EC").first().fill(reading);
    await panel.getByLabel("Measured pH").first().fill("5.8");
    await panel
      .getByText(/^As expected/)
      .first()
      .waitFor();
    await panel.getByRole("button", { name: "Log readings" }).click();
    await panel.getByText(/^Logged EC/).waitFor();
    const kept = (await records("Batch log")).find(({ Id }) => Id === batch?.Id);
    expect(kept).toMatchObject({ "Measured EC": Number(reading), "Measured pH": 5.8 });
    expect(String(kept?.Verdict)).toMatch(/^As expected/);
  });

  it("its card is one page of A4 with the grams, the steps and the cautions", async () => {
    const { panel } = sheet;
    const item = panel
      .getByRole("region", { name: "Batches in the log" })
      .locator("details")
      .filter({ has: sheet.page.locator("summary", { hasText: /15 L, Steiner, half/ }) })
      .first();
    await item.waitFor();
    await item.evaluate((details) => details.setAttribute("open", ""));
    await item.getByRole("button", { name: "Card" }).click();
    await panel.getByRole("heading", { name: /^15 L of “Steiner, half”/ }).waitFor();
    const frame = await panelFrame();
    expect(await objections(frame)).toEqual([]);
    const text = (await frame.locator("body").textContent()) ?? "";
    expect(text).toContain(FEED);
    expect(text).toMatch(/children and pets/);
    const card = await sheet.browser.newPage();
    // As it stands: with its scripts it would begin anew.
    await card.setContent((await frame.content()).replace(/<script[\s\S]*?<\/script>/g, ""));
    await card.getByRole("heading", { name: /^15 L of “Steiner, half”/ }).waitFor();
    const pdf = (await card.pdf({ format: "A4" })).toString("latin1");
    expect(pdf.match(/\/Type \/Page\b/g)).toHaveLength(1);
    await card.close();
  });

  it("nothing was asked for from outside, and nothing was thrown", () => {
    expect(sheet.outside).toEqual([]);
    expect(sheet.errors).toEqual([]);
  });
});
