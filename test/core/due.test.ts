/** What is due, worked by hand on a log of a few plants: each kind, its first day, its reason, and the rules. */

import { describe, expect, it } from "vitest";
import { dayFromIso } from "../../src/core/calendar.ts";
import { type DueTask, dueList, type WatchedRow } from "../../src/core/due.ts";
import { type DueRules, dueRules } from "../../src/core/due-rules.ts";
import { eventRule } from "../../src/core/events.ts";

const day = (iso: string) => dayFromIso(iso) ?? Number.NaN;
type More = { readonly mL?: number; readonly ec?: number; readonly plant?: string };
const row = (iso: string, event: string, { mL, ec, plant = "Fern" }: More = {}): WatchedRow => ({
  day: day(iso),
  plant,
  event,
  amountMl: mL ?? null,
  who: "Ines",
  ecMsCm: ec ?? null,
});

function due(rows: readonly WatchedRow[], asOf: string, more: Partial<DueTask> = {}) {
  const plants = ["Fern", "Ivy", "Moss"];
  return dueList({ plants, rows, events: eventRule(), asOfDay: day(asOf), rules: dueRules(), ...more });
}
const only = (changes: Partial<DueRules>): DueRules => ({
  topUpDays: null,
  flushDays: null,
  changeDays: null,
  ecCeilingMsCm: null,
  riseShare: null,
  lookDays: null,
  recoveryDays: null,
  ...changes,
});

describe("thirst", () => {
  const weekly = [
    row("2026-03-01", "Solution change"),
    row("2026-03-08", "Top up", { mL: 70 }),
    row("2026-03-15", "Top up", { mL: 70 }),
    row("2026-03-22", "Top up", { mL: 70 }),
  ];

  it("comes when a plant has drunk what is usually poured in, by its own rate", () => {
    expect(due(weekly, "2026-03-28", { rules: only({}) })).toEqual([]);
    expect(due(weekly, "2026-03-31", { rules: only({}) })).toEqual([
      {
        plant: "Fern",
        due: "Top up",
        sinceDay: day("2026-03-29"),
        why: "It drinks 10 mL a day, about 90 mL in the 9 days since 2026-03-22; 70 mL is its usual top-up.",
      },
    ]);
  });

  it("takes the middle of the last eight top-ups as the usual one", () => {
    const shrinking = [700, 600, 60, 61, 62, 63, 64, 65, 66, 67].map((mL, at) =>
      row(`2026-01-${String(10 + at * 2)}`, "Top up", { mL }),
    );
    const [found] = due([row("2026-01-08", "Repot"), ...shrinking], "2026-02-20", { rules: only({}) });
    expect(found?.why).toMatch(/; 63\.5 mL is its usual top-up\.$/);
  });

  it("says a single day as one", () => {
    const daily = ["08", "09", "10"].map((on) => row(`2026-03-${on}`, "Top up", { mL: 70 }));
    expect(due(daily, "2026-03-11", { rules: only({}) })[0]).toMatchObject({
      sinceDay: day("2026-03-11"),
      why: "It drinks 70 mL a day, about 70 mL in the 1 day since 2026-03-10; 70 mL is its usual top-up.",
    });
  });

  it("after a long time without any top-up goes by the last rate known", () => {
    expect(due(weekly, "2026-07-01", { rules: only({}) })[0]?.why).toMatch(/^It drinks 10 mL a day, about 1010 mL/);
  });

  it("goes by the rule for a plant whose rate is not known", () => {
    const rows = [row("2026-03-01", "Repot")];
    expect(due(rows, "2026-03-14", { rules: only({ topUpDays: 14 }) })).toEqual([]);
    expect(due(rows, "2026-03-16", { rules: only({ topUpDays: 14 }) })).toEqual([
      {
        plant: "Fern",
        due: "Top up",
        sinceDay: day("2026-03-15"),
        why: "Last filled 15 days ago, on 2026-03-01; how fast it drinks is not known yet, so the rule of 14 days counts.",
      },
    ]);
    expect(due(rows, "2026-09-16", { rules: only({}) })).toEqual([]);
  });
});

