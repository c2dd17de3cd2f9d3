/** The runner: counting, reading and mapping of arguments, and what a bad value is told. */

import { describe, expect, it } from "vitest";
import { hostRow } from "../../src/functions/answers.ts";
import { date, outcome, plain } from "./cells.ts";

const column = (...values: unknown[]): unknown[][] => values.map((value) => [value]);
const blanks = (count: number): unknown[][] => Array.from({ length: count }, () => [""]);

describe("counting arguments", () => {
  it("names the argument that is missing and what to give", () => {
    expect(outcome("METER_TDS", 1)).toBe("throws: METER_TDS also needs scale. Give 500, 640 or 700.");
    expect(outcome("WATER_CLASS")).toBe("throws: WATER_CLASS also needs hardness. Give a number in mg/L CaCO3.");
    expect(outcome("ROOT_LAST", "Fern")).toBe("throws: ROOT_LAST also needs log. Give a range with a heading row.");
  });

  it("counts those that are too many and lists those it takes", () => {
    expect(outcome("METER_TDS", 1, 500, 3)).toBe(
      "throws: METER_TDS takes at most 2 arguments (ec, scale); 3 were given.",
    );
    const target = [["N"], [100]];
    const feeds = [
      ["Feed", "N"],
      ["Salt", 10],
    ];
    // A fifth argument may come one day; until then it is refused rather than ignored.
    expect(outcome("FEED_SOLVE", target, feeds, "", 10, 0.1, 7)).toBe(
      "throws: FEED_SOLVE takes at most 5 arguments (target, feeds, water, litres, step); 6 were given.",
    );
  });

  it("refuses a name that is none of its functions", () => {
    expect(outcome("constructor")).toBe("throws: There is no function named constructor here.");
  });

  it.each([
    ["undefined", undefined],
    ["null", null],
    ["''", ""],
    ["spaces", "  "],
  ])("takes a skipped optional argument as %s for left out", (_, skipped) => {
    expect(outcome("FEED_PPM", "10-5-5", 1, skipped, "N", skipped)).toBe(100);
    expect(outcome("ROOT_REST", "a", [["Date", "Plant", "Event"]], date("2026-03-01"), skipped, skipped)).toBe("");
  });
});

describe("one value", () => {
  it("gives one cell, or one row of cells", () => {
    expect(outcome("WATER_CLASS", 100)).toBe("moderately hard");
    expect(outcome("FEED_PPM", "10-5-5", 1, "", "N")).toBe(100);
    expect(outcome("FEED_PPM", "10-0-0", 1, "", "N P")).toEqual([[100, 0]]);
  });

  it("takes a range of one cell for a value", () => {
    expect(outcome("WATER_CLASS", [[100]])).toBe("moderately hard");
    expect(outcome("METER_TDS", column(1, 2), [["500"]])).toEqual(column(500, 1000));
  });

  it("gives nothing for a blank key", () => {
    for (const blank of ["", " ", null, undefined, [[""]], []]) expect(outcome("WATER_CLASS", blank)).toBe("");
  });

  it("throws with the argument, the value and what is accepted", () => {
    expect(outcome("WATER_CLASS", -3)).toBe(
      "throws: hardness is -3 mg/L CaCO3. Give a number of 0 mg/L CaCO3 or more.",
    );
    expect(outcome("METER_AT25", 1.2, "")).toBe("throws: tempC is blank. Give a number in °C.");
    expect(outcome("METER_AT25", 1.2, 80)).toBe("throws: tempC is 80 °C. Give a number from 0 to 50 °C.");
    expect(outcome("METER_TDS", 1.2, 501)).toBe("throws: scale is 501. Give 500, 640 or 700.");
    expect(outcome("METER_AT25", "abc", 20)).toBe('throws: ec is "abc". Give a plain number in mS/cm, like 1.2.');
    expect(outcome("WATER_CONVERT", 1, "dH", "degrees")).toBe(
      'throws: to is "degrees". Give mg/L CaCO3, mmol/L, meq/L, dH, fH, Clark, gpg, mg/L HCO3 or dKH.',
    );
  });

  it.each([
    ["an error text", "#N/A", "#N/A"],
    ["an Error object", new Error("#REF!"), "an error"],
    ["NaN", Number.NaN, "NaN"],
    ["infinity", Number.POSITIVE_INFINITY, "Infinity"],
    ["an object", {}, "an error"],
  ])("calls %s an error cell", (_, value, shown) => {
    expect(outcome("WATER_CLASS", value)).toBe(
      `throws: hardness is an error cell (${shown}). Mend that cell or clear it.`,
    );
  });

  it("refuses a date and a tick where a number belongs", () => {
    expect(outcome("WATER_CLASS", date("2026-03-01"))).toMatch(/^throws: hardness is the date 2026-03-01\. Give/);
    expect(outcome("WATER_CLASS", true)).toMatch(/^throws: hardness is yes\. Give/);
  });
});

