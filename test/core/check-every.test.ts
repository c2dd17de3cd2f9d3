/** When a run of readings ends, how often to test after it, and why: by hand. */

import { describe, expect, it } from "vitest";
import { checkEvery, checkRange, continued, ending, type Standing, standingOf } from "../../src/core/check-every.ts";
import { refusal } from "./refusal.ts";

const range = { low: 5.5, high: 6 };
/** 5.75 with a scatter of hundredths. */
const steady = (count: number) => Array.from({ length: count }, (_, k) => [5.75, 5.77, 5.73][k % 3] as number);

describe("a run", () => {
  const reasons = (run: readonly number[], ...readings: readonly number[]) =>
    readings.map((pH) => ending(run, pH, range)?.reason ?? null);

  it("ends with a reading out of range, the limits themselves being in it", () => {
    expect(reasons([], 5.49, 5.5, 5.75, 6, 6.01)).toEqual(["out of range", null, null, null, "out of range"]);
    expect(ending([], 6.2, range)).toEqual({ reason: "out of range", pH: 6.2, chart: null });
  });

  it("ends with a reading beyond the chart on either side, once there are six", () => {
    expect(reasons(steady(5), 5.6, 5.9)).toEqual([null, null]);
    // six hundredths either way at least: three times what a meter for the home repeats to
    expect(reasons(steady(12), 5.6, 5.68, 5.72, 5.78, 5.82, 5.9)).toEqual(["shift", null, null, null, null, "shift"]);
    const shift = ending(steady(12), 5.9, range);
    expect(shift).toMatchObject({ reason: "shift", pH: 5.9 });
    expect(shift?.chart?.mean).toBeCloseTo(5.75, 9);
    const same = ending(Array(12).fill(5.75), 5.82, range);
    expect([same?.chart?.low, same?.chart?.high].map((limit) => limit?.toFixed(3))).toEqual(["5.690", "5.810"]);
  });

  it("goes on with a reading that stands on a limit of the chart", () => {
    // after readings that all agree, six hundredths away
    expect(reasons(Array(6).fill(5.75), 5.68, 5.69, 5.81, 5.82)).toEqual(["shift", null, null, "shift"]);
  });

  it("ends with eight on one side of the mean, after six others at least", () => {
    for (const side of [5.78, 5.72]) {
      // alternating around 5.75, the last one on the other side
      const first = (count: number) =>
        Array.from({ length: count }, (_, k) => ((count - k) % 2 === 1 ? 11.5 - side : side));
      const seven = Array.from({ length: 7 }, () => side);
      const drift = ending([...first(12), ...seven], side, range);
      expect(drift).toMatchObject({ reason: "drift", pH: side });
      expect(drift?.chart).not.toBeNull();
      expect(ending([...first(12), ...seven.slice(1)], side, range)).toBeNull();
      expect(ending([...first(6), ...seven], side, range)?.reason).toBe("drift");
      expect(ending([...first(5), ...seven], side, range)).toBeNull();
    }
    expect(ending(Array(20).fill(5.75), 5.75, range)).toBeNull();
  });

  it("keeps the last twenty-five readings", () => {
    const many = Array.from({ length: 30 }, (_, k) => 5 + k / 100);
    expect(continued(many, 6)).toEqual([...many.slice(6), 6]);
    expect(continued([5.7], 5.8)).toEqual([5.7, 5.8]);
  });

  it("takes readings from 0 to 14", () => {
    expect(refusal(() => ending([], 14.1, range))).toMatch(/pH is 14\.1/);
    expect(refusal(() => ending([], -1, range))).toMatch(/pH is .1/);
  });
});

describe("a standing", () => {
  const said = ({ every, reason }: Standing) => `${every} ${reason}`;

  it("says few, wide, blind or steady", () => {
    expect(said(standingOf(steady(5), range))).toBe("1 few");
    expect(standingOf(steady(5), range)).toMatchObject({ chart: null, tolerance: null });
    expect([6, 9, 12].map((count) => said(standingOf(steady(count), range)))).toEqual([
      "2 steady",
      "4 steady",
      "8 steady",
    ]);
    const near = steady(20).map((pH) => pH + 0.22);
    expect(said(standingOf(near, range))).toBe("1 wide");
    expect(
      said(
        standingOf(
          steady(20).map((pH) => pH - 0.22),
          range,
        ),
      ),
    ).toBe("1 wide");
    const rough = Array.from({ length: 20 }, (_, k) => 5.75 + ([0.12, -0.1, 0.02, -0.13, 0.1][k % 5] as number));
    expect(said(standingOf(rough, { low: 3, high: 9 }))).toBe("1 blind");
  });

  it("counts on fewer misses the longer the gap: one in ten gaps may hold a batch out of range", () => {
    // 1 - 1 / (10 (n - 1)) of all batches
    const content = (count: number) => standingOf(steady(count), range).tolerance?.content;
    expect(content(6)).toBeCloseTo(0.9, 12);
    expect(content(9)).toBeCloseTo(1 - 1 / 30, 12);
    expect(content(12)).toBeCloseTo(1 - 1 / 70, 12);
    const { tolerance } = standingOf(steady(12), range);
    expect(tolerance?.confidence).toBe(0.95);
    expect(((tolerance?.low ?? 0) + (tolerance?.high ?? 0)) / 2).toBeCloseTo(5.75, 9);
    // readings that all agree do not narrow the limits below what a meter repeats to
    const same = standingOf(Array(12).fill(5.75), range).tolerance;
    expect((same?.high ?? 0) - 5.75).toBeGreaterThan(2 * 0.02);
  });
});

it("limits are from 0 to 14 and do not cross or meet", () => {
  expect(refusal(() => checkRange({ low: -1, high: 6 }))).toMatch(/lower limit is .1/);
  expect(refusal(() => checkRange({ low: 5, high: 15 }))).toMatch(/upper limit is 15/);
  expect(refusal(() => checkRange({ low: 6, high: 5.5 }))).toMatch(/6 and 5\.5/);
  expect(refusal(() => checkRange({ low: 6, high: 6 }))).toMatch(/6 and 6/);
  expect(checkEvery(steady(12), { low: 0, high: 14 })).toBe(8);
});

describe("a scatter that hides a shift", () => {
  it("is that of the readings, where they scatter more than a meter", () => {
    const apart = [5.67, 5.67, 5.67, 5.83, 5.83, 5.83];
    expect(standingOf(apart, range)).toMatchObject({ every: 1, reason: "blind" });
  });
});