describe("flush and change", () => {
  const rows = [row("2026-01-01", "Solution change"), row("2026-02-10", "Flush in place", { mL: 900 })];

  it("a flush is due so many days after the last flush or change", () => {
    expect(due(rows, "2026-03-11", { rules: only({ flushDays: 30 }) })).toEqual([]);
    expect(due(rows, "2026-03-12", { rules: only({ flushDays: 30 }) })).toEqual([
      {
        plant: "Fern",
        due: "Flush",
        sinceDay: day("2026-03-12"),
        why: "Neither flushed nor changed for 30 days, since 2026-02-10; the rule is 30 days.",
      },
    ]);
  });

  it("a repot is a fresh filling for both", () => {
    const repotted = [...rows, row("2026-03-01", "Repot")];
    expect(due(repotted, "2026-03-30", { rules: only({ flushDays: 30, changeDays: 30 }) })).toEqual([]);
    expect(due(repotted, "2026-03-31", { rules: only({ flushDays: 30 }) })[0]?.why).toMatch(
      / for 30 days, since 2026-03-01; /,
    );
  });

  it("a change is due so many days after the last one, flush or not, and no flush besides", () => {
    expect(due(rows, "2026-04-02", { rules: only({ flushDays: 30, changeDays: 90 }) })).toEqual([
      {
        plant: "Fern",
        due: "Change",
        sinceDay: day("2026-04-01"),
        why: "The same solution for 91 days, since 2026-01-01; the rule is 90 days.",
      },
    ]);
    expect(due([...rows, row("2026-03-30", "Repot")], "2026-04-02", { rules: only({ changeDays: 90 }) })).toEqual([]);
  });

  it("a reading at the ceiling asks for a flush from that day on, until there is one", () => {
    const read = [...rows, row("2026-02-20", "Reading", { ec: 1.9 }), row("2026-02-25", "Top up", { ec: 2.13 })];
    const rules = only({ ecCeilingMsCm: 2 });
    expect(due(read, "2026-02-24", { rules })).toEqual([]);
    expect(due(read, "2026-03-01", { rules })).toEqual([
      {
        plant: "Fern",
        due: "Flush",
        sinceDay: day("2026-02-25"),
        why: "EC 2.13 mS/cm on 2026-02-25, not flushed since; the ceiling is 2.",
      },
    ]);
    expect(due([...read, row("2026-02-25", "Flush in place")], "2026-03-01", { rules })).toEqual([]);
    // The first of several counts, also one that reads just the ceiling; one from before the last flush does not.
    const several = [...read, row("2026-02-23", "Reading", { ec: 2 }), row("2026-02-01", "Reading", { ec: 3 })];
    expect(due(several, "2026-03-01", { rules })[0]?.why).toMatch(/^EC 2 mS\/cm on 2026-02-23, /);
    expect(due(several, "2026-02-23", { rules }).length).toBe(1);
    // The old solution is what was read at a change.
    const changed = [...rows, row("2026-02-25", "Solution change", { ec: 2.6 })];
    expect(due(changed, "2026-03-01", { rules })).toEqual([]);
  });
});

describe("recovering plants", () => {
  const rows = [row("2026-03-01", "Root trim"), row("2026-03-05", "Top up")];
  const rules = only({ lookDays: 7, recoveryDays: 90 });

  it("are to be looked at every week until a new leaf or root, or until the time is up", () => {
    expect(due(rows, "2026-03-07", { rules })).toEqual([]);
    expect(due(rows, "2026-03-09", { rules })).toEqual([
      {
        plant: "Fern",
        due: "Look at",
        sinceDay: day("2026-03-08"),
        why: "Root trim on 2026-03-01, 8 days without a new leaf or root in the log; not looked at since.",
      },
    ]);
    expect(due([...rows, row("2026-03-08", "Note")], "2026-03-14", { rules })).toEqual([]);
    expect(due([...rows, row("2026-03-08", "Note")], "2026-03-15", { rules })[0]?.why).toMatch(
      /; last looked at 2026-03-08\.$/,
    );
    for (const look of ["Reading", "Decay removed"]) {
      expect(due([...rows, row("2026-03-08", look), row("2026-03-03", "Note")], "2026-03-14", { rules })).toEqual([]);
    }
    expect(due([...rows, row("2026-03-08", "Wind")], "2026-03-14", { rules }).length).toBe(1);
    expect(due([...rows, row("2026-03-20", "New root")], "2026-03-30", { rules })).toEqual([]);
    expect(due(rows, "2026-05-30", { rules }).length).toBe(1);
    expect(due(rows, "2026-05-31", { rules })).toEqual([]);
  });
});

