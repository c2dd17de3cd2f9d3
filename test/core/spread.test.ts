/** A household's own spread, against published factors; and what labels allow, by hand. */

import { describe, expect, it } from "vitest";
import { allowancePercent } from "../../src/core/allowances.ts";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { feedAllowance } from "../../src/core/label-share.ts";
import { madSigma, median, spreadBand, studentQuantile } from "../../src/core/spread.ts";
import { percentOf } from "./formula.ts";

const kno3: Feed = feedOf("KNO3", { ...parseLabel("0-0-0"), percent: percentOf("KNO3") }, null);
const iron: Feed = feedOf("Iron", parseLabel("Fe 13"), null);

describe("spread", () => {
  it("small-sample factors of Croux & Rousseeuw 1992 on top of 1.4826", () => {
    // MAD of 1, 2, 4: median 2, deviations 1, 0, 2, their median 1.
    expect(madSigma([1, 2, 4])).toBeCloseTo(1.495 * 1.4826, 4);
    expect(madSigma([1, 2, 3, 4, 5, 6, 7, 8, 9, 100])).toBeCloseTo((10 / 9.2) * 1.4826 * 2.5, 3);
    expect(median([3, 1, 2, 10])).toBe(2.5);
  });

  it.each([
    // NIST/SEMATECH e-Handbook 1.3.6.7.2, upper critical values of Student's t at 0.995.
    [6, 3.707],
    [8, 3.355],
    [10, 3.169],
    [15, 2.947],
    [30, 2.75],
  ])("t with %d degrees of freedom", (freedom, printed) => {
    expect(Math.abs(studentQuantile(2.5758293035489, freedom) - printed)).toBeLessThan(0.01);
  });

  it("one wild reading in the history hardly moves the band", () => {
    const clean = [1, 0.99, 1.01, 1.02, 0.98, 1, 1.01, 0.99, 1, 1];
    const [a, b] = [clean, [...clean.slice(0, 9), 3]].map((ratios) => spreadBand({ ratios, labelShare: 0.03 }));
    expect(b?.low).toBeCloseTo(a?.low ?? 0, 1);
    expect(b?.high).toBeCloseTo(a?.high ?? 0, 1);
  });

  it("a bad number in the history is passed over", () => {
    expect(spreadBand({ ratios: [0, Number.NaN, -1], labelShare: 0 }).enough).toBe(false);
  });
});

describe("allowances", () => {
  it("by hand from the rule: Ca 15 % may be off by 0.95, Fe 0.1 % by 0.015, at most 1 point", () => {
    // New Hampshire Agr 1105.04: 0.2 unit + 5 %; 0.005 unit + 10 %; at most one unit.
    expect(allowancePercent("Ca", 15)).toBeCloseTo(0.95, 12);
    expect(allowancePercent("Fe", 0.1)).toBeCloseTo(0.015, 12);
    expect(allowancePercent("Ca", 30)).toBe(1);
    expect(allowancePercent("Si", 10)).toBe(0);
  });

  it("phosphorus and potassium go by their oxides", () => {
    // 10 % K2O is 8.3015 % K; the schedule allows 0.70 points of K2O there (memory).
    expect(allowancePercent("K", 8.30148)).toBeCloseTo(0.7 * 0.830148, 4);
    expect(allowancePercent("N", 10)).toBeCloseTo(0.58, 9);
  });

  it("of a feed is a small share, and nothing for one that does not conduct", () => {
    expect(feedAllowance(kno3)).toBeGreaterThan(0.02);
    expect(feedAllowance(kno3)).toBeLessThan(0.06);
    expect(feedAllowance(iron)).toBe(0);
  });
});
