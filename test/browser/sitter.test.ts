/** The sitter's page in a real browser: put into the sheet, printed on A4, typed on, and compared afterwards with the log. */

import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openPanel, overflows } from "../sidebar/page.ts";
import { sheet as sheetWith } from "../sidebar/sheet.ts";
import { objections } from "./axe.ts";
import { standingSheet } from "./standing-sheet.ts";
import { bench } from "./workbench.ts";

const TAB = "Sitter’s page";

const sheet = standingSheet(async (opened) => {
  opened.page.setDefaultTimeout(30_000);
});
const { values, type } = sheet;

const isoAfter = (serial: number, days: number): string =>
  new Date((serial + days - 25_569) * 86_400_000).toISOString().slice(0, 10);

/** Rows of the table on the page, below its headings. */
async function pageRows(tab = TAB): Promise<{ row: number; cells: unknown[] }[]> {
  const all = await values(tab, "A1:F300");
  const heading = all.findIndex((row) => row[0] === "Day" && row[2] === "Plant");
  return all
    .map((cells, at) => ({ row: at + 1, cells }))
    .slice(heading + 1)
    .filter(({ cells }) => cells[0] !== null);
}

/** Sets the clock of the script alone; the page's own timers go on. */
async function setScriptClock(instant: string): Promise<void> {
  for (const frame of sheet.page.frames()) {
    await frame.evaluate((at) => {
      if (!("Stillroot" in globalThis)) return;
      const real = Date;
      globalThis.Date = new Proxy(real, {
        construct: (_, args) => (args.length === 0 ? new real(at) : new real(...(args as [number]))),
      });
    }, Date.parse(instant));
  }
}

