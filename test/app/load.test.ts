/** Loading the panel: everything in one go, and a sentence on whatever cannot be used. */

import { describe, expect, test } from "vitest";
import { loaded } from "../../src/app/contract.ts";
import { dateCell, openTestBook, readyBook, serialOf } from "../sheet/workbook.ts";
import { bookWith, load } from "./book.ts";

describe("a spreadsheet", () => {
  test("that is empty loads, and one sentence says what to do", () => {
    const reply = load(openTestBook());
    expect(loaded.safeParse(reply).success).toBe(true);
    expect(reply).toMatchObject({ plants: [], people: [], meterScale: null, settings: {}, feeds: [], batches: [] });
    expect(reply.events.map(({ event }) => event)).toContain("Repot");
    expect(reply.problems).toEqual([
      "This spreadsheet has no tab “Plants”, “Care log”, “Events”, “Feeds”, “Waters”, “Targets”, “Batch log”, “Settings”. Choose “Set up tabs” from the Stillroot menu: it adds what is missing and leaves all else as it is.",
    ]);
  });

  test("just set up loads without a word", () => {
    const reply = load(readyBook());
    expect(reply.problems).toEqual([]);
    expect(reply).toMatchObject({ today: "2026-03-10", plantTab: "Plants", who: "", people: [], meterScale: null });
  });

  test("with one tab deleted loads the rest", () => {
    const book = bookWith({
      Waters: [
        ["Water", "Ca"],
        ["Tap", 80],
      ],
    });
    book.grid.removeTab(book.grid.tab("Feeds").id);
    const reply = load(book);
    expect(reply.waters).toHaveLength(1);
    expect(reply.problems).toEqual([expect.stringMatching(/no tab “Feeds”\. Choose/)]);
  });

  test("with a number column deleted says so, for arithmetic would miss it", () => {
    const book = readyBook();
    book.grid.tab("Targets").deleteColumns(5, 1);
    expect(load(book).problems).toEqual([expect.stringMatching(/“Targets” has no column “Ca”/)]);
  });

  test("with a column cut and pasted to the far right finds it there", () => {
    const book = bookWith({
      Waters: [
        ["Water", "Ca", "Mg"],
        ["Tap", 80, 5],
      ],
    });
    const tab = book.grid.tab("Waters");
    const right = tab.extent().column + 3;
    tab.write(1, 2, [[{ value: null }], [{ value: null }]]);
    tab.write(1, right, [[{ value: "Ca" }], [{ value: 80 }]]);
    const reply = load(book);
    expect(reply.problems).toEqual([]);
    expect(reply.waters[0]?.fields).toMatchObject({ Ca: 80, Mg: 5 });
  });

  test("with a heading twice says so", () => {
    const book = bookWith({
      Waters: [
        ["Water", "Ca", "Ca"],
        ["Tap", 1, 2],
      ],
    });
    const reply = load(book);
    expect(reply.problems).toEqual([expect.stringMatching(/heading “Ca” in columns B and C/)]);
    expect(reply.waters[0]?.fields).toEqual({ Water: "Tap" });
  });
});

