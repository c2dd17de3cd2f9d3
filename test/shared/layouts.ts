/** One household's workbook as different people would have it: as set up, rearranged, full, with a list of its own. */

import type { MemoryGrid } from "../../sample-sheet/workbench/standin/memory.ts";
import type { Ask } from "../../src/app/contract.ts";
import { openTestBook, type TestBook } from "../sheet/workbook.ts";
import { sampleTabs } from "./samples.ts";

const LOGS = ["Care log", "Batch log", "Waters", "Feeds", "Purchases", "Meter log"] as const;

function prepared(arrange: (book: TestBook) => void, spareRows?: number): MemoryGrid {
  const book = openTestBook({ tabs: sampleTabs(spareRows) });
  book.setUp();
  arrange(book);
  return book.grid;
}

export interface Layout {
  /** To be copied before it is used. */
  readonly make: () => MemoryGrid;
  /** The asks for which it differs from a workbook as set up; all when left out. */
  readonly matters?: readonly Ask[];
}

export const LAYOUTS: Readonly<Record<string, Layout>> = {
  "as set up": { make: () => prepared(() => {}) },
  "with a column of one's own filled in between": {
    make: () =>
      prepared(({ grid }) => {
        for (const name of LOGS) {
          const tab = grid.tab(name);
          tab.insertColumns(4, 1);
          tab.write(1, 4, [[{ value: "Mine" }]]);
          tab.write(
            2,
            4,
            Array.from({ length: tab.rows() - 1 }, (_, at) => [{ value: `mine ${at}` }]),
          );
        }
      }),
  },
  "renamed, moved and full": {
    make: () =>
      prepared(({ grid }) => {
        for (const name of LOGS) {
          const tab = grid.tab(name);
          tab.moveColumn(3, 7);
          tab.write(1, 2, [[{ value: "Someone’s word" }]]);
          tab.rename(`Our ${name}`);
        }
        grid.tab("Settings").rename("Agreed");
      }, 0),
  },
  "with a plant list of one's own": {
    matters: ["load", "use plant list", "make boards", "look at tabs"],
    make: () =>
      prepared((book) => {
        book.grid.addTab("Old list", { rows: 4, columns: 2, cells: [["Pet name"], ["Monstera"]] });
        book.reply({ ask: "use plant list", tab: "Old list", columns: { Plant: "Pet name" } });
      }),
  },
};
