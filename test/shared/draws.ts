/** The random streams of the trials: the same in every run, others with `SEED=… npm test`. */

import { type Random, randomStream } from "../../src/build/sample-random.ts";

/** `npm run night` takes its time; every other run takes the first of the same draws. */
export const byNight = process.env.NIGHT === "1";

const seed = process.env.SEED ?? "20261125";

export function drawsFor(name: string): Random {
  return randomStream(`${name}, seed ${seed}`);
}
