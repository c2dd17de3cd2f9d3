/** Readings of a batch: a retry does no harm, and another reading never takes the place of one that stands. */

import { describe, expect, test } from "vitest";
import { batch, dateCell, readyBook, type TestBook } from "../sheet/workbook.ts";

function logged(): { book: TestBook; id: string } {
  const book = readyBook();
  const entry = batch();
  book.reply({ ask: "log batch", who: "", batch: batch() });
  book.reply({ ask: "log batch", who: "", batch: entry });
  book.calls.length = 0;
  return { book, id: entry.id };
}
const readings = (batchId: string, ecMsCm: number | null, pH: number | null, verdict = "") =>
  ({ ask: "log readings", batchId, ecMsCm, pH, verdict }) as const;
const standing = (book: TestBook, row = 3) => [
  book.cell("Batch log", row, "Measured EC"),
  book.cell("Batch log", row, "Measured pH"),
];
const columnOf = (book: TestBook, heading: string) => (book.values("Batch log")[0] ?? []).indexOf(heading) + 1;

describe("readings", () => {
  test("go to their batch, in one write", () => {
    const { book, id } = logged();
    expect(book.reply(readings(id, 1.6, 5.9))).toEqual({ written: 1, already: 0, differing: [] });
    expect(standing(book)).toEqual([1.6, 5.9]);
    expect(standing(book, 2)).toEqual([null, null]);
    expect(book.calls.filter((name) => name === "Range.setValues")).toHaveLength(1);
    expect(book.reply({ ask: "load" }).batches[0]).toMatchObject({ id, measuredEcMsCm: 1.6, measuredPH: 5.9 });
  });

  test("go to their batch after rows were sorted and columns moved apart", () => {
    const { book, id } = logged();
    const tab = book.grid.tab("Batch log");
    tab.sortRows({ row: 2, column: 1, rows: 2, columns: 25 }, 1, true);
    tab.moveColumn(22, 2);
    book.reply(readings(id, 1.6, 5.9));
    expect(standing(book, 2)).toEqual([1.6, 5.9]);
  });

  test("sent again are already there", () => {
    const { book, id } = logged();
    book.reply(readings(id, 1.6, 5.9));
    expect(book.reply(readings(id, 1.6, 5.9))).toEqual({ written: 0, already: 1, differing: [] });
  });

  test("may come one by one", () => {
    const { book, id } = logged();
    book.reply(readings(id, 1.6, null));
    expect(book.reply(readings(id, null, 5.9)).written).toBe(1);
    expect(book.reply(readings(id, 1.6, 5.9)).already).toBe(1);
    expect(standing(book)).toEqual([1.6, 5.9]);
  });

  test("that a person typed with a comma count as standing", () => {
    const { book, id } = logged();
    book.grid.tab("Batch log").write(3, 22, [[{ value: "1,6" }]]);
    expect(book.reply(readings(id, 1.6, 5.9)).written).toBe(1);
    expect(standing(book)).toEqual(["1,6", 5.9]);
  });
});

describe("refused, with nothing written:", () => {
  test("another reading than stands there", () => {
    const { book, id } = logged();
    book.reply(readings(id, 1.6, null));
    const { code, sentence } = book.refusal(readings(id, 1.8, 5.9));
    expect(code).toBe("reading-there");
    expect(sentence).toBe(
      "Measured EC of this batch already stands as 1.6 in row 3 of “Batch log”, so 1.8 was not written. If the new reading is right, type it there.",
    );
    expect(standing(book)).toEqual([1.6, null]);
  });

  test("a reading where a word stands", () => {
    const { book, id } = logged();
    book.grid.tab("Batch log").write(3, 23, [[{ value: "sour" }]]);
    expect(book.refusal(readings(id, 1.6, 5.9)).sentence).toMatch(
      /Measured pH of this batch already stands as sour in row 3/,
    );
    expect(standing(book)).toEqual([null, "sour"]);
  });

  test.each([
    ["an error cell", { value: { error: "#N/A" } }, "#N/A"],
    ["a tick", { value: true }, "something else"],
    ["a date", dateCell("2026-03-01"), "something else"],
  ])("a reading where %s stands", (_, cell, word) => {
    const { book, id } = logged();
    book.grid.tab("Batch log").write(3, 23, [[cell]]);
    const { code, sentence } = book.refusal(readings(id, 1.6, 5.9));
    expect(code).toBe("reading-there");
    expect(sentence).toContain(`already stands as ${word} in row 3`);
    expect(standing(book)[0]).toBeNull();
  });

  test("a reading where a formula stands", () => {
    const { book, id } = logged();
    book.grid.tab("Batch log").write(3, 22, [[{ value: "", formula: '=""' }]]);
    expect(book.refusal(readings(id, 1.6, 5.9)).sentence).toMatch(/Cell V3 of “Batch log” holds a formula/);
    expect(standing(book)[1]).toBeNull();
  });

  test("neither reading", () => {
    const { book, id } = logged();
    expect(book.refusal(readings(id, null, null)).code).toBe("no-reading");
  });

  test("an EC in µS/cm", () => {
    const { book, id } = logged();
    expect(book.refusal(readings(id, 1600, null)).sentence).toMatch(
      /EC is 1600 mS\/cm\. Give a number from 0 to 100 mS\/cm/,
    );
  });

  test("a batch whose row was deleted", () => {
    const { book, id } = logged();
    book.grid.tab("Batch log").deleteRows(3, 1);
    expect(book.refusal(readings(id, 1.6, null))).toEqual({
      code: "no-batch",
      sentence: expect.stringMatching(
        /“Batch log” has no batch with the Id test-id-\d+\. Its row may have been deleted/,
      ),
    });
  });

  test("a batch whose row was copied", () => {
    const { book, id } = logged();
    book.grid.tab("Batch log").write(4, 1, [[{ value: id }]]);
    expect(book.refusal(readings(id, 1.6, null))).toEqual({
      code: "batch-twice",
      sentence: expect.stringMatching(/Rows 3 and 4 of “Batch log” have the same Id/),
    });
  });

  test("a missing column", () => {
    const { book, id } = logged();
    book.grid.tab("Batch log").deleteColumns(23, 1);
    expect(book.refusal(readings(id, 1.6, 5.9)).sentence).toMatch(/“Batch log” has no column “Measured pH”/);
    expect(book.cell("Batch log", 3, "Measured EC")).toBeNull();
  });
});

