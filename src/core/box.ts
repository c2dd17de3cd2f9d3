/** Least squares in a box: the relaxation that bounds a search over measurable amounts from below. */

/** Columns of A, their products AᵀA, and b, of a least |Ax − b|². */
export interface Squares {
  readonly columns: readonly Float64Array[];
  readonly products: readonly Float64Array[];
  readonly wanted: Float64Array;
}

export function squaresOf(columns: readonly (readonly number[])[], wanted: readonly number[]): Squares {
  const own = columns.map((column) => Float64Array.from(column));
  const products = own.map((a) => Float64Array.from(own.map((b) => dot(a, b))));
  return { columns: own, products, wanted: Float64Array.from(wanted) };
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

export interface BoxFit {
  /** |A x − left|² + slope·x at `x`: not below the least. */
  readonly value: number;
  /** Proven: no point of the box has a value below it. */
  readonly bound: number;
  /** One for each column; only those of `free` are set. */
  readonly x: Float64Array;
}

/** A pivot smaller than this share of its column is a mix of columns before it. */
const DEPENDENT = 1e-11;
/** Binary rounding of sums of a dozen squares, relative to |b|². */
const ROUNDING = 1e-14;

/** Solves H_FF x_F = c_F by Cholesky; a column that is a mix of those before it stays at its value in `x`. */
function solveFree(squares: Squares, inside: readonly number[], right: Float64Array, x: Float64Array): void {
  const { products } = squares;
  const n = inside.length;
  const factor: Float64Array[] = [];
  const forward = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const row = new Float64Array(i + 1);
    const from = products[inside[i] as number] as Float64Array;
    for (let j = 0; j <= i; j++) {
      let sum = from[inside[j] as number] as number;
      const other = j === i ? row : (factor[j] as Float64Array);
      for (let k = 0; k < j; k++) sum -= (row[k] as number) * (other[k] as number);
      if (j < i) row[j] = other[j] === 0 ? 0 : sum / (other[j] as number);
      else row[i] = sum > DEPENDENT * (from[inside[i] as number] as number) ? Math.sqrt(sum) : 0;
    }
    factor.push(row);
    let sum = right[i] as number;
    for (let k = 0; k < i; k++) sum -= (row[k] as number) * (forward[k] as number);
    forward[i] = row[i] === 0 ? 0 : sum / (row[i] as number);
  }
  const solved = new Float64Array(n);
  for (let i = n - 1; i >= 0; i--) {
    const pivot = (factor[i] as Float64Array)[i] as number;
    let sum = forward[i] as number;
    for (let k = i + 1; k < n; k++) sum -= ((factor[k] as Float64Array)[i] as number) * (solved[k] as number);
    solved[i] = pivot === 0 ? 0 : sum / pivot;
  }
  for (let i = 0; i < n; i++) x[inside[i] as number] = solved[i] as number;
}

/**
 * Least |A x − left|² + slope·x over the columns in `free`, each from 0 to its `most`, `left` being what the fixed columns
 * leave of b. Block pivoting on the optimality conditions [Kim & Park 2011, SIAM J. Sci. Comput. 33, 3261, here with
 * upper bounds]; should it circle, one index at a time [Murty's rule]. The bound holds wherever the pivoting ends: a
 * convex function lies above its tangent plane, and the plane's least over the box is at a corner.
 * `side` (−1 at 0, 0 inside, 1 at most) is where to begin, and is left as it ended.
 */
export function boxLeastSquares(squares: Squares, free: readonly number[], left: Float64Array, box: Box): BoxFit {
  const { columns, products } = squares;
  const { most, side, slope } = box;
  const x = new Float64Array(columns.length);
  const pull = free.map((j) => dot(columns[j] as Float64Array, left) - (slope[j] as number) / 2);
  let fewest = free.length + 1;
  let patience = 3;
  for (let round = 0; round < 40 + 4 * free.length; round++) {
    const inside: number[] = [];
    for (const j of free) {
      if (side[j] === 0) inside.push(j);
      else x[j] = side[j] === 1 ? (most[j] as number) : 0;
    }
    const right = new Float64Array(inside.length);
    let at = 0;
    free.forEach((j, k) => {
      if (side[j] !== 0) return;
      let sum = pull[k] as number;
      for (const i of free) {
        if (side[i] === 1) sum -= ((products[j] as Float64Array)[i] as number) * (most[i] as number);
      }
      right[at++] = sum;
    });
    solveFree(squares, inside, right, x);
    const wrong: number[] = [];
    const goes: number[] = [];
    free.forEach((j, k) => {
      const value = x[j] as number;
      const length = Math.sqrt((products[j] as Float64Array)[j] as number);
      if (side[j] === 0) {
        const slack = 1e-12 * (1 + (most[j] as number));
        if (value < -slack || value > (most[j] as number) + slack) {
          wrong.push(j);
          goes.push(value < 0 ? -1 : 1);
        }
        return;
      }
      let downhill = pull[k] as number;
      for (const i of free) downhill -= ((products[j] as Float64Array)[i] as number) * (x[i] as number);
      if (downhill * (side[j] as number) < -1e-12 * length) {
        wrong.push(j);
        goes.push(0);
      }
    });
    if (wrong.length === 0) break;
    const blocks = wrong.length < fewest || patience > 0;
    if (wrong.length < fewest) {
      fewest = wrong.length;
      patience = 3;
    } else patience -= 1;
    const first = blocks ? 0 : wrong.length - 1;
    for (let k = first; k < wrong.length; k++) side[wrong[k] as number] = goes[k] as number;
  }
  const rest = Float64Array.from(left);
  for (const j of free) {
    const value = Math.min(Math.max(x[j] as number, 0), most[j] as number);
    x[j] = value;
    if (value === 0) continue;
    const column = columns[j] as Float64Array;
    for (let i = 0; i < rest.length; i++) rest[i] = (rest[i] as number) - value * (column[i] as number);
  }
  let value = dot(rest, rest);
  let size = dot(left, left);
  let change = 0;
  for (const j of free) {
    const linear = (slope[j] as number) * (x[j] as number);
    value += linear;
    size += Math.abs(linear);
    const rise = (slope[j] as number) - 2 * dot(columns[j] as Float64Array, rest);
    change += rise * ((rise > 0 ? 0 : (most[j] as number)) - (x[j] as number));
  }
  return { value, bound: value + change - ROUNDING * size, x };
}

export interface Box {
  /** Greatest value of each column, finite. */
  readonly most: Float64Array;
  /** Added to the square for each unit of x. */
  readonly slope: Float64Array;
  /** Where each column stood: −1 at 0, 0 inside, 1 at most. */
  readonly side: Int8Array;
}
