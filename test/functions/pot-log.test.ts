/** Logs that reservoir functions read: odd amounts, blank and broken rows, and which columns matter to whom. */

import { describe, expect, it } from "vitest";
import { outcome } from "./cells.ts";
import { asOf, column, HEADINGS, logOf, row, WEEKS } from "./weeks.ts";

describe("rows of a log that only some functions read", () => {
  const usual = (...rows: unknown[][]) => outcome("POT_USE", "Fern", logOf(...WEEKS, ...rows), asOf);
  const due = (...rows: unknown[][]) =>
    outcome("POT_DUE", column("Fern"), logOf(...WEEKS, ...rows), asOf) as unknown[][];

  it("takes amounts as plain texts, and refuses ticks and more than a bathtub", () => {
    const texts = WEEKS.map((cells) => [...cells.slice(0, 4), String(cells[4]), ...cells.slice(5)]);
    expect(outcome("POT_USE", "Fern", logOf(...texts), asOf)).toBe(10);
    expect(usual(row("2026-03-20", "Top up", true))).toMatch(/^throws: Amount mL in row 7 of log is yes/);
    expect(usual(row("2026-03-20", "Top up", 1_000_001))).toBe(
      "throws: Amount mL in row 7 of log is 1000001 mL. Give a number from 0 to 1000000 mL.",
    );
    expect(usual(row("2026-03-29", "Top up", 1_000_000))).toBeGreaterThan(30_000);
  });

  it("passes over blank rows and rows without a plant", () => {
    const blank = Array.from({ length: HEADINGS.length }, () => "");
    expect(usual(blank, row("2026-03-20", "Top up", 500, { plant: "" }), row("2026-03-20", "Note"))).toBe(10);
    expect(due(blank, row("2026-03-20", "Top up", 500, { plant: "" }), row("2026-03-20", "Note")).length).toBe(1);
  });

  it("says so where nobody can tell what was done", () => {
    const broken = row("2026-03-20", "#REF!", 50);
    expect(usual(broken)).toMatch(/^throws: Event in row 7 of log is an error cell \(#REF!\)/);
    // The first of two rows that cannot be read is the one that is told.
    expect(usual(broken, row("2026-03-20", "Top up", "a jug"))).toMatch(/^throws: Event in row 7/);
    expect(due(broken)[1]).toEqual([
      "Fern",
      expect.stringMatching(/^\? Event in row 7 of log/),
      "? see left",
      "? see left",
    ]);
  });

  it("minds EC where readings are held against a ceiling, not where only amounts count", () => {
    for (const [ec, words] of [
      ["high", '"high". Give a plain number in mS/cm'],
      [-1, "-1 mS/cm. Give a number of 0 mS/cm or more."],
    ] as const) {
      const odd = row("2026-03-29", "Reading", "", { ec });
      const poured = [...WEEKS.slice(0, 4), row("2026-03-29", "Top up", 70, { ec })];
      expect(outcome("POT_USE", "Fern", logOf(...poured), asOf)).toBe(10);
      expect(due(odd)[1]?.[1]).toContain(`EC in row 7 of log is ${words}`);
    }
  });

  it("leaves alone events that nobody made known, whatever else stands in the row", () => {
    expect(due(["x", "soon", "Fern", "Sang to it", "much", "high", "Ines", ""]).length).toBe(1);
  });
});
