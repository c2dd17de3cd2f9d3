/** Whatever the panel asks does the same in a workbook in which every tab and every heading was renamed by hand, and in one as set up. */

import { expect, test } from "vitest";
import { ALL_SAMPLES, sampleTabs } from "../shared/samples.ts";
import { openTestBook, type TestBook } from "../sheet/workbook.ts";

function setUpBook(): TestBook {
  const book = openTestBook({ tabs: sampleTabs() });
  book.setUp();
  return book;
}

/** Only the marks that the set-up left tell of the tabs and columns. */
function renamed(): TestBook {
  const book = setUpBook();
  for (const tab of book.grid.tabs()) {
    if (tab.name() === "My plants") continue;
    const { column } = tab.extent();
    tab.write(1, 1, [Array.from({ length: column }, (_, at) => ({ value: `Our word ${at + 1}` }))]);
    tab.rename(`Our ${tab.name()}`);
  }
  return book;
}

/** Every cell below the headings, of each tab in turn. */
const below = ({ grid }: TestBook): unknown[] =>
  grid.tabs().map((tab) => {
    const { row, column } = tab.extent();
    return row < 2
      ? []
      : tab.read({ row: 2, column: 1, rows: row - 1, columns: column }).map((line) => line.map(({ value }) => value));
  });

/** An answer without our word before the names of tabs. */
const plainly = (answer: unknown): unknown => JSON.parse(JSON.stringify(answer).replaceAll("Our ", ""));

/** All but the one that is there to tell of names. */
const ASKED = ALL_SAMPLES.filter(({ request }) => request.ask !== "look at tabs");

test.each(ASKED.map((sample) => [sample.what, sample] as const))("%s", (_, { request }) => {
  // One after the other: the book opened last is the one that is asked.
  const plain = setUpBook();
  const answer = plain.reply(request);
  const moved = renamed();
  expect(plainly(moved.reply(request))).toEqual(answer);
  expect(below(moved)).toEqual(below(plain));
});
