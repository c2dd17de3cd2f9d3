/** When to test: the rules by hand, the sentences, and what the plan costs and catches in simulated kitchens. */

import { describe, expect, it } from "vitest";
import { checkEvery } from "../../src/core/check-every.ts";
import { type PlanReading, type PlanTask, testPlan } from "../../src/core/test-plan.ts";
import { refusal } from "./refusal.ts";

/** 5.75 with a scatter of hundredths, as a steady kitchen reads. */
const steady = (count: number) => Array.from({ length: count }, (_, k) => [5.75, 5.77, 5.73][k % 3] as number);
const range = { low: 5.5, high: 6 };

describe("by the rule", () => {
  it("every batch up to five readings, then 2nd, 4th and 8th after three more each", () => {
    expect([0, 5, 6, 8, 9, 11, 12, 40].map((count) => checkEvery(steady(count), range))).toEqual([
      1, 1, 2, 2, 4, 4, 8, 8,
    ]);
  });

  it("a reading out of the limits, one off the chart, and eight on one side each begin anew", () => {
    expect(checkEvery([...steady(12), 6.01], range)).toBe(1);
    expect(checkEvery([...steady(12), 5.9], range)).toBe(1);
    expect(checkEvery([...steady(12), 5.82], range)).toBe(8);
    // Eight at 5.77: within the chart (5.75 and 0.06 or more), above every mean on the way.
    const oneSide = [...steady(12), ...Array.from({ length: 8 }, () => 5.78)];
    expect(checkEvery(oneSide.slice(0, -1), range)).toBe(8);
    expect(checkEvery(oneSide, range)).toBe(1);
    expect(checkEvery([...steady(12), 6.01, ...steady(6)], range)).toBe(2);
  });

  it("scatter that reaches out of the limits, or hides a change of 0.4, keeps every batch tested", () => {
    const wide = Array.from({ length: 20 }, (_, k) => 5.75 + ([0.12, -0.1, 0.02, -0.13, 0.1][k % 5] as number));
    expect(checkEvery(wide, range)).toBe(1);
    expect(checkEvery(wide, { low: 3, high: 9 })).toBe(1);
    const nearTheLimit = steady(20).map((pH) => pH + 0.22);
    expect(checkEvery(nearTheLimit, range)).toBe(1);
    expect(checkEvery(nearTheLimit, { low: 5.5, high: 6.4 })).toBe(8);
  });

  it("readings that never differ do not narrow the limits to nothing", () => {
    const same = Array.from({ length: 12 }, () => 5.8);
    expect(checkEvery(same, range)).toBe(8);
    expect(checkEvery([...same, 5.82], range)).toBe(8);
  });

  it("limits and readings that cannot be are refused", () => {
    expect(refusal(() => checkEvery([15], range))).toBe("The pH is 15. Give a number from 0 to 14.");
    expect(refusal(() => checkEvery([], { low: 6, high: 5.5 }))).toBe(
      "The limits are 6 and 5.5. Give the lower one first.",
    );
  });
});