describe("mapping over ranges", () => {
  it("answers row by row and drops the blank rows at the end", () => {
    expect(outcome("WATER_CLASS", [...column(50, 100), ...blanks(5000)])).toEqual(column("soft", "moderately hard"));
  });

  it("gives nothing in the row of a blank key, and answers the rows around it", () => {
    expect(outcome("WATER_CLASS", column(50, "", null, 100))).toEqual(column("soft", "", "", "moderately hard"));
    expect(outcome("METER_AT25", column("", 1.413), column(25, 25))).toEqual(column("", 1.413));
  });

  it("says what is wrong in the row of a bad value, and answers the rows around it", () => {
    expect(outcome("WATER_CLASS", column(50, "soft", 100, "#DIV/0!"))).toEqual(
      column(
        "soft",
        '? hardness is "soft". Give a plain number in mg/L CaCO3, like 1.2.',
        "moderately hard",
        "? hardness is an error cell (#DIV/0!). Mend that cell or clear it.",
      ),
    );
  });

  it("puts a text into every column of a bad row, so that none of them counts as 0", () => {
    expect(outcome("FEED_PPM", "10-0-0", column(1, -1, "", 2), "", "N P")).toEqual([
      [100, 0],
      ["? dose is -1 g/L. Give a number of 0 g/L or more.", "? see left"],
      ["", ""],
      [200, 0],
    ]);
  });

  it("uses one value beside a range for every row", () => {
    expect(outcome("METER_TDS", 2, column(500, 640, 700))).toEqual(column(1000, 1280, 1400));
    expect(outcome("METER_TDS", column(1, 2), 700)).toEqual(column(700, 1400));
  });

  it("throws for a bad value beside a range: it is wrong for every row", () => {
    expect(outcome("METER_TDS", column(1, 2), 501)).toMatch(/^throws: scale is 501/);
    expect(outcome("METER_TDS", column(1, 2), "")).toMatch(/^throws: scale is blank/);
  });

  it("follows the first range; where another one is shorter its cells are blank and said to be", () => {
    expect(outcome("WATER_HARDNESS", column(40.078, 0, 1), column(0, 24.305), "mmol/L")).toEqual([
      [expect.closeTo(1, 9)],
      [expect.closeTo(1, 9)],
      ["? magnesium is blank. Give a number in mg/L."],
    ]);
    expect(outcome("METER_TDS", column(1), column(500, 640))).toEqual(column(500, 640));
    expect(outcome("METER_TDS", column(1, 2), column(500, 640, 700))).toEqual(column(500, 1280));
  });

  it("refuses several columns where one belongs", () => {
    expect(outcome("METER_TDS", [[1, 2]], 500)).toBe(
      "throws: ec is a range of 2 columns. Give one cell or a range of one column.",
    );
  });

  it("takes ragged rows and plain lists as they come", () => {
    expect(outcome("WATER_CLASS", [[50], []])).toEqual(column("soft"));
    expect(outcome("WATER_CLASS", [50, 100])).toEqual(column("soft", "moderately hard"));
  });

  it("gives nothing for an empty range", () => {
    expect(outcome("WATER_CLASS", blanks(3))).toBe("");
  });

  it("refuses a range where a function answers with a table of its own", () => {
    expect(
      outcome(
        "FEED_SOLVE",
        [["N"], [1]],
        [
          ["Feed", "N"],
          ["a", 1],
        ],
        "",
        column(1, 2),
      ),
    ).toBe("throws: litres is a range of 2 rows. FEED_SOLVE answers with a table of its own: give one value.");
  });
});

