/** A household's own spread, against published factors; and what labels allow, by hand. */

import { describe, expect, it } from "vitest";
import { allowancePercent } from "../../src/core/allowances.ts";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { ecAllowance, feedAllowance } from "../../src/core/label-share.ts";
import type { EcOf } from "../../src/core/mixture.ts";
import { madSigma, median, spreadBand, studentQuantile } from "../../src/core/spread.ts";
import { percentOf } from "./formula.ts";

const kno3: Feed = feedOf("KNO3", { ...parseLabel("0-0-0"), percent: percentOf("KNO3") }, null);
const iron: Feed = feedOf("Iron", parseLabel("Fe 13"), null);

describe("spread", () => {
  it("small-sample factors of Croux & Rousseeuw 1992 on top of 1.4826", () => {
    // MAD of 1, 2, 4: median 2, deviations 1, 0, 2, their median 1.
    expect(madSigma([1, 2, 4])).toBeCloseTo(1.495 * 1.4826, 4);
    expect(madSigma([1, 2, 3, 4, 5, 6, 7, 8, 9, 100])).toBeCloseTo((10 / 9.2) * 1.4826 * 2.5, 3);
    // The last of the printed factors: 1 to 9, middle 5, deviations 0 1 1 2 2 3 3 4 4.
    expect(madSigma([1, 2, 3, 4, 5, 6, 7, 8, 9])).toBeCloseTo(1.107 * 1.4826 * 2, 3);
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

  it.each([
    [0.75, 0.6744897501960817, 4e-5],
    [0.9, 1.2815515655446004, 1e-4],
  ])(
    "t with 4 degrees of freedom has a closed form; at %d the series falls short of it by %d at most",
    (p, z, most) => {
      // t = 2 √(q − 1), q = cos(arccos(√a) / 3) / √a, a = 4 p (1 − p) (Shaw 2006, J. Comput. Finance 9, 37; memory).
      const a = 4 * p * (1 - p);
      const exact = 2 * Math.sqrt(Math.cos(Math.acos(Math.sqrt(a)) / 3) / Math.sqrt(a) - 1);
      const short = exact - studentQuantile(z, 4);
      expect(short).toBeGreaterThan(0);
      expect(short).toBeLessThan(most);
    },
  );

  it("with few readings it is what labels and meter allow: 6 % and 8 % make 10 %, two standard deviations", () => {
    const band = spreadBand({ ratios: [1.3, 0.7], labelShare: 0.06, meterShare: 0.08 });
    expect(band).toMatchObject({ centre: 1, freedom: 4, enough: false });
    expect(band.spread).toBeCloseTo(0.05, 12);
    for (const [ratio, log] of [
      [band.surelyLow, -0.2],
      [band.low, -0.1],
      [band.high, 0.1],
      [band.surelyHigh, 0.2],
    ] as const)
      expect(Math.log(ratio)).toBeCloseTo(log, 12);
    // 5 and 12 make 13; and no spread is believed below a hundredth.
    expect(spreadBand({ ratios: [], labelShare: 0.12 }).spread).toBeCloseTo(0.065, 12);
    expect(spreadBand({ ratios: [], labelShare: 0, meterShare: 0.01 }).spread).toBe(0.01);
  });

  it("from eight readings on, by hand: four a fiftieth below and four above, beside an allowance of 0.05", () => {
    const ratios = [-1, 1, -1, 1, -1, 1, -1, 1].map((sign) => Math.exp(0.02 * sign));
    const band = spreadBand({ ratios, labelShare: 0.06, meterShare: 0.08 });
    // MAD 0.02: 1.129 × 1.4826 × 0.02 = 0.03348. Own freedom 0.37 × 7 = 2.59, with 4: 6.59.
    expect(band).toMatchObject({ enough: true, centre: 1 });
    expect(band.freedom).toBeCloseTo(6.59, 9);
    // √((4 × 0.05² + 2.59 × 0.03348²) / 6.59) = 0.04425.
    expect(band.spread).toBeCloseTo(0.04425, 4);
    // t at 0.995 lies between 3.707 (6) and 3.499 (7), near 3.578; × 0.04425 × √(1 + π / 16) = 0.1732.
    expect(Math.abs(Math.log(band.high) - 0.1732)).toBeLessThan(0.002);
    expect(band.low * band.high).toBeCloseTo(1, 9);
    expect([band.surelyLow, band.surelyHigh]).toEqual([band.low, band.high]);
    expect(spreadBand({ ratios: Array(8).fill(1), labelShare: 0, meterShare: 0.001 }).spread).toBe(0.01);
  });

  it("only the last thirty count, and what is no ratio not at all", () => {
    const good = Array.from({ length: 30 }, (_, k) => 1 + (k % 5) / 100);
    const band = spreadBand({ ratios: good, labelShare: 0.03 });
    expect(spreadBand({ ratios: [...Array(30).fill(2), ...good], labelShare: 0.03 })).toEqual(band);
    const bad = [0, Number.NaN, -1, Number.POSITIVE_INFINITY];
    expect(spreadBand({ ratios: [...good, ...bad], labelShare: 0.03 })).toEqual(band);
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

describe("what labels allow of a predicted EC", () => {
  // A label of 10 % N may hold 9.42 %, so 5.8 % of it; an EC that follows nitrogen keeps the sum easy.
  const ten = feedOf("Ten", parseLabel("N 10"), null);
  const ecOf: EcOf = ({ amounts }) => (amounts.N ?? 0) / 100;
  const doses = [
    { feed: ten, perLitre: 1 },
    { feed: { ...ten, name: "Another" }, perLitre: 3 },
  ];
  it("each feed counts by its part, as squares: a quarter and three quarters of 5.8 %", () => {
    expect(ecAllowance(doses, {}, ecOf)).toBeCloseTo(0.058 * Math.hypot(0.25, 0.75), 9);
  });
  it("what the water brings is not in doubt: 100 of 500 mg/L leave a fifth and three fifths", () => {
    expect(ecAllowance(doses, { N: 100 }, ecOf)).toBeCloseTo(0.058 * Math.hypot(0.2, 0.6), 9);
  });
  it("a feed that is not dosed, or brings nothing, adds no doubt, and no EC is not in doubt", () => {
    const more = [
      ...doses,
      { feed: ten, perLitre: 0 },
      { feed: feedOf("Nothing", parseLabel("0-0-0"), null), perLitre: 1 },
    ];
    expect(ecAllowance(more, {}, ecOf)).toBeCloseTo(ecAllowance(doses, {}, ecOf), 12);
    expect(ecAllowance(doses, {}, () => 0)).toBe(0);
    expect(ecAllowance([], {}, ecOf)).toBe(0);
  });
});
