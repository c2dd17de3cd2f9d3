/** Drift of a meter in its standards, by hand. */

import { describe, expect, it } from "vitest";
import { meterDrift, type StandardReading } from "../../src/core/drift.ts";
import { refusal } from "./refusal.ts";

/** 1413 µS/cm is 0.01 mol/L KCl at 25 °C (EPA Method 120.1). */
const ec = (day: number, reading: number, adjusted = false): StandardReading => ({
  day,
  standard: 1.413,
  reading,
  adjusted,
});
const ph = (day: number, reading: number, adjusted = false): StandardReading => ({
  day,
  standard: 7.01,
  reading,
  adjusted,
});

describe("two standards on one day", () => {
  it("the worse of the two counts, in whichever order", () => {
    const four: StandardReading = { day: 5, standard: 4.01, reading: 4.31, adjusted: false };
    for (const log of [
      [ph(5, 7.03), four],
      [four, ph(5, 7.03)],
    ]) {
      const drift = meterDrift(log, { kind: "pH", today: 5 });
      expect(drift.error).toBeCloseTo(0.3, 12);
      expect(drift.verdict).toBe("calibrate now");
    }
  });

  it("one set right leaves the other as it was read after that", () => {
    const four = (adjusted: boolean): StandardReading => ({ day: 5, standard: 4.01, reading: 4.31, adjusted });
    expect(meterDrift([ph(5, 7.2, true), four(true)], { kind: "pH", today: 5 }).error).toBe(0);
    expect(meterDrift([ph(5, 7.2, true), four(false)], { kind: "pH", today: 5 }).error).toBeCloseTo(0.3, 12);
  });
});

describe("EC", () => {
  it("by hand: 1 % low each 10 days is due on the day it is 5 % low", () => {
    const log = [ec(0, 1.413, true), ec(10, 1.413 * 0.99), ec(20, 1.413 * 0.98)];
    const drift = meterDrift(log, { kind: "EC", today: 21 });
    expect(drift.perDay).toBeCloseTo(-0.001, 12);
    expect(drift.error).toBeCloseTo(-0.02, 12);
    expect(drift.verdict).toBe("fine");
    expect([49, 50]).toContain(drift.dueDay);
    expect(drift.sentence).toBe(
      `At its last check the meter was 2 % off in the standard. It drifts 3 % in 30 days. Calibrate again in ${(drift.dueDay ?? 0) - 21} days.`,
    );
  });

  it("beyond the tolerance it is due at once, and so is the last batch", () => {
    const drift = meterDrift([ec(0, 1.5)], { kind: "EC", today: 1 });
    expect(drift.verdict).toBe("calibrate now");
    expect(drift.perDay).toBeNull();
    expect(drift.sentence).toContain("Calibrate it now, and measure the last batch again.");
  });

  it("right after an adjustment the error is gone, and what went before does not count as drift", () => {
    const drift = meterDrift([ec(0, 1.413), ec(30, 1.3, true)], { kind: "EC", today: 30 });
    expect(drift.error).toBe(0);
    // One pair before the adjustment: 8 % in 30 days.
    expect(drift.perDay).toBeCloseTo((1.3 / 1.413 - 1) / 30, 12);
    expect(drift.pairs).toBe(1);
  });

  it("without drift it is due after 90 days, whatever the readings", () => {
    expect(meterDrift([ec(0, 1.413, true)], { kind: "EC", today: 10 }).dueDay).toBe(90);
    expect(meterDrift([ec(0, 1.413, true)], { kind: "EC", today: 90 }).verdict).toBe("calibrate now");
    expect(meterDrift([ec(0, 1.413, true)], { kind: "EC", today: 10, rules: { longestDays: 20 } }).dueDay).toBe(20);
  });

  it("one bad reading does not carry the slope", () => {
    const log = [0, 10, 20, 30, 40, 50].map((day) => ec(day, 1.413 * (1 - 0.0002 * day)));
    const spoilt = log.map((entry) => (entry.day === 30 ? ec(30, 2.5) : entry));
    expect(meterDrift(spoilt, { kind: "EC", today: 50 }).perDay).toBeCloseTo(-0.0002, 3);
  });
});