describe("settings", () => {
  test("give the people and the meter's scale", () => {
    const reply = load(
      bookWith({
        Settings: [
          ["Setting", "Value"],
          ["People", "Ana; Ben,  ana ,\nCleo"],
          ["Meter scale", 500],
        ],
      }),
    );
    expect(reply).toMatchObject({ people: ["Ana", "Ben", "Cleo"], meterScale: 500 });
  });

  test("with another scale or a setting twice are told", () => {
    const reply = load(
      bookWith({
        Settings: [
          ["Setting", "Value"],
          ["Meter scale", 650],
          ["meter  scale", 500],
        ],
      }),
    );
    expect(reply.meterScale).toBeNull();
    expect(reply.problems).toEqual([
      "“meter  scale” stands in rows 2 and 3 of “Settings”. The first one counts; clear the other.",
      "Meter scale in Settings is “650”. Write 500, 640 or 700, or leave it blank for a meter that shows mS/cm.",
    ]);
  });

  test("keep today's date as a plain date cell, refreshed on loading", () => {
    const book = bookWith({
      Settings: [
        ["Setting", "Value"],
        ["Today", dateCell("2026-03-01")],
      ],
    });
    load(book);
    expect(book.cell("Settings", 2, "Value")).toBe(serialOf("2026-03-10"));
    book.calls.length = 0;
    load(book);
    expect(book.calls.filter((name) => name.includes("set"))).toEqual([]);
  });

  test("without a row for today are left without one", () => {
    const book = bookWith({
      Settings: [
        ["Setting", "Value"],
        ["People", "Ana"],
      ],
    });
    const before = book.values("Settings");
    book.calls.length = 0;
    expect(load(book).problems).toEqual([]);
    expect(book.calls.filter((name) => name.includes("set"))).toEqual([]);
    expect(book.values("Settings")).toEqual(before);
  });

  test("that may not be written are told, and the rest loads", () => {
    let locked = false;
    const book = readyBook({
      tabs: {
        Settings: {
          cells: [
            ["Setting", "Value"],
            ["Today", dateCell("2026-03-01")],
          ],
        },
      },
      onCall: (name) => {
        if (locked && name === "Range.setValues") throw new Error("You are trying to edit a protected cell or object.");
      },
    });
    locked = true;
    const reply = load(book);
    locked = false;
    expect(reply.problems).toEqual([
      expect.stringMatching(/^Today's date in Settings could not be refreshed\..*protected cell/),
    ]);
  });
});

describe("a tab with ten cells that cannot be read", () => {
  const CASES: readonly (readonly [string, readonly string[], readonly (string | number)[]])[] = [
    ["Feeds", ["Price", "Feed"], ["dear"]],
    ["Waters", ["Ca", "Water"], ["hard"]],
    ["Targets", ["N", "Target"], ["much"]],
    ["Batch log", ["pH", "Id"], ["sour"]],
    ["Care log", ["Date", "Event", "Plant"], ["soon", "Repot"]],
    ["Events", ["Disturbs roots", "Event"], ["perhaps"]],
  ];

  test.each(CASES)("shows eight sentences on %s, and counts the other two under its name", (name, headings, cells) => {
    const rows = Array.from({ length: 10 }, (_, at) => [...cells, `Own name ${at}`]);
    const { problems } = load(bookWith({ [name]: [[...headings], ...rows] }));
    expect(problems).toHaveLength(9);
    expect(problems.at(-1)).toContain(`${name} has 2 more like this.`);
  });

  test("does so for Settings too, whichever of its sentences comes last", () => {
    const many = (extra: readonly (readonly (string | number)[])[]) =>
      load(
        bookWith({
          Settings: [
            ["Setting", "Value"],
            ...Array.from({ length: 9 }, () => ["Own word", "yes"]),
            ...extra.map((row) => [...row]),
          ],
        }),
      ).problems;
    // Nine rows of one setting are eight sentences, which fill what is shown.
    expect(many([])).toHaveLength(8);
    for (const one of [
      ["Own word", "no"],
      ["Meter scale", 650],
      ["Rest days", "long"],
    ]) {
      expect(many([one]).slice(8), String(one[0])).toEqual([expect.stringMatching(/^Settings has 1 more like this\./)]);
    }
  });
});

test("an error of the spreadsheet while loading is one failure with its words", () => {
  let broken = false;
  const book = readyBook({
    onCall: (name) => {
      if (broken && name === "Range.getValues") throw new Error("Service Spreadsheets failed");
    },
  });
  broken = true;
  expect(book.refusal({ ask: "load" })).toEqual({
    code: "unexpected",
    sentence:
      "The spreadsheet did not let this be done. It said: “Service Spreadsheets failed” Try again; if it keeps happening, reload the page.",
  });
});
