/** Roots in formulas: days at rest from logs as people keep them, broken rows and long logs included. */

import { describe, expect, it } from "vitest";
import { call, date, outcome, plain } from "./cells.ts";

const column = (...values: unknown[]): unknown[][] => values.map((value) => [value]);
const logOf = (...rows: unknown[][]): unknown[][] => [["Date", "Plant", "Event"], ...rows];
const asOf = date("2026-03-31");

describe("which rows count", () => {
  it("takes the latest disturbance up to the day asked for, in whatever order the log stands", () => {
    const log = logOf(
      [date("2026-03-01"), "Fern", "Repot"],
      [date("2026-05-01"), "Fern", "Repot"],
      [date("2026-01-01"), "Fern", "Root trim"],
      [date("2026-03-20"), "Fern", "Top up"],
      [date("2026-03-21"), "Fern", "Decay removed"],
    );
    expect(outcome("ROOT_REST", "Fern", log, asOf)).toBe(30);
    expect(outcome("ROOT_REST", "Fern", log, column(date("2026-02-28"), date("2025-12-31"), asOf))).toEqual(
      column(58, "", 30),
    );
    expect(plain(outcome("ROOT_LAST", "Fern", log))).toEqual({ day: "2026-05-01" });
  });

  it.each(["Repot", "Pot up", "Root trim", "Rinse out of pot", "Move from soil", "Division"])("counts %s", (event) => {
    expect(outcome("ROOT_REST", "Fern", logOf([asOf, "Fern", event]), asOf)).toBe(0);
  });

  it.each([
    ["Top up"],
    ["Solution change"],
    ["Flush in place"],
    ["Decay removed"],
    ["New leaf"],
    ["New root"],
    ["Reading"],
    ["Note"],
    ["Photo"],
    [""],
  ])("does not count %j", (event) => {
    expect(outcome("ROOT_REST", "Fern", logOf([asOf, "Fern", event]), asOf)).toBe("");
  });

  it("matches names with case and spaces around them ignored; a renamed plant gives nothing, not 0", () => {
    const log = logOf([asOf, " window  FERN ", " repot "]);
    expect(outcome("ROOT_REST", column("Window fern", "Window ferny"), log, asOf)).toEqual(column(0, ""));
  });

  it("matches plants named by a number", () => {
    expect(outcome("ROOT_REST", column(12, "12"), logOf([asOf, 12, "Repot"]), asOf)).toEqual(column(0, 0));
  });

  it("takes dates as ISO texts, blank rows in the middle and rows without a plant", () => {
    const log = logOf(["2026-03-01", "Fern", "Repot"], ["", "", ""], [asOf, "", "Repot"], ["", "", ""]);
    expect(outcome("ROOT_REST", "Fern", log, "2026-03-31")).toBe(30);
  });
});

describe("a row that a later one corrects", () => {
  const log = [
    ["Id", "Date", "Plant", "Event", "Corrects"],
    ["a", date("2026-03-01"), "Fern", "Repot", ""],
    ["b", date("2026-03-10"), "Fern", "Repot", ""],
    ["c", date("2026-03-05"), "Fern", "Repot", "b"],
  ];

  it("is not counted", () => {
    expect(outcome("ROOT_REST", "Fern", log, asOf)).toBe(26);
  });

  it("counts again when its correction is taken back", () => {
    const more = [...log, ["d", date("2026-03-12"), "Fern", "Taken back", "c"]];
    expect(outcome("ROOT_REST", "Fern", more, asOf)).toBe(21);
  });

  it("is gone when it is taken back, and a log without these columns counts every row", () => {
    const back = [...log, ["d", date("2026-03-12"), "Fern", "Taken back", "c"], ["e", asOf, "Fern", "Taken back", "b"]];
    expect(outcome("ROOT_REST", "Fern", back, asOf)).toBe(30);
    expect(
      outcome(
        "ROOT_REST",
        "Fern",
        log.map((row) => row.slice(1, 4)),
        asOf,
      ),
    ).toBe(21);
  });
});

it.each([["Id"], ["Corrects"]])("finds a correction when %s is the second column", (second) => {
  const first = second === "Id" ? "Corrects" : "Id";
  const log = [
    [first, second, "Date", "Plant", "Event"],
    [second === "Id" ? "" : "b", second === "Id" ? "b" : "", date("2026-03-10"), "Fern", "Repot"],
    [second === "Id" ? "b" : "c", second === "Id" ? "c" : "b", date("2026-03-05"), "Fern", "Repot"],
  ];
  expect(outcome("ROOT_REST", "Fern", log, asOf)).toBe(26);
});

