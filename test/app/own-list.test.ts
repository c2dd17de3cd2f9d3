/** A plant list of one's own: chosen once, kept in Settings, used instead of Plants. */

import { describe, expect, test } from "vitest";
import { columnMapText, parseColumnMap } from "../../src/sheet/column-map.ts";
import { careEntry, dateCell, readyBook, type TestBook } from "../sheet/workbook.ts";

const COLUMNS = { Plant: "Wer", Kind: "Was; genau", Place: "", "Pot mL": "Topf", Medium: "", Since: "", Note: "" };
const CELLS = [
  ["Nr", "Topf", "Wer", "Was; genau"],
  [1, 800, "Hoya", "Hoya carnosa"],
  [2, "", "Farn", ""],
];
const choose = (columns: Record<string, string> = COLUMNS, tab = "Grün") =>
  ({ ask: "use plant list", tab, columns }) as const;

function withList(): TestBook {
  return readyBook({ tabs: { Grün: { cells: CELLS } } });
}

describe("looking at tabs", () => {
  test("lists those with headings, and how many rows they have", () => {
    const { tabs } = withList().reply({ ask: "look at tabs" });
    expect(tabs[0]).toEqual({ tab: "Grün", headings: ["Nr", "Topf", "Wer", "Was; genau"], rows: 2 });
    expect(tabs.map(({ tab }) => tab)).toContain("Plants");
  });

  test("takes texts and numbers for headings, and counts rows in which anything stands", () => {
    const cells = [
      ["  ", 2024, true, dateCell("2026-03-01"), "Wer", ""],
      ["", "", "", "", "", 0],
      ["", "", "", "", "", ""],
      ["", "", "", "", "Hoya", ""],
    ];
    const book = readyBook({ tabs: { Odd: { cells }, Ticks: { cells: [[true], ["Hoya"]] } } });
    const { tabs } = book.reply({ ask: "look at tabs" });
    expect(tabs[0]).toEqual({ tab: "Odd", headings: ["2024", "Wer"], rows: 2 });
    const names = book.grid.tabs().map((tab) => tab.name());
    expect(tabs.map(({ tab }) => tab)).toEqual(names.filter((name) => name !== "Ticks"));
  });

  test("leaves empty tabs out", () => {
    expect(
      readyBook()
        .reply({ ask: "look at tabs" })
        .tabs.map(({ tab }) => tab),
    ).not.toContain("Sheet1");
  });
});

test("a long, wide tab is read as far as 6,000 rows, 60 columns and 200 letters a cell, and the rest is counted", () => {
  const wide = Array.from({ length: 61 }, (_, at) => `h${at + 1}`);
  const long = ["x".repeat(201), ...Array.from({ length: 60 }, (_, at) => at)];
  const cells = [wide, long, ...Array.from({ length: 6002 }, (_, at) => [`Plant ${at}`])];
  const read = (count: number) =>
    readyBook({ tabs: { Big: { cells: cells.slice(0, count + 1), rows: count + 1 } } }).reply({
      ask: "read list",
      tab: "Big",
    });
  const big = read(6003);
  expect(big.headings).toEqual(wide.slice(0, 60));
  expect(big.rows).toHaveLength(6000);
  expect(big.rows[0]).toEqual(["x".repeat(200), ...Array.from({ length: 59 }, (_, at) => at)]);
  expect(readyBook().reply({ ask: "read list", tab: "Sheet1" })).toMatchObject({ headings: [], rows: [], left: 0 });
  expect([big.left, read(6001).left, read(6000).left, read(5).left]).toEqual([3, 1, 0, 0]);
});

