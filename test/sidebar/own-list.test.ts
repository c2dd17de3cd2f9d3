/** Six plant lists in different shapes through the panel into a real workbook: imported right, or asked about. */

import { describe, expect, test } from "vitest";
import type { Panel } from "../../sidebar/panel-state.ts";
import { readyBook, serialOf, type TestBook } from "../sheet/workbook.ts";
import { answered, panelOver } from "./over-book.ts";
import { BY_YEAR, GERMAN, SLASHES, TIDY, TITLED, TWINS } from "./plant-lists.ts";
import { said } from "./world.ts";

interface Opened {
  readonly book: TestBook;
  readonly panel: Panel;
  readonly columns: Readonly<Record<string, string>>;
  /** All cells of all tabs but Settings, whose date is refreshed. */
  readonly cells: () => string;
}

async function open(list: typeof TIDY): Promise<Opened> {
  const book = readyBook({ tabs: { Ours: { cells: list.map((row) => [...row]) } } });
  const panel = await panelOver("Ana");
  const tabs = ["Ours", "Plants", "Care log", "Events"];
  const cells = (): string => JSON.stringify(tabs.map((tab) => book.values(tab)));
  panel.setup.tabsSender.press();
  await answered();
  panel.setup.chooseTab("Ours");
  await answered();
  const columns = Object.fromEntries(
    Object.entries(panel.setup.list.get().columns).filter(([, theirs]) => theirs !== ""),
  );
  return { book, panel, columns, cells };
}

const doubts = async (panel: Panel): Promise<string[]> => {
  const { columnsOf, listDoubts } = await import("../../sidebar/list-guess.ts");
  const own = panel.setup.own.get();
  return own === null ? [] : listDoubts(columnsOf(own), panel.setup.list.get().columns);
};

/** "Hoya Repot 2025-04-12" of every row of the care log. */
function logged(book: TestBook): string[] {
  const epoch = serialOf("1970-01-01");
  return book
    .values("Care log")
    .slice(1)
    .map((row) => {
      const day = new Date((Number(row[1]) - epoch) * 86_400_000).toISOString().slice(0, 10);
      return `${row[2]} ${row[3]} ${day}`;
    })
    .sort();
}

const press = async (panel: Panel): Promise<string> => {
  panel.setup.pastSender.press();
  await answered();
  return said(panel.setup.pastSender);
};
const choose = (panel: Panel, part: "events" | "orders", heading: string, value: string): void =>
  panel.setup.past.change((now) => ({ ...now, [part]: { ...now[part], [heading]: value } }));

describe("a tidy list", () => {
  test("is guessed, used and remembered, its repots written after the press and never twice", async () => {
    const { book, panel, columns, cells } = await open(TIDY);
    const before = cells();
    expect(columns).toEqual({ Plant: "Name", Place: "Room", Kind: "Species", "Pot mL": "Pot size", Since: "Bought" });
    expect(await doubts(panel)).toEqual([]);
    expect(panel.setup.pastNow()).toMatchObject({ known: 0, left: [], undecided: 0 });
    panel.setup.listSender.press();
    await answered();
    await answered();
    expect(panel.loaded.get()?.plants.map(({ plant, place, potMl }) => `${plant} ${place} ${potMl}`)).toEqual([
      "Hoya Hall 700",
      "Fern Bath 450",
      "Arum Hall 1200",
      "Ivy Bath 450",
    ]);
    expect(cells()).toBe(before);
    expect(await press(panel)).toBe("done: Wrote 3 entries into the care log.");
    const rows = ["Fern Repot 2024-09-01", "Hoya Repot 2025-04-12", "Ivy Repot 2025-04-12"];
    expect(logged(book)).toEqual(rows);
    await answered();
    // 12 April 2025 to 10 March 2026: 18 + 31 + 30 + 31 + 31 + 30 + 31 + 30 + 31 + 31 + 28 + 10 days.
    expect(panel.loaded.get()?.plants[0]?.restDays).toBe(332);
    expect(panel.setup.pastNow()?.known).toBe(3);
    expect(await press(panel)).toBe("done: Wrote 0 entries into the care log. 3 entries stood there already.");
    const again = await panelOver("Ben");
    again.setup.tabsSender.press();
    await answered();
    again.setup.chooseTab("Ours");
    await answered();
    expect(again.setup.list.get().columns.Place).toBe("Room");
    expect(await press(again)).toBe("done: Wrote 0 entries into the care log. 3 entries stood there already.");
    expect(logged(book)).toEqual(rows);
  });
});