describe("headings", () => {
  const log = [
    ["Date", "Plant", "Event"],
    [date("2026-03-01"), "Fern", "Repot"],
  ];
  const asOf = date("2026-03-11");

  it("takes the first cell of the key range for its own heading", () => {
    expect(outcome("ROOT_REST", column("Plant", "fern", "", "Ivy", "", ""), log, asOf, "Days")).toEqual(
      column("Days", 10, "", ""),
    );
    expect(outcome("ROOT_REST", column("", "Fern"), log, asOf, "Days")).toEqual(column("Days", 10));
  });

  it("stands alone over a list without rows", () => {
    expect(outcome("ROOT_REST", column("Plant", "", ""), log, asOf, "Days")).toEqual(column("Days"));
    expect(outcome("ROOT_REST", blanks(3), log, asOf, "Days")).toBe("Days");
    expect(outcome("ROOT_REST", "Plant", log, asOf, "Days")).toBe("Days");
  });

  it("lines up with a range of days beside it", () => {
    expect(outcome("ROOT_REST", column("Plant", "Fern"), log, column("As of", asOf), "Days")).toEqual(
      column("Days", 10),
    );
  });

  it("must be one text", () => {
    expect(outcome("ROOT_REST", column("Plant"), log, asOf, column("a", "b"))).toMatch(/^throws: heading is a range\./);
    expect(outcome("ROOT_REST", column("Plant"), log, asOf, asOf)).toMatch(/^throws: heading is the date 2026-03-11/);
  });
});

describe("tables", () => {
  const asOf = date("2026-03-11");
  const rest = (log: unknown) => outcome("ROOT_REST", "Fern", log, asOf);

  it("finds columns by heading in any order, case and spaces ignored, others left alone", () => {
    expect(
      rest([
        ["Who", " EVENT ", "", "plant", "D ate", "Note", "Note"],
        ["Ana", "repot", "x", "fern", date("2026-03-01"), new Error("#N/A"), 3],
      ]),
    ).toBe(10);
  });

  it("names the columns that are missing, and those it found", () => {
    expect(
      rest([
        ["Day", "Plant"],
        [1, 2],
      ]),
    ).toBe('throws: log has no column headed "Date", "Event"; its first row reads "Day", "Plant".');
    expect(rest([[1, 2]])).toBe(
      'throws: log has no column headed "Date", "Plant", "Event"; its first row must hold the headings.',
    );
  });

  it("refuses a heading it needs that stands twice", () => {
    expect(rest([["Date", "Plant", "Event", "date"]])).toBe(
      'throws: log has two columns headed "Date"; rename one of them.',
    );
  });

  it("refuses a value that is no range, and a table left blank", () => {
    expect(rest("log")).toBe("throws: log is one value; give a range with a heading row (Date, Plant, Event).");
    expect(rest("")).toMatch(/^throws: log is one value/);
    expect(rest(blanks(4))).toMatch(/^throws: log has no column headed "Date"/);
  });

  it("needs just one row where the table stands for one thing", () => {
    const feeds = [
      ["Feed", "N"],
      ["Salt", 10],
    ];
    expect(outcome("FEED_SOLVE", [["N"], [1], [""], [2]], feeds)).toBe(
      "throws: target holds 2 rows below its heading row; give the heading row and just one row.",
    );
    expect(outcome("FEED_SOLVE", [["N"]], feeds)).toMatch(/^throws: target holds 0 rows/);
  });
});

it("gives days as the host's dates and nothing as an empty text", () => {
  const log = [
    ["Date", "Plant", "Event"],
    ["2024-02-29", "Fern", "Division"],
  ];
  expect(plain(outcome("ROOT_LAST", column("Fern", "Ivy"), log))).toEqual([[{ day: "2024-02-29" }], [""]]);
});

it("never hands out a number that is none", () => {
  const toDate = (day: number) => day;
  for (const none of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
    expect(() => hostRow(none, toDate)).toThrow("The result is too large for a number.");
    expect(() => hostRow([1, none], toDate)).toThrow("The result is too large for a number.");
  }
  expect(hostRow([1, null, { day: 5 }, "a", true], toDate)).toEqual([1, "", 5, "a", true]);
  expect(outcome("WATER_CONVERT", column(1e308, 10), "dH", "dKH")).toEqual([[expect.stringMatching(/^\? /)], [10]]);
});