describe("the chosen list", () => {
  test("is used on loading, with its own headings", () => {
    const book = withList();
    expect(book.reply(choose())).toEqual({ plantTab: "Grün", plants: 2 });
    book.reply({
      ask: "log care",
      who: "",
      entries: [careEntry({ plant: "hoya", event: "Repot", day: "2026-03-01" })],
    });
    const reply = book.reply({ ask: "load" });
    expect(reply.plantTab).toBe("Grün");
    expect(reply.plants).toEqual([
      { plant: "Hoya", kind: "Hoya carnosa", place: "", potMl: 800, medium: "", restDays: 9, lastEvent: "Repot" },
      { plant: "Farn", kind: "", place: "", potMl: null, medium: "", restDays: null, lastEvent: "" },
    ]);
    expect(reply.problems).toEqual([]);
  });

  test("keeps every cell, note and frozen row as it was", () => {
    const book = withList();
    book.reply(choose());
    book.setUp();
    const tab = book.grid.tab("Grün");
    expect(book.values("Grün").map((row) => row.map((cell) => cell ?? ""))).toEqual(CELLS);
    expect([tab.note(1, 1), tab.frozenRows(), tab.protections()]).toEqual(["", 0, []]);
  });

  test("is offered in the care log", () => {
    const book = withList();
    book.reply(choose());
    expect(book.grid.tab("Care log").validation(2, 3)?.values[0]).toMatch(/Grün'?!C2:C/);
  });

  test("is offered in the care log also where that was renamed", () => {
    const book = withList();
    const log = book.grid.tab("Care log");
    log.write(1, 3, [[{ value: "Who is it" }]]);
    log.rename("Our log");
    book.reply(choose());
    expect(log.validation(2, 3)?.values[0]).toMatch(/Grün'?!C2:C/);
  });

  test("is kept readably in Settings, and chosen again without another row", () => {
    const book = withList();
    book.reply(choose());
    const before = book.values("Settings").length;
    book.reply(choose({ Plant: "Nr" }));
    const values = book.values("Settings");
    expect(values).toHaveLength(before);
    expect(values.find(([name]) => name === "Plant list tab")?.[1]).toBe("Grün");
    expect(values.find(([name]) => name === "Plant list columns")?.[1]).toBe('Plant: "Nr"');
  });

  test("gets its rows in Settings where they are not there", () => {
    const book = readyBook({ tabs: { Grün: { cells: CELLS } } });
    const settings = book.grid.tab("Settings");
    const from = book.values("Settings").findIndex(([name]) => name === "Plant list tab") + 1;
    settings.deleteRows(from, 2);
    book.reply(choose());
    expect(book.reply({ ask: "load" }).plantTab).toBe("Grün");
  });

  test("gives way to Plants when that is chosen", () => {
    const book = withList();
    book.reply(choose());
    book.reply(choose({ Plant: "Plant" }, "Plants"));
    expect(book.reply({ ask: "load" }).plantTab).toBe("Plants");
    expect(book.values("Settings").find(([name]) => name === "Plant list tab")?.[1]).toBeNull();
  });

  test("may be Plants itself with other columns, which are then kept as well", () => {
    const book = withList();
    const plants = (columns: Record<string, string>) => {
      book.reply(choose({ Plant: "", Kind: "", ...columns }, " plants "));
      return book.values("Settings").find(([name]) => name === "Plant list columns")?.[1];
    };
    expect(plants({ Plant: " Plant", Kind: "KIND" })).toBeNull();
    expect(plants({ Plant: "Plant", Kind: "Place" })).toBe('Plant: "Plant"; Kind: "Place"');
    expect(book.values("Settings").find(([name]) => name === "Plant list tab")?.[1]).toBe("Plants");
  });

  test("that is Plants itself gets no marks of a list, and one with our headings is still a list of one's own", () => {
    const book = readyBook({ tabs: { Mine: { cells: [["Plant"], ["Hoya"]] } } });
    book.reply(choose({ Plant: "Plant" }, "Plants"));
    const listMarks = () =>
      book.grid.tabs().flatMap((tab) => tab.marks().filter(({ value }) => value.startsWith("list:")));
    expect(listMarks()).toEqual([]);
    book.grid.removeTab(book.grid.tab("Plants").id);
    book.reply(choose({ Plant: "Plant" }, "Mine"));
    expect(listMarks()).toHaveLength(2);
    expect(book.reply({ ask: "load" })).toMatchObject({ plantTab: "Mine", plants: [{ plant: "Hoya" }] });
  });

  test("is kept by its headings without the spaces that were sent around them", () => {
    const book = withList();
    book.reply(choose({ Plant: " Wer ", Kind: "  " }));
    expect(book.values("Settings").find(([name]) => name === "Plant list columns")?.[1]).toBe('Plant: "Wer"');
    expect(book.refusal(choose({ Plant: " " })).code).toBe("no-plant-column");
  });

  test("gets the marks it lacks: of a column that moved, one chosen for something else, a new tab of that name", () => {
    const book = withList();
    const marks = () =>
      book.grid
        .tab("Grün")
        .marks()
        .map(({ column, value }) => `${column} ${value}`);
    book.reply(choose({ Plant: "Wer" }));
    expect(marks()).toEqual(["null list:Grün", "3 list:Grün/Plant=Wer"]);
    book.grid.tab("Grün").write(1, 3, [[{ value: "Alt" }, { value: "Wer" }]]);
    book.reply(choose({ Plant: "Wer", Kind: "Alt" }));
    expect(marks()).toEqual(expect.arrayContaining(["4 list:Grün/Plant=Wer", "3 list:Grün/Kind=Alt"]));
    book.reply(choose({ Plant: "Wer", Place: "Alt" }));
    expect(marks()).toContain("3 list:Grün/Place=Alt");
    book.grid.tab("Grün").rename("Blau");
    book.grid.addTab("Grün", { cells: [["", "", "", "Wer"]] });
    book.reply(choose({ Plant: "Wer" }));
    expect(marks()).toEqual(["null list:Grün", "4 list:Grün/Plant=Wer"]);
  });

  test("counts the plants that have a name, and gets each of its marks once", () => {
    const book = withList();
    book.grid.tab("Grün").write(4, 1, [[{ value: 3 }], [{ value: 4 }, { value: 5 }, { value: "Moos" }]]);
    expect(book.reply(choose())).toEqual({ plantTab: "Grün", plants: 3 });
    const marks = () => book.grid.tab("Grün").marks();
    const before = marks();
    // The tab itself, and a mark for each of the three columns chosen.
    expect(before.map(({ column }) => column).sort()).toEqual([2, 3, 4, null].sort());
    book.reply(choose());
    expect(marks()).toEqual(before);
  });

  test("is chosen without a Care log, or one without plants", () => {
    const book = withList();
    const log = book.grid.tab("Care log");
    log.deleteColumns(3, 1);
    const rules = () => Array.from({ length: log.columns() }, (_, at) => log.validation(2, at + 1));
    const before = rules();
    expect(book.reply(choose())).toEqual({ plantTab: "Grün", plants: 2 });
    expect(rules()).toEqual(before);
    book.grid.removeTab(book.grid.tab("Care log").id);
    expect(book.reply(choose({ Plant: "Nr" }))).toEqual({ plantTab: "Grün", plants: 2 });
  });

  test("cannot be chosen by a heading that it has no more", () => {
    const book = withList();
    book.reply(choose());
    book.grid.tab("Grün").write(1, 3, [[{ value: "Name" }]]);
    expect(book.refusal(choose()).sentence).toContain("“Grün” has no column “Wer”, which was chosen for Plant");
  });

  test("is found after its tab and its column were renamed", () => {
    const book = withList();
    book.reply(choose());
    book.grid.tab("Grün").write(1, 3, [[{ value: "Name" }]]);
    book.grid.tab("Grün").rename("Blau");
    const reply = book.reply({ ask: "load" });
    expect(reply.plants.map(({ plant }) => plant)).toEqual(["Hoya", "Farn"]);
    expect(reply).toMatchObject({ plantTab: "Blau", problems: [] });
  });

  test("goes by the column that has the chosen heading now", () => {
    const book = withList();
    book.reply(choose());
    const tab = book.grid.tab("Grün");
    tab.write(1, 3, [[{ value: "Alt" }]]);
    tab.write(1, 5, [[{ value: "Wer" }], [{ value: "Neu" }]]);
    expect(book.reply({ ask: "load" }).plants.map(({ plant }) => plant)).toEqual(["Neu"]);
  });

  test("that lost a heading or its tab says what to do", () => {
    const book = withList();
    book.reply(choose());
    book.grid.tab("Grün").write(1, 3, [[{ value: null }]]);
    expect(book.reply({ ask: "load" }).problems).toEqual([
      "“Grün” has no column “Wer”, which was chosen for Plant. Give the column that heading again, or choose the plant list again in the panel.",
    ]);
    book.grid.removeTab(book.grid.tab("Grün").id);
    expect(book.reply({ ask: "load" }).problems).toEqual([
      expect.stringMatching(/^There is no tab “Grün”, which was chosen as the plant list/),
    ]);
  });
});

describe("refused, with nothing kept:", () => {
  test.each<[string, ReturnType<typeof choose>, RegExp, string]>([
    ["a tab that is not there", choose(COLUMNS, "Blau"), /There is no tab “Blau”/, "no-plant-list"],
    [
      "a heading that is not there",
      choose({ Plant: "Wie" }),
      /“Grün” has no column “Wie”, which was chosen for Plant/,
      "plant-list",
    ],
    [
      "no column of names",
      choose({ Plant: "", Kind: "Wer" }),
      /Say which column holds the plants' names/,
      "no-plant-column",
    ],
    [
      "one column for two",
      choose({ Plant: "Wer", Kind: "wer" }),
      /“wer” was chosen for both Plant and Kind/,
      "column-shared",
    ],
  ])("%s", (_, request, sentence, code) => {
    const book = withList();
    expect(book.refusal(request)).toEqual({ code, sentence: expect.stringMatching(sentence) });
    expect(book.reply({ ask: "load" }).plantTab).toBe("Plants");
  });

  test("a heading that stands twice", () => {
    const book = withList();
    book.grid.tab("Grün").write(1, 1, [[{ value: "wer" }]]);
    expect(book.refusal(choose()).sentence).toMatch(/has the heading “Wer” in columns A and C/);
  });
});

describe("the text in Settings", () => {
  test("is read back whatever the headings hold", () => {
    const map = { Plant: 'a "b"; c: d', Kind: "x\ny", Note: "=1+1" };
    expect(parseColumnMap(columnMapText(map))).toEqual(map);
  });

  test.each(["Plant = Wer", 'Place: "Room"', 'Plant: "Wer', 'Plant: "Wer"; Colour: "x"', 'Plant: "\\q"'])(
    "%s is refused",
    (text) => {
      expect(() => parseColumnMap(text)).toThrow(/Choose your plant list again in the panel/);
    },
  );
});
