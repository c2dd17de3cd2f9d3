/** Which marks are read, and what a mark, a heading and another usual heading say together about a column. */

import { describe, expect, test } from "vitest";
import { type Book, columnAt, findColumns, findTab, openBook, someByMark } from "../../src/sheet/find.ts";
import type { Mark, TabPort, WorkbookPort } from "../../src/sheet/port.ts";
import type { TabName, TabSpec } from "../../src/sheet/spec.ts";

const SPEC = {
  name: "Feeds",
  aliases: ["Salts", "Powders"],
  key: "Feed",
  help: "",
  columns: [
    { heading: "Feed", aliases: ["Product"], kind: "name", note: "" },
    { heading: "N", kind: "number", note: "" },
    { heading: "Note", aliases: ["Remark"], kind: "text", note: "" },
  ],
} as unknown as TabSpec;
const tabOf = (id: number, name: string) => ({ id, name }) as TabPort;
const FEEDS = tabOf(1, "Feeds");
const bookOf = (marks: readonly Mark[], tabs: readonly TabPort[] = [FEEDS, tabOf(2, "Copy of Feeds")]): Book => ({
  workbook: {} as never,
  tabs,
  marks,
});
const mark = (heading: string, column: number, tabId = 1): Mark => ({ tabId, column, text: `column:Feeds/${heading}` });
const columns = (headings: readonly unknown[], ...marks: Mark[]) => findColumns(bookOf(marks), SPEC, FEEDS, headings);
const told = (work: () => unknown): unknown => {
  try {
    return work();
  } catch (error) {
    return error;
  }
};

test.each<[names: TabName[], read: string[]]>([
  [["Feeds"], ["tab:Feeds", "schema:Feeds/2", "column:Feeds/N"]],
  [
    ["Plants", "Feeds"],
    ["tab:Feeds", "schema:Feeds/2", "column:Feeds/N", "tab:Plants", "list:Mine", "list:Mine/Plant=Wer"],
  ],
  [[], []],
])("of %j, the marks of these tabs are read, and of Plants those of a list as well", (names, read) => {
  const all = ["tab:Feeds", "schema:Feeds/2", "column:Feeds/N", "tab:Plants", "list:Mine", "list:Mine/Plant=Wer"];
  const others = ["tab:Waters", "column:Waters/Ca", "schema:Waters/2", "made:Days at rest"];
  let asked: (text: string) => boolean = () => false;
  const workbook = {
    tabs: () => [],
    marks: (which: (text: string) => boolean) => {
      asked = which;
      return [];
    },
  } as unknown as WorkbookPort;
  openBook(workbook, names);
  expect([...all, ...others].filter(asked)).toEqual(read);
  openBook(workbook, names, (text) => text.startsWith("made:"));
  expect([...all, ...others].filter(asked)).toEqual([...read, "made:Days at rest"]);
});

test("two tabs that could be meant are refused by their code", () => {
  const tabs = [tabOf(1, "Salts"), tabOf(2, "Powders")];
  expect(told(() => findTab(bookOf([], tabs), SPEC))).toMatchObject({ name: "BadInput", code: "two-tabs" });
});

describe("a column", () => {
  test("is found by its mark on this tab, not by one on a copy", () => {
    expect(columns(["Name", "N"], mark("Feed", 1)).at.get("Feed")).toBe(1);
    expect(columns(["Name", "N"], mark("Feed", 1, 2)).at.has("Feed")).toBe(false);
    expect(columns(["Name", "N"], mark("Feed", 1, 2)).doubts.has("Feed")).toBe(false);
  });

  test("that is missing and one in doubt are told apart by their codes", () => {
    const found = columns(["Feed", "N", "N"]);
    expect(told(() => columnAt(found, "N"))).toMatchObject({ code: "column-in-doubt" });
    expect(told(() => columnAt(found, "Note"))).toMatchObject({ code: "no-column" });
  });

  test("whose mark stands beyond the last heading has lost its heading", () => {
    const { at, doubts } = columns(["Feed", "Note"], mark("N", 5));
    expect(at.has("N")).toBe(false);
    expect(doubts.get("N")).toMatch(/^Column E of “Feeds” was “N” and has lost its heading/);
  });

  test("is in doubt among those with both mark and heading, not among those with the heading alone", () => {
    const { doubts } = columns(["N", "N", "N", "Feed"], mark("N", 1), mark("N", 3));
    expect(doubts.get("N")).toMatch(/“N” in columns A and C\. Rename/);
  });

  test("under another usual heading is not taken from where another column's mark stands", () => {
    expect(columns(["Product", "N"]).at.get("Feed")).toBe(1);
    expect(columns(["Product", "N"], mark("N", 2)).at.get("Feed")).toBe(1);
    expect(columns(["Product", "N"], mark("Note", 1)).at.has("Feed")).toBe(false);
  });
});

test.each<[what: string, at: [string, number][], headings: unknown[], some: boolean]>([
  [
    "each under its own heading",
    [
      ["Feed", 1],
      ["N", 2],
      ["Note", 3],
    ],
    ["Feed", "n ", "NOTE"],
    false,
  ],
  [
    "under other usual headings",
    [
      ["Feed", 1],
      ["N", 2],
      ["Note", 3],
    ],
    ["Product", "N", "Remark"],
    false,
  ],
  [
    "one renamed",
    [
      ["Feed", 1],
      ["N", 2],
      ["Note", 3],
    ],
    ["Feed", "Nitrogen", "Note"],
    true,
  ],
  [
    "the first renamed",
    [
      ["Feed", 1],
      ["N", 2],
    ],
    ["Salt", "N"],
    true,
  ],
  [
    "one under the heading of another",
    [
      ["Feed", 1],
      ["N", 2],
    ],
    ["N", "Feed"],
    true,
  ],
  ["one not there", [["N", 2]], ["Mine", "N"], false],
  ["none there", [], ["Mine"], false],
])("found by its mark alone, %s", (_, at, headings, some) => {
  expect(someByMark(SPEC, { tabName: "Feeds", at: new Map(at), doubts: new Map() }, headings)).toBe(some);
});
