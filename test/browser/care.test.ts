/** Care in a real browser: twelve plants in one press, down the shelf by keyboard, doubles, reasons, taking back. */

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { describe, expect, it } from "vitest";
import { standingSheet } from "./standing-sheet.ts";
import { bench } from "./workbench.ts";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const sheet = standingSheet(async (opened) => {
  const { panel } = opened;
  await panel.getByRole("button", { name: "Set up" }).click();
  await panel.getByLabel("Your name").fill("Ines");
  await panel.getByRole("button", { name: "Save name" }).click();
  await panel.getByText("Rows you log now say Ines.").waitFor();
  await panel.getByRole("button", { name: "Log care" }).first().click();
});
const { values } = sheet;

interface LogRow {
  readonly id: unknown;
  readonly day: number;
  readonly plant: string;
  readonly event: string;
  readonly amount: unknown;
  readonly who: unknown;
  readonly reason: unknown;
  readonly corrects: unknown;
}

/** The Care log by its headings, rows with a plant only. */
async function logRows(): Promise<LogRow[]> {
  const [headings = [], ...rows] = await values("Care log", "A1:Z");
  const at = (heading: string) => headings.indexOf(heading);
  return rows
    .filter((row) => String(row[at("Plant")] ?? "") !== "")
    .map((row) => ({
      id: row[at("Id")],
      day: Number(row[at("Date")]),
      plant: String(row[at("Plant")]),
      event: String(row[at("Event")]),
      amount: row[at("Amount mL")],
      who: row[at("Who")],
      reason: row[at("Reason")],
      corrects: row[at("Corrects")],
    }));
}

const logCare = () => sheet.panel.locator("main").getByRole("button", { name: "Log care" });

/** What axe finds wrong in the panel as it is now. */
async function barriers(): Promise<string[]> {
  const frame = sheet.page.frames().find((each) => each.parentFrame() !== null && each.url() !== "about:blank") ?? null;
  const inner = (await sheet.page.locator("#side iframe").elementHandle())?.contentFrame();
  const panel = (await inner) ?? frame;
  if (panel === null) throw new Error("The panel's frame was not found.");
  await panel.evaluate(AXE);
  return panel.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: { id: string; help: string }[] }> };
    };
    return (await axe.run()).violations.map(({ id, help }) => `${id}: ${help}`);
  });
}

describe("twelve plants topped up in one press", () => {
  it("are twelve rows, each with what that plant got the last time", async () => {
    const before = await logRows();
    const { panel } = sheet;
    const boxes = panel.locator(".ticks").getByRole("checkbox");
    for (let box = 0; box < 12; box++) await boxes.nth(box).check();
    await panel.getByText("12 plants chosen.").waitFor();
    await logCare().click();
    await panel.getByText(/^Logged Top up for 12 plants on/).waitFor();
    const added = (await logRows()).slice(before.length);
    expect(added).toHaveLength(12);
    expect(new Set(added.map(({ id }) => id)).size).toBe(12);
    const names = (await values("Plants", "A2:A13")).map(([name]) => String(name));
    expect(added.map(({ plant }) => plant)).toEqual(names);
    for (const { plant, amount, who, event } of added) {
      // The newest top-up by date, the one further down of a day: looked up without the add-on.
      const earlier = before
        .map((row, at) => ({ ...row, at }))
        .filter((row) => row.plant === plant && row.event === "Top up" && typeof row.amount === "number")
        .sort((a, b) => b.day - a.day || b.at - a.at);
      expect([plant, amount]).toEqual([plant, earlier[0]?.amount ?? null]);
      expect([event, who]).toEqual(["Top up", "Ines"]);
    }
  });

  it("are taken back together by a marked row each, and stay in the log", async () => {
    const before = await logRows();
    const { panel } = sheet;
    await panel.getByRole("button", { name: "Take back Top up for 12 plants" }).click();
    await panel.getByText(/^Taken back: Top up for 12 plants\./).waitFor();
    const after = await logRows();
    expect(after.slice(0, before.length)).toEqual(before);
    const marks = after.slice(before.length);
    expect(marks.map(({ event, who }) => `${event} ${who}`)).toEqual(new Array(12).fill("Taken back Ines"));
    expect(new Set(marks.map(({ corrects }) => corrects))).toEqual(new Set(before.slice(-12).map(({ id }) => id)));
    await panel.getByText("Reading the sheet…").waitFor({ state: "detached" });
    expect(await panel.getByRole("button", { name: "Take back Top up for 12 plants" }).count()).toBe(0);
  });
});

