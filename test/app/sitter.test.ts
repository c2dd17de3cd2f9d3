/** The sitter's page as the panel asks for it: what it may say of rows, and how it comes back. */

import { expect, test } from "vitest";
import type { RequestFor } from "../../src/app/contract.ts";
import { dateCell, readyBook } from "../sheet/workbook.ts";

const page = (given: Partial<RequestFor<"write sitter page">> = {}): RequestFor<"write sitter page"> => ({
  ask: "write sitter page",
  cells: [
    ["For Mira", null],
    ["Hoya", 150],
    ["Fern", "=1+1"],
  ],
  widths: [120, 90],
  boldRows: [1],
  wrapped: { from: 2, to: 3 },
  ...given,
});

test("comes back as it stands, with what the sitter typed on it; what is no text or number comes blank", () => {
  const book = readyBook();
  const { tab } = book.reply(page());
  expect(tab).toBe("Sitter’s page");
  book.grid.tab(tab).write(2, 3, [[{ value: true }, dateCell("2026-03-12")]]);
  expect(book.reply({ ask: "read sitter page" })).toEqual({
    tab,
    rows: [
      ["For Mira", "", "", ""],
      ["Hoya", 150, "true", ""],
      ["Fern", "=1+1", "", ""],
    ],
  });
});

test.each<[string, Partial<RequestFor<"write sitter page">>]>([
  ["of its last row alone", { wrapped: { from: 3, to: 3 }, boldRows: [3] }],
  ["of none", { wrapped: null, boldRows: [] }],
])("may be told %s to wrap and to set bold", (_, given) => {
  expect(readyBook().reply(page(given))).toEqual({ tab: "Sitter’s page", kept: null });
});

test.each<[string, Partial<RequestFor<"write sitter page">>, string]>([
  ["wrapped rows end above where they begin", { wrapped: { from: 3, to: 2 } }, "Rows 3 to 2"],
  ["they reach below the page", { wrapped: { from: 2, to: 4 } }, "Rows 2 to 4"],
  ["a bold row stands below it", { boldRows: [1, 4] }, "Row 4"],
])("is refused where %s, and nothing is written", (_, given, words) => {
  const book = readyBook();
  const before = book.grid.tabs().length;
  const { code, sentence } = book.refusal(page(given));
  expect(code).toBe("page-rows");
  expect(sentence).toContain(words);
  expect(sentence).toContain("rows 1 to 3");
  expect(book.grid.tabs()).toHaveLength(before);
});
