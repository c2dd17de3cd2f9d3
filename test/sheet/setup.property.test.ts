/** Whatever a person made beforehand: the set-up keeps every cell, and the second run changes nothing. */

import fc from "fast-check";
import { expect, test } from "vitest";
import type { CellValue } from "../../sample-sheet/workbench/standin/grid.ts";
import type { MemoryTabOptions } from "../../sample-sheet/workbench/standin/memory.ts";
import { TABS } from "../../src/sheet/tabs.ts";
import { drawn } from "../drawn.ts";
import { dump } from "./dump.ts";
import { openTestBook } from "./workbook.ts";

const OURS = TABS.flatMap(({ columns }) => columns.flatMap(({ heading, aliases }) => [heading, ...(aliases ?? [])]));
const heading = fc.oneof(fc.constantFrom(...OURS), fc.constantFrom("", "Mine", "plant ", "=x", "2024"), fc.string());
const value: fc.Arbitrary<CellValue> = fc.oneof(
  fc.constant(null),
  fc.string(),
  fc.double({ noNaN: true }),
  fc.boolean(),
);
const tab: fc.Arbitrary<MemoryTabOptions> = fc
  .integer({ min: 1, max: 6 })
  .chain((width) =>
    fc.record({
      heading: fc.array(heading, { minLength: width, maxLength: width }),
      rows: fc.array(fc.array(value, { minLength: width, maxLength: width }), { maxLength: 4 }),
      columns: fc.constantFrom(width, 26),
    }),
  )
  .map(({ heading: headings, rows, columns }) => ({
    cells: [headings.map((text) => (text === "" ? null : text)), ...rows],
    rows: rows.length + 1,
    columns,
  }));

test("every cell stays, and run again nothing changes", () => {
  const names = TABS.map(({ name }) => name);
  fc.assert(
    fc.property(fc.dictionary(fc.constantFrom(...names, "Own"), tab, { maxKeys: 4, noNullPrototype: true }), (tabs) => {
      const book = openTestBook({ tabs: { First: {}, ...tabs } });
      book.setUp();
      for (const [name, { cells = [] }] of Object.entries(tabs)) {
        const now = book.values(name);
        cells.forEach((row, index) => {
          row.forEach((cell, column) => {
            if (cell !== null && cell !== "") expect(now[index]?.[column]).toEqual(cell);
          });
        });
      }
      const before = dump(book.grid);
      book.setUp();
      expect(dump(book.grid)).toBe(before);
    }),
    { numRuns: drawn(60, 6) },
  );
});