it("reads Id and Corrects with spaces around them; what is no text there points nowhere", () => {
  const log = (id: unknown, corrects: unknown) => [
    ["Id", "Date", "Plant", "Event", "Corrects"],
    [id, date("2026-03-10"), "Fern", "Repot", ""],
    ["c", date("2026-03-05"), "Fern", "Repot", corrects],
  ];
  expect(outcome("ROOT_REST", "Fern", log(" b ", "b"), asOf)).toBe(26);
  expect(outcome("ROOT_REST", "Fern", log("b", " b"), asOf)).toBe(26);
  for (const odd of [7, true, asOf, new Error("#N/A"), null])
    expect(outcome("ROOT_REST", "Fern", log(odd, odd), asOf)).toBe(21);
});

describe("events of one's own", () => {
  const log = logOf([asOf, "Fern", "Photo"], [date("2026-03-01"), "Fern", "Repot"]);

  it("go before the built-in list", () => {
    const events = [
      ["Disturbs roots", "Event"],
      ["yes", "photo"],
      [false, "Repot"],
      ["", ""],
    ];
    expect(outcome("ROOT_REST", "Fern", log, asOf, "", events)).toBe(0);
    expect(outcome("ROOT_REST", "Fern", log, asOf, "", [["Event", "Disturbs roots"]])).toBe(30);
    expect(
      outcome("ROOT_REST", "Fern", log, asOf, "", [
        ["Event", "Disturbs roots"],
        ["Repot", "no"],
      ]),
    ).toBe("");
  });

  it("are passed over where the name is blank, and named where it cannot be read", () => {
    const events = (...first: unknown[]) => [["Event", "Disturbs roots"], first, ["Repot", "no"]];
    expect(outcome("ROOT_REST", "Fern", log, asOf, "", events("", ""))).toBe("");
    expect(outcome("ROOT_REST", "Fern", log, asOf, "", events("", "perhaps"))).toBe("");
    expect(outcome("ROOT_REST", "Fern", log, asOf, "", events("#N/A", "no"))).toMatch(
      /^throws: Event in row 2 of events is an error cell/,
    );
  });

  it("need a yes or a no", () => {
    const told = (answer: unknown) =>
      outcome("ROOT_REST", "Fern", log, asOf, "", [
        ["Event", "Disturbs roots"],
        ["Photo", answer],
      ]);
    expect(told("")).toBe('throws: Disturbs roots in row 2 of events is blank. Write yes or no for "Photo".');
    expect(told("perhaps")).toMatch(/Disturbs roots in row 2 of events is "perhaps"/);
    expect(outcome("ROOT_LAST", "Fern", log, "", [["Event"], ["Photo"]])).toMatch(
      /events has no column headed "Disturbs roots"/,
    );
  });
});

