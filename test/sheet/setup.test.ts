/** The set-up: adds what is missing, keeps what a person wrote, and run again changes nothing. */

import { describe, expect, test } from "vitest";
import { setupWords } from "../../src/sheet/setup.ts";
import { TAB_NAMES } from "../../src/sheet/spec.ts";
import { TABS } from "../../src/sheet/tabs.ts";
import { dump } from "./dump.ts";
import { openTestBook } from "./workbook.ts";

describe("an empty spreadsheet", () => {
  test("gets every tab with its headings in order, and its own sheet is left alone", () => {
    const book = openTestBook();
    const report = book.setUp();
    expect(report.problems).toEqual([]);
    expect(report.addedTabs).toEqual([...TAB_NAMES]);
    expect(book.grid.tabs().map((tab) => tab.name())).toEqual(["Sheet1", ...TAB_NAMES]);
    for (const spec of TABS) expect(book.values(spec.name)[0]).toEqual(spec.columns.map(({ heading }) => heading));
    expect(book.values("Sheet1")).toEqual([]);
  });

  test("gets frozen headings, notes, formats, marks and warnings that never lock", () => {
    const book = openTestBook();
    book.setUp();
    for (const spec of TABS) {
      const tab = book.grid.tab(spec.name);
      expect(tab.frozenRows()).toBe(1);
      expect(tab.protections().length).toBeGreaterThan(0);
      expect(tab.protections().every(({ warningOnly }) => warningOnly)).toBe(true);
      expect(tab.marks()).toHaveLength(spec.columns.length + 2);
      spec.columns.forEach((column, index) => {
        expect(tab.note(1, index + 1)).toContain(column.help);
        if (column.kind === "day") {
          const [cells] = tab.read({ row: 2, column: index + 1, rows: 1, columns: 1 });
          expect(cells?.[0]?.format).toBe("yyyy-mm-dd");
        }
      });
    }
  });

  test("offers lists that never reject", () => {
    const book = openTestBook();
    book.setUp();
    for (const spec of TABS) {
      spec.columns.forEach((column, index) => {
        const rule = book.grid.tab(spec.name).validation(2, index + 1);
        expect(rule !== null).toBe(column.choices !== undefined || column.refersTo !== undefined);
        if (rule) expect(rule.allowInvalid).toBe(true);
        if (column.choices) expect(rule?.values).toEqual(column.choices);
      });
    }
    const careLog = book.grid.tab("Care log");
    expect(careLog.validation(careLog.rows() / 2, 3)?.values[0]).toBe(`Plants!A2:A${book.grid.tab("Plants").rows()}`);
  });

  test("gets the built-in events and the settings, with today as a plain date cell", () => {
    const book = openTestBook({ now: "2026-03-10T23:30:00Z" });
    book.setUp();
    expect(book.values("Events")).toContainEqual(["Repot", "yes"]);
    expect(book.values("Events")).toContainEqual(["Decay removed", "no"]);
    const today = book.values("Settings").findIndex((row) => row[0] === "Today") + 1;
    const [cell] = book.grid.tab("Settings").read({ row: today, column: 2, rows: 1, columns: 1 });
    // Half past midnight of the 11th in Zurich; serial 46092 is 2026-03-11.
    expect(cell?.[0]).toMatchObject({ value: 46_092, formula: "" });
  });
});

describe("run twice", () => {
  test("changes nothing at all", () => {
    const book = openTestBook();
    book.setUp();
    const before = dump(book.grid);
    const report = book.setUp();
    expect(dump(book.grid)).toBe(before);
    expect(report).toEqual({ addedTabs: [], addedHeadings: [], problems: [] });
    expect(setupWords(report)).toContain("nothing had to be added");
  });

  test("writes nothing the second time", () => {
    const book = openTestBook();
    book.setUp();
    book.calls.length = 0;
    book.setUp();
    expect(book.calls.filter((name) => /\.(set|insert|add|protect)/.test(name))).toEqual([]);
  });

  test("changes nothing after columns were moved, renamed and inserted", () => {
    const book = openTestBook();
    book.setUp();
    const log = book.grid.tab("Care log");
    log.moveColumn(3, 9);
    log.insertColumns(2, 1);
    log.write(1, 2, [[{ value: "Mood" }]]);
    log.write(1, log.extent().column, [[{ value: "What for" }]]);
    book.setUp();
    const before = dump(book.grid);
    book.setUp();
    expect(dump(book.grid)).toBe(before);
    expect(book.values("Care log")[0]?.filter((heading) => heading === "Corrects")).toEqual([]);
  });
});

