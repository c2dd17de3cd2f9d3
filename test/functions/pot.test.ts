/** Reservoirs in formulas: logs as people keep them, broken rows, rows taken back, rules and claims, long logs. */

import { describe, expect, it } from "vitest";
import { call, date, outcome, plain } from "./cells.ts";
import { asOf, column, logOf, row, WEEKS } from "./weeks.ts";

describe("POT_USE and POT_TREND", () => {
  it("answer a column of plants, amounts as numbers or texts with their unit, rows in any order", () => {
    expect(outcome("POT_USE", column("Fern", " FERN ", "Ivy", "", 12), logOf(...WEEKS), asOf)).toEqual(
      column(10, 10, "", "", ""),
    );
    expect(outcome("POT_USE", "Fern", logOf(...WEEKS.slice().reverse()), asOf)).toBe(10);
    expect(outcome("POT_TREND", "Fern", logOf(...WEEKS), asOf)).toBe(0);
    expect(outcome("POT_TREND", "Fern", logOf(...WEEKS), asOf, 14)).toBe("");
  });

  it("take one day or a column of days, and days to look back over", () => {
    const days = column(date("2026-03-08"), date("2026-03-01"), asOf);
    expect(outcome("POT_USE", column("Fern", "Fern", "Fern"), logOf(...WEEKS), days)).toEqual(column(10, "", 10));
    expect(outcome("POT_USE", "Fern", logOf(...WEEKS), asOf, "7 days")).toBe(10);
    expect(outcome("POT_USE", "Fern", logOf(...WEEKS), asOf, 0)).toBe(
      "throws: days is 0 days. Give a number from 1 to 3650 days.",
    );
  });

  it("do not count rows that were corrected or taken back", () => {
    const [first = [], ...rest] = WEEKS.slice(1).reverse();
    const typo = [first[0], ...first.slice(1, 4), 700, "", "Ines", ""];
    const mended = ["m1", ...first.slice(1, 7), first[0]];
    const log = logOf(...WEEKS.slice(0, 1), ...rest, typo, mended);
    expect(outcome("POT_USE", "Fern", log, asOf)).toBe(10);
    const back = ["b1", asOf, "Fern", "Taken back", "", "", "Ines", "m1"];
    expect(outcome("POT_USE", "Fern", logOf(...log.slice(1), back), asOf)).toBeCloseTo((3 * 70 + 700) / 28, 12);
  });

  it("take an own event that disturbs roots as a new start", () => {
    const log = logOf(...WEEKS, row("2026-03-24", "Wick replaced"));
    const events = [
      ["Event", "Disturbs roots"],
      ["Wick replaced", "yes"],
    ];
    expect(outcome("POT_USE", "Fern", log, asOf)).toBe(10);
    expect(outcome("POT_USE", "Fern", log, asOf, "", "", events)).toBe(14);
  });

  it("work without Who, Id and Corrects, and name a column that is missing", () => {
    const bare = [["date", "PLANT", "Event", "amount ml"], ...WEEKS.map((cells) => cells.slice(1, 5))];
    expect(outcome("POT_USE", "Fern", bare, asOf)).toBe(10);
    expect(outcome("POT_USE", "Fern", [["Date", "Plant", "Event"]], asOf)).toMatch(
      /^throws: log has no column headed "Amount mL"/,
    );
  });

  it("tell a broken row in the row of its plant, and only where it matters", () => {
    const log = logOf(
      ...WEEKS,
      row("2026-03-20", "Top up", "a jug", { plant: "Ivy" }),
      row("2026-03-20", "Top up", -5, { plant: "Moss" }),
      ["x", "soon", "Palm", "Top up", 50, "", "", ""],
      ["y", "soon", "Fern", "Note", "whatever", "", "", ""],
      row("2026-03-20", "Reading", "#N/A", { plant: "Fern" }),
    );
    expect(outcome("POT_USE", column("Fern", "Ivy", "Moss", "Palm"), log, asOf)).toEqual(
      column(
        10,
        expect.stringMatching(/^\? Amount mL in row 7 of log is "a jug"/),
        "? Amount mL in row 8 of log is -5 mL. Give a number from 0 to 1000000 mL.",
        expect.stringMatching(/^\? Date in row 9 of log is "soon"/),
      ),
    );
    expect(outcome("POT_USE", "Fern", logOf(row("2026-03-20", "Top up", 5, { plant: "#REF!" })), asOf)).toMatch(
      /^throws: Plant in row 2 of log is an error cell/,
    );
  });
});

