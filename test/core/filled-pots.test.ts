/** Reservoirs filling with roots: simulated households, and the sentence with its numbers. */

import { describe, expect, it } from "vitest";
import { type Uptake, uptakes } from "../../src/core/drinking.ts";
import { eventRule } from "../../src/core/events.ts";
import { commonRise, drinkingChange, filling, sayFilling } from "../../src/core/filled-pots.ts";
import { indexFills, lastDisturbedDay } from "../../src/core/fills.ts";
import { simulate } from "./filling-collection.ts";

const SEASON = 91;
/** Twelve weeks of log come before anything can be told. */
const LEARNING = 84;

interface Tally {
  filled: number;
  inTime: number;
  tooEarly: number;
  quietSeasons: number;
  falselyNamed: number;
}

/** Looks once a week at a household's log, as one would at a board, and counts what was named when. */
function tally(seeds: readonly number[]): Tally {
  const sum: Tally = { filled: 0, inTime: 0, tooEarly: 0, quietSeasons: 0, falselyNamed: 0 };
  for (const seed of seeds) {
    const household = simulate({ seed, quiet: 30, filling: 10, days: 270, startsAt: (seed * 61) % 365 });
    const { pots, rows, firstDay, lastDay } = household;
    const fills = indexFills(rows, eventRule());
    const named = new Map<string, number[]>(pots.map(({ plant }) => [plant, []]));
    for (let day = firstDay + LEARNING; day <= lastDay; day += 7) {
      const changes = pots.map(({ plant }) => {
        const mine = fills.get(plant.toLowerCase()) ?? [];
        return drinkingChange(uptakes(mine, day), day, lastDisturbedDay(mine, day));
      });
      const common = commonRise(changes.filter((change) => change !== null));
      pots.forEach(({ plant }, at) => {
        const change = changes[at] ?? null;
        if (change !== null && filling(change, common) !== null) named.get(plant)?.push(day);
      });
    }
    for (const { plant, filledOn } of pots) {
      const days = named.get(plant) ?? [];
      if (filledOn === null) {
        for (let from = firstDay + LEARNING; from + SEASON <= lastDay + 1; from += SEASON) {
          sum.quietSeasons += 1;
          if (days.some((day) => day >= from && day < from + SEASON)) sum.falselyNamed += 1;
        }
      } else {
        const first = days[0] ?? Number.POSITIVE_INFINITY;
        sum.filled += 1;
        // The filling is half way four weeks before the known day and has hardly begun eight weeks before it.
        if (first < filledOn - 56) sum.tooEarly += 1;
        else if (first <= filledOn + 21) sum.inTime += 1;
      }
    }
  }
  return sum;
}

describe("simulated households, 30 quiet pots and 10 that fill with roots on known days", () => {
  const { filled, inTime, tooEarly, quietSeasons, falselyNamed } = tally(Array.from({ length: 40 }, (_, at) => at + 1));

  it("at least 85 % of the filling pots are named by three weeks after the day", () => {
    expect(filled).toBe(400);
    expect(inTime / filled).toBeGreaterThanOrEqual(0.85);
    expect(tooEarly / filled).toBeLessThan(0.05);
  });

  it("fewer than 5 % of quiet pots are named falsely in a season", () => {
    expect(quietSeasons).toBe(2400);
    expect(falselyNamed / quietSeasons).toBeLessThan(0.05);
  });
});

/** Uptakes of so many mL a day in intervals of so many days, up to a day. */
function steady(mlDay: number, gapDays: number, fromDay: number, toDay: number): Uptake[] {
  const some: Uptake[] = [];
  for (let at = fromDay; at + gapDays <= toDay; at += gapDays) {
    some.push({ fromDay: at, toDay: at + gapDays, amountMl: mlDay * gapDays });
  }
  return some;
}

