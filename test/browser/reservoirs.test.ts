/** Reservoirs in a real browser: a pot whose figures are worked out by hand, from its log to the list, its salt, and back into the log. */

import { describe, expect, it } from "vitest";
import { objections } from "./axe.ts";
import { standingSheet } from "./standing-sheet.ts";

/** Serial numbers count from 1899-12-30, which is 25,569 days before 1970-01-01. */
const isoOf = (serial: number): string => new Date((serial - 25_569) * 86_400_000).toISOString().slice(0, 10);
/** As the panel writes days. */
function dayWords(serial: number): string {
  const [year, month, day] = isoOf(serial).split("-").map(Number) as [number, number, number];
  return `${day} ${"Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" ")[month - 1]} ${year}`;
}
let today: number;

/** A pot of 2,000 mL in a place of its own: changed 29 days ago, 140 mL each week since, the last 8 days ago. */
const sheet = standingSheet(async (opened) => {
  // The panel brings Today up to date when it opens.
  await opened.panel.getByRole("button", { name: "Reservoirs", exact: true }).waitFor();
  [[today]] = (await opened.values("Settings", "B2:B2")) as [[number]];
  const plantRow = (await opened.values("Plants", "A1:A200")).findIndex(([name]) => name === null) + 1;
  const logRow = (await opened.values("Care log", "C1:C6000")).findIndex(([name]) => name === null) + 1;
  const rows = [
    [isoOf(today - 29), "Attic fern", "Solution change", "560"],
    ...[22, 15, 8].map((ago) => [isoOf(today - ago), "Attic fern", "Top up", "140"]),
  ];
  const cells: [string, string, string][] = [
    ["Plants", `A${plantRow}`, "Attic fern"],
    ["Plants", `C${plantRow}`, "Attic"],
    ["Plants", `D${plantRow}`, "2000"],
    ...rows.flatMap((row, at) =>
      row.map((text, column): [string, string, string] => ["Care log", `${"BCDE"[column]}${logRow + at}`, text]),
    ),
  ];
  for (const [tab, cell, text] of cells) await opened.type(tab, cell, text);
  await opened.panel.getByRole("button", { name: "Read the sheet again" }).click();
  await opened.panel.getByRole("button", { name: "Reservoirs", exact: true }).click();
});
const { values, type, panelFrame } = sheet;

describe("what is due", () => {
  it("stands under its place with the numbers: 20 mL a day, 140 mL as usual, so thirsty since yesterday", async () => {
    const { panel } = sheet;
    await expect
      .poll(() => panel.getByLabel("Place", { exact: true }).locator("option").allTextContents())
      .toContain("Attic");
    await panel.getByLabel("Place", { exact: true }).selectOption("Attic");
    await panel.getByText("1 thing due, 1 plant thirsty.").waitFor();
    const line = panel.locator(".dues li").first();
    await expect.poll(() => line.textContent()).toContain(`Attic fern: top up, since ${dayWords(today - 1)}`);
    expect(await line.textContent()).toContain(
      `It drinks 20 mL a day, about 160 mL in the 8 days since ${dayWords(today - 8)}; 140 mL is its usual top-up.`,
    );
  });

  it("is what the formulas say, typed into a cell", async () => {
    await type("Try it", "U1", "=POT_USE(\"attic fern\", 'Care log'!A1:L6000, Settings!B2)");
    await type("Try it", "U2", "=POT_SALT(1.1, 0.6, 420, 560)");
    await type(
      "Try it",
      "W1",
      "=POT_DUE(Plants!A2:A200, 'Care log'!A1:L6000, Settings!B2, Events!A1:B60, Settings!A1:B40)",
    );
    await expect.poll(async () => (await values("Try it", "U1:U2")).flat()).toEqual([20, 1.55]);
    const list = await values("Try it", "W1:Z80");
    expect(list[0]).toEqual(["Plant", "Due", "Since", "Why"]);
    expect(list.filter(([plant]) => plant === "Attic fern")).toEqual([
      [
        "Attic fern",
        "Top up",
        today - 1,
        `It drinks 20 mL a day, about 160 mL in the 8 days since ${isoOf(today - 8)}; 140 mL is its usual top-up.`,
      ],
    ]);
  });
});

