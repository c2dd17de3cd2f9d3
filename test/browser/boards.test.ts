/** Boards and sorting in a real browser: made from the panel, found after a rename, and days at rest that survive both sorts. */

import { beforeAll, describe, expect, it } from "vitest";
import { objections } from "./axe.ts";
import { standingSheet } from "./standing-sheet.ts";
import { bench } from "./workbench.ts";

/** Formulas over the whole log take their time on a busy machine. */
const LATE = { timeout: 15_000 };

const sheet = standingSheet(async (opened) => {
  opened.page.setDefaultTimeout(30_000);
  await opened.panel.getByRole("button", { name: "Sheet", exact: true }).click();
});
const { values, type } = sheet;

const tabs = () => bench(sheet.page, (hooks) => hooks.tabs());

async function makeBoards(): Promise<string> {
  await sheet.panel.getByRole("button", { name: "Make the boards" }).click();
  const said = sheet.panel.locator("main .outcome.done");
  await said.waitFor();
  const words = (await said.textContent()) ?? "";
  await bench(sheet.page, (hooks) => hooks.settled());
  return words;
}

/** Days since the last disturbing row of each plant, by a plain look through the log and the events; row by row, without the add-on. */
async function restByLog(): Promise<Map<string, number>> {
  const events = new Map((await values("Events", "A2:B60")).map(([event, yes]) => [event, yes]));
  const [headings = [], ...rows] = await values("Care log", "A1:L6000");
  const at = (heading: string) => headings.indexOf(heading);
  const [[today] = []] = await values("Settings", "B2:B2");
  const gone = new Set(rows.map((row) => row[at("Corrects")]).filter((id) => id !== null && id !== ""));
  const last = new Map<string, number>();
  for (const row of rows) {
    const disturbs = events.get(row[at("Event")] ?? null) === "yes" && !gone.has(row[at("Id")] ?? null);
    const [day, plant] = [row[at("Date")], String(row[at("Plant")])];
    if (disturbs && typeof day === "number") last.set(plant, Math.max(last.get(plant) ?? 0, day));
  }
  return new Map([...last].map(([plant, day]) => [plant, Number(today) - day]));
}

/** Serial numbers count from 1899-12-30, which is 25,569 days before 1970-01-01. */
const isoOf = (serial: unknown): string => new Date((Number(serial) - 25_569) * 86_400_000).toISOString().slice(0, 10);

async function board(tab: string): Promise<(string | number | boolean | null)[][]> {
  return (await values(tab, "A1:E60")).filter(([plant]) => plant !== null && plant !== "");
}

describe("the root board", () => {
  it("of the sample is taken as it is, and found after it was renamed", async () => {
    const before = await tabs();
    expect(await makeBoards()).toBe("The boards are there; nothing had to be done.");
    await bench(sheet.page, (hooks) => hooks.renameTab("Root board", "Wall in the hall"));
    expect(await makeBoards()).toBe("The boards are there; nothing had to be done.");
    expect(await tabs()).toEqual(before.map((name) => (name === "Root board" ? "Wall in the hall" : name)));
  });

  it("is made anew where there is none, spills over its tab and says each state in a word", async () => {
    await bench(sheet.page, (hooks) => {
      const book = hooks.services.SpreadsheetApp.getActiveSpreadsheet();
      const old = book.getSheetByName("Wall in the hall");
      if (old) book.deleteSheet(old);
    });
    expect(await makeBoards()).toBe("Made “Root board”.");
    await expect.poll(async () => (await board("Root board")).length, LATE).toBe(32);
    const [headings, ...rows] = await board("Root board");
    expect(headings).toEqual(["Plant", "Days at rest", "Last event", "Date", "Roots"]);
    const rest = await restByLog();
    for (const [plant, days, , , word] of rows) {
      expect(days || undefined, String(plant)).toBe(rest.get(String(plant)));
      const none = !rest.has(String(plant));
      // 180 days is what the sample's Settings say.
      expect(word).toBe(none ? "No disturbance on record" : Number(days) < 180 ? "Leave alone" : "Rested long enough");
    }
    const days = rows.flatMap(([, each]) => (typeof each === "number" ? [each] : []));
    expect(days).toEqual([...days].sort((a, b) => b - a));
  });

  it("follows the log by itself", async () => {
    const [[, oldest] = []] = (await board("Root board")).slice(1);
    const [plant] = (await board("Root board"))[1] ?? [];
    expect(Number(oldest)).toBeGreaterThan(180);
    const end = (await values("Care log", "B1:B6000")).findIndex(([day]) => day === null) + 1;
    const [[today] = []] = await values("Settings", "B2:B2");
    await type("Care log", `B${end}`, isoOf(today));
    await type("Care log", `C${end}`, String(plant));
    await type("Care log", `D${end}`, "Repot");
    await expect
      .poll(async () => (await board("Root board")).find(([name]) => name === plant)?.slice(1, 5), LATE)
      .toEqual([0, "Repot", today, "Leave alone"]);
  });
});

