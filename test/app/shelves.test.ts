/** Feeds, waters, targets and batches: what is used, what is left out, and why. */

import { describe, expect, test } from "vitest";
import { dateCell } from "../sheet/workbook.ts";
import { bookWith, load } from "./book.ts";

describe("feeds", () => {
  test("without analysis, organic or with a bad number stay on the shelf as they are", () => {
    const reply = load(
      bookWith({
        Feeds: [
          ["Feed", "N", "Origin", "Analysis published", "Price"],
          ["Salt", 15.5, "mineral", "yes", "dear"],
          ["Guano", 10, "organic", "yes", ""],
          ["Secret", "", "", "no", ""],
          ["Odd", "lots", "", "", ""],
          ["", 5, "", "", ""],
        ],
      }),
    );
    expect(reply.feeds.map(({ row, fields }) => [row, fields.Feed, fields.N])).toEqual([
      [2, "Salt", 15.5],
      [3, "Guano", 10],
      [4, "Secret", undefined],
      [5, "Odd", "lots"],
    ]);
    expect(reply.problems).toEqual([
      "There is no name in column Feed, row 6 of Feeds, so that row is not used.",
      expect.stringMatching(/^Price in row 2 of Feeds is "dear"/),
    ]);
  });

  test("whose grade became a date say how to type it", () => {
    const reply = load(
      bookWith({
        Feeds: [
          ["Feed", "N"],
          [dateCell("2005-10-05"), 10],
        ],
      }),
    );
    expect(reply.feeds).toEqual([]);
    expect(reply.problems).toEqual([
      expect.stringMatching(/Feed in row 2 of Feeds is the date 2005-10-05, not a name.*with ' in front/),
    ]);
  });
});

describe("a column that is not there", () => {
  test.each<["Feeds" | "Waters" | "Targets", string, boolean]>([
    ["Feeds", "Feed", true],
    ["Feeds", "N", true],
    ["Feeds", "Note", false],
    ["Feeds", "Price", false],
    ["Waters", "Water", true],
    ["Waters", "Alkalinity", true],
    ["Waters", "Source", false],
    ["Targets", "Target", true],
    ["Targets", "K", true],
  ])("of %s, %s, is told only where arithmetic or the name needs it: %s", (name, heading, told) => {
    const book = bookWith({});
    const tab = book.grid.tab(name);
    const at = book.values(name)[0]?.indexOf(heading) ?? -1;
    expect(at).toBeGreaterThanOrEqual(0);
    tab.deleteColumns(at + 1, 1);
    expect(load(book).problems).toEqual(told ? [expect.stringContaining(`“${name}” has no column “${heading}”`)] : []);
  });
});

describe("waters and targets", () => {
  test("that cannot be read are left out and told; the others are there", () => {
    const reply = load(
      bookWith({
        Waters: [
          ["Water", "Ca", "pH"],
          ["Tap", 84, 7.4],
          ["Well", "hard", 7],
          ["Acid", 1, 15],
          ["tap", 90, 7],
        ],
        Targets: [
          ["Target", "N", "Ca"],
          ["Half", 105, 0],
          ["Empty", "", ""],
          ["Minus", -5, ""],
        ],
      }),
    );
    expect(reply.waters.map(({ fields }) => fields.Water)).toEqual(["Tap"]);
    expect(reply.targets.map(({ fields }) => fields)).toEqual([{ Target: "Half", N: 105, Ca: 0 }]);
    expect(reply.problems).toEqual([
      expect.stringMatching(/Ca in row 3 of Waters is "hard"/),
      expect.stringMatching(/pH in row 4 of Waters is 15/),
      "“tap” in row 5 of Waters also stands in row 2, which is the one used. Give one of them another name.",
      expect.stringMatching(/row 3 of Targets/),
      expect.stringMatching(/N in row 4 of Targets is -5/),
    ]);
  });
});

test("a number that is not used in arithmetic may be unreadable, and the row is used all the same", () => {
  const reply = load(
    bookWith({
      Waters: [
        ["Water", "Ca", "Date"],
        ["Tap", 84, "soon"],
      ],
    }),
  );
  expect(reply.waters.map(({ fields }) => fields.Water)).toEqual(["Tap"]);
  expect(reply.problems).toEqual([expect.stringMatching(/Date in row 2 of Waters is "soon"/)]);
});

describe("batches", () => {
  test("come newest first, at most 200, hand-made ones too", () => {
    const rows = Array.from({ length: 230 }, (_, index) => [
      `batch-${index}`,
      dateCell(`2026-01-${String((index % 28) + 1).padStart(2, "0")}`),
      index,
    ]);
    const book = bookWith({ "Batch log": [["Id", "Date", "Litres"], ...rows, ["", "", 7], ["hand", "soon", 8]] });
    const reply = load(book);
    expect(reply.batches).toHaveLength(200);
    expect(reply.batches[0]).toMatchObject({ id: "batch-223", day: "2026-01-28", litres: 223 });
    expect(
      reply.batches.every((batch, index, all) => index === 0 || (batch.day ?? "") <= (all[index - 1]?.day ?? "")),
    ).toBe(true);
  });

  test("with readings that are no numbers count as not measured, and are told", () => {
    const reply = load(
      bookWith({
        "Batch log": [
          ["Id", "Date", "Measured EC", "pH"],
          ["batch-0001", dateCell("2026-03-01"), "1,6", "sour"],
        ],
      }),
    );
    expect(reply.batches[0]).toMatchObject({ measuredEcMsCm: 1.6, measuredPH: null });
    expect(reply.problems).toContainEqual(expect.stringMatching(/Measured pH in row 2 of Batch log is "sour"/));
  });
});
