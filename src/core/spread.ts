/** How far a household's readings lie from what is predicted: a robust band, from its own history once there is enough. */

/** Ratios of measured to predicted EC, a band for the next one. */
export interface Band {
  /** Middle of what is to be expected, as a ratio. */
  readonly centre: number;
  /** As expected between these ratios. */
  readonly low: number;
  readonly high: number;
  /** Beyond these it is time to look again; between the two bands nobody can tell yet. The same as low and high once there is enough. */
  readonly surelyLow: number;
  readonly surelyHigh: number;
  /** Standard deviation of the logarithm of the ratio. */
  readonly spread: number;
  /** Degrees of freedom of `spread`. */
  readonly freedom: number;
  readonly enough: boolean;
}

/** Fewer readings than this say nothing about the spread: the MAD of seven is off by a half now and then. */
export const ENOUGH_READINGS = 8;
/** The last this many count, so that a new meter is learned within a season. */
const LOOK_BACK = 30;
/** One reading in a hundred outside, were nothing wrong. */
const TWO_SIDED_99_Z = 2.5758293035489004;
/** Until there is enough: expected within 2 standard deviations, surely off beyond 4. */
const EXPECTED_SIGMAS = 2;
const SURE_SIGMAS = 4;
/** What labels and the meter say counts like this many degrees of freedom beside the history. Our own choice. */
const PRIOR_FREEDOM = 4;
/** The MAD uses 37 % of what a sample says about its spread [2]. */
const MAD_EFFICIENCY = 0.37;
/** MAD to standard deviation of a normal distribution: 1 / Φ⁻¹(3/4). */
const MAD_TO_SIGMA = 1.482602218505602;
/** Small-sample factors for n = 2 to 9, and n / (n − 0.8) beyond [1]. */
const MAD_FACTORS = [1.196, 1.495, 1.363, 1.206, 1.2, 1.14, 1.129, 1.107] as const;
/** A meter for the home shows hundredths; no spread is believed to be below this. */
const LEAST_SPREAD = 0.01;

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] as number;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] as number) + upper) / 2;
}

/** Standard deviation by the median absolute deviation, corrected for small samples; for at least 2 values. */
export function madSigma(values: readonly number[]): number {
  const middle = median(values);
  const n = values.length;
  const factor = n <= 9 ? (MAD_FACTORS[n - 2] as number) : n / (n - 0.8);
  return factor * MAD_TO_SIGMA * median(values.map((value) => Math.abs(value - middle)));
}

/** Student's t for a normal quantile z, by the expansion of Abramowitz & Stegun 26.7.5; within 0.02 from 5 degrees of freedom on. */
export function studentQuantile(z: number, freedom: number): number {
  const v = freedom;
  const z2 = z * z;
  return (
    z +
    (z * (z2 + 1)) / (4 * v) +
    (z * (5 * z2 * z2 + 16 * z2 + 3)) / (96 * v * v) +
    (z * (3 * z2 ** 3 + 19 * z2 * z2 + 17 * z2 - 15)) / (384 * v ** 3) +
    (z * (79 * z2 ** 4 + 776 * z2 ** 3 + 1482 * z2 * z2 - 1920 * z2 - 945)) / (92160 * v ** 4)
  );
}

export interface SpreadTask {
  /** Measured over predicted EC of earlier batches, oldest first; those not above 0 are passed over. */
  readonly ratios: readonly number[];
  /** Share by which labels let the prediction be off; see ecAllowance. */
  readonly labelShare: number;
  /** Share by which the meter may be off, as its leaflet says; 0.05 where absent. */
  readonly meterShare?: number | undefined;
}

/**
 * The band for the next reading. With fewer than 8 readings it comes from what labels and meter allow, both taken as
 * two standard deviations; from 8 on its middle is the median and its spread the MAD of the logarithms, drawn towards
 * that allowance while they are few, and it holds 99 % of good readings (Student's t).
 */
export function spreadBand({ ratios, labelShare, meterShare = 0.05 }: SpreadTask): Band {
  const logs = ratios
    .filter((ratio) => ratio > 0 && Number.isFinite(ratio))
    .slice(-LOOK_BACK)
    .map(Math.log);
  const allowed = Math.max(Math.sqrt(labelShare ** 2 + meterShare ** 2) / 2, LEAST_SPREAD);
  const n = logs.length;
  if (n < ENOUGH_READINGS) {
    const [near, far] = [EXPECTED_SIGMAS * allowed, SURE_SIGMAS * allowed];
    return {
      centre: 1,
      low: Math.exp(-near),
      high: Math.exp(near),
      surelyLow: Math.exp(-far),
      surelyHigh: Math.exp(far),
      spread: allowed,
      freedom: PRIOR_FREEDOM,
      enough: false,
    };
  }
  const own = MAD_EFFICIENCY * (n - 1);
  const freedom = PRIOR_FREEDOM + own;
  const spread = Math.max(
    Math.sqrt((PRIOR_FREEDOM * allowed ** 2 + own * madSigma(logs) ** 2) / freedom),
    LEAST_SPREAD,
  );
  const centre = median(logs);
  // The median of n is itself off by √(π/2n) standard deviations.
  const half = studentQuantile(TWO_SIDED_99_Z, freedom) * spread * Math.sqrt(1 + Math.PI / (2 * n));
  const [low, high] = [Math.exp(centre - half), Math.exp(centre + half)];
  return { centre: Math.exp(centre), low, high, surelyLow: low, surelyHigh: high, spread, freedom, enough: true };
}

/*
 * [1] Croux & Rousseeuw 1992, Time-efficient algorithms for two highly robust estimators of scale, COMPSTAT 1, 411,
 *     equation 4, read in two public programs that quote it.
 * [2] Rousseeuw & Croux 1993, J. Amer. Statist. Assoc. 88, 1273.
 */