it("tells two pours of one member from one that two wrote down by the column Who", () => {
  const twice = (second: string) => {
    const again = row("2026-03-29", "Top up", 70);
    again[6] = second;
    return outcome("POT_USE", "Fern", logOf(...WEEKS, again), asOf, 7);
  };
  expect(twice("Ines")).toBe(20);
  expect(twice("Tomas")).toBe(10);
  // A blank Who is no member: 70 mL twice on a day may be one pour that two wrote down.
  expect(twice("")).toBe(10);
  expect(twice("Ines ")).toBe(20);
  const without = [...WEEKS, row("2026-03-29", "Top up", 70)].map((cells) => cells.slice(1, 5));
  expect(outcome("POT_USE", "Fern", [["Date", "Plant", "Event", "Amount mL"], ...without], asOf, 7)).toBe(10);
});

describe("POT_SALT", () => {
  it("answers one case or a column of them", () => {
    expect(outcome("POT_SALT", 20, 20, 3, 0.5)).toBe(140);
    expect(outcome("POT_SALT", column(20, "", 5), 20, column(1, 2, 3), 0.5)).toEqual(column(60, "", 125));
  });

  it("refuses a reservoir that holds nothing", () => {
    expect(outcome("POT_SALT", 20, 20, 3, 0)).toMatch(/^throws: volume is 0\. Give a number from /);
    expect(outcome("POT_SALT", 20, 20, -1, 1)).toMatch(/^throws: used is -1\. Give a number from 0 /);
  });
});

