/** The chart on the Batch log's tab: one, wherever the columns are, and never a second. */

import { describe, expect, test } from "vitest";
import { openTestBook, readyBook, type TestBook } from "./workbook.ts";

const ask = { ask: "draw chart" } as const;
const logOf = (book: TestBook) => {
  const sheet = book.host.SpreadsheetApp.getActive().getSheetByName("Batch log");
  if (!sheet) throw new Error("There should be a Batch log.");
  return sheet;
};
/** Headings of the columns that a chart reads. */
const read = (book: TestBook, at = 0) =>
  logOf(book)
    .getCharts()
    [at]?.getRanges()
    .map((range) => book.values("Batch log")[0]?.[range.getColumn() - 1]);

describe("the chart", () => {
  test("is drawn over whole columns, days first, beside what is there", () => {
    const book = readyBook();
    expect(book.reply(ask).sentence).toBe("Drawn on “Batch log”, to the right of its columns. Move it where you like.");
    const [chart, second] = logOf(book).getCharts();
    expect(second).toBeUndefined();
    expect(read(book)).toEqual(["Date", "Measured EC", "Predicted EC", "Measured pH"]);
    expect(chart?.getRanges().every((range) => range.getNumRows() === logOf(book).getMaxRows())).toBe(true);
    expect(chart?.getOptions().get("title")).toBe("EC and pH of the batches");
    expect(chart?.getOptions().get("vAxes")).toEqual({
      0: { title: "EC, mS/cm" },
      1: { title: "pH (fine: 5.5 to 6.5)" },
    });
    expect(chart?.getContainerInfo().getAnchorColumn()).toBeGreaterThanOrEqual(logOf(book).getLastColumn());
  });

  test("is brought up to date the next time, with the columns where they are then", () => {
    const book = readyBook();
    book.reply(ask);
    book.grid.tab("Batch log").moveColumn(2, 9);
    expect(book.reply(ask).sentence).toBe("The chart on “Batch log” is up to date.");
    expect(logOf(book).getCharts()).toHaveLength(1);
    expect(read(book)).toEqual(["Date", "Measured EC", "Predicted EC", "Measured pH"]);
  });

  test("keeps the title and the place that a person gave it, and is still the one", () => {
    const book = readyBook();
    book.reply(ask);
    const [chart] = logOf(book).getCharts();
    if (!chart) throw new Error("There should be a chart.");
    logOf(book).updateChart(chart.modify().asLineChart().setOption("title", "Ours").setPosition(5, 2, 0, 0).build());
    book.reply(ask);
    const after = logOf(book).getCharts();
    expect(after).toHaveLength(1);
    expect(after[0]?.getOptions().get("title")).toBe("Ours");
    expect(after[0]?.getContainerInfo().getAnchorRow()).toBe(5);
  });

  test("leaves a chart of somebody else's alone", () => {
    const book = readyBook();
    const sheet = logOf(book);
    const theirs = sheet.newChart().asLineChart().addRange(sheet.getRange("B:B")).setOption("title", "Theirs").build();
    sheet.insertChart(theirs);
    book.reply(ask);
    expect(sheet.getCharts().map((chart) => chart.getOptions().get("title"))).toEqual([
      "Theirs",
      "EC and pH of the batches",
    ]);
    expect(read(book)).toEqual(["Date"]);
  });

  test("fits on a grid that has no free column", () => {
    const book = readyBook();
    const sheet = logOf(book);
    const free = sheet.getMaxColumns() - sheet.getLastColumn();
    if (free > 0) book.grid.tab("Batch log").deleteColumns(sheet.getLastColumn() + 1, free);
    expect(book.reply(ask).sentence).toMatch(/^Drawn/);
  });

  test("without its tab or a column is refused in a sentence, and nothing is drawn", () => {
    expect(openTestBook().ask(ask)).toMatchObject({ ok: false, code: "no-tab" });
    const book = readyBook();
    book.grid.tab("Batch log").deleteColumns((book.values("Batch log")[0] ?? []).indexOf("Measured pH") + 1, 1);
    expect(book.ask(ask)).toMatchObject({ ok: false, code: "no-column" });
    expect(logOf(book).getCharts()).toEqual([]);
  });
});
