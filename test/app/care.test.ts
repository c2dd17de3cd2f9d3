/** Logging care with others about: what somebody else did that day, roots at rest, entries corrected. */

import { describe, expect, test } from "vitest";
import { careEntry, dateCell, readyBook, type TestBook } from "../sheet/workbook.ts";

type Entry = ReturnType<typeof careEntry>;
const log = (book: TestBook, who: string, entries: readonly Entry[], again?: boolean) =>
  book.reply({ ask: "log care", who, entries: [...entries], ...(again === undefined ? {} : { again }) });
const plants = (book: TestBook): unknown[] =>
  book
    .values("Care log")
    .slice(1)
    .map((row) => row[2]);

describe("somebody else logged the same that day", () => {
  test("so nothing is written, and the answer says who", () => {
    const book = readyBook();
    log(book, "Ben", [careEntry({ plant: "hoya " }), careEntry({ plant: "Fern" })]);
    const entries = ["Hoya", "Fern", "Arum"].map((plant) => careEntry({ plant }));
    expect(log(book, "Ana", entries)).toEqual({
      written: 0,
      already: 0,
      differing: [],
      doubles: [
        { plant: "Hoya", event: "Top up", day: "2026-03-10", who: "Ben", id: expect.any(String) },
        { plant: "Fern", event: "Top up", day: "2026-03-10", who: "Ben", id: expect.any(String) },
      ],
    });
    expect(plants(book)).toHaveLength(2);
    expect(log(book, "Ana", entries, true)).toEqual({ written: 3, already: 0, differing: [] });
    expect(log(book, "Ana", entries)).toEqual({ written: 0, already: 3, differing: [] });
    expect(plants(book)).toHaveLength(5);
  });

  test.each<[string, Partial<Entry>]>([
    ["another day", { day: "2026-03-09" }],
    ["another event", { event: "Flush in place" }],
    ["another plant", { plant: "Fern" }],
    ["a reading, of which there may be two", { event: "Reading" }],
    ["a note, of which there may be two", { event: "Note" }],
  ])("is not meant by %s", (_, change) => {
    const book = readyBook();
    log(book, "Ben", [careEntry(/Reading|Note/.test(change.event ?? "") ? change : {})]);
    expect(log(book, "Ana", [careEntry(change)])).toEqual({ written: 1, already: 0, differing: [] });
  });

  test("is not meant by oneself, nor by a row that was taken back", () => {
    const book = readyBook();
    const first = careEntry();
    log(book, "Ben", [first]);
    expect(log(book, " ben", [careEntry()]).written).toBe(1);
    const other = readyBook();
    log(other, "Ben", [first]);
    other.reply({ ask: "take back", who: "Ben", log: "Care log", id: "taken-back-1", takes: first.id });
    expect(log(other, "Ana", [careEntry()])).toEqual({ written: 1, already: 0, differing: [] });
  });
});

test("a row that names nobody is nobody else's", () => {
  const book = readyBook();
  log(book, "", [careEntry()]);
  expect(book.cell("Care log", 2, "Who")).toBeNull();
  expect(log(book, "Ana", [careEntry()])).toEqual({ written: 1, already: 0, differing: [] });
});

test("a second try with another amount writes nothing and names row and column, not what was typed there since", () => {
  const book = readyBook();
  const entry = careEntry();
  log(book, "Ana", [entry]);
  const corrects = book.values("Care log")[0]?.indexOf("Corrects") ?? -1;
  book.grid.tab("Care log").write(2, corrects + 1, [[{ value: "by-hand-0001" }]]);
  expect(log(book, "Ana", [entry])).toEqual({ written: 0, already: 1, differing: [] });
  const other = log(book, "Ana", [{ ...entry, amountMl: 300 }]);
  expect(other).toEqual({ written: 0, already: 1, differing: [expect.stringMatching(/row 2 .* another Amount mL\./)] });
});

test("an event that no list names is logged as it is", () => {
  const book = readyBook();
  expect(log(book, "Ana", [careEntry({ event: "Sang to it" })]).written).toBe(1);
  expect(book.cell("Care log", 2, "Event")).toBe("Sang to it");
});