describe("POT_DUE", () => {
  const rules = (...rows: unknown[][]) => [["Setting", "Value", "Note"], ...rows];
  const off = [
    ["Flush days", "off"],
    ["Change days", "Never"],
  ];

  it("lists what is due, a day as a date", () => {
    expect(
      plain(outcome("POT_DUE", column("Fern", "Ivy"), logOf(...WEEKS), date("2026-04-06"), "", rules(...off))),
    ).toEqual([
      ["Plant", "Due", "Since", "Why"],
      [
        "Fern",
        "Top up",
        { day: "2026-04-05" },
        "It drinks 10 mL a day, about 80 mL in the 8 days since 2026-03-29; 70 mL is its usual top-up.",
      ],
    ]);
    expect(outcome("POT_DUE", column("Fern"), logOf(...WEEKS), asOf, "", rules(...off))).toEqual([
      ["Plant", "Due", "Since", "Why"],
    ]);
  });

  it("takes its rules from a table of settings; other settings and blank values are left alone", () => {
    const told = (...rows: unknown[][]) =>
      (outcome("POT_DUE", "Fern", logOf(...WEEKS), asOf, "", rules(...rows)) as unknown[][])
        .slice(1)
        .map((cells) => cells[1]);
    expect(told(["Flush days", 20])).toEqual(["Flush"]);
    expect(told(["Flush days", ""], ["Today", asOf], ["People", "Ines, Tomas"])).toEqual([]);
    expect(told([" flush  DAYS", "20 days"])).toEqual(["Flush"]);
    expect(told(["Change days", 28])).toEqual(["Change"]);
    expect(outcome("POT_DUE", "Fern", logOf(...WEEKS), asOf, "", rules(["Flush days", "soon"]))).toMatch(
      /^throws: Flush days in row 2 of rules is "soon"/,
    );
  });

  it("passes over rows that are no setting, and takes the first value of a setting that is filled", () => {
    const told = (...rows: unknown[][]) =>
      (outcome("POT_DUE", "Fern", logOf(...WEEKS), asOf, "", rules(...rows)) as unknown[][]).length - 1;
    expect(told([5, 1], ["", ""], [true, 1], ["Flush days", 20])).toBe(1);
    expect(told(["Flush days", ""], ["Flush days", 20])).toBe(1);
    expect(told(["Flush days", 20], ["Flush days", "off"])).toBe(1);
    expect(told(["Flush days", "off"], ["Flush days", 20])).toBe(0);
  });

  it("reads off, never and no as never, and no other word", () => {
    const told = (value: unknown) =>
      outcome("POT_DUE", "Fern", logOf(...WEEKS), date("2026-03-31"), "", rules(["Flush days", value]));
    for (const word of ["off", "NEVER", "No"]) expect((told(word) as unknown[][]).length).toBe(1);
    for (const word of ["offer", "switched off", "now"])
      expect(told(word)).toMatch(/^throws: Flush days in row 2 of rules is /);
    const twice = outcome("POT_DUE", "Fern", logOf(...WEEKS), asOf, "", rules(["Flush days", 20], ["Flush days", 90]));
    expect((twice as unknown[][])[1]?.[1]).toBe("Flush");
  });

  it("holds readings against the ceiling", () => {
    const log = logOf(...WEEKS, row("2026-03-25", "Reading", "", { ec: "2,4" }));
    const list = plain(outcome("POT_DUE", "Fern", log, asOf)) as unknown[][];
    expect(list[1]).toEqual([
      "Fern",
      "Flush",
      { day: "2026-03-25" },
      "EC 2.4 mS/cm on 2026-03-25, not flushed since; the ceiling is 2.",
    ]);
  });

  it("lists claims that are still open", () => {
    const claims = [
      ["Id", "Claim", "Status", "Look again"],
      [1, "Rain water keeps tips green", "trying", date("2026-03-01")],
      [2, "Old idea", "dropped", date("2026-03-01")],
      [3, "Proven", "Kept", date("2026-03-01")],
      [4, "No day yet", "heard", ""],
      ["", "", "", ""],
    ];
    const list = plain(outcome("POT_DUE", "Ivy", logOf(), asOf, "", "", claims));
    expect(list).toEqual([
      ["Plant", "Due", "Since", "Why"],
      ["", "Look again", { day: "2026-03-01" }, "Claim: Rain water keeps tips green"],
    ]);
  });

  it("keeps a claim open whose status only begins or ends like a settled one; needs its name, reads its cells", () => {
    const told = (claim: unknown, again: unknown, status: unknown) =>
      outcome("POT_DUE", "Ivy", logOf(), asOf, "", "", [
        ["Claim", "Look again", "Status"],
        [claim, again, status],
        ["Last", "", ""],
      ]);
    const day = date("2026-03-01");
    for (const status of ["", "kept for now", "not kept", "dropped?"]) expect(told("A", day, status)).toHaveLength(2);
    for (const status of ["kept", "DROPPED"]) expect(told("A", day, status)).toHaveLength(1);
    expect(told("", day, "heard")).toHaveLength(1);
    expect(told("#N/A", day, "")).toMatch(/^throws: Claim in row 2 of claims is an error cell/);
    expect(told("A", "soon", "")).toMatch(/^throws: Look again in row 2 of claims is "soon"/);
    expect(told("A", day, "#N/A")).toMatch(/^throws: Status in row 2 of claims is an error cell/);
  });

  it("tells plants whose rows cannot be read last, once each", () => {
    const log = logOf(...WEEKS, ["x", "soon", "Palm", "New leaf", "", "", "", ""]);
    const list = outcome("POT_DUE", column("Palm", "palm", "#N/A", "Ivy"), log, asOf) as unknown[][];
    expect(list.map((cells) => cells.slice(0, 2))).toEqual([
      ["Plant", "Due"],
      ["Palm", expect.stringMatching(/^\? Date in row 7 of log is "soon"/)],
      [expect.stringMatching(/^\? plants is an error cell/), "? see left"],
    ]);
  });
});

it("answers 2,000 plants over a log of 100,000 rows in no order, within the time a cell may wait", () => {
  const rows = Array.from({ length: 100_000 }, (_, at) => [
    new Date(Date.UTC(2025, 0, 1 + ((at * 7919) % 450))),
    `${at % 2 === 0 ? "Plant" : " plant"} ${(at * 31) % 2000}`,
    at % 40 === 0 ? "Solution change" : at % 97 === 0 ? "Repot" : "Top up",
    20 + (at % 100),
    at % 3 === 0 ? "Ines" : "Tomas",
  ]);
  const log = [["Date", "Plant", "Event", "Amount mL", "Who"], ...rows];
  const plants = Array.from({ length: 2000 }, (_, at) => [`Plant ${at}`]);
  const started = performance.now();
  const use = call("POT_USE", [plants, log, date("2026-03-01")]) as unknown[][];
  const useMs = performance.now() - started;
  const due = call("POT_DUE", [plants, log, date("2026-03-01")]) as unknown[][];
  const dueMs = performance.now() - started - useMs;
  expect(use.filter(([mL]) => typeof mL === "number" && mL > 0).length).toBeGreaterThan(1000);
  expect(due.length).toBeGreaterThan(1000);
  // Well below the 30 s a cell may take, with room for a machine under load.
  expect(useMs).toBeLessThan(6_000);
  expect(dueMs).toBeLessThan(10_000);
});