describe("the due board", () => {
  const due = async () => (await values("Due board", "A1:D200")).filter((row) => row.some((cell) => cell !== null));

  it("lists what is due with its reason, each kind in a word", async () => {
    const [headings, ...rows] = await due();
    expect(headings).toEqual(["Plant", "Due", "Since", "Why"]);
    expect(rows.length).toBeGreaterThan(0);
    const plants = new Set((await values("Plants", "A2:A32")).map(([plant]) => plant));
    for (const [plant, kind, since, why] of rows) {
      if (kind === "Look again") expect(plant ?? "").toBe("");
      else expect(plants, String(plant)).toContain(plant);
      expect(["Top up", "Flush", "Change", "Pot up", "Look at", "Look again"]).toContain(kind);
      expect(typeof since).toBe("number");
      expect(String(why).length).toBeGreaterThan(20);
    }
  });

  it("a plant that is topped up is no longer thirsty", async () => {
    const thirsty = (await due()).find(([, kind]) => kind === "Top up")?.[0];
    expect(thirsty).toBeTruthy();
    const end = (await values("Care log", "B1:B6000")).findIndex(([day]) => day === null) + 1;
    const [[today] = []] = await values("Settings", "B2:B2");
    await type("Care log", `B${end}`, isoOf(today));
    await type("Care log", `C${end}`, String(thirsty));
    await type("Care log", `D${end}`, "Top up");
    await type("Care log", `E${end}`, "200");
    await expect
      .poll(async () => (await due()).some(([plant, kind]) => plant === thirsty && kind === "Top up"), LATE)
      .toBe(false);
  });
});

describe("a plant tab of one's own", () => {
  const OWN = "Green things";
  const names = [
    "Big monstera",
    "Snake plant",
    "Calathea",
    "Weeping fig",
    "Inch plant",
    "Peace lily, large",
    "Arrowhead",
  ];
  const rows = () => values(OWN, `A2:C${names.length + 1}`);

  beforeAll(async () => {
    await bench(sheet.page, (hooks) => {
      hooks.services.SpreadsheetApp.getActiveSpreadsheet().insertSheet("Green things");
    });
    await type(OWN, "A1", "Who");
    for (const [at, name] of names.entries()) await type(OWN, `A${at + 2}`, name);
    const log = "'Care log'!$A$1:$L, Settings!$B$2";
    await type(OWN, "B1", `=ROOT_REST(A1:A, ${log}, "Days at rest")`);
    await type(OWN, "C1", "By row");
    for (const at of names.keys()) await type(OWN, `C${at + 2}`, `=ROOT_REST($A${at + 2}, ${log})`);
    await bench(sheet.page, (hooks) => hooks.settled());
  }, 60_000);

  const check = async (ascending: boolean, column: 1 | 2) => {
    const rest = await restByLog();
    const now = await rows();
    expect(now.map(([name]) => name).sort()).toEqual([...names].sort());
    for (const [name, inHeading, byRow] of now) {
      expect([inHeading, byRow], String(name)).toEqual([rest.get(String(name)), rest.get(String(name))]);
    }
    const days = now.map((row) => Number(row[column]));
    expect(days).toEqual([...days].sort((a, b) => (ascending ? a - b : b - a)));
    expect((await values(OWN, "B1:B1"))[0]?.[0]).toBe("Days at rest");
  };

  it.each([true, false])("sorts by the formula in the heading row (ascending: %s)", async (ascending) => {
    await bench(sheet.page, (hooks, up) => hooks.sortRange("Green things", "A2:C8", 2, up), ascending);
    await check(ascending, 1);
  });

  it.each([true, false])("sorts by a formula in each row (ascending: %s)", async (ascending) => {
    await bench(sheet.page, (hooks, up) => hooks.sortRange("Green things", "A2:C8", 3, up), ascending);
    await check(ascending, 2);
  });
});

it("the section passes axe, and nothing was asked for from outside", async () => {
  const frame = await (await sheet.page.locator("#side iframe").elementHandle())?.contentFrame();
  expect(frame && (await objections(frame))).toEqual([]);
  expect([sheet.outside, sheet.errors]).toEqual([[], []]);
});
