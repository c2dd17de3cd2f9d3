/** METER_HISTORY over logs as people keep them: corrected, planned, half filled in, with a typo. */

import { describe, expect, it } from "vitest";
import { call, date, outcome } from "./cells.ts";

const LOG = [
  ["Id", "Date", "Predicted EC", "Measured EC", "Measured pH", "State", "Corrects"],
  ["b1", date("2026-02-01"), 1, 1.1, 5.9, "", ""],
  ["b2", date("2026-02-08"), 1, 1.2, 6.4, "", ""],
  ["b3", date("2026-02-08"), 1, 1.02, 5.8, "mixed", "b2"],
  ["b4", date("2026-02-15"), 1, "", "", "planned", ""],
  ["b5", date("2026-02-22"), "", "0,98", "", "", ""],
];
const rows = (answer: unknown) => (answer as unknown[][]).slice(1);

describe("METER_HISTORY", () => {
  it("leaves out what was corrected, taken back or only planned", () => {
    const found = rows(call("METER_HISTORY", [LOG]));
    expect(found.map(([, ec, , , , pH]) => [ec, pH])).toEqual([
      [1.1, 5.9],
      [1.02, 5.8],
      [0.98, ""],
    ]);
  });

  it("marks calibrations, and purchases of another lot than before", () => {
    const meters = [
      ["Date", "Calibrated"],
      [date("2026-02-05"), true],
      [date("2026-02-06"), "no"],
    ];
    const bought = [
      ["Date", "Feed", "Lot"],
      [date("2026-02-10"), "Iron", "A"],
      [date("2026-02-12"), "iron ", "a"],
      [date("2026-02-14"), "Iron", "B"],
      [date("2026-02-16"), "Salt", ""],
    ];
    const found = rows(call("METER_HISTORY", [LOG, 5.4, 6.2, meters, bought]));
    // Calibrated on the 5th, so before the batch of the 8th; the lots came before the one of the 22nd.
    expect(found.map((row) => row[8])).toEqual(["", 5.4, ""]);
    expect(found.map((row) => row[9])).toEqual(["", "", 6.2]);
  });

  it("draws a row that holds one of the three numbers, and none that holds nothing", () => {
    const bare = [
      ["Date", "Predicted EC", "Measured EC", "Measured pH"],
      [date("2026-02-01"), "", "", 5.9],
      [date("2026-02-02"), 1, "", ""],
      [date("2026-02-03"), "", 1.1, ""],
      [date("2026-02-04"), "", "", ""],
      ["", "", "", ""],
    ];
    expect(rows(call("METER_HISTORY", [bare])).map(([, ec, expected, , , pH]) => [ec, expected, pH])).toEqual([
      ["", "", 5.9],
      ["", 1, ""],
      [1.1, "", ""],
    ]);
  });

  it("does not mark a day without a calibration, nor the same lot again in whatever order it was written", () => {
    const meters = [
      ["Date", "Calibrated"],
      [date("2026-02-05"), "no"],
      [date("2026-02-06"), ""],
    ];
    const bought = [
      ["Date", "Feed", "Lot"],
      // By day: lot A on 1 February and again on the 10th, so only the first is another lot.
      [date("2026-02-10"), "Iron", "A"],
      [date("2026-02-01"), "Iron", "A"],
      [date("2026-02-05"), "", "B"],
    ];
    const found = rows(call("METER_HISTORY", [LOG, 5.4, 6.2, meters, bought]));
    expect(found.map((row) => row[8])).toEqual(["", "", ""]);
    expect(found.map((row) => row[9])).toEqual([6.2, "", ""]);
    // By day A, B, A: three lots one after the other; the first came before the first batch, where nothing is drawn.
    const turns = [
      ["Date", "Feed", "Lot"],
      [date("2026-01-20"), "Iron", "A"],
      [date("2026-02-10"), "Iron", "A"],
      [date("2026-02-03"), "Iron", "B"],
    ];
    expect(rows(call("METER_HISTORY", [LOG, 5.4, 6.2, "", turns])).map((row) => row[9])).toEqual(["", 6.2, 6.2]);
  });

  it("names the cell of a calibration that is neither yes nor no", () => {
    const meters = [
      ["Date", "Calibrated"],
      [date("2026-02-05"), "perhaps"],
    ];
    expect(String(rows(call("METER_HISTORY", [LOG, "", "", meters]))[2]?.[8])).toMatch(
      /^\? Calibrated in row 2 of meters is "perhaps"/,
    );
  });

  it("says last which row it cannot read, and draws the others", () => {
    const found = rows(call("METER_HISTORY", [[...LOG, ["b6", date("2026-03-01"), 1, "lots", 5.8, "", ""]]]));
    expect(found).toHaveLength(4);
    expect(String(found[3]?.[0])).toMatch(/^\? Measured EC in row 7 of batches is "lots"/);
  });

  it("tells a row of the other tables that it cannot read in their own column", () => {
    const meters = [
      ["Date", "Calibrated"],
      ["soon", "yes"],
    ];
    const found = rows(call("METER_HISTORY", [LOG, "", "", meters]));
    expect(found).toHaveLength(3);
    expect(String(found[2]?.[8])).toMatch(/^\? Date in row 2 of meters is "soon"/);
  });

  it("refuses limits the wrong way round, and a log without its columns", () => {
    expect(outcome("METER_HISTORY", LOG, 6, 5.5)).toMatch(/The limits are 6 and 5\.5\. Give the lower one first\./);
    expect(outcome("METER_HISTORY", [["Date"], [date("2026-02-01")]])).toMatch(
      /batches has no column headed "Measured EC", "Measured pH"/,
    );
  });

  it("of an empty log is its headings", () => {
    expect(call("METER_HISTORY", [[LOG[0]]])).toHaveLength(1);
  });
});
