/** Which tests a changed line has to make fail: none that needs dist/ or a browser. */

import { readdirSync } from "node:fs";
import path from "node:path";

const FOLDERS = ["core", "functions", "sheet", "app", "host", "sidebar"];
/** The simulation of months of tests takes seconds to load. */
const LEFT_OUT = /^test\/host\/bundle\.test\.ts$|^test\/core\/(.*-oracles|test-plan-simulation)\.test\.ts$/;

/**
 * By `named` those of one folder ("core") or files by their paths, separated by spaces; when it is empty, all of core,
 * functions, sheet, app, host and the panel.
 */
export function testFiles(named: string): string[] {
  if (named.includes("/")) return named.split(/\s+/).filter((file) => file !== "");
  return (named === "" ? FOLDERS : [named]).flatMap((folder) =>
    readdirSync(path.join("test", folder), { encoding: "utf8", recursive: true })
      .filter((file) => file.endsWith(".test.ts"))
      .map((file) => `test/${folder}/${file}`)
      .filter((file) => !LEFT_OUT.test(file))
      .sort(),
  );
}
