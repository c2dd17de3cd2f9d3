/** Drinking against cases worked by hand: what households do to a log, and what must come out all the same. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { meanUse, trendPercentWeek, type Uptake, uptakes, uptakesWithin } from "../../src/core/drinking.ts";
import { eventRule } from "../../src/core/events.ts";
import { type CareRow, indexFills } from "../../src/core/fills.ts";

const START = 20_000;

/** A row on a day counted from the start of a log of one fern. */
function row(on: number, event: string, amountMl: number | null = null, who = "Ines"): CareRow {
  return { day: START + on, plant: "Fern", event, amountMl, who };
}
const topUp = (on: number, amountMl: number | null, who = "Ines") => row(on, "Top up", amountMl, who);
const weekly = (from: number, to: number, amountMl: number) =>
  Array.from({ length: (to - from) / 7 + 1 }, (_, at) => topUp(from + 7 * at, amountMl));

function drunk(rows: readonly CareRow[], on: number): readonly Uptake[] {
  return uptakes(indexFills(rows, eventRule()).get("fern") ?? [], START + on);
}
const use = (rows: readonly CareRow[], on: number, days = 28) => meanUse(drunk(rows, on), START + on, days);
const trend = (rows: readonly CareRow[], on: number, days = 56) => trendPercentWeek(drunk(rows, on), START + on, days);

describe("use, worked by hand", () => {
  it("100 mL a week is 100/7 mL a day, on the day of a top-up and between two", () => {
    const log = weekly(0, 56, 100);
    for (const on of [56, 59, 62]) expect(use(log, on)).toBeCloseTo(100 / 7, 12);
  });

  it("an interval that began before the window counts with its share", () => {
    // 20 mL a day up to day 10, 5 mL a day up to day 30; the last 28 days hold 8 days of the first.
    const log = [row(0, "Solution change", 900), topUp(10, 200), topUp(30, 100)];
    expect(use(log, 30)).toBeCloseTo((8 * 20 + 20 * 5) / 28, 12);
    expect(use(log, 30, 20)).toBeCloseTo(5, 12);
    expect(use(log, 30, 3650)).toBeCloseTo(300 / 30, 12);
  });

  it("the first filling on record says nothing, and neither do rows to come", () => {
    expect(use([topUp(0, 500)], 3)).toBeNull();
    expect(use([topUp(0, 500), topUp(10, 100)], 9)).toBeNull();
    expect(use([], 3)).toBeNull();
  });

  it("long after the last top-up nothing is known, and that is no 0", () => {
    expect(use(weekly(0, 28, 100), 57)).toBeNull();
    expect(use(weekly(0, 28, 100), 57, 56)).toBeCloseTo(100 / 7, 12);
  });

  it("a change and a flush fill anew and are not drunk; what was drunk before them is not known", () => {
    const log = [...weekly(0, 14, 70), row(18, "Solution change", 800), topUp(25, 70), row(28, "Flush in place", 1500)];
    expect(use([...log, topUp(35, 70)], 35)).toBeCloseTo((7 * 10 + 7 * 10 + 7 * 10) / 21, 12);
    // A top-up on the day of a change belongs to the change.
    expect(use([...log, topUp(18, 300), topUp(35, 70)], 35)).toBeCloseTo(10, 12);
  });

  it.each(["Repot", "Pot up", "Root trim", "Rinse out of pot", "Move from soil", "Division"])(
    "%s begins a new series: only what was drunk since counts",
    (event) => {
      const log = [...weekly(0, 28, 140), row(30, event), topUp(37, 35), topUp(44, 42)];
      expect(use(log, 44)).toBeCloseTo(77 / 14, 12);
      expect(use(log, 36)).toBeNull();
    },
  );

  it.each(["Reading", "Note", "New leaf", "New root", "Decay removed", "Photo"])("%s fills nothing", (event) => {
    expect(use([...weekly(0, 28, 70), row(20, event, 500)], 28)).toBeCloseTo(10, 12);
  });

  it("a holiday: what is poured after it was drunk over all of it", () => {
    const log = [...weekly(0, 14, 100), topUp(35, 290), topUp(42, 100)];
    expect(use(log, 42)).toBeCloseTo((290 + 100) / 28, 12);
  });

  it("a top-up that nobody wrote down does not halve the use", () => {
    const log = weekly(0, 56, 100).filter(({ day }) => day !== START + 42);
    expect(use(log, 56)).toBeCloseTo(100 / 7, 12);
  });

  it("nor one that is missing before the first interval that is known", () => {
    // The first interval was 14 days with 70 mL; those after it 70 mL a week.
    expect(use([row(0, "Repot"), topUp(14, 70), topUp(21, 70), topUp(28, 70)], 28)).toBeCloseTo(10, 12);
  });

  it("is told by the three intervals on each side together: a short one among them changes nothing", () => {
    // 13 days with 70 mL stand between weeks of 70 mL, one of them split in two.
    const log = [...weekly(0, 21, 70), topUp(22, 5), topUp(28, 65), topUp(41, 70), ...weekly(48, 62, 70)];
    expect(use(log, 62, 62)).toBeCloseTo((7 * 70) / 49, 12);
  });

  it("an interval just a third longer, or drinking just two thirds, is the limit", () => {
    const missing = (days: number, amountMl: number) => {
      const log = [...weekly(0, 21, 70), topUp(21 + days, amountMl), ...weekly(28 + days, 42 + days, 70)];
      return drunk(log, 42 + days).length === 6;
    };
    // Weeks of 10 mL a day around it: 10 days are more than 9.1, 9 are not; 6.6 mL a day are less than 6.67, 6.7 are not.
    expect(missing(10, 66)).toBe(true);
    expect(missing(9, 9 * 6.6)).toBe(false);
    expect(missing(10, 67)).toBe(false);
  });

  it("a true drop at the end is not taken for a missing row", () => {
    const log = [...weekly(0, 28, 100), topUp(42, 80)];
    expect(use(log, 42)).toBeCloseTo((14 * (100 / 7) + 80) / 28, 12);
  });

  it("a top-up without an amount leaves its interval out, and fills all the same", () => {
    const log = [...weekly(0, 14, 70), topUp(21, null), topUp(28, 70)];
    expect(use(log, 28)).toBeCloseTo(10, 12);
    expect(use(log, 21, 7)).toBeNull();
  });

  it("a top-up of 0 mL filled nothing", () => {
    expect(use([...weekly(0, 21, 70), topUp(24, 0), topUp(28, 70)], 28)).toBeCloseTo(10, 12);
  });
});

