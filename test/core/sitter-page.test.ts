/** The sitter's page and what came of it, each case by hand. */

import { describe, expect, test } from "vitest";
import { eventRule } from "../../src/core/events.ts";
import type { CareRow } from "../../src/core/fills.ts";
import { compareSitting, type Planned, type SitterTask, sitterPlan } from "../../src/core/sitter.ts";

const top = (plant: string, day: number, amountMl: number | null, who = "Ines"): CareRow => ({
  ...{ plant, day, amountMl, who },
  event: "Top up",
});
/** A plant filled up every `every` days, the last time on day 1000. */
const log = (plant: string, every: number, amountMl: number | null): CareRow[] =>
  [6, 5, 4, 3, 2, 1, 0].map((times) => top(plant, 1000 - times * every, amountMl));

const plan = (given: Partial<SitterTask>) =>
  sitterPlan({
    ...{ plants: [{ plant: "Fern", place: "" }], rows: [], events: eventRule(), todayDay: 1000 },
    ...{ fromDay: 1001, toDay: 1010, everyDays: 1, filledBefore: true, topUpDays: null },
    ...given,
  });

describe("the page", () => {
  const rows = [...log("Fern", 5, 100), ...log("Fig", 5, 200), ...log("Ivy", 5, null)];
  const all = ["Ivy", "Fig", "Fern"].map((plant) => ({ plant, place: "" }));

  test("adds up what is to be poured, and counts nothing where only the mark is known", () => {
    const { pours, totalMl, unknown } = plan({ plants: all, rows, topUpDays: 5 });
    expect(pours.filter(({ day }) => day === 1005).map(({ plant, amountMl }) => [plant, amountMl])).toEqual([
      ["Ivy", null],
      ["Fig", 200],
      ["Fern", 100],
    ]);
    // due on 1005 and again on 1010
    expect(totalMl).toBe(600);
    expect(unknown).toEqual([]);
  });

  test("goes by day, then by place, plants without a place last, then in the order of the list", () => {
    const plants = [
      { plant: "Fern", place: "" },
      { plant: "Fig", place: "Hall" },
      { plant: "Ivy", place: "Bath" },
      { plant: "Moss", place: "Hall" },
      { plant: "Reed", place: "" },
    ];
    const { pours } = plan({ plants, rows: plants.flatMap(({ plant }) => log(plant, 5, 50)), toDay: 1010 });
    expect(pours.map(({ day, plant }) => `${day} ${plant}`)).toEqual(
      [1005, 1010].flatMap((day) => ["Ivy", "Fig", "Moss", "Fern", "Reed"].map((plant) => `${day} ${plant}`)),
    );
  });

  test("leaves out a row without a name and a second one of a name", () => {
    const plants = ["Fern", "", "  ", "FERN"].map((plant) => ({ plant, place: "" }));
    const { pours, unknown } = plan({ plants, rows });
    expect(pours.map(({ plant }) => plant)).toEqual(["Fern", "Fern"]);
    expect(unknown).toEqual([]);
  });

  test("keeps the order of places that are in order by name already", () => {
    const plants = ["Attic", "Bath", "Hall"].map((place, k) => ({ plant: `P${k}`, place }));
    const { pours } = plan({ plants, rows: plants.flatMap(({ plant }) => log(plant, 5, 50)), toDay: 1005 });
    expect(pours.map(({ place }) => place)).toEqual(["Attic", "Bath", "Hall"]);
  });

  test("pours what it drinks in the mean, though less was poured once", () => {
    const amounts = [120, 80, 120, 80, 120, 80, 120];
    const varied = amounts.map((amountMl, k) => top("Fern", 970 + 5 * k, amountMl));
    // 80 and 120 by turns every five days: 100 mL or a little more in five days, never as little as 80
    const [first] = plan({ rows: varied }).pours;
    expect(first?.day).toBe(1005);
    expect(first?.amountMl).toBeGreaterThan(95);
    expect(first?.amountMl).toBeLessThanOrEqual(120);
  });

  test("leaves out on a visit what was filled that very day, though it will not last until the next", () => {
    const { pours } = plan({ rows, fromDay: 1000, everyDays: 7, filledBefore: false });
    expect(pours).toEqual([{ day: 1007, plant: "Fern", place: "", amountMl: 100 }]);
  });

  test("names a plant without a filling, also where a rule says how often to top up", () => {
    const { pours, unknown } = plan({ topUpDays: 7 });
    expect(pours).toEqual([]);
    expect(unknown).toEqual([{ plant: "Fern", place: "" }]);
  });

  test("names what drinks faster than somebody comes, and not what lasts just as long", () => {
    expect(plan({ rows, everyDays: 5 }).tooRare).toEqual([]);
    expect(plan({ rows, everyDays: 6 }).tooRare).toEqual([{ plant: "Fern", place: "", lastsDays: 5 }]);
    // a single visit can come too early for nothing
    expect(plan({ rows, everyDays: 6, toDay: 1005 }).tooRare).toEqual([]);
  });

  test("counts a filling on the very day before the time away, and one already made for it", () => {
    expect(plan({ rows, filledBefore: false }).pours[0]?.day).toBe(1005);
    const later = [...rows, top("Fern", 1003, 100)];
    expect(plan({ rows: later, todayDay: 1003, filledBefore: false }).pours[0]?.day).toBeGreaterThan(1005);
    expect(plan({ rows: later, todayDay: 1003, filledBefore: true }).pours[0]?.day).toBeGreaterThan(1005);
  });

  test("pours on no day on which it is full already", () => {
    const { pours } = plan({ rows, fromDay: 1000, toDay: 1004, filledBefore: false });
    expect(pours).toEqual([]);
  });

  test("says to the mark for a plant filled once, by the rule, and names it without one", () => {
    const once = [top("Fern", 999, 80)];
    expect(plan({ rows: once, topUpDays: 4 }).pours[0]).toMatchObject({ day: 1004 });
    expect(plan({ rows: once }).unknown).toEqual([{ plant: "Fern", place: "" }]);
  });
});

