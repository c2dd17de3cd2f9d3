/** Taking a row back: a marking row by its author, once, in every log; nothing is deleted or changed. */

import { describe, expect, test } from "vitest";
import { batch, careEntry, newId, readyBook, serialOf, type TestBook } from "../sheet/workbook.ts";

const taking = (takes: string, change: object = {}) =>
  ({ ask: "take back", who: "Ana", log: "Care log", id: newId(), takes, ...change }) as const;

function logged(who = "Ana"): { book: TestBook; id: string } {
  const book = readyBook();
  const entry = careEntry({ event: "Repot", day: "2026-03-01", plant: "Hoya" });
  book.reply({ ask: "log care", who, entries: [entry] });
  return { book, id: entry.id };
}

const row = (book: TestBook, tab: string, number: number): Record<string, unknown> => {
  const values = book.values(tab);
  return Object.fromEntries((values[0] ?? []).map((heading, at) => [heading, values[number - 1]?.[at] ?? null]));
};

describe("a row of the Care log", () => {
  test("is taken back by a new row, stays as it was, and no longer counts", () => {
    const { book, id } = logged();
    const before = row(book, "Care log", 2);
    const request = taking(id);
    expect(book.reply(request)).toEqual({ written: 1, already: 0 });
    expect(row(book, "Care log", 2)).toEqual(before);
    expect(row(book, "Care log", 3)).toMatchObject({
      Id: request.id,
      Date: serialOf("2026-03-10"),
      Plant: "Hoya",
      Event: "Taken back",
      Who: "Ana",
      Corrects: id,
      "Amount mL": null,
    });
    const { care, problems } = book.reply({ ask: "load" });
    expect(care.rows).toEqual([]);
    expect(problems).toEqual([]);
  });

  test("taken back twice, by a retry or by another press, says already and writes nothing", () => {
    const { book, id } = logged();
    const request = taking(id);
    book.reply(request);
    expect(book.reply(request)).toEqual({ written: 0, already: 1 });
    expect(book.reply(taking(id))).toEqual({ written: 0, already: 1 });
    expect(book.values("Care log")).toHaveLength(3);
  });

  test("says already to a retry although it was deleted since", () => {
    const { book, id } = logged();
    const request = taking(id);
    book.reply(request);
    book.grid.tab("Care log").deleteRows(2, 1);
    expect(book.reply(request)).toEqual({ written: 0, already: 1 });
  });

  test("is not void by a row without an Id, which may be half of what an earlier try wrote", () => {
    const { book, id } = logged();
    const at = (book.values("Care log")[0] ?? []).indexOf("Corrects") + 1;
    book.grid.tab("Care log").write(3, at, [[{ value: id }]]);
    expect(book.reply(taking(id))).toEqual({ written: 1, already: 0 });
  });

  test("may be the row of somebody whose name was typed with spaces, and one without a plant", () => {
    const { book, id } = logged(" ana ");
    const tab = book.grid.tab("Care log");
    tab.write(2, 3, [[{ value: null }]]);
    expect(book.reply(taking(id))).toEqual({ written: 1, already: 0 });
    expect(row(book, "Care log", 3)).toMatchObject({ Plant: null, Event: "Taken back" });
    const other = logged("  Ben ");
    expect(other.book.refusal(taking(other.id)).sentence).toContain("was logged by Ben, and only Ben can");
  });

  test("goes with others of the same press in one write", () => {
    const book = readyBook();
    const entries = ["Hoya", "Fern", "Arum"].map((plant) => careEntry({ plant }));
    book.reply({ ask: "log care", who: "Ana", entries });
    const [first, ...others] = entries.map(({ id }) => ({ id: newId(), takes: id }));
    if (first === undefined) throw new Error("There are three.");
    book.calls.length = 0;
    expect(book.reply({ ...taking(first.takes), id: first.id, more: others })).toEqual({ written: 3, already: 0 });
    expect(book.calls.filter((name) => name === "Range.setValues")).toHaveLength(1);
    expect(book.reply({ ask: "load" }).care.rows).toEqual([]);
  });

  test("that was a correction lets the row it replaced count again", () => {
    const { book, id } = logged();
    const right = careEntry({ event: "Pot up", day: "2026-03-02", plant: "Hoya", corrects: id });
    book.reply({ ask: "log care", who: "Ana", entries: [right] });
    expect(book.reply({ ask: "load" }).care.rows.map(({ event }) => event)).toEqual(["Pot up"]);
    book.reply(taking(right.id));
    expect(book.reply({ ask: "load" }).care.rows.map(({ event }) => event)).toEqual(["Repot"]);
  });
});

