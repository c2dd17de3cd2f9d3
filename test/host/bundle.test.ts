/** The shipped Code.js in a realm of its own, over the stand-in: Dates from there, no Node, and the same rows. */

import { readFileSync } from "node:fs";
import vm from "node:vm";
import { expect, test } from "vitest";
import { createHost } from "../../sample-sheet/workbench/standin/host.ts";
import { MemoryGrid } from "../../sample-sheet/workbench/standin/memory.ts";
import { careEntry } from "../sheet/workbook.ts";

type Script = Record<"setUpTabs" | "onOpen" | "refreshToday", () => void> & { panelRequest: (json: unknown) => string };

function load() {
  const grid = new MemoryGrid({ tabs: { Sheet1: {} } });
  const context = vm.createContext({});
  const makeDate = vm.runInContext("(instant) => new Date(instant)", context) as (instant: number) => Date;
  const calls: string[] = [];
  const host = createHost({
    grid,
    spreadsheetTimeZone: "America/New_York",
    scriptTimeZone: "Europe/Zurich",
    makeDate,
    onCall: (name) => calls.push(name),
  });
  for (const [name, service] of Object.entries(host.services)) (context as Record<string, unknown>)[name] = service;
  const code = readFileSync(new URL("../../dist/Code.js", import.meta.url), "utf8");
  host.as("loading", () => vm.runInContext(code, context));
  return { grid, host, calls, script: context as unknown as Script };
}

test("loading the script reaches nothing, and the menu works without authorisation", () => {
  const { host, calls, script } = load();
  host.as("none", () => script.onOpen());
  expect(calls).toEqual([]);
});

test("rows go in and come back through the shipped file", () => {
  const { grid, script } = load();
  const ask = (request: object) =>
    JSON.parse(script.panelRequest(JSON.stringify(request))) as { ok: boolean; reply: Record<string, unknown> };
  script.setUpTabs();
  grid.tab("Plants").write(2, 1, [[{ value: "Hoya" }]]);
  const entry = careEntry({ plant: "Hoya", event: "Repot", day: "2020-02-29", note: "=1+1" });
  expect(ask({ ask: "log care", who: "'tis", entries: [entry] }).reply).toEqual({
    written: 1,
    already: 0,
    differing: [],
  });
  expect(ask({ ask: "log care", who: "'tis", entries: [entry] }).reply).toEqual({
    written: 0,
    already: 1,
    differing: [],
  });
  const loaded = ask({ ask: "load" }).reply;
  expect(loaded.problems).toEqual([]);
  const [plant] = loaded.plants as { plant: string; lastEvent: string; restDays: number }[];
  const today = Date.parse(`${String(loaded.today)}T00:00:00Z`);
  expect(plant).toMatchObject({
    plant: "Hoya",
    lastEvent: "Repot",
    restDays: (today - Date.parse("2020-02-29T00:00:00Z")) / 86_400_000,
  });
  const note = grid.tab("Care log").read({ row: 2, column: 11, rows: 1, columns: 1 })[0]?.[0];
  expect(note).toMatchObject({ value: "=1+1", formula: "" });
});
