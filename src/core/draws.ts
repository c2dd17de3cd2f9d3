/** Ways to draw groups, and how many of them give a sum of at least or at most so much: each counted, none sampled. */

/** Of one block: each plant's share of the difference, and how many are drawn. The shares of all its plants sum to 0. */
export interface Draw {
  readonly shares: readonly number[];
  readonly choose: number;
}

/** Additions to spend; a few seconds on a slow host. */
const MOST_STEPS = 3e7;
/** Sums in each half that are sorted and matched: two million take about a second. */
const MOST_SUMS = 2 ** 21;

/** Ways to choose so many of a number of plants. */
export function choices(count: number, choose: number): number {
  let ways = 1;
  for (let k = 1; k <= choose; k++) ways = (ways * (count - choose + k)) / k;
  return Math.round(ways);
}

/** Sums of all subsets, by the size of the subset. */
function sumsBySize(shares: readonly number[]): Float64Array[] {
  let sums: Float64Array[] = [new Float64Array(1)];
  for (const share of shares) {
    sums = [...sums, new Float64Array(0)].map((without, size) => {
      const smaller = sums[size - 1] ?? new Float64Array(0);
      const all = new Float64Array(without.length + smaller.length);
      all.set(without);
      for (let k = 0; k < smaller.length; k++) all[without.length + k] = (smaller[k] as number) + share;
      return all;
    });
  }
  return sums;
}

/** Sums of one choice from every draw. */
function sumsOver(draws: readonly Draw[]): Float64Array {
  let sums = new Float64Array(1);
  for (const { shares, choose } of draws) {
    const own = sumsBySize(shares)[choose] as Float64Array;
    const all = new Float64Array(sums.length * own.length);
    for (let k = 0; k < all.length; k++) {
      all[k] = (sums[k % sums.length] as number) + (own[Math.floor(k / sums.length)] as number);
    }
    sums = all;
  }
  return sums;
}

/** How many ways lie in a tail. */
export interface Tails {
  /** Ways with a sum of at least a bound. */
  above(bound: number): number;
  below(bound: number): number;
}

/** Pairs, one from each of two sorted lists, that sum to at least the bound. */
function pairsAbove(left: Float64Array, right: Float64Array, bound: number): number {
  let from = right.length;
  let count = 0;
  for (let k = 0; k < left.length; k++) {
    while (from > 0 && (left[k] as number) + (right[from - 1] as number) >= bound) from -= 1;
    count += right.length - from;
  }
  return count;
}

function pairsBelow(left: Float64Array, right: Float64Array, bound: number): number {
  let to = right.length;
  let count = 0;
  for (let k = 0; k < left.length; k++) {
    while (to > 0 && (left[k] as number) + (right[to - 1] as number) > bound) to -= 1;
    count += to;
  }
  return count;
}

/**
 * Every way counted by halves [1]: the sums of each half are listed and sorted, then matched. Null when a half would
 * hold more than two million.
 */
export function tailsByHalves(draws: readonly Draw[]): Tails | null {
  const pairs: [Float64Array, Float64Array][] = [];
  const [only] = draws;
  if (draws.length === 1 && only !== undefined) {
    const middle = only.shares.length >> 1;
    if (2 ** (only.shares.length - middle) > MOST_SUMS) return null;
    const left = sumsBySize(only.shares.slice(0, middle));
    const right = sumsBySize(only.shares.slice(middle));
    left.forEach((sums, size) => {
      const rest = right[only.choose - size];
      if (rest !== undefined) pairs.push([sums, rest]);
    });
  } else {
    const halves: { draws: Draw[]; ways: number }[] = [
      { draws: [], ways: 1 },
      { draws: [], ways: 1 },
    ];
    for (const draw of draws) {
      const shares = draw.shares.length;
      if (shares > 21) return null;
      const [first, second] = halves as [{ draws: Draw[]; ways: number }, { draws: Draw[]; ways: number }];
      const half = first.ways <= second.ways ? first : second;
      half.draws.push(draw);
      half.ways *= choices(shares, draw.choose);
    }
    if (halves.some(({ ways }) => ways > MOST_SUMS)) return null;
    pairs.push(halves.map((half) => sumsOver(half.draws)) as [Float64Array, Float64Array]);
  }
  for (const pair of pairs) for (const sums of pair) sums.sort();
  return {
    above: (bound) => pairs.reduce((count, [left, right]) => count + pairsAbove(left, right, bound), 0),
    below: (bound) => pairs.reduce((count, [left, right]) => count + pairsBelow(left, right, bound), 0),
  };
}

export function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

/** Sums of one draw, each with its number of ways; null when that takes more than `steps` additions. */
function sumsOf({ shares, choose }: Draw, steps: number): Map<number, number> | null {
  const least = Math.min(...shares);
  const unit = shares.reduce((so, share) => greatestCommonDivisor(so, share - least), 0) || 1;
  const units = shares.map((share) => (share - least) / unit);
  const largest = units
    .slice()
    .sort((a, b) => b - a)
    .slice(0, choose)
    .reduce((sum, value) => sum + value, 0);
  if (shares.length * choose * (largest + 1) > steps) return null;
  const ways = Array.from({ length: choose + 1 }, () => new Float64Array(largest + 1));
  (ways[0] as Float64Array)[0] = 1;
  units.forEach((value, taken) => {
    for (let size = Math.min(choose, taken + 1); size > 0; size--) {
      const from = ways[size - 1] as Float64Array;
      const to = ways[size] as Float64Array;
      for (let sum = largest; sum >= value; sum--) to[sum] = (to[sum] as number) + (from[sum - value] as number);
    }
  });
  const sums = new Map<number, number>();
  (ways[choose] as Float64Array).forEach((count, sum) => {
    if (count > 0) sums.set(choose * least + unit * sum, count);
  });
  return sums;
}

/**
 * Every sum of one choice from each draw, with the number of ways to it (Pagano & Tritchler 1983). Shares are whole
 * numbers below 2⁵². Null when that takes more than thirty million additions.
 */
function distributionOf(draws: readonly Draw[]): Map<number, number> | null {
  let all = new Map([[0, 1]]);
  let steps = MOST_STEPS;
  for (const draw of draws) {
    const own = sumsOf(draw, steps);
    if (own === null) return null;
    // A map costs about ten times what an array does.
    steps -= 10 * all.size * own.size;
    if (steps < 0) return null;
    const next = new Map<number, number>();
    for (const [sum, ways] of all) {
      for (const [more, count] of own) next.set(sum + more, (next.get(sum + more) ?? 0) + ways * count);
    }
    all = next;
  }
  return all;
}

/** The same by adding up how often each sum comes; only for shares that are whole numbers below 2⁵². Null where there are too many sums. */
export function tailsByCounts(draws: readonly Draw[]): Tails | null {
  const counts = distributionOf(draws);
  if (counts === null) return null;
  const over = (counted: (sum: number) => boolean) => {
    let count = 0;
    for (const [sum, ways] of counts) if (counted(sum)) count += ways;
    return count;
  };
  return { above: (bound) => over((sum) => sum >= bound), below: (bound) => over((sum) => sum <= bound) };
}

/*
 * [1] Horowitz & Sahni 1974, J. ACM 21, 277: two lists instead of every subset; Pagano & Tritchler 1983, J. Amer.
 *     Statist. Assoc. 78, 435, for counting permutation distributions exactly.
 */
