/** Exact permutation tests of a difference of means: every way the groups could have been drawn, counted. */

import { choices, type Draw, greatestCommonDivisor, tailsByCounts, tailsByHalves } from "./draws.ts";
import { BadInput } from "./errors.ts";
import { mean } from "./tolerance.ts";

/** Values of both groups that were drawn together: one pair, one block, or, without blocks, everything. */
export interface Block {
  readonly a: readonly number[];
  readonly b: readonly number[];
}

/** Counts are exact whole numbers up to 2⁵³, and right to 15 figures beyond. */
export interface ExactTest {
  /** Mean of a minus mean of b, in the values' own unit; over blocks, weighted by their sizes. */
  readonly difference: number;
  /** In how many ways the groups could have been drawn. */
  readonly splits: number;
  /** Ways with a difference of at least the one seen; the one seen is among them. */
  readonly atLeast: number;
  /** Ways with at most the one seen. */
  readonly atMost: number;
  /** Ways at least as far from 0 as the one seen, on either side. */
  readonly asExtreme: number;
  /** Two-sided: asExtreme / splits. */
  readonly p: number;
}

/** Decimals that people write; with more, values are taken as they are. */
const MOST_DECIMALS = 9;
/** Whole numbers up to here add up exactly. */
const EXACT = 2 ** 52;
/** Values with more decimals count as tied within this share of the largest sum, for 0.1 + 0.2 is not 0.3. */
const TIE = 1e-10;

/** The power of ten that makes all values whole numbers, or null where that takes more than nine decimals. */
function decimalScale(values: readonly number[]): number | null {
  for (let decimals = 0, scale = 1; decimals <= MOST_DECIMALS; decimals++, scale *= 10) {
    const fits = (value: number) => {
      const scaled = value * scale;
      return Math.abs(scaled - Math.round(scaled)) <= Math.abs(scaled) * 4e-16;
    };
    if (values.every(fits)) return scale;
  }
  return null;
}

/**
 * Blocks as draws. A block of N plants with m in a and n in b, whose values sum to T, adds N (N S − m T) / (m n) to N
 * times the difference, S being the sum drawn for a: so each plant's share is N (N x − T) / (m n).
 */
function drawsOf(blocks: readonly Block[], scale: number, whole: boolean): Draw[] {
  const common = blocks.reduce(
    (so, { a, b }) => (so * a.length * b.length) / greatestCommonDivisor(so, a.length * b.length),
    1,
  );
  return blocks.map(({ a, b }) => {
    const values = [...a, ...b].map((value) => (whole ? Math.round(value * scale) : value));
    const total = values.reduce((sum, value) => sum + value, 0);
    const factor = (values.length * common) / (a.length * b.length);
    return { shares: values.map((value) => factor * (values.length * value - total)), choose: a.length };
  });
}

const sum = (values: readonly number[]) => values.reduce((so, value) => so + value, 0);

/** What all shares come to, signs left aside. */
function sizeOf(draws: readonly Draw[]): number {
  return sum(draws.map(({ shares }) => sum(shares.map(Math.abs))));
}

/**
 * The exact test of the difference of means over all ways in which each block's plants could have been drawn into
 * groups of the same sizes. A way counts when its difference is at least (≥) as large as the one seen. Values with up
 * to nine decimals are compared as whole numbers, so ties are ties; others within a share of 1e-10. Throws BadInput
 * for an empty group, and for more ways than can be counted: beyond 42 values without blocks or 42 pairs, unless they
 * are whole numbers, or have few digits, and so few different sums.
 */
export function permutationTest(blocks: readonly Block[]): ExactTest {
  const values = blocks.flatMap(({ a, b }) => [...a, ...b]);
  if (values.length === 0 || blocks.some(({ a, b }) => a.length === 0 || b.length === 0)) {
    throw new BadInput("empty-group", "A group holds no number. Give at least one value for each.");
  }
  const scale = decimalScale(values);
  const scaled = drawsOf(blocks, scale ?? 1, scale !== null);
  const whole = scale !== null && sizeOf(scaled) < EXACT;
  const draws = whole || scale === null ? scaled : drawsOf(blocks, 1, false);
  const tails = (whole ? tailsByCounts(draws) : null) ?? tailsByHalves(draws);
  if (tails === null) {
    const fewer = blocks.length === 1 ? "Give 42 or fewer in all" : "Give fewer";
    throw new BadInput(
      "too-many",
      `${values.length} values can be divided in more ways than can be counted in the time there is. ${fewer}, or values with fewer digits.`,
    );
  }
  const seen = sum(draws.map(({ shares, choose }) => sum(shares.slice(0, choose))));
  const slack = whole ? 0.5 : TIE * sizeOf(draws);
  const splits = draws.reduce((ways, { shares, choose }) => ways * choices(shares.length, choose), 1);
  const size = Math.abs(seen) - slack;
  const asExtreme = size <= 0 ? splits : tails.above(size) + tails.below(-size);
  return {
    difference: differenceOf(blocks),
    splits,
    atLeast: tails.above(seen - slack),
    atMost: tails.below(seen + slack),
    asExtreme,
    p: asExtreme / splits,
  };
}

/** Mean of a minus mean of b, each block weighted by how many values it holds. */
export function differenceOf(blocks: readonly Block[]): number {
  const count = sum(blocks.map(({ a, b }) => a.length + b.length));
  return sum(blocks.map(({ a, b }) => (a.length + b.length) * (mean(a) - mean(b)))) / count;
}

/** Pairs as blocks: the exact test of them flips the sign of each difference in every way (Fisher 1935). */
export function pairBlocks(pairs: readonly (readonly [a: number, b: number])[]): Block[] {
  return pairs.map(([a, b]) => ({ a: [a], b: [b] }));
}
