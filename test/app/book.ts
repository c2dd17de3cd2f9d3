/** Loading a workbook whose tabs were filled by hand. */

import type { MemoryTabOptions } from "../../sample-sheet/workbench/standin/memory.ts";
import type { Loaded } from "../../src/app/contract.ts";
import { readyBook, type TestBook } from "../sheet/workbook.ts";

export type Cells = NonNullable<MemoryTabOptions["cells"]>;

export const load = (book: TestBook): Loaded => book.reply({ ask: "load" });

/** A workbook with these tabs filled by hand, and all others set up. */
export function bookWith(tabs: Readonly<Record<string, Cells>>): TestBook {
  return readyBook({ tabs: Object.fromEntries(Object.entries(tabs).map(([name, cells]) => [name, { cells }])) });
}