describe("one top-up that several write down", () => {
  const base = weekly(0, 21, 70);
  it.each([
    ["two members, the same amount", [topUp(28, 70, "Ines"), topUp(28, 70, "Tomas")], 70],
    ["three members, off the jug a little differently", [topUp(28, 70), topUp(28, 66, "Bo"), topUp(28, 64, "Cem")], 70],
    ["nobody is named", [topUp(28, 70, ""), topUp(28, 70, "")], 70],
    ["one of two is named", [topUp(28, 70, ""), topUp(28, 70, "Tomas")], 70],
    ["one of them without an amount", [topUp(28, 70), topUp(28, null, "Tomas")], 70],
    ["the same member twice: poured twice", [topUp(28, 70), topUp(28, 70)], 140],
    ["amounts that differ: morning and evening", [topUp(28, 70), topUp(28, 30, "Tomas")], 100],
    ["a tenth less is the same pour still", [topUp(28, 70), topUp(28, 63, "Bo")], 70],
    ["a little less is another", [topUp(28, 70), topUp(28, 62, "Bo")], 132],
    [
      "two members without an amount, one of them with",
      [topUp(28, 70), topUp(28, null, ""), topUp(28, null, "Bo")],
      70,
    ],
    ["both of two pours, each by both", [topUp(28, 70), topUp(28, 70), topUp(28, 70, "Bo"), topUp(28, 70, "Bo")], 140],
  ] as const)("%s", (_, rows, mL) => {
    expect(use([...base, ...rows], 28, 7)).toBeCloseTo(mL / 7, 12);
    expect(use([...rows.slice().reverse(), ...base], 28, 7)).toBeCloseTo(mL / 7, 12);
  });

  it("a second pour without its amount, by the same member, leaves the day's amount unknown", () => {
    expect(use([...base, topUp(28, 70), topUp(28, null)], 28, 7)).toBeNull();
  });
});

