/** A confirmed label into the Feeds tab: what is written, text as text, retries, and what is refused. */

import { describe, expect, test } from "vitest";
import type { RequestFor } from "../../src/app/contract.ts";
import { newId, readyBook, type TestBook } from "../sheet/workbook.ts";

type Entry = RequestFor<"log feed">["entry"];

const LABEL = '=HYPERLINK("http://x")\nTotal nitrogen 10 %\n\'P2O5 5 %\n+K2O 5 %';

/** Invented. */
function feed(given: Partial<Entry> = {}): RequestFor<"log feed"> {
  return {
    ask: "log feed",
    entry: {
      id: newId(),
      feed: "10-5-5",
      basis: "w/w",
      percents: { N: 10, "Other-N": 2, "NO3-N": 8, P2O5: 5, K2O: 5, SiO2: 1, Na2O: 0.5, Fe: 0.04 },
      densityGPerMl: 1.2,
      origin: "mineral",
      published: true,
      labelText: LABEL,
      note: "=1+1",
      ...given,
    },
  };
}

function written(book: TestBook): Record<string, unknown> {
  const [headings = [], ...rows] = book.values("Feeds");
  const row = rows[rows.length - 1] ?? [];
  return Object.fromEntries(headings.map((heading, at) => [String(heading), row[at] ?? null]));
}

test("a feed is one row, its label word for word and as text, and is on the shelf at the next load", () => {
  const book = readyBook();
  expect(book.reply(feed())).toEqual({ written: 1, already: 0, differing: [] });
  expect(written(book)).toMatchObject({
    ...{ Feed: "10-5-5", Basis: "w/w", N: 10, "NO3-N": 8, "Other-N": 2, P2O5: 5, K2O: 5, P: null, K: null },
    ...{ SiO2: 1, Na2O: 0.5, Fe: 0.04, Density: 1.2, Origin: "mineral", "Analysis published": "yes" },
    ...{ "On hand": null, Unit: null, "Label text": LABEL, Note: "=1+1" },
  });
  const { feeds, problems } = book.reply({ ask: "load" });
  expect(feeds[0]?.fields).toMatchObject({ Feed: "10-5-5", "Other-N": 2, "Label text": LABEL, Note: "=1+1" });
  expect(problems.filter((sentence) => sentence.includes("Feeds"))).toEqual([]);
});

test("a retry writes nothing, under the same id or another, with the name in other case", () => {
  const book = readyBook();
  const sent = feed({ feed: "Green powder" });
  book.reply(sent);
  expect(book.reply(sent)).toEqual({ written: 0, already: 1, differing: [] });
  expect(book.reply(feed({ feed: " green powder " }))).toMatchObject({ already: 1 });
  book.grid.tab("Feeds").moveColumn(1, 6);
  expect(book.reply(sent)).toMatchObject({ already: 1 });
  expect(book.values("Feeds")).toHaveLength(2);
});

test("another feed of the same name is refused and nothing overwritten", () => {
  const book = readyBook();
  book.reply(feed());
  const { code, sentence } = book.refusal(feed({ percents: { N: 9, P2O5: 5, K2O: 5 } }));
  expect(code).toBe("name-there");
  expect(sentence).toContain("“10-5-5” already stands in row 2 of “Feeds”, with another");
  expect(sentence).toContain("give this feed a name of its own");
  expect(written(book)).toMatchObject({ N: 10 });
  expect(book.values("Feeds")).toHaveLength(2);
});

test.each<[string, Partial<Entry>, RegExp]>([
  ["organic", { origin: "organic" }, /organic/],
  ["organic and says nothing of what is in it", { origin: "organic", percents: {} }, /organic/],
  ["without an analysis", { percents: {}, published: false, basis: "" }, /no published analysis/],
])("a feed that is %s is on the shelf, and the shelf says why it enters no recipe", (_, given) => {
  const book = readyBook();
  expect(book.reply(feed(given))).toMatchObject({ written: 1 });
  expect(book.reply({ ask: "load" }).feeds).toHaveLength(1);
  expect(written(book)["Analysis published"]).toBe(given.published === false ? "no" : "yes");
});

test("the column On hand, filled by the formula in its heading, is left alone", () => {
  const book = readyBook();
  const tab = book.grid.tab("Feeds");
  const at = (book.values("Feeds")[0] ?? []).indexOf("On hand") + 1;
  const formula = `=FEED_LEFT(A1:A, Purchases!A1:J, 'Batch log'!A1:AC, , , , "On hand")`;
  tab.write(1, at, [[{ value: "On hand", formula }]]);
  expect(book.reply(feed())).toMatchObject({ written: 1 });
  expect(tab.read({ row: 1, column: at, rows: 1, columns: 1 })[0]?.[0]?.formula).toBe(formula);
  expect(written(book)).toMatchObject({ Feed: "10-5-5", "On hand": null, "Label text": LABEL });
});

describe("refused, with nothing written:", () => {
  test.each<[string, Partial<Entry>, RegExp, string?]>([
    ["a blank name", { feed: " " }, /Type a name/, "no-feed-name"],
    ["an analysis of nothing", { percents: {} }, /has nothing on its label/, "label"],
    ["more than everything", { percents: { N: 60, K2O: 60 } }, /adds up to 120 %/],
    ["forms that do not add up", { percents: { N: 10, "NO3-N": 3 } }, /add up to 3 %/],
    ["a percent above 100", { percents: { N: 101 } }, /101/],
    ["a density that is none", { densityGPerMl: 12 }, /density/i],
    ["a term the tab has no column for", { percents: { Gold: 1 } as Entry["percents"] }, /Gold/],
    ["a text longer than any label", { labelText: "x".repeat(20_001) }, /text of the label/],
  ])("%s", (_, given, words, code) => {
    const book = readyBook();
    const refused = book.refusal(feed(given));
    expect(refused.sentence).toMatch(words);
    if (code !== undefined) expect(refused.code).toBe(code);
    expect(book.values("Feeds")).toHaveLength(1);
  });
});

test("costs at most twelve calls to the spreadsheet", () => {
  const book = readyBook();
  book.reply(feed());
  expect(book.calls.length).toBeLessThanOrEqual(12);
});