describe("pH", () => {
  it("by hand: 0.05 lower in 25 days, 0.1 to live with, due within 30 days of the last look", () => {
    const drift = meterDrift([ph(0, 7.01, true), ph(25, 6.96)], { kind: "pH", today: 26 });
    expect(drift.perDay).toBeCloseTo(-0.002, 9);
    expect([49, 50]).toContain(drift.dueDay);
    expect(drift.sentence).toContain("0.05 pH off");
  });
});

describe("pairs of readings", () => {
  it("by hand: 1 % lower in 10 days, from a meter that was 1 % low to begin with", () => {
    const log = [ec(20, 1.413 * 0.98), ec(10, 1.413 * 0.99)];
    const drift = meterDrift(log, { kind: "EC", today: 21 });
    expect(drift.perDay).toBeCloseTo(-0.001, 12);
    expect([drift.pairs, drift.error]).toEqual([1, expect.closeTo(-0.02, 12)]);
  });

  it("are within one day or across an adjustment none", () => {
    expect(meterDrift([ph(5, 7.03), ph(5, 7.05)], { kind: "pH", today: 5 })).toMatchObject({ pairs: 0, perDay: null });
    const log = [ec(0, 1.413), ec(30, 1.413 * 0.97, true), ec(60, 1.413)];
    const drift = meterDrift(log, { kind: "EC", today: 60 });
    // 3 % lower in 30 days, and, set right, the same after 30 more: −0.001 and 0 a day.
    expect(drift.pairs).toBe(2);
    expect(drift.perDay).toBeCloseTo(-0.0005, 12);
  });

  it("the error is that of the last day, not the worst there ever was", () => {
    const log = [ec(10, 1.413 * 0.9), ec(20, 1.413)];
    expect(meterDrift(log, { kind: "EC", today: 20 }).error).toBeCloseTo(0, 12);
  });
});

describe("what is said", () => {
  const said = (log: readonly StandardReading[], today: number) => meterDrift(log, { kind: "EC", today }).sentence;
  it("after an adjustment, and before one is due", () => {
    expect(said([ec(0, 1.413, true)], 10)).toMatch(
      /meter was adjusted to the standard\. Calibrate again in 80 days\.$/,
    );
    expect(said([ec(0, 1.413, true)], 89)).toMatch(/in 1 day\.$/);
    expect(said([ec(0, 1.413, true)], 90)).toMatch(/\. Calibrate it now\.$/);
    expect(said([], 5)).toMatch(/no reading/);
  });
});

it("what lies after today does not count yet", () => {
  expect(meterDrift([ec(0, 1.413), ec(9, 2)], { kind: "EC", today: 5 }).error).toBe(0);
});

it("without a reading there is nothing to go by", () => {
  expect(meterDrift([], { kind: "EC", today: 5 })).toMatchObject({ verdict: "no readings", error: null, dueDay: null });
});

it("impossible readings are refused", () => {
  expect(
    refusal(() => meterDrift([{ day: 0, standard: 0, reading: 1, adjusted: false }], { kind: "EC", today: 5 })),
  ).toBe("The standard is 0 mS/cm. Give a number above 0.");
  expect(
    refusal(() => meterDrift([{ day: 0, standard: 0, reading: 1, adjusted: false }], { kind: "pH", today: 5 })),
  ).toBe("The standard is 0. Give a number above 0.");
  expect(meterDrift([ec(0, 0)], { kind: "EC", today: 5 }).error).toBe(-1);
  expect(refusal(() => meterDrift([ec(0, -1)], { kind: "EC", today: 5 }))).toBe(
    "The reading is -1 mS/cm. Give 0 or more.",
  );
});

describe("at the edges", () => {
  it("three readings make three pairs", () => {
    const { pairs, perDay } = meterDrift([ph(0, 7.01), ph(10, 7.02), ph(20, 7.05)], { kind: "pH", today: 20 });
    expect(pairs).toBe(3);
    expect(perDay).toBeCloseTo(0.002, 12);
  });

  it("an error that is just the tolerance is still fine, up to the longest time", () => {
    const log: StandardReading[] = [{ day: 0, standard: 4, reading: 4.5, adjusted: false }];
    const at = (today: number) => meterDrift(log, { kind: "pH", today, rules: { tolerance: 0.5 } });
    expect(at(0)).toMatchObject({ verdict: "fine", dueDay: 30 });
    expect(at(30).sentence).toMatch(/Calibrate it now\.$/);
  });
});
