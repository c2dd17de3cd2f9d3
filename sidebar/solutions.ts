/** Names offered where one says what was poured: the targets and the waters of the sheet. */

import type { Loaded } from "../src/app/contract.ts";

const MOST = 40;

export function solutionsOf({ targets, waters }: Pick<Loaded, "targets" | "waters">): readonly string[] {
  const names = [...targets, ...waters].map(({ fields }) => fields.Target ?? fields.Water);
  return [...new Set(names)].filter((name) => typeof name === "string").slice(0, MOST);
}
