/** Limits in a search over measurable amounts: whether the feeds still free can keep them. */

/** A row of coefficients that must come to at most this much. */
export interface AtMost {
  readonly coefficients: readonly number[];
  readonly most: number;
}

export interface StillFree {
  readonly free: readonly number[];
  /** Greatest amount of each feed. */
  readonly most: ArrayLike<number>;
}

/** Binary rounding of a sum of a dozen doses, relative to its size. */
const ROUNDING = 1e-12;

/** Keeps count of what the feeds already settled use up of each limit. */
export class LimitsKept {
  private readonly used: Float64Array;
  private readonly limits: readonly AtMost[];

  constructor(limits: readonly AtMost[]) {
    this.limits = limits;
    this.used = new Float64Array(limits.length);
  }

  take(column: number, amount: number): void {
    this.limits.forEach(({ coefficients }, row) => {
      this.used[row] = (this.used[row] as number) + amount * (coefficients[column] as number);
    });
  }

  /** Whether every limit can be kept with `amount` of this column too: the free feeds relieve it as far as they can. */
  canKeep(column: number, amount: number, { free, most }: StillFree): boolean {
    return this.limits.every((limit, row) => {
      let least = (this.used[row] as number) + amount * (limit.coefficients[column] ?? 0);
      let size = Math.abs(limit.most) + Math.abs(least);
      for (const other of free) {
        const relief = (limit.coefficients[other] as number) * (most[other] as number);
        if (relief >= 0) continue;
        least += relief;
        size -= relief;
      }
      return least <= limit.most + ROUNDING * size;
    });
  }
}

/**
 * The limits as costs: Σ multiplier × (coefficients·x − most), which is not above 0 wherever all limits are kept.
 * `slope` for each column, `base` once.
 */
export function limitCosts(limits: readonly AtMost[], multipliers: readonly number[], columns: number): LimitCosts {
  const slope = new Float64Array(columns);
  let base = 0;
  limits.forEach(({ coefficients, most }, k) => {
    const multiplier = multipliers[k] as number;
    base -= multiplier * most;
    for (let j = 0; j < columns; j++) slope[j] = (slope[j] as number) + multiplier * (coefficients[j] as number);
  });
  return { slope, base };
}

export interface LimitCosts {
  readonly slope: Float64Array;
  readonly base: number;
}
