/** Plants with their days at rest, from the list and the care log in whatever state they are. */

import { describe, expect, test } from "vitest";
import { careEntry, dateCell, openTestBook, readyBook } from "../sheet/workbook.ts";
import { bookWith, type Cells, load } from "./book.ts";

describe("plants", () => {
  test("come with the days since their roots were last disturbed, whatever the order of the log", () => {
    const book = bookWith({
      Plants: [
        ["Plant", "Kind", "Place", "Pot mL"],
        ["Hoya", "Hoya carnosa", "Bath", 800],
        ["Fern", "", "", ""],
        ["Fig", "", "", "1,5"],
      ],
      "Care log": [
        ["Date", "Plant", "Event"],
        [dateCell("2026-03-09"), "hoya ", "Top up"],
        [dateCell("2026-02-28"), "HOYA", "repot"],
        [dateCell("2025-01-01"), "Hoya", "Division"],
        [dateCell("2026-03-11"), "Hoya", "Repot"],
        ["2026-03-10", "Fig", "Root trim"],
      ],
    });
    expect(load(book).plants).toEqual([
      { plant: "Hoya", kind: "Hoya carnosa", place: "Bath", potMl: 800, medium: "", restDays: 10, lastEvent: "Repot" },
      { plant: "Fern", kind: "", place: "", potMl: null, medium: "", restDays: null, lastEvent: "" },
      { plant: "Fig", kind: "", place: "", potMl: 1.5, medium: "", restDays: 0, lastEvent: "Root trim" },
    ]);
  });

  test("go by the household's own list of events", () => {
    const book = bookWith({
      Plants: [["Plant"], ["Hoya"]],
      Events: [
        ["Event", "Disturbs roots"],
        ["Bath", "yes"],
        ["Repot", "no"],
      ],
      "Care log": [
        ["Date", "Plant", "Event"],
        [dateCell("2026-03-01"), "Hoya", "Bath"],
        [dateCell("2026-03-05"), "Hoya", "Repot"],
      ],
    });
    const reply = load(book);
    expect(reply.plants[0]).toMatchObject({ restDays: 9, lastEvent: "Bath" });
    expect(reply.events).toEqual([
      { event: "Bath", disturbsRoots: true },
      { event: "Repot", disturbsRoots: false },
    ]);
  });

  test("of the same name are told, and the first is used", () => {
    const reply = load(
      bookWith({
        Plants: [
          ["Plant", "Place"],
          ["Hoya", "Bath"],
          ["  hoya", "Hall"],
        ],
      }),
    );
    expect(reply.plants.map(({ place }) => place)).toEqual(["Bath"]);
    expect(reply.problems).toEqual([
      "“hoya” in row 3 of Plants also stands in row 2. The log cannot tell them apart, so give one of them another name.",
    ]);
  });

  test("with a pot that is no number are there all the same, and told", () => {
    const reply = load(
      bookWith({
        Plants: [
          ["Plant", "Pot mL"],
          ["Hoya", "big"],
          ["Fern", 500],
        ],
      }),
    );
    expect(reply.plants.map(({ plant, potMl }) => [plant, potMl])).toEqual([
      ["Hoya", null],
      ["Fern", 500],
    ]);
    expect(reply.problems).toEqual([expect.stringMatching(/^Pot mL in row 2 of Plants is "big"/)]);
  });
});

describe("the care log", () => {
  const log = (rows: Cells) =>
    load(bookWith({ Plants: [["Plant"], ["Hoya"]], "Care log": [["Date", "Plant", "Event"], ...rows] }));

  test("with a date as text is told, and the other rows count", () => {
    const reply = log([
      [dateCell("2026-03-01"), "Hoya", "Repot"],
      ["3/4/2026", "Hoya", "Repot"],
    ]);
    expect(reply.plants[0]?.restDays).toBe(9);
    expect(reply.problems).toEqual([
      expect.stringMatching(/Date in row 3 of Care log is "3\/4\/2026".*Until then that row is not counted\./),
    ]);
  });

  test("with a blank date and an error cell is told", () => {
    const reply = log([
      ["", "Hoya", "Repot"],
      [{ value: { error: "#VALUE!" } }, "Hoya", "Repot"],
    ]);
    expect(reply.plants[0]?.restDays).toBeNull();
    expect(reply.problems).toHaveLength(2);
  });

  test("with an unknown event is told", () => {
    expect(log([[dateCell("2026-03-01"), "Hoya", "Dance"]]).problems).toEqual([
      "“Care log” has events that Events does not list: Dance. They count as leaving the roots alone; add them to Events if they do not.",
    ]);
  });

  test("with hundreds of bad rows gives a handful of sentences and the count of the rest", () => {
    const { problems } = log(Array.from({ length: 300 }, () => ["tomorrow", "Hoya", "Repot"]));
    expect(problems).toHaveLength(9);
    expect(problems[8]).toBe("Care log has 292 more like this. Mend these first, then load again.");
  });

  test("in a zone far from the script's counts calendar days of the spreadsheet", () => {
    const book = openTestBook({
      zone: "Pacific/Auckland",
      scriptZone: "America/Los_Angeles",
      now: "2026-04-05T12:30:00Z", // 2026-04-06 00:30 in Auckland, the day after its clocks went back
      tabs: {
        Plants: { cells: [["Plant"], ["Hoya"]] },
        "Care log": {
          cells: [
            ["Date", "Plant", "Event"],
            [dateCell("2026-04-04"), "Hoya", "Repot"],
          ],
        },
      },
    });
    const reply = load(book);
    expect(reply.today).toBe("2026-04-06");
    expect(reply.plants[0]?.restDays).toBe(2);
  });
});

test("hidden, filtered and sorted rows are read like any other", () => {
  const book = readyBook();
  book.reply({
    ask: "log care",
    who: "",
    entries: [
      careEntry({ plant: "Hoya", event: "Repot", day: "2026-03-01" }),
      careEntry({ plant: "Fern", event: "Repot", day: "2026-03-02" }),
    ],
  });
  book.grid.tab("Plants").write(2, 1, [[{ value: "Hoya" }], [{ value: "Fern" }]]);
  book.grid.tab("Care log").sortRows({ row: 2, column: 1, rows: 500, columns: 11 }, 2, false);
  expect(load(book).plants.map(({ plant, restDays }) => [plant, restDays])).toEqual([
    ["Hoya", 9],
    ["Fern", 8],
  ]);
});
