/** Non-negative least squares by an active set: the x ≥ 0 that makes |Ax − b| least. */

import { BadInput, NoConvergence } from "./errors.ts";
import { dot, leastSquares, lengthOf, type Vector } from "./least-squares.ts";

export interface NonNegativeFit {
  /** One for each column, none negative. */
  readonly x: readonly number[];
  /** |Ax − b|, in the unit of b. */
  readonly residual: number;
  /** Aᵀ(b − Ax) for each column as given: 0 where x > 0, not above 0 elsewhere, within rounding. */
  readonly gradient: readonly number[];
}

/** A direction must promise at least this share of |b| to be worth going. */
const WORTHWHILE = 1e-12;

function tooLarge(): BadInput {
  return new BadInput("out-of-bounds", "The numbers of this mix are too large or too far apart to reckon with.");
}

/** The columns in use and their coefficients; all others are 0. */
interface ActiveSet {
  readonly used: readonly number[];
  readonly x: readonly number[];
}

function remainder(columns: readonly Vector[], wanted: Vector, { used, x }: ActiveSet): number[] {
  const left = wanted.slice();
  used.forEach((j, k) => {
    const column = columns[j] as Vector;
    const share = x[k] as number;
    for (let i = 0; i < left.length; i++) left[i] = (left[i] as number) - share * (column[i] as number);
  });
  return left;
}

/**
 * Takes column `entering` into the set and fits. Where the fit asks for a negative coefficient, goes from the old
 * coefficients towards it until the first one reaches 0, leaves that column out, and fits again: each turn is one
 * column shorter, so it ends. Null when the entering column brings nothing of its own.
 */
function enter(columns: readonly Vector[], wanted: Vector, set: ActiveSet, entering: number): ActiveSet | null {
  let used = [...set.used, entering];
  let x = [...set.x, 0];
  const fitUsed = (): number[] | null =>
    leastSquares(
      used.map((j) => columns[j] as Vector),
      wanted,
    );
  let fitted = fitUsed();
  if (fitted === null || !((fitted[fitted.length - 1] as number) > 0)) return null;
  while (fitted.some((value) => !(value > 0))) {
    let step = 1;
    let leaving = -1;
    for (let k = 0; k < used.length; k++) {
      const from = x[k] as number;
      const to = fitted[k] as number;
      // from > 0 for all but the entering column, and that one's fit is positive in the first turn.
      const reach = to > 0 ? 1 : from > 0 ? from / (from - to) : 0;
      if (!(to > 0) && (leaving < 0 || reach < step)) {
        step = reach;
        leaving = k;
      }
    }
    const next = x.map((from, k) => Math.max(0, from + step * ((fitted as number[])[k] as number) - step * from));
    const stays = (k: number) => k !== leaving;
    used = used.filter((_, k) => stays(k));
    x = next.filter((_, k) => stays(k));
    fitted = fitUsed();
    if (fitted === null) return null;
  }
  return { used, x: fitted };
}

/**
 * Lawson & Hanson 1974, Solving Least Squares Problems, ch. 23, algorithm NNLS, on columns scaled to length 1.
 * A column joins only when it is no mix of those in use, its own coefficient comes out positive, and the residual
 * falls; so no set comes back and the search cannot go in circles. A column of zeros stays at 0; of equal
 * columns the first is used.
 *
 * `columns` are the columns of A, each as long as `wanted`. Throws BadInput for numbers whose squares
 * overflow, NoConvergence with the residual after `mostRounds`: 30 rounds a column, ten times what Lawson & Hanson allow.
 */
export function nonNegativeLeastSquares(
  columns: readonly Vector[],
  wanted: Vector,
  mostRounds = 30 * columns.length,
): NonNegativeFit {
  const lengths = columns.map(lengthOf);
  const unit = columns.map((column, j) => {
    const length = lengths[j] as number;
    return length > 0 ? column.map((value) => value / length) : column;
  });
  const wantedLength = lengthOf(wanted);
  if (!Number.isFinite(wantedLength) || !lengths.every(Number.isFinite)) throw tooLarge();
  const worthwhile = WORTHWHILE * wantedLength;
  let set: ActiveSet = { used: [], x: [] };
  let left = wanted.slice();
  const refused = new Set<number>();
  for (let round = 0; ; round++) {
    let entering = -1;
    let most = worthwhile;
    for (let j = 0; j < columns.length; j++) {
      if (!((lengths[j] as number) > 0) || refused.has(j) || set.used.includes(j)) continue;
      const gain = dot(unit[j] as Vector, left);
      if (gain > most) {
        entering = j;
        most = gain;
      }
    }
    if (entering < 0) break;
    if (round >= mostRounds) {
      throw new NoConvergence("The doses did not settle. Leave out feeds that are nearly alike.", lengthOf(left));
    }
    const next = enter(unit, wanted, set, entering);
    const nextLeft = next === null ? left : remainder(unit, wanted, next);
    if (next === null || !(lengthOf(nextLeft) < lengthOf(left))) {
      refused.add(entering);
      continue;
    }
    set = next;
    left = nextLeft;
    refused.clear();
  }
  const x = columns.map(() => 0);
  set.used.forEach((j, k) => {
    const value = (set.x[k] as number) / (lengths[j] as number);
    if (!Number.isFinite(value)) throw tooLarge();
    x[j] = value;
  });
  return { x, residual: lengthOf(left), gradient: columns.map((column) => dot(column, left)) };
}
