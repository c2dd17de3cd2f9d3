/** A sitter's visits: by hand for one plant, and for many against a reservoir emptied day by day. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { eventRule } from "../../src/core/events.ts";
import { compareSitting, type SitterTask, sitterPlan } from "../../src/core/sitter.ts";
import { drawn } from "../drawn.ts";

const events = eventRule();

/** Fillings of one plant: each of `amountMl`, `everyDays` apart, the last one on `lastDay`. */
function log(
  plant: string,
  {
    lastDay,
    everyDays,
    amountMl,
    times = 8,
  }: Record<"lastDay" | "everyDays" | "amountMl", number> & { times?: number },
) {
  return Array.from({ length: times }, (_, at) => ({
    day: lastDay - at * everyDays,
    plant,
    event: "Top up",
    amountMl,
    who: "Ines",
  }));
}

const task = (given: Partial<SitterTask>): SitterTask => ({
  plants: [{ plant: "Fern", place: "Hall" }],
  rows: [],
  events,
  todayDay: 1000,
  fromDay: 1001,
  toDay: 1014,
  everyDays: 1,
  filledBefore: true,
  topUpDays: null,
  ...given,
});

const days = (given: Partial<SitterTask>) => sitterPlan(task(given)).pours.map(({ day, amountMl }) => [day, amountMl]);

describe("one plant that drinks 100 mL in five days", () => {
  const rows = log("Fern", { lastDay: 1000, everyDays: 5, amountMl: 100 });

  test("with a visit every day: on the fifth day, the tenth and no more, as the household is back on the fifteenth", () => {
    expect(days({ rows })).toEqual([
      [1005, 100],
      [1010, 100],
    ]);
    // Back a day later, the third filling is due on the last day away.
    expect(days({ rows, toDay: 1015 }).length).toBe(3);
  });

  test("with a visit every third day: on the visit before it is due, and as much as it has drunk by then", () => {
    // Visits on 1001, 1004, 1007, 1010, 1013. Full on 1000, due on 1005: that of 1004. Then due on 1009: that of 1007;
    // on 1012: that of 1010; on 1015, when the household is back.
    expect(days({ rows, everyDays: 3 })).toEqual([
      [1004, 80],
      [1007, 60],
      [1010, 60],
    ]);
  });

  test("with a visit a week it runs dry, which is said, and never gets more than was ever poured at once", () => {
    const plan = sitterPlan(task({ rows, everyDays: 7 }));
    expect(plan.pours.map(({ day, amountMl }) => [day, amountMl])).toEqual([
      [1001, 20],
      [1008, 100],
    ]);
    expect(plan.tooRare).toEqual([{ plant: "Fern", place: "Hall", lastsDays: 5 }]);
  });

  test("without a filling just before, the household goes on as usual until it leaves", () => {
    // Filled on 992 and so on 997; next due on 1002.
    const early = log("Fern", { lastDay: 992, everyDays: 5, amountMl: 100 });
    expect(days({ rows: early, filledBefore: false })[0]).toEqual([1002, 100]);
  });
});

describe("what is not known", () => {
  test("a plant without a filling in the log is named, one filled once goes by the rule", () => {
    const plants = [
      { plant: "Fern", place: "Hall" },
      { plant: "Ivy", place: "" },
    ];
    const rows = [{ day: 999, plant: "Ivy", event: "Top up", amountMl: null, who: "" }];
    const plan = sitterPlan(task({ plants, rows, topUpDays: 7 }));
    expect(plan.unknown).toEqual([{ plant: "Fern", place: "Hall" }]);
    expect(plan.pours).toEqual([
      { day: 1007, plant: "Ivy", place: "", amountMl: null },
      { day: 1014, plant: "Ivy", place: "", amountMl: null },
    ]);
    expect(plan.totalMl).toBe(0);
    expect(sitterPlan(task({ plants, rows })).unknown.map(({ plant }) => plant)).toEqual(["Fern", "Ivy"]);
  });

  test("names count once, rooms come in order and plants without one last", () => {
    const plants = ["Ivy", "Fern", " ivy ", "Moss"].map((plant, at) => ({
      plant,
      place: ["", "Hall", "Attic", "Attic"][at] ?? "",
    }));
    const rows = ["Ivy", "Fern", "Moss"].flatMap((plant) => log(plant, { lastDay: 1000, everyDays: 5, amountMl: 50 }));
    const plan = sitterPlan(task({ plants, rows, toDay: 1006 }));
    expect(plan.pours.map(({ place, plant }) => `${place}/${plant}`)).toEqual(["Attic/Moss", "Hall/Fern", "/Ivy"]);
  });
});