describe("what came of it", () => {
  const line = (plant: string, day: number, amountMl: number | null = 100): Planned => ({ plant, day, amountMl });
  const compare = (planned: readonly Planned[], rows: readonly CareRow[]) =>
    compareSitting(planned, rows, { fromDay: 1001, toDay: 1010, fills: ({ event }) => event === "Top up" });
  const doneDays = (planned: readonly Planned[], rows: readonly CareRow[]) =>
    compare(planned, rows).lines.map(({ done }) => done?.day ?? null);

  test("a line is answered by a pour from two days before it on", () => {
    for (const [poured, answered] of [
      [1002, false],
      [1003, true],
      [1005, true],
      [1009, true],
      [1010, true],
    ] as const) {
      expect(doneDays([line("Fern", 1005)], [top("Fern", poured, 90)]), String(poured)).toEqual([
        answered ? poured : null,
      ]);
    }
  });

  test("until the day before its plant's next line, whatever other plants have", () => {
    const rows = [top("Fern", 1007, 90)];
    expect(doneDays([line("Fern", 1003), line("Fig", 1005), line("Fern", 1009)], rows)).toEqual([1007, null, null]);
    expect(doneDays([line("Fern", 1003), line("Fern", 1007)], rows)).toEqual([null, 1007]);
    expect(doneDays([line("Fern", 1003), line("Fern", 1006)], rows)).toEqual([null, 1007]);
    expect(doneDays([line("Fern", 1003), line("Fig", 1007)], rows)).toEqual([1007, null]);
  });

  test("by its own filling, not by that of another plant", () => {
    const { lines, besides } = compare([line("Fern", 1005)], [top("Fig", 1005, 90)]);
    expect(lines.map(({ done }) => done)).toEqual([null]);
    expect(besides.map(({ plant }) => plant)).toEqual(["Fig"]);
  });

  test("the nearest of several answers it, and each answers once", () => {
    const rows = [top("Fern", 1008, 1), top("Fern", 1004, 2), top("Fern", 1006, 3)];
    expect(doneDays([line("Fern", 1005)], [top("Fern", 1009, 1), top("Fern", 1006, 2)])).toEqual([1006]);
    expect(doneDays([line("Fern", 1007)], rows)).toEqual([1006]);
    const { lines, besides } = compare([line("Fern", 1005), line("fern ", 1008)], rows);
    expect(lines.map(({ done }) => done)).toEqual([
      { day: 1004, amountMl: 2, who: "Ines" },
      { day: 1008, amountMl: 1, who: "Ines" },
    ]);
    expect(besides.map(({ day }) => day)).toEqual([1006]);
    expect(lines[0]?.planned).toEqual(line("Fern", 1005));
    expect(compare([line("Fern", 1005)], []).lines).toEqual([{ planned: line("Fern", 1005), done: null }]);
  });

  test("only fillings of these days count, the first and the last included, in the order of days", () => {
    const rows = [
      top("Fern", 1010, 1),
      top("Fern", 1011, 2),
      top("Fern", 1000, 3),
      top("Fern", 1001, 4),
      { ...top("Fern", 1005, 5), event: "Note" },
    ];
    expect(compare([], rows).besides.map(({ day }) => day)).toEqual([1001, 1010]);
    expect(doneDays([line("Fern", 1001), line("Fern", 1010)], rows)).toEqual([1001, 1010]);
  });
});
