/** Under the doses of a batch: how much of its nitrogen comes as urea. */

import type { JSX } from "preact";
import { isBadInput } from "../src/core/errors.ts";
import { mixtureOf } from "../src/core/mixture.ts";
import { sayNumber } from "../src/core/saying.ts";
import type { Worked } from "./batch.ts";
import { dosesOf } from "./mix-state.ts";

/** Less is lost in the rounding of labels. */
const LEAST_SHARE = 0.02;

/** Common practice, no source: few bacteria in a reservoir turn urea into what roots take up. Null where there is none. */
export function ureaWords(worked: Pick<Worked, "lines" | "feeds" | "reached">): string | null {
  const all = worked.reached?.N ?? 0;
  if (!(all > 0)) return null;
  try {
    const { urea } = mixtureOf(dosesOf(worked), {}).nitrogenMgL;
    if (urea < LEAST_SHARE * all) return null;
    return `Of the ${sayNumber(all)} mg/L of nitrogen ${sayNumber(urea)} come as urea: counted, but in water culture it feeds slowly and unevenly.`;
  } catch (error) {
    if (!isBadInput(error)) throw error;
    return null;
  }
}

export function SlowNitrogen(props: { readonly worked: Worked }): JSX.Element | null {
  const words = ureaWords(props.worked);
  return words === null ? null : <p class="notice">{words}</p>;
}
