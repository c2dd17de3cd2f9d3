/** The rows of Settings: what a new tab holds, what a person may have made of it, and where a value is written. */

import { describe, expect, test } from "vitest";
import { dayFromIso } from "../../src/core/calendar.ts";
import { openBook } from "../../src/sheet/find.ts";
import {
  readMeterScale,
  readPeople,
  refreshToday,
  requireSettings,
  type Settings,
  settingCell,
  settingRows,
  writeSettings,
} from "../../src/sheet/settings.ts";
import { refusal } from "../core/refusal.ts";
import { dateCell, openTestBook, readyBook, type TestBook } from "./workbook.ts";

type Cells = NonNullable<NonNullable<NonNullable<Parameters<typeof openTestBook>[0]>["tabs"]>[string]["cells"]>;

const TODAY = dayFromIso("2026-03-10") as number;
const bookWith = (cells: Cells): TestBook => openTestBook({ tabs: { Settings: { cells } } });
const settingsOf = (book: TestBook): Settings => requireSettings(openBook(book.workbook(), ["Settings"]));
const rowsOf = (book: TestBook): unknown[][] => book.values("Settings").map((row) => row.map((cell) => cell ?? ""));

describe("a new tab", () => {
  const rows = settingRows(TODAY);

  test("has these settings: households and their formulas go by the names", () => {
    expect(rows.map(({ setting, value }) => [setting, value])).toEqual([
      ["Today", { day: TODAY }],
      ["People", null],
      ["Meter scale", null],
      ["Scale step g", 0.1],
      ["Scale most g", null],
      ["Syringe step mL", 0.1],
      ["Syringe most mL", null],
      ["Spoons", null],
      ["Spoonfuls at most", 12],
      ["Stock solutions", null],
      // pH 5.5 to 6 [common practice, no source]
      ["pH low", 5.5],
      ["pH high", 6],
      ["EC calibration days", 90],
      ["pH calibration days", 30],
      ["Rest days", 180],
      ["Rest days in season", null],
      ["Season months", null],
      ["Top up days", 14],
      ["Flush days", 30],
      ["Change days", 90],
      ["EC ceiling", 2],
      ["Root rise %", 30],
      ["Look days", 7],
      ["Recovery days", 90],
      ["Plant list tab", null],
      ["Plant list columns", null],
    ]);
  });

  test("says beside each what it is for, and where a number has no source", () => {
    for (const { setting, value, note } of rows) {
      expect(note, setting).toMatch(/^(?:[A-Z]|500).{20,}/s);
      if (typeof value === "number" && /days|Spoonfuls|%|ceiling/.test(setting)) {
        expect(note, setting).toMatch(/Common practice, no source\.$/);
      }
    }
  });
});

describe("reading", () => {
  test("takes texts, numbers and days as they stand, without the spaces around them", () => {
    const settings = settingsOf(
      bookWith([
        ["Setting", "Value", "Note"],
        ["  People ", "  Ana, Ben "],
        ["Rest days", 200],
        ["Since", dateCell("2026-02-01")],
        ["Meter scale", ""],
        [7, "a number is no name"],
        ["", "nor is a blank"],
        ["   ", "nor are spaces"],
      ]),
    );
    expect(settings.all()).toEqual({ People: "Ana, Ben", "Rest days": "200", Since: "2026-02-01", "Meter scale": "" });
    expect(settings.text("people")).toBe("Ana, Ben");
    expect([settings.text("Rest days"), settings.text("Since"), settings.text("Nothing")]).toEqual([
      "200",
      "2026-02-01",
      "",
    ]);
    expect([settings.row("Rest days"), settings.row("Since"), settings.row("Nothing")]).toEqual([3, 4, null]);
    expect([settings.cell("Nothing").kind, settings.cell("Meter scale").kind]).toEqual(["blank", "blank"]);
    expect(settings.problems).toEqual([]);
  });

  test("does not take the heading for a setting", () => {
    const settings = settingsOf(bookWith([["Setting", "Value"]]));
    expect(settings.all()).toEqual({});
    expect(settings.row("Setting")).toBeNull();
  });

  test("counts the first of two, and tells of the other by its row", () => {
    const settings = settingsOf(
      bookWith([
        ["Setting", "Value"],
        ["pH low", 5.5],
        ["PH  LOW", 5.8],
        ["ph low", 5.9],
      ]),
    );
    expect(settings.text("pH low")).toBe("5.5");
    expect(settings.row("pH low")).toBe(2);
    expect(settings.problems).toEqual([
      expect.stringMatching(/rows 2 and 3 of/),
      expect.stringMatching(/rows 2 and 4 of/),
    ]);
  });
});

