/** Writes the sample sheet, one CSV a tab; with --check it only says which files are not as they would be written. */

import { mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { csvOf } from "./sample-csv.ts";
import { sampleTabs, WORKBOOK } from "./sample-tabs.ts";

export const SAMPLE_DIR = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../../sample-sheet");

/** File name to content, for everything that is generated. */
export function sampleFiles(): ReadonlyMap<string, string> {
  const files = new Map(sampleTabs().map((tab) => [`${tab.name}.csv`, csvOf(tab)]));
  files.set("workbook.json", `${JSON.stringify(WORKBOOK, null, 2)}\n`);
  return files;
}

/** A sentence for each file in `directory` that is missing, differs, or is a CSV of no tab. */
export async function staleFiles(directory: string): Promise<string[]> {
  const files = sampleFiles();
  const there = new Set(await readdir(directory));
  const sentences: string[] = [];
  for (const [name, content] of files) {
    if (!there.has(name)) sentences.push(`${name} is missing.`);
    else if ((await readFile(path.join(directory, name), "utf8")) !== content) sentences.push(`${name} is stale.`);
  }
  for (const name of there) {
    if (name.endsWith(".csv") && !files.has(name)) sentences.push(`${name} belongs to no tab.`);
  }
  return sentences;
}

export async function writeSample(directory: string): Promise<void> {
  await mkdir(directory, { recursive: true });
  for (const [name, content] of sampleFiles()) await writeFile(path.join(directory, name), content);
}

if (process.argv[1] !== undefined && path.resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  if (process.argv.includes("--check")) {
    const sentences = await staleFiles(SAMPLE_DIR);
    for (const sentence of sentences) console.error(sentence);
    if (sentences.length > 0) {
      console.error("Write them again with: npx tsx src/build/sample.ts");
      process.exitCode = 1;
    }
  } else {
    await writeSample(SAMPLE_DIR);
  }
}