describe("the other logs", () => {
  test("a batch taken back leaves the list, and a plan it mixed stands again", () => {
    const book = readyBook();
    const plan = { ...batch(), state: "planned" as const };
    const mixed = batch({ corrects: plan.id });
    book.reply({ ask: "log batch", who: "Ana", batch: plan });
    book.reply({ ask: "log batch", who: "Ana", batch: mixed });
    expect(book.reply(taking(mixed.id, { log: "Batch log" }))).toEqual({ written: 1, already: 0 });
    expect(row(book, "Batch log", 4)).toMatchObject({
      Doses: null,
      Litres: null,
      Note: "Taken back",
      Corrects: mixed.id,
      Who: "Ana",
    });
    expect(book.reply({ ask: "load" }).batches.map(({ id, state }) => [id, state])).toEqual([[plan.id, "planned"]]);
  });

  test.each([
    ["Purchases", "purchases", { Feed: "Calcium nitrate", Amount: 500, Unit: "g" }],
    ["Meter log", "meterLog", { Meter: "EC", Standard: 1.413, Reading: 1.39 }],
  ] as const)("%s: neither the row nor its mark is among the records", (tab, part, fields) => {
    const book = readyBook();
    const headings = book.values(tab)[0] ?? [];
    const cells: Record<string, unknown> = { Id: "by-hand-0001", Who: "ana", ...fields };
    book.grid.tab(tab).write(2, 1, [headings.map((heading) => ({ value: (cells[String(heading)] ?? null) as never }))]);
    expect(book.reply({ ask: "records" })[part]).toHaveLength(1);
    expect(book.reply(taking("by-hand-0001", { log: tab }))).toEqual({ written: 1, already: 0 });
    expect(book.reply({ ask: "records" })).toMatchObject({ [part]: [], problems: [] });
  });
});

describe("refused, with nothing written:", () => {
  test.each<[string, string, (id: string) => object, RegExp, string]>([
    [
      "a row of somebody else",
      "Ben",
      (id) => taking(id),
      /^Row 2 of “Care log” was logged by Ben, and only Ben can/,
      "not-your-row",
    ],
    [
      "a row of nobody",
      "",
      (id) => taking(id),
      /^Row 2 of “Care log” names nobody under Who\. Type your name there/,
      "nobodys-row",
    ],
    [
      "a row that is not there",
      "Ana",
      () => taking("no-such-row"),
      /^“Care log” has no row with the Id no-such-row/,
      "no-row",
    ],
    ["without a name", "Ana", (id) => taking(id, { who: " " }), /^Type your name first/, "no-name"],
    ["from a tab that is no log", "Ana", (id) => taking(id, { log: "Feeds" }), /one of Care log, Batch log/, "request"],
    [
      "by an Id that is none",
      "Ana",
      () => taking("=1"),
      /The row to take back is "=1": it is not written as it should/,
      "request",
    ],
  ])("%s", (_, who, request, sentence, code) => {
    const { book, id } = logged(who);
    expect(book.refusal(request(id))).toEqual({ code, sentence: expect.stringMatching(sentence) });
    expect(book.values("Care log")).toHaveLength(2);
  });

  test("a row that takes another back, an Id that stands twice, a tab without the column", () => {
    const { book, id } = logged();
    const mark = taking(id);
    book.reply(mark);
    expect(book.refusal(taking(mark.id))).toEqual({
      code: "takes-back",
      sentence: "Row 3 of “Care log” takes another row back itself. Log what was done once more instead.",
    });
    const twice = logged();
    const first = twice.book.values("Care log")[1] ?? [];
    twice.book.grid.tab("Care log").write(3, 1, [first.map((value) => ({ value }))]);
    expect(twice.book.refusal(taking(twice.id))).toEqual({
      code: "row-twice",
      sentence: expect.stringMatching(/^Rows 2 and 3 of “Care log” have the same Id/),
    });
    const old = logged();
    const at = (old.book.values("Care log")[0] ?? []).indexOf("Corrects") + 1;
    old.book.grid.tab("Care log").deleteColumns(at, 1);
    expect(old.book.refusal(taking(old.id)).sentence).toMatch(/“Care log” has no column “Corrects”\..*Set up tabs/);
    expect(old.book.values("Care log")).toHaveLength(2);
    const nameless = logged();
    nameless.book.grid.tab("Care log").deleteColumns(3, 1);
    expect(nameless.book.refusal(taking(nameless.id))).toEqual({
      code: "no-column",
      sentence: expect.stringMatching(/“Care log” has no column “Plant”/),
    });
  });
});
