/** The robust line against a textbook's example, cases worked by hand, and what must not change it. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { median, theilSen } from "../../src/core/theil-sen.ts";

const points = (x: readonly number[], y: readonly number[]) => x.map((at, i) => ({ x: at, y: y[i] as number }));

describe("Helsel & Hirsch, Statistical methods in water resources, ch. 10 (figures from memory)", () => {
  it("x 1 to 7, y 1 2 3 4 5 16 7 has a slope of 1 and S 19; the line goes through the medians", () => {
    const line = theilSen(points([1, 2, 3, 4, 5, 6, 7], [1, 2, 3, 4, 5, 16, 7]));
    expect(line).toMatchObject({ slope: 1, kendallS: 19, medianX: 4, medianY: 4, intercept: 0 });
  });
});

describe("worked by hand", () => {
  it("an even count of slopes takes the mean of the middle two: slopes 1, 2 and, over both, 1.5", () => {
    expect(theilSen(points([0, 1, 2], [0, 1, 3]))?.slope).toBe(1.5);
    // By pairs 1, 1, 2, 1, 2.5, 4; in order 1 1 1 2 2.5 4.
    expect(theilSen(points([0, 1, 2, 3], [0, 1, 2, 6]))?.slope).toBe(1.5);
  });

  it("pairs at the same x say nothing; no two different x give no line", () => {
    expect(theilSen(points([0, 0, 1], [0, 5, 2]))).toMatchObject({ slope: -0.5, kendallS: 0 });
    expect(theilSen(points([3, 3], [1, 2]))).toBeNull();
    expect(theilSen([])).toBeNull();
  });

  it("medians", () => {
    expect(median([3])).toBe(3);
    expect(median([3, 1])).toBe(2);
    expect(median([10, -1, 3])).toBe(3);
    expect(() => median([])).toThrow(RangeError);
  });
});

describe("properties", () => {
  const some = fc.array(fc.record({ x: fc.integer({ min: 0, max: 50 }), y: fc.integer({ min: -99, max: 99 }) }), {
    minLength: 2,
    maxLength: 25,
  });

  it("order changes nothing; a line added to y adds its slope", () => {
    fc.assert(
      fc.property(some, fc.integer({ min: -9, max: 9 }), (given, tilt) => {
        const line = theilSen(given);
        expect(theilSen(given.slice().reverse())).toEqual(line);
        const tilted = theilSen(given.map(({ x, y }) => ({ x, y: y + tilt * x })));
        if (line === null) expect(tilted).toBeNull();
        else expect(tilted?.slope).toBeCloseTo(line.slope + tilt, 9);
      }),
    );
  });

  it("half of all slopes lie on either side", () => {
    fc.assert(
      fc.property(some, (given) => {
        const line = theilSen(given);
        if (line === null) return;
        const slopes: number[] = [];
        for (const a of given) for (const b of given) if (b.x > a.x) slopes.push((b.y - a.y) / (b.x - a.x));
        expect(slopes.filter((slope) => slope < line.slope).length).toBeLessThanOrEqual(slopes.length / 2);
        expect(slopes.filter((slope) => slope > line.slope).length).toBeLessThanOrEqual(slopes.length / 2);
      }),
    );
  });
});
