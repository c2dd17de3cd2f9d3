/** "Know a water" in Chromium at 300 px: paste mixed units, answer, correct a line, save, blend, treat, see advice. */

import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { objections } from "../browser/axe.ts";
import { launch } from "../browser/chromium.ts";
import { type OpenPanel, openPanel, overflows } from "./page.ts";
import { sheet } from "./sheet.ts";

/** The worked water of Standard Methods 1030 E in a mix of units: Mg 43 mg/L is 1.769 mmol/L, HCO3 362 is 5.933 meq/L. */
const REPORT = `Town water, spring
Calcium (Ca2+) 85 mg/L
Magnesium 1,769 mmol/L
Potassium 2.9 ppm
Sodium 92 mg/L
Hydrogen carbonate 5.933 meq/L
Chloride a lot
Sulphate 89 mg/L
Nitrate 20 mg/L
Total hardness 21.8 °dH
Electrical conductivity 1286 µS/cm
pH 7,6
Chloramine 1.2 mg/L
A-line-without-any-space-that-goes-on-and-on-for-much-longer-than-the-panel-is-wide`;

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

async function open(scheme: "light" | "dark", change: Parameters<typeof sheet>[0] = {}): Promise<OpenPanel> {
  const opened = await openPanel(browser, {
    scheme,
    behave: (request) =>
      request.ask === "load"
        ? { answer: { ok: true, reply: sheet(change) } }
        : { answer: { ok: true, reply: { written: 1, already: 0, differing: [] } } },
  });
  await opened.page.getByRole("button", { name: "Know a water" }).click();
  await opened.page.getByRole("heading", { name: "Know a water" }).waitFor();
  return opened;
}

async function fits({ page, outside }: OpenPanel): Promise<void> {
  expect(await objections(page)).toEqual([]);
  expect(await overflows(page)).toBe(false);
  expect(outside).toEqual([]);
}

