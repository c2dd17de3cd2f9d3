/** Tabs of an older version are brought up to date after the plan was shown; those of a newer one are left alone. */

import { describe, expect, test } from "vitest";
import type { PaperScreen } from "../../sample-sheet/workbench/standin/ui.ts";
import { setUpTabs } from "../../src/host/menu.ts";
import { SCHEMA } from "../../src/sheet/schema.ts";
import { dump } from "./dump.ts";
import { careEntry, readyBook, type TestBook } from "./workbook.ts";

const care = () => ({ ask: "log care" as const, who: "Ana", entries: [careEntry()] });
const screenOf = (book: TestBook) => book.host.screen as PaperScreen;

/** A workbook as the first version left it: no version on the tabs, and the columns of the second not there. */
function firstVersion(): TestBook {
  const book = readyBook();
  book.reply(care());
  for (const tab of book.grid.tabs()) {
    for (const { id, value } of tab.marks()) if (value.startsWith("schema:")) tab.removeMark(id);
  }
  for (const [name, headings] of [
    ["Care log", ["Corrects"]],
    ["Batch log", ["State", "Corrects"]],
  ] as const) {
    for (const heading of headings) {
      const at = (book.values(name)[0] ?? []).indexOf(heading);
      book.grid.tab(name).deleteColumns(at + 1, 1);
    }
  }
  return book;
}

describe("a workbook of the first version", () => {
  test("is shown what would be done, and nothing is done without a yes", () => {
    const book = firstVersion();
    const before = dump(book.grid);
    screenOf(book).agree = false;
    setUpTabs();
    const [plan, outcome] = screenOf(book).alerts;
    expect(plan).toMatch(/These tabs are of an older version and would be brought up to date/);
    expect(plan).toContain("“Care log”: the headings Corrects go to the right of what is there.");
    expect(plan).toContain("“Batch log”: the headings State, Corrects go to the right of what is there.");
    expect(plan).toContain("“Plants”: no new headings, only the version of its columns is noted.");
    expect(plan).toMatch(/Cells that hold something stay as they are.*Go on\?$/s);
    expect(outcome).toBe("Nothing was changed.");
    expect(dump(book.grid)).toBe(before);
  });

  test("is brought up to date once, with every cell where it was", () => {
    const book = firstVersion();
    const before = book.values("Care log");
    setUpTabs();
    const after = book.values("Care log");
    before.forEach((row, at) => {
      expect(after[at]?.slice(0, row.length)).toEqual(row);
    });
    expect(after[0]).toContain("Corrects");
    expect(screenOf(book).alerts[1]).toBe(
      "Added the headings Corrects to Care log, State to Batch log, Corrects to Batch log.",
    );
    const once = dump(book.grid);
    setUpTabs();
    expect(screenOf(book).alerts[2]).toBe("All tabs are there; nothing had to be added.");
    expect(dump(book.grid)).toBe(once);
  });

  test("that was stopped half-way is asked about again, and finished", () => {
    let left = 30;
    let armed = false;
    const book = readyBook({
      onCall: (name) => {
        if (armed && /set|add|insert/i.test(name) && left-- === 0) throw new Error("Service Spreadsheets timed out");
      },
    });
    for (const tab of book.grid.tabs()) {
      for (const { id } of tab.marks()) tab.removeMark(id);
    }
    armed = true;
    setUpTabs();
    expect(screenOf(book).alerts[1]).toMatch(/timed out/);
    setUpTabs();
    expect(screenOf(book).alerts[2]).toMatch(/of an older version/);
    setUpTabs();
    expect(screenOf(book).alerts[4]).toBe("All tabs are there; nothing had to be added.");
  });

  test("can be logged to and read before that", () => {
    const book = firstVersion();
    expect(book.reply(care()).written).toBe(1);
    expect(book.reply({ ask: "load" }).care.rows).toHaveLength(2);
  });
});

describe("a tab of a newer version", () => {
  function newer(name: string): TestBook {
    const book = readyBook();
    const mark = {
      id: 99_999,
      column: null,
      key: "stillroot",
      value: `schema:${name}/${SCHEMA + 1}`,
      visibility: "DOCUMENT" as const,
    };
    book.grid.tab(name).putMark(mark);
    return book;
  }

  test("is not written to, and the sentence says what to do", () => {
    const book = newer("Care log");
    const before = dump(book.grid);
    const { code, sentence } = book.refusal(care());
    expect(code).toBe("newer-tab");
    expect(sentence).toBe(
      "“Care log” was set up by a newer Stillroot (its columns are of version 3, this one knows 2). It is left alone. Take the newer script, then reload the browser page. Nothing was written.",
    );
    setUpTabs();
    expect(screenOf(book).alerts.join(" ")).toMatch(/“Care log” was set up by a newer Stillroot/);
    expect(dump(book.grid)).toBe(before);
  });

  test("is read as well as it can be, and the panel says so", () => {
    const { problems } = newer("Care log").reply({ ask: "load" });
    expect(problems.join(" ")).toMatch(/“Care log” was set up by a newer Stillroot/);
  });

  test("keeps today's date as it is, when it is Settings", () => {
    const book = newer("Settings");
    book.grid.tab("Settings").write(2, 2, [[{ value: 1 }]]);
    const { problems } = book.reply({ ask: "load" });
    expect(book.cell("Settings", 2, "Value")).toBe(1);
    expect(problems.join(" ")).toMatch(
      /Today's date in Settings could not be refreshed. “Settings” was set up by a newer/,
    );
  });
});
