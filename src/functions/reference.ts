/** All custom functions with their words, in the order of the registry: for stubs, README, panel and tests, not for the bundle. */

import { CHECK_WORDS } from "./check-words.ts";
import { FEED_CHEMISTRY_WORDS } from "./feed-chemistry-words.ts";
import { FEED_LEFT_WORDS } from "./feed-left-words.ts";
import { FEED_WORDS } from "./feed-words.ts";
import { METER_HISTORY_WORDS } from "./meter-history-words.ts";
import { METER_WORDS } from "./meter-words.ts";
import { POT_WORDS } from "./pot-words.ts";
import { REGISTRY } from "./registry.ts";
import { ROOT_WORDS } from "./root-words.ts";
import { TRIAL_WORDS } from "./trial-words.ts";
import { WATER_CHEMISTRY_WORDS } from "./water-chemistry-words.ts";
import { WATER_WORDS } from "./water-words.ts";
import type { FunctionReference, FunctionWords } from "./words.ts";

const WORDS: Readonly<Record<string, FunctionWords>> = {
  ...FEED_WORDS,
  ...FEED_CHEMISTRY_WORDS,
  ...FEED_LEFT_WORDS,
  ...WATER_WORDS,
  ...WATER_CHEMISTRY_WORDS,
  ...METER_WORDS,
  ...METER_HISTORY_WORDS,
  ...ROOT_WORDS,
  ...POT_WORDS,
  ...CHECK_WORDS,
  ...TRIAL_WORDS,
};

function said<Said>(found: Said | undefined, of: string): Said {
  if (found === undefined) throw new Error(`Nothing is said about ${of}.`);
  return found;
}

export const REFERENCE: readonly FunctionReference[] = REGISTRY.map(({ name, group, args }) => {
  const words = said(WORDS[name], name);
  return {
    ...words,
    name,
    group,
    args: args.map((argument) => ({ ...argument, help: said(words.args[argument.name], `${name}: ${argument.name}`) })),
  };
});
