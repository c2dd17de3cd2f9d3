/** A batch in a real browser: coarse tools, a stock solution in one press, planned, mixed, read, repeated, corrected, its card. */

import { describe, expect, it } from "vitest";
import { objections } from "./axe.ts";
import { standingSheet } from "./standing-sheet.ts";

const sheet = standingSheet();
const { values, panelFrame } = sheet;

type Row = Record<string, unknown>;

/** Rows of the Batch log, as records by heading; the last filled one last. */
async function batchRows(): Promise<Row[]> {
  const [headings = [], ...rows] = await values("Batch log", "A1:AB");
  return rows
    .filter((row) => row[0] !== null && row[0] !== "")
    .map((row) => Object.fromEntries(row.map((value, at) => [String(headings[at]), value ?? ""])));
}

/** The row that is there now and was not before. */
async function newRow(before: readonly Row[]): Promise<Row> {
  await expect.poll(async () => (await batchRows()).length, { timeout: 10_000 }).toBe(before.length + 1);
  const found = (await batchRows()).find(({ Id }) => !before.some((row) => row.Id === Id));
  if (found === undefined) throw new Error("There should be a new row.");
  return found;
}

const list = () => sheet.panel.getByRole("region", { name: "Batches in the log" });

/** The batch of the list with these words, opened. */
async function opened(words: RegExp) {
  const item = list()
    .locator("details")
    .filter({ has: sheet.page.locator("summary", { hasText: words }) })
    .first();
  await item.waitFor();
  await item.evaluate((details) => details.setAttribute("open", ""));
  return item;
}

/** Hoagland & Arnon 1950, Calif. Agr. Exp. Sta. Circular 347, solution 1, mg/L; on the sample's Targets tab. */
const HOAGLAND = { N: 210, P: 31, K: 235, Ca: 200, Mg: 48.6, S: 64 };
const SALTS = [
  "Calcium nitrate tetrahydrate",
  "Potassium nitrate",
  "Monopotassium phosphate",
  "Magnesium sulfate heptahydrate",
];

/** "Potassium nitrate 0.506 g/L (5.1 g)": grams for the batch, by feed. */
function grams(doses: unknown): Map<string, number> {
  return new Map(
    String(doses)
      .split("; ")
      .map((dose) => {
        const [, feed = "", , amount = ""] = /^(.+) ([\d.]+) g\/L \(([\d.]+) g\)$/.exec(dose) ?? [];
        return [feed, Number(amount)];
      }),
  );
}

let plan: Row;

describe("with a scale in steps of 0.1 g", () => {
  it("the tools are kept in Settings from the panel", async () => {
    const { panel } = sheet;
    await panel.getByRole("button", { name: "Mix a batch" }).click();
    await panel.getByText(/^Measured with:/).click();
    await panel.getByLabel("Scale step, g").fill("0,1");
    await panel.getByLabel("Syringe step, mL").fill("0.1");
    await panel.getByLabel("Syringe holds, mL").fill("20");
    await panel.getByRole("button", { name: "Keep these tools" }).click();
    await panel.getByText("Kept in Settings.").waitFor();
    const settings = new Map((await values("Settings", "A1:B30")).map(([name, value]) => [name, value]));
    expect(settings.get("Scale step g")).toBe(0.1);
    expect(settings.get("Syringe most mL")).toBe(20);
    await panel.getByText(/^Measured with: scale in steps of 0\.1 g, syringe in steps of 0\.1 mL up to 20 mL/).click();
  });

  it("weighed dry, the phosphate is too coarse; one press on its stock solution brings all six within 1 %", async () => {
    const { panel } = sheet;
    await panel.getByLabel("Water", { exact: true }).selectOption("Pure water");
    await panel.getByLabel("Target", { exact: true }).selectOption("Hoagland 1, full");
    for (const feed of SALTS) await panel.getByRole("checkbox", { name: feed }).check();
    await panel.getByLabel("Litres to mix").fill("10");
    await panel.getByText(/phosphorus comes to [\d.]+ instead of 31 mg\/L/).waitFor();
    await panel.getByText(/Monopotassium phosphate can be measured to 0\.1 g, but this batch wants 1\.36 g/).waitFor();
    await panel.getByRole("button", { name: "Dose it from the stock solution" }).click();
    await panel.getByText("of the stock", { exact: true }).waitFor();
    expect(await panel.getByText("Too little to measure well").count()).toBe(0);
    expect(await objections(await panelFrame())).toEqual([]);
  });

  it("it is planned with amounts that can be measured, and its numbers are within 1 % of the published ones", async () => {
    const before = await batchRows();
    const { panel } = sheet;
    await panel.getByLabel("Your name").fill("Wren");
    await panel.getByRole("button", { name: "Save name" }).click();
    await panel.getByLabel("Your name").waitFor({ state: "detached" });
    await panel.getByLabel("Only plan it: it is logged as mixed later").check();
    await panel.getByRole("button", { name: "Plan this batch" }).click();
    plan = await newRow(before);
    expect(plan).toMatchObject({ State: "planned", Litres: 10, Who: "Wren", Corrects: "" });
    for (const [symbol, wanted] of Object.entries(HOAGLAND)) {
      expect(Math.abs(Number(plan[symbol]) / wanted - 1), symbol).toBeLessThan(0.01);
    }
    const weighed = grams(plan.Doses);
    expect([...weighed.keys()].sort()).toEqual([...SALTS].sort());
    for (const [feed, amount] of weighed) {
      if (feed === "Monopotassium phosphate") continue;
      expect(Math.abs(amount * 10 - Math.round(amount * 10)), feed).toBeLessThan(1e-6);
    }
    expect(String(plan.Note)).toMatch(/Monopotassium phosphate: [\d.]+ mL of a stock of [\d.]+ g in \d+ mL/);
  });
});

