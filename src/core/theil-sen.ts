/** A line through points that a few wrong ones do not move: the median of all slopes between two points. */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface RobustLine {
  /** y per x. */
  readonly slope: number;
  readonly intercept: number;
  readonly medianX: number;
  readonly medianY: number;
  /** Kendall's S: pairs that rise less pairs that fall, pairs at the same x left out. */
  readonly kendallS: number;
}

/** The middle value, or the mean of the two in the middle. Throws RangeError for no value. */
export function median(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  const { length } = sorted;
  if (length === 0) throw new RangeError("The median of no value.");
  const upper = sorted[length >> 1] as number;
  // + 0 makes a plain 0 of −0.
  return (length % 2 === 1 ? upper : ((sorted[(length >> 1) - 1] as number) + upper) / 2) + 0;
}

/**
 * Slope by Theil 1950 and Sen 1968 (J. Am. Stat. Assoc. 63, 1379), pairs at the same x left out; intercept so that the
 * line goes through the medians of x and y (Conover; Helsel & Hirsch, Statistical methods in water resources, ch. 10).
 * Null when fewer than two points lie at different x. Its work grows with the square of the points.
 */
export function theilSen(points: readonly Point[]): RobustLine | null {
  const slopes = new Float64Array((points.length * (points.length - 1)) / 2);
  let count = 0;
  let kendallS = 0;
  for (let i = 0; i < points.length; i++) {
    const one = points[i] as Point;
    for (let j = i + 1; j < points.length; j++) {
      const other = points[j] as Point;
      if (other.x === one.x) continue;
      const slope = (other.y - one.y) / (other.x - one.x);
      slopes[count] = slope;
      kendallS += Math.sign(slope);
      count += 1;
    }
  }
  if (count === 0) return null;
  const slope = median(slopes.subarray(0, count));
  const medianX = median(points.map(({ x }) => x));
  const medianY = median(points.map(({ y }) => y));
  return { slope, intercept: medianY - slope * medianX, medianX, medianY, kendallS };
}
