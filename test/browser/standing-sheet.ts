/** The workbench of one test file: its server, browser and open sheet stand before the first test and are gone after the last. */

import { join } from "node:path";
import type { Browser, Frame } from "playwright-core";
import { afterAll, beforeAll } from "vitest";
import { launch } from "./chromium.ts";
import { type Bench, bench, type OpenSheet, openSheet, startBench, temporaryFolder } from "./workbench.ts";

export interface StandingSheet extends OpenSheet {
  readonly browser: Browser;
  /** A folder of this file's own. */
  readonly folder: string;
  /** The panel as a frame, for axe and for its own window. */
  panelFrame(): Promise<Frame>;
  /** What cells show. */
  values(tab: string, range: string): Promise<(string | number | boolean | null)[][]>;
  /** Types into a cell as a person does. */
  type(tab: string, cell: string, text: string): Promise<unknown>;
  /** Rows of a tab by heading, those whose first cell is filled; blank cells are null. */
  records(tab: string): Promise<Record<string, unknown>[]>;
}

/** Reads columns up to here; no tab of the add-on is wider. */
const LAST_COLUMN = "AL";

/** Call it at the top of a test file. `ready` brings the panel where the tests begin. */
export function standingSheet(ready?: (sheet: StandingSheet) => Promise<unknown>): StandingSheet {
  const folder = temporaryFolder();
  let browser: Browser | null = null;
  let server: Bench | null = null;
  let open: OpenSheet | null = null;
  const there = <T>(value: T | null): T => {
    if (value === null) throw new Error("The workbench stands only while tests run.");
    return value;
  };
  const values: StandingSheet["values"] = (tab, range) =>
    bench(there(open).page, (hooks, [t, r]) => hooks.getValues(t, r), [tab, range] as [string, string]);
  const sheet: StandingSheet = {
    get page() {
      return there(open).page;
    },
    get panel() {
      return there(open).panel;
    },
    get outside() {
      return there(open).outside;
    },
    get errors() {
      return there(open).errors;
    },
    get browser() {
      return there(browser);
    },
    folder: folder.path,
    async panelFrame() {
      const handle = await there(open).page.locator("#side iframe").elementHandle();
      const frame = await handle?.contentFrame();
      if (frame == null) throw new Error("The panel should be there.");
      return frame;
    },
    values,
    type: (tab, cell, text) =>
      bench(there(open).page, (hooks, [t, c, x]) => hooks.setCell(t, c, x), [tab, cell, text] as [
        string,
        string,
        string,
      ]),
    async records(tab) {
      const [headings = [], ...rows] = await values(tab, `A1:${LAST_COLUMN}`);
      return rows
        .filter((row) => row[0] !== null && row[0] !== "")
        .map((row) => Object.fromEntries(row.map((value, at) => [String(headings[at]), value])));
    },
  };
  beforeAll(async () => {
    browser = await launch();
    server = await startBench(join(folder.path, "kept.json"));
    open = await openSheet(browser, server.address);
    await ready?.(sheet);
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await server?.stop();
    folder.remove();
  });
  return sheet;
}
