/** The state of a reservoir on a day, by hand. */

import { describe, expect, it } from "vitest";
import type { Uptake } from "../../src/core/drinking.ts";
import type { FillDay } from "../../src/core/fills.ts";
import { potState, thirstyDay } from "../../src/core/pot-state.ts";

const fill = (day: number, more: Partial<FillDay> = {}): FillDay => ({
  day,
  topUpMl: null,
  flushed: false,
  changed: false,
  disturbed: false,
  ...more,
});
const drunk = (fromDay: number, toDay: number, amountMl: number): Uptake => ({ fromDay, toDay, amountMl });

describe("when it was filled, renewed and flushed", () => {
  const fills = [
    fill(100),
    fill(107),
    fill(110, { changed: true }),
    fill(115, { flushed: true }),
    fill(120),
    fill(130),
  ];
  it.each([
    [99, null],
    [100, [100, 100, 100]],
    [109, [107, 100, 100]],
    [110, [110, 110, 110]],
    [117, [115, 110, 115]],
    [125, [120, 110, 115]],
    [130, [130, 110, 115]],
  ])("on day %d", (today, days) => {
    const state = potState(fills, [], today);
    expect(state && [state.lastFillDay, state.freshDay, state.flushedDay]).toEqual(days);
  });

  it("a disturbance of the roots renews it as well", () => {
    const state = potState([...fills.slice(0, 5), fill(125, { disturbed: true })], [], 126);
    expect(state).toMatchObject({ lastFillDay: 125, freshDay: 125, flushedDay: 125 });
  });
});

describe("how fast it is drunk", () => {
  const fills = [fill(100), fill(110)];
  it("of the last 28 days where they are known, else of all that is known", () => {
    // 100 mL in 10 days; 28 days before 112 begin on day 84.
    expect(potState(fills, [drunk(100, 110, 100)], 112)?.useMlDay).toBe(10);
    // Of two uptakes only the later lies within 28 days.
    expect(potState(fills, [drunk(50, 60, 500), drunk(100, 110, 100)], 112)?.useMlDay).toBe(10);
    // Nothing within 28 days: 600 mL in 20 days.
    expect(potState(fills, [drunk(50, 60, 500), drunk(60, 70, 100)], 112)?.useMlDay).toBe(30);
    expect(potState(fills, [], 112)?.useMlDay).toBeNull();
  });

  it("and what is usually poured in: the median of the last eight", () => {
    const amounts = [9000, 9000, 9000, 100, 200, 300, 400, 500, 600, 700, 800];
    const all = amounts.map((amountMl, k) => drunk(100 + k, 101 + k, amountMl));
    expect(potState(fills, all, 112)?.usualMl).toBe(450);
    expect(potState(fills, [], 112)?.usualMl).toBeNull();
  });
});

describe("the day by which it is thirsty", () => {
  const state = { lastFillDay: 110, freshDay: 110, flushedDay: 110 };
  it.each([
    [50, 500, 120],
    [60, 500, 118],
    [900, 100, 111],
    [0, 500, null],
    [null, 500, null],
    [50, null, null],
  ])("%s mL a day of %s mL: day %s", (useMlDay, usualMl, day) => {
    expect(thirstyDay({ ...state, useMlDay, usualMl })).toBe(day);
  });
});
