/** Purchases: one row a press, corrected by a later row, and what the log used of a feed counted to its end. */

import { describe, expect, test } from "vitest";
import type { RequestFor } from "../../src/app/contract.ts";
import { newId, readyBook, serialOf } from "../sheet/workbook.ts";
import { bookWith } from "./book.ts";

type Entry = RequestFor<"log purchase">["entry"];

function purchase(given: Partial<Entry> = {}): RequestFor<"log purchase"> {
  return {
    ask: "log purchase",
    who: "Ana",
    entry: {
      id: newId(),
      day: "2026-03-10",
      feed: "Potassium nitrate",
      amount: 1,
      unit: "kg",
      price: 9.8,
      lot: "007",
      note: "=1+1",
      ...given,
    },
  };
}

test("is one row, its lot and note as text, however often it is sent", () => {
  const book = readyBook();
  const sent = purchase();
  expect(book.reply(sent)).toEqual({ written: 1, already: 0, differing: [] });
  expect(book.reply(sent)).toEqual({ written: 0, already: 1, differing: [] });
  const [headings = [], row = []] = book.values("Purchases");
  expect(Object.fromEntries(headings.map((heading, at) => [heading, row[at] ?? null]))).toEqual({
    ...{ Id: sent.entry.id, Date: serialOf("2026-03-10"), Feed: "Potassium nitrate", Amount: 1, Unit: "kg" },
    ...{ Price: 9.8, Lot: "007", Who: "Ana", Note: "=1+1", Corrects: null },
  });
  expect(book.values("Purchases")).toHaveLength(2);
});

test("sent again with another amount is told and left as it is", () => {
  const book = readyBook();
  const sent = purchase();
  book.reply(sent);
  const { differing } = book.reply({ ...sent, entry: { ...sent.entry, amount: 2 } });
  expect(differing[0]).toContain("with another Amount");
  expect(book.values("Purchases")[1]?.[3]).toBe(1);
});

test("is replaced or taken back by a later row, and is gone from the records", () => {
  const book = readyBook();
  const sent = purchase();
  book.reply(sent);
  book.reply(purchase({ feed: "Spilled", amount: -20, unit: "g", price: null }));
  const another = purchase({ feed: "Salt" });
  book.reply(another);
  book.reply(purchase({ feed: "Salt", amount: 3, corrects: another.entry.id }));
  book.reply({ ask: "take back", who: "Ana", log: "Purchases", id: newId(), takes: sent.entry.id });
  const rows = book.reply({ ask: "records" }).purchases.map(({ fields }) => [fields.Feed, fields.Amount]);
  expect(rows).toEqual([
    ["Spilled", -20],
    ["Salt", 3],
  ]);
});

describe("refused, with nothing written:", () => {
  test.each<[string, Partial<Entry>, RegExp, string?]>([
    ["an amount of 0", { amount: 0 }, /Say how much of Potassium nitrate it was/, "no-amount"],
    ["a unit that is none", { unit: "bag" as "g" }, /one of g, kg, mL, L is needed/],
    ["a day that is none", { day: "2026-02-30" }, /There is no day/],
    ["a price below 0", { price: -1 }, /price/],
    ["a price of no household", { price: 2_000_000 }, /The price of Potassium nitrate is 2000000/],
    ["an amount of no household", { amount: 2_000_000 }, /The amount of Potassium nitrate is 2000000/],
  ])("%s", (_, given, words, code) => {
    const book = readyBook();
    const refused = book.refusal(purchase(given));
    expect(refused.sentence).toMatch(words);
    if (code !== undefined) expect(refused.code).toBe(code);
    expect(book.values("Purchases")).toHaveLength(1);
  });
});

test("what batches too old to be sent used comes summed up, planned ones and those taken back left out", () => {
  const rows = Array.from({ length: 205 }, (_, at) => [`batch-${1000 + at}`, at, "Salt 1 g/L (10 g)", "", ""]);
  const book = bookWith({
    "Batch log": [
      ["Id", "Litres", "Doses", "State", "Corrects"],
      ["batch-0001", 1, "two spoons", "", ""],
      ["batch-0002", 1, "Salt 1 g/L (500 g)", "planned", ""],
      ["batch-0003", 1, "Salt 1 g/L (700 g)", "", ""],
      ["batch-0004", 1, "", "", "batch-0003"],
      ["batch-0005", 1, "salt 1 g/L (5 g); Drops 1 mL/L (2 mL)", "", ""],
      ...rows,
    ],
  });
  const { batches, usedBefore } = book.reply({ ask: "load" });
  expect(batches).toHaveLength(200);
  expect(usedBefore.used).toEqual([
    { feed: "salt", amount: 55, unit: "g" },
    { feed: "Drops", amount: 2, unit: "mL" },
  ]);
  expect(usedBefore.unread.map(({ sentence }) => sentence)).toEqual([
    expect.stringMatching(/^Doses in row 2 of Batch log: “two spoons” is not a dose\./),
  ]);
});
