/** Least squares under linear limits: the x ≥ 0 that makes |Ax − b|² + slope·x least and keeps every limit. */

import { NoConvergence } from "./errors.ts";
import { dot, lengthOf, type Vector } from "./least-squares.ts";
import { backward, DEPENDENT, factor, forward, plus, triangle } from "./triangle.ts";

/** coefficients·x ≥ atLeast, or = atLeast where it is given as an equality. */
export interface Limit {
  readonly coefficients: readonly number[];
  readonly atLeast: number;
}

export interface LimitedTask {
  readonly columns: readonly (readonly number[])[];
  readonly wanted: readonly number[];
  readonly equalities?: readonly Limit[] | undefined;
  readonly limits?: readonly Limit[] | undefined;
  /** Added to the square: a price for each x, 0 where absent. */
  readonly slope?: readonly number[] | undefined;
}

export interface LimitedFit {
  readonly x: readonly number[];
  /** |Ax − b|², without the slope. */
  readonly misfit: number;
  /** For each of `limits`: whether it holds x back from coming closer. */
  readonly binding: readonly boolean[];
  /** For each of `limits`: by how much the least falls for each unit it is loosened; none negative. */
  readonly multipliers: readonly number[];
}

/** Limits are kept to within this, relative to their own size. */
const KEPT = 1e-11;

/** A limit in the turned space: unit·z ≥ at. */
interface Plane {
  readonly unit: Vector;
  readonly at: number;
  readonly equality: boolean;
}

interface Leaning {
  readonly z: Vector;
  readonly held: readonly number[];
  /** How hard it leans on each of `held`: z = start + Σ force·unit. */
  readonly force: readonly number[];
}

/** Least-squares shares of `vector` in the unit vectors `held`, and what is left of it. */
function shares(held: readonly Vector[], vector: Vector): { share: number[]; rest: Vector } {
  const qr = factor(held, vector);
  if (qr === null) throw new NoConvergence("The limits are too nearly alike to be told apart. Leave one out.", 0);
  let rest = vector;
  for (let pass = 0; pass < 2; pass++) for (const q of qr.basis) rest = plus(rest, q, -dot(q, rest));
  return { share: backward(qr.upper, qr.projected), rest };
}

/**
 * The point nearest to `start` that keeps every plane: Goldfarb & Idnani 1983, Math. Programming 27, 1, for the unit
 * matrix. Null when no point keeps them. Gives the point and the planes it leans on.
 */
function nearestPoint(start: Vector, planes: readonly Plane[]): Leaning | null {
  let z = start;
  let held: number[] = [];
  let force: number[] = [];
  const shortOf = (p: Plane) => {
    const gap = dot(p.unit, z) - p.at;
    const scale = KEPT * (1 + Math.abs(p.at) + lengthOf(z));
    return p.equality ? (Math.abs(gap) > scale ? -Math.abs(gap) : 0) : gap < -scale ? gap : 0;
  };
  const mostRounds = 50 * (planes.length + 1);
  for (let round = 0; round < mostRounds; round++) {
    let worst = -1;
    let least = 0;
    planes.forEach((plane, p) => {
      if (held.includes(p)) return;
      const short = shortOf(plane);
      if (short >= 0) return;
      const now = planes[worst];
      // Equalities first, so that they are never let go.
      if (now === undefined || (plane.equality === now.equality ? short < least : plane.equality)) {
        worst = p;
        least = short;
      }
    });
    if (worst < 0) return { z, held, force };
    const plane = planes[worst] as Plane;
    const towards = dot(plane.unit, z) > plane.at ? -1 : 1;
    const normal = plane.unit.map((value) => towards * value);
    const at = towards * plane.at;
    let pushed = 0;
    for (;;) {
      const { share, rest } = shares(
        held.map((p) => (planes[p] as Plane).unit),
        normal,
      );
      const room = dot(rest, rest);
      let drop = -1;
      let step = Number.POSITIVE_INFINITY;
      held.forEach((p, k) => {
        if ((planes[p] as Plane).equality || !((share[k] as number) > 1e-13)) return;
        const until = (force[k] as number) / (share[k] as number);
        if (until < step) {
          step = until;
          drop = k;
        }
      });
      const whole = room > DEPENDENT ** 2 ? (at - dot(normal, z)) / room : Number.POSITIVE_INFINITY;
      if (step === Number.POSITIVE_INFINITY && whole === Number.POSITIVE_INFINITY) return null;
      const go = Math.min(step, whole);
      if (whole !== Number.POSITIVE_INFINITY) z = plus(z, rest, go);
      force = force.map((value, k) => value - go * (share[k] as number));
      pushed += go;
      if (whole <= step) {
        held = [...held, worst];
        force = [...force, towards * pushed];
        break;
      }
      held = held.filter((_, k) => k !== drop);
      force = force.filter((_, k) => k !== drop);
    }
  }
  throw new NoConvergence("The limits did not settle. Leave out feeds that are nearly alike.", 0);
}

/**
 * Dense and small: a dozen columns, a few dozen limits. Null when no x keeps the limits. Feeds that are mixes of each
 * other share their work by the smallest sum of squares, to within a millionth. Throws NoConvergence when limits are
 * so nearly alike that rounding decides between them.
 */
export function limitedLeastSquares(task: LimitedTask): LimitedFit | null {
  const { columns, wanted, equalities = [], limits = [], slope } = task;
  const { upper, projected } = triangle(columns, wanted);
  const start = slope === undefined ? projected : plus(projected, forward(upper, slope), -0.5);
  const planes: Plane[] = [];
  const numberOf: number[] = [];
  const lengths: number[] = [];
  const add = ({ coefficients, atLeast }: Limit, equality: boolean, number: number): boolean => {
    const turned = forward(upper, coefficients);
    const length = lengthOf(turned);
    if (!(length > 0)) return equality ? atLeast === 0 : atLeast <= 0;
    planes.push({ unit: turned.map((value) => value / length), at: atLeast / length, equality });
    numberOf.push(number);
    lengths.push(length);
    return true;
  };
  for (const equality of equalities) if (!add(equality, true, -1)) return null;
  for (let k = 0; k < limits.length; k++) if (!add(limits[k] as Limit, false, k)) return null;
  const firstBound = planes.length;
  columns.forEach((_, j) => {
    add({ coefficients: columns.map((__, k) => (k === j ? 1 : 0)), atLeast: 0 }, false, -1);
  });
  const found = nearestPoint(start, planes);
  if (found === null) return null;
  const x = backward(upper, found.z).map((value, j) => (found.held.includes(firstBound + j) ? 0 : Math.max(value, 0)));
  const rest = columns.reduce<Vector>((sum, column, j) => plus(sum, column, -(x[j] as number)), wanted);
  const multipliers = limits.map((_, k) => {
    const at = found.held.findIndex((p) => numberOf[p] === k);
    // The least of |z − start|², not of half of it.
    return at < 0 ? 0 : Math.max((2 * (found.force[at] as number)) / (lengths[found.held[at] as number] as number), 0);
  });
  return {
    x,
    misfit: dot(rest, rest),
    binding: limits.map((_, k) => found.held.some((p) => numberOf[p] === k)),
    multipliers,
  };
}