describe("down the shelf by keyboard", () => {
  it("takes one press a plant, keeps the focus, and another amount where it is typed", async () => {
    const { panel } = sheet;
    await panel.getByLabel("Place").selectOption("Kitchen");
    await panel.getByRole("button", { name: "Go through them one by one" }).click();
    const first = (await panel.locator(".round strong").textContent()) ?? "";
    await panel.getByLabel("Amount, mL of").fill("95");
    await panel.getByRole("button", { name: "Top up done, next" }).focus();
    await sheet.page.keyboard.press("Enter");
    const second = (await panel.locator(".round strong").textContent()) ?? "";
    expect(second).not.toBe(first);
    await sheet.page.keyboard.press("Enter");
    await sheet.page.keyboard.press("Tab");
    await sheet.page.keyboard.press("Enter");
    await panel.getByText("4 of").waitFor();
    await panel.getByText("2 plants chosen.").waitFor();
    expect(await barriers()).toEqual([]);
    await logCare().click();
    await panel.getByText(/^Logged Top up for 2 plants on/).waitFor();
    const added = (await logRows()).slice(-2);
    expect(added.map(({ plant }) => plant)).toEqual([first, second]);
    expect(added[0]?.amount).toBe(95);
    await panel.getByRole("button", { name: "Show them as a list" }).click();
    await panel.getByLabel("Place").selectOption("");
  });
});

describe("what somebody else did today", () => {
  it("is noticed before anything is written, and can be left out", async () => {
    const { panel, page } = sheet;
    const [[one], [other]] = (await values("Plants", "A2:A3")) as [string[], string[]];
    const rows = (await values("Care log", "A1:D")).filter(([, day]) => day !== null && day !== "").length;
    const [[today] = []] = await values("Settings", "B2:B2");
    const iso = new Date((Number(today) - 25_569) * 86_400_000).toISOString().slice(0, 10);
    const type = (cell: string, text: string) =>
      bench(page, (hooks, [c, x]) => hooks.setCell("Care log", c, x), [`${cell}${rows + 1}`, text] as [string, string]);
    await type("B", iso);
    await type("C", String(one));
    await type("D", "Flush in place");
    await type("I", "Tomas");
    const before = await logRows();
    await panel.getByLabel("What happened").selectOption("Flush in place");
    for (const name of [one, other]) await panel.getByRole("checkbox", { name: new RegExp(`^${name}`) }).check();
    await logCare().click();
    await panel.getByText(`Tomas logged Flush in place for ${one} today already. Nothing was written yet.`).waitFor();
    expect(await logRows()).toEqual(before);
    expect(await barriers()).toEqual([]);
    await panel.getByRole("button", { name: "Leave it out, log the other 1" }).click();
    await panel.getByText(`Logged Flush in place for ${other} on`).waitFor();
    expect((await logRows()).slice(before.length).map(({ plant }) => plant)).toEqual([other]);
  });
});