describe("a page for a fortnight", () => {
  let today = 0;

  it("is written into a tab: each visit with its rooms and plants, amounts, batch and cautions", async () => {
    today = Number((await values("Settings", "B2:B2"))[0]?.[0]);
    const { panel } = sheet;
    await panel.getByRole("button", { name: "Go away" }).click();
    await panel.getByRole("button", { name: "Put the page into the sheet" }).click();
    await panel.getByText("Choose the first and the last day away.").waitFor();
    await panel.getByLabel("First day away").fill(isoAfter(today, 2));
    await panel.getByLabel("Last day away").fill(isoAfter(today, 15));
    await panel.getByLabel("Who comes").fill("=Mira");
    await panel.getByLabel("How to reach you").fill("the number on the fridge");
    await panel.getByRole("button", { name: "Put the page into the sheet" }).click();
    await panel.getByText(`The page is on the tab “${TAB}”.`).waitFor({ timeout: 20_000 });

    const top = (await values(TAB, "A1:A40")).map(([text]) => String(text ?? ""));
    expect(top[0]).toBe("For =Mira, who looks after the plants");
    expect(top[1]).toMatch(/^From [A-Z][a-z]{2} \d{1,2} [A-Z][a-z]{2} \d{4} to .*: 5 visits, every 3 days\.$/);
    expect(top.some((line) => line.startsWith("A litre of it holds "))).toBe(true);
    expect(top.some((line) => line.includes("not drinking water"))).toBe(true);
    expect(top.some((line) => line.includes("plugs"))).toBe(true);
    expect(top.some((line) => line.includes("the number on the fridge"))).toBe(true);

    const rows = await pageRows();
    expect(rows.length).toBeGreaterThan(20);
    const list = await values("Plants", "A2:C32");
    const place = new Map(list.map(([plant, , room]) => [plant, room]));
    const visits = [...new Set(rows.map(({ cells }) => cells[0]))];
    expect(visits).toHaveLength(5);
    for (const { cells } of rows) {
      const [, room, plant, what, amount, done] = cells;
      if (plant === null) continue;
      expect(room, String(plant)).toBe(place.get(plant as string));
      expect(what).toBe("Top up to the mark");
      expect(amount === null || (Number(amount) >= 5 && Number(amount) <= 3000)).toBe(true);
      expect(done).toBeNull();
    }
  }, 60_000);

  it("is made over while nobody typed on it, and kept once somebody did", async () => {
    const { panel } = sheet;
    const before = await bench(sheet.page, (hooks) => hooks.tabs());
    await panel.getByLabel("How often").selectOption("1");
    await panel.getByRole("button", { name: "Put the page into the sheet" }).click();
    await expect
      .poll(async () => new Set((await pageRows()).map(({ cells }) => cells[0])).size, { timeout: 15_000 })
      .toBe(14);
    expect(await bench(sheet.page, (hooks) => hooks.tabs())).toEqual(before);

    const [first] = await pageRows();
    await type(TAB, `F${first?.row}`, "done, M");
    const typed = await pageRows();
    await panel.getByLabel("How often").selectOption("4");
    await panel.getByRole("button", { name: "Put the page into the sheet" }).click();
    await panel
      .getByText(`Somebody had typed on “${TAB}”, so that tab was kept as it is.`)
      .waitFor({ timeout: 20_000 });
    expect(await pageRows()).toEqual(typed);
    expect((await pageRows(`${TAB} 2`)).length).toBeGreaterThan(10);
  }, 60_000);

  it("is compared with the log back home", async () => {
    const { panel } = sheet;
    const rows = (await pageRows(`${TAB} 2`)).filter(({ cells }) => cells[2] !== null);
    const [one, two] = rows;
    const dayOf = (cells: unknown[] | undefined, late: number): string => {
      const found = /(\d{1,2} [A-Z][a-z]{2} \d{4})$/.exec(String(cells?.[0]));
      return new Date(Date.parse(`${found?.[1]} UTC`) + late * 86_400_000).toISOString().slice(0, 10);
    };
    const end = (await values("Care log", "B1:B6000")).findIndex(([date]) => date === null) + 1;
    // The first line on its day, the second a day late and with far more water.
    for (const [at, [line, late, amount]] of [[one, 0, one?.cells[4]] as const, [two, 1, 2500] as const].entries()) {
      const row = end + at;
      await type("Care log", `B${row}`, dayOf(line?.cells, late));
      await type("Care log", `C${row}`, String(line?.cells[2]));
      await type("Care log", `D${row}`, "Top up");
      await type("Care log", `E${row}`, String(amount));
      await type("Care log", `I${row}`, "Mira");
    }
    // The sample plays on its own days, so the clock must stand on them, whatever the day of the test is.
    await setScriptClock(`${isoAfter(today, 0)}T12:00:00Z`);
    await panel.getByRole("button", { name: "Compare with the log" }).click();
    await panel.getByText(`${rows.length} lines are still to come.`).waitFor({ timeout: 20_000 });
    await setScriptClock(`${isoAfter(today, 16)}T12:00:00Z`);
    await panel.getByRole("button", { name: "Compare with the log" }).click();
    await panel
      .getByText(`Of ${rows.length} lines on the page, 2 are in the log and ${rows.length - 2} are not.`)
      .waitFor({ timeout: 20_000 });
    await panel.getByText(new RegExp(`^${two?.cells[2]}: planned for .*, done on .* by Mira\\.$`)).waitFor();
    await panel.getByText(/: 2500 mL were poured where about \d+ mL were on the page\.$/).waitFor();
    expect(await panel.locator("main .sentences li", { hasText: /^And \d+ more\.$/ }).count()).toBe(1);
  }, 60_000);

  it("the section passes axe, and nothing was asked for from outside", async () => {
    const frame = await (await sheet.page.locator("#side iframe").elementHandle())?.contentFrame();
    expect(frame && (await objections(frame))).toEqual([]);
    expect([sheet.outside, sheet.errors]).toEqual([[], []]);
  });
});

