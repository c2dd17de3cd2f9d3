/** The set-up of a sheet of the first version, failing at every call by night and at some by day: the next one finishes it. */

import { expect, test } from "vitest";
import type { MemoryGrid } from "../../sample-sheet/workbench/standin/memory.ts";
import type { PaperScreen } from "../../sample-sheet/workbench/standin/ui.ts";
import { setUpTabs } from "../../src/host/menu.ts";
import { copyGrid, differing, stateOf } from "./copy.ts";
import { byNight } from "./draws.ts";
import { FAULTS, type Fault, type Trial, trialOver } from "./faults.ts";
import { LAYOUTS, type Layout } from "./layouts.ts";

const KINDS = Object.keys(FAULTS) as Fault[];
const STEP = byNight ? 1 : 3;

/** No versions, no column to correct by, no Meter log. */
function firstVersion(): MemoryGrid {
  const grid = copyGrid((LAYOUTS["as set up"] as Layout).make());
  for (const tab of grid.tabs()) {
    for (const { id, value } of tab.marks()) if (value.startsWith("schema:")) tab.removeMark(id);
  }
  const care = grid.tab("Care log");
  const corrects = care.marks().find(({ value }) => value === "column:Care log/Corrects")?.column;
  if (corrects !== null && corrects !== undefined) care.deleteColumns(corrects, 1);
  grid.removeTab(grid.tab("Meter log").id);
  return grid;
}

const said = (trial: Trial) => (trial.book.host.screen as PaperScreen).alerts.slice(-1)[0] ?? "";
/** Warnings cover what was there when they were made, and a second one may be made after a failure. */
const state = (grid: MemoryGrid) =>
  new Map(
    [...stateOf(grid)]
      .filter(([key]) => !/ warning |^\d+ .* colour /.test(key))
      .map(([key, value]) => [key.replace(/^\d+ /, ""), value]),
  );

test("whatever fails, the next set-up ends where an undisturbed one does, and every cell stays", () => {
  const start = firstVersion();
  const before = stateOf(start);
  const clean = trialOver(copyGrid(start));
  clean.arm(null);
  setUpTabs();
  const calls = clean.reached();
  const after = state(clean.book.grid);
  const wrong: string[] = [];
  let count = 0;
  for (let at = 1; at <= calls; at += STEP) {
    for (const fault of byNight ? KINDS : [KINDS[Math.floor(at / STEP) % KINDS.length] as Fault]) {
      count++;
      const trial = trialOver(copyGrid(start));
      trial.arm(fault, at);
      try {
        setUpTabs();
      } catch {
        // The script was ended, or its message could not be shown.
      }
      const now = stateOf(trial.book.grid);
      const spoilt = [...before.keys()].filter((key) => / \d+,\d+$/.test(key) && now.get(key) !== before.get(key));
      if (spoilt.length > 0) wrong.push(`${fault} at call ${at} changed ${spoilt.slice(0, 5).join("; ")}`);
      trial.arm(null);
      setUpTabs();
      const left = differing(state(trial.book.grid), after);
      if (left.length > 0)
        wrong.push(`${fault} at call ${at}: ${said(trial).slice(0, 80)} ${left.slice(0, 5).join("; ")}`);
    }
  }
  console.log(`Set-up: ${count} faults at ${calls} calls.`);
  expect(wrong.slice(0, 12)).toEqual([]);
}, 900_000);
