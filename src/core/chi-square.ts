/** The chi-square distribution for whole degrees of freedom, and the normal quantile that follows from it. */

/** Terms beyond this never come: the series and the fraction settle in tens of them. */
const MOST_TERMS = 500;
const PRECISION = 1e-15;

/** ln Γ(half / 2), by Γ(a + 1) = a Γ(a) from Γ(1/2) = √π and Γ(1) = 1. */
function lnGammaOfHalf(half: number): number {
  let value = half % 2 === 0 ? 0 : Math.log(Math.PI) / 2;
  for (let a = half % 2 === 0 ? 1 : 0.5; a < half / 2; a++) value += Math.log(a);
  return value;
}

/**
 * Probability that chi-square with `freedom` degrees of freedom (a whole number from 1 on) is above `x`: the upper
 * incomplete gamma function, by its series below its middle and its continued fraction above [1, 6.5.29 and 6.5.31].
 */
export function chiSquareAbove(x: number, freedom: number): number {
  if (!(x > 0)) return 1;
  const a = freedom / 2;
  const half = x / 2;
  const scale = Math.exp(a * Math.log(half) - half - lnGammaOfHalf(freedom));
  if (half < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n < MOST_TERMS && term > sum * PRECISION; n++) {
      term *= half / (a + n);
      sum += term;
    }
    return 1 - scale * sum;
  }
  // Lentz's way of taking the fraction from the front.
  let b = half + 1 - a;
  let d = 1 / b;
  let c = Number.POSITIVE_INFINITY;
  let fraction = d;
  for (let n = 1; n < MOST_TERMS; n++) {
    const above = -n * (n - a);
    b += 2;
    d = 1 / (above * d + b);
    c = b + above / c;
    fraction *= c * d;
    if (Math.abs(c * d - 1) < PRECISION) break;
  }
  return scale * fraction;
}

/** The value that chi-square stays below with this probability (above 0, below 1); by halving, so it always settles. */
export function chiSquareQuantile(probability: number, freedom: number): number {
  let low = 0;
  let high = freedom + 10;
  while (chiSquareAbove(high, freedom) > 1 - probability) high *= 2;
  for (let step = 0; step < 80 && high - low > PRECISION * high; step++) {
    const middle = (low + high) / 2;
    if (chiSquareAbove(middle, freedom) > 1 - probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The value z that a standard normal stays below with this probability (above 0, below 1): z² is chi-square with 1 degree of freedom. */
export function normalQuantile(probability: number): number {
  const away = Math.abs(2 * probability - 1);
  if (away === 0) return 0;
  const z = Math.sqrt(chiSquareQuantile(away, 1));
  return probability < 0.5 ? -z : z;
}

/*
 * [1] Abramowitz & Stegun 1964, Handbook of Mathematical Functions, National Bureau of Standards, chapter 6.
 */
