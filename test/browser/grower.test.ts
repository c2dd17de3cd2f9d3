/** The main job in a real browser: formulas typed, a batch mixed and logged once, roots logged, sorted, kept. */

import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launch } from "./chromium.ts";
import { type Bench, bench, type OpenSheet, openSheet, startBench, temporaryFolder } from "./workbench.ts";

const folder = temporaryFolder();
const kept = join(folder.path, "kept.json");
let browser: Browser;
let server: Bench;
let sheet: OpenSheet;

beforeAll(async () => {
  browser = await launch();
  server = await startBench(kept);
  sheet = await openSheet(browser, server.address);
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await server?.stop();
  folder.remove();
});

const values = (tab: string, range: string) =>
  bench(sheet.page, (hooks, [t, r]) => hooks.getValues(t, r), [tab, range] as [string, string]);
const type = (tab: string, cell: string, text: string) =>
  bench(sheet.page, (hooks, [t, c, x]) => hooks.setCell(t, c, x), [tab, cell, text] as [string, string, string]);

/** Rows of a log, as records by heading; the last filled one last. */
async function logRows(tab: string, columns: number): Promise<Record<string, unknown>[]> {
  const end = String.fromCharCode(64 + columns);
  const [headings = [], ...rows] = await values(tab, `A1:${end}`);
  return rows
    .filter((row) => row[0] !== null && row[0] !== "")
    .map((row) => Object.fromEntries(row.map((value, at) => [String(headings[at]), value])));
}

/** Whole days since 1899-12-30, the sheet's serial number of today in the sample's own time zone. */
function todaySerial(): number {
  const iso = new Intl.DateTimeFormat("en-CA", { timeZone: "Europe/Zurich" }).format(new Date());
  return Date.parse(iso) / 86_400_000 + 25_569;
}

