/** The menu and its items: opening does nothing else, and every failure is shown as a sentence. */

import { beforeEach, describe, expect, test, vi } from "vitest";
import { createHost, type HostOptions } from "../../sample-sheet/workbench/standin/host.ts";
import { MemoryGrid } from "../../sample-sheet/workbench/standin/memory.ts";
import { PaperScreen } from "../../sample-sheet/workbench/standin/ui.ts";
import { onInstall, onOpen, openPanel, refreshToday, setUpTabs } from "../../src/host/main.ts";

let screen: PaperScreen;
let grid: MemoryGrid;
let calls: string[];

function open(options: Partial<HostOptions> = {}) {
  const host = createHost({
    grid,
    spreadsheetTimeZone: "Europe/Zurich",
    screen,
    htmlFiles: { Sidebar: "<!doctype html><title>x</title>" },
    onCall: (name) => calls.push(name),
    ...options,
  });
  for (const [name, service] of Object.entries(host.services)) vi.stubGlobal(name, service);
  return host;
}

beforeEach(() => {
  vi.useFakeTimers({ now: Date.parse("2026-03-10T12:00:00Z"), toFake: ["Date"] });
  screen = new PaperScreen();
  grid = new MemoryGrid({ tabs: { Sheet1: {} } });
  calls = [];
});

describe("opening the spreadsheet", () => {
  test.each([
    ["onOpen", onOpen],
    ["onInstall", onInstall],
  ])("%s makes the menu without any authorisation, and nothing else", (_, run) => {
    const host = open();
    host.as("none", run);
    expect(calls).toEqual([]);
    expect(screen.menus).toHaveLength(1);
    expect(screen.menus[0]?.entries.map(({ functionName }) => functionName)).toEqual([
      "openPanel",
      null,
      "setUpTabs",
      "makeBoardTabs",
      "refreshToday",
      "archiveOldCare",
    ]);
    expect([screen.alerts, screen.sidebars]).toEqual([[], []]);
  });

  test("every menu item names a function that is there", async () => {
    const host = open();
    host.as("none", onOpen);
    const main: Record<string, unknown> = await import("../../src/host/main.ts");
    for (const { functionName } of screen.menus[0]?.entries ?? []) {
      if (functionName !== null) expect(typeof main[functionName]).toBe("function");
    }
  });
});

test("the panel is the file Sidebar", () => {
  open();
  openPanel();
  expect(screen.sidebars).toEqual([{ title: "Stillroot", html: "<!doctype html><title>x</title>" }]);
});

describe("setting up tabs", () => {
  test("says what it did, and the second time that nothing had to be done", () => {
    open();
    setUpTabs();
    setUpTabs();
    expect(screen.alerts[0]).toMatch(/^Added the tabs Plants, Care log, Events/);
    expect(screen.alerts[1]).toBe("All tabs are there; nothing had to be added.");
  });

  test("shows a sentence when somebody else is writing", () => {
    open().locks.elsewhere = true;
    setUpTabs();
    expect(screen.alerts).toEqual([expect.stringMatching(/^Somebody else was writing to this spreadsheet/)]);
    expect(grid.tabs()).toHaveLength(1);
  });

  test("shows a sentence when the spreadsheet refuses", () => {
    open({
      onCall: () => {
        throw new Error("You do not have permission to access the requested document.");
      },
    });
    setUpTabs();
    expect(screen.alerts).toEqual([
      expect.stringMatching(/^The spreadsheet did not let this be done\. It said: “You do not have permission/),
    ]);
  });
});

describe("refreshing today's date", () => {
  test("writes it as a constant, once a day", () => {
    open();
    setUpTabs();
    vi.setSystemTime(Date.parse("2026-03-11T12:00:00Z"));
    refreshToday();
    refreshToday();
    expect(screen.alerts.slice(1)).toEqual([
      "Today’s date in Settings is refreshed.",
      "Today’s date in Settings is right already.",
    ]);
    const [cells] = grid.tab("Settings").read({ row: 2, column: 2, rows: 1, columns: 1 });
    // 46092 is 2026-03-11 in days since 1899-12-30.
    expect(cells?.[0]).toMatchObject({ value: 46_092, formula: "" });
  });

  test("adds the row where it was deleted", () => {
    open();
    setUpTabs();
    grid.tab("Settings").deleteRows(2, 1);
    refreshToday();
    const { row } = grid.tab("Settings").extent();
    const [cells] = grid.tab("Settings").read({ row, column: 1, rows: 1, columns: 2 });
    expect(cells?.map(({ value }) => value)).toEqual(["Today", 46_091]);
  });

  test("says what to do where there is no Settings tab", () => {
    open();
    refreshToday();
    expect(screen.alerts).toEqual([expect.stringMatching(/^There is no tab “Settings”\. Choose “Set up tabs”/)]);
  });
});
