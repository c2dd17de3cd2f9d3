/** The tab Events: which events can be logged, and whether each disturbs roots. */

import { describe, expect, test } from "vitest";
import { bookWith, type Cells, load } from "./book.ts";

const events = (...rows: Cells[number][]) => load(bookWith({ Events: [["Event", "Disturbs roots"], ...rows] }));

describe("the rows of Events", () => {
  test("are the events, with what each does to roots", () => {
    const { events: read, problems } = events(["Bath", "yes"], [" Trim ", "no"]);
    expect(read).toEqual([
      { event: "Bath", disturbsRoots: true },
      { event: "Trim", disturbsRoots: false },
    ]);
    expect(problems).toEqual([]);
  });

  test("without a name are passed over, and without a yes or no are told by name and row", () => {
    const { events: read, problems } = events(
      ["Bath", "yes"],
      ["", "yes"],
      ["  ", "no"],
      ["Photo", ""],
      ["Odd", "may"],
    );
    expect(read).toEqual([{ event: "Bath", disturbsRoots: true }]);
    expect(problems).toEqual([
      expect.stringMatching(/^Photo in row 5 of Events .*yes or no/),
      expect.stringMatching(/^Disturbs roots in row 6 of Events is "may"/),
    ]);
  });

  test("are told eight times, then by their number", () => {
    const { problems } = events(...Array.from({ length: 10 }, (_, at) => [`Odd ${at}`, ""]));
    expect(problems).toHaveLength(9);
    expect(problems[8]).toMatch(/^Events has 2 more like this/);
  });

  test.each<[string, string | null]>([
    ["there are none", null],
    ["none can be used", "Photo"],
  ])("give way to the built-in ones where %s", (_, left) => {
    // The set-up fills the tab, so it is emptied afterwards.
    const book = bookWith({});
    const blank = book.values("Events").slice(1);
    expect(blank.length).toBeGreaterThan(10);
    book.grid.tab("Events").write(
      2,
      1,
      blank.map((_row, at) => [{ value: at === 0 ? left : null }, { value: null }]),
    );
    const { events: read } = load(book);
    expect(read).toContainEqual({ event: "Repot", disturbsRoots: true });
    expect(read).toContainEqual({ event: "Top up", disturbsRoots: false });
  });

  test.each(["Event", "Disturbs roots"])("are told to lack their column %s", (heading) => {
    const book = bookWith({ Events: [["Event", "Disturbs roots"]] });
    const at = book.values("Events")[0]?.indexOf(heading) ?? -1;
    expect(at).toBeGreaterThanOrEqual(0);
    book.grid.tab("Events").deleteColumns(at + 1, 1);
    expect(load(book).problems[0]).toContain(`“Events” has no column “${heading}”`);
  });
});