describe("worked by hand", () => {
  // 10 mL a day in intervals of 7 days, then 16 mL a day in intervals of 4 from four weeks before day 112.
  const drunk = [...steady(10, 7, 0, 84), ...steady(16, 4, 84, 112)];

  it("says use and intervals now and eight weeks ago", () => {
    const change = drinkingChange(drunk, 112, null);
    expect(change).toEqual({
      before: { useMlDay: 10, gapDays: 7 },
      now: { useMlDay: 16, gapDays: 4 },
      rising: true,
    });
    const told = change === null ? null : filling(change, 0);
    expect(told === null ? "" : sayFilling(told)).toBe(
      "Reservoir filling with roots: it drinks 16 mL a day, eight weeks ago it was 10, so 60 % more, and it is topped up every 4 days instead of every 7. That is the reason to pot up.",
    );
  });

  it("sets the season aside: 60 % more is a rise of a third where the middle plant drinks 20 % more", () => {
    const change = drinkingChange(drunk, 112, null);
    if (change === null) throw new Error("Nothing is told of a full log.");
    expect(filling(change, 0.2, 0.33)).not.toBeNull();
    expect(filling(change, 0.2, 0.34)).toBeNull();
    const told = filling(change, 0.2, 0.3);
    expect(told === null ? "" : sayFilling(told)).toContain(
      "so 60 % more, while the collection's middle plant drinks 20 % more, and",
    );
  });

  it("does not name a plant whose top-ups come as rarely as before, or whose use no longer rises", () => {
    const sameGap = drinkingChange([...steady(10, 7, 0, 84), ...steady(16, 7, 84, 112)], 112, null);
    expect(sameGap !== null && filling(sameGap, 0)).toBeNull();
    const level = drinkingChange([...steady(10, 7, 0, 56), ...steady(16, 4, 56, 112)], 112, null);
    expect(level).toMatchObject({ rising: false });
    expect(level !== null && filling(level, 0)).toBeNull();
  });

  it("does not take the weeks in which a disturbed plant roots again for its earlier use", () => {
    // Days 28 to 56 are the earlier weeks. Disturbed on day 0, 14 of them lie after its six weeks; on day 4, just 7.
    expect(drinkingChange(drunk, 112, 0)).toMatchObject({ before: { useMlDay: 10 } });
    expect(drinkingChange(drunk, 112, 4)).toBeNull();
  });

  it("says nothing without four weeks eight weeks ago", () => {
    expect(drinkingChange(steady(10, 7, 70, 112), 112, null)).toBeNull();
    expect(drinkingChange([], 112, null)).toBeNull();
  });

  it("the season is told by five plants or more", () => {
    const change = drinkingChange(drunk, 112, null);
    if (change === null) throw new Error("Nothing is told of a full log.");
    expect(commonRise([change, change, change, change])).toBe(0);
    expect(commonRise([change, change, change, change, change])).toBeCloseTo(0.6, 12);
  });
});

it("of an interval that reaches past the four weeks only the days inside count as known", () => {
  // Four weeks to day 200, and those that ended eight weeks before, from 116 to 144.
  const lately = [
    { fromDay: 172, toDay: 186, amountMl: 140 },
    { fromDay: 186, toDay: 200, amountMl: 140 },
  ];
  const change = (from: number) =>
    drinkingChange(
      [{ fromDay: from, toDay: 140, amountMl: 80 }, { fromDay: 140, toDay: 172, amountMl: 320 }, ...lately],
      200,
      null,
    );
  // 8 + 4 days are the twelve that are asked for, 7 + 4 are one too few.
  expect(change(132)).not.toBeNull();
  expect(change(133)).toBeNull();
});

describe("at the edges", () => {
  it("only intervals with their middle in the four weeks tell how often it is topped up", () => {
    const some = (days: readonly number[], mlDay: number): Uptake[] =>
      days.slice(1).map((toDay, at) => {
        const fromDay = days[at] as number;
        return { fromDay, toDay, amountMl: mlDay * (toDay - fromDay) };
      });
    const early = some([0, 7, 14, 21, 28, 35, 42, 49, 52, 60], 10);
    const late = some([80, 88, 92, 96, 100, 104, 108, 124], 16);
    // 7, 7, 7, 3 and 8 days before; the middle of 80 to 88 is the day before the four weeks, that of 108 to 124 after.
    const change = drinkingChange([...early, ...late], 112, null);
    expect(change?.before.gapDays).toBeCloseTo(32 / 5, 12);
    expect(change?.now.gapDays).toBeCloseTo(4, 12);
    const across = drinkingChange([...some([0, 28, 44, 52, 80], 10), ...late], 112, null);
    expect(across?.before.gapDays).toBeCloseTo(12, 12);
  });

  it("twelve days in one interval are enough, and an interval with its middle before them is none", () => {
    const before = { fromDay: 30, toDay: 42, amountMl: 120 };
    expect(drinkingChange([before, { fromDay: 90, toDay: 102, amountMl: 120 }], 112, null)).not.toBeNull();
    expect(drinkingChange([before, { fromDay: 56, toDay: 97, amountMl: 410 }], 112, null)).toBeNull();
  });

  it("more than the limit is a rise, a tenth less is closer together, and the middle plant may drink less", () => {
    const change = (useMlDay: number, gapDays: number) => ({
      before: { useMlDay: 10, gapDays: 10 },
      now: { useMlDay, gapDays },
      rising: true,
    });
    expect(filling(change(15, 5), 0, 0.5)).toBeNull();
    const told = filling(change(16, 9), -0.1, 0.5);
    expect(told === null ? "" : sayFilling(told)).toContain("middle plant drinks 10 % less, and");
  });
});
