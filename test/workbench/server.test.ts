/** The workbench's server answers to this machine's own page only, and keeps nothing that arrived broken. */

import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { request, type Server } from "node:http";
import { connect } from "node:net";
import { networkInterfaces, tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readKept } from "../../sample-sheet/workbench/kept.ts";
import { createWorkbench, listen, type StartData } from "../../sample-sheet/workbench/server.ts";

let folder: string;
let keptFile: string;
let server: Server;
let port: number;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "bench-"));
  keptFile = join(folder, "kept.json");
  const put = (name: string, text: string): void => writeFileSync(join(folder, name), text);
  put("Code.js", "function onOpen() {}");
  put("Sidebar.html", "<!doctype html><html><head><title>Panel</title></head><body></body></html>");
  put("appsscript.json", '{"timeZone":"Europe/Zurich"}');
  put("workbook.json", '{"name":"Test","timeZone":"Asia/Tokyo","locale":"en_GB"}');
  put("Plants.csv", 'Plant,Since,Pot mL,Note\n"Fern, old",2024-02-29,012,=1+1\n');
  put("page.js", "");
  put("page.css", "");
  server = createWorkbench({
    dist: folder,
    samples: folder,
    keptFile,
    bundle: { script: join(folder, "page.js"), style: join(folder, "page.css") },
    pageHtml: "<!doctype html><title>Page</title>",
    notice: null,
  });
  port = await listen(server, 20_000 + (process.pid % 20_000));
});
afterAll(() => {
  server.close();
  rmSync(folder, { recursive: true, force: true });
});

interface Reply {
  readonly status: number;
  readonly headers: NodeJS.Dict<string | string[]>;
  readonly body: string;
}

function ask(path: string, headers: Record<string, string> = {}, method = "GET", body = ""): Promise<Reply> {
  return new Promise((resolve, reject) => {
    const sent = request({ host: "127.0.0.1", port, path, method, headers }, (response) => {
      let text = "";
      response.on("data", (part) => {
        text += String(part);
      });
      response.on("end", () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }));
    });
    sent.on("error", reject);
    sent.end(body);
  });
}
const own = () => `http://127.0.0.1:${port}`;
const json = { "Content-Type": "application/json" };

test("it listens on the loopback address and on no other of this machine", async () => {
  expect(server.address()).toMatchObject({ address: "127.0.0.1" });
  const others = Object.values(networkInterfaces())
    .flat()
    .filter((each) => each?.family === "IPv4" && !each.internal);
  for (const other of others) {
    const reached = await new Promise<boolean>((resolve) => {
      const socket = connect({ host: other?.address ?? "", port, timeout: 1000 }, () => resolve(true));
      socket.on("error", () => resolve(false));
      socket.on("timeout", () => resolve(false));
    });
    expect(reached).toBe(false);
  }
});

test("the page is served with a policy that names no outside host", async () => {
  const { status, headers } = await ask("/");
  expect(status).toBe(200);
  for (const path of ["/", "/panel"]) {
    const policy = String((await ask(path)).headers["content-security-policy"]);
    expect(policy).toMatch(/^default-src 'none'/);
    expect(policy).not.toMatch(/https?:|\*|\.\w{2,}/);
  }
  expect(headers["x-content-type-options"]).toBe("nosniff");
});

test.each([
  ["another host's name", { Host: "example.com" }],
  ["another port", { Host: "127.0.0.1:1" }],
  ["a page from elsewhere", { Origin: "https://example.com" }],
  ["a sandboxed page", { Origin: "null" }],
  ["a link from elsewhere", { "Sec-Fetch-Site": "cross-site" }],
])("a request that names %s is refused", async (_what, headers) => {
  const { status, body } = await ask("/start", headers);
  expect(status).toBe(403);
  expect(body).not.toContain("Plant");
});

test("a change without an origin, or from another one, is not kept", async () => {
  for (const headers of [json, { ...json, Origin: "https://example.com" }]) {
    expect((await ask("/kept", headers, "POST", "{}")).status).toBe(403);
  }
  expect((await ask("/kept", { Origin: own(), "Content-Type": "text/plain" }, "POST", "{}")).status).toBe(415);
  expect(existsSync(keptFile)).toBe(false);
});

test("a change that arrives cut off writes nothing; a whole one is kept and handed out again", async () => {
  const headers = { ...json, Origin: own() };
  expect((await ask("/kept", headers, "POST", '{"workbook":')).status).toBe(400);
  expect(existsSync(keptFile)).toBe(false);
  expect((await ask("/kept", headers, "POST", '{"workbook":1}')).status).toBe(204);
  expect(readKept(keptFile).content).toBe('{"workbook":1}');
  const start = JSON.parse((await ask("/start")).body) as StartData;
  expect(start.kept).toBe('{"workbook":1}');
});

test("a kept file spoilt meanwhile: the page gets the samples and a sentence, the file stays", async () => {
  writeFileSync(keptFile, "half a fi");
  const start = JSON.parse((await ask("/start")).body) as StartData;
  expect(start.kept).toBe(null);
  expect(start.notice).toContain("set aside as kept.unreadable-1.json");
  expect(readFileSync(join(folder, "kept.unreadable-1.json"), "utf8")).toBe("half a fi");
});

test("samples come with their kinds: dates, texts with leading zeros, formulas", async () => {
  const { samples, scriptTimeZone } = JSON.parse((await ask("/start")).body) as StartData;
  expect(scriptTimeZone).toBe("Europe/Zurich");
  expect(samples).toMatchObject({ name: "Test", timeZone: "Asia/Tokyo", locale: "en_GB" });
  expect(samples.tabs[0]?.rows[1]).toEqual([
    { text: "Fern, old" },
    { day: "2024-02-29" },
    { text: "012" },
    { formula: "=1+1" },
  ]);
});

test("the panel is the built file with its way to the script and nothing else", async () => {
  const { body } = await ask("/panel");
  expect(body.replace(/<script>.*?<\/script>/, "")).toBe(readFileSync(join(folder, "Sidebar.html"), "utf8"));
});
