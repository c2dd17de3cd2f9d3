/** The workbench's server: loopback only, the page and the files of dist/, and the one place where changes are kept. */

import { existsSync, readFileSync } from "node:fs";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { join } from "node:path";
import type { PageBundle } from "./bundle.ts";
import { readKept, writeKept } from "./kept.ts";
import { readSamples, type SampleWorkbook } from "./samples.ts";

export interface WorkbenchOptions {
  /** The built add-on: Code.js, Sidebar.html, appsscript.json. */
  readonly dist: string;
  /** CSV files and workbook.json. */
  readonly samples: string;
  readonly keptFile: string;
  readonly bundle: PageBundle;
  readonly pageHtml: string;
  /** A sentence to show once, on a file set aside at the start. */
  readonly notice: string | null;
}

/** What the page starts from, as JSON at /start. */
export interface StartData {
  /** JSON of the page's own making, null for the samples. */
  readonly kept: string | null;
  readonly notice: string | null;
  readonly samples: SampleWorkbook;
  readonly scriptTimeZone: string;
  /** Text of dist/Code.js, for the words in its comments. */
  readonly code: string;
  readonly sidebar: string;
}

/** A kept sheet of more than this many bytes is refused. */
const MOST_BYTES = 64 * 1024 * 1024;

/** Nothing from outside, nothing inline but styles, which the grid sets on its elements. */
const PAGE_POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; font-src 'self' data:; connect-src 'self'; frame-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
/** The sidebar is one file with everything in it, and reaches nothing at all. */
const PANEL_POLICY =
  "default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'self'";

/** Gives the panel its google.script.run, made by the page around it. */
const BRIDGE = "<script>window.google={script:parent.panelBridge(window)}</script>";

function answer(
  response: ServerResponse,
  status: number,
  type: string,
  body: string | Buffer,
  policy = PAGE_POLICY,
): void {
  response.writeHead(status, {
    "Content-Type": type,
    "Content-Security-Policy": policy,
    "Cache-Control": "no-store",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Resource-Policy": "same-origin",
  });
  response.end(body);
}

/** Why a request is not served, or null: it must name this server, and must not come from another site. */
export function refusal(request: Pick<IncomingMessage, "headers" | "method">, port: number): string | null {
  const { host, origin, "sec-fetch-site": site } = request.headers;
  const hosts = [`127.0.0.1:${port}`, `localhost:${port}`];
  if (host === undefined || !hosts.includes(host))
    return "This server answers only to its own address on this machine.";
  if (origin !== undefined && !hosts.some((own) => origin === `http://${own}`)) {
    return "Pages from elsewhere may not use this server.";
  }
  if (site === "cross-site" || site === "same-site") return "Pages from elsewhere may not use this server.";
  if (request.method !== "GET" && origin === undefined) return "Changes are taken from the workbench's own page only.";
  return null;
}

async function bodyOf(request: IncomingMessage): Promise<string | null> {
  const parts: Buffer[] = [];
  let bytes = 0;
  for await (const part of request) {
    bytes += (part as Buffer).length;
    if (bytes > MOST_BYTES) return null;
    parts.push(part as Buffer);
  }
  return request.complete ? Buffer.concat(parts).toString("utf8") : null;
}

function withBridge(html: string): string {
  return /<head[^>]*>/i.test(html)
    ? html.replace(/<head[^>]*>/i, (head) => head + BRIDGE)
    : html.replace(/^(\s*<!doctype[^>]*>)?/i, (start) => start + BRIDGE);
}

export function createWorkbench(options: WorkbenchOptions): Server {
  const { dist, samples, keptFile, bundle, pageHtml } = options;
  const distFile = (name: string): string => readFileSync(join(dist, name), "utf8");
  /** One write at a time, the newest last. */
  let writing: Promise<void> = Promise.resolve();
  let notice = options.notice;

  function start(): string {
    const kept = readKept(keptFile);
    const said = [notice, kept.notice].filter((text) => text !== null).join(" ");
    notice = null;
    const manifest = JSON.parse(distFile("appsscript.json")) as { timeZone: string };
    const data: StartData = {
      kept: kept.content,
      notice: said === "" ? null : said,
      samples: readSamples(samples),
      scriptTimeZone: manifest.timeZone,
      code: distFile("Code.js"),
      sidebar: distFile("Sidebar.html"),
    };
    return JSON.stringify(data);
  }

  async function keep(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (request.headers["content-type"] !== "application/json") {
      answer(response, 415, "text/plain; charset=utf-8", "Send JSON.");
      return;
    }
    const body = await bodyOf(request);
    try {
      if (body === null) throw new SyntaxError("cut off");
      JSON.parse(body);
    } catch {
      answer(response, 400, "text/plain; charset=utf-8", "What was sent is cut off or not JSON; nothing was written.");
      return;
    }
    const text = body ?? "";
    writing = writing.catch(() => {}).then(() => writeKept(keptFile, text));
    await writing;
    answer(response, 204, "text/plain", "");
  }

  async function serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const address = server.address();
    const port = typeof address === "object" && address !== null ? address.port : 0;
    const why = refusal(request, port);
    if (why !== null) {
      answer(response, 403, "text/plain; charset=utf-8", why);
      return;
    }
    const { pathname } = new URL(request.url ?? "/", "http://127.0.0.1");
    if (request.method === "POST" && pathname === "/kept") return keep(request, response);
    if (request.method !== "GET") return answer(response, 405, "text/plain; charset=utf-8", "Only GET here.");
    switch (pathname) {
      case "/":
        return answer(response, 200, "text/html; charset=utf-8", pageHtml);
      case "/page.js":
        return answer(response, 200, "text/javascript; charset=utf-8", readFileSync(bundle.script));
      case "/page.css":
        return answer(response, 200, "text/css; charset=utf-8", readFileSync(bundle.style));
      case "/start":
        return answer(response, 200, "application/json; charset=utf-8", start());
      case "/dist/Code.js":
        return answer(response, 200, "text/javascript; charset=utf-8", distFile("Code.js"));
      case "/panel":
        return answer(response, 200, "text/html; charset=utf-8", withBridge(distFile("Sidebar.html")), PANEL_POLICY);
      case "/favicon.ico":
        return answer(response, 204, "image/x-icon", "");
      default:
        return answer(response, 404, "text/plain; charset=utf-8", "There is nothing here.");
    }
  }

  const server = createServer((request, response) => {
    serve(request, response).catch((error: unknown) => {
      const said = error instanceof Error ? error.message : String(error);
      if (!response.headersSent) answer(response, 500, "text/plain; charset=utf-8", said);
      else response.destroy();
    });
  });
  return server;
}

/** Listens on 127.0.0.1 at `port` or the next free one; answers with the port. */
export async function listen(server: Server, port: number, tries = 50): Promise<number> {
  for (let at = port; at < port + tries; at++) {
    const free = await new Promise<boolean>((resolve, reject) => {
      const failed = (error: NodeJS.ErrnoException): void => {
        if (error.code === "EADDRINUSE") resolve(false);
        else reject(error);
      };
      server.once("error", failed);
      server.listen(at, "127.0.0.1", () => {
        server.off("error", failed);
        resolve(true);
      });
    });
    if (free) {
      const address = server.address();
      return typeof address === "object" && address !== null ? address.port : at;
    }
  }
  throw new Error(`No free port from ${port} to ${port + tries - 1}.`);
}

export function hasBuild(dist: string): boolean {
  return ["Code.js", "Sidebar.html", "appsscript.json"].every((name) => existsSync(join(dist, name)));
}
