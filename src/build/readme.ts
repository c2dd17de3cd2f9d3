/** Writes the reference of the custom functions into README.md between two markers; with --check only compares. */

import { readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { callOf, isRange, typedArguments, valueText } from "../functions/catalogue.ts";
import type { Example, FunctionRecord } from "../functions/record.ts";
import { referenceOf } from "../functions/reference.ts";
import { REGISTRY } from "../functions/registry.ts";

const README = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../../README.md");
const START = "<!-- reference: start -->";
const END = "<!-- reference: end -->";

const GROUPS: Readonly<Record<FunctionRecord["group"], string>> = {
  FEED: "Feeds",
  WATER: "Water",
  METER: "Meters",
  ROOT: "Roots",
};

function exampleLine(example: Example): string {
  const typed = typedArguments(example);
  const cells = example.args.flatMap((value, at) => {
    const reference = typed[at] ?? "";
    return isRange(value) || !/^["\d.-]/.test(reference) ? [`\`${reference}\` holds \`${valueText(value)}\``] : [];
  });
  const where = cells.length > 0 ? `, where ${cells.join(" and ")}` : "";
  return `- \`${example.formula}\` gives \`${valueText(example.gives)}\`${where}. *${example.source}*`;
}

function section(record: FunctionRecord): string {
  const { examples, sources, seeAlso } = referenceOf(record.name);
  const cell = (text: string) => text.replace(/\|/g, "\\|");
  return [
    `#### ${record.name}`,
    "",
    `\`${callOf(record)}\``,
    "",
    record.summary,
    "",
    "| Argument | What to give |",
    "| --- | --- |",
    ...record.args.map((argument) => `| \`${argument.name}\` | ${cell(argument.help)} |`),
    "",
    `**Gives** ${record.result}`,
    "",
    ...examples.map(exampleLine),
    "",
    `Sources: ${sources.join("; ")}.`,
    `See also ${seeAlso.map((name) => `[${name}](#${name.toLowerCase()})`).join(", ")}.`,
    "",
  ].join("\n");
}

/** The reference as it stands between the markers. */
export function reference(registry: readonly FunctionRecord[]): string {
  const groups = [...new Set(registry.map((record) => record.group))];
  const parts = groups.map((group) => {
    const records = registry.filter((record) => record.group === group);
    return [`### ${GROUPS[group]}`, "", ...records.map(section)].join("\n");
  });
  return [
    "In the examples a range is written row by row: cells are parted by commas, rows by semicolons.",
    "Arguments in brackets may be left out.",
    "",
    ...parts,
  ].join("\n");
}

/** `readme` with the reference put between its markers. Throws when a marker is missing. */
export function withReference(readme: string, registry: readonly FunctionRecord[]): string {
  const start = readme.indexOf(START);
  const end = readme.indexOf(END);
  if (start === -1 || end < start) throw new Error(`README.md needs the markers ${START} and ${END}, in this order.`);
  return `${readme.slice(0, start + START.length)}\n\n${reference(registry)}\n${readme.slice(end)}`;
}

if (process.argv[1] !== undefined && path.resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const now = await readFile(README, "utf8");
  const wanted = withReference(now, REGISTRY);
  if (!process.argv.includes("--check")) await writeFile(README, wanted);
  else if (wanted !== now) {
    process.stderr.write("The reference in README.md is stale: run npm run readme and commit it.\n");
    process.exitCode = 1;
  }
}
