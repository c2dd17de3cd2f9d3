/** Examples, sources and see-also of every custom function: for the README and the tests, not for the bundle. */

import { FEED_REFERENCE } from "./feed-examples.ts";
import { METER_REFERENCE } from "./meter-examples.ts";
import type { FunctionReference } from "./record.ts";
import { ROOT_REFERENCE } from "./root-examples.ts";
import { WATER_REFERENCE } from "./water-examples.ts";

export const REFERENCE: readonly FunctionReference[] = [
  ...FEED_REFERENCE,
  ...WATER_REFERENCE,
  ...METER_REFERENCE,
  ...ROOT_REFERENCE,
];

/** What belongs to the function `name`. Throws when nothing does. */
export function referenceOf(name: string): FunctionReference {
  const found = REFERENCE.find((reference) => reference.name === name);
  if (found === undefined) throw new Error(`${name} has no examples and no sources.`);
  return found;
}
