/** Individuals chart and tolerance factors against the printed values of the NIST handbook and an exact table. */

import { describe, expect, it } from "vitest";
import { chiSquareAbove, chiSquareQuantile, normalQuantile } from "../../src/core/chi-square.ts";
import { individualsChart, oneSidedToleranceFactor, toleranceFactor } from "../../src/core/tolerance.ts";
import { readReference } from "./reference.ts";

interface Printed {
  readonly individuals: Readonly<
    Record<"d2" | "mean" | "meanMovingRange" | "high" | "low" | "highWithExactD2", number> & { readings: number[] }
  >;
  readonly tolerance: Readonly<Record<"count" | "content" | "confidence" | "k1" | "k2", number>>;
  readonly k2At95: { readonly contents: readonly number[]; readonly rows: readonly (readonly number[])[] };
}
const printed = readReference<Printed>("statistics.json");

describe("NIST/SEMATECH e-Handbook", () => {
  it("6.3.2.2: the individuals chart of ten readings, d2 = 1.128, to the printed digits", () => {
    const { readings, d2, mean, meanMovingRange, high, low, highWithExactD2 } = printed.individuals;
    const chart = individualsChart(readings);
    expect(chart.mean).toBeCloseTo(mean, 10);
    expect(chart.meanMovingRange).toBeCloseTo(meanMovingRange, 4);
    expect(chart.high).toBeCloseTo(high, 4);
    expect(chart.low).toBeCloseTo(low, 4);
    expect(individualsChart(readings, d2)).toEqual(chart);
    // The exact d2 moves the limit by two thousandths: 1.128 is what the handbook's table has, and what we use.
    expect(individualsChart(readings, 2 / Math.sqrt(Math.PI)).high).toBeCloseTo(highWithExactD2, 4);
  });

  it("7.2.6.3: two-sided factor k2 and one-sided k1 (Natrella) to the printed digits", () => {
    const { k1, k2, ...task } = printed.tolerance;
    expect(toleranceFactor(task)).toBeCloseTo(k2, 7);
    expect(oneSidedToleranceFactor(task)).toBeCloseTo(k1, 7);
  });
});

/** The approximation is Howe's: 2.3 % above the exact factor for 4 readings and 99 %, within 1 % from 6 readings on. */
it.each(printed.k2At95.rows)("exact table, %d readings: k2 agrees within 1 % from 6 readings on", (count, ...exact) => {
  exact.forEach((k2, at) => {
    const content = printed.k2At95.contents[at] as number;
    const ratio = toleranceFactor({ count, content, confidence: 0.95 }) / k2;
    expect(Math.abs(ratio - 1)).toBeLessThan(count < 6 ? 0.025 : 0.011);
  });
});

describe("chi-square", () => {
  it("even degrees of freedom: above x is a sum of Poisson terms, worked out here", () => {
    for (const freedom of [2, 4, 10, 42]) {
      for (const x of [0.1, 1, 5, 20, 60, 120]) {
        let term = Math.exp(-x / 2);
        let sum = term;
        for (let k = 1; k < freedom / 2; k++) {
          term *= x / 2 / k;
          sum += term;
        }
        expect(chiSquareAbove(x, freedom)).toBeCloseTo(sum, 12);
      }
    }
  });

  it("two degrees of freedom: e^(−x/2) above x, to ten figures far out, and −2 ln of what is above back again", () => {
    for (const x of [12, 60, 120, 400]) expect(chiSquareAbove(x, 2) / Math.exp(-x / 2)).toBeCloseTo(1, 10);
    for (const above of [1e-3, 1e-5, 1e-9]) {
      expect(chiSquareQuantile(1 - above, 2) / (-2 * Math.log(above))).toBeCloseTo(1, 7);
    }
    expect(chiSquareAbove(-1, 2)).toBe(1);
  });

  it("one degree of freedom near 0: below x lies √(2x/π) (1 − x/6 + x²/40), the normal density integrated term by term", () => {
    for (const x of [1e-6, 1e-4, 1e-2]) {
      const below = Math.sqrt((2 * x) / Math.PI) * (1 - x / 6 + x ** 2 / 40);
      expect(1 - chiSquareAbove(x, 1)).toBeCloseTo(below, 8);
    }
  });

  it("Abramowitz & Stegun table 26.8, from memory: 3.84146, 18.3070, 6.63490", () => {
    expect(chiSquareQuantile(0.95, 1)).toBeCloseTo(3.84146, 5);
    expect(chiSquareQuantile(0.95, 10)).toBeCloseTo(18.307, 4);
    expect(chiSquareQuantile(0.99, 1)).toBeCloseTo(6.6349, 4);
    expect(chiSquareAbove(0, 3)).toBe(1);
  });

  it("normal quantiles, Abramowitz & Stegun table 26.5, from memory", () => {
    expect(normalQuantile(0.975)).toBeCloseTo(1.95996398454, 10);
    expect(normalQuantile(0.005)).toBeCloseTo(-2.57582930355, 10);
    expect(normalQuantile(0.5)).toBe(0);
  });
});
