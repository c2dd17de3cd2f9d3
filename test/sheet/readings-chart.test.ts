/** The chart of readings over time: one tab, one formula, one chart, and never a second of any. */

import { describe, expect, test } from "vitest";
import { openTestBook, readyBook, type TestBook } from "./workbook.ts";

const ask = { ask: "draw chart" } as const;
const TAB = "Readings over time";
function sheetOf(book: TestBook, name = TAB) {
  const sheet = book.host.SpreadsheetApp.getActive().getSheetByName(name);
  if (!sheet) throw new Error(`There should be a tab ${name}.`);
  return sheet;
}
const columnsRead = (book: TestBook, at = 0) =>
  sheetOf(book)
    .getCharts()
    [at]?.getRanges()
    .map((range) => range.getColumn());
const tabs = (book: TestBook) => book.grid.tabs().map((tab) => tab.name());

describe("the tab", () => {
  test("is made with one formula over the logs and the limits, and a chart over all of its columns", () => {
    const book = readyBook();
    const before = tabs(book);
    expect(book.reply(ask).sentence).toBe(
      "Drawn on a tab of its own, “Readings over time”. It follows the log by itself.",
    );
    expect(tabs(book)).toEqual([...before, TAB]);
    expect(sheetOf(book).getRange(1, 1).getFormula()).toMatch(
      /^=METER_HISTORY\('Batch log'!A1:[A-Z]+, 'Settings'!\$B\$\d+, 'Settings'!\$B\$\d+, 'Meter log'!A1:[A-Z]+, 'Purchases'!A1:[A-Z]+\)$/,
    );
    const formats = sheetOf(book).getRange(2, 1, 1, 10).getNumberFormats()[0];
    expect(formats).toEqual(["yyyy-mm-dd", ...Array(4).fill("0.00"), ...Array(5).fill("0.0#")]);
    expect(columnsRead(book)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    const [chart, second] = sheetOf(book).getCharts();
    expect(second).toBeUndefined();
    expect(chart?.getRanges().every((range) => range.getNumRows() === sheetOf(book).getMaxRows())).toBe(true);
    expect(chart?.getOptions().get("title")).toBe("EC and pH of the batches");
    expect(chart?.getOptions().get("series")).toMatchObject({
      0: { targetAxisIndex: 0, pointSize: 5 },
      4: { targetAxisIndex: 1, pointSize: 5 },
      5: { lineDashStyle: [4, 4] },
      8: { lineWidth: 0, pointShape: "diamond" },
    });
    expect(chart?.getContainerInfo().getAnchorColumn()).toBeGreaterThan(10);
  });

  test("asked for again stays the one, also under another name", () => {
    const book = readyBook();
    book.reply(ask);
    sheetOf(book).setName("Wall of numbers");
    const before = tabs(book);
    expect(book.reply(ask).sentence).toBe("The chart on “Wall of numbers” is up to date.");
    expect(tabs(book)).toEqual(before);
    expect(sheetOf(book, "Wall of numbers").getCharts()).toHaveLength(1);
  });

  test("whose formula lost a range gets it again", () => {
    const book = readyBook();
    book.reply(ask);
    sheetOf(book).getRange(1, 1).setFormula("=METER_HISTORY(#REF!)");
    expect(book.reply(ask).sentence).toBe(
      "“Readings over time” has a formula with the right ranges again. The chart on “Readings over time” is up to date.",
    );
    expect(sheetOf(book).getRange(1, 1).getFormula()).toContain("'Batch log'!A1:");
  });

  test("of that name that holds something else is left as it is", () => {
    const book = readyBook({ tabs: { [TAB]: { cells: [["mine"]] } } });
    expect(book.ask(ask)).toMatchObject({ ok: false, code: "board-taken" });
    expect(sheetOf(book).getCharts()).toEqual([]);
  });

  test("does without the Meter log, the purchases and the limits", () => {
    const book = readyBook();
    const app = book.host.SpreadsheetApp.getActive();
    for (const name of ["Meter log", "Purchases"]) app.deleteSheet(sheetOf(book, name));
    for (const [index, row] of book.values("Settings").entries()) {
      if (row[0] === "pH low") book.grid.tab("Settings").deleteRows(index + 1, 1);
    }
    book.reply(ask);
    expect(sheetOf(book).getRange(1, 1).getFormula()).toMatch(
      /^=METER_HISTORY\('Batch log'!A1:[A-Z]+, , 'Settings'!\$B\$\d+\)$/,
    );
  });

  test("without the Batch log is refused in a sentence, and nothing is made", () => {
    const book = openTestBook();
    expect(book.ask(ask)).toMatchObject({ ok: false, code: "no-tab" });
    expect(tabs(book)).toEqual(["Sheet1"]);
  });
});

describe("the chart", () => {
  test("has EC and its limits on the left, pH and its limits on the right, limits dashed, and marks without a line", () => {
    const book = readyBook();
    book.reply(ask);
    const options = sheetOf(book).getCharts()[0]?.getOptions();
    type Series = { targetAxisIndex: number; lineDashStyle?: readonly number[]; lineWidth?: number };
    const series = Object.values(options?.get("series") as Record<string, Series>);
    expect(series.map(({ targetAxisIndex }) => (targetAxisIndex === 0 ? "EC" : "pH")).join(" ")).toBe(
      "EC EC EC EC pH pH pH pH pH",
    );
    const looks = series.map(({ lineDashStyle, lineWidth }) =>
      lineDashStyle ? "limit" : lineWidth === 0 ? "mark" : "line",
    );
    expect(looks.join(" ")).toBe("line limit limit limit line limit limit mark mark");
    expect(options?.get("vAxes")).toMatchObject({ 0: { title: "EC, mS/cm" }, 1: { title: "pH" } });
  });

  test("that could not be drawn at first is drawn on the tab that is there, whose formats stay a person's", () => {
    let fail = false;
    const book = readyBook({
      onCall: (name) => {
        if (fail && name === "Sheet.insertChart") throw new Error("Service Spreadsheets failed.");
      },
    });
    fail = true;
    expect(book.ask(ask).ok).toBe(false);
    expect(sheetOf(book).getCharts()).toEqual([]);
    fail = false;
    sheetOf(book).getRange(2, 2).setNumberFormat("0.000");
    expect(book.reply(ask).sentence).toBe("Drawn on “Readings over time”.");
    expect(sheetOf(book).getCharts()).toHaveLength(1);
    expect(sheetOf(book).getRange(2, 2).getNumberFormats()).toEqual([["0.000"]]);
  });

  test("keeps the title and the place that a person gave it, and is still the one", () => {
    const book = readyBook();
    book.reply(ask);
    const [chart] = sheetOf(book).getCharts();
    if (!chart) throw new Error("There should be a chart.");
    sheetOf(book).updateChart(chart.modify().asLineChart().setOption("title", "Ours").setPosition(5, 2, 0, 0).build());
    book.reply(ask);
    const after = sheetOf(book).getCharts();
    expect(after).toHaveLength(1);
    expect(after[0]?.getOptions().get("title")).toBe("Ours");
    expect(after[0]?.getContainerInfo().getAnchorRow()).toBe(5);
  });

  test("of somebody else's is left alone", () => {
    const book = readyBook();
    book.reply(ask);
    const sheet = sheetOf(book);
    const theirs = sheet.newChart().asLineChart().addRange(sheet.getRange("B:B")).setOption("title", "Theirs").build();
    sheet.insertChart(theirs);
    book.reply(ask);
    expect(sheet.getCharts().map((chart) => chart.getOptions().get("title"))).toEqual([
      "EC and pH of the batches",
      "Theirs",
    ]);
    expect(columnsRead(book, 1)).toEqual([2]);
  });
});
