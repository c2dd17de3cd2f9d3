/** The sample household's own pots: those that its story fills with roots are named in time, and no other. */

import { describe, expect, it } from "vitest";
import { day } from "../../src/build/sample-cell.ts";
import { PLANTS, TODAY } from "../../src/build/sample-household.ts";
import { careLog } from "../../src/build/sample-log.ts";
import { FILLS_FROM, OWN_EVENT } from "../../src/build/sample-roots.ts";
import { isoFromDay } from "../../src/core/calendar.ts";
import { dueList } from "../../src/core/due.ts";
import { dueRules } from "../../src/core/due-rules.ts";
import { eventRule } from "../../src/core/events.ts";

const ROWS = careLog().map(({ day: on, plant, event, amountMl, who, ecMsCm }) => ({
  day: on,
  plant,
  event,
  amountMl: amountMl ?? null,
  who,
  ecMsCm: ecMsCm ?? null,
}));
const EVENTS = eventRule([{ event: OWN_EVENT, disturbsRoots: true }]);
const PLANT_NAMES = PLANTS.map(({ plant }) => plant);
/** The story fills a reservoir in 75 days, evenly. */
const FILLING_DAYS = 75;

/** First day on which each plant is named, of a look every week from the log's fifth month on. */
function firstNamed(): Map<string, number> {
  const first = new Map<string, number>();
  for (let asOfDay = day("2025-04-05"); asOfDay <= day(TODAY); asOfDay += 7) {
    for (const { plant, due } of dueList({
      plants: PLANT_NAMES,
      rows: ROWS,
      events: EVENTS,
      asOfDay,
      rules: dueRules(),
    })) {
      if (due === "Pot up" && !first.has(plant)) first.set(plant, asOfDay);
    }
  }
  return first;
}

describe("a look at the due list every week", () => {
  const first = firstNamed();

  it("names just the pots that fill", () => {
    expect([...first.keys()].sort()).toEqual(Object.keys(FILLS_FROM).sort());
  });

  it.each(Object.entries(FILLS_FROM))("%s, filling from %s on, by three weeks after it is full", (plant, from) => {
    const named = first.get(plant) ?? Number.POSITIVE_INFINITY;
    expect(named, isoFromDay(named)).toBeGreaterThan(day(from) + 14);
    expect(named, isoFromDay(named)).toBeLessThanOrEqual(day(from) + FILLING_DAYS + 21);
  });
});

it("on the sample's last day the big monstera is listed, with the words and the numbers", () => {
  const list = dueList({ plants: PLANT_NAMES, rows: ROWS, events: EVENTS, asOfDay: day(TODAY), rules: dueRules() });
  const [found] = list.filter(({ due }) => due === "Pot up");
  expect(found?.plant).toBe("Big monstera");
  expect(found?.why).toMatch(
    /^Reservoir filling with roots: it drinks [\d.]+ mL a day, eight weeks ago it was [\d.]+, so \d+ % more, while the collection's middle plant drinks \d+ % less, and it is topped up every [\d.]+ days instead of every [\d.]+\. That is the reason to pot up\.$/,
  );
});
