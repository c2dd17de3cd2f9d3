/** Which tab and which columns are meant when the plants are listed on a tab of one's own. */

import { describe, expect, test } from "vitest";
import type { Book } from "../../src/sheet/find.ts";
import { openPlantList, ownColumns, tabNamed } from "../../src/sheet/plant-list.ts";
import type { Mark, TabPort } from "../../src/sheet/port.ts";
import type { Settings } from "../../src/sheet/settings.ts";

const CELLS = [
  ["Nr", "Wer", 2024],
  [1, "Hoya", "Bath"],
];
const tabOf = (id: number, name: string) =>
  ({
    id,
    name,
    readAll: () => CELLS,
    readColumns: (columns: number) => CELLS.map((row) => row.slice(0, columns)),
  }) as unknown as TabPort;
const bookOf = (tabs: readonly TabPort[], marks: readonly Mark[] = []): Book => ({
  workbook: {} as never,
  tabs,
  marks,
});
/** Settings that name the tab Mine, and its columns. */
const settingsOf = (map: string): Settings =>
  ({ text: (name: string) => (name === "Plant list tab" ? "Mine" : map) }) as unknown as Settings;
const told = (work: () => unknown): unknown => {
  try {
    return work();
  } catch (error) {
    return error;
  }
};

test("a tab is known by its very name first, then with case and spaces left out", () => {
  const tabs = [tabOf(1, "mine "), tabOf(2, "Mine"), tabOf(3, "Other")];
  expect(tabNamed(bookOf(tabs), "Mine")?.id).toBe(2);
  expect(tabNamed(bookOf(tabs), "MINE")?.id).toBe(1);
  expect(tabNamed(bookOf(tabs), "Yours")).toBeNull();
});

describe("a list that was renamed", () => {
  const mark = (tabId: number): Mark => ({ tabId, column: null, text: "list:Mine" });
  const open = (marks: readonly Mark[]) =>
    told(() => openPlantList(bookOf([tabOf(1, "Old"), tabOf(2, "Copy of Old")], marks), settingsOf('Plant: "Wer"')));

  test("is found by its mark, and not guessed where a copy bears it too", () => {
    expect(open([mark(2)])).toMatchObject({ tab: { id: 2 } });
    expect(open([mark(1), mark(2)])).toMatchObject({ name: "BadInput", code: "no-plant-list" });
    expect(open([])).toMatchObject({ name: "BadInput", code: "no-plant-list" });
  });
});

describe("a column", () => {
  const own = tabOf(1, "Mine");
  const at = (theirs: string, headings: readonly unknown[], marks: readonly Mark[] = []) =>
    ownColumns(bookOf([own, tabOf(2, "Copy of Mine")], marks), { tab: own, chosenAs: "Mine", map: { Plant: theirs } }, [
      ...headings,
    ]).at.get("Plant");
  const mark = (tabId: number, column: number): Mark => ({ tabId, column, text: "list:Mine/Plant=Wer" });

  test("may be headed by a number, but not by a tick", () => {
    expect(at("2024", ["Nr", 2024])).toBe(2);
    expect(at("true", ["Nr", true])).toBeUndefined();
  });

  test("that was renamed is found by its own mark, not by that on a copy of the tab", () => {
    expect(at("Wer", ["Nr", "Name"], [mark(1, 2)])).toBe(2);
    expect(at("Wer", ["Nr", "Name"], [mark(2, 1), mark(1, 2)])).toBe(2);
    expect(at("Wer", ["Nr", "Name"], [mark(2, 2)])).toBeUndefined();
  });

  test("whose heading is gone is not found by its mark", () => {
    expect(at("Wer", ["Nr", ""], [mark(1, 2)])).toBeUndefined();
    expect(at("Wer", ["Nr"], [mark(1, 2)])).toBeUndefined();
    expect(at("Wer", ["Nr", true], [mark(1, 2)])).toBeUndefined();
  });
});

test("without columns in Settings the list is read by our own headings", () => {
  const cells = [["Place", "Plant"]];
  const tab = { ...tabOf(1, "Mine"), readAll: () => cells, readColumns: () => cells } as unknown as TabPort;
  expect([...openPlantList(bookOf([tab]), settingsOf("")).columns.at]).toEqual([
    ["Plant", 2],
    ["Place", 1],
  ]);
});

test("without Settings, or a list named there, it is Plants, or none", () => {
  const plants = bookOf([tabOf(1, "Mine"), tabOf(2, "Plants")]);
  expect(openPlantList(plants, null).tab.id).toBe(2);
  expect(openPlantList(plants, { text: () => "" } as unknown as Settings).tab.id).toBe(2);
  expect(told(() => openPlantList(bookOf([tabOf(1, "Mine")]), null))).toMatchObject({ code: "no-tab" });
});
