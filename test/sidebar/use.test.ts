/** The built panel in use: a batch and its readings, care for several plants, failures, closing and opening, the keyboard alone. */

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Request } from "../../src/app/contract.ts";
import { launch } from "../browser/chromium.ts";
import { type Behaviour, type OpenPanel, openPanel, type PanelOptions } from "./page.ts";
import { sheet } from "./sheet.ts";

const WRITTEN = { answer: { ok: true, reply: { written: 1, already: 0, differing: [] } } } as const;

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

/** Opens the panel on the common sheet; `others` answers what is no load. */
async function open(
  others: (request: Request, number: number) => Behaviour | Promise<Behaviour>,
  change: Parameters<typeof sheet>[0] = {},
  options: Pick<PanelOptions, "formulas"> = {},
): Promise<OpenPanel> {
  const opened = await openPanel(browser, {
    ...options,
    behave: (request, number) =>
      request.ask === "load" ? { answer: { ok: true, reply: sheet(change) } } : others(request, number),
  });
  await opened.page.getByRole("heading", { name: "Mix a batch" }).waitFor();
  return opened;
}

/** What was asked of the sheet; reading further records is left out, as it writes nothing. */
const asked = (opened: OpenPanel): string[] => opened.requests.map(({ ask }) => ask).filter((ask) => ask !== "records");
const main = (page: Page) => page.getByRole("main");

async function putTogether(page: Page): Promise<void> {
  await page.getByLabel("Water", { exact: true }).selectOption("Tap");
  await page.getByLabel("Target", { exact: true }).selectOption("Rooting, weak");
  await page.getByLabel("Potassium nitrate", { exact: true }).check();
  await page.getByLabel("Calcium nitrate tetrahydrate").check();
  await page.getByLabel("Litres to mix").fill("8");
}

test("a batch is worked out at every key, logged by a double click once, and gets its readings", async () => {
  const opened = await open(() => WRITTEN);
  const { page } = opened;
  await putTogether(page);
  await page.getByRole("table", { name: "Doses" }).getByText("for 8 L").waitFor();
  const marks = await page
    .locator(".trough .mark")
    .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().x));
  expect(marks).toHaveLength(5);
  expect(new Set(marks).size).toBe(1);
  await page.getByLabel("Litres to mix").fill("9");
  await page.getByRole("table", { name: "Doses" }).getByText("for 9 L").waitFor();
  await page.getByRole("button", { name: "Log this batch" }).dblclick();
  await page.getByText("Logged 9 L of “Rooting, weak”.").waitFor();
  expect(asked(opened)).toEqual(["load", "log batch"]);
  const [, logged] = opened.requests;
  const batch = logged?.ask === "log batch" ? logged.batch : null;
  await expectValue(page, "Batch", batch?.id ?? "none");
  await page.getByLabel("Measured EC").fill("0,62");
  await page.getByLabel("Measured pH").fill("5.8");
  await page.getByRole("button", { name: "Log readings" }).click();
  await page.getByText("Logged EC 0.62 mS/cm and pH 5.8.").waitFor();
  expect(opened.requests.find(({ ask }) => ask === "log readings")).toEqual({
    ask: "log readings",
    batchId: batch?.id,
    ecMsCm: 0.62,
    pH: 5.8,
    verdict: expect.stringMatching(/ mS\/cm/),
  });
  await opened.close();
});

async function expectValue(page: Page, label: string, value: string): Promise<void> {
  expect(await page.getByLabel(label, { exact: true }).inputValue()).toBe(value);
}

