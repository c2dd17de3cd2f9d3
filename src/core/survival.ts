/** Times until something happens, when not all have been waited for to the end: Kaplan–Meier curves and the log-rank test. */

import { chiSquareAbove } from "./chi-square.ts";
import { BadInput } from "./errors.ts";
import { sayGiven } from "./saying.ts";

export interface Waiting {
  /** Days waited, 0 or more. */
  readonly days: number;
  /** It happened then; false: it had not yet happened, and nobody knows when it would have. */
  readonly happened: boolean;
}

/** The curve after one day on which it happened. */
export interface SurvivalStep {
  readonly days: number;
  /** Still waiting just before that day. */
  readonly atRisk: number;
  readonly happened: number;
  /** Estimated share for whom it has not happened by the end of that day. */
  readonly share: number;
}

export interface SurvivalCurve {
  readonly steps: readonly SurvivalStep[];
  readonly count: number;
  readonly happened: number;
  /** Longest wait in the list, days; the curve says nothing beyond it. */
  readonly lastDays: number;
  /** First day by whose end it has happened for half; null when the curve does not come down that far. */
  readonly median: number | null;
}

export interface LogRank {
  readonly chiSquare: number;
  readonly freedom: number;
  /** Upper tail of chi-square; large samples only, see TOO_FEW. */
  readonly p: number;
  /** Per group, in their order. */
  readonly observed: readonly number[];
  readonly expected: readonly number[];
}

/** With fewer that happened than this in a group, nothing is said of a difference: chi-square is no guide there. Our own choice. */
export const TOO_FEW = 5;

function check(waits: readonly Waiting[]): void {
  for (const { days } of waits) {
    if (!(days >= 0 && Number.isFinite(days))) {
      throw new BadInput("out-of-bounds", `A wait is ${sayGiven(days)} days. Give 0 or more.`);
    }
  }
}

function daysItHappened(waits: readonly Waiting[]): number[] {
  return [...new Set(waits.filter(({ happened }) => happened).map(({ days }) => days))].sort((a, b) => a - b);
}

const atRiskOn = (waits: readonly Waiting[], day: number) => waits.filter(({ days }) => days >= day).length;
const happenedOn = (waits: readonly Waiting[], day: number) =>
  waits.filter(({ days, happened }) => happened && days === day).length;

/**
 * Product-limit estimate [1]. Somebody whose wait breaks off on a day on which it happens for others still counts as
 * waiting on that day. Throws BadInput for a wait below 0.
 */
export function survivalCurve(waits: readonly Waiting[]): SurvivalCurve {
  check(waits);
  const steps: SurvivalStep[] = [];
  let share = 1;
  for (const days of daysItHappened(waits)) {
    const atRisk = atRiskOn(waits, days);
    const happened = happenedOn(waits, days);
    share *= 1 - happened / atRisk;
    steps.push({ days, atRisk, happened, share });
  }
  // A half reached exactly counts as reached, but 1/3 · 3/2 may come out a hair above.
  const median = steps.find((step) => step.share <= 0.5 + 1e-12)?.days ?? null;
  return {
    steps,
    count: waits.length,
    happened: waits.filter(({ happened }) => happened).length,
    lastDays: waits.reduce((most, { days }) => Math.max(most, days), 0),
    median,
  };
}

/** Solves the symmetric system A x = b by elimination; the matrix of a log-rank test without its last group has an inverse. */
function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, k) => [...row, right[k] as number]);
  const size = rows.length;
  for (let k = 0; k < size; k++) {
    const pivot = rows[k] as number[];
    for (let i = k + 1; i < size; i++) {
      const row = rows[i] as number[];
      const factor = (row[k] as number) / (pivot[k] as number);
      for (let j = k; j <= size; j++) row[j] = (row[j] as number) - factor * (pivot[j] as number);
    }
  }
  const x = new Array<number>(size).fill(0);
  for (let k = size - 1; k >= 0; k--) {
    const row = rows[k] as number[];
    let rest = row[size] as number;
    for (let j = k + 1; j < size; j++) rest -= (row[j] as number) * (x[j] as number);
    x[k] = rest / (row[k] as number);
  }
  return x;
}

/**
 * Log-rank test that it happens alike in all groups [2], by the hypergeometric variance. Null when fewer than two
 * groups have anybody waiting when it first happens, or it never happens. Throws BadInput for a wait below 0.
 */
export function logRank(groups: readonly (readonly Waiting[])[]): LogRank | null {
  const all = groups.flat();
  check(all);
  const observed = groups.map((waits) => waits.filter(({ happened }) => happened).length);
  const expected = groups.map(() => 0);
  const variance = groups.map(() => groups.map(() => 0));
  for (const day of daysItHappened(all)) {
    const atRisk = groups.map((waits) => atRiskOn(waits, day));
    const total = atRisk.reduce((sum, count) => sum + count, 0);
    const happened = happenedOn(all, day);
    const spread = total > 1 ? (happened * (total - happened)) / (total - 1) : 0;
    atRisk.forEach((mine, g) => {
      expected[g] = (expected[g] as number) + (happened * mine) / total;
      atRisk.forEach((theirs, h) => {
        const row = variance[g] as number[];
        row[h] = (row[h] as number) + spread * (mine / total) * ((g === h ? 1 : 0) - theirs / total);
      });
    });
  }
  // Groups in which nobody was waiting any more when it first happened say nothing; of the rest one follows from the others.
  const told = groups.map((_, g) => g).filter((g) => ((variance[g] as number[])[g] as number) > 1e-12);
  if (told.length < 2) return null;
  const kept = told.slice(0, -1);
  const off = kept.map((g) => (observed[g] as number) - (expected[g] as number));
  const weights = solved(
    kept.map((g) => kept.map((h) => (variance[g] as number[])[h] as number)),
    off,
  );
  const chiSquare = weights.reduce((sum, weight, k) => sum + weight * (off[k] as number), 0);
  return { chiSquare, freedom: kept.length, p: chiSquareAbove(chiSquare, kept.length), observed, expected };
}

/*
 * [1] Kaplan & Meier 1958, J. Amer. Statist. Assoc. 53, 457.
 * [2] Mantel 1966, Cancer Chemotherapy Reports 50, 163; Peto & Peto 1972, J. R. Statist. Soc. A 135, 185.
 */
