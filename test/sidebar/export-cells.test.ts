/** Cells as CSV fields: what could run or be taken for something else is defused, and everything comes back as it was. */

import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import * as XLSX from "xlsx";
import { fieldCell, fieldText, type Travelling } from "../../sidebar/export-cells.ts";
import { csvOf, readZip, zipOf } from "../../sidebar/export-file.ts";
import { planImport } from "../../sidebar/import-plan.ts";
import { cell, DANGEROUS, text } from "./cell-arbitrary.ts";

describe("a field", () => {
  test("comes back as the cell it was", () => {
    fc.assert(
      fc.property(cell, (each) => {
        expect(fieldCell(fieldText(each))).toEqual(each);
      }),
    );
  });

  test.each(DANGEROUS.flatMap((start) => [`${start}1+1`, ` ${start}1+1`]))("%j never starts a formula", (each) => {
    expect(fieldText(each)).toBe(`'${each}`);
  });

  test("of a number is a number, also a negative one, which no program runs", () => {
    expect([-5, 0.1, 1e21, 1e-7].map(fieldText)).toEqual(["-5", "0.1", "1e+21", "1e-7"]);
  });
});

describe("a file", () => {
  const table = fc.integer({ min: 1, max: 5 }).chain((width) =>
    fc.record({
      headings: fc.uniqueArray(
        text.filter((each) => each.trim() !== ""),
        { minLength: width, maxLength: width },
      ),
      rows: fc.array(fc.array(cell, { minLength: width, maxLength: width }), { maxLength: 6 }),
    }),
  );

  test("goes through the zip and comes back the same, whatever stands in its cells", () => {
    fc.assert(
      fc.property(table, table, (plants, log) => {
        const tabs = [
          { tab: "Plants", ...plants, computed: plants.headings.slice(0, 1) },
          { tab: "Care log", ...log, computed: [] },
        ];
        const back = readZip(zipOf(tabs), ["Plants", "Care log"]);
        expect(back.problems).toEqual([]);
        const kept = (rows: readonly (readonly Travelling[])[]) =>
          rows.filter((row) => row.some((each) => each !== null));
        expect(back.tabs).toEqual(tabs.map((each) => ({ ...each, rows: kept(each.rows) })));
      }),
      { numRuns: 60 },
    );
  });

  test("opens in another program with no formula in any cell", () => {
    const rows = DANGEROUS.flatMap((start) => [[`${start}HYPERLINK("http://x.example","y")`], [` ${start}1`]]);
    const book = XLSX.read(csvOf({ headings: ["=A1"], rows }), { type: "string", raw: false });
    const sheet = book.Sheets[book.SheetNames[0] ?? ""] ?? {};
    const cells = Object.entries(sheet).filter(([at]) => !at.startsWith("!"));
    expect(cells.length).toBeGreaterThan(10);
    for (const [at, found] of cells) expect((found as { f?: string }).f, at).toBeUndefined();
  });

  test("is refused in a sentence when it is no zip, or holds nothing that is known", () => {
    expect(() => readZip(new Uint8Array([1, 2, 3]), ["Plants"])).toThrow(/^This file is no zip, or it is damaged\./);
    expect(() => readZip(zipOf([]), ["Plants", "Feeds"])).toThrow(/^There is no CSV of a known tab in this zip\./);
    const other = readZip(
      zipOf([
        { tab: "Plants", headings: ["Plant"], rows: [["Fern"]], computed: [] },
        { tab: "Shopping", headings: ["x"], rows: [], computed: [] },
      ]),
      ["Plants"],
    );
    expect(other.problems).toEqual(["“Shopping.csv” belongs to no tab that is known here, so it is left out."]);
  });

  test("is plain RFC 4180 for any other reader", () => {
    const csv = csvOf({ headings: ["Note"], rows: [['said "no", twice'], ["two\nlines"]] });
    expect(Papa.parse<string[]>(csv.slice(1).trimEnd()).data).toEqual([["Note"], ['said "no", twice'], ["two\nlines"]]);
  });
});

