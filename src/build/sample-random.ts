/** Random numbers that come out the same on every machine, so that the sample sheet can be made again. */

export interface Random {
  /** From 0 up to, not including, 1. */
  next(): number;
  between(low: number, high: number): number;
  /** Whole number, both ends included. */
  whole(low: number, high: number): number;
  chance(probability: number): boolean;
  pick<T>(choices: readonly T[]): T;
  /** Near enough to normal, mean 0 and standard deviation 1: twelve draws summed, so that no library's sine or logarithm enters. */
  normal(): number;
}

/** 32-bit FNV-1a hash (Fowler, Noll, Vo; IETF draft-eastlake-fnv), so that each plant draws from a stream of its own. */
function hash(text: string): number {
  let value = 0x811c9dc5;
  for (let index = 0; index < text.length; index++) {
    value = Math.imul(value ^ text.charCodeAt(index), 0x01000193);
  }
  return value >>> 0;
}

/** A stream named `name`: a Weyl sequence through a 32-bit mixing function. Good enough for a demonstration, not for statistics. */
export function randomStream(name: string): Random {
  let state = hash(name);
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const whole = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  return {
    next,
    whole,
    between: (low, high) => low + next() * (high - low),
    chance: (probability) => next() < probability,
    pick: <T>(choices: readonly T[]): T => {
      const choice = choices[whole(0, choices.length - 1)];
      if (choice === undefined) throw new Error(`Nothing to pick from in ${name}.`);
      return choice;
    },
    normal: () => {
      let sum = -6;
      for (let draw = 0; draw < 12; draw++) sum += next();
      return sum;
    },
  };
}
