/** Rows out of the sheet as they are, page by page, and rows back in: once each, as text, never over what stands. */

import { describe, expect, test } from "vitest";
import type { RequestFor } from "../../src/app/contract.ts";
import { readPage } from "../../src/app/pages.ts";
import { dateCell, readyBook, serialOf, type TestBook } from "../sheet/workbook.ts";
import { bookWith } from "./book.ts";

const page = (tab: RequestFor<"read page">["tab"], from = 2, rows = 10) =>
  ({ ask: "read page", tab, from, rows }) as const;
const bring = (tab: RequestFor<"import rows">["tab"], headings: string[], ...rows: RequestFor<"import rows">["rows"]) =>
  ({ ask: "import rows", tab, headings, rows }) as const;

describe("a page", () => {
  test("has every cell as it is, days as days, and leaves blank rows out", () => {
    const book = bookWith({
      Plants: [
        ["Plant", "Kind", "Place", "Pot mL"],
        ["Fern", "", true, 800],
        ["", "", "", ""],
        [" =1+1", dateCell("2026-03-01"), { value: { error: "#N/A" } }, 0],
      ],
    });
    const { rows } = book.reply(page("Plants"));
    expect(rows.map((row) => row.slice(0, 4))).toEqual([
      ["Fern", null, true, 800],
      [" =1+1", { day: "2026-03-01" }, "#N/A", 0],
    ]);
  });

  test("names our columns by our headings, and those of somebody else by theirs, worked out or not", () => {
    const book = readyBook();
    const tab = book.grid.tab("Events");
    tab.write(1, 1, [
      [
        ...[{ value: "What we do" }, { value: "Disturbs roots" }, { value: null }, { value: 7, formula: "=3+4" }],
        ...[{ value: "Count", formula: '={"Count"}' }, { value: "Twice" }, { value: "Once" }],
      ],
    ]);
    tab.write(2, 6, [[{ value: 2, formula: "=1+1" }]]);
    const own = { ours: false, computed: false };
    expect(book.reply(page("Events")).columns).toEqual([
      { heading: "Event", ours: true, computed: false },
      { heading: "Disturbs roots", ours: true, computed: false },
      { ...own, heading: "" },
      { heading: "7", ours: false, computed: true },
      { heading: "Count", ours: false, computed: true },
      { heading: "Twice", ours: false, computed: true },
      { ...own, heading: "Once" },
    ]);
  });

  test("a column of ours that is worked out by a formula is still ours", () => {
    const book = readyBook();
    const at = (book.values("Feeds")[0] ?? []).indexOf("On hand") + 1;
    book.grid.tab("Feeds").write(1, at, [[{ value: "On hand", formula: '={"On hand"}' }]]);
    expect(book.reply(page("Feeds")).columns[at - 1]).toEqual({ heading: "On hand", ours: true, computed: false });
  });

  test("says where the next one begins, until the grid ends", () => {
    const book = readyBook({ tabs: { Plants: { rows: 5, cells: [["Plant"], ["a"], ["b"], ["c"], ["d"]] } } });
    const [first, second, third] = [page("Plants", 2, 2), page("Plants", 4, 2), page("Plants", 6, 2)].map((request) =>
      book.reply(request),
    );
    const names = (reply: typeof first) => reply?.rows.map(([plant]) => plant);
    expect([names(first), first?.next]).toEqual([["a", "b"], 4]);
    expect([names(second), second?.next]).toEqual([["c", "d"], 6]);
    expect([names(third), third?.next]).toEqual([[], null]);
    expect(book.reply(page("Plants", 4, 3))).toMatchObject({ next: null, rows: [{ 0: "c" }, { 0: "d" }] });
  });

  test("of a tab that is not there, or has no headings, has nothing", () => {
    const book = readyBook();
    book.grid.removeTab(book.grid.tab("Feeds").id);
    expect(book.reply(page("Feeds"))).toEqual({ tab: null, columns: [], rows: [], next: null });
    const blank = readyBook();
    const headings = blank.values("Events")[0] ?? [];
    blank.grid.tab("Events").write(1, 1, [headings.map(() => ({ value: null }))]);
    expect(blank.reply(page("Events"))).toEqual({ tab: "Events", columns: [], rows: [], next: null });
  });

  test("of Plants is one of the plant list in use, under our headings", () => {
    const cells = [
      ["Nr", "Wer"],
      [1, "Hoya"],
    ];
    const book = readyBook({ tabs: { Grün: { cells } } });
    book.reply({ ask: "use plant list", tab: "Grün", columns: { Plant: "Wer" } });
    expect(book.reply(page("Plants"))).toMatchObject({
      tab: "Grün",
      columns: [
        { heading: "Nr", ours: false },
        { heading: "Plant", ours: true },
      ],
      rows: [[1, "Hoya"]],
    });
    expect(book.reply(page("Events"))).toMatchObject({ tab: "Events" });
    book.grid.tab("Grün").deleteRows(1, 2);
    expect(book.reply(page("Plants"))).toEqual({ tab: "Grün", columns: [], rows: [], next: null });
  });

  test("of Plants needs no Settings, and finds what was renamed by its marks", () => {
    const book = bookWith({ Plants: [["Plant"], ["Fern"]] });
    book.grid.tab("Plants").write(1, 1, [[{ value: "Wer" }]]);
    book.grid.tab("Plants").rename("Grün");
    book.grid.removeTab(book.grid.tab("Settings").id);
    const { tab, columns } = book.reply(page("Plants"));
    expect([tab, columns[0]]).toEqual(["Grün", { heading: "Plant", ours: true, computed: false }]);
    book.grid.removeTab(book.grid.tab("Grün").id);
    expect(book.reply(page("Plants"))).toMatchObject({ tab: null });
  });

  test("of a list of one's own is found although Settings was renamed", () => {
    const book = readyBook({ tabs: { Grün: { cells: [["Wer"], ["Hoya"]] } } });
    book.reply({ ask: "use plant list", tab: "Grün", columns: { Plant: "Wer" } });
    book.grid.tab("Settings").write(1, 1, [[{ value: "What" }, { value: "How" }]]);
    book.grid.tab("Settings").rename("Agreed");
    expect(book.reply(page("Plants"))).toMatchObject({ tab: "Grün", rows: [["Hoya"]] });
    expect(book.refusal(bring("Plants", ["Plant"], ["Ivy"])).code).toBe("own-list");
  });

  test("has an error that the host hands over as an object as a text that says so", () => {
    const book = bookWith({ Plants: [["Plant"], ["broken"]] });
    const port = book.workbook();
    const tabs = () =>
      port.tabs().map((tab) => ({
        ...tab,
        readBlock: (block: Parameters<typeof tab.readBlock>[0]) =>
          tab.readBlock(block).map((row) => row.map((raw) => (raw === "broken" ? new Error("#REF!") : raw))),
      }));
    expect(readPage({ ...port, tabs }, page("Plants")).rows[0]?.[0]).toBe("#ERROR!");
  });
});