describe("what a person wrote", () => {
  test("a tab of the same name with columns of its own keeps every cell, and gets what is missing on the right", () => {
    const cells = [
      ["Name", "Species", "Watered by"],
      ["Fred", "Ficus", "Ana"],
      ["", "Hoya", "Ben"],
    ];
    const book = openTestBook({ tabs: { Plants: { cells } } });
    const report = book.setUp();
    expect(report.problems).toEqual([]);
    const values = book.values("Plants");
    expect(values[0]).toEqual(["Name", "Species", "Watered by", "Place", "Pot mL", "Medium", "Since", "Note"]);
    expect(values.slice(1).map((row) => row.slice(0, 3).map((cell) => cell ?? ""))).toEqual(cells.slice(1));
    expect(report.addedHeadings).toContain("Place to Plants");
  });

  test("notes, formats, rules and a second frozen row stay as they are", () => {
    const book = openTestBook({ tabs: { Events: { cells: [["Event", "Disturbs roots"]] } } });
    const tab = book.grid.tab("Events");
    tab.setNote(1, 1, "ours");
    tab.freezeRows(2);
    const rule = { kind: "list" as const, values: ["ja", "nein"], allowInvalid: false, help: "" };
    tab.setValidation({ row: 2, column: 2, rows: 900, columns: 1 }, rule);
    book.grid.addTab("Waters", {
      cells: [
        ["Water", "Date"],
        ["Rain", { value: 45_000, format: "d/m/yy" }],
      ],
    });
    const report = book.setUp();
    expect(report.problems).toHaveLength(1);
    expect(report.problems[0]).toMatch(/cell B2 violates the data validation rules/);
    expect(report.addedTabs).toContain("Settings");
    expect(tab.note(1, 1)).toBe("ours");
    expect(tab.frozenRows()).toBe(2);
    expect(tab.validation(2, 2)).toEqual(rule);
    const [cells] = book.grid.tab("Waters").read({ row: 2, column: 2, rows: 1, columns: 1 });
    expect(cells?.[0]?.format).toBe("d/m/yy");
  });

  test("a list of events that was cut down is not filled up again", () => {
    const book = openTestBook({
      tabs: {
        Events: {
          cells: [
            ["Event", "Disturbs roots"],
            ["Bath", "yes"],
          ],
        },
      },
    });
    book.setUp();
    expect(book.values("Events")).toEqual([
      ["Event", "Disturbs roots"],
      ["Bath", "yes"],
    ]);
  });

  test("settings that were changed stay, and only absent ones are added below", () => {
    const cells = [
      ["Setting", "Value"],
      ["pH low", 5.8],
      ["Radio", "on"],
    ];
    const book = openTestBook({ tabs: { Settings: { cells } } });
    book.setUp();
    const values = book.values("Settings").map((row) => row.slice(0, 2));
    expect(values.slice(0, 3)).toEqual(cells);
    expect(values.filter(([name]) => name === "pH low")).toHaveLength(1);
    expect(values.some(([name]) => name === "People")).toBe(true);
  });

  test("content beyond the last heading is not written over", () => {
    const book = openTestBook({ tabs: { Targets: { cells: [["Target"], ["Half", "", "", "a remark"]] } } });
    book.setUp();
    expect(book.values("Targets")[1]?.[3]).toBe("a remark");
    expect(book.values("Targets")[0]?.[4]).toBe("N");
  });

  test("merged cells where headings belong are left alone and told", () => {
    const merges = [{ row: 1, column: 1, rows: 1, columns: 30 }];
    const book = openTestBook({ tabs: { Feeds: { cells: [["My shelf"]], columns: 40, merges } } });
    const report = book.setUp();
    expect(report.problems.join()).toMatch(/Row 1 of “Feeds” has merged cells/);
    expect(book.values("Feeds")).toEqual([["My shelf"]]);
  });

  test("two columns with one heading are left alone and told", () => {
    const book = openTestBook({
      tabs: {
        Feeds: {
          cells: [
            ["Feed", "Ca", "Ca"],
            ["A", 1, 2],
          ],
        },
      },
    });
    const report = book.setUp();
    expect(report.problems).toEqual([
      "“Feeds” has the heading “Ca” in columns B and C. Rename the one that is not meant.",
    ]);
    expect(book.values("Feeds")[0]?.filter((heading) => heading === "Ca")).toHaveLength(2);
  });

  test("a plant list of one's own stands for Plants, which is then not made", () => {
    const book = openTestBook({
      tabs: {
        Green: {
          cells: [
            ["What", "Where"],
            ["Fern", "Bath"],
          ],
        },
        Settings: {
          cells: [
            ["Setting", "Value"],
            ["Plant list tab", "Green"],
            ["Plant list columns", 'Plant: "What"'],
          ],
        },
      },
    });
    const report = book.setUp();
    expect(report.addedTabs).not.toContain("Plants");
    expect(book.values("Green")).toEqual([
      ["What", "Where"],
      ["Fern", "Bath"],
    ]);
    expect(book.grid.tab("Care log").validation(2, 3)?.values[0]).toMatch(/Green'?!A2/);
  });
});

describe("formulas of the add-on", () => {
  test("get a warning, which grows with them; a person's own do not", () => {
    const formula = (text: string) => ({ value: 1, formula: text });
    const book = openTestBook({
      tabs: {
        Plants: {
          cells: [
            ["Plant", "Rest", "Mine"],
            ["A", formula("=ROOT_REST(A2,Log!A:C,B1)"), formula("=1+1")],
            ["B", formula("=ROOT_REST(A3,Log!A:C,B1)"), formula("=1+2")],
          ],
        },
      },
    });
    book.setUp();
    const tab = book.grid.tab("Plants");
    const blocks = () =>
      tab
        .protections()
        .filter(({ description }) => /formulas/.test(description))
        .map(({ area }) => area);
    expect(blocks()).toEqual([{ row: 2, column: 2, rows: 2, columns: 1 }]);
    tab.write(4, 2, [[formula("=root_rest(A4,Log!A:C,B1)")]]);
    book.setUp();
    expect(blocks()).toEqual([{ row: 2, column: 2, rows: 3, columns: 1 }]);
    const before = dump(book.grid);
    book.setUp();
    expect(dump(book.grid)).toBe(before);
  });
});
