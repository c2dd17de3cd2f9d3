/** A water report into the Waters tab: what is written, retries that write nothing, and what is refused. */

import { describe, expect, test } from "vitest";
import type { RequestFor } from "../../src/app/contract.ts";
import { newId, readyBook, serialOf } from "../sheet/workbook.ts";

type Entry = RequestFor<"log water">["entry"];

/** Invented, in the units of the tab. */
function report(given: Partial<Entry> = {}): RequestFor<"log water"> {
  return {
    ask: "log water",
    entry: {
      id: newId(),
      water: "Tap",
      day: "2026-03-10",
      source: "the town",
      numbers: { Ca: 62, Alkalinity: 148.5, "NO3-N": 20 / 4.4266, EC: 0.512, pH: 7.6 },
      disinfectant: "chlorine",
      note: "=1+1",
      ...given,
    },
  };
}

const WRITTEN = { written: 1, already: 0, differing: [] };
const ALREADY = { written: 0, already: 1, differing: [] };

test("a report is one row, as it was sent, and is there to choose at the next load", () => {
  const book = readyBook();
  expect(book.reply(report())).toEqual(WRITTEN);
  const [headings, row] = book.values("Waters");
  const fields = Object.fromEntries((headings ?? []).map((heading, index) => [heading, row?.[index] ?? null]));
  expect(fields).toEqual({
    Water: "Tap",
    Date: serialOf("2026-03-10"),
    Source: "the town",
    ...{ Ca: 62, Mg: null, Na: null, K: null, Alkalinity: 148.5, SO4: null, Cl: null, "NO3-N": 20 / 4.4266 },
    ...{ Fe: null, B: null, EC: 0.512, pH: 7.6 },
    Disinfectant: "chlorine",
    Note: "=1+1",
  });
  const { waters, problems } = book.reply({ ask: "load" });
  expect(waters).toHaveLength(1);
  expect(waters[0]?.fields).toMatchObject({ Water: "Tap", Date: "2026-03-10", Ca: 62, "NO3-N": 20 / 4.4266 });
  expect(problems.filter((sentence) => sentence.includes("Waters"))).toEqual([]);
});

test("rows stand below one another, and what somebody else keeps on the tab stays", () => {
  const book = readyBook({
    tabs: {
      Waters: {
        cells: [
          ["Mine", "Water", "Ca"],
          ["x", "Well", 80],
        ],
      },
    },
  });
  expect(book.reply(report())).toEqual(WRITTEN);
  expect(book.values("Waters").map((row) => row.slice(0, 3))).toEqual([
    ["Mine", "Water", "Ca"],
    ["x", "Well", 80],
    [null, "Tap", 62],
  ]);
});

test("may be called what the heading says, and stands below rows without a name", () => {
  const book = readyBook({
    tabs: {
      Waters: {
        cells: [
          ["Water", "Ca"],
          ["", 80],
          ["Well", 70],
        ],
      },
    },
  });
  expect(book.reply(report({ water: "Water" }))).toEqual(WRITTEN);
  expect(book.cell("Waters", 4, "Water")).toBe("Water");
});

describe("a retry", () => {
  test("writes nothing, under the same id or another, with the name in other case", () => {
    const book = readyBook();
    const sent = report();
    book.reply(sent);
    expect(book.reply(sent)).toEqual(ALREADY);
    expect(book.reply(report({ water: " tap " }))).toEqual(ALREADY);
    expect(book.values("Waters")).toHaveLength(2);
  });

  test("is known after the columns were moved", () => {
    const book = readyBook();
    book.reply(report());
    book.grid.tab("Waters").moveColumn(1, 6);
    expect(book.reply(report())).toEqual(ALREADY);
  });
});

test("a name that a person typed as a number is the same name", () => {
  const book = readyBook({ tabs: { Waters: { cells: [["Water"], [12]] } } });
  const { code, sentence } = book.refusal(report({ water: "12" }));
  expect([code, sentence]).toEqual(["name-there", expect.stringContaining("“12” already stands in row 2 of “Waters”")]);
  expect(book.reply(report({ water: "1" }))).toEqual(WRITTEN);
});

describe("refused, with nothing written:", () => {
  test.each<[string, Partial<Entry>, string]>([
    ["the same name and day with another value", { numbers: { Ca: 63 } }, "another Ca, Alkalinity, NO3-N, EC, pH,"],
    ["the same name on another day", { day: "2026-04-01" }, "with another Date, so nothing was written"],
  ])("%s", (_, given, words) => {
    const book = readyBook();
    book.reply(report());
    const { code, sentence } = book.refusal(report(given));
    expect(code).toBe("name-there");
    expect(sentence).toContain("“Tap” already stands in row 2 of “Waters”");
    expect(sentence).toContain("give this report a name of its own");
    expect(sentence).toContain(words);
    expect(book.values("Waters")).toHaveLength(2);
  });

  test.each<[string, unknown, RegExp, string?]>([
    ["a blank name", report({ water: "  " }), /Type a name/, "no-water-name"],
    ["a day that is none", report({ day: "2026-02-30" }), /There is no day 2026-02-30/, "not-a-day"],
    ["an EC in µS/cm", report({ numbers: { EC: 512 } }), /EC in this report/],
    ["a pH above 14", report({ numbers: { pH: 76 } }), /pH in this report/],
    ["an amount below 0", report({ numbers: { Ca: -1 } }), /The Ca is -1: it must be 0 or more/],
    [
      "a column the tab does not have",
      { ...report(), entry: { ...report().entry, numbers: { Gold: 1 } } },
      /Gold/,
      "request",
    ],
  ])("%s", (_, sent, words, code) => {
    const book = readyBook();
    const refused = book.refusal(sent);
    expect(refused.sentence).toMatch(words);
    if (code !== undefined) expect(refused.code).toBe(code);
    expect(book.values("Waters")).toHaveLength(1);
  });

  test("a report for a tab that is gone", () => {
    const book = readyBook();
    book.grid.removeTab(book.grid.tab("Waters").id);
    expect(book.refusal(report()).sentence).toContain("Waters");
  });
});

test("costs at most twelve calls to the spreadsheet, also after columns were moved", () => {
  const book = readyBook();
  book.reply(report());
  expect(book.calls.length).toBeLessThanOrEqual(12);
  book.grid.tab("Waters").moveColumn(2, 6);
  book.calls.length = 0;
  book.reply(report({ water: "Well" }));
  expect(book.calls.length).toBeLessThanOrEqual(12);
});