describe("rows brought in", () => {
  const headings = ["Id", "Date", "Plant", "Event"];

  test("stand under their headings as text and days, once, with a short row's end blank", () => {
    const book = readyBook();
    const sent = bring("Care log", headings, ["care-0001", { day: "2026-03-01" }, "=1+1", "Note"], ["care-0002", null]);
    expect(book.reply(sent)).toEqual({ written: 2, already: 0, differing: [] });
    expect(book.reply(sent)).toEqual({ written: 0, already: 2, differing: [] });
    expect(book.values("Care log").map((row) => row.slice(0, 4))).toEqual([
      ["Id", "Date", "Plant", "Event"],
      ["care-0001", serialOf("2026-03-01"), "=1+1", "Note"],
      ["care-0002", null, null, null],
    ]);
  });

  test("go into a column of one's own that is there, and nowhere without it", () => {
    const book = readyBook();
    const sent = bring("Events", ["Event", "Disturbs roots", "Luck"], ["Bath", true, "good"]);
    const { code, sentence } = book.refusal(sent);
    expect([code, sentence]).toEqual(["no-column", expect.stringMatching(/“Events” has no column “Luck”/)]);
    book.grid.tab("Events").write(1, 3, [[{ value: "Luck" }]]);
    expect(book.reply(sent)).toMatchObject({ written: 1 });
    expect(book.values("Events").at(-1)).toEqual(["Bath", true, "good"]);
  });

  test("that stand there with other values are left, and twenty of them told one by one", () => {
    const lines = (note: string, count: number) =>
      Array.from({ length: count }, (_, at) => [`care-${1000 + at}`, { day: "2026-03-01" }, "Fern", note]);
    const told = (count: number) => {
      const book = readyBook();
      book.reply(bring("Care log", headings, ...lines("Note", count)));
      const { differing, ...counts } = book.reply(bring("Care log", headings, ...lines("Top up", count)));
      expect(counts).toEqual({ written: 0, already: count });
      expect(book.cell("Care log", 2, "Event")).toBe("Note");
      return differing;
    };
    expect(told(20)).toHaveLength(20);
    const many = told(23);
    expect(many).toHaveLength(21);
    expect(many[0]).toMatch(/row 2 of “Care log”, with another Event/);
    expect(many[20]).toMatch(/^3 more rows/);
  });

  test.each<[string, RequestFor<"import rows">, string, RegExp]>([
    [
      "a day that is none",
      bring("Care log", headings, ["care-0001", { day: "2026-02-30" }]),
      "not-a-day",
      /2026-02-30/,
    ],
    ["more than a cell holds", bring("Care log", headings, ["x".repeat(50_001)]), "request", /at most|not one of/],
  ])("with %s are refused, and nothing is written", (_, request, code, words) => {
    const book = readyBook();
    expect(book.refusal(request)).toEqual({ code, sentence: expect.stringMatching(words) });
    expect(book.values("Care log")).toHaveLength(1);
  });

  test("of plants go into Plants, and never into a list of one's own", () => {
    const book = readyBook({ tabs: { Grün: { cells: [["Wer"]] } } });
    expect(book.reply(bring("Plants", ["Plant"], ["Moss"]))).toMatchObject({ written: 1 });
    expect(book.cell("Plants", 2, "Plant")).toBe("Moss");
    book.grid.tab("Plants").write(1, 1, [[{ value: "Who" }]]);
    book.grid.tab("Plants").rename("Green");
    expect(book.reply(bring("Plants", ["Plant"], ["Moss"], ["Palm"]))).toMatchObject({ written: 1, already: 1 });
    expect(book.cell("Green", 3, "Who")).toBe("Palm");
    book.reply({ ask: "use plant list", tab: "Grün", columns: { Plant: "Wer" } });
    expect(book.refusal(bring("Plants", ["Plant"], ["Ivy"])).code).toBe("own-list");
    expect(book.values("Grün")).toEqual([["Wer"]]);
    expect(book.values("Green")).toHaveLength(3);
    expect(book.reply(bring("Events", ["Event"], ["Bath"]))).toMatchObject({ written: 1 });
  });

  test("of plants need no Settings", () => {
    const book = readyBook();
    book.grid.removeTab(book.grid.tab("Settings").id);
    expect(book.reply(bring("Plants", ["Plant"], ["Moss"]))).toMatchObject({ written: 1 });
  });
});