describe("a formula typed into a cell", () => {
  it("spills the right row: 10-5-5 at 1 g/L (1 % of 1 g/L is 10 mg/L; P 0.43643, K 0.83015 of the oxides)", async () => {
    await type("Try it", "H40", '=FEED_PPM("10-5-5", 1)');
    await expect.poll(async () => (await values("Try it", "H40:H40"))[0]?.[0]).toBeCloseTo(100, 6);
    const [row = []] = await values("Try it", "H40:S40");
    expect(row[1]).toBeCloseTo(21.82, 2);
    expect(row[2]).toBeCloseTo(41.51, 2);
  });

  it("answers below an open range and says what is wrong with a bad row only", async () => {
    await type("Try it", "U1", "Doses");
    await type("Try it", "U2", "0.5");
    await type("Try it", "U3", "'half a spoon");
    await type("Try it", "U4", "2");
    await type("Try it", "V2", '=FEED_PPM("10-5-5", U2:U, "g/L", "N")');
    await expect.poll(async () => (await values("Try it", "V2:V2"))[0]?.[0]).toBeCloseTo(50, 6);
    const column = (await values("Try it", "V2:V5")).map(([value]) => value);
    expect(String(column[1])).toMatch(/^\? .*half a spoon/);
    expect(column[2]).toBeCloseTo(200, 6);
    expect(column[3] ?? "").toBe("");
  });

  it("shows a refusal with a sentence that names the value", async () => {
    await type("Try it", "X1", '=FEED_PPM("60-50-5", 1)');
    const [[shown] = []] = await values("Try it", "X1:X1");
    expect(String(shown)).toMatch(/^#/);
    const said = await bench(sheet.page, (hooks) => hooks.message("Try it", "X1"));
    expect(said).toContain("115");
    expect(said).toContain("100");
  });
});

describe("a batch mixed in the panel", () => {
  it("is in the Batch log once after a double press, with its readings later on the same row", async () => {
    const before = await logRows("Batch log", 26);
    const { panel } = sheet;
    await panel.getByRole("button", { name: "Mix a batch" }).click();
    await panel.getByLabel("Water", { exact: true }).selectOption({ index: 1 });
    await panel.getByLabel("Target", { exact: true }).selectOption({ index: 1 });
    for (const feed of ["Calcium nitrate", "Potassium nitrate", "Magnesium sulfate"]) {
      await panel.getByRole("checkbox", { name: new RegExp(`^${feed}`) }).check();
    }
    await panel.getByLabel("Litres to mix").fill("7,5");
    await panel.getByLabel("Your name").fill("Wren");
    await panel.getByRole("button", { name: "Save name" }).click();
    await panel.getByLabel("Your name").waitFor({ state: "detached" });
    await panel.getByRole("button", { name: "Log this batch" }).dblclick();
    await expect.poll(async () => (await logRows("Batch log", 26)).length).toBe(before.length + 1);
    await panel.getByText(/^Logged 7\.5 L of/).waitFor();
    const after = await logRows("Batch log", 26);
    expect(after.length).toBe(before.length + 1);
    const added = after.find((row) => !before.some(({ Id }) => Id === row.Id));
    expect(added).toMatchObject({ Litres: 7.5, Date: todaySerial(), Who: "Wren" });
    expect(String(added?.Doses)).toContain("Calcium nitrate");
    expect(Number(added?.Ca)).toBeGreaterThan(0);
    // Rule of thumb (memory): EC in mS/cm is about the cations in meq/L over ten; here Ca, Mg and K of the row.
    const cations = Number(added?.Ca) / 20.04 + Number(added?.Mg) / 12.15 + Number(added?.K) / 39.1;
    expect(Math.abs(Number(added?.["Predicted EC"]) / (cations / 10) - 1)).toBeLessThan(0.25);

    await panel.getByLabel("Measured EC").first().fill("1,21");
    await panel.getByLabel("Measured pH").first().fill("5.8");
    await panel.getByRole("button", { name: "Log readings" }).click();
    await expect
      .poll(async () => (await logRows("Batch log", 26)).find(({ Id }) => Id === added?.Id), { timeout: 10_000 })
      .toMatchObject({ "Measured EC": 1.21, "Measured pH": 5.8 });
    expect((await logRows("Batch log", 26)).length).toBe(before.length + 1);
  });
});

describe("a batch whose answer is lost", () => {
  it("keeps what was typed, says what to do, and the second try leaves one row", async () => {
    const before = await logRows("Batch log", 26);
    const { panel } = sheet;
    await panel.getByRole("button", { name: "Start another batch" }).click();
    await panel.getByLabel("Litres to mix").fill("4");
    // The row is written, then the host fails before its answer is on the way.
    await bench(sheet.page, (hooks) => hooks.failNext("Range.setValues", "after"));
    await panel.getByRole("button", { name: "Log this batch" }).click();
    await panel.getByRole("button", { name: "Try again" }).waitFor();
    expect(await panel.getByText("What you typed is still here.").isVisible()).toBe(true);
    expect(await panel.getByLabel("Litres to mix").inputValue()).toBe("4");
    await panel.getByRole("button", { name: "Try again" }).click();
    await panel
      .getByText(/^Logged 4 L of|already/)
      .first()
      .waitFor();
    const after = await logRows("Batch log", 26);
    expect(after.length).toBe(before.length + 1);
    expect(after.filter(({ Litres }) => Litres === 4).length).toBe(
      before.filter(({ Litres }) => Litres === 4).length + 1,
    );
  });
});

describe("care logged in the panel", () => {
  it("writes three repots at once, and days at rest follow", async () => {
    const names = (await values("Plants", "A2:A4")).map(([name]) => String(name));
    const restBefore = (await values("Plants", "H2:H4")).map(([days]) => days);
    expect(restBefore.every((days) => typeof days === "number" && days > 0)).toBe(true);
    const before = await logRows("Care log", 11);
    const { panel } = sheet;
    await panel.getByRole("button", { name: "Log care" }).first().click();
    for (const name of names) {
      await panel.getByLabel("Find by name").fill(name);
      await panel.getByRole("checkbox", { name: new RegExp(`^${name}`) }).check();
    }
    await panel.getByLabel("What happened").selectOption("Repot");
    await panel.getByLabel("Note").fill("=1+1");
    await panel.locator("main").getByRole("button", { name: "Log care" }).click();
    await expect.poll(async () => (await logRows("Care log", 11)).length, { timeout: 10_000 }).toBe(before.length + 3);
    const added = (await logRows("Care log", 11)).slice(-3);
    expect(added.map((row) => row.Plant).sort()).toEqual([...names].sort());
    expect(added.every((row) => row.Note === "=1+1")).toBe(true);
    await bench(sheet.page, (hooks) => hooks.settled());
    const rest = (await values("Plants", "H2:H4")).map(([days]) => days);
    expect(rest).toEqual([0, 0, 0]);
  });
});

describe("sorting by days at rest", () => {
  const last = 32;
  const readList = async () =>
    (await values("Plants", `A2:J${last}`)).map((row) => ({ plant: row[0], spilled: row[7], own: row[9] }));

  it("orders the plants by the spilled column of the heading row, and the formula answers anew", async () => {
    const before = await readList();
    await bench(sheet.page, (hooks, range) => hooks.sortRange("Plants", range, 8, false), `A2:J${last}`);
    const after = await readList();
    const days = after.map(({ spilled }) => spilled).filter((value): value is number => typeof value === "number");
    expect(days).toEqual([...days].sort((a, b) => b - a));
    expect(new Set(after.map(({ plant }) => plant))).toEqual(new Set(before.map(({ plant }) => plant)));
    for (const { plant, spilled } of after) {
      expect(spilled, String(plant)).toBe(before.find((row) => row.plant === plant)?.spilled);
    }
    const [[heading] = []] = await values("Plants", "H1:H1");
    expect(heading).toBe("Days at rest");
  });

  it("orders them by the column of formulas row by row", async () => {
    await bench(sheet.page, (hooks, range) => hooks.sortRange("Plants", range, 10, true), `A2:J${last}`);
    const after = await readList();
    const days = after.map(({ own }) => own).filter((value): value is number => typeof value === "number");
    expect(days.length).toBeGreaterThan(20);
    expect(days).toEqual([...days].sort((a, b) => a - b));
    expect(after.map(({ own }) => own ?? "")).toEqual(after.map(({ spilled }) => spilled ?? ""));
  });
});

describe("closing and opening again", () => {
  it("finds everything, also after the server was started anew", async () => {
    const batches = await logRows("Batch log", 26);
    const care = await logRows("Care log", 11);
    const plants = await values("Plants", "A1:J32");
    await bench(sheet.page, (hooks) => hooks.kept());
    await sheet.page.close();
    await server.stop();
    server = await startBench(kept);
    sheet = await openSheet(browser, server.address);
    expect(await logRows("Batch log", 26)).toEqual(batches);
    expect(await logRows("Care log", 11)).toEqual(care);
    expect(await values("Plants", "A1:J32")).toEqual(plants);
  }, 60_000);

  it("asked for nothing from outside and threw nothing", () => {
    expect(sheet.outside).toEqual([]);
    expect(sheet.errors).toEqual([]);
  });
});