describe("on paper", () => {
  /** Twelve plants that are topped up every five days, in three rooms. */
  const loaded = () => {
    const { plants } = sheetWith();
    const rows = plants.flatMap(({ plant }) =>
      ["2026-03-13", "2026-03-08", "2026-03-03", "2026-02-26"].map((day, at) => ({
        id: `${plant} ${at}`,
        day,
        plant,
        event: "Top up",
        amountMl: 150,
        solution: "",
        ecMsCm: null,
        pH: null,
        who: "Ama",
        reason: "",
        note: "",
      })),
    );
    return sheetWith({ care: { rows, from: "2026-02-26", all: true } });
  };

  async function paper(to: string, scheme: "light" | "dark"): Promise<Page> {
    const answer = loaded();
    const { page } = await openPanel(sheet.browser, {
      behave: (request) => (request.ask === "load" ? { answer: { ok: true, reply: answer } } : { lost: true }),
      scheme,
    });
    await page.getByRole("button", { name: "Go away" }).click();
    await page.getByLabel("First day away").fill("2026-03-15");
    await page.getByLabel("Last day away").fill(to);
    await page.getByLabel("Who comes").fill("Mira");
    await page.getByRole("button", { name: "Print the page here" }).waitFor();
    expect(await overflows(page)).toBe(false);
    return page;
  }

  /** Sheets of a PDF with their size in points; Chromium writes pages uncompressed. */
  const sheetsOf = (pdf: Buffer): number[][] => {
    const text = pdf.toString("latin1");
    const pages = text.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    const boxes = [...text.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)].map(([, w, h]) => [
      Number(w),
      Number(h),
    ]);
    expect(boxes.length).toBe(pages);
    return boxes;
  };

  // ISO 216: A4 is 210 × 297 mm, which is 595.3 × 841.9 points of 1/72 inch.
  const isA4 = ([width = 0, height = 0]: number[]) => Math.abs(width - 595.3) < 1 && Math.abs(height - 841.9) < 1;

  it.each([
    ["2026-03-21", 1, 2],
    ["2026-04-20", 3, 8],
  ])("until %s it fits %i to %i sheets of A4, with nothing of the panel on them", async (to, least, most) => {
    const page = await paper(to, "dark");
    const sheets = sheetsOf(await page.pdf({ preferCSSPageSize: true }));
    expect(sheets.length).toBeGreaterThanOrEqual(least);
    expect(sheets.length).toBeLessThanOrEqual(most);
    expect(sheets.every(isA4)).toBe(true);

    // 210 mm less two margins of 14 mm, at 96 pixels an inch.
    await page.setViewportSize({ width: Math.floor(((210 - 28) / 25.4) * 96), height: 1000 });
    await page.emulateMedia({ media: "print" });
    expect(await overflows(page)).toBe(false);
    for (const name of ["Sections", "First day away"])
      expect(await page.getByLabel(name).first().isVisible()).toBe(false);
    const article = page.locator("article.paper");
    expect(await article.isVisible()).toBe(true);
    expect(await article.evaluate((each) => getComputedStyle(each).color)).toBe("rgb(0, 0, 0)");
    expect(await article.getByRole("heading", { level: 1 }).textContent()).toBe("For Mira, who looks after the plants");
    await page.context().close();
  });

  it("lists per day and room what is in the table of the tab", async () => {
    const page = await paper("2026-03-21", "light");
    await page.emulateMedia({ media: "print" });
    // All full on the 14th and 150 mL in five days: due on the 19th, so poured on the visit of the 18th, 30 mL a day for four days.
    const days = await page.locator("article.paper caption").allTextContents();
    expect(days).toEqual(["Sun 15 Mar 2026", "Wed 18 Mar 2026", "Sat 21 Mar 2026"]);
    const second = page.locator("article.paper table").nth(1);
    expect(await second.locator("tbody td:nth-child(3)").allTextContents()).toEqual(Array(12).fill("120 mL"));
    expect(await second.locator("tbody th").allTextContents()).toEqual(["Kitchen sill", "North room", "Stairwell"]);
    expect(await page.locator("article.paper table").first().textContent()).toContain("just look round");
    expect(await objections(page)).toEqual([]);
    await page.context().close();
  });
});
