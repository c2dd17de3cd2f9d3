/** Starts the workbench as `npm start` does, on a file of the test's own, and opens its page and its panel. */

import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, FrameLocator, Page } from "playwright-core";
import type { WorkbenchHooks } from "../../sample-sheet/workbench/page/hooks.ts";

const START_MS = 60_000;

export interface Bench {
  readonly address: string;
  stop(): Promise<void>;
}

/** `kept`: the file that changes are kept in; the same file again is a restart. */
export async function startBench(kept: string): Promise<Bench> {
  const server: ChildProcess = spawn(process.execPath, ["--import", "tsx", "sample-sheet/workbench/serve.ts"], {
    env: { ...process.env, KEPT: kept, PORT: "0", BROWSER: "none" },
    stdio: ["ignore", "pipe", "inherit"],
  });
  const address = await new Promise<string>((resolve, reject) => {
    const late = setTimeout(() => reject(new Error("The workbench did not start.")), START_MS);
    let said = "";
    server.stdout?.on("data", (bytes: Buffer) => {
      said += bytes.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(said);
      if (found === null) return;
      clearTimeout(late);
      resolve(found[0]);
    });
    server.on("exit", (code) => reject(new Error(`The workbench ended with ${code}: ${said}`)));
  });
  const stop = (): Promise<void> =>
    new Promise((resolve) => {
      server.removeAllListeners("exit");
      server.on("exit", () => resolve());
      server.kill();
    });
  return { address, stop };
}

export interface OpenSheet {
  readonly page: Page;
  readonly panel: FrameLocator;
  /** Addresses asked for that are not the workbench's own. */
  readonly outside: readonly string[];
  /** Errors the page threw. */
  readonly errors: readonly string[];
}

export async function openSheet(browser: Browser, address: string): Promise<OpenSheet> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.setDefaultTimeout(8_000);
  const outside: string[] = [];
  const errors: string[] = [];
  page.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(address) && !/^(data|blob|about):/.test(url)) outside.push(url);
  });
  page.on("pageerror", (error) => errors.push(error.message));
  await page.goto(`${address}?delay=0`);
  await bench(page, (hooks) => hooks.ready);
  return { page, panel: page.frameLocator("#side iframe"), outside, errors };
}

/** Asks the page's hooks; the function runs in the page and sees only its second argument. */
export function bench<T, A = undefined>(
  page: Page,
  ask: (hooks: WorkbenchHooks, given: A) => T | Promise<T>,
  given?: A,
): Promise<T> {
  return page.evaluate(`(${ask.toString()})(window.workbench, ${JSON.stringify(given ?? null)})`) as Promise<T>;
}

/** A folder that is gone after the tests. */
export function temporaryFolder(): { path: string; remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), "stillroot-"));
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}