describe("trend", () => {
  it("Helsel & Hirsch ch. 10 (from memory): 1 2 3 4 5 16 7 mL a day, a week each, rise by 1 a week, 25 % of the median", () => {
    const log = [row(0, "Repot"), ...[1, 2, 3, 4, 5, 16, 7].map((rate, at) => topUp(7 * (at + 1), 7 * rate))];
    expect(trend(log, 49)).toBeCloseTo(25, 12);
  });

  it("the same use every week is 0 % whatever the intervals and whoever writes down twice", () => {
    const log = [0, 3, 10, 14, 25, 28, 40, 44, 56].map((on, at, all) => topUp(on, 12 * (on - (all[at - 1] ?? 0))));
    const flat = trend([...log, topUp(28, 36, "Tomas")], 56);
    // Not null, which toBeCloseTo takes for 0.
    expect(flat).toEqual(expect.any(Number));
    expect(flat).toBeCloseTo(0, 12);
  });

  it("is told by three intervals or more whose middles span two weeks, since the last disturbance", () => {
    expect(
      trend(
        [0, 7, 14].map((on) => topUp(on, 70)),
        14,
      ),
    ).toBeNull();
    expect(
      trend(
        [0, 5, 10, 15].map((on) => topUp(on, 70)),
        15,
      ),
    ).toBeNull();
    expect(
      trend(
        [0, 7, 14, 21].map((on) => topUp(on, 70)),
        21,
      ),
    ).toBeCloseTo(0, 12);
    expect(trend([...weekly(0, 56, 70), row(50, "Pot up")], 56)).toBeNull();
  });

  it("takes only intervals whose middle lies in the window", () => {
    const log = [...weekly(0, 28, 70), ...[35, 42, 49, 56].map((on, at) => topUp(on, 70 + 7 * (at + 1)))];
    // 11, 12, 13 and 14 mL a day: 1 a week on a median of 12.5.
    expect(trend(log, 56, 28)).toBeCloseTo(100 / 12.5, 12);
  });
});

describe("properties", () => {
  const events = ["Top up", "Top up", "Top up", "Solution change", "Flush in place", "Repot", "Reading"];
  const logs = fc.array(
    fc.record({
      day: fc.integer({ min: START, max: START + 90 }),
      plant: fc.constantFrom("Fern", " fern", "FERN"),
      event: fc.constantFrom(...events),
      amountMl: fc.option(fc.integer({ min: 0, max: 300 })),
      who: fc.constantFrom("", "Ines", "Tomas"),
    }),
    { maxLength: 40 },
  );

  it("the order of rows changes nothing", () => {
    fc.assert(
      fc.property(logs, fc.integer({ min: 0, max: 100 }), (log, on) => {
        expect(drunk(log.slice().reverse(), on)).toEqual(drunk(log, on));
      }),
    );
  });

  it("rows after the day asked for change nothing", () => {
    fc.assert(
      fc.property(logs, fc.integer({ min: 0, max: 100 }), (log, on) => {
        expect(
          drunk(
            log.filter(({ day }) => day <= START + on),
            on,
          ),
        ).toEqual(drunk(log, on));
      }),
    );
  });

  it("the mean lies between the slowest and the fastest interval and is finite", () => {
    fc.assert(
      fc.property(logs, fc.integer({ min: 0, max: 100 }), fc.integer({ min: 1, max: 90 }), (log, on, days) => {
        const mean = use(log, on, days);
        if (mean === null) return;
        const rates = drunk(log, on).map(({ fromDay, toDay, amountMl }) => amountMl / (toDay - fromDay));
        expect(mean).toBeGreaterThanOrEqual(Math.min(...rates) - 1e-9);
        expect(mean).toBeLessThanOrEqual(Math.max(...rates) + 1e-9);
      }),
    );
  });
});

describe("at the edges", () => {
  it("an interval of 1.3 times the days around it at two thirds of their use is missing a row", () => {
    const tens = (from: number) => [0, 10, 20, 30].map((on) => topUp(from + on, 90));
    expect(drunk([...tens(0), ...tens(43)], 73).length).toBe(7);
    const log = [...tens(0), topUp(43, 78), ...tens(53).slice(0, 3)];
    expect(drunk(log, 73)).toHaveLength(6);
  });

  it("two long intervals are no trend, three of a week are", () => {
    expect(trend([topUp(0, 70), topUp(25, 250), topUp(50, 300)], 50)).toBeNull();
    expect(trend(weekly(0, 21, 70), 21)).toBe(0);
  });

  it("an interval counts whose middle is the first day of the window, and none that ends after it", () => {
    const one = { fromDay: 0, toDay: 14, amountMl: 70 };
    expect(uptakesWithin([one], 35, 28)).toEqual([one]);
    expect(uptakesWithin([one], 13, 28)).toEqual([]);
  });

  it("two top-ups of a day by nobody named and without amounts leave the day unknown", () => {
    expect(use([...weekly(0, 21, 70), topUp(28, null, ""), topUp(28, null, "")], 28, 7)).toBeNull();
  });
});
