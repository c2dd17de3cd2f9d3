/** Random numbers from a recorded number, the same on every machine: xoshiro128** 1.1 seeded by SplitMix32. */

import { BadInput } from "./errors.ts";
import { sayGiven } from "./saying.ts";

export interface RandomNumbers {
  /** A whole number from 0 to 2³² − 1. */
  next(): number;
  /** From 0 up to, not including, 1. */
  fraction(): number;
  /** A whole number from 0 up to, not including, `count`; each equally likely. */
  below(count: number): number;
  /** Normal, mean 0 and standard deviation 1 (Box & Muller 1958); for simulations, not for records. */
  normal(): number;
}

const TWO_32 = 4_294_967_296;
/** The largest number a draw may be recorded under. */
export const LAST_DRAW = 99_999_999;

function turned(value: number, bits: number): number {
  return (value << bits) | (value >>> (32 - bits));
}

/** The four words of state that a recorded number stands for: SplitMix32, a Weyl sequence through the finaliser of MurmurHash3. */
function stateOf(seed: number): [number, number, number, number] {
  let sum = seed;
  const word = (): number => {
    sum = (sum + 0x9e3779b9) | 0;
    let mixed = sum;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return mixed ^ (mixed >>> 16);
  };
  return [word(), word(), word(), word()];
}

/** Numbers from four words of state, not all 0 [1]. */
export function randomFrom(state: readonly [number, number, number, number]): RandomNumbers {
  let [s0, s1, s2, s3] = state;
  const next = (): number => {
    const result = Math.imul(turned(Math.imul(s1, 5), 7), 9);
    const t = s1 << 9;
    s2 ^= s0;
    s3 ^= s1;
    s1 ^= s2;
    s0 ^= s3;
    s2 ^= t;
    s3 = turned(s3, 11);
    return result >>> 0;
  };
  const fraction = (): number => next() / TWO_32;
  return {
    next,
    fraction,
    below(count) {
      // Numbers at the top that would favour the first few are drawn again.
      const fair = TWO_32 - (TWO_32 % count);
      let drawn = next();
      while (drawn >= fair) drawn = next();
      return drawn % count;
    },
    normal: () => Math.sqrt(-2 * Math.log(1 - fraction())) * Math.cos(2 * Math.PI * fraction()),
  };
}

/** Numbers that belong to a recorded whole number from 0 to 99,999,999. Throws BadInput for any other. */
export function randomOf(seed: number): RandomNumbers {
  if (!Number.isInteger(seed) || seed < 0 || seed > LAST_DRAW) {
    throw new BadInput("no-draw", `The draw is ${sayGiven(seed)}. Give a whole number from 0 to ${LAST_DRAW}.`);
  }
  return randomFrom(stateOf(seed));
}

/** The items in random order (Fisher & Yates; Durstenfeld 1964, algorithm 235). */
export function shuffled<Item>(items: readonly Item[], random: RandomNumbers): Item[] {
  const order = items.slice();
  for (let last = order.length - 1; last > 0; last--) {
    const at = random.below(last + 1);
    [order[last], order[at]] = [order[at] as Item, order[last] as Item];
  }
  return order;
}

/*
 * [1] Blackman & Vigna 2021, Scrambled linear pseudorandom number generators, ACM Trans. Math. Softw. 47, 36; xoshiro128** 1.1.
 */
