/** What the Care log says already of some plants, however its cells were typed. */

import { expect, test } from "vitest";
import { sameDeed, standingCare } from "../../src/app/standing-care.ts";
import { openLog } from "../../src/sheet/append.ts";
import { openBook } from "../../src/sheet/find.ts";
import { CARE_LOG } from "../../src/sheet/log-tabs.ts";
import { dateCell } from "../sheet/workbook.ts";
import { bookWith, type Cells } from "./book.ts";

/** 2026-03-01 is day 20,513 after 1970-01-01: 56 years of 365 days, 14 leap days, 31 + 28 days of this year. */
const DAY = 56 * 365 + 14 + 31 + 28;
const HEADINGS = ["Id", "Date", "Plant", "Event", "Who", "Corrects"];

function standing(rows: Cells, plants: readonly string[], gone?: ReadonlySet<number>) {
  const book = openBook(bookWith({ "Care log": [HEADINGS, ...rows] }).workbook(), [CARE_LOG.name]);
  return standingCare(openLog(book, CARE_LOG), plants, gone);
}

test("rows of the plants asked for are read with spaces left out and dates in any way that can be read", () => {
  const rows = standing(
    [
      [" care-0001 ", dateCell("2026-03-01"), " hoya ", " Top up ", " Ana "],
      ["", "2026-03-01", "HOYA", "Repot", ""],
      ["care-0003", dateCell("2026-03-02"), "Fern", "Repot", "Ana"],
      ["care-0004", dateCell("2026-03-02"), 7, "Repot", "Ben"],
      ["care-0005", dateCell("2026-03-03"), "", "Repot", "Ben"],
    ],
    ["Hoya", "7"],
  );
  expect(rows).toEqual([
    { id: "care-0001", day: DAY, plant: "hoya", event: "Top up", who: "Ana" },
    { id: "", day: DAY, plant: "HOYA", event: "Repot", who: "" },
    { id: "care-0004", day: DAY + 1, plant: "7", event: "Repot", who: "Ben" },
  ]);
});

test("rows without a day or an event, and rows that take others back, say nothing", () => {
  const rows = standing(
    [
      ["care-0001", "soon", "Hoya", "Repot", "Ana"],
      ["care-0002", "", "Hoya", "Repot", "Ana"],
      ["care-0003", dateCell("2026-03-01"), "Hoya", "", "Ana"],
      ["care-0004", dateCell("2026-03-01"), "Hoya", " ", "Ana"],
      ["care-0005", dateCell("2026-03-01"), "Hoya", "taken  back", "Ana", "care-0009"],
      ["care-0006", true, "Hoya", "Repot", "Ana"],
      ["care-0007", dateCell("2026-03-01"), "Hoya", "Note", "Ana"],
    ],
    ["Hoya"],
  );
  expect(rows.map(({ id }) => id)).toEqual(["care-0007"]);
});

test("a row that was corrected is left out, unless the caller names the rows to leave out", () => {
  const rows: Cells = [
    ["care-0001", dateCell("2026-03-01"), "Hoya", "Repot", "Ana", ""],
    ["care-0002", dateCell("2026-03-03"), "Hoya", "Repot", "Ana", "care-0001"],
  ];
  const ids = (gone?: ReadonlySet<number>) => standing(rows, ["Hoya"], gone).map(({ id }) => id);
  expect(ids()).toEqual(["care-0002"]);
  expect(ids(new Set())).toEqual(["care-0001", "care-0002"]);
  expect(ids(new Set([2]))).toEqual(["care-0001"]);
});

test("without the columns Id and Who a row has no Id and no name", () => {
  const book = bookWith({ "Care log": [HEADINGS, ["care-0001", dateCell("2026-03-01"), "Hoya", "Repot", "Ana"]] });
  const tab = book.grid.tab("Care log");
  for (const gone of ["Id", "Who"]) tab.deleteColumns((book.values("Care log")[0]?.indexOf(gone) ?? -1) + 1, 1);
  const open = openLog(openBook(book.workbook(), [CARE_LOG.name]), CARE_LOG);
  expect(standingCare(open, ["Hoya"])).toEqual([{ id: "", day: DAY, plant: "Hoya", event: "Repot", who: "" }]);
});

test("a deed is the same however plant and event are spelled, and another with another plant, event or day", () => {
  const deed = (plant: string, event: string, day: number | null) => sameDeed({ plant, event, day });
  expect(deed(" HOYA", "top  up", DAY)).toBe(deed("Hoya", "Top up ", DAY));
  const others = [
    deed("Fern", "Repot", DAY),
    deed("FernR", "epot", DAY),
    deed("Fern", "Repot", DAY + 1),
    deed("Fern", "Repot 1", 23),
    deed("Fern", "Repot", 123),
    deed("Fern", "Repot", null),
  ];
  expect(new Set(others).size).toBe(others.length);
});