describe("writing", () => {
  const OWN: Cells = [
    ["Setting", "Value", "Note", "Mine"],
    ["People", "Ana", "", "one"],
    ["", "", "", ""],
    ["Rest days", 180, "", "three"],
  ];

  test("goes beside the setting, and below the last row where there is none", () => {
    const book = bookWith(OWN);
    writeSettings(settingsOf(book), [
      ["rest days", 200],
      ["Spoons", "Salt: 2 g"],
      ["People", null],
    ]);
    expect(rowsOf(book)).toEqual([
      ["Setting", "Value", "Note", "Mine"],
      ["People", "", "", "one"],
      ["", "", "", ""],
      ["Rest days", 200, "", "three"],
      ["Spoons", "Salt: 2 g", "", ""],
    ]);
  });

  test("does so wherever the two columns are, and writes over none between them", () => {
    for (const [head, at] of [
      [["Value", "Mine", "Setting"], 0],
      [["Setting", "Mine", "Value"], 2],
      [["Value", "Setting", "Mine"], 0],
    ] as const) {
      const book = bookWith([[...head], head.map((heading) => (heading === "Setting" ? "People" : `my ${heading}`))]);
      book.grid.tab("Settings").write(3, head.indexOf("Mine") + 1, [[{ value: "beside" }]]);
      writeSettings(settingsOf(book), [["Spoons", 3]]);
      const added = rowsOf(book).find((row) => row[head.indexOf("Setting")] === "Spoons");
      expect(added?.[at]).toBe(3);
      expect(rowsOf(book).flat()).toContain("beside");
      expect(rowsOf(book)[1]).toEqual(head.map((heading) => (heading === "Setting" ? "People" : `my ${heading}`)));
    }
  });

  test("into an empty tab begins below the heading", () => {
    const book = bookWith([["Setting", "Value"]]);
    writeSettings(settingsOf(book), [["Spoons", 3]]);
    expect(rowsOf(book)).toEqual([
      ["Setting", "Value"],
      ["Spoons", 3],
    ]);
  });

  test("of a newer version's tab is refused", () => {
    const book = readyBook();
    const tab = book.grid.tab("Settings");
    tab.putMark({ id: 99_999, key: "stillroot", column: null, value: "schema:Settings/3", visibility: "DOCUMENT" });
    const before = rowsOf(book);
    expect(refusal(() => writeSettings(settingsOf(book), [["Spoons", 3]]))).toMatch(/newer Stillroot/);
    expect(rowsOf(book)).toEqual(before);
  });
});

describe("today's date", () => {
  test("is written when another day, or no day, stands there", () => {
    for (const there of [dateCell("2026-03-09"), 46_091, "2026-03-10", ""]) {
      const book = bookWith([
        ["Setting", "Value"],
        ["Today", there],
      ]);
      expect(refreshToday(settingsOf(book), TODAY)).toBe(true);
      expect(rowsOf(book)[1]?.[1]).toBe(dateCell("2026-03-10").value);
    }
  });

  test("is left alone when it stands there", () => {
    const book = bookWith([
      ["Setting", "Value"],
      ["Today", dateCell("2026-03-10")],
    ]);
    book.calls.length = 0;
    expect(refreshToday(settingsOf(book), TODAY)).toBe(false);
    expect(book.calls.filter((name) => /set/i.test(name))).toEqual([]);
  });
});

test("people are parted by commas, semicolons and line ends, each named once", () => {
  expect(readPeople("Ana, Ben;Cleo\n Ana ,, ben,  Uncle   Max ")).toEqual(["Ana", "Ben", "Cleo", "Uncle Max"]);
  expect(readPeople("  ")).toEqual([]);
});

test("a meter shows ppm on one of three scales, or mS/cm", () => {
  expect(["500", "640", "700"].map(readMeterScale)).toEqual([500, 640, 700]);
  expect(["", "mS/cm", " MS/CM "].map(readMeterScale)).toEqual([null, null, null]);
  for (const text of ["442", "0", "ppm", "500 ppm"]) {
    expect(refusal(() => readMeterScale(text))).toContain(`“${text}”`);
  }
});

test("a typed setting is a number only when it is nothing but one", () => {
  const typed = ["12", "0.5", " 7 ", "12.50", "5 g", "1.", ".5", "-3", "1e3", "5,5", "x1", "=1+1", "", "  "];
  expect(typed.map(settingCell)).toEqual([
    12,
    0.5,
    7,
    12.5,
    "5 g",
    "1.",
    ".5",
    "-3",
    "1e3",
    "5,5",
    "x1",
    "=1+1",
    null,
    null,
  ]);
});

test("a setting that is called like the heading gets a row of its own", () => {
  const book = bookWith([["Setting", "Value"]]);
  writeSettings(settingsOf(book), [["Setting", "x"]]);
  expect(rowsOf(book)).toEqual([
    ["Setting", "Value"],
    ["Setting", "x"],
  ]);
});