describe("settings brought in", () => {
  const setTo = (book: TestBook, setting: string) => book.values("Settings").find(([name]) => name === setting)?.[1];

  test("replace what stands beside them or come below; what belongs to one workbook stays", () => {
    const book = readyBook();
    const before = book.values("Settings").length;
    const sent = bring(
      "Settings",
      ["Setting", "Value"],
      ["Rest days", 90],
      ["pH low", 5.5],
      ["Our word", "yes"],
      ["People", null],
      ["Our blank", null],
      [" today", { day: "2020-01-01" }],
      ["Plant list tab", "Grün"],
      ["plant list columns", 'Plant: "Wer"'],
      [7, 8],
      [null, 9],
    );
    expect(book.reply(sent)).toEqual({ written: 3, already: 2, differing: [] });
    expect([setTo(book, "Rest days"), setTo(book, "Our word"), setTo(book, "pH low")]).toEqual([90, "yes", 5.5]);
    expect(setTo(book, "Today")).toBe(serialOf("2026-03-10"));
    expect(setTo(book, "Plant list tab")).toBeNull();
    expect(book.values("Settings")).toHaveLength(before + 2);
    expect(book.reply(sent)).toEqual({ written: 0, already: 5, differing: [] });
  });

  test("may clear a value; without the tab they are refused", () => {
    const book = readyBook();
    expect(book.reply(bring("Settings", ["Setting"], ["Rest days"]))).toMatchObject({ written: 1 });
    expect(setTo(book, "Rest days")).toBeNull();
    book.grid.removeTab(book.grid.tab("Settings").id);
    expect(book.refusal(bring("Settings", ["Setting", "Value"], ["Rest days", 1])).code).toBe("no-tab");
  });
});