describe("the plan in sentences", () => {
  const weekly = (values: readonly (number | null)[], key = "tap|A 1|"): PlanReading[] =>
    values.map((pH, k) => ({ day: 20_000 + 7 * k, pH, key }));
  const plan = (readings: readonly PlanReading[], more: Partial<PlanTask> = {}) =>
    testPlan({
      readings,
      next: { day: (readings[readings.length - 1]?.day ?? 20_000) + 7, key: "tap|A 1|" },
      ...more,
    });

  it("begins with every batch", () => {
    expect(plan([])).toMatchObject({ every: 1, due: true, reason: "new" });
    expect(plan([]).sentence).toBe(
      "Test the pH of every batch: there is no reading yet with this water, these feeds, lots and acid.",
    );
    expect(plan(weekly(steady(3))).sentence).toBe(
      "Test the pH of every batch: there are 3 readings so far. From 6 on, one may be left out.",
    );
  });

  it("says how sure it is, and whose turn it is", () => {
    const readings = weekly([...steady(12), null, null]);
    const found = plan(readings);
    expect(found).toMatchObject({ every: 8, due: false, untested: 2, reason: "steady" });
    expect(found.sentence).toMatch(
      /^Test the pH of every 8th batch: the last 12 readings are steady\. With 95 % confidence, at least 98 in 100 batches lie from 5\.6\d to 5\.8\d, within 5\.5 to 6\. Outside 5\.6\d to 5\.8\d, test every batch again\. This one need not be tested\.$/,
    );
    expect(
      plan([...readings, ...weekly([null, null, null, null, null]).map((one) => ({ ...one, day: 20_100 }))]),
    ).toMatchObject({
      untested: 7,
      due: true,
    });
  });

  it("another lot, a long pause, a reading out of range and a shift begin anew, and say so", () => {
    const readings = weekly(steady(12));
    const day = 20_000 + 12 * 7;
    expect(plan(readings, { next: { day, key: "tap|A 2|" } }).reason).toBe("new");
    expect(plan(readings, { next: { day: day + 60, key: "tap|A 1|" } }).sentence).toBe(
      "Test the pH of every batch: nothing was mixed from these for 67 days.",
    );
    expect(plan(readings, { next: { day: day + 60, key: "tap|A 1|" }, longestPauseDays: 90 }).every).toBe(8);
    expect(plan(weekly([...steady(12), 6.3])).sentence).toBe(
      "Test the pH of every batch: the last reading, pH 6.30 on 2024-12-27, lies outside 5.5 to 6.",
    );
    expect(plan(weekly([...steady(12), 5.95])).sentence).toMatch(
      /^Test the pH of every batch: the last reading, pH 5\.95 on 2024-12-27, lies outside 5\.6\d to 5\.8\d, where the readings before it said it would lie\. Something has changed\.$/,
    );
    expect(plan(weekly([...steady(12), 6.3, 5.75])).sentence).toBe(
      "Test the pH of every batch: there is 1 reading since pH 6.30 on 2024-12-27 was off. From 6 on, one may be left out.",
    );
  });

  it("readings on one side, scattered ones and ones near a limit keep every batch tested, and it says which", () => {
    const moving = plan(weekly([...steady(12), ...Array.from({ length: 8 }, () => 5.78)]));
    expect(moving).toMatchObject({ every: 1, reason: "drift" });
    expect(moving.sentence).toMatch(/^Test the pH of every batch: the last 8 readings .*one side of the mean/);
    const scattered = Array.from({ length: 20 }, (_, k) => 5.75 + ([0.12, -0.1, 0.02, -0.13, 0.1][k % 5] as number));
    const blind = plan(weekly(scattered), { low: 3, high: 9 });
    expect(blind).toMatchObject({ every: 1, reason: "blind" });
    expect(blind.sentence).toMatch(/^Test the pH of every batch: the readings scatter .*a change of 0\.4 /);
    // Mean 5.971; the scatter, 0.0165, counts as 0.02; k2 of 20 readings for 90 % is 2.310 [NIST handbook, from memory].
    const wide = plan(weekly(steady(20).map((pH) => pH + 0.22)));
    expect(wide).toMatchObject({ every: 1, reason: "wide" });
    expect(wide.sentence).toMatch(/ the last 20 readings .*from 5\.92 to 6\.02, .*outside 5\.5 to 6\.$/);
  });

  it("batches of another kind in between neither count nor begin anew", () => {
    const mixed = weekly(steady(12)).flatMap((one) => [one, { ...one, key: "rain||", pH: 6.8 }]);
    expect(plan(mixed)).toMatchObject({ every: 8, untested: 0 });
  });

  it("batches that were never tested are a few readings too few, not an error", () => {
    const untested = weekly(steady(2)).map((one) => ({ ...one, pH: null }));
    expect(plan(untested)).toMatchObject({ every: 1, reason: "few", untested: 2, run: [] });
  });

  it.each([
    ["drift", [...steady(12), ...Array(8).fill(5.78)], {}, ["8 readings"]],
    ["blind", Array.from({ length: 20 }, (_, k) => 5.75 + (k % 2 === 0 ? 0.12 : -0.12)), { low: 3, high: 9 }, ["0.4"]],
    ["wide", steady(20).map((pH) => pH + 0.22), {}, ["20 readings", "5.5 to 6"]],
    ["steady", steady(6), {}, ["2nd batch"]],
    ["steady", steady(9), {}, ["4th batch"]],
  ] as const)("%s is said with its numbers", (reason, readings, limits, words) => {
    const found = plan(weekly([...readings]), limits);
    expect(found.reason).toBe(reason);
    for (const word of words) expect(found.sentence).toContain(word);
  });
});