describe("roots at rest for less than Settings asks for", () => {
  it("are disturbed with a reason only, and the reason is kept", async () => {
    const { panel } = sheet;
    const rest = await values("Plants", "A2:H32");
    const short = rest.find(([, , , , , , , days]) => typeof days === "number" && days > 0 && days < 180);
    const name = String(short?.[0]);
    expect(short).toBeDefined();
    const before = await logRows();
    await panel.getByLabel("What happened").selectOption("Decay removed");
    await panel.getByLabel("Find by name").fill(name);
    await panel.getByRole("checkbox", { name: new RegExp(`^${name}`) }).check();
    expect(await panel.getByLabel("Why now").count()).toBe(0);
    await panel.getByLabel("What happened").selectOption("Root trim");
    await panel.getByText(`${name} has had ${short?.[7]} of the 180 days of rest that Settings asks for.`).waitFor();
    await logCare().click();
    await panel.getByText(/Say why the roots are disturbed now: rot, pests,/).waitFor();
    expect(await logRows()).toEqual(before);
    await panel.getByLabel("Why now").selectOption("Another reason");
    await panel.getByLabel("Reason", { exact: true }).fill("Fell off the shelf");
    expect(await barriers()).toEqual([]);
    await logCare().click();
    await panel.getByText(`Logged Root trim for ${name} on`).waitFor();
    expect((await logRows()).slice(before.length)).toMatchObject([
      { plant: name, event: "Root trim", reason: "Fell off the shelf" },
    ]);
  });

  it("can have their entry corrected by a new row that counts in its place", async () => {
    const { panel } = sheet;
    const before = await logRows();
    const name = before[before.length - 1]?.plant ?? "";
    await panel.getByRole("button", { name: `Correct Root trim for ${name}` }).click();
    await panel.getByText(`This corrects an entry for ${name}.`).waitFor();
    await panel.getByLabel("Note").fill("Two roots only");
    await logCare().click();
    await panel.getByText(`Corrected: Root trim for ${name} on`).waitFor();
    const after = await logRows();
    expect(after).toHaveLength(before.length + 1);
    expect(after[before.length]?.corrects).toBe(before[before.length - 1]?.id);
    expect(after[before.length]?.reason).toBe("Fell off the shelf");
    await panel.getByText("Reading the sheet…").waitFor({ state: "detached" });
    expect(await panel.getByRole("button", { name: `Take back Root trim for ${name}` }).count()).toBe(1);
  });
});

describe("a plant list of one's own", () => {
  it("is looked into, asked about, and its past repots are written after the press, once", async () => {
    const { panel, page } = sheet;
    await bench(page, (hooks) => {
      const list = hooks.services.SpreadsheetApp.getActiveSpreadsheet().insertSheet("Shelf list");
      list.getRange(1, 1, 4, 4).setValues([
        ["Plant name", "Shelf", "Pot", "Re-potted"],
        ["Pothos", "Top", 14, "'3/4/2025"],
        ["Philodendron", "Top", 12, "'12/11/2024"],
        ["Dracaena", "Floor", 21, "'5/5/2023"],
      ]);
    });
    const before = await logRows();
    await panel.getByRole("button", { name: "Set up" }).click();
    await panel.getByRole("button", { name: "Choose another tab" }).click();
    await panel.getByLabel("Tab with your plants").selectOption("Shelf list");
    await panel.getByText("Looked at 3 rows.").waitFor();
    expect(await panel.getByLabel("Plant", { exact: true }).inputValue()).toBe("Plant name");
    expect(await panel.getByLabel("Pot mL").inputValue()).toBe("");
    await panel.getByLabel("Pot mL").selectOption("Pot");
    await panel.getByText("“Pot” holds “14”, which is no volume in mL, perhaps a width.").waitFor();
    await panel.getByRole("button", { name: /^Write/ }).click();
    await panel.getByText("Say first how “3/4/2025” in “Re-potted” is meant.").waitFor();
    expect(await logRows()).toEqual(before);
    await panel.getByLabel("How “3/4/2025” is meant").selectOption("day first");
    expect(await barriers()).toEqual([]);
    await panel.getByRole("button", { name: "Write 3 entries into the care log" }).click();
    await panel.getByText("Wrote 3 entries into the care log.").waitFor();
    const added = (await logRows()).slice(before.length);
    // Serial numbers count from 1899-12-30: 3 April 2025 is 45750, 12 November 2024 is 45608, 5 May 2023 is 45051.
    expect(added.map(({ plant, event, day }) => `${plant} ${event} ${day}`)).toEqual([
      "Pothos Repot 45750",
      "Philodendron Repot 45608",
      "Dracaena Repot 45051",
    ]);
    await panel.getByText("All 3 are in the log already").waitFor();
    await panel.getByRole("button", { name: "Write them into the care log" }).click();
    await panel.getByText("Wrote 0 entries into the care log. 3 entries stood there already.").waitFor();
    expect(await logRows()).toHaveLength(before.length + 3);
  });
});

it("asked for nothing from outside and threw nothing", () => {
  expect(sheet.outside).toEqual([]);
  expect(sheet.errors).toEqual([]);
});
