/** Non-negative least squares by an active set: the x ≥ 0 that makes |Ax − b| least. */

import { NoConvergence } from "./errors.ts";

export interface NonNegativeFit {
  /** One for each column, none negative. */
  readonly x: readonly number[];
  /** |Ax − b|, in the unit of b. */
  readonly residual: number;
  /** Aᵀ(b − Ax) for each column as given: 0 where x > 0, not above 0 elsewhere, within rounding. */
  readonly gradient: readonly number[];
}

type Vector = readonly number[];

/** A column whose part outside the others is smaller than this share of it counts as a mix of them. */
const DEPENDENT = 1e-9;
/** A direction must promise at least this share of |b| to be worth going. */
const WORTHWHILE = 1e-12;

const dot = (a: Vector, b: Vector): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
};

/**
 * Least squares over columns of length 1 that are no mixes of each other, by Gram–Schmidt done twice
 * (twice is enough). Null when a column is a mix of those before it.
 */
function leastSquares(columns: readonly Vector[], wanted: Vector): number[] | null {
  const basis: number[][] = [];
  const upper: number[][] = [];
  const projected: number[] = [];
  const left = wanted.slice();
  for (const column of columns) {
    const rest = column.slice();
    const above: number[] = new Array<number>(basis.length).fill(0);
    for (let pass = 0; pass < 2; pass++) {
      for (let k = 0; k < basis.length; k++) {
        const q = basis[k] as number[];
        const share = dot(q, rest);
        above[k] = (above[k] as number) + share;
        for (let i = 0; i < rest.length; i++) rest[i] = (rest[i] as number) - share * (q[i] as number);
      }
    }
    const length = Math.sqrt(dot(rest, rest));
    if (!(length > DEPENDENT)) return null;
    for (let i = 0; i < rest.length; i++) rest[i] = (rest[i] as number) / length;
    above.push(length);
    const share = dot(rest, left);
    for (let i = 0; i < left.length; i++) left[i] = (left[i] as number) - share * (rest[i] as number);
    basis.push(rest);
    upper.push(above);
    projected.push(share);
  }
  const x = projected;
  for (let k = x.length - 1; k >= 0; k--) {
    const r = upper[k] as number[];
    const value = (x[k] as number) / (r[k] as number);
    x[k] = value;
    for (let i = 0; i < k; i++) x[i] = (x[i] as number) - value * (r[i] as number);
  }
  return x;
}

/**
 * Lawson & Hanson 1974, Solving Least Squares Problems, ch. 23, algorithm NNLS, on columns scaled to length 1.
 * A column joins only when it is no mix of those in use and its own coefficient comes out positive, so each
 * round lowers the residual and no set comes back. A column of zeros stays at 0; of equal columns the first is used.
 * `columns` are the columns of A, each as long as `wanted`. Throws NoConvergence with the residual after
 * 30 rounds a column, which no problem has been seen to need.
 */
export function nonNegativeLeastSquares(columns: readonly Vector[], wanted: Vector): NonNegativeFit {
  const lengths = columns.map((column) => Math.sqrt(dot(column, column)));
  const unit = columns.map((column, j) => {
    const length = lengths[j] as number;
    return length > 0 ? column.map((value) => value / length) : column;
  });
  const size = Math.sqrt(dot(wanted, wanted));
  const x: number[] = columns.map(() => 0);
  let used: number[] = [];
  const residualNow = (): number[] => {
    const left = wanted.slice();
    for (const j of used) {
      const column = unit[j] as Vector;
      for (let i = 0; i < left.length; i++) left[i] = (left[i] as number) - (x[j] as number) * (column[i] as number);
    }
    return left;
  };
  let left = residualNow();
  const refused = new Set<number>();
  const mostRounds = 30 * (columns.length + 1);
  for (let round = 0; ; round++) {
    let best = -1;
    let bestGain = WORTHWHILE * size;
    for (let j = 0; j < columns.length; j++) {
      if (lengths[j] === 0 || refused.has(j) || used.includes(j)) continue;
      const gain = dot(unit[j] as Vector, left);
      if (gain > bestGain) {
        best = j;
        bestGain = gain;
      }
    }
    if (best < 0) break;
    if (round >= mostRounds) {
      throw new NoConvergence(
        "The doses did not settle. Leave out feeds that are nearly alike.",
        Math.sqrt(dot(left, left)),
      );
    }
    const trial = [...used, best];
    let fitted = leastSquares(
      trial.map((j) => unit[j] as Vector),
      wanted,
    );
    if (fitted === null || !((fitted[fitted.length - 1] as number) > 0)) {
      refused.add(best);
      continue;
    }
    used = trial;
    while (fitted.some((value) => !(value > 0))) {
      // Go from x towards the fit until the first coefficient reaches 0, and leave that column out.
      let step = 1;
      fitted.forEach((value, k) => {
        const from = x[used[k] as number] as number;
        if (!(value > 0)) step = Math.min(step, from / (from - value));
      });
      const kept: number[] = [];
      fitted.forEach((value, k) => {
        const j = used[k] as number;
        const from = x[j] as number;
        const next = value > 0 || from / (from - value) > step ? from + step * (value - from) : 0;
        x[j] = Math.max(next, 0);
        if (next > 0) kept.push(j);
      });
      used = kept;
      // Columns that are no mixes of each other stay so when one leaves.
      fitted =
        leastSquares(
          used.map((j) => unit[j] as Vector),
          wanted,
        ) ?? [];
    }
    used.forEach((j, k) => {
      x[j] = (fitted as number[])[k] as number;
    });
    left = residualNow();
    refused.clear();
  }
  return {
    x: x.map((value, j) => (value > 0 ? value / (lengths[j] as number) : 0)),
    residual: Math.sqrt(dot(left, left)),
    gradient: columns.map((column) => dot(column, left)),
  };
}
