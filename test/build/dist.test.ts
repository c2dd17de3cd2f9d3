/** The files of dist/: what a push would send, the manifest, the panel in one file, the README's reference. */

import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { readFormulas } from "../../sidebar/formulas.ts";
import { withReference } from "../../src/build/readme.ts";
import { formulaStub } from "../../src/build/stubs.ts";
import { functionHelp } from "../../src/functions/catalogue.ts";
import { REFERENCE } from "../../src/functions/reference.ts";
import type { FunctionReference } from "../../src/functions/words.ts";
import { DIST, ROOT } from "./realm.ts";

const page = readFileSync(path.join(DIST, "Sidebar.html"), "utf8");

describe("dist/", () => {
  it("holds the three files of the add-on and the sample workbook, none half written", () => {
    const files = readdirSync(DIST).filter((name) => !name.startsWith("."));
    expect(files.sort()).toEqual(["Code.js", "Sidebar.html", "appsscript.json", "sample-sheet.xlsx"].sort());
  });

  it("sends just the three files when it is pushed", () => {
    const home = mkdtempSync(path.join(tmpdir(), "stillroot-home-"));
    try {
      const printed = execFileSync(
        "node",
        ["node_modules/@google/clasp/build/src/index.js", "show-file-status", "--json"],
        {
          cwd: ROOT,
          encoding: "utf8",
          env: { PATH: process.env.PATH ?? "", HOME: home },
        },
      );
      const status = JSON.parse(printed) as { filesToPush: string[] };
      expect(status.filesToPush.map((file) => file.replace(/\\/g, "/")).sort()).toEqual(
        ["dist/Code.js", "dist/Sidebar.html", "dist/appsscript.json"].sort(),
      );
    } finally {
      rmSync(home, { recursive: true, force: true });
    }
  });

  it("asks for this spreadsheet and a panel beside it, and for nothing else", () => {
    const manifest: unknown = JSON.parse(readFileSync(path.join(DIST, "appsscript.json"), "utf8"));
    expect(manifest).toEqual({
      timeZone: expect.stringMatching(/^[A-Z][A-Za-z]+\/[A-Za-z_/]+$/),
      runtimeVersion: "V8",
      exceptionLogging: "STACKDRIVER",
      oauthScopes: [
        "https://www.googleapis.com/auth/spreadsheets.currentonly",
        "https://www.googleapis.com/auth/script.container.ui",
      ],
    });
  });
});

describe("Sidebar.html", () => {
  it("is one page with one style, one script and one list of formulas, and the place where the panel goes", () => {
    expect(page.startsWith("<!doctype html>")).toBe(true);
    for (const tag of [/<script>/g, /<script /g, /<style>/g, /<\/style>/g]) expect(page.match(tag)?.length).toBe(1);
    expect(page.match(/<\/script>/g)?.length).toBe(2);
    expect(page).toContain('<div id="panel"></div>');
    expect(page).toContain('<base target="_top">');
    expect(page).not.toContain("<!--");
  });

  it("holds the help on every formula, as the panel reads it, and no sign in it that could end it", () => {
    const [, json] = /<script type="application\/json" id="formulas">(.*)<\/script>/.exec(page) ?? [];
    expect(json).not.toContain("<");
    expect(readFormulas(json)).toEqual(functionHelp());
  });

  it("takes nothing from outside", () => {
    expect(page).not.toMatch(/<(?:script|link|img|iframe)[^>]+(?:src|href)=/i);
    expect(page).not.toMatch(/@import|url\(\s*["']?(?:https?:|\/\/)/i);
    const addresses = new Set(page.match(/https?:\/\/[^\s"'`)\\]+/g) ?? []);
    // Names of markup languages, which no browser fetches.
    for (const address of addresses) expect(address).toMatch(/^http:\/\/www\.w3\.org\//);
  });
});

describe("the reference in README.md", () => {
  const readme = readFileSync(path.join(ROOT, "README.md"), "utf8");

  it("is what the registry says", () => {
    expect(withReference(readme, REFERENCE) === readme, "run npm run readme and commit it").toBe(true);
  });

  it("is found stale by --check when a word of it changes", () => {
    const file = path.join(mkdtempSync(path.join(tmpdir(), "stillroot-readme-")), "README.md");
    const check = () => {
      try {
        execFileSync("node", ["--import", "tsx", "src/build/readme.ts", "--check", file], { cwd: ROOT, stdio: "pipe" });
        return "fresh";
      } catch (error) {
        return String((error as { stderr: Buffer }).stderr);
      }
    };
    try {
      writeFileSync(file, readme);
      expect(check()).toBe("fresh");
      writeFileSync(file, readme.replace("Turns EC into the ppm", "Turns EC into ppm"));
      expect(check()).toMatch(/is stale/);
      expect(withReference(readFileSync(file, "utf8"), REFERENCE)).toBe(readme);
    } finally {
      rmSync(path.dirname(file), { recursive: true });
    }
  });

  it("leaves everything outside its markers alone, and needs both of them", () => {
    const around = (inside: string) => `before\n<!-- reference: start -->${inside}<!-- reference: end -->\nafter\n`;
    const written = withReference(around("stale words"), REFERENCE);
    expect(written.startsWith("before\n<!-- reference: start -->\n")).toBe(true);
    expect(written.endsWith("<!-- reference: end -->\nafter\n")).toBe(true);
    expect(written).not.toContain("stale words");
    expect(withReference(written, REFERENCE)).toBe(written);
    expect(() => withReference("no markers", REFERENCE)).toThrow(/needs the markers/);
    expect(() => withReference("<!-- reference: end --><!-- reference: start -->", REFERENCE)).toThrow(/in this order/);
  });
});

describe("a stub", () => {
  const [record] = REFERENCE as readonly [FunctionReference, ...FunctionReference[]];

  it("keeps a help of several lines on one line, because the host drops the breaks", () => {
    const text = formulaStub({ ...record, summary: "First line\n  and second." });
    expect(text).toContain(" * First line and second.\n");
  });

  it("refuses a help that would end its comment", () => {
    expect(() => formulaStub({ ...record, summary: "Ends */ here." })).toThrow(/would end the comment/);
  });
});