describe("reservoirs filling with roots", () => {
  const start = day("2026-01-01");
  const fills: WatchedRow[] = [0, 7, 14, 21, 28, 35, 42, 49, 56, 63, 70, 77, 84, 88, 92, 96, 100, 104, 108, 112].map(
    (on, at, all) => ({
      day: start + on,
      plant: "Fern",
      event: at === 0 ? "Solution change" : "Top up",
      amountMl: at === 0 ? null : (on - (all[at - 1] as number)) * (on <= 84 ? 10 : 16),
      who: "",
      ecMsCm: null,
    }),
  );

  it("are listed with the numbers, since the first look of the week that found it without a break", () => {
    const rules = only({ riseShare: 0.3 });
    const found = dueList({ plants: ["Fern"], rows: fills, events: eventRule(), asOfDay: start + 112, rules });
    expect(found).toEqual([
      {
        plant: "Fern",
        due: "Pot up",
        // A week before, (7 × 10 + 21 × 16) / 28 = 14.5 mL a day; two weeks before 13, which is 30 % and not more.
        sinceDay: start + 105,
        why: "Reservoir filling with roots: it drinks 16 mL a day, eight weeks ago it was 10, so 60 % more, and it is topped up every 4 days instead of every 7. That is the reason to pot up.",
      },
    ]);
    expect(
      dueList({ plants: ["Fern"], rows: fills, events: eventRule(), asOfDay: start + 112, rules: only({}) }),
    ).toEqual([]);
  });
});

describe("the list", () => {
  const rows = [
    row("2026-03-01", "Repot", { plant: "Ivy" }),
    row("2026-02-20", "Repot", { plant: "moss" }),
    row("2026-01-05", "Solution change", { plant: "FERN" }),
  ];

  it("goes by kind, then by how long it has been due, then as the plants are listed; each plant once", () => {
    const rules = only({ topUpDays: 14, flushDays: 60, lookDays: 7, recoveryDays: 90 });
    const list = due(rows, "2026-03-20", {
      rules,
      plants: ["Moss", "Ivy", " moss ", "", "Fern", "Never logged"],
      claims: [
        { claim: "Rain water keeps tips green", lookAgainDay: day("2026-03-18") },
        { claim: "Singing helps", lookAgainDay: day("2026-03-21") },
      ],
    });
    expect(list.map(({ plant, due: what }) => `${plant}: ${what}`)).toEqual([
      "Fern: Top up",
      "Moss: Top up",
      "Ivy: Top up",
      "Fern: Flush",
      "Moss: Look at",
      "Ivy: Look at",
      ": Look again",
    ]);
    expect(list[6]).toEqual({
      plant: "",
      due: "Look again",
      sinceDay: day("2026-03-18"),
      why: "Claim: Rain water keeps tips green",
    });
  });

  it("sets the season aside: what five plants do alike fills no pot with roots", () => {
    const start = day("2026-01-01");
    const alike = (plant: string) =>
      [0, 7, 14, 21, 28, 35, 42, 49, 56, 63, 70, 77, 84, 88, 92, 96, 100, 104, 108, 112].map(
        (on, at, all): WatchedRow => ({
          day: start + on,
          plant,
          event: "Top up",
          amountMl: at === 0 ? null : (on - (all[at - 1] as number)) * (on <= 84 ? 10 : 16),
          who: "",
          ecMsCm: null,
        }),
      );
    const plants = ["A", "B", "C", "D", "E"];
    const told = (some: readonly string[]) =>
      dueList({
        plants: some,
        rows: plants.flatMap(alike),
        events: eventRule(),
        asOfDay: start + 112,
        rules: only({ riseShare: 0.3 }),
      });
    expect(told(plants)).toEqual([]);
    expect(told(plants.slice(0, 4)).length).toBe(4);
  });

  it("does not count rows to come, and is the same in whatever order the log stands", () => {
    const rules = dueRules();
    const later = [
      ...rows,
      row("2026-03-10", "Top up", { mL: 99, plant: "Ivy" }),
      row("2026-04-01", "Solution change"),
    ];
    expect(due(later, "2026-03-20", { rules })).toEqual(due(later.slice(0, 4).reverse(), "2026-03-20", { rules }));
  });
});

it("the rules have the defaults of the Settings tab, and can be switched off one by one", () => {
  expect(dueRules()).toEqual({
    topUpDays: 14,
    flushDays: 30,
    changeDays: 90,
    ecCeilingMsCm: 2,
    riseShare: 0.3,
    lookDays: 7,
    recoveryDays: 90,
  });
  expect(dueRules(({ rule }) => (rule === "flushDays" ? "off" : rule === "riseShare" ? 50 : null))).toMatchObject({
    flushDays: null,
    riseShare: 0.5,
    changeDays: 90,
  });
});
