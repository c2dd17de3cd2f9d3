/** The mix section in the built panel with everything opened: goals, tools, bottles, old batches; nothing sticks out, axe finds nothing. */

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

/** Each of these fills a whole form in a browser. */
const LONG_MS = 60_000;

const RECORDS = {
  purchases: [
    { row: 2, fields: { Feed: "Potassium nitrate", Date: "2026-01-02", Amount: 500, Unit: "g", Price: 10 } },
    { row: 3, fields: { Feed: "Calcium nitrate tetrahydrate", Date: "2026-01-02", Amount: 1, Unit: "kg", Price: 15 } },
  ],
  meterLog: [],
  claims: [],
  trials: [],
  problems: [],
};
const LOADED = sheet({
  waters: [{ row: 2, fields: { Water: "Tap", Ca: 40, Mg: 5, Na: 10, Cl: 15, Alkalinity: 130, pH: 7.6 } }],
  settings: { "Scale step g": "0.1", "Syringe step mL": "0.1", "Syringe most mL": "20" },
});

test.each(["light", "dark"] as const)(
  "%s: goals are typed, kept to and priced",
  { timeout: LONG_MS },
  async (scheme) => {
    const opened = await openPanel(browser, {
      scheme,
      behave: ({ ask }) => ({ answer: { ok: true, reply: ask === "records" ? RECORDS : LOADED } }),
    });
    const { page } = opened;
    await page.getByLabel("Water", { exact: true }).selectOption("Tap");
    await page.getByLabel("Target", { exact: true }).selectOption("Foliage, half strength");
    for (const feed of ["Potassium nitrate", "Calcium nitrate tetrahydrate"]) {
      await page.getByRole("checkbox", { name: feed }).check();
    }
    await page.getByLabel("Litres to mix").fill("10");
    // Folded away until wanted: no field of a goal is on show.
    expect(await page.getByLabel("Strength", { exact: true }).isVisible()).toBe(false);
    await page.getByText("More goals", { exact: true }).click();
    await page.getByLabel("Strength", { exact: true }).selectOption("By EC");
    await page.getByLabel("EC to reach, mS/cm at 25 °C").fill("0,9");
    await page.getByLabel("Of the mixes that are close, take").selectOption("Cheapest that is close");
    await page.getByText(/^This batch costs \d+\.\d\d, that is \d+\.\d\d for 10 L/).waitFor();
    await page.getByText(/^0\.(89|90|91) ± 0\.\d\d mS\/cm/).waitFor();
    await page.getByText("Limits and weights, element by element").click();
    await page.getByLabel("At most of chlorine").fill("10");
    await page.getByText(/The water alone brings 15 mg\/L chlorine, more than the 10 allowed/).waitFor();
    await page.getByLabel("At most of chlorine").fill("");
    await page.getByText("More goals: strength by EC, cheapest").waitFor();
    await page.evaluate(() => {
      for (const details of document.querySelectorAll("details")) details.open = true;
    });
    expect(await overflows(page)).toBe(false);
    expect(await objections(page)).toEqual([]);
    await opened.close();
  },
);

test("a small dose of acid is thinned in one press, with the caution beside it", { timeout: LONG_MS }, async () => {
  const opened = await openPanel(browser, { behave: () => ({ answer: { ok: true, reply: LOADED } }) });
  const { page } = opened;
  await page.getByLabel("Water", { exact: true }).selectOption("Tap");
  await page.getByLabel("Target", { exact: true }).selectOption("Rooting, weak");
  await page.getByRole("checkbox", { name: "Potassium nitrate" }).check();
  await page.getByLabel("Litres to mix").fill("1");
  await page.getByLabel("Acid or base to add").selectOption("Phosphoric acid");
  await page.getByLabel("Strength, % w/w").fill("85");
  const part = page.locator('[data-part="too little acid"]');
  await part.getByText(/is too little to measure in steps of 0\.1 mL/).waitFor();
  await part.getByText("Acid into water, never water into acid.").waitFor();
  await part.getByRole("button", { name: "Dose the thinned acid" }).click();
  await page.getByText(/^Thinned: phosphoric acid 85 %, \d+ mL in \d+ mL$/).click();
  await page.getByText(/Let \d+ mL of phosphoric acid 85 % run slowly into the water/).waitFor();
  await page
    .locator('[data-part="steps"]')
    .getByText(/mL of the thinned acid/)
    .first()
    .waitFor();
  expect(await overflows(page)).toBe(false);
  expect(await objections(page)).toEqual([]);
  await opened.close();
});

test("typing litres is answered without a visible pause: the median of 30 keys is below 50 ms", {
  timeout: LONG_MS,
}, async () => {
  const opened = await openPanel(browser, { behave: () => ({ answer: { ok: true, reply: LOADED } }) });
  const { page } = opened;
  await page.getByLabel("Water", { exact: true }).selectOption("Tap");
  await page.getByLabel("Target", { exact: true }).selectOption("Foliage, half strength");
  for (const box of await page.getByRole("list", { name: "Feeds" }).getByRole("checkbox").all()) await box.check();
  await page.getByLabel("Litres to mix").fill("9");
  const times = await page.evaluate(async () => {
    const field = [...document.querySelectorAll("input")].find(
      (one) => one.labels?.[0]?.textContent === "Litres to mix",
    );
    if (field === undefined) throw new Error("There should be a field.");
    const all: number[] = [];
    for (let key = 0; key < 30; key++) {
      field.value = String(10 + key);
      const started = performance.now();
      field.dispatchEvent(new Event("input", { bubbles: true }));
      // The panel draws in a microtask of its own; a message comes after it.
      await new Promise<void>((done) => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => done();
        channel.port2.postMessage(0);
      });
      all.push(performance.now() - started);
    }
    return all.sort((a, b) => a - b);
  });
  await page.getByText("for 39 L", { exact: true }).waitFor();
  expect(times[15]).toBeLessThan(50);
  await opened.close();
});
