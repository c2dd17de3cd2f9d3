/** The interval for a difference: every difference that the exact test would not rule out. */

import { type Block, differenceOf, permutationTest } from "./permutation.ts";
import { studentQuantile } from "./spread.ts";
import { mean, standardDeviation } from "./tolerance.ts";

/** In the values' own unit. */
export interface DifferenceInterval {
  readonly low: number;
  readonly high: number;
  /**
   * exact: differences that leave at least 2.5 % of all draws on either side, found by shifting one group. approximate:
   * Student's t (pairs and blocks by their differences, groups by Welch), for more plants than the exact way takes in
   * time; the ends then agree within 5 % of the width.
   */
  readonly method: "exact" | "approximate";
}

const EACH_TAIL = 0.025;
/** z that leaves 2.5 % above. */
const Z_TAIL = 1.959963984540054;
/** Up to so many values without blocks, or so many blocks, the exact way takes less than a second. */
const MOST_EXACT = 26;
/** Halvings of the range: the ends come out to a millionth of it. */
const HALVINGS = 22;

function shifted(blocks: readonly Block[], by: number): Block[] {
  return blocks.map(({ a, b }) => ({ a: a.map((value) => value - by), b }));
}

/** The place where `inside` turns from false (at `outer`) to true (at `inner`). */
function edge(outer: number, inner: number, inside: (difference: number) => boolean): number {
  let [out, into] = [outer, inner];
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (out + into) / 2;
    if (inside(middle)) into = middle;
    else out = middle;
  }
  return (out + into) / 2;
}

function exactInterval(blocks: readonly Block[]): DifferenceInterval | null {
  const gaps = blocks.flatMap(({ a, b }) => [Math.min(...a) - Math.max(...b), Math.max(...a) - Math.min(...b)]);
  const least = Math.min(...gaps);
  const most = Math.max(...gaps);
  // Beyond all gaps one draw alone is as extreme: with so few plants that even it is not rare, there is no end.
  const beyond = (most - least) * 1e-3 + 1e-9;
  const lowTail = (difference: number) => {
    const { atLeast, splits } = permutationTest(shifted(blocks, difference));
    return atLeast / splits > EACH_TAIL;
  };
  const highTail = (difference: number) => {
    const { atMost, splits } = permutationTest(shifted(blocks, difference));
    return atMost / splits > EACH_TAIL;
  };
  if (lowTail(least - beyond) || highTail(most + beyond)) return null;
  const middle = differenceOf(blocks);
  return {
    low: edge(least - beyond, middle, lowTail),
    high: edge(most + beyond, middle, highTail),
    method: "exact",
  };
}

function studentInterval(middle: number, error: number, freedom: number): DifferenceInterval {
  const half = studentQuantile(Z_TAIL, freedom) * error;
  return { low: middle - half, high: middle + half, method: "approximate" };
}

/** Welch's interval for two groups. */
function welchInterval({ a, b }: Block): DifferenceInterval {
  const [va, vb] = [a, b].map((values) => standardDeviation(values) ** 2 / values.length) as [number, number];
  const freedom = (va + vb) ** 2 / (va ** 2 / (a.length - 1) + vb ** 2 / (b.length - 1));
  return studentInterval(mean(a) - mean(b), Math.sqrt(va + vb), freedom);
}

/** Student's interval for the mean of the blocks' differences. */
function blockInterval(blocks: readonly Block[]): DifferenceInterval {
  const differences = blocks.map(({ a, b }) => mean(a) - mean(b));
  const error = standardDeviation(differences) / Math.sqrt(differences.length);
  return studentInterval(mean(differences), error, differences.length - 1);
}

/**
 * 95 % interval of mean of a minus mean of b. Null when there are too few plants for one to have ends: fewer than 6
 * pairs, or 4 and 4 plants without pairs. Throws BadInput as permutationTest does.
 */
export function differenceInterval(blocks: readonly Block[]): DifferenceInterval | null {
  const [only] = blocks;
  const size = blocks.length === 1 && only !== undefined ? only.a.length + only.b.length : blocks.length;
  if (size <= MOST_EXACT) return exactInterval(blocks);
  return blocks.length === 1 && only !== undefined ? welchInterval(only) : blockInterval(blocks);
}
