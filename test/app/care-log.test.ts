/** The Care log as the panel gets it: its rows whole, and a sentence on each row that counts for nothing. */

import { describe, expect, test } from "vitest";
import { dateCell } from "../sheet/workbook.ts";
import { bookWith, type Cells, load } from "./book.ts";

const HEAD = ["Id", "Date", "Plant", "Event", "Amount mL", "Solution", "EC", "pH", "Who", "Reason", "Note"];
const PLANTS: Cells = [["Plant"], ["Fern"], ["Fig"]];

const loadWith = (...rows: Cells) => load(bookWith({ Plants: PLANTS, "Care log": [HEAD, ...rows] }));
const row = (plant: string, event: string, day = "2026-03-01"): Cells[number] => ["", dateCell(day), plant, event];

test("a row travels with all that stands in it", () => {
  const { care, problems } = loadWith(
    ["care-1", dateCell("2026-02-20"), "Fern", "Top up", 250, "Batch 7", 1.25, 5.75, "Ana", "Split pot", "Dry"],
    ["care-2", dateCell("2026-02-19"), "Fig", "Note"],
  );
  expect(care).toEqual({
    rows: [
      {
        ...{ id: "care-1", day: "2026-02-20", plant: "Fern", event: "Top up", amountMl: 250, solution: "Batch 7" },
        ...{ ecMsCm: 1.25, pH: 5.75, who: "Ana", reason: "Split pot", note: "Dry" },
      },
      {
        ...{ id: "care-2", day: "2026-02-19", plant: "Fig", event: "Note", amountMl: null, solution: "" },
        ...{ ecMsCm: null, pH: null, who: "", reason: "", note: "" },
      },
    ],
    from: "2026-02-19",
    all: true,
  });
  expect(problems).toEqual([]);
});

describe("a log without rows that count", () => {
  const none = { rows: [], from: null, all: true };

  test("is empty, whether the tab is there or not", () => {
    expect(loadWith().care).toEqual(none);
    const book = bookWith({ Plants: PLANTS });
    book.grid.removeTab(book.grid.tab("Care log").id);
    expect(load(book).care).toEqual(none);
  });

  test.each(["Date", "Plant", "Event"])("is one whose column %s is gone, and that is said", (gone) => {
    const book = bookWith({ Plants: PLANTS, "Care log": [HEAD, row("Fern", "Repot")] });
    book.grid.tab("Care log").deleteColumns(HEAD.indexOf(gone) + 1, 1);
    const reply = load(book);
    expect(reply.care).toEqual(none);
    expect(reply.plants.map(({ restDays }) => restDays)).toEqual([null, null]);
    expect(reply.problems).toEqual([expect.stringContaining(`“Care log” has no column “${gone}”`)]);
  });

  test("is one with a plant and no event, or the other way round: half a row names nothing that was done", () => {
    const reply = loadWith(row("Fern", ""), row("", "Repot"), [], ["care-9"]);
    expect(reply.care).toEqual(none);
    expect(reply.problems).toEqual([]);
  });
});

describe("a row with a plant and an event", () => {
  test("and no day is told by its row and not counted, the others are", () => {
    const reply = loadWith(row("Fern", "Repot"), ["", "", "Fern", "Repot"], row("Fig", "Repot"));
    expect(reply.care.rows.map(({ plant }) => plant)).toEqual(["Fig", "Fern"]);
    expect(reply.problems).toEqual([expect.stringMatching(/^There is no date in row 3 of Care log/)]);
  });

  test("and a day that cannot be read is told by its row and its text, and not counted", () => {
    const reply = loadWith(["", "sometime", "Fern", "Repot"], row("Fern", "Top up"));
    expect(reply.care.rows.map(({ event }) => event)).toEqual(["Top up"]);
    expect(reply.problems).toEqual([expect.stringMatching(/row 2 of Care log.*sometime/s)]);
  });
});

test("rows without a day are told eight times, then counted for their tab with all else that is odd in it", () => {
  const blank = Array.from({ length: 10 }, () => ["", "", "Fern", "Repot"]);
  const odd: [Cells, number][] = [
    [blank, 2],
    [[...blank, ["", "sometime", "Fern", "Repot"]], 3],
    [[...blank, row("Fern", "Dance")], 3],
    [[...blank, ["care-1", dateCell("2026-03-01"), "Fern", "Top up", "a jug"]], 3],
  ];
  for (const [rows, more] of odd) {
    const { problems } = loadWith(...rows);
    expect(problems).toHaveLength(9);
    expect(problems[8]).toContain(`Care log has ${more} more like this`);
  }
});

test("events that Events does not list are named, eight at most, and leave the roots alone", () => {
  const unknown = Array.from({ length: 9 }, (_, at) => `Odd ${at + 1}`);
  const reply = loadWith(row("Fern", "Repot", "2026-02-28"), ...unknown.map((event) => row("Fern", event)));
  expect(reply.plants[0]?.restDays).toBe(10);
  expect(reply.problems).toEqual([
    expect.stringMatching(/^“Care log” has events .* Odd 1, Odd 2, Odd 3, Odd 4, Odd 5, Odd 6, Odd 7, Odd 8\. They/),
  ]);
});
