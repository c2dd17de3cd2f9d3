/** The rest rule: what Settings may hold, either hemisphere, and which disturbances come early. */

import { describe, expect, test } from "vitest";
import { dayFromIso } from "../../src/core/calendar.ts";
import {
  earlyDisturbances,
  REASONS,
  readMonths,
  readRestRule,
  restNeeded,
  restRuleOr,
  restSettings,
  whyEarly,
} from "../../src/core/rest-rule.ts";
import { eventRule, indexDisturbances } from "../../src/core/roots.ts";
import { refusal } from "./refusal.ts";

const day = (iso: string): number => dayFromIso(iso) ?? Number.NaN;
const none = { days: "", seasonDays: "", seasonMonths: "" };

describe("the rule in Settings", () => {
  test("is half a year where nothing is written, and any number of days otherwise", () => {
    expect(readRestRule(none)).toEqual({ days: 180, season: null });
    expect(readRestRule({ ...none, days: "90" })).toEqual({ days: 90, season: null });
    expect(readRestRule({ ...none, days: "0" }).days).toBe(0);
  });

  test.each([
    ["Apr to Sep", [4, 5, 6, 7, 8, 9]],
    ["Oct to Mar", [1, 2, 3, 10, 11, 12]],
    ["april–june", [4, 5, 6]],
    ["May, July and Sept", [5, 7, 9]],
    ["11 - 2", [1, 2, 11, 12]],
    ["Feb", [2]],
    ["1", [1]],
    ["12", [12]],
    ["Jan to Dec", [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]],
  ])("reads the months %s", (text, months) => {
    expect([...readMonths(text)].sort((a, b) => a - b)).toEqual(months);
  });

  test.each([
    "2026-04-09",
    "summer",
    "13",
    "0",
    "123",
    "x4",
    "4x",
    "Apr to",
    "Apr to May to June",
    ", ",
    "decoy to jan",
  ])("refuses the months %s and says how to write them", (text) => {
    expect(refusal(() => readMonths(text))).toBe(
      `“Season months” in Settings is “${text}”. Write months by name, like Apr to Sep or Oct to Mar.`,
    );
  });

  test("asks for fewer days in season, in the north as in the south", () => {
    const north = readRestRule({ days: "180", seasonDays: "90", seasonMonths: "Apr to Sep" });
    const south = readRestRule({ days: "180", seasonDays: "90", seasonMonths: "Oct to Mar" });
    expect(["2026-03-31", "2026-04-01", "2026-09-30", "2026-10-01"].map((iso) => restNeeded(north, day(iso)))).toEqual([
      180, 90, 90, 180,
    ]);
    expect(["2026-03-31", "2026-04-01", "2026-09-30", "2026-10-01"].map((iso) => restNeeded(south, day(iso)))).toEqual([
      90, 180, 180, 90,
    ]);
  });

  test.each([
    [{ ...none, days: "half a year" }, /^“Rest days” in Settings is "half a year"/],
    [{ ...none, days: "-1" }, /^“Rest days” in Settings is -1 days\. Give a number from 0 to 3650 days\.$/],
    [{ days: "180", seasonDays: "x", seasonMonths: "May" }, /^“Rest days in season” in Settings is "x"/],
    [{ ...none, seasonDays: "90", seasonMonths: " " }, /^Settings has only one of/],
    [{ ...none, seasonDays: "90" }, /^Settings has only one of/],
    [{ ...none, seasonMonths: "May" }, /^Settings has only one of/],
  ])("%o is refused", (settings, sentence) => {
    expect(refusal(() => readRestRule(settings))).toMatch(sentence);
    expect(restRuleOr(settings)).toEqual({ days: 180, season: null });
  });
});

test("settings are read by their names, and spaces around them are none of theirs", () => {
  const cells = { "Rest days": " 200 ", "Rest days in season": " 90 ", "Season months": " May " };
  const settings = restSettings((name) => cells[name as keyof typeof cells] ?? "");
  expect(settings).toEqual({ days: " 200 ", seasonDays: " 90 ", seasonMonths: " May " });
  expect(readRestRule(settings)).toEqual({ days: 200, season: { days: 90, months: new Set([5]) } });
  expect(readRestRule({ days: " ", seasonDays: " ", seasonMonths: " " })).toEqual({ days: 180, season: null });
});

test("reasons are offered, each by itself", () => {
  expect(REASONS.length).toBeGreaterThanOrEqual(4);
  expect(new Set(REASONS.map((reason) => reason.trim()).filter((reason) => reason !== "")).size).toBe(REASONS.length);
});

describe("a disturbance comes early", () => {
  const rule = { days: 180, season: null };
  // 1 January 2026 and 180 days: 30 June 2026 (31+28+31+30+31 = 151 days to 1 June, and 29 more).
  const index = indexDisturbances(
    [
      { day: day("2026-01-01"), plant: "Fern", event: "Repot" },
      { day: day("2025-01-01"), plant: "Fern", event: "Root trim" },
      { day: day("2026-06-20"), plant: "Fern", event: "Decay removed" },
      { day: day("2026-06-29"), plant: "Hoya", event: "Root trim" },
    ],
    eventRule(),
  );
  const early = (plant: string, iso: string) => earlyDisturbances([{ plant, day: day(iso) }], index, rule);

  test("until the day the rest is over, counted from the last disturbance before it", () => {
    expect(early("fern", "2026-06-29")).toEqual([
      { plant: "fern", restDays: 179, neededDays: 180, last: { day: day("2026-01-01"), event: "Repot" } },
    ]);
    expect(early("Fern", "2026-06-30")).toEqual([]);
    expect(early("Fern", "2025-12-31")).toEqual([]);
    expect(early("Fern", "2025-03-01")).toHaveLength(1);
  });

  test("not on the day of another one, nor where none is on record", () => {
    expect(early("Hoya", "2026-06-29")).toEqual([]);
    expect(early("Arum", "2026-06-29")).toEqual([]);
    expect(earlyDisturbances([{ plant: "Fern", day: day("2026-01-02") }], index, { days: 0, season: null })).toEqual(
      [],
    );
  });

  test("is asked about with the shortest rest first", () => {
    const planned = ["Fern", "Hoya"].map((plant) => ({
      plant,
      day: day("2026-06-30") - 1 + (plant === "Hoya" ? 1 : 0),
    }));
    expect(whyEarly(earlyDisturbances(planned, index, rule))).toBe(
      "Hoya has been at rest for 1 day since “Root trim”; Settings asks for 180. 1 more of these plants has not rested long enough either. Say why the roots are disturbed now: rot, pests, a pot full of roots, a broken pot, or another reason.",
    );
    expect(whyEarly([])).toBe("");
    const of = (plant: string, restDays: number) => ({
      plant,
      restDays,
      neededDays: 180,
      last: { day: 0, event: "Repot" },
    });
    expect(whyEarly([of("Fern", 20)])).toMatch(/^Fern has been at rest for 20 days since “Repot”; .*180\. Say why/);
    expect(whyEarly([of("A", 20), of("B", 1), of("C", 30)])).toMatch(
      /^B has .* 1 day .* 2 more of these plants have not/,
    );
  });
});

test.each(["004", "4.0", "+4", "4.5"])("%s is no month", (text) => {
  expect(() => readMonths(text)).toThrow(/Write months by name/);
});
