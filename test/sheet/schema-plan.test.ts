/** The version of a tab's columns by its marks, and what would be done to older tabs. */

import { describe, expect, test } from "vitest";
import type { Book } from "../../src/sheet/find.ts";
import type { Mark, TabPort } from "../../src/sheet/port.ts";
import { newerTab, planSetUp, planWords, SCHEMA, schemaOf } from "../../src/sheet/schema.ts";
import { openTestBook, readyBook } from "./workbook.ts";

describe("the version of a tab", () => {
  const tab = { id: 7, name: "My plants" } as TabPort;
  const of = (...marks: readonly (readonly [tabId: number, column: number | null, text: string])[]) =>
    schemaOf(
      { marks: marks.map(([tabId, column, text]): Mark => ({ tabId, column, text })) } as unknown as Book,
      tab,
      "Plants",
    );

  test("is the highest that its own marks say, and 1 without any", () => {
    expect(of()).toBe(1);
    expect(of([7, null, "schema:Plants/2"], [7, null, "schema:Plants/4"], [7, null, "schema:Plants/3"])).toBe(4);
    expect(of([8, null, "schema:Plants/4"])).toBe(1);
    expect(of([7, 3, "schema:Plants/4"])).toBe(1);
    expect(of([7, null, "schema:Feeds/4"])).toBe(1);
    expect(of([7, null, "schema:Plants/new"])).toBe(1);
    expect(of([7, null, "schema:Plants/2.5"], [7, null, "tab:Plants"])).toBe(1);
  });

  test("that is newer is told with both numbers", () => {
    const book = (version: number) =>
      ({ marks: [{ tabId: 7, column: null, text: `schema:Plants/${version}` }] }) as unknown as Book;
    expect(newerTab(book(SCHEMA), tab, "Plants")).toBeNull();
    expect(newerTab(book(SCHEMA + 1), tab, "Plants")).toMatch(/^“My plants”.* of version 3, this one knows 2\)/);
  });
});

describe("the plan", () => {
  test("of a workbook as set up is nothing; without a tab or a column it names them", () => {
    const book = readyBook();
    expect(planSetUp(book.workbook(), new Set())).toEqual({ newTabs: [], older: [] });
    book.grid.removeTab(book.grid.tab("Waters").id);
    book.grid.removeTab(book.grid.tab("Targets").id);
    book.grid.tab("Events").deleteColumns(2, 1);
    const plan = planSetUp(book.workbook(), new Set());
    expect(plan).toEqual({
      newTabs: ["Waters", "Targets"],
      older: [{ tab: "Events", version: 2, headings: ["Disturbs roots"] }],
    });
    const words = planWords(plan);
    expect(words.split("\n\n")).toHaveLength(4);
    expect(words).toContain("“Events”: the headings Disturbs roots go");
    expect(words).toContain("\n\nNew tabs: Waters, Targets.\n\n");
  });

  test("leaves out what it is told to, and tabs of a newer version", () => {
    const book = openTestBook({ tabs: { Plants: { cells: [["Plant"]] }, Events: { cells: [["Event"]] } } });
    const events = book.grid.tab("Events");
    events.putMark({ id: 99_999, key: "stillroot", column: null, value: "schema:Events/3", visibility: "DOCUMENT" });
    const { older, newTabs } = planSetUp(book.workbook(), new Set(["Feeds"]));
    expect(older).toMatchObject([{ tab: "Plants", version: 1 }]);
    expect(older[0]?.headings).toContain("Kind");
    expect(older[0]?.headings).not.toContain("Plant");
    expect(newTabs).not.toContain("Feeds");
    expect(newTabs).toContain("Waters");
  });

  test("has no words for new tabs where there are none, and none at all where nothing is older", () => {
    const older = [{ tab: "Plants", version: 1, headings: [] }];
    expect(planWords({ newTabs: [], older }).split("\n\n")).toHaveLength(3);
    expect(planWords({ newTabs: [], older })).toContain("“Plants”: no new headings");
    expect(planWords({ newTabs: ["Feeds"], older: [] })).toBe("");
  });
});