describe("what would be written", () => {
  const tab = (name: string, headings: string[], rows: Travelling[][], computed: string[] = []) => ({
    tab: name,
    headings,
    rows,
    computed,
  });
  const LOG = ["Id", "Plant", "Event"];

  test("is each row that is not there, by Id", () => {
    const file = tab("Care log", LOG, [
      ["a-1", "Fern", "Repot"],
      ["a-2", "Fern", "Top up"],
    ]);
    const [plan] = planImport([file], [tab("Care log", LOG, [["a-1", "Fern", "Repot"]])]);
    expect(plan).toMatchObject({ rows: [["a-2", "Fern", "Top up"]], already: 1, notes: [] });
  });

  test("without an Id a row is known by its content, as often as it stands; what is new gets an Id of its content", () => {
    const twice: Travelling[][] = [
      [null, "Fern", "Top up"],
      [null, "Fern", "Top up"],
      [null, "Ivy", "Top up"],
    ];
    const file = tab("Care log", LOG, twice);
    const [home] = planImport([file], [tab("Care log", LOG, twice)]);
    expect(home).toMatchObject({ rows: [], already: 3 });
    const [away] = planImport([file], [tab("Care log", LOG, [])]);
    const ids = away?.rows.map(([id]) => id) ?? [];
    expect(new Set(ids).size).toBe(3);
    expect(ids.every((id) => /^import-[0-9a-f]{16}$/.test(String(id)))).toBe(true);
    const [again] = planImport(
      [file],
      [
        tab(
          "Care log",
          LOG,
          (away?.rows ?? []).map((row) => [...row]),
        ),
      ],
    );
    expect(again).toMatchObject({ rows: [], already: 3 });
    const [one] = planImport([file], [tab("Care log", LOG, twice.slice(0, 1))]);
    expect([one?.rows.length, one?.already]).toEqual([2, 1]);
  });

  test("keeps a row whose Id stands twice, under another Id, and says so", () => {
    const file = tab("Care log", LOG, [
      ["a-1", "Fern", "Repot"],
      ["a-1", "Ivy", "Repot"],
    ]);
    const [plan] = planImport([file], [tab("Care log", LOG, [])]);
    expect(plan?.rows.map((row) => row.slice(1))).toEqual([
      ["Fern", "Repot"],
      ["Ivy", "Repot"],
    ]);
    expect(plan?.notes).toEqual(["1 row had an Id that stands twice in the file and gets another."]);
    const there = planImport(
      [file],
      [
        tab("Care log", LOG, [
          ["a-1", "Fern", "Repot"],
          ["a-1", "Ivy", "Repot"],
        ]),
      ],
    );
    expect(there[0]).toMatchObject({ rows: [], already: 2 });
  });

  test("leaves names that are there as they are, and says what it leaves out", () => {
    const file = tab(
      "Plants",
      ["Plant", "Place", "Luck", "Rest"],
      [
        ["fern ", "Hall", 7, 3],
        ["Ivy", "Hall", null, 4],
        ["Ivy", "Bath", null, 4],
        [null, "Hall", null, null],
      ],
      ["Rest"],
    );
    const [plan] = planImport([file], [tab("Plants", ["Plant", "Place", "Rest"], [["Fern", "Bath", 9]], ["Rest"])]);
    expect(plan?.headings).toEqual(["Plant", "Place"]);
    expect(plan?.rows).toEqual([["Ivy", "Hall"]]);
    expect(plan?.already).toBe(1);
    expect(plan?.notes).toEqual([
      "“Luck” is no heading of “Plants” in this sheet, so what stands there is left out. To keep it, type the heading in row 1 first, then choose the file again.",
      "In “Plants”, “fern ” stands there with other values and stays as it is.",
      "“Ivy” stands twice in the file; only the first is taken. Give the others names of their own.",
      "1 row of “Plants” has no Plant and is left out.",
    ]);
  });

  test("changes settings but never today's date or the choice of a plant list", () => {
    const file = tab(
      "Settings",
      ["Setting", "Value", "Note"],
      [
        ["Today", { day: "2026-03-01" }, null],
        ["Plant list tab", "Mine", null],
        ["Rest days", 90, null],
        ["pH low", 5.5, null],
        ["Not known", null, null],
      ],
    );
    const [plan] = planImport(
      [file],
      [
        tab(
          "Settings",
          ["Setting", "Value"],
          [
            ["Rest days", 180],
            ["pH low", 5.5],
          ],
        ),
      ],
    );
    expect(plan).toMatchObject({ rows: [["Rest days", 90]], already: 2 });
  });
});
