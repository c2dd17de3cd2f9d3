/** Writes the reference of the custom functions into README.md between two markers; with --check only compares. A file may be named instead. */

import { readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { callOf, isRange, typedArguments, valueText } from "../functions/catalogue.ts";
import { REFERENCE } from "../functions/reference.ts";
import type { Example, ExampleCell, ExampleValue, FunctionReference } from "../functions/words.ts";
import { withDecimalCommas } from "./separators.ts";

const README = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../../README.md");
const START = "<!-- reference: start -->";
const END = "<!-- reference: end -->";

const GROUPS: Readonly<Record<FunctionReference["group"], string>> = {
  FEED: "Feeds",
  WATER: "Water",
  METER: "Meters",
  ROOT: "Roots",
  POT: "Reservoirs",
  CHECK: "When to test",
  TRIAL: "Trials",
};

/** What holds for every function, as the runner does it. */
const RULES = [
  "- Give a range and the answer is a range, row by row; one value beside a range is used for every row. Give one column: several are refused.",
  "- The first range leads: its blank rows at the end are dropped, a blank cell in it gives a blank row, and where another range is shorter its cells count as blank.",
  "- A bad row says `? ` and what is wrong, and the rows around it are answered. A bad single value gives an error with the same sentence.",
  "- A table is a range with a heading row. Columns are found by heading in any order, case and spaces ignored; others are left alone. Where a table stands for one thing (a water, a target), give the heading row and one row.",
  "- Numbers may be typed as `1.2`, `1,2` or with the expected unit; what can be read in two ways, such as `1,234`, is refused.",
  "- Arguments in brackets may be left out. Volumes are US measures; EC is in mS/cm at 25 °C.",
  "- In the examples a range is written row by row: cells are parted by commas, rows by semicolons.",
  "- A sheet that writes decimals with a comma parts arguments by semicolons and, in braces, the cells of a row by backslashes: `=METER_AT25(1,5; 20)`, `{1\\2; 3\\4}`.",
];

/** A range of several columns and rows as a table in the list; its first row is the heading row. */
function smallTable(caption: string, rows: readonly (readonly ExampleCell[])[]): string {
  const line = (row: readonly ExampleCell[]) =>
    `  | ${row.map((cell) => (cell === "" ? " " : valueText(cell))).join(" | ")} |`;
  const [headings = [], ...below] = rows;
  return ["", `  ${caption}`, "", line(headings), `  |${" --- |".repeat(headings.length)}`, ...below.map(line)].join(
    "\n",
  );
}

function isLarge(value: ExampleValue): value is readonly (readonly ExampleCell[])[] {
  return isRange(value) && value.length > 1 && (value[0]?.length ?? 0) > 1;
}

function exampleLines(example: Example): string {
  const typed = typedArguments(example);
  const inline: string[] = [];
  const tables: string[] = [];
  example.args.forEach((value, at) => {
    const reference = typed[at] ?? "";
    if (!/[A-Z]+\d+$/.test(reference)) return;
    if (isLarge(value)) tables.push(smallTable(`\`${reference}\` holds`, value));
    else inline.push(`\`${reference}\` holds \`${valueText(value)}\``);
  });
  const where = inline.length > 0 ? `, where ${inline.join(" and ")}` : "";
  const gives = isLarge(example.gives) ? "a table" : `\`${valueText(example.gives)}\``;
  if (isLarge(example.gives)) tables.push(smallTable("and the answer is", example.gives));
  const end = tables.length > 0 ? "\n" : "";
  return `- \`${example.formula}\` gives ${gives}${where}. *${example.source}*${tables.map((table) => `\n${table}`).join("")}${end}`;
}

/** The first example once more, for a sheet with decimal commas; nothing where it is typed the same there. */
function commaLine(example: Example | undefined): string[] {
  const typed = example === undefined ? "" : withDecimalCommas(example.formula);
  return typed === (example?.formula ?? "") ? [] : [`With decimal commas: \`${typed}\`.`, ""];
}

function section(record: FunctionReference): string {
  const { examples, sources, seeAlso } = record;
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
    ...examples.map(exampleLines),
    "",
    ...commaLine(examples[0]),
    `Sources: ${sources.join("; ")}.`,
    "",
    `See also ${seeAlso.map((name) => `[${name}](#${name.toLowerCase()})`).join(", ")}.`,
    "",
  ].join("\n");
}

/** The reference as it stands between the markers. */
export function reference(functions: readonly FunctionReference[]): string {
  const groups = [...new Set(functions.map((record) => record.group))];
  const parts = groups.map((group) => {
    const records = functions.filter((record) => record.group === group);
    return [`### ${GROUPS[group]}`, "", ...records.map(section)].join("\n");
  });
  return [...RULES, "", ...parts].join("\n");
}

/** `readme` with the reference put between its markers. Throws when a marker is missing. */
export function withReference(readme: string, functions: readonly FunctionReference[]): string {
  const start = readme.indexOf(START);
  const end = readme.indexOf(END);
  if (start === -1 || end < start) throw new Error(`README.md needs the markers ${START} and ${END}, in this order.`);
  return `${readme.slice(0, start + START.length)}\n\n${reference(functions)}\n${readme.slice(end)}`;
}

if (process.argv[1] !== undefined && path.resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const given = process.argv.slice(2);
  const file = given.find((argument) => !argument.startsWith("--")) ?? README;
  const now = await readFile(file, "utf8");
  const wanted = withReference(now, REFERENCE);
  if (!given.includes("--check")) await writeFile(file, wanted);
  else if (wanted !== now) {
    process.stderr.write("The reference in README.md is stale: run npm run readme and commit it.\n");
    process.exitCode = 1;
  }
}
