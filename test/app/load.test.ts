/** Loading the panel: everything in one go, and a sentence on whatever cannot be used. */

import { describe, expect, test } from "vitest";
import type { MemoryTabOptions } from "../../sample-sheet/workbench/standin/memory.ts";
import { loaded } from "../../src/app/contract.ts";
import { careEntry, dateCell, openTestBook, readyBook, serialOf, type TestBook } from "../sheet/workbook.ts";

const load = (book: TestBook) => book.reply({ ask: "load" });

/** A workbook with these tabs filled by hand, and all others set up. */
function bookWith(tabs: Readonly<Record<string, NonNullable<MemoryTabOptions["cells"]>>>): TestBook {
  const options = Object.fromEntries(Object.entries(tabs).map(([name, cells]) => [name, { cells }]));
  return readyBook({ tabs: options });
}

describe("a spreadsheet", () => {
  test("that is empty loads, and one sentence says what to do", () => {
    const reply = load(openTestBook());
    expect(loaded.safeParse(reply).success).toBe(true);
    expect(reply.plants).toEqual([]);
    expect(reply.events.map(({ event }) => event)).toContain("Repot");
    expect(reply.problems).toEqual([
      "This spreadsheet has no tab “Plants”, “Care log”, “Events”, “Feeds”, “Waters”, “Targets”, “Batch log”, “Settings”. Choose “Set up tabs” from the Stillroot menu: it adds what is missing and leaves all else as it is.",
    ]);
  });

  test("just set up loads without a word", () => {
    const reply = load(readyBook());
    expect(reply.problems).toEqual([]);
    expect(reply).toMatchObject({ today: "2026-03-10", plantTab: "Plants", who: "", people: [], meterScale: null });
    expect(reply.functions.map(({ name }) => name)).toContain("ROOT_REST");
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
      { plant: "Hoya", kind: "Hoya carnosa", place: "Bath", potMl: 800, restDays: 10, lastEvent: "Repot" },
      { plant: "Fern", kind: "", place: "", potMl: null, restDays: null, lastEvent: "" },
      { plant: "Fig", kind: "", place: "", potMl: 1.5, restDays: 0, lastEvent: "Root trim" },
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
  const log = (rows: NonNullable<MemoryTabOptions["cells"]>) =>
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

describe("feeds", () => {
  test("without analysis, organic or with a bad number stay on the shelf as they are", () => {
    const reply = load(
      bookWith({
        Feeds: [
          ["Feed", "N", "Origin", "Analysis published", "Price"],
          ["Salt", 15.5, "mineral", "yes", "dear"],
          ["Guano", 10, "organic", "yes", ""],
          ["Secret", "", "", "no", ""],
          ["Odd", "lots", "", "", ""],
          ["", 5, "", "", ""],
        ],
      }),
    );
    expect(reply.feeds.map(({ row, fields }) => [row, fields.Feed, fields.N])).toEqual([
      [2, "Salt", 15.5],
      [3, "Guano", 10],
      [4, "Secret", undefined],
      [5, "Odd", "lots"],
    ]);
    expect(reply.problems).toEqual([
      "There is no name in column Feed, row 6 of Feeds, so that row is not used.",
      expect.stringMatching(/^Price in row 2 of Feeds is "dear"/),
    ]);
  });

  test("whose grade became a date say how to type it", () => {
    const reply = load(
      bookWith({
        Feeds: [
          ["Feed", "N"],
          [dateCell("2005-10-05"), 10],
        ],
      }),
    );
    expect(reply.feeds).toEqual([]);
    expect(reply.problems).toEqual([
      expect.stringMatching(/Feed in row 2 of Feeds is the date 2005-10-05, not a name.*with ' in front/),
    ]);
  });
});

describe("waters and targets", () => {
  test("that cannot be read are left out and told; the others are there", () => {
    const reply = load(
      bookWith({
        Waters: [
          ["Water", "Ca", "pH"],
          ["Tap", 84, 7.4],
          ["Well", "hard", 7],
          ["Acid", 1, 15],
          ["tap", 90, 7],
        ],
        Targets: [
          ["Target", "N", "Ca"],
          ["Half", 105, 0],
          ["Empty", "", ""],
          ["Minus", -5, ""],
        ],
      }),
    );
    expect(reply.waters.map(({ fields }) => fields.Water)).toEqual(["Tap"]);
    expect(reply.targets.map(({ fields }) => fields)).toEqual([{ Target: "Half", N: 105, Ca: 0 }]);
    expect(reply.problems).toEqual([
      expect.stringMatching(/Ca in row 3 of Waters is "hard"/),
      expect.stringMatching(/pH in row 4 of Waters is 15/),
      "“tap” in row 5 of Waters also stands in row 2, which is the one used. Give one of them another name.",
      expect.stringMatching(/row 3 of Targets/),
      expect.stringMatching(/N in row 4 of Targets is -5/),
    ]);
  });
});

describe("batches", () => {
  test("come newest first, at most 20, hand-made ones too", () => {
    const rows = Array.from({ length: 30 }, (_, index) => [
      `batch-${index}`,
      dateCell(`2026-01-${String((index % 28) + 1).padStart(2, "0")}`),
      index,
    ]);
    const book = bookWith({ "Batch log": [["Id", "Date", "Litres"], ...rows, ["", "", 7], ["hand", "soon", 8]] });
    const reply = load(book);
    expect(reply.batches).toHaveLength(20);
    expect(reply.batches[0]).toMatchObject({ id: "batch-27", day: "2026-01-28", litres: 27 });
    expect(
      reply.batches.every((batch, index, all) => index === 0 || (batch.day ?? "") <= (all[index - 1]?.day ?? "")),
    ).toBe(true);
  });

  test("with readings that are no numbers count as not measured, and are told", () => {
    const reply = load(
      bookWith({
        "Batch log": [
          ["Id", "Date", "Measured EC", "pH"],
          ["batch-0001", dateCell("2026-03-01"), "1,6", "sour"],
        ],
      }),
    );
    expect(reply.batches[0]).toMatchObject({ measuredEcMsCm: 1.6, measuredPH: null });
    expect(reply.problems).toContainEqual(expect.stringMatching(/Measured pH in row 2 of Batch log is "sour"/));
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