describe.each(["light", "dark"] as const)("in %s", (scheme) => {
  test("a report in mixed units is understood, mended, judged, saved, blended and treated", async () => {
    const opened = await open(scheme);
    const { page } = opened;
    await fits(opened);
    await page.getByLabel("Report", { exact: true }).fill(REPORT);
    await page.getByText("Magnesium 1.77 mmol/L is 43 mg/L.").waitFor();
    await page.getByText("Passed over: 2 lines").waitFor();
    await page.getByText("A line that waits for your choice is not counted yet.").waitFor();
    await page.getByText("Cannot be said: the report has no Cl.").waitFor();
    await fits(opened);

    await page.getByRole("button", { name: "Save to the Waters tab" }).click();
    await page.getByText("Choose what “Nitrate 20 mg/L” means first.").waitFor();
    await page.getByLabel("Nitrate 20 mg/L as NO3 is 4.52 mg/L as N.").check();
    await page.getByRole("button", { name: "Save to the Waters tab" }).click();
    await page.getByText("“Chloride a lot” is not understood.").waitFor();
    await page.getByLabel("Line 7").fill("Chloride 131 mg/L");
    expect(await page.getByLabel("Line 7").evaluate((field) => field === document.activeElement)).toBe(true);
    await page.getByText("It adds up: cations 11.9, anions 11.8 meq/L, +0.2").waitFor();
    await page.getByText("389 mg/L CaCO3, 21.8 °dH: very hard (USGS scale).").waitFor();
    await page.getByText("Chloramine does not leave on standing").first().waitFor();
    await page.getByRole("button", { name: "Done with line 7" }).click();
    expect(
      await page.getByRole("button", { name: "Correct line 7" }).evaluate((it) => it === document.activeElement),
    ).toBe(true);

    await page.getByLabel("Name of this water").fill("Spring");
    await page.getByRole("button", { name: "Save to the Waters tab" }).dblclick();
    await page.getByText("Saved “Spring” on the Waters tab.").waitFor();
    expect(opened.requests.map(({ ask }) => ask)).toEqual(["load", "log water"]);
    const saved = opened.requests[1];
    if (saved?.ask !== "log water") throw new Error("There should be a water.");
    const { numbers, disinfectant, note, day } = saved.entry;
    expect([numbers.Ca, numbers.K, numbers.Cl, numbers.EC, numbers.pH]).toEqual([85, 2.9, 131, 1.286, 7.6]);
    expect(numbers.Mg).toBeCloseTo(43, 1);
    expect(numbers.Alkalinity).toBeCloseTo(362 * 0.8202, 0); // Hem 1985
    expect(numbers["NO3-N"]).toBeCloseTo((20 * 14.007) / 62.004, 3);
    expect([disinfectant, day]).toEqual(["chloramine", "2026-03-14"]);
    expect(note).toBe("Also reported: Hardness 389 mg/L CaCO3 and Chloramine 1.2 mg/L.");

    const blend = page.getByRole("region", { name: "Blend two waters" });
    await blend.getByRole("button", { name: "Use the advised share, 50 %" }).isVisible();
    await blend.getByLabel("Share of the first").fill("40");
    await blend.getByRole("row", { name: "Ca 85 0 34" }).waitFor();
    await blend.getByLabel("Second water").selectOption("Rain barrel");
    await blend.getByRole("row", { name: "Na 92 1 37.4" }).waitFor();
    await blend.getByText("Not known in the blend: K").waitFor();

    const treat = page.getByRole("region", { name: "Treat a water" });
    await treat.getByLabel("Treatment").selectOption("Softener");
    await treat.getByText("A softener trades calcium and magnesium for sodium").waitFor();
    await treat.getByLabel("Treatment").selectOption("Standing overnight");
    await treat.getByText("chloramine does not.").waitFor();
    await fits(opened);

    await page.reload();
    await page.getByText("This report is on the Waters tab.").waitFor();
    await page.getByRole("button", { name: "Take another report" }).click();
    expect(await page.getByLabel("Report", { exact: true }).inputValue()).toBe("");
    await opened.close();
  });

  test("a batch shows its EC on the meter's scale, its pH now and later, and acid in two steps", async () => {
    const waters = [{ row: 2, fields: { Water: "Hard", Ca: 80, Mg: 12, Na: 20, Alkalinity: 200, Cl: 30, pH: 7.6 } }];
    const opened = await open(scheme, { waters, meterScale: 500 });
    const { page } = opened;
    await page.getByRole("button", { name: "Mix a batch" }).click();
    await page.getByLabel("Water", { exact: true }).selectOption("Hard");
    await page.getByLabel("Target", { exact: true }).selectOption("Rooting, weak");
    await page.getByLabel("Potassium nitrate", { exact: true }).check();
    await page.getByLabel("Calcium nitrate tetrahydrate").check();
    await page.getByLabel("Potassium dihydrogen phosphate").check();
    await page.getByLabel("Litres to mix").fill("10");
    await page.getByText("Your meter, scale 500, should show").waitFor();
    await page.getByText("once the CO2 has left").waitFor();
    await page.getByLabel("Acid or base to add").selectOption("Phosphoric acid");
    await page.getByText("Type the strength in percent, as printed on the bottle.").waitFor();
    await page.getByText("Acid into water, never water into acid.").waitFor();
    await fits(opened);
    await page.getByLabel("Strength, % w/w").fill("75");
    await page.getByText("for 10 L of phosphoric acid 75 %, to pH 5.8.").waitFor();
    await page.getByText("four fifths of the dose; the rest follows at the end").waitFor();
    await page.getByLabel("pH after the first part").fill("6,4");
    await page.getByText("From the pH you measured:").waitFor();
    await page.getByRole("heading", { name: "Steps" }).waitFor();
    for (const more of await page.locator("summary").all()) await more.click();
    await fits(opened);
    await opened.close();
  });
});

test("a line is corrected and taken out with the keyboard alone", async () => {
  const opened = await open("light");
  const { page } = opened;
  await page.getByLabel("Report", { exact: true }).fill("Calcium 62 mg/L\nSodium 9 mg/L");
  await page.getByRole("button", { name: "Correct line 2" }).focus();
  await page.keyboard.press("Enter");
  await page.keyboard.press("End");
  for (let left = "Sodium 9 mg/L".length; left > 0; left--) await page.keyboard.press("Backspace");
  await page.getByText("Nothing is left of this line.").waitFor();
  await page.keyboard.type("Sodium 19 mg/L");
  await page.getByText("Sodium 19 mg/L.").waitFor();
  expect(await page.getByLabel("Report", { exact: true }).inputValue()).toBe("Calcium 62 mg/L\nSodium 19 mg/L");
  await page.getByRole("button", { name: "Take out line 2" }).focus();
  await page.keyboard.press("Enter");
  expect(await page.getByLabel("Report", { exact: true }).inputValue()).toBe("Calcium 62 mg/L");
  await opened.close();
});
