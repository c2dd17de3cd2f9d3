/** The batch card in the built panel: opened from the form and from the log, nothing sticks out, on paper one A4 page. */

import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { objections } from "../browser/axe.ts";
import { launch } from "../browser/chromium.ts";
import { openPanel, overflows } from "./page.ts";
import { sheet } from "./sheet.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
}, 120_000);
afterAll(() => browser?.close());

/** Pages of a PDF: its page objects, which Chromium writes in plain. */
const pagesOf = (pdf: Buffer): number => pdf.toString("latin1").match(/\/Type\s*\/Page[^s]/g)?.length ?? 0;

/** A long recipe with acid and a stock: as much as a household would put on one card. */
const FULL = sheet({
  waters: [{ row: 2, fields: { Water: "Tap", Ca: 40, Mg: 5, Na: 10, Cl: 15, Alkalinity: 130, pH: 7.6 } }],
  targets: [
    { row: 2, fields: { Target: "Full", N: 210, P: 31, K: 235, Ca: 200, Mg: 48.6, S: 64, Fe: 1, Mn: 0.5, B: 0.5 } },
  ],
  feeds: [
    ...sheet().feeds,
    { row: 10, fields: { Feed: "Potassium sulfate", K: 44.87, S: 18.4 } },
    { row: 11, fields: { Feed: "Iron chelate, sodium Fe-EDTA", Fe: 13.26, Na: 5.46 } },
    { row: 12, fields: { Feed: "Micronutrient stock", Basis: "w/v", Mn: 0.05, B: 0.05, Zn: 0.005 } },
  ],
  settings: { "Scale step g": "0.1", "Syringe step mL": "0.1", "Syringe most mL": "20" },
});

test.each(["light", "dark"] as const)(
  "%s: the card of a full batch is one page, and its doses are those of the form",
  { timeout: 60_000 },
  async (scheme) => {
    const opened = await openPanel(browser, { scheme, behave: () => ({ answer: { ok: true, reply: FULL } }) });
    const { page } = opened;
    await page.getByLabel("Water", { exact: true }).selectOption("Tap");
    await page.getByLabel("Target", { exact: true }).selectOption("Full");
    for (const box of await page.getByRole("list", { name: "Feeds" }).getByRole("checkbox").all()) await box.check();
    await page.getByLabel("Litres to mix").fill("10");
    await page.getByLabel("Grams that dissolve in a litre, from the label").fill("90");
    await page.getByRole("button", { name: "Dose it from the stock solution" }).click();
    await page.getByLabel("Acid or base to add").selectOption("Phosphoric acid");
    await page.getByLabel("Strength, % w/w").fill("75");
    const doses = await page.locator(".doses tbody td strong").allInnerTexts();
    expect(doses.length).toBeGreaterThan(4);
    expect(await objections(page)).toEqual([]);
    await page.getByRole("button", { name: "Card of this batch, to print" }).click();
    await page.getByRole("heading", { name: "10 L of “Full”" }).waitFor();
    expect(await page.locator("h1").evaluate((title) => title === document.activeElement)).toBe(true);
    expect(await overflows(page)).toBe(false);
    expect(await objections(page)).toEqual([]);

    await page.evaluate(() => {
      const asked = { times: 0 };
      Object.assign(globalThis, { asked });
      window.print = () => {
        asked.times += 1;
      };
    });
    await page.getByRole("button", { name: "Print" }).click();
    expect(await page.evaluate(() => (globalThis as unknown as { asked: { times: number } }).asked.times)).toBe(1);

    await page.emulateMedia({ media: "print" });
    // biome-ignore lint/performance/useDomNodeTextContent: only what is laid out on paper counts.
    const printed = await page.locator("body").innerText();
    for (const dose of doses) expect(printed).toContain(dose);
    for (const words of [
      "Pour 8 L of the water",
      "Acid into water, never water into acid.",
      "14 Mar 2026",
      "Ama",
      "mS/cm at 25 °C",
    ]) {
      expect(printed).toContain(words);
    }
    for (const button of ["Print", "Back", "As text, to send"]) expect(printed).not.toContain(button);
    expect(pagesOf(await page.pdf({ preferCSSPageSize: true }))).toBe(1);
    await page.emulateMedia({ media: "screen" });

    await page.getByText("As text, to send").click();
    const text = await page.getByLabel("The card as text").inputValue();
    for (const dose of doses) expect(text).toContain(dose);
    expect(await objections(page)).toEqual([]);
    await page.getByRole("button", { name: "Back" }).click();
    await page.getByLabel("Litres to mix").waitFor();
    expect(await page.getByLabel("Litres to mix").inputValue()).toBe("10");
    await opened.close();
  },
);

test("a PDF of two pages counts as two, so that the test above can fail", async () => {
  const page = await browser.newPage();
  await page.setContent('<p>One</p><p style="break-before: page">Two</p>');
  expect(pagesOf(await page.pdf())).toBe(2);
  await page.close();
});

test("a batch of the log opens its card, and comes back to the list", async () => {
  const opened = await openPanel(browser, { behave: () => ({ answer: { ok: true, reply: FULL } }) });
  const { page } = opened;
  const list = page.getByRole("region", { name: "Batches in the log" });
  await list.locator("summary").first().click();
  await list.getByRole("button", { name: "Card" }).click();
  await page.getByRole("heading", { name: "8 L of “Rooting, weak”" }).waitFor();
  expect(await page.locator(".card-doses td").allInnerTexts()).toEqual(["0.808 g", "0.7544 g"]);
  expect(await objections(page)).toEqual([]);
  await page.getByRole("button", { name: "Back" }).click();
  await list.waitFor();
  await opened.close();
});
