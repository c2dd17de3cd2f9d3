/** Readings as rows to draw: order, limits, the band, and marks. */

import { describe, expect, it } from "vitest";
import { type HistoryBatch, readingHistory } from "../../src/core/reading-history.ts";

const batch = (day: number, given: Partial<HistoryBatch> = {}): HistoryBatch => ({
  day,
  ecMsCm: 1.2,
  expectedMsCm: 1.2,
  pH: 5.8,
  ...given,
});
const task = { low: 5.5, high: 6, calibrations: [], lots: [] };

describe("readings over time", () => {
  it("stand by day, with the limits in every row", () => {
    const rows = readingHistory({ ...task, batches: [batch(20), batch(10, { pH: null })] });
    expect(rows.map(({ day, pH, low, high }) => [day, pH, low, high])).toEqual([
      [10, null, 5.5, 6],
      [20, 5.8, 5.5, 6],
    ]);
    expect(rows.every(({ ecLowMsCm }) => ecLowMsCm === null)).toBe(true);
  });

  it("have marks on the limits, at the first batch on that day or after it", () => {
    const rows = readingHistory({
      ...task,
      batches: [batch(30), batch(10), batch(20)],
      calibrations: [9, 12, 13, 31],
      lots: [10, 25],
    });
    expect(rows.map(({ day, pH, calibrated, newLot }) => [day, pH, calibrated, newLot])).toEqual([
      [10, 5.8, null, 6],
      [20, 5.8, 5.5, null],
      [30, 5.8, null, 6],
    ]);
  });

  it("have a band around the expected EC from eight readings on, in proportion", () => {
    const batches = Array.from({ length: 8 }, (_, k) =>
      batch(k, { expectedMsCm: 1 + k / 10, ecMsCm: (1 + k / 10) * ([1.03, 1.05, 1.01][k % 3] ?? 1) }),
    );
    const rows = readingHistory({ ...task, batches });
    // The middle of the ratios is 1.03; the band is one share of the expected EC throughout.
    const shares = rows.map(({ ecLowMsCm, ecHighMsCm, expectedMsCm }) =>
      [ecLowMsCm, ecHighMsCm].map((limit) => (limit ?? 0) / (expectedMsCm ?? 1)),
    );
    for (const [low = 0, high = 0] of shares) {
      expect(low).toBeCloseTo(shares[0]?.[0] ?? 0, 9);
      expect(Math.sqrt(low * high)).toBeCloseTo(1.03, 9);
      expect(low).toBeLessThan(1.01);
      expect(high).toBeGreaterThan(1.05);
    }
  });

  it("have no mark for what was done before the first batch", () => {
    const rows = readingHistory({ ...task, batches: [batch(10), batch(20)], calibrations: [9], lots: [21] });
    expect(rows.flatMap(({ calibrated, newLot }) => [calibrated, newLot])).toEqual([null, null, null, null]);
  });

  it("count for the band only where both were there: seven and three halves are not eight", () => {
    const seven = Array.from({ length: 7 }, (_, k) => batch(k));
    const halves = [{ ecMsCm: null }, { expectedMsCm: null }, { expectedMsCm: 0 }].map((given, k) =>
      batch(7 + k, given),
    );
    expect(readingHistory({ ...task, batches: [...seven, ...halves] }).map(({ ecLowMsCm }) => ecLowMsCm)).toEqual(
      Array(10).fill(null),
    );
    const rows = readingHistory({ ...task, batches: [...seven, batch(7), ...halves] });
    for (const side of ["ecLowMsCm", "ecHighMsCm"] as const)
      expect(rows.map((row) => row[side] === null)).toEqual([...Array(9).fill(false), true, false]);
  });

  it("of nothing are nothing", () => {
    expect(readingHistory({ ...task, batches: [], calibrations: [1], lots: [1] })).toEqual([]);
  });
});
