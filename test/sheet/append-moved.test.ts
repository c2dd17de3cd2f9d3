/** Somebody moves cells in the very moment of a write, on small tabs: where every cell stands in the end, and what was written. */

import { describe, expect, test } from "vitest";
import type { SheetRecord } from "../../src/sheet/append.ts";
import { refusal } from "../core/refusal.ts";
import { type Cell, tabOf } from "./small-tab.ts";

const FERN: SheetRecord = { Id: "n-1", Plant: "Fern", Note: "dry" };
const PALM: SheetRecord = { Id: "n-2", Plant: "Palm", Note: "wet" };

/** Does it before the call of that kind with this number. */
function at(kind: "look" | "write", number: number, deed: (rows: Cell[][]) => void) {
  let count = 0;
  return (call: "look" | "write", rows: Cell[][]) => {
    if (call === kind && ++count === number) deed(rows);
  };
}
const insertColumn = (column: number) => (rows: Cell[][]) => {
  for (const row of rows) row.splice(column - 1, 0, "");
};
const insertRow = (rows: Cell[][]) => {
  rows.splice(1, 0, ["", "", "", ""]);
};
const table = (text: string): Cell[][] => text.split("\n").map((line) => line.trim().split("|"));
const lines = (tab: ReturnType<typeof tabOf>) => tab.shows().map((row) => row.join("|"));

describe("a column inserted just before", () => {
  test.each([
    [1, "|a-1|Hoya|mine|moved|Bo", "|n-1|Fern|mine|dry|", "|n-2|Palm|mine|wet|"],
    [2, "a-1||Hoya|mine|moved|Bo", "n-1||Fern|mine|dry|", "n-2||Palm|mine|wet|"],
    [4, "a-1|Hoya|mine||moved|Bo", "n-1|Fern|mine||dry|", "n-2|Palm|mine||wet|"],
    [5, "a-1|Hoya|mine|moved||Bo", "n-1|Fern|mine|dry||", "n-2|Palm|mine|wet||"],
  ])("the first block, as column %i: every value stands under its heading", (column, ...rows) => {
    for (const block of [1, 2]) {
      const tab = tabOf(table("Id|Plant|Mine|Note|Who\na-1|Hoya|mine|moved|Bo\n||mine||\n||mine||"), {
        meanwhile: at("write", block, insertColumn(column)),
      });
      expect(tab.append(FERN, PALM)).toEqual({ written: 2, already: 0, differing: [] });
      expect(lines(tab), `before block ${block}`).toEqual(rows);
    }
  });

  test("a row in one block: it is put right in one write, in whatever order our columns stand", () => {
    const tab = tabOf(table("Note|Plant|Id|Who\nmoved|Hoya|a-1|Bo"), { meanwhile: at("write", 1, insertColumn(1)) });
    expect(tab.append({ ...FERN, Who: "Ana" }).written).toBe(1);
    expect(lines(tab)).toEqual(["|moved|Hoya|a-1|Bo", "|dry|Fern|n-1|Ana"]);
    expect(tab.writes).toEqual(["3,1 1x4", "3,1 1x5"]);
  });
});

describe("a row inserted just before the write", () => {
  const LOG = "Id|Plant|Note|Who\na-1|Hoya|moved|Bo\na-2|Moss||Bo";

  test("moves the last one under it: that one stands again, and the new ones below", () => {
    for (const records of [[FERN], [FERN, PALM]]) {
      const tab = tabOf(table(LOG), { meanwhile: at("write", 1, insertRow) });
      expect(tab.append(...records).written).toBe(records.length);
      const news = ["n-1|Fern|dry|", "n-2|Palm|wet|"].slice(0, records.length);
      expect(lines(tab)[0]).toBe("|||");
      expect(lines(tab).slice(1).sort()).toEqual(["a-1|Hoya|moved|Bo", "a-2|Moss||Bo", ...news]);
    }
  });

  test("or just before it is put right, is seen: no other row is written over", () => {
    const inserted = at("write", 1, insertColumn(2));
    // the looks: at the free row, at what landed, and at the row before it is put right
    const moved = at("look", 3, insertRow);
    const tab = tabOf(table(LOG), {
      meanwhile: (call, rows) => {
        inserted(call, rows);
        moved(call, rows);
      },
    });
    expect(tab.append(FERN).written).toBe(1);
    expect(lines(tab)).toEqual(["||||", "a-1||Hoya|moved|Bo", "a-2||Moss||Bo", "n-1||Fern|dry|"]);
    expect(tab.writes).toEqual(["4,1 1x4", "5,2 1x3"]);
  });

  test("or before every look, is refused in the end", () => {
    const tab = tabOf(table(LOG), { meanwhile: (call, rows) => call === "look" && insertRow(rows) });
    expect(refusal(() => tab.append(FERN))).toMatch(/“Care log” was being rearranged/);
    expect(tab.writes).toEqual([]);
  });

  test("or before every look from then on, is refused in the end, and no other row is written over", () => {
    const inserted = at("write", 1, insertColumn(2));
    let wrote = false;
    const tab = tabOf(table(LOG), {
      meanwhile: (call, rows) => {
        inserted(call, rows);
        wrote ||= call === "write";
        if (wrote && call === "look") insertRow(rows);
      },
    });
    expect(refusal(() => tab.append(FERN))).toMatch(/“Care log” was being rearranged/);
    expect(tab.writes).toEqual(["4,1 1x4"]);
    expect(lines(tab)).toEqual(expect.arrayContaining(["a-1||Hoya|moved|Bo", "a-2||Moss||Bo"]));
  });
});

test("a row that somebody took at the last look is left to them, as often as three times", () => {
  let looks = 0;
  const tab = tabOf(table("Id|Plant|Note|Who\na-1|Hoya|moved|Bo"), {
    meanwhile: (call, rows) => {
      if (call === "look" && ++looks <= 3) rows.push(["", "", `remark ${looks}`, ""]);
    },
  });
  expect(tab.append(FERN).written).toBe(1);
  expect(lines(tab).slice(1)).toEqual(["||remark 1|", "||remark 2|", "||remark 3|", "n-1|Fern|dry|"]);
  expect(tab.writes).toEqual(["6,1 1x4"]);
});

test("a column known by its mark alone, and moved between the look at marks and the look at headings, is found again", () => {
  for (const taken of ["Plant", "Note"]) {
    const text = `column:Care log/${taken}`;
    const head = `Id|Mine|Green|${taken === "Plant" ? "Note" : "Plant"}|Who`;
    const tab = tabOf(table(head), { marks: (time) => [{ tabId: 1, column: time === 1 ? 2 : 3, text }] });
    expect(tab.append(FERN).written).toBe(1);
    expect(lines(tab)).toEqual([taken === "Plant" ? "n-1||Fern|dry|" : "n-1||dry|Fern|"]);
  }
});
