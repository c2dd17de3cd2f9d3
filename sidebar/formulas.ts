/** Finding a custom function in the help that comes from the registry. */

import type { FunctionHelp } from "../src/app/contract.ts";

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
