/** Limits for single readings: the individuals chart, and tolerance intervals of a normal distribution. */

import { chiSquareQuantile, normalQuantile } from "./chi-square.ts";

/** Mean range of two normal readings over their standard deviation, to the three decimals of control chart tables [1]; exactly 2/√π = 1.12838. */
export const D2_OF_TWO = 1.128;

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Sample standard deviation, over n − 1; for at least two values. */
export function standardDeviation(values: readonly number[]): number {
  const middle = mean(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1));
}

/** Limits in the readings' own unit. */
export interface Chart {
  readonly mean: number;
  /** Mean distance from each reading to the one before. */
  readonly meanMovingRange: number;
  readonly low: number;
  readonly high: number;
}

/** Individuals chart of at least two readings in their order: mean ± 3 × mean moving range / d2 [1]. */
export function individualsChart(readings: readonly number[], d2 = D2_OF_TWO): Chart {
  const middle = mean(readings);
  const ranges = readings.slice(1).map((reading, k) => Math.abs(reading - (readings[k] as number)));
  const meanMovingRange = mean(ranges);
  const half = (3 * meanMovingRange) / d2;
  return { mean: middle, meanMovingRange, low: middle - half, high: middle + half };
}

export interface ToleranceTask {
  /** How many readings there are, at least 2. */
  readonly count: number;
  /** Share of all readings to hold, above 0 and below 1. */
  readonly content: number;
  /** Probability that an interval made so does hold it, above 0 and below 1. */
  readonly confidence: number;
}

/** k2: mean ± k2 · s holds the content with the confidence, by Howe's approximation as the handbook has it [2]; within 1 % of exact tables from 4 readings on. */
export function toleranceFactor({ count, content, confidence }: ToleranceTask): number {
  const z = normalQuantile((1 + content) / 2);
  const freedom = count - 1;
  return z * Math.sqrt((freedom * (1 + 1 / count)) / chiSquareQuantile(1 - confidence, freedom));
}

/** k1: the content lies below mean + k1 · s with the confidence, by Natrella's approximation [2]; NaN-free from 3 readings on at 95 %. */
export function oneSidedToleranceFactor({ count, content, confidence }: ToleranceTask): number {
  const zContent = normalQuantile(content);
  const zConfidence = normalQuantile(confidence);
  const a = 1 - zConfidence ** 2 / (2 * (count - 1));
  const b = zContent ** 2 - zConfidence ** 2 / count;
  return (zContent + Math.sqrt(zContent ** 2 - a * b)) / a;
}

/*
 * [1] NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 Individuals control charts: d2 = 1.128.
 * [2] NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.6.3 Tolerance intervals for a normal distribution; Howe 1969,
 *     J. Amer. Statist. Assoc. 64, 610; Natrella 1963, Experimental Statistics, NBS Handbook 91.
 */
