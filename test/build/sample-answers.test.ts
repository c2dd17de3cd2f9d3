/** The reader of sample formulas and their answers at build time, as a spreadsheet would give them. */

import { describe, expect, test } from "vitest";
import { answerTabs } from "../../src/build/sample-answers.ts";
import type { SampleRow, SampleTab } from "../../src/build/sample-cell.ts";
import { csvOf } from "../../src/build/sample-csv.ts";
import { readFormula, readRange } from "../../src/build/sample-formula.ts";

const tab = (name: string, rows: readonly SampleRow[]): SampleTab => ({ name, rows });
const shown = (...tabs: SampleTab[]) => answerTabs(tabs).map((answered) => answered.shown);

describe("Ranges", () => {
  test("open and closed, quoted tabs, dollar signs", () => {
    expect(readRange("A1:A")).toEqual({ tab: null, firstColumn: 0, lastColumn: 0, firstRow: 0, lastRow: null });
    expect(readRange("'Care log'!$B$2:AA")).toEqual({
      tab: "Care log",
      firstColumn: 1,
      lastColumn: 26,
      firstRow: 1,
      lastRow: null,
    });
    expect(readRange("Settings!$B$2")).toMatchObject({ tab: "Settings", firstRow: 1, lastRow: 1, lastColumn: 1 });
    expect(readRange("'Wren''s tab'!C3:D4").tab).toBe("Wren's tab");
  });
});

describe("Formulas that cannot be read are refused", () => {
  test.each(["=METER_TDS(1", "=1)", "=METER_TDS(1 2)", "=A1*2", '="open', "="])("%s", (formula) => {
    expect(() => readFormula(formula)).toThrow();
  });
});

describe("Answers", () => {
  test("arithmetic of the sheet itself: days count as numbers, blanks equal an empty text", () => {
    expect(
      shown(
        tab("A", [
          [{ day: 20000 }, { day: 19990 }, null],
          [{ formula: "=A1-B1" }, { formula: '=IF(C1="","none",C1)' }],
        ]),
      )[0]?.[1],
    ).toEqual([10, "none"]);
  });

  test("a formula may use an answer above it, and a text holds commas and quotes", () => {
    const [rows] = shown(tab("A", [[{ formula: '=IF(1=1,"a, ""b""","c")' }], [{ formula: "=A1" }]]));
    expect(rows).toEqual([['a, "b"'], ['a, "b"']]);
  });

  test("an answer that would cover something is a mistake in the sample", () => {
    const rows: SampleRow[] = [["Plant", { formula: '=FEED_PPM("10-5-5", 1, "g/L", "N P")' }, "taken"]];
    expect(() => shown(tab("A", rows))).toThrow("would cover row 1, column 3");
  });

  test("a tab that is not there, or a function that is not there, is a mistake too", () => {
    expect(() => shown(tab("A", [[{ formula: "=Nowhere!A1" }]]))).toThrow('No tab is called "Nowhere"');
    expect(() => shown(tab("A", [[{ formula: "=FEED_NOTHING(1)" }]]))).toThrow("FEED_NOTHING");
  });
});

describe("CSV", () => {
  test("quotes what needs it and keeps numbers, days and formulas apart", () => {
    const cells: SampleRow = ['say "a, b"', 0.5, { day: 20781 }, { formula: '=IF(A1="","",1)' }, null];
    expect(csvOf(tab("A", [cells]))).toBe('"say ""a, b""",0.5,2026-11-24,"=IF(A1="""","""",1)",\n');
  });

  test.each(["=1+1", "012", "-5", "3/4/2026", "10-5-5", "true", "1,5"])("refuses the text %s", (text) => {
    expect(() => csvOf(tab("A", [[text]]))).toThrow(`"${text}"`);
  });
});