describe("the verdict", () => {
  const said = "Look again: Calcium nitrate went in twice.";
  const at = (book: TestBook) => book.cell("Batch log", 3, "Verdict");

  test("goes beside its readings, in one write, as literal text", () => {
    const { book, id } = logged();
    expect(book.reply(readings(id, 1.6, 5.9, "=1+1"))).toEqual({ written: 1, already: 0, differing: [] });
    expect(at(book)).toBe("=1+1");
    expect(book.calls.filter((name) => name === "Range.setValues")).toHaveLength(1);
    expect(book.reply(readings(id, 1.6, 5.9, "=1+1"))).toEqual({ written: 0, already: 1, differing: [] });
  });

  test("comes later to readings that are there already", () => {
    const { book, id } = logged();
    book.reply(readings(id, 1.6, null));
    expect(book.reply(readings(id, 1.6, null, said)).written).toBe(1);
    expect(at(book)).toBe(said);
  });

  test("never goes over another text, and the readings are kept all the same", () => {
    const { book, id } = logged();
    book.grid.tab("Batch log").write(3, columnOf(book, "Verdict"), [[{ value: "my own" }]]);
    const { written, differing } = book.reply(readings(id, 1.6, 5.9, said));
    expect(written).toBe(1);
    expect(differing).toEqual(["The verdict in the log is another one and was left as it is: “my own”."]);
    expect(standing(book)).toEqual([1.6, 5.9]);
    expect(at(book)).toBe("my own");
    expect(book.reply(readings(id, 1.6, 5.9, said))).toEqual({ written: 0, already: 1, differing });
    expect(book.reply(readings(id, 1.6, 5.9))).toEqual({ written: 0, already: 1, differing: [] });
  });

  test("never goes over a formula, in its cell or in the heading", () => {
    for (const row of [3, 1]) {
      const { book, id } = logged();
      const column = columnOf(book, "Verdict");
      book.grid.tab("Batch log").write(row, column, [[{ value: row === 1 ? "Verdict" : "", formula: '=""' }]]);
      const { written, differing } = book.reply(readings(id, 1.6, 5.9, said));
      expect(written).toBe(1);
      expect(differing).toEqual(["The verdict was not kept: a formula fills that cell."]);
      expect(standing(book)).toEqual([1.6, 5.9]);
    }
  });

  test("without its column is told, and the readings are kept", () => {
    const { book, id } = logged();
    book.grid.tab("Batch log").deleteColumns(columnOf(book, "Verdict"), 1);
    const { written, differing } = book.reply(readings(id, 1.6, 5.9, said));
    expect(written).toBe(1);
    expect(differing[0]).toMatch(/^The verdict was not kept\. “Batch log” has no column “Verdict”\./);
  });

  test("with two columns that could be its own is told, and the readings are kept", () => {
    const { book, id } = logged();
    const tab = book.grid.tab("Batch log");
    tab.deleteColumns(columnOf(book, "Verdict"), 1);
    const width = tab.extent().column;
    tab.insertColumns(width + 1, 2);
    tab.write(1, width + 1, [[{ value: "Verdict" }, { value: "verdict" }]]);
    const { written, differing } = book.reply(readings(id, 1.6, 5.9, said));
    expect(written).toBe(1);
    expect(differing[0]).toMatch(/^The verdict was not kept\. “Batch log” has the heading “Verdict” in columns/);
  });
});
