/** The layers hold: forbidden imports are planted in every folder, and the linter and the compiler refuse them. */

import { execFileSync, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const ROOT = process.cwd();
const PLOT = join(ROOT, ".cache/planted");

/** What each layer may import, from its own folder; everything else is refused. */
const LAYERS = {
  "src/core": { may: [], mayNot: ["../functions/runner.ts", "../sheet/port.ts", "zod/mini", "node:fs", "preact"] },
  "src/functions": {
    may: ["../core/errors.ts"],
    mayNot: ["../sheet/port.ts", "../app/contract.ts", "../host/main.ts", "zod/mini", "node:fs"],
  },
  "src/sheet": {
    may: ["../core/errors.ts"],
    mayNot: ["../functions/runner.ts", "../app/contract.ts", "../host/main.ts", "zod/mini", "node:fs"],
  },
  "src/app": {
    may: ["../core/errors.ts", "../sheet/port.ts", "zod/mini"],
    mayNot: ["../functions/runner.ts", "../functions/catalogue.ts", "../host/main.ts", "preact", "node:fs"],
  },
  "src/host": {
    may: ["../app/contract.ts", "../sheet/port.ts", "../functions/runner.ts"],
    mayNot: [
      "../core/errors.ts",
      "../functions/reference.ts",
      "../functions/catalogue.ts",
      "../functions/feed-words.ts",
      "../build/build.ts",
      "../../sidebar/main.tsx",
      "node:fs",
    ],
  },
  sidebar: {
    may: [
      "../src/core/errors.ts",
      "../src/app/contract.ts",
      "../src/app/requests.ts",
      "preact",
      "preact/hooks",
      "fflate",
    ],
    mayNot: ["../src/app/handlers.ts", "../src/sheet/port.ts", "../src/host/main.ts", "zod/mini", "react"],
  },
  "sample-sheet/workbench": {
    may: ["node:fs"],
    mayNot: ["../../src/core/errors.ts", "../../src/host/main.ts", "../../sidebar/main.tsx"],
  },
} as const;

/** Globals that a folder must not name. */
const NO_DATE = ["src/core", "src/functions", "src/sheet", "src/app", "sidebar"] as const;

function plant(folder: string, name: string, text: string): string {
  mkdirSync(join(PLOT, folder), { recursive: true });
  writeFileSync(join(PLOT, folder, name), text);
  return `${folder}/${name}`;
}

interface Report {
  diagnostics: { category: string; location: { path: string | { file: string } } }[];
}

/** Biome's findings of a kind, as the planted files they stand in. */
function refused(rule: string): Set<string> {
  const run = spawnSync(
    join(ROOT, "node_modules/.bin/biome"),
    ["lint", "--reporter=json", "--max-diagnostics=none", "."],
    {
      cwd: PLOT,
      encoding: "utf8",
    },
  );
  const report = JSON.parse(run.stdout.slice(run.stdout.indexOf("{"))) as Report;
  const found = report.diagnostics.filter((each) => each.category === rule);
  return new Set(found.map(({ location: { path } }) => (typeof path === "string" ? path : path.file)));
}

beforeAll(() => {
  rmSync(PLOT, { recursive: true, force: true });
  mkdirSync(PLOT, { recursive: true });
  const config = JSON.parse(readFileSync(join(ROOT, "biome.json"), "utf8")) as Record<string, unknown>;
  // The plot is ignored by git, and the rules under test are the same.
  writeFileSync(join(PLOT, "biome.json"), JSON.stringify({ ...config, vcs: { enabled: false }, root: true }));
});
afterAll(() => rmSync(PLOT, { recursive: true, force: true }));

describe("Biome, per folder", () => {
  it("refuses every forbidden import and allows every permitted one", () => {
    const bad: string[] = [];
    const good: string[] = [];
    for (const [folder, { may, mayNot }] of Object.entries(LAYERS)) {
      may.forEach((from, at) => {
        good.push(plant(folder, `good${at}.ts`, `import * as it from "${from}";\nexport const kept = it;\n`));
      });
      mayNot.forEach((from, at) => {
        bad.push(plant(folder, `bad${at}.ts`, `import * as it from "${from}";\nexport const kept = it;\n`));
      });
    }
    const found = refused("lint/style/noRestrictedImports");
    expect(bad.filter((file) => !found.has(file))).toEqual([]);
    expect(good.filter((file) => found.has(file))).toEqual([]);
  });

  it("refuses Date wherever only day numbers may be", () => {
    const bad = NO_DATE.map((folder) => plant(folder, "clock.ts", "export const now = new Date();\n"));
    const good = plant("src/host", "clock.ts", "export const now = new Date();\n");
    const found = refused("lint/style/noRestrictedGlobals");
    expect(bad.filter((file) => !found.has(file))).toEqual([]);
    expect(found.has(good)).toBe(false);
  });
});

describe("the compiler, per layer", () => {
  it("refuses an import from a layer that is not referenced, and the clean plot compiles", () => {
    const plot = join(ROOT, ".cache/planted-types");
    rmSync(plot, { recursive: true, force: true });
    mkdirSync(join(plot, "src"), { recursive: true });
    try {
      execFileSync("cp", ["-r", ...["core", "functions"].map((layer) => join(ROOT, "src", layer)), join(plot, "src")]);
      writeFileSync(join(plot, "tsconfig.base.json"), readFileSync(join(ROOT, "tsconfig.base.json")));
      symlinkSync(join(ROOT, "node_modules"), join(plot, "node_modules"));
      const compile = (layer: string) =>
        spawnSync(join(ROOT, "node_modules/.bin/tsc"), ["-b", join(plot, "src", layer)], { encoding: "utf8" });
      expect(compile("functions").stdout).toBe("");
      const outward = 'import type * as it from "../functions/record.ts";\nexport type Kept = typeof it;\n';
      writeFileSync(join(plot, "src/core/planted.ts"), outward);
      expect(compile("core").stdout).toMatch(/TS6307|TS6059/);
    } finally {
      rmSync(plot, { recursive: true, force: true });
    }
  });
});

describe("every layer is under the rules", () => {
  it("has a tsconfig and an entry in biome.json", () => {
    const biome = readFileSync(join(ROOT, "biome.json"), "utf8");
    const layers = readdirSync(join(ROOT, "src")).filter((name) => name !== "build");
    for (const layer of layers) {
      expect(existsSync(join(ROOT, "src", layer, "tsconfig.json")), layer).toBe(true);
      expect(biome).toContain(`"src/${layer}/**"`);
    }
  });

  it("names the spreadsheet host in src/host only", () => {
    const services = /SpreadsheetApp|HtmlService|LockService|PropertiesService/;
    const files = ["src", "sidebar"].flatMap((top) =>
      readdirSync(join(ROOT, top), { recursive: true, encoding: "utf8" }).map((name) => `${top}/${name}`),
    );
    const code = files.filter((file) => /\.tsx?$/.test(file) && services.test(readFileSync(join(ROOT, file), "utf8")));
    expect(code).not.toEqual([]);
    expect(code.filter((file) => !file.startsWith("src/host/"))).toEqual([]);
  });
});
