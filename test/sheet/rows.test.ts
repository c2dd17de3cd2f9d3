/** Rows read by heading: bad cells become sentences, and the rows around them stand. */

import { describe, expect, test } from "vitest";
import type { CellChange, CellValue } from "../../sample-sheet/workbench/standin/grid.ts";
import { findColumns, findTab, openBook } from "../../src/sheet/find.ts";
import { readRows } from "../../src/sheet/rows.ts";
import type { TabName } from "../../src/sheet/spec.ts";
import { tabSpec } from "../../src/sheet/tabs.ts";
import { dateCell, openTestBook } from "./workbook.ts";

function rowsOf(name: TabName, cells: (CellValue | CellChange)[][]) {
  const book = openTestBook({ tabs: { [name]: { cells } } });
  const spec = tabSpec(name);
  const workbook = book.workbook();
  const open = openBook(workbook, [name]);
  const tab = findTab(open, spec);
  if (!tab) throw new Error(`No ${name}`);
  const values = tab.readAll();
  return readRows(values, spec, findColumns(open, spec, tab, values[0] ?? []), workbook.dayOf);
}

/** The one problem of one cell under a heading. */
function problemOf(name: TabName, heading: string, cell: CellValue | CellChange): string | null {
  const key = tabSpec(name).key;
  const cells =
    heading === key
      ? [[key], [cell]]
      : [
          [key, heading],
          ["A", cell],
        ];
  const [row] = rowsOf(name, cells);
  expect(row?.problems.length ?? 0).toBeLessThan(2);
  return row?.problems[0]?.sentence ?? null;
}

describe("cells that can be used", () => {
  test("come as they stand, blank ones not at all, days as ISO text", () => {
    const rows = rowsOf("Waters", [
      ["Water", "Date", "Ca", "pH", "Mine"],
      ["Tap", dateCell("2026-02-28"), 84.5, "", "x"],
      ["", "", "", "", "only mine"],
      [" Rain ", "2026-03-01", 0, 5.6, ""],
    ]);
    expect(rows).toEqual([
      { row: 2, where: "row 2 of Waters", fields: { Water: "Tap", Date: "2026-02-28", Ca: 84.5 }, problems: [] },
      {
        row: 4,
        where: "row 4 of Waters",
        fields: { Water: " Rain ", Date: "2026-03-01", Ca: 0, pH: 5.6 },
        problems: [],
      },
    ]);
  });

  test("are numbers with a decimal comma or their unit, and names that are numbers", () => {
    expect(
      rowsOf("Waters", [
        ["Water", "Ca", "Alkalinity"],
        [12, "84,5", "120 mg/L"],
      ])[0]?.fields,
    ).toEqual({
      Water: "12",
      Ca: 84.5,
      Alkalinity: 120,
    });
  });

  test("are values only, whatever formula gave them", () => {
    const rows = rowsOf("Waters", [
      ["Water", "Ca"],
      [
        { value: "Tap", formula: '=IMPORTXML("x";"y")' },
        { value: 3, formula: "=1+2" },
      ],
    ]);
    expect(rows[0]?.fields).toEqual({ Water: "Tap", Ca: 3 });
  });

  test("are yes and no in words and tick boxes", () => {
    const rows = rowsOf("Events", [
      ["Event", "Disturbs roots"],
      ["A", "Yes"],
      ["B", false],
      ["C", "n"],
    ]);
    expect(rows.map(({ fields }) => fields["Disturbs roots"])).toEqual([true, false, false]);
  });
});

describe("cells that cannot be used", () => {
  test.each<[string, TabName, string, CellValue | CellChange, RegExp]>([
    ["text for a number", "Feeds", "Ca", "abc", /^Ca in row 2 of Feeds is "abc"/],
    ["a number that can be read in two ways", "Feeds", "Ca", "1,234.5", /Ca in row 2 of Feeds/],
    [
      "an error for a number",
      "Feeds",
      "Ca",
      { value: { error: "#DIV/0!" } },
      /Ca in row 2 of Feeds is an error cell \(#DIV\/0!\)/,
    ],
    ["a date for a number", "Feeds", "Ca", dateCell("2026-05-01"), /Ca in row 2 of Feeds is the date 2026-05-01/],
    ["a tick box for a number", "Feeds", "Ca", true, /Ca in row 2 of Feeds is yes/],
    ["a date in words", "Waters", "Date", "3/4/2026", /Date in row 2 of Waters is "3\/4\/2026".*2026-03-01/],
    ["a number for a date", "Waters", "Date", 46_000, /Date in row 2 of Waters is the number 46000/],
    ["a day that does not exist", "Waters", "Date", "2026-02-30", /a day that does not exist/],
    ["perhaps for yes or no", "Events", "Disturbs roots", "perhaps", /Disturbs roots in row 2 of Events is "perhaps"/],
    [
      "a date for a name",
      "Feeds",
      "Feed",
      dateCell("2010-05-05"),
      /Feed in row 2 of Feeds is the date 2010-05-05, not a name/,
    ],
    [
      "an error for a name",
      "Feeds",
      "Feed",
      { value: { error: "#REF!" } },
      /Feed in row 2 of Feeds is an error cell \(#REF!\)/,
    ],
    ["an error in a remark", "Feeds", "Note", { value: { error: "#N/A" } }, /Note in row 2 of Feeds is an error cell/],
  ])("%s", (_, name, heading, cell, sentence) => {
    expect(problemOf(name, heading, cell)).toMatch(sentence);
  });

  test("leave the rows around them in use", () => {
    const rows = rowsOf("Feeds", [
      ["Feed", "Ca"],
      ["A", 19],
      ["B", "abc"],
      ["C", 5],
    ]);
    expect(rows.map(({ fields, problems }) => [fields.Feed, fields.Ca, problems.length])).toEqual([
      ["A", 19, 0],
      ["B", "abc", 1],
      ["C", 5, 0],
    ]);
  });

  test("are aside where no arithmetic needs them", () => {
    const rows = rowsOf("Feeds", [
      ["Feed", "Price", "Ca", "Note"],
      ["A", "cheap", "lots", { value: { error: "#N/A" } }],
    ]);
    expect(rows[0]?.problems.map(({ heading, aside }) => [heading, aside])).toEqual([
      ["Ca", false],
      ["Price", true],
      ["Note", true],
    ]);
  });
});