test("the button is shut while a batch is under way, and a failure keeps everything for the same id", async () => {
  let answer: (behaviour: Behaviour) => void = () => undefined;
  const opened = await open(() => new Promise((resolve) => (answer = resolve)));
  const { page } = opened;
  await putTogether(page);
  await page.getByLabel("Note").fill("=1+1");
  const button = page.getByRole("button", { name: "Log this batch" });
  await button.click();
  await page.getByText("Saving the batch…").waitFor();
  expect(await button.isDisabled()).toBe(true);
  await button.click({ force: true });
  answer({ lost: true });
  await page.getByText("The sheet gave no answer.").waitFor();
  await page.getByText("What you typed is still here.").waitFor();
  await expectValue(page, "Note", "=1+1");
  await page.getByRole("button", { name: "Try again" }).click();
  answer({ answer: { ok: true, reply: { written: 0, already: 1, differing: [] } } });
  await page.getByText("Logged 8 L").waitFor();
  expect(asked(opened)).toEqual(["load", "log batch", "log batch"]);
  expect(opened.requests[2]).toEqual(opened.requests[1]);
  await opened.close();
});

test("what was typed is there again after the panel was closed and opened", async () => {
  const opened = await open(() => ({ lost: true }));
  const { page } = opened;
  await putTogether(page);
  await page.getByRole("button", { name: "Log this batch" }).click();
  await page.getByRole("button", { name: "Try again" }).waitFor();
  await page.reload();
  await page.getByRole("table", { name: "Doses" }).getByText("for 8 L").waitFor();
  await page.getByRole("button", { name: "Log this batch" }).click();
  await page.getByRole("button", { name: "Try again" }).waitFor();
  const [first, second] = opened.requests.filter(({ ask }) => ask === "log batch");
  expect(second).toEqual(first);
  await opened.close();
});

test("a load that fails can be tried again", async () => {
  let number = 0;
  const opened = await openPanel(browser, {
    behave: () => {
      number += 1;
      if (number === 1) return { lost: true };
      if (number === 2) return { thrown: "PERMISSION_DENIED" };
      return { answer: { ok: true, reply: sheet() } };
    },
  });
  const { page } = opened;
  await page.getByText("The sheet gave no answer. This often happens when two accounts").waitFor();
  await page.getByRole("button", { name: "Retry" }).click();
  await page.getByText("The sheet refused the request. This often happens when two accounts").waitFor();
  await page.getByRole("button", { name: "Retry" }).click();
  await page.getByRole("heading", { name: "Mix a batch" }).waitFor();
  await opened.close();
});

test("care for all plants of a place is one request", async () => {
  const opened = await open(() => WRITTEN);
  const { page } = opened;
  await page.getByRole("button", { name: "Log care" }).click();
  await page.getByLabel("Place").selectOption("Stairwell");
  await page.getByLabel("Select all 4 shown").check();
  await page.getByLabel("Find by name").fill("fern");
  await page.getByText("4 plants chosen, 3 of them not shown now.").waitFor();
  await page.getByLabel("What happened").selectOption("Root trim");
  await page.getByText("Shortest rest so far: Arum 2, 17 days at rest.").waitFor();
  await page.getByLabel("Date").fill("2026-03-12");
  await main(page).getByRole("button", { name: "Log care" }).click();
  await page.getByText("Logged Root trim for 4 plants on 12 Mar 2026.").waitFor();
  const [, request] = opened.requests;
  expect(request?.ask === "log care" ? request.entries.map(({ plant, day }) => `${plant} ${day}`) : []).toEqual(
    ["Arum 2", "Fern 5", "Peperomia 8", "Hoya 11"].map((plant) => `${plant} 2026-03-12`),
  );
  await page.getByText("Stairwell · 2 days at rest").first().waitFor();
  await opened.close();
});

test("feeds that may not enter a recipe are on the shelf with the reason, and cannot be chosen", async () => {
  const opened = await open(() => WRITTEN);
  const { page } = opened;
  expect(await page.getByRole("checkbox", { name: "Fish and kelp brew" }).count()).toBe(0);
  await page.getByText("On the shelf, but not for a recipe: 2").click();
  await page.getByText("Fish and kelp brew is organic").waitFor();
  await page.getByText("Green bottle without a label has no published analysis").waitFor();
  await opened.close();
});

