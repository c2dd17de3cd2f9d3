/** The household's pH range, from Settings. */

import { sayNumber } from "../src/core/saying.ts";
import { typedNumber } from "./typed.ts";

export interface PHRange {
  readonly low: number;
  readonly high: number;
}

/** Common practice, no source; as a new Settings tab has it. */
const USUAL: PHRange = { low: 5.5, high: 6 };

/** A limit that cannot be read, or a range the wrong way round, is the usual one. */
export function pHRange(settings: Readonly<Record<string, string>>): PHRange {
  const read = (name: string) => typedNumber(settings[name] ?? "", { what: name, min: 0, max: 14 }).value;
  const low = read("pH low") ?? USUAL.low;
  const high = read("pH high") ?? USUAL.high;
  return low < high ? { low, high } : USUAL;
}

/** "pH 6.9 is above 5.5 to 6.5." */
export function sayPH(pH: number, { low, high }: PHRange): string {
  const place = pH < low ? "below" : pH > high ? "above" : "within";
  return `pH ${sayNumber(pH)} is ${place} ${sayNumber(low)} to ${sayNumber(high)}.`;
}