describe("roots at rest", () => {
  const repotted = (day: string, settings: Readonly<Record<string, string | number>> = {}): TestBook => {
    const book = readyBook();
    for (const [name, value] of Object.entries(settings)) {
      const row = book.values("Settings").findIndex(([setting]) => setting === name) + 1;
      book.grid.tab("Settings").write(row, 2, [[{ value }]]);
    }
    log(book, "Ben", [careEntry({ event: "Repot", day, plant: "Hoya" })]);
    return book;
  };
  const trim = (change: Partial<Entry> = {}) => careEntry({ event: "Root trim", plant: "hoya", ...change });
  const ask = (entries: readonly Entry[]) => ({ ask: "log care", who: "Ana", entries: [...entries] });

  test("are not disturbed early without a reason, and nothing is written", () => {
    // 2025-12-01 to 2026-03-10: 30 + 31 + 28 + 10 = 99 days.
    const book = repotted("2025-12-01");
    expect(book.refusal(ask([trim(), careEntry({ event: "Root trim", plant: "Fern" })]))).toEqual({
      code: "no-reason",
      sentence:
        "hoya has been at rest for 99 days since “Repot”; Settings asks for 180. Say why the roots are disturbed now: rot, pests, a pot full of roots, a broken pot, or another reason. Nothing was written.",
    });
    expect(book.refusal(ask([trim({ reason: "  " })])).code).toBe("no-reason");
    expect(plants(book)).toEqual(["Hoya"]);
    const reasoned = trim({ reason: "Rot" });
    expect(log(book, "Ana", [reasoned]).written).toBe(1);
    expect(log(book, "Ana", [reasoned])).toEqual({ written: 0, already: 1, differing: [] });
  });

  test("are asked about by what the log says before that day, whatever was logged since", () => {
    const book = repotted("2025-12-01");
    expect(log(book, "Ana", [trim({ day: "2025-11-30" })]).written).toBe(1);
    expect(book.refusal(ask([trim({ day: "2025-12-02" })])).code).toBe("no-reason");
  });

  test("may be disturbed when decay is taken off, when the rest is over, and twice on one day", () => {
    const book = repotted("2025-12-01");
    expect(log(book, "Ana", [trim({ event: "Decay removed" })]).written).toBe(1);
    expect(log(repotted("2025-09-11"), "Ana", [trim()]).written).toBe(1);
    expect(log(repotted("2026-03-10"), "Ana", [trim()]).written).toBe(1);
    expect(repotted("2025-09-12").refusal(ask([trim()])).code).toBe("no-reason");
  });

  test("follow the days in Settings, in season or out of it", () => {
    expect(log(repotted("2025-12-01", { "Rest days": 99 }), "Ana", [trim()]).written).toBe(1);
    const season = { "Rest days": 300, "Rest days in season": 60, "Season months": "Oct to Mar" };
    expect(log(repotted("2025-12-01", season), "Ana", [trim()]).written).toBe(1);
    const north = { ...season, "Season months": "Apr to Sep" };
    expect(repotted("2025-12-01", north).refusal(ask([trim()])).sentence).toContain("Settings asks for 300");
    const spoilt = { "Season months": "summer" };
    expect(repotted("2025-12-01", spoilt).reply({ ask: "load" }).problems).toEqual([
      "Settings has only one of “Rest days in season” and “Season months”. Fill in both, or clear both.",
    ]);
    expect(repotted("2025-12-01", spoilt).refusal(ask([trim()])).sentence).toMatch(/^Settings has only one of/);
  });

  test("follow the household's own events", () => {
    const book = repotted("2025-12-01");
    book.grid.tab("Events").write(30, 1, [[{ value: "Haircut" }, { value: "yes" }]]);
    expect(book.refusal(ask([trim({ event: "haircut" })])).code).toBe("no-reason");
  });

  test("follow Events and Settings under names of the household's own", () => {
    const book = repotted("2025-12-01", { "Rest days": 99 });
    book.grid.tab("Events").write(30, 1, [[{ value: "Haircut" }, { value: "yes" }]]);
    book.grid.tab("Events").rename("What we do");
    book.grid.tab("Settings").rename("House rules");
    expect(log(book, "Ana", [trim()]).written).toBe(1);
    // 2026-03-10 is the day of that trim, so a day later the roots have rested for one day.
    expect(book.refusal(ask([trim({ event: "Haircut", day: "2026-03-11" })])).code).toBe("no-reason");
  });

  test("are at rest again as before once the disturbance was taken back", () => {
    const book = readyBook();
    const entry = careEntry({ event: "Repot", plant: "Hoya", day: "2026-03-01" });
    log(book, "Ana", [entry]);
    book.reply({ ask: "take back", who: "Ana", log: "Care log", id: "taken-back-1", takes: entry.id });
    expect(log(book, "Ana", [trim()]).written).toBe(1);
  });
});

describe("an entry corrected", () => {
  test("stands in place of the first, which neither asks nor counts any more", () => {
    const book = readyBook();
    const wrong = careEntry({ event: "Repot", plant: "Hoya", day: "2026-03-01" });
    log(book, "Ana", [wrong]);
    const right = careEntry({ event: "Repot", plant: "Hoya", day: "2026-03-03", corrects: wrong.id });
    expect(log(book, "Ana", [right])).toEqual({ written: 1, already: 0, differing: [] });
    expect(log(book, "Ana", [right])).toEqual({ written: 0, already: 1, differing: [] });
    const { care } = book.reply({ ask: "load" });
    expect(care.rows.map(({ id, day }) => [id, day])).toEqual([[right.id, "2026-03-03"]]);
    const late = { ...right, id: "late-correction", day: "2026-03-04" };
    expect(book.refusal({ ask: "log care", who: "Ana", entries: [late] }).code).toBe("corrected-before");
    expect(book.refusal({ ask: "log care", who: "Ben", entries: [{ ...late, corrects: right.id }] }).sentence).toMatch(
      /was logged by Ana, and only Ana can/,
    );
  });
});

