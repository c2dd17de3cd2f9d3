/**
 * `npm run mutate [group…]`: changes the code a line at a time and sees whether a test fails; for a night, not for
 * every run. `npm run mutate -- --table` prints what the reports of earlier runs say, with the survivors.
 */

import { spawnSync } from "node:child_process";
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";

const KEPT = ".cache/mutation";

/** Words of the functions are read by people and held by the tests of the build; specs have nothing to change. */
const LEFT_OUT = ["!src/**/*-words.ts", "!src/functions/words.ts", "!src/sheet/spec.ts", "!src/app/me.ts"];

/** Core by first letter of the file, so that a group takes an hour or so on two slow cores. */
const GROUPS: Readonly<Record<string, readonly string[]>> = {
  sheet: ["src/sheet/*.ts"],
  app: ["src/app/*.ts"],
  functions: ["src/functions/*.ts"],
  "core-a-b": ["src/core/[ab]*.ts"],
  "core-c-e": ["src/core/[c-e]*.ts"],
  "core-f-g": ["src/core/[fg]*.ts"],
  "core-h-l": ["src/core/[h-l]*.ts"],
  "core-m-p": ["src/core/[m-p]*.ts"],
  "core-q-s": ["src/core/[q-s]*.ts"],
  "core-t-z": ["src/core/[t-z]*.ts"],
};

interface Mutant {
  readonly status: string;
  readonly mutatorName: string;
  readonly replacement?: string;
  readonly location: { readonly start: { readonly line: number } };
}
interface Report {
  readonly files: Readonly<Record<string, { readonly source: string; readonly mutants: readonly Mutant[] }>>;
}

const KILLED = new Set(["Killed", "Timeout"]);
const ALIVE = new Set(["Survived", "NoCoverage"]);

function run(group: string, patterns: readonly string[]): void {
  mkdirSync(KEPT, { recursive: true });
  const config = JSON.parse(readFileSync("test/mutation/stryker.config.json", "utf8")) as object;
  const own = {
    ...config,
    mutate: [...patterns, ...LEFT_OUT],
    jsonReporter: { fileName: `${KEPT}/${group}.report.json` },
    incrementalFile: `${KEPT}/${group}.incremental.json`,
    tempDirName: `${KEPT}/${group}.sandbox`,
  };
  const file = `${KEPT}/${group}.config.json`;
  writeFileSync(file, JSON.stringify(own));
  const { status } = spawnSync("npx", ["stryker", "run", file], { stdio: "inherit" });
  if (status !== 0) console.error(`The group ${group} ended with ${status ?? "a signal"}.`);
}

interface Tally {
  killed: number;
  alive: number;
}

/** What the reports kept so far say, a line a folder and file, and each survivor with the line it stands on. */
function table(): void {
  const folders = new Map<string, Tally>();
  const survivors: string[] = [];
  for (const name of readdirSync(KEPT).filter((each) => each.endsWith(".report.json"))) {
    const { files } = JSON.parse(readFileSync(path.join(KEPT, name), "utf8")) as Report;
    for (const [file, { source, mutants }] of Object.entries(files)) {
      const lines = source.split("\n");
      for (const key of [path.dirname(file), file]) {
        const tally = folders.get(key) ?? { killed: 0, alive: 0 };
        folders.set(key, tally);
        for (const { status } of mutants) {
          if (KILLED.has(status)) tally.killed++;
          if (ALIVE.has(status)) tally.alive++;
        }
      }
      for (const { status, location, replacement = "" } of mutants) {
        if (!ALIVE.has(status)) continue;
        const { line } = location.start;
        const standing = (lines[line - 1] ?? "").trim();
        survivors.push(`${file}:${line} [${status}] ${standing}  →  ${replacement.replace(/\s+/g, " ").slice(0, 80)}`);
      }
    }
  }
  for (const [name, { killed, alive }] of [...folders].sort(([a], [b]) => (a < b ? -1 : 1))) {
    if (killed + alive === 0) continue;
    console.log(`| ${name} | ${killed + alive} | ${((100 * killed) / (killed + alive)).toFixed(1)} % |`);
  }
  console.log(`\n${survivors.length} survived:\n${survivors.join("\n")}`);
}

const asked = process.argv.slice(2);
if (asked[0] === "--table") table();
else {
  for (const group of asked.length === 0 ? Object.keys(GROUPS) : asked) {
    // A file may be asked for by its path, when there is no time for its whole group.
    const patterns = /^src\/.*\.ts$/.test(group) ? [group] : GROUPS[group];
    if (!patterns) throw new Error(`There is no group ${group}; there are ${Object.keys(GROUPS).join(", ")}.`);
    run(group.replace(/\W+/g, "-"), patterns);
  }
}