describe("a list with headings of another language", () => {
  test("is guessed by its cells, and asks what its days tell of", async () => {
    const { book, panel, columns } = await open(GERMAN);
    expect(columns).toEqual({ Plant: "Pflanze", Place: "Standort", "Pot mL": "Inhalt" });
    expect(await press(panel)).toBe("blocked: There is no past day to write. Say above which column holds which.");
    choose(panel, "events", "umgetopft", "Repot");
    // 28.2. can only be a day and a month, so 3.4. is 3 April.
    expect(await press(panel)).toBe("done: Wrote 3 entries into the care log.");
    expect(logged(book)).toEqual(["Efeu Repot 2025-04-03", "Einblatt Repot 2024-09-01", "Farn Repot 2025-02-28"]);
  });
});

describe("a list whose days have two readings and whose pots are widths", () => {
  test("asks about both, and writes nothing before the answer", async () => {
    const { book, panel, columns, cells } = await open(SLASHES);
    const before = cells();
    expect(columns).toEqual({ Plant: "Plant name", Place: "Shelf", Note: "Remarks" });
    panel.setup.list.change((now) => ({ ...now, columns: { ...now.columns, "Pot mL": "Pot" } }));
    expect(await doubts(panel)).toEqual([
      "“Pot” holds “14”, which is no volume in mL, perhaps a width. Leave Pot mL open, or add a column with the volumes.",
    ]);
    expect(panel.setup.pastNow()).toMatchObject({ undecided: 2, rows: [{ plant: "Dracaena", day: "2023-05-05" }] });
    expect(await press(panel)).toBe("blocked: Say first how “3/4/2025” in “Re-potted” is meant.");
    expect(cells()).toBe(before);
    choose(panel, "orders", "Re-potted", "month first");
    expect(await press(panel)).toBe("done: Wrote 3 entries into the care log.");
    expect(logged(book)).toEqual([
      "Dracaena Repot 2023-05-05",
      "Philodendron Repot 2024-12-11",
      "Pothos Repot 2025-03-04",
    ]);
  });
});

describe("a list with a column for each repot", () => {
  test("takes each by its heading, and tells what it leaves out", async () => {
    const { book, panel, columns } = await open(BY_YEAR);
    expect(columns).toEqual({ Plant: "Plant", Place: "Window", Since: "Since" });
    expect(panel.setup.pastNow()?.left).toEqual([
      "Row 3, Agave: “May 2022” is no day that can be read.",
      "Row 4, Cactus: 2031-03-01 has not come yet.",
    ]);
    expect(await press(panel)).toBe("done: Wrote 5 entries into the care log.");
    expect(logged(book)).toEqual([
      "Agave Repot 2025-04-14",
      "Agave Root trim 2025-04-14",
      "Aloe Repot 2022-05-12",
      "Aloe Repot 2024-06-03",
      "Cactus Root trim 2024-02-02",
    ]);
  });
});

describe("a list with names that stand twice", () => {
  test("says so, and another column can be chosen", async () => {
    const { book, panel, columns } = await open(TWINS);
    expect(columns).toMatchObject({ Plant: "Name", Place: "Corner" });
    expect(await doubts(panel)).toEqual([
      "In “Name”, 2 names stand more than once (Spider plant, Begonia). The log cannot tell such plants apart: choose a column in which each name stands once, or make the names differ.",
    ]);
    panel.setup.list.change((now) => ({ ...now, columns: { ...now.columns, Plant: "Tag" } }));
    expect(await doubts(panel)).toEqual([]);
    expect(await press(panel)).toBe("done: Wrote 3 entries into the care log.");
    expect(logged(book)).toEqual(["B1 Pot up 2025-02-01", "S1 Pot up 2024-05-01", "S2 Pot up 2025-02-01"]);
  });
});

describe("a list with a title above it", () => {
  test("is not guessed at: the row of its headings is named", async () => {
    const { panel, columns, cells } = await open(TITLED);
    const before = cells();
    const { headingRowElsewhere } = await import("../../sidebar/list-guess.ts");
    const own = panel.setup.own.get();
    expect(own === null ? null : headingRowElsewhere(own)).toBe(3);
    expect(columns).toEqual({});
    panel.setup.listSender.press();
    expect(said(panel.setup.listSender)).toBe("blocked: Choose the column that holds the plants’ names.");
    expect(cells()).toBe(before);
  });
});
