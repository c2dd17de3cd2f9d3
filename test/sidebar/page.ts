/** Opens the built panel in Chromium at 300 px, with a sheet of the test's own behind it. */

import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import type { FunctionHelp } from "../../sidebar/formulas.ts";
import type { Request } from "../../src/app/contract.ts";
import { requestSchemas } from "../../src/app/requests.ts";

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

const ADDRESS = "https://panel.example/";

/** Runs in the page, so it is kept as text: a runner of the host's shape that hands requests out and answers in. */
const HOST = `{
  const runner = (success, failure) => ({
    withSuccessHandler: (heard) => runner(heard, failure),
    withFailureHandler: (heard) => runner(success, heard),
    panelRequest: (json) => {
      globalThis.askTheSheet(json).then((outcome) => {
        if (outcome.thrown === undefined) success(outcome.answer);
        else failure(new Error(outcome.thrown));
      });
    },
  });
  globalThis.google = { script: { run: runner(() => {}, () => {}) } };
}`;

export interface PanelOptions {
  readonly behave: (request: Request, number: number) => Behaviour | Promise<Behaviour>;
  readonly scheme?: "light" | "dark";
  readonly html?: string;
  /** Help on formulas in place of what the build put into the page; null takes it out. */
  readonly formulas?: readonly FunctionHelp[] | null;
  readonly height?: number;
}

function withFormulas(page: string, formulas: readonly FunctionHelp[] | null | undefined): string {
  if (formulas === undefined) return page;
  const json = JSON.stringify(formulas).replace(/</g, "\\u003c");
  return page.replace(/(<script type="application\/json" id="formulas">).*(<\/script>)/, (_, start, end) =>
    formulas === null ? "" : `${start}${json}${end}`,
  );
}

export async function openPanel(browser: Browser, options: PanelOptions): Promise<OpenPanel> {
  const built = readFileSync(options.html ?? new URL("../../dist/Sidebar.html", import.meta.url), "utf8");
  const html = withFormulas(built, options.formulas);
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
    const sent = JSON.parse(json) as Request;
    const request: Request = requestSchemas()[sent.ask].parse(sent);
    requests.push(request);
    const behaviour = await options.behave(request, requests.length);
    if ("thrown" in behaviour) return { thrown: behaviour.thrown };
    return { answer: "lost" in behaviour ? null : JSON.stringify(behaviour.answer) };
  });
  await page.addInitScript(HOST);
  await page.goto(ADDRESS);
  return { page, requests, outside, close: () => context.close() };
}

/** True when something sticks out to the side and the panel would have to be scrolled. */
export function overflows(page: Page): Promise<boolean> {
  return page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);
}