test("texts from the sheet are shown as text", async () => {
  const trap = "<img src=x onerror=document.title='run'><b>bold</b>";
  const opened = await open(
    () => WRITTEN,
    {
      problems: [trap],
      plants: [{ plant: trap, kind: trap, place: trap, potMl: null, medium: trap, restDays: 1, lastEvent: trap }],
    },
    { formulas: [{ name: "F", summary: trap, call: trap, args: [], result: trap, examples: [trap] }] },
  );
  const { page } = opened;
  await page.getByRole("button", { name: "Log care" }).click();
  await page.getByRole("checkbox", { name: trap }).waitFor();
  await page.getByRole("button", { name: "Set up" }).click();
  await page.getByRole("listitem").filter({ hasText: trap }).first().waitFor();
  expect(await page.locator("img, b").count()).toBe(0);
  expect(await page.title()).toBe("Stillroot");
  await opened.close();
});

test("a page without the help on formulas says so, and all else works", async () => {
  const opened = await open(() => WRITTEN, {}, { formulas: null });
  await opened.page.getByRole("button", { name: "Set up" }).click();
  await opened.page.getByText("The help on the formulas is missing from this page.").waitFor();
  await opened.close();
});

/** Presses Tab until the focused element's text or label holds `words`. */
async function tabTo(page: Page, words: string): Promise<void> {
  for (let step = 0; step < 60; step++) {
    await page.keyboard.press("Tab");
    const here = await page.evaluate(() => {
      const at = document.activeElement as HTMLInputElement | null;
      if (at === null || at === document.body) return "";
      return [
        at.textContent,
        at.getAttribute("aria-label"),
        ...[...(at.labels ?? [])].map((one) => one.textContent),
      ].join(" ");
    });
    if (here.includes(words)) return;
  }
  throw new Error(`The Tab key never came to “${words}”.`);
}

test("a batch and its readings by keyboard alone, with the focus always seen and never lost", async () => {
  const opened = await open(() => WRITTEN);
  const { page } = opened;
  await tabTo(page, "Choose");
  await page.keyboard.type("Tap");
  await tabTo(page, "Target");
  await page.keyboard.type("Rooting");
  await tabTo(page, "Potassium nitrate");
  const ring = await page.evaluate(() => getComputedStyle(document.activeElement ?? document.body).outlineWidth);
  expect(Number.parseFloat(ring)).toBeGreaterThanOrEqual(2);
  await page.keyboard.press("Space");
  await tabTo(page, "Litres to mix");
  await page.keyboard.type("5");
  await tabTo(page, "Log this batch");
  await page.keyboard.down("Enter");
  // A key that is held repeats; that is still one press.
  for (let repeat = 0; repeat < 5; repeat++) await page.keyboard.down("Enter");
  await page.keyboard.up("Enter");
  await page.getByText("Logged 5 L").waitFor();
  expect(asked(opened)).toEqual(["load", "log batch"]);
  expect(await page.evaluate(() => document.activeElement?.getAttribute("role"))).toBe("status");
  await tabTo(page, "Start another batch");
  await page.keyboard.press("Enter");
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Log this batch");
  await tabTo(page, "Measured pH");
  await page.keyboard.type("6,1");
  await tabTo(page, "Log readings");
  await page.keyboard.press("Space");
  await page.getByText("Logged pH 6.1.").waitFor();
  await opened.close();
});

test("sections by keyboard, with the one on show marked", async () => {
  const opened = await open(() => WRITTEN);
  const { page } = opened;
  await tabTo(page, "Log care");
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "Log care" }).waitFor();
  const marked = page.getByRole("navigation", { name: "Sections" }).locator("[aria-current=page]");
  expect(await marked.textContent()).toBe("Log care");
  await tabTo(page, "Show");
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "Set up" }).waitFor();
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Set up");
  await opened.close();
});
