/** The triangle of a QR factorisation, and what is solved with it. */

import { dot, lengthOf, type Vector } from "./least-squares.ts";

/** a + times·b. */
export const plus = (a: Vector, b: Vector, times: number) => a.map((value, i) => value + times * (b[i] as number));

/** A column whose part outside those before it is smaller than this share of it is a mix of them. */
export const DEPENDENT = 1e-8;
/** Then each x is held towards 0 this much, relative to its column: the misfit moves by its square. */
const RIDGE = 1e-6;

export interface Triangle {
  /** Rows of R, the upper triangle, as columns: R[j][i] for i ≤ j. */
  readonly upper: readonly Vector[];
  /** Columns of Q. */
  readonly basis: readonly Vector[];
  /** Qᵀb. */
  readonly projected: Vector;
}

/** QR by Gram–Schmidt done twice; null when a column is a mix of those before it. */
export function factor(columns: readonly Vector[], wanted: Vector): Triangle | null {
  const basis: Vector[] = [];
  const upper: number[][] = [];
  for (const column of columns) {
    let rest: Vector = column;
    const above = basis.map(() => 0);
    for (let pass = 0; pass < 2; pass++) {
      basis.forEach((q, k) => {
        const share = dot(q, rest);
        above[k] = (above[k] as number) + share;
        rest = plus(rest, q, -share);
      });
    }
    const length = lengthOf(rest);
    if (!(length > DEPENDENT * lengthOf(column))) return null;
    upper.push([...above, length]);
    basis.push(rest.map((value) => value / length));
  }
  return { upper, basis, projected: basis.map((q) => dot(q, wanted)) };
}

/** QR of the columns; of columns that are mixes of each other, each is held towards 0 by RIDGE. */
export function triangle(columns: readonly Vector[], wanted: Vector): Triangle {
  const plain = columns.length <= wanted.length ? factor(columns, wanted) : null;
  if (plain !== null) return plain;
  const held = columns.map((column, j) => {
    const tail = columns.map(() => 0);
    tail[j] = RIDGE * (lengthOf(column) || 1);
    return [...column, ...tail];
  });
  // The tails keep every column apart from the others by at least the ridge, which is above DEPENDENT.
  return factor(held, [...wanted, ...columns.map(() => 0)]) as Triangle;
}

/** R⁻ᵀ a. */
export function forward(upper: readonly Vector[], a: Vector): number[] {
  const y: number[] = [];
  upper.forEach((column, j) => {
    let sum = a[j] as number;
    for (let i = 0; i < j; i++) sum -= (column[i] as number) * (y[i] as number);
    y.push(sum / (column[j] as number));
  });
  return y;
}

/** R⁻¹ y. */
export function backward(upper: readonly Vector[], y: Vector): number[] {
  const x = y.slice();
  for (let j = x.length - 1; j >= 0; j--) {
    const column = upper[j] as Vector;
    const value = (x[j] as number) / (column[j] as number);
    x[j] = value;
    for (let i = 0; i < j; i++) x[i] = (x[i] as number) - value * (column[i] as number);
  }
  return x;
}