describe("rows that cannot be read", () => {
  const log = logOf(
    [date("2026-03-01"), "Fern", "Repot"],
    ["1/3/2026", "Ivy", "Repot"],
    ["soon", "Moss", "Top up"],
    ["", "Palm", "Repot"],
    [date("2026-03-01"), "Reed", new Error("#N/A")],
    [20000, "Sage", "Repot"],
  );
  const plants = column("Fern", "Ivy", "Moss", "Palm", "Reed", "Sage");

  it("are told in the row of their plant, and only there", () => {
    expect(outcome("ROOT_REST", plants, log, asOf)).toEqual(
      column(
        30,
        '? Date in row 3 of log is "1/3/2026". Give a date, or a text like 2026-03-01 (year, month, day).',
        "",
        "? Date in row 5 of log is blank. Give the day it was done.",
        expect.stringMatching(/^\? Event in row 6 of log is an error cell/),
        expect.stringMatching(/^\? Date in row 7 of log is the number 20000/),
      ),
    );
    expect(outcome("ROOT_LAST", "Ivy", log)).toMatch(/^throws: Date in row 3 of log/);
  });

  it("are told by the first of them", () => {
    const both = logOf(["soon", "Fern", "Repot"], ["later", "Fern", "Repot"]);
    expect(outcome("ROOT_LAST", "Fern", both)).toMatch(/^throws: Date in row 2 of log is "soon"/);
  });

  it("come last on the board, with what is wrong", () => {
    const board = plain(outcome("ROOT_BOARD", column("Ivy", "Moss", "#N/A", "Fern"), log, asOf));
    expect(board).toEqual([
      ["Plant", "Days at rest", "Last event", "Date"],
      ["Fern", 30, "Repot", { day: "2026-03-01" }],
      ["Moss", "", "", ""],
      ["Ivy", expect.stringMatching(/^\? Date in row 3 of log/), "? see left", "? see left"],
      [expect.stringMatching(/^\? plants is an error cell/), "? see left", "? see left", "? see left"],
    ]);
  });

  it("throw when they could be about any plant", () => {
    expect(outcome("ROOT_REST", plants, logOf([asOf, "#REF!", "Repot"]), asOf)).toMatch(
      /^throws: Plant in row 2 of log is an error cell \(#REF!\)/,
    );
    expect(outcome("ROOT_REST", "Fern", logOf([asOf, "#REF!", "Top up"]), asOf)).toBe("");
  });
});

describe("the board", () => {
  it("lists each name once, longest rest first, equal ones in the order given", () => {
    const log = logOf(
      [date("2026-03-01"), "B", "Repot"],
      [date("2026-03-01"), "A", "Repot"],
      [date("2026-02-01"), "C", "Repot"],
    );
    const board = outcome("ROOT_BOARD", column("Z", "", "A", " ", "B", "a ", "C", ""), log, asOf) as unknown[][];
    expect(board.map((row) => row[0])).toEqual(["Plant", "C", "A", "B", "Z"]);
  });

  it("says in words what to leave alone, once it is told for how many days", () => {
    const log = logOf([date("2026-03-01"), "A", "Repot"], [date("2026-03-02"), "B", "Repot"]);
    const words = (...rows: unknown[][]) =>
      outcome("ROOT_BOARD", column("B", "C", "A"), log, asOf, "", [["Setting", "Value"], ...rows]) as unknown[][];
    // 1 March to 31 March is 30 days of rest: enough from the thirtieth day on.
    const thirty = ["Roots", "Rested long enough", "Leave alone", "No disturbance on record"];
    expect(words(["Rest days", 30]).map((row) => row[4])).toEqual(thirty);
    // Half a year where the rule is blank: common practice, no source.
    expect(
      words(["Rest days", ""])
        .map((row) => row[4])
        .slice(1),
    ).toEqual(["Leave alone", "Leave alone", "No disturbance on record"]);
    const season = [
      ["Rest days in season", 30],
      ["Season months", "Mar to Sep"],
    ];
    expect(words(["Rest days", 180], ...season).map((row) => row[4])).toEqual(thirty);
    // The first of two counts; rows whose setting is no text are not ours.
    expect(words([7, 1], ["", ""], [true, 2], ["Rest days", 30], [" rest  DAYS", 300]).map((row) => row[4])).toEqual(
      thirty,
    );
    expect(words(["Rest days in season", 30])).toMatch(/^throws: Settings has only one of/);
    expect(words(["Rest days", "half a year"])).toMatch(/^throws: “Rest days” in Settings is "half a year"/);
    const plain = outcome("ROOT_BOARD", column("B"), log, asOf, "", "") as unknown[][];
    expect(plain.map((row) => row.length)).toEqual([4, 4]);
  });

  it("takes one plant, and needs a day", () => {
    expect(outcome("ROOT_BOARD", "Fern", logOf(), asOf)).toEqual([
      ["Plant", "Days at rest", "Last event", "Date"],
      ["Fern", "", "", ""],
    ]);
    expect(outcome("ROOT_BOARD", "Fern", logOf(), "")).toBe("throws: asOf is blank. Give a date.");
    expect(outcome("ROOT_BOARD", "Fern", logOf(), "today")).toMatch(/^throws: asOf is "today"/);
    expect(outcome("ROOT_BOARD", [["a", "b"]], logOf(), asOf)).toMatch(/^throws: plants is a range of 2 columns/);
  });
});

it("answers 5,000 rows with 200 blank ones in the middle and an open end", () => {
  const rows = Array.from({ length: 5000 }, (_, at) => [
    date("2026-03-01"),
    `Plant ${at % 50}`,
    at % 2 ? "Top up" : "Repot",
  ]);
  rows.splice(2000, 0, ...Array.from({ length: 200 }, () => ["", "", ""] as never));
  const open = [...logOf(...rows), ...Array.from({ length: 50_000 }, () => ["", "", ""])];
  const plants = [
    ...Array.from({ length: 50 }, (_, at) => [`plant ${at}`]),
    ...Array.from({ length: 50_000 }, () => [""]),
  ];
  const answer = call("ROOT_REST", [plants, open, asOf]) as unknown[][];
  expect(answer).toEqual(Array.from({ length: 50 }, (_, at) => [at % 2 ? "" : 30]));
});
