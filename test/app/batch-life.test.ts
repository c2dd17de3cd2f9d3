/** A batch in the log: planned, mixed, corrected with its readings, and replaced once only. */

import { describe, expect, test } from "vitest";
import { batch, readyBook, type TestBook } from "../sheet/workbook.ts";
import { load } from "./book.ts";

const log = (book: TestBook, given: Partial<ReturnType<typeof batch>>) =>
  book.ask({ ask: "log batch", who: "Ana", batch: batch(given) });

describe("a plan that was mixed", () => {
  test("stands as one batch; both rows are in the log", () => {
    const book = readyBook();
    log(book, { id: "plan-0001", state: "planned" });
    expect(load(book).batches.map(({ id, state }) => [id, state])).toEqual([["plan-0001", "planned"]]);
    log(book, { id: "mixed-001", corrects: "plan-0001" });
    expect(load(book).batches.map(({ id, state }) => [id, state])).toEqual([["mixed-001", "mixed"]]);
    expect(book.values("Batch log")).toHaveLength(3);
  });

  test("is not mixed again from another panel, nor replaced twice", () => {
    const book = readyBook();
    log(book, { id: "plan-0001", state: "planned" });
    log(book, { id: "mixed-001", corrects: "plan-0001" });
    const again = log(book, { id: "mixed-001", corrects: "plan-0001" });
    expect(again).toMatchObject({ ok: true, reply: { written: 0, already: 1 } });
    const other = log(book, { id: "mixed-002", corrects: "plan-0001" });
    expect(other).toMatchObject({ ok: false, code: "corrected-before" });
    expect(book.values("Batch log")).toHaveLength(3);
  });
});

test("a plan is not mixed by a row without an Id, which may be half of an earlier try", () => {
  const book = readyBook();
  log(book, { id: "plan-0001", state: "planned" });
  log(book, { id: "mixed-001", corrects: "plan-0001" });
  book.grid.tab("Batch log").write(3, 1, [[{ value: null }]]);
  expect(log(book, { id: "mixed-002", corrects: "plan-0001" })).toMatchObject({ ok: true, reply: { written: 1 } });
});

describe("a correction", () => {
  test("keeps the readings it was sent with, and the old row as it was", () => {
    const book = readyBook();
    log(book, { id: "batch-0001" });
    const old = book.values("Batch log")[1];
    log(book, { id: "batch-0002", litres: 8, corrects: "batch-0001", measured: { ecMsCm: 1.85, pH: null } });
    expect(book.values("Batch log")[1]).toEqual(old);
    expect(load(book).batches).toMatchObject([
      { id: "batch-0002", litres: 8, measuredEcMsCm: 1.85, measuredPH: null, corrects: "batch-0001" },
    ]);
  });

  test("of a row that is not there is refused, with nothing written", () => {
    const book = readyBook();
    const answer = log(book, { id: "batch-0002", corrects: "batch-0001" });
    expect(answer).toMatchObject({ ok: false, code: "no-row" });
    expect(book.values("Batch log")).toHaveLength(1);
  });

  test("of one that was taken back is refused", () => {
    const book = readyBook();
    log(book, { id: "batch-0001" });
    book.reply({ ask: "take back", who: "Ana", log: "Batch log", id: "take-0001", takes: "batch-0001" });
    expect(log(book, { id: "batch-0002", corrects: "batch-0001" })).toMatchObject({ ok: false });
    expect(load(book).batches).toEqual([]);
  });

  test("an EC in µS/cm is refused", () => {
    const book = readyBook();
    log(book, { id: "batch-0001" });
    const answer = log(book, { id: "batch-0002", corrects: "batch-0001", measured: { ecMsCm: 1850, pH: null } });
    expect(answer).toMatchObject({ ok: false });
  });
});
