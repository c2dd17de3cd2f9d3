/** Help on the custom functions: reading it from the page, where the build put it, and finding a function in it. */

import { isRecord } from "./drafts.ts";

/** What the build says about one custom function. */
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

function isHelp(entry: unknown): entry is FunctionHelp {
  if (!isRecord(entry)) return false;
  const { name, summary, call, args, result, examples } = entry;
  return (
    [name, summary, call, result].every((text) => typeof text === "string") &&
    Array.isArray(args) &&
    args.every(
      (one) =>
        isRecord(one) &&
        typeof one.name === "string" &&
        typeof one.help === "string" &&
        typeof one.optional === "boolean",
    ) &&
    Array.isArray(examples) &&
    examples.every((example) => typeof example === "string")
  );
}

/** The help as it stands in the page; nothing where it is missing or spoilt, for the panel works without it. */
export function readFormulas(json: string | null | undefined): readonly FunctionHelp[] {
  try {
    const read: unknown = JSON.parse(json ?? "[]");
    return Array.isArray(read) ? read.filter(isHelp) : [];
  } catch {
    return [];
  }
}

/** The functions that hold every word of `find` somewhere, those with it in the name first. */
export function findFunctions(functions: readonly FunctionHelp[], find: string): readonly FunctionHelp[] {
  const words = find
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
  const inName = (entry: FunctionHelp): boolean => words.every((word) => entry.name.toLowerCase().includes(word));
  const anywhere = (entry: FunctionHelp): boolean => {
    const text = [entry.name, entry.summary, entry.result, ...entry.args.map(({ name, help }) => `${name} ${help}`)]
      .join(" ")
      .toLowerCase();
    return words.every((word) => text.includes(word));
  };
  const found = functions.filter(anywhere);
  return [...found.filter(inName), ...found.filter((entry) => !inName(entry))];
}