describe("past days of a plant list", () => {
  const past = (entries: readonly [id: string, day: string, plant: string][]) =>
    ({
      ask: "log past",
      who: "Ana",
      entries: entries.map(([id, day, plant]) => ({ id, day, plant, event: "Repot" })),
    }) as const;
  const list = past([
    ["past-0000000001", "2025-04-01", "Hoya"],
    ["past-0000000002", "2024-04-01", "Hoya"],
    ["past-0000000003", "2025-05-01", "Fern"],
  ]);

  test("are written once, however often they are brought in, and ask for no reason", () => {
    const book = readyBook();
    expect(book.reply(list)).toEqual({ written: 3, already: 0 });
    const before = book.values("Care log");
    expect(before[1]?.slice(2, 4)).toEqual(["Hoya", "Repot"]);
    expect(book.cell("Care log", 2, "Note")).toBe("From the plant list");
    expect(book.reply(list)).toEqual({ written: 0, already: 3 });
    expect(book.values("Care log")).toEqual(before);
    const { plants: rows } = book.reply({ ask: "load" });
    expect(rows).toEqual([]);
  });

  test("leave alone what was logged by hand or taken back, under whatever Id", () => {
    const book = readyBook();
    book.grid.tab("Care log").write(2, 2, [[dateCell("2025-04-01"), { value: " hoya" }, { value: "repot" }]]);
    expect(book.reply(list)).toEqual({ written: 2, already: 1 });
    book.reply({ ask: "take back", who: "Ana", log: "Care log", id: "taken-back-1", takes: "past-0000000003" });
    const rows = book.values("Care log").length;
    expect(book.reply(list)).toEqual({ written: 0, already: 3 });
    expect(book.reply(past([["past-0000000009", "2025-05-01", "FERN"]]))).toEqual({ written: 0, already: 1 });
    expect(book.values("Care log")).toHaveLength(rows);
  });

  test("that an earlier try wrote without their Ids are finished, not doubled", () => {
    let left = 0;
    const book = readyBook({
      onCall: (name) => {
        if (name === "Range.setValues" && left > 0 && --left === 0) throw new Error("Service error: Spreadsheets");
      },
    });
    const tab = book.grid.tab("Care log");
    tab.insertColumns(2, 1);
    tab.write(1, 2, [[{ value: "Mine" }], ...Array.from({ length: 5 }, () => [{ value: "keep" }])]);
    book.reply({ ...list, entries: list.entries.slice(0, 1) });
    left = 2;
    expect(book.refusal(list).sentence).toContain("Service error: Spreadsheets");
    expect(book.values("Care log").map((row) => [row[0], row[3]])).toEqual([
      ["Id", "Plant"],
      ["past-0000000001", "Hoya"],
      [null, "Hoya"],
      [null, "Fern"],
      ...[null, null].map((none) => [none, none]),
    ]);
    expect(book.reply(list)).toEqual({ written: 2, already: 1 });
    expect(book.values("Care log").map((row) => row[0])).toEqual([
      ...["Id", "past-0000000001", "past-0000000002", "past-0000000003"],
      ...[null, null],
    ]);
  });

  test("are signed with the name kept for this person when the request has none", () => {
    const book = readyBook();
    book.reply({ ask: "set name", who: "Ben" });
    book.reply({ ...list, who: "" });
    expect(book.cell("Care log", 2, "Who")).toBe("Ben");
  });
});

test("a tab of one's own is read as it stands, days as days, errors as blanks, and nothing is written", () => {
  const book = readyBook({
    tabs: {
      Mine: {
        cells: [
          ["Wer", "", 2024],
          ["Hoya", dateCell("2025-04-01"), true],
          ["=1+1".repeat(80), "", 12.5],
        ],
      },
    },
  });
  expect(book.reply({ ask: "read list", tab: "mine" })).toEqual({
    tab: "Mine",
    headings: ["Wer", "", "2024"],
    rows: [
      ["Hoya", { day: "2025-04-01" }, true],
      ["=1+1".repeat(50), "", 12.5],
    ],
    left: 0,
  });
  expect(book.calls.some((name) => /set|insert|append/i.test(name))).toBe(false);
  expect(book.refusal({ ask: "read list", tab: "Yours" }).sentence).toMatch(/^There is no tab “Yours”/);
});
