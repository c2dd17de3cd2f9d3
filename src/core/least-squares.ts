/** Least squares over a few columns, and whether one of them is a mix of the others. */

export type Vector = readonly number[];

/** A column of length 1 whose part outside the others is shorter than this counts as a mix of them. */
const DEPENDENT = 1e-9;

export function dot(a: Vector, b: Vector): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

export function lengthOf(vector: Vector): number {
  return Math.sqrt(dot(vector, vector));
}

/** Takes `share` times `other` away from `vector`, in place. */
function takeAway(vector: number[], share: number, other: Vector): void {
  for (let i = 0; i < vector.length; i++) vector[i] = (vector[i] as number) - share * (other[i] as number);
}

/**
 * The x that makes |Ax − wanted| least, for columns of length 1, by Gram–Schmidt done twice (twice is enough:
 * Giraud et al. 2005, Numer. Math. 101, 87). Null when a column is a mix of those before it. No column: no x.
 */
export function leastSquares(columns: readonly Vector[], wanted: Vector): number[] | null {
  const basis: number[][] = [];
  const upper: number[][] = [];
  const x: number[] = [];
  const left = wanted.slice();
  for (const column of columns) {
    const rest = column.slice();
    const above: number[] = basis.map(() => 0);
    for (let pass = 0; pass < 2; pass++) {
      basis.forEach((direction, k) => {
        const share = dot(direction, rest);
        above[k] = (above[k] as number) + share;
        takeAway(rest, share, direction);
      });
    }
    const length = lengthOf(rest);
    if (!(length > DEPENDENT)) return null;
    const direction = rest.map((value) => value / length);
    const share = dot(direction, left);
    takeAway(left, share, direction);
    above.push(length);
    basis.push(direction);
    upper.push(above);
    x.push(share);
  }
  for (let k = x.length - 1; k >= 0; k--) {
    const row = upper[k] as number[];
    const value = (x[k] as number) / (row[k] as number);
    x[k] = value;
    for (let i = 0; i < k; i++) x[i] = (x[i] as number) - value * (row[i] as number);
  }
  return x;
}
