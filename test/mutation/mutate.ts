/**
 * `npm run mutate [group or file…]`: changes the code a line at a time and sees whether a test fails; for a night, not
 * for every run. `npm run mutate -- --table` prints what the reports of earlier runs say, `-- --unexplained [file…]`
 * the survivors that nobody gave a reason for yet, as they would stand in `survivors/`, and `-- --again [file…]` tries
 * the survivors once more, after tests were added or with other tests (MUTATED, see test-files.ts).
 */

import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { KEPT, table, unexplained, unnoticed } from "./report.ts";

/** Words of the functions are read by people and held by the tests of the build; the spec has nothing to change. */
const LEFT_OUT = ["!src/functions/*words.ts", "!src/sheet/spec.ts", "!src/app/me.ts"];

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

function run(group: string, patterns: readonly string[]): void {
  mkdirSync(KEPT, { recursive: true });
  const config = JSON.parse(readFileSync("test/mutation/stryker.config.json", "utf8")) as object;
  const own = {
    ...config,
    mutate: [...patterns, ...LEFT_OUT],
    jsonReporter: { fileName: `${KEPT}/${group}.report.json` },
    tempDirName: `${KEPT}/${group}.sandbox`,
  };
  const file = `${KEPT}/${group}.config.json`;
  writeFileSync(file, JSON.stringify(own));
  // Its workers load the runner of this folder, which is TypeScript.
  const env = { ...process.env, NODE_OPTIONS: "--import tsx" };
  const { status } = spawnSync("npx", ["stryker", "run", file], { stdio: "inherit", env });
  if (status !== 0) console.error(`The group ${group} ended with ${status ?? "a signal"}.`);
}

const asked = process.argv.slice(2);
if (asked[0] === "--table") console.log(table());
else if (asked[0] === "--unexplained") console.log(unexplained(asked.slice(1)));
else if (asked[0] === "--again") run(`again-${Date.now()}`, unnoticed(asked.slice(1)));
else {
  for (const group of asked.length === 0 ? Object.keys(GROUPS) : asked) {
    // A file may be asked for by its path, or some with commas between, when there is no time for the whole group.
    const patterns = /^src\/.*\.ts$/.test(group) ? group.split(",") : GROUPS[group];
    if (!patterns) throw new Error(`There is no group ${group}; there are ${Object.keys(GROUPS).join(", ")}.`);
    run(group.replace(/\W+/g, "-").slice(0, 100), patterns);
  }
}
