/** Opens the built panel in Chromium at 300 px, with a sheet of the test's own behind it. */

import { readFileSync } from "node:fs";
import { type Browser, chromium, type Page } from "playwright-core";
import { type Request, request as requestSchema } from "../../src/app/contract.ts";

/** What the fake sheet does with one request: answers, loses the answer, or throws. */
export type Behaviour = { readonly answer: unknown } | { readonly lost: true } | { readonly thrown: string };

export interface OpenPanel {
  readonly page: Page;
  /** Every request so far, oldest first, checked against the contract. */
  readonly requests: readonly Request[];
  /** Addresses the page asked for besides itself. */
  readonly outside: readonly string[];
  close(): Promise<void>;
}

const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
const ADDRESS = "https://panel.example/";

export function startBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: FLAGS });
}

/** In the page: a runner with the host's shape that hands requests out and answers in. */
function installHost(): void {
  type Heard = (value: unknown) => void;
  interface Runner {
    withSuccessHandler(heard: Heard): Runner;
    withFailureHandler(heard: Heard): Runner;
    panelRequest(json: string): void;
  }
  const page = globalThis as unknown as {
    askTheSheet(json: string): Promise<{ answer?: unknown; thrown?: string }>;
    google: unknown;
  };
  const runner = (success: Heard, failure: Heard): Runner => ({
    withSuccessHandler: (heard) => runner(heard, failure),
    withFailureHandler: (heard) => runner(success, heard),
    panelRequest: (json) => {
      page.askTheSheet(json).then((outcome) => {
        if (outcome.thrown === undefined) success(outcome.answer ?? null);
        else failure(new Error(outcome.thrown));
      });
    },
  });
  page.google = {
    script: {
      run: runner(
        () => undefined,
        () => undefined,
      ),
    },
  };
}

export interface PanelOptions {
  readonly behave: (request: Request, number: number) => Behaviour | Promise<Behaviour>;
  readonly scheme?: "light" | "dark";
  readonly html?: string;
  readonly height?: number;
}

export async function openPanel(browser: Browser, options: PanelOptions): Promise<OpenPanel> {
  const html = readFileSync(options.html ?? new URL("../../dist/Sidebar.html", import.meta.url), "utf8");
  const context = await browser.newContext({
    viewport: { width: 300, height: options.height ?? 700 },
    colorScheme: options.scheme ?? "light",
    reducedMotion: "reduce",
  });
  const page = await context.newPage();
  const requests: Request[] = [];
  const outside: string[] = [];
  await page.route("**/*", (route) => {
    const address = route.request().url();
    if (address === ADDRESS) return route.fulfill({ contentType: "text/html", body: html });
    outside.push(address);
    return route.abort();
  });
  await page.exposeFunction("askTheSheet", async (json: string) => {
    const request = requestSchema.parse(JSON.parse(json));
    requests.push(request);
    const behaviour = await options.behave(request, requests.length);
    if ("thrown" in behaviour) return { thrown: behaviour.thrown };
    return { answer: "lost" in behaviour ? null : JSON.stringify(behaviour.answer) };
  });
  await page.addInitScript(installHost);
  await page.goto(ADDRESS);
  return { page, requests, outside, close: () => context.close() };
}

/** True when something sticks out to the side and the panel would have to be scrolled. */
export function overflows(page: Page): Promise<boolean> {
  return page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);
}
