import { describe, expect, test } from "vitest";
import { allowancePercent, ecBand, labelErrorMgL } from "../../src/core/allowances.ts";

describe("New Hampshire Agr 1105.04", () => {
  test.each([
    ["Ca", 4, 0.4],
    ["Mg", 1.2, 0.26],
    ["S", 30, 1],
    ["B", 0.02, 0.006],
    ["Mo", 0.001, 0.0004],
    ["Fe", 0.1, 0.015],
    ["Na", 0.1, 0.015],
    ["Cl", 0.1, 0.015],
    ["Cu", 0.05, 0.01],
    ["Mn", 0.05, 0.01],
    ["Zn", 0.05, 0.01],
  ] as const)("%s at %s %%", (symbol, percent, allowed) => {
    expect(allowancePercent(symbol, percent)).toBeCloseTo(allowed, 9);
  });
});

describe("AAPFCO's schedule (memory; 0.88 above 32 % N read)", () => {
  test("nitrogen", () => {
    expect([2, 10, 11, 32, 46].map((percent) => allowancePercent("N", percent))).toEqual([
      0.49, 0.58, 0.595, 0.88, 0.88,
    ]);
  });
  test("phosphate and potash are guaranteed as oxides: 10 % P2O5 ± 0.69, 10 % K2O ± 0.70", () => {
    expect(allowancePercent("P", 4.3643)).toBeCloseTo(0.69 * 0.43643, 4);
    expect(allowancePercent("K", 8.3015)).toBeCloseTo(0.7 * 0.83015, 4);
  });
  test("never more than the guarantee, nothing without one", () => {
    expect(allowancePercent("N", 0.3)).toBe(0.3);
    expect([allowancePercent("N", 0), allowancePercent("Si", 5)]).toEqual([0, 0]);
  });
});

describe("error of a mix", () => {
  const percent = { N: 10, P: 2.182, K: 4.151 };
  const bringsMgL = { N: 100, P: 21.82, K: 41.51 };
  test("a 10-5-5 at 1 g/L: N 100 ± 5.8 mg/L", () => {
    expect(labelErrorMgL([{ percent, bringsMgL }]).N).toBeCloseTo(5.8, 6);
  });
  test("two feeds of the same kind err independently: √2 of one", () => {
    const part = { percent, bringsMgL };
    expect(labelErrorMgL([part, part]).N).toBeCloseTo(5.8 * Math.SQRT2, 6);
  });
  test("what a label does not name has no error, though a little of it comes along", () => {
    expect(labelErrorMgL([{ percent: { N: 10, Cl: 0 }, bringsMgL: { N: 100, Cl: 0, S: 1 } }])).toEqual({
      N: expect.closeTo(5.8, 6),
    });
  });
  test.each(["N", "P", "K", "Ca", "Mg", "S", "Na", "Cl"] as const)(
    "%s alone: EC with that much more of it",
    (symbol) => {
      const amounts = { N: 100, P: 30, K: 100, Ca: 80, Mg: 20, S: 30, Na: 20, Cl: 30 };
      const with20 = ecBand({ amounts: { ...amounts, [symbol]: amounts[symbol] + 20 } }, {}).ecMsCm;
      const band = ecBand({ amounts }, { [symbol]: 20 });
      expect(band.plusMinusMsCm).toBeGreaterThan(0.001);
      expect(band.plusMinusMsCm).toBeCloseTo(Math.abs(with20 - band.ecMsCm), 9);
    },
  );
  test("the band of EC grows with the errors and is 0 without", () => {
    const elements = { amounts: { N: 100, P: 21.82, K: 41.51, Ca: 80 } };
    expect(ecBand(elements, {}).plusMinusMsCm).toBe(0);
    const band = ecBand(elements, labelErrorMgL([{ percent, bringsMgL }]));
    expect(band.plusMinusMsCm / band.ecMsCm).toBeGreaterThan(0.01);
    expect(band.plusMinusMsCm / band.ecMsCm).toBeLessThan(0.15);
    const more = ecBand(elements, { N: 11.6, P: 6, K: 5 });
    expect(more.plusMinusMsCm).toBeGreaterThan(band.plusMinusMsCm);
  });
});