describe("the plan", () => {
  it("is logged as mixed as a row of its own, and the readings go to that row", async () => {
    const before = await batchRows();
    const { panel } = sheet;
    const item = await opened(/10 L, Hoagland 1, full, planned$/);
    await item.getByRole("button", { name: "Log as mixed" }).dblclick();
    await panel.getByText("Logged as mixed. Its readings can go in now.").waitFor();
    const mixed = await newRow(before);
    expect(mixed).toMatchObject({ State: "", Corrects: plan.Id, Doses: plan.Doses, Litres: 10 });
    expect((await batchRows()).find(({ Id }) => Id === plan.Id)).toEqual(plan);
    expect(
      await list()
        .getByText(/planned$/)
        .count(),
    ).toBe(0);
    await panel.getByLabel("Measured EC").first().fill("2.05");
    await panel.getByLabel("Measured pH").first().fill("5.7");
    await panel.getByRole("button", { name: "Log readings" }).click();
    await expect
      .poll(async () => (await batchRows()).find(({ Id }) => Id === mixed.Id), { timeout: 10_000 })
      .toMatchObject({ "Measured EC": 2.05, "Measured pH": 5.7 });
  });

  it("is repeated at another volume, in amounts that can be measured there", async () => {
    const before = await batchRows();
    const { panel } = sheet;
    const item = await opened(/10 L, Hoagland 1, full$/);
    await item.getByRole("button", { name: "Repeat it" }).click();
    await panel.getByText(/^Repeating the batch of .*, 10 L, Hoagland 1, full/).waitFor();
    await panel.getByLabel("Litres to mix").fill("7,5");
    expect(await objections(await panelFrame())).toEqual([]);
    await panel.getByRole("button", { name: "Log this batch" }).click();
    const repeated = await newRow(before);
    expect(repeated).toMatchObject({ Litres: 7.5, Target: "Hoagland 1, full", Corrects: "", State: "" });
    const first = grams(plan.Doses);
    for (const [feed, amount] of grams(repeated.Doses)) {
      // Three quarters of it, to the nearest step of 0.1 g or of the stock.
      expect(Math.abs(amount - 0.75 * (first.get(feed) ?? 0)), feed).toBeLessThanOrEqual(0.05 + 1e-6);
    }
  });

  it("a mistake in it is corrected by a row that points at the old one, which stays", async () => {
    const before = await batchRows();
    const { panel } = sheet;
    const item = await opened(/7\.5 L, Hoagland 1, full$/);
    await item.getByRole("button", { name: "Correct it" }).click();
    await panel.getByLabel("Litres to mix").fill("8");
    await panel.getByRole("button", { name: "The amounts weighed were right, only the litres were wrong" }).click();
    await panel.getByRole("button", { name: "Log it in place of the old row" }).click();
    const corrected = await newRow(before);
    const old = before[before.length - 1];
    expect(corrected).toMatchObject({ Litres: 8, Corrects: old?.Id });
    expect((await batchRows()).find(({ Id }) => Id === old?.Id)).toEqual(old);
    for (const [feed, amount] of grams(corrected.Doses)) {
      expect(amount, feed).toBeCloseTo(grams(old?.Doses).get(feed) ?? 0, 3);
    }
    expect(
      await list()
        .getByText(/7\.5 L, Hoagland 1, full$/)
        .count(),
    ).toBe(0);
  });

  it("and taken back: the row stays in the log, and the one it had corrected counts again", async () => {
    const before = await batchRows();
    const item = await opened(/ 8 L, Hoagland 1, full$/);
    await item.getByRole("button", { name: "Take it back" }).click();
    const mark = await newRow(before);
    expect(mark).toMatchObject({ Corrects: before[before.length - 1]?.Id, Doses: "" });
    await list()
      .getByText(/7\.5 L, Hoagland 1, full$/)
      .waitFor();
  });
});

describe("the card", () => {
  it("opens from the log with doses and steps, asks the browser to print, and axe finds nothing", async () => {
    const { panel } = sheet;
    const item = await opened(/7\.5 L, Hoagland 1, full$/);
    await item.getByRole("button", { name: "Card" }).click();
    await panel.getByRole("heading", { name: "7.5 L of “Hoagland 1, full”" }).waitFor();
    const shown = await panel.locator(".card-doses tr").allTextContents();
    expect(shown).toHaveLength(4);
    const frame = await panelFrame();
    await frame.evaluate("window.print = () => { window.printed = true; }");
    await panel.getByRole("button", { name: "Print" }).click();
    expect(await frame.evaluate("window.printed")).toBe(true);
    expect(await objections(frame)).toEqual([]);
    await panel.getByRole("button", { name: "Back" }).click();
    await list().waitFor();
  });

  it("asked for nothing from outside and threw nothing", () => {
    expect(sheet.outside).toEqual([]);
    expect(sheet.errors).toEqual([]);
  });
});
