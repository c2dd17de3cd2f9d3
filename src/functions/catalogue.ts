/** The reference as others print it: calls and examples in one line, and the help of the panel. */

import { REFERENCE } from "./reference.ts";
import type { Example, ExampleValue, FunctionReference } from "./words.ts";

/** Help on one custom function as the panel shows it. */
export interface FunctionHelp {
  readonly name: string;
  readonly summary: string;
  /** `ROOT_LAST(plants, log, [heading], [events])`; what stands in brackets may be left out. */
  readonly call: string;
  readonly args: readonly { readonly name: string; readonly help: string; readonly optional: boolean }[];
  readonly result: string;
  /** Formulas as a person types them. */
  readonly examples: readonly string[];
}

/** The call with its arguments' names. */
export function callOf({ name, args }: FunctionReference): string {
  const names = args.map((argument) => (argument.optional === true ? `[${argument.name}]` : argument.name));
  return `${name}(${names.join(", ")})`;
}

/** Help on every custom function, in the order of the reference. */
export function functionHelp(): FunctionHelp[] {
  return REFERENCE.map((one) => ({
    name: one.name,
    summary: one.summary,
    call: callOf(one),
    args: one.args.map(({ name, help, optional }) => ({ name, help, optional: optional === true })),
    result: one.result,
    examples: one.examples.map(({ formula }) => formula),
  }));
}

function cellText(cell: Exclude<ExampleValue, readonly unknown[]>): string {
  if (typeof cell === "object") return cell.day;
  return typeof cell === "string" && cell === "" ? '""' : String(cell);
}

/** A value of an example in one line: cells parted by commas, rows by semicolons. */
export function valueText(value: ExampleValue): string {
  return isRange(value) ? value.map((row) => row.map(cellText).join(", ")).join("; ") : cellText(value);
}

export function isRange(value: ExampleValue): value is Extract<ExampleValue, readonly unknown[]> {
  return Array.isArray(value);
}

/** The formula's arguments as they are typed: "A2:A3", "\"10-5-5\"". Commas inside quotes and brackets do not part them. */
export function typedArguments({ formula }: Example): string[] {
  const inside = /^=[A-Z0-9_]+\((.*)\)$/.exec(formula)?.[1];
  if (inside === undefined) throw new Error(`This is no formula: ${formula}`);
  return (inside.match(/(?:"[^"]*"|'[^']*'|\([^)]*\)|[^,"'(])+/g) ?? []).map((typed) => typed.trim());
}
