/** Days in lists of one's own: ISO 8601 and other ways people write them, two readings never guessed. */

import { describe, expect, test } from "vitest";
import { isoFromDay } from "../../src/core/calendar.ts";
import { type ListCell, orderOf, pastDays, readListDay, shareOfDays } from "../../src/core/list-days.ts";

const iso = (cell: ListCell): string => {
  const read = readListDay(cell);
  if (read.kind === "day") return isoFromDay(read.day);
  return read.kind === "either" ? `${isoFromDay(read.dayFirst)} or ${isoFromDay(read.monthFirst)}` : read.kind;
};

describe("a cell", () => {
  test.each<[ListCell, string]>([
    [{ day: "2025-03-01" }, "2025-03-01"],
    ["2025-03-01", "2025-03-01"],
    ["2025/3/1", "2025-03-01"],
    ["2025.03.01", "2025-03-01"],
    ["1 Mar 2025", "2025-03-01"],
    ["1. March 25", "2025-03-01"],
    ["1-Mar-2025", "2025-03-01"],
    ["Mar 1, 2025", "2025-03-01"],
    ["Sept. 3rd, 2024", "2024-09-03"],
    ["29.2.2024", "2024-02-29"],
    ["25/12/24", "2024-12-25"],
    ["12/25/2024", "2024-12-25"],
    ["5/5/2025", "2025-05-05"],
    ["3/4/2025", "2025-04-03 or 2025-03-04"],
    ["03.04.25", "2025-04-03 or 2025-03-04"],
    ["21 Mar 2025", "2025-03-21"],
    ["1st  Mar,  2025", "2025-03-01"],
    ["March 21 25", "2025-03-21"],
    ["Mar  2  2025", "2025-03-02"],
    ["Mar 21st, 2025", "2025-03-21"],
    ["1 Mar 0100", "0100-03-01"],
    ["3 / 4 / 2025", "2025-04-03 or 2025-03-04"],
    ["3. 4. 25", "2025-04-03 or 2025-03-04"],
    ["on 1 Mar 2025", "no day"],
    ["1 Mar 20255", "no day"],
    ["1 Mar 2025 or so", "no day"],
    ["on Mar 1 2025", "no day"],
    ["Mar 1 20255", "no day"],
    ["M.ar 1 2025", "no day"],
    ["x2025-03-01", "no day"],
    ["2025-03-01x", "no day"],
    ["x3/4/2025", "no day"],
    ["3/4/2025x", "no day"],
    ["-5", "no day"],
    ["5?", "no day"],
    ["???", "blank"],
    ["", "blank"],
    [" – ", "blank"],
    ["?", "blank"],
    ["29.2.2025", "no day"],
    ["31/31/2025", "no day"],
    ["spring", "no day"],
    ["Mar 2025", "no day"],
    ["may be 1, 2025", "no day"],
    [45717, "no day"],
    [true, "no day"],
    [{ day: "2025-02-30" }, "no day"],
  ])("%o is %s", (cell, day) => {
    expect(iso(cell)).toBe(day);
  });
});

test.each<[ListCell, string]>([
  [{ day: "2025-02-30" }, "“2025-02-30” is no day."],
  [45717, "45717 is a number, not a date."],
  [true, "“yes” is no day."],
  [false, "“no” is no day."],
  [" 29.2.2025 ", "“29.2.2025” is a day that does not exist."],
  ["spring", "“spring” is no day that can be read."],
])("%o: %s", (cell, sentence) => expect(readListDay(cell)).toEqual({ kind: "no day", sentence }));

describe("a column", () => {
  test("shows its order by a day above 12, and none when both orders or no such day is there", () => {
    expect(orderOf(["3/4/2025", "25/4/2025", "", 7])).toEqual({ order: "day first", either: 1, example: "3/4/2025" });
    expect(orderOf(["3/4/2025", "4/25/2025"])).toEqual({ order: "month first", either: 1, example: "3/4/2025" });
    expect(orderOf(["25/4/2025", "4/25/2025"]).order).toBeNull();
    expect(orderOf([" 3/4/2025 ", "5/6/2025"])).toEqual({ order: null, either: 2, example: "3/4/2025" });
    const orders = ["25/12/2024", "12/25/2024", "5/5/2025", "12/12/2025", "13/25/2025", "25/13/2025", "25/4/2025x"];
    expect(orders.map((cell) => orderOf([cell]).order)).toEqual([
      "day first",
      "month first",
      ...[null, null, null, null, null],
    ]);
    expect(orderOf([{ day: "2025-03-04" }, "3/4/2025"])).toEqual({ order: null, either: 1, example: "3/4/2025" });
  });

  test("holds days to a share of its filled cells", () => {
    expect(shareOfDays(["1 Mar 2025", "", "spring", "3/4/2025", { day: "2025-01-01" }])).toBe(0.75);
    expect(shareOfDays(["", "-"])).toBe(0);
  });
});

describe("past days", () => {
  const rows = [
    { row: 2, plant: "Fern", cell: "3/4/2025" },
    { row: 3, plant: "fern", cell: { day: "2025-04-03" } },
    { row: 4, plant: "Hoya", cell: "last spring" },
    { row: 5, plant: "", cell: "2025-01-01" },
    { row: 6, plant: "Arum", cell: "" },
    { row: 7, plant: "Arum", cell: { day: "2026-03-15" } },
  ];

  test("come once a plant and day, and what cannot be used is told", () => {
    expect(pastDays(rows, { order: "day first", today: "2026-03-14" })).toEqual({
      entries: [{ row: 2, plant: "Fern", day: "2025-04-03" }],
      left: [
        "Row 4, Hoya: “last spring” is no day that can be read.",
        "Row 5: there is a day but no plant.",
        "Row 7, Arum: 2026-03-15 has not come yet.",
      ],
      undecided: 0,
    });
  });

  test("reach up to today, and names are taken without the spaces around them", () => {
    const today = [
      { row: 2, plant: " Fern ", cell: "2026-03-14" },
      { row: 3, plant: "  ", cell: "2026-03-14" },
    ];
    expect(pastDays(today, { order: null, today: "2026-03-14" })).toEqual({
      entries: [{ row: 2, plant: "Fern", day: "2026-03-14" }],
      left: ["Row 3: there is a day but no plant."],
      undecided: 0,
    });
  });

  test("with two readings wait for an order", () => {
    const { entries, undecided } = pastDays(rows, { order: null, today: "2026-03-14" });
    expect(undecided).toBe(1);
    expect(entries).toEqual([{ row: 3, plant: "fern", day: "2025-04-03" }]);
    expect(pastDays(rows, { order: "month first", today: "2026-03-14" }).entries[0]?.day).toBe("2025-03-04");
  });
});
