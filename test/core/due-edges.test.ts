/** What is due at the edges: on the very day of a rule, by names with spaces, and of a pot that no longer fills with roots. */

import { expect, it } from "vitest";
import { dueList, type WatchedRow } from "../../src/core/due.ts";
import { type DueRules, dueRules } from "../../src/core/due-rules.ts";
import { eventRule } from "../../src/core/events.ts";

const START = 20_000;
const row = (day: number, plant: string, event: string, amountMl: number | null = null): WatchedRow => ({
  day: START + day,
  plant,
  event,
  amountMl,
  who: "Ines",
  ecMsCm: null,
});
const due = (plants: readonly string[], rows: readonly WatchedRow[], day: number, rules: Partial<DueRules>) =>
  dueList({
    plants,
    rows,
    events: eventRule(),
    asOfDay: START + day,
    rules: { ...dueRules(() => "off"), ...rules },
  });

it("a top-up by the rule of 14 days is due on the fourteenth day, not on the thirteenth", () => {
  const rows = [row(0, "Fern", "Repot")];
  expect(due(["Fern"], rows, 13, { topUpDays: 14 })).toEqual([]);
  expect(due(["Fern"], rows, 14, { topUpDays: 14 })).toMatchObject([{ due: "Top up", sinceDay: START + 14 }]);
});

it("plants are named without the spaces around them, and nothing is due of one without a name", () => {
  const rows = [row(0, "Fern", "Root trim"), row(0, " ", "Root trim")];
  const list = due(["", "  ", " Fern "], rows, 20, { topUpDays: 14, lookDays: 7 });
  expect(list.map(({ plant, due: what }) => `${plant}: ${what}`)).toEqual(["Fern: Top up", "Fern: Look at"]);
});

it("a reservoir that filled with roots a week ago and drinks little since is not named", () => {
  const days = [0, 7, 14, 21, 28, 35, 42, 49, 56, 63, 70, 77, 84, 88, 92, 96, 100, 104];
  const drinking = (plant: string) =>
    days.map((day, at) =>
      at === 0
        ? row(day, plant, "Solution change")
        : row(day, plant, "Top up", (day - (days[at - 1] as number)) * (day <= 84 ? 10 : 16)),
    );
  const rows = [
    ...drinking("Fern"),
    row(108, "Fern", "Top up", 64),
    row(112, "Fern", "Top up", 64),
    // 20 days of 16 mL and 8 of 2 mL are 12 mL a day, 20 % more than 10. A week before it was 390 mL in 27 days, 44 %.
    ...drinking("Ivy"),
    row(112, "Ivy", "Top up", 16),
  ];
  const told = (day: number) => due(["Fern", "Ivy"], rows, day, { riseShare: 0.3 }).map(({ plant }) => plant);
  expect(told(105)).toEqual(["Fern", "Ivy"]);
  expect(told(112)).toEqual(["Fern"]);
});

it("with the EC ceiling off no reading asks for a flush", () => {
  const rows = [row(0, "Fern", "Repot"), { ...row(3, "Fern", "Reading"), ecMsCm: 5 }];
  expect(due(["Fern"], rows, 5, { ecCeilingMsCm: 2 })).toMatchObject([{ due: "Flush" }]);
  expect(due(["Fern"], rows, 5, {})).toEqual([]);
});

it("with the recovery days off a plant is looked at for ever", () => {
  expect(due(["Fern"], [row(0, "Fern", "Repot")], 300, { lookDays: 7 })).toMatchObject([{ due: "Look at" }]);
});

it("a claim is looked at again on its very day", () => {
  const on = (asOfDay: number) =>
    dueList({
      plants: [],
      rows: [],
      events: eventRule(),
      asOfDay,
      rules: dueRules(() => "off"),
      claims: [{ claim: "Ferns like it cool", lookAgainDay: START }],
    });
  expect(on(START - 1)).toEqual([]);
  expect(on(START)).toMatchObject([{ due: "Look again", sinceDay: START }]);
});