test("no reservoir that lasts from visit to visit runs dry, poured as the page says, emptied day by day", () => {
  const plant = fc.record({
    everyDays: fc.integer({ min: 2, max: 20 }),
    mlDay: fc.integer({ min: 5, max: 90 }),
    ago: fc.integer({ min: 0, max: 25 }),
  });
  fc.assert(
    fc.property(
      fc.array(plant, { minLength: 1, maxLength: 8 }),
      fc.integer({ min: 1, max: 7 }),
      fc.integer({ min: 1, max: 40 }),
      fc.boolean(),
      (drinkers, everyDays, long, filledBefore) => {
        const plants = drinkers.map((_, at) => ({ plant: `P${at}`, place: "" }));
        const rows = drinkers.flatMap(({ everyDays: every, mlDay, ago }, at) =>
          log(`P${at}`, { lastDay: 1000 - ago, everyDays: every, amountMl: every * mlDay }),
        );
        const toDay = 1000 + long;
        const plan = sitterPlan(task({ plants, rows, everyDays, toDay, filledBefore }));
        drinkers.forEach(({ everyDays: lasts, mlDay, ago }, at) => {
          const pours = plan.pours.filter(({ plant: name }) => name === `P${at}`);
          const holds = lasts * mlDay;
          // Full on the last filling; the household fills it again as usual, or on the day before it leaves.
          let left = holds;
          for (let day = 1000 - ago + 1; day <= toDay + 1; day++) {
            left -= mlDay;
            const household = day < 1001 && (filledBefore ? day === 1000 : (day - 1000 + ago) % lasts === 0);
            if (household) left = holds;
            if (day > 1000 && lasts >= everyDays) expect(left, `P${at} on ${day}`).toBeGreaterThanOrEqual(-1e-9);
            const pour = pours.find((each) => each.day === day);
            if (!pour) continue;
            left += pour.amountMl ?? 0;
            expect(left, "over the brim").toBeLessThanOrEqual(holds + 1e-9);
          }
        });
      },
    ),
    { numRuns: drawn(300) },
  );
});

test("no more is asked for than the largest of pours that differ", () => {
  // 80, 100 and 120 mL in turn, five days apart: 140 mL drunk in a week, of which the reservoir holds 120.
  const rows = log("Fern", { lastDay: 1000, everyDays: 5, amountMl: 100, times: 9 }).map((row, at) => ({
    ...row,
    amountMl: [120, 100, 80][at % 3] as number,
  }));
  expect(sitterPlan(task({ rows, everyDays: 7 })).pours[1]).toMatchObject({ day: 1008, amountMl: 120 });
});

test("a plant filled on the very day of a visit is not poured on that visit", () => {
  const rows = log("Fern", { lastDay: 1001, everyDays: 5, amountMl: 100 });
  expect(days({ rows, todayDay: 1001, everyDays: 7 })).toEqual([[1008, 100]]);
});

test("places come by name in whatever order the plants are listed", () => {
  const plants = ["Attic", "Bath", "Hall"].map((place) => ({ plant: `Fern ${place}`, place }));
  const rows = plants.flatMap(({ plant }) => log(plant, { lastDay: 1000, everyDays: 5, amountMl: 50 }));
  for (const listed of [plants, [...plants].reverse()]) {
    const { pours } = sitterPlan(task({ plants: listed, rows, toDay: 1006 }));
    expect(pours.map(({ place }) => place)).toEqual(["Attic", "Bath", "Hall"]);
  }
});

describe("back home", () => {
  const row = (day: number, plant: string, amountMl = 100, event = "Top up") => ({
    day,
    plant,
    event,
    amountMl,
    who: "Mira",
  });
  const fills = ({ event }: { event: string }) => event === "Top up";
  const span = { fromDay: 1, toDay: 14, fills };
  const planned = (day: number, plant = "Fern") => ({ day, plant, amountMl: 100 });

  test("each filling answers one line, on its day, a little before or until the next one", () => {
    const rows = [
      row(3, "fern "),
      row(6, "Fern"),
      row(12, "Fern"),
      row(2, "Ivy"),
      row(20, "Fern"),
      row(5, "Fern", 0, "Note"),
    ];
    const { lines, besides } = compareSitting([planned(4), planned(8), planned(12)], rows, span);
    expect(lines.map(({ done }) => done?.day ?? null)).toEqual([3, 6, 12]);
    expect(besides.map(({ plant }) => plant)).toEqual(["Ivy"]);
  });

  test("another plant's filling never answers a line, however near it lies", () => {
    const { lines, besides } = compareSitting([planned(4)], [row(4, "Ivy"), row(3, "Fern")], span);
    expect(lines.map(({ done }) => done?.day)).toEqual([3]);
    expect(besides.map(({ plant }) => plant)).toEqual(["Ivy"]);
  });

  test("a line without a filling stays open, and one filling does not answer two", () => {
    const { lines } = compareSitting([planned(4), planned(5)], [row(4, "Fern")], span);
    expect(lines.map(({ done }) => done?.day ?? null)).toEqual([4, null]);
  });
});
