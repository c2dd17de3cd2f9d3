/** The text in the Doses column: readable, and read back the same. */

import { readFileSync } from "node:fs";
import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { dosesText, type LoggedDose, nameOfText, parseDoses, readDoses } from "../../src/core/dose-text.ts";
import { refusal } from "./refusal.ts";

const dose = (given: Partial<LoggedDose>): LoggedDose => ({
  feed: "Salt",
  perLitre: 1,
  unit: "g",
  perBatch: 10,
  ...given,
});

describe("the text", () => {
  test("reads as one would say it", () => {
    const doses = [
      dose({ feed: "Calcium nitrate", perLitre: 1.25, perBatch: 12.5 }),
      dose({ feed: "Green", unit: "mL", perLitre: 0.5, perBatch: 5 }),
    ];
    expect(dosesText(doses)).toBe("Calcium nitrate 1.25 g/L (12.5 g); Green 0.5 mL/L (5 mL)");
  });

  test("has six figures and no powers of ten", () => {
    expect(dosesText([dose({ perLitre: 1 / 3, perBatch: 1e-7 })])).toBe("Salt 0.333333 g/L (0.0000001 g)");
    expect(dosesText([dose({ perLitre: 0.1 + 0.2, perBatch: 0 })])).toBe("Salt 0.3 g/L (0 g)");
  });

  test("puts a name with a semicolon or quotes into quotes", () => {
    expect(dosesText([dose({ feed: 'Grow; the "old" one' })])).toBe('"Grow; the ""old"" one" 1 g/L (10 g)');
  });

  test.each([
    "",
    "Salt",
    "Salt 1 g (10 g)",
    "Salt 1 g/L (10 mL)",
    "Salt 1,5 g/L (15 g)",
    "Salt 1 g/L (10 g);",
    "Salt 1 g/L (10 g) or so",
  ])("that is not of this form is refused: %j", (text) => {
    expect(refusal(() => parseDoses(text))).toMatch(/is not a dose\. A dose looks like this: Calcium nitrate/);
  });

  test("a quote inside a name that was typed by hand stays", () => expect(nameOfText('Lava 5"')).toBe('Lava 5"'));

  test("one dose that cannot be read leaves the others, and is quoted", () => {
    expect(readDoses('Salt 1 g/L (10 g); Salt 1 g; "A; b" 0.5 mL/L (5 mL)')).toEqual([
      dose({}),
      { part: "Salt 1 g", sentence: expect.stringMatching(/^“Salt 1 g” is not a dose/) },
      dose({ feed: "A; b", unit: "mL", perLitre: 0.5, perBatch: 5 }),
    ]);
  });
});

test("every batch of the sample sheet is of this form", () => {
  const csv = readFileSync(new URL("../../sample-sheet/Batch log.csv", import.meta.url), "utf8");
  const { data } = Papa.parse<Record<string, string>>(csv.trim(), { header: true });
  expect(data.length).toBeGreaterThan(30);
  for (const { Doses = "" } of data) expect(dosesText(parseDoses(Doses))).toBe(Doses);
});

test("whatever the names and doses, it is read back the same, to six figures", () => {
  const number = fc.double({ min: 0, max: 5000, noNaN: true }).map((value) => Math.abs(Number(value.toFixed(9))));
  const any = fc.record({
    feed: fc.oneof(
      fc.string(),
      fc.string({ unit: fc.constantFrom(";", '"', " ", "1", "g/L", "(", ")", "\n", "10-5-5") }),
    ),
    perLitre: number,
    unit: fc.constantFrom("g" as const, "mL" as const),
    perBatch: number,
  });
  fc.assert(
    fc.property(fc.array(any, { minLength: 1, maxLength: 6 }), (doses) => {
      const back = parseDoses(dosesText(doses));
      expect(back.map(({ feed, unit }) => ({ feed, unit }))).toEqual(doses.map(({ feed, unit }) => ({ feed, unit })));
      back.forEach((each, index) => {
        expect(each.perLitre).toBe(Number(doses[index]?.perLitre.toPrecision(6)));
        expect(each.perBatch).toBe(Number(doses[index]?.perBatch.toPrecision(6)));
      });
      expect(dosesText(back)).toBe(dosesText(doses));
    }),
  );
});