describe("one plant", () => {
  it("shows its drinking and, with two figures typed, its salt: 1.1 + 0.6 × 420 / 560 = 1.55 mS/cm", async () => {
    const { panel } = sheet;
    await panel.getByLabel("Plant", { exact: true }).selectOption("Attic fern");
    await panel.getByText("It drinks 20 mL a day, over the last four weeks as far as they are known.").waitFor();
    // No batch is named in its log, so the panel asks for what it was filled with.
    await panel.getByText("Type the EC it was filled with.").waitFor();
    await panel.getByLabel("Filled with, mS/cm").fill("1,1");
    await panel.getByLabel("Topped up with, mS/cm").fill("0.6");
    await panel.getByLabel("Plain water, mS/cm").fill("0");
    const salt = panel.locator("[data-part=salt]");
    await salt.getByText("If the plant took up water alone, it would read 1.55 mS/cm when full.").waitFor();
    await salt.getByText("Drunk and replaced since: 420 mL, 0.75 times what it holds.").waitFor();
    // (2 − 1.55) / (0.6 × 20 / 560) = 21 days from the last top-up; 560 ln(2 / 1.1) = 334.8 mL.
    await salt
      .getByText(
        `It reaches the ceiling of 2.00 mS/cm on ${dayWords(today - 8 + 21)}, at the earliest. Flush with 340 mL of plain water then, or change the solution.`,
      )
      .waitFor();
    // Fed top-ups add 0.15 each: 1.70, 1.85, 2.00, then plain ones keep it there.
    const kinds = await salt.locator("tbody tr td.words").allTextContents();
    expect(kinds.map((text) => text.trim().replace(/^140 mL /, ""))).toEqual([
      "feed",
      "feed",
      "feed",
      ...Array.from({ length: 5 }, () => "plain water"),
    ]);
    await panel.getByLabel("EC measured today").fill("1.25");
    // 0.30 of 1.55 are missing after 420 of 560 mL: 0.4 with each litre, two thirds of what a top-up brings.
    await salt
      .getByText(/with the water the plant takes up about 0\.40 mS\/cm, 66\.7 % of what a top-up brings/)
      .waitFor();
  });

  it("is drawn, and its numbers stand in a table", async () => {
    const { panel } = sheet;
    await panel.locator(".plot canvas").first().waitFor();
    await panel.getByText("The numbers, newest first").click();
    const rows = await panel.locator("table", { hasText: "mL a day" }).locator("tbody tr").allTextContents();
    expect(rows).toEqual([8, 15, 22].map((ago) => `${dayWords(today - ago)}714020`));
  });

  it("has nothing that axe objects to, and fits the panel", async () => {
    const frame = await panelFrame();
    expect(await objections(frame)).toEqual([]);
    const [inner, outer] = await frame.evaluate(() => [
      document.documentElement.scrollWidth,
      document.documentElement.clientWidth,
    ]);
    expect(inner).toBeLessThanOrEqual(outer as number);
  });
});

describe("from the list into the log", () => {
  it("a press opens Log care with the plant and the event; once logged, nothing is due", async () => {
    const { panel } = sheet;
    const before = (await values("Care log", "C1:C6000")).filter(([name]) => name === "Attic fern").length;
    await panel.getByRole("button", { name: "Log a top-up for Attic fern" }).click();
    await panel.getByRole("checkbox", { name: /^Attic fern/ }).waitFor();
    expect(await panel.getByRole("checkbox", { name: /^Attic fern/ }).isChecked()).toBe(true);
    expect(await panel.getByLabel("What happened").inputValue()).toBe("Top up");
    if (await panel.getByLabel("Your name").isVisible()) await panel.getByLabel("Your name").fill("Wren");
    await panel.getByRole("button", { name: "Log care" }).last().click();
    await expect
      .poll(async () => (await values("Care log", "C1:C6000")).filter(([name]) => name === "Attic fern").length, {
        timeout: 15_000,
      })
      .toBe(before + 1);
    await panel.getByRole("button", { name: "Reservoirs", exact: true }).click();
    await panel.getByText("Nothing is due here.").waitFor();
    expect(sheet.errors).toEqual([]);
    expect(sheet.outside).toEqual([]);
  });
});
