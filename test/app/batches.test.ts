/** Batches as the panel gets them: each row whole, in their order, and what older ones used summed up. */

import { expect, test } from "vitest";
import { dateCell } from "../sheet/workbook.ts";
import { bookWith, type Cells, load } from "./book.ts";

const batchesOf = (head: Cells[number], ...rows: Cells) => load(bookWith({ "Batch log": [head, ...rows] }));

test("a row travels with all that stands in it, a blank one with nothing", () => {
  const { batches, problems } = batchesOf(
    [
      ...["Id", "Date", "Who", "Litres", "Water", "Target", "Doses", "N", "Ca", "Predicted EC", "Acid"],
      ...["Measured EC", "Measured pH", "Verdict", "Note", "State", "Corrects"],
    ],
    [
      ...[
        "batch-001",
        dateCell("2026-03-01"),
        "Ana",
        10,
        "Tap",
        "Half",
        "Iron 1 g/L (10 g)",
        105,
        0,
        1.05,
        "Citric: 2 g",
      ],
      ...[1.1, 5.75, "As expected", "Cloudy", "Planned ", "batch-000"],
    ],
    ["batch-002"],
  );
  expect(batches).toEqual([
    {
      ...{ id: "batch-001", day: "2026-03-01", who: "Ana", litres: 10, water: "Tap", target: "Half" },
      ...{ doses: "Iron 1 g/L (10 g)", reached: { N: 105, Ca: 0 }, predictedEcMsCm: 1.05, acid: "Citric: 2 g" },
      ...{ measuredEcMsCm: 1.1, measuredPH: 5.75, verdict: "As expected", note: "Cloudy" },
      ...{ state: "planned", corrects: "batch-000" },
    },
    {
      ...{ id: "batch-002", day: null, who: "", litres: null, water: "", target: "", doses: "", reached: {} },
      ...{ predictedEcMsCm: null, acid: "", measuredEcMsCm: null, measuredPH: null, verdict: "", note: "" },
      ...{ state: "mixed", corrects: "" },
    },
  ]);
  expect(problems).toEqual([]);
});

test("of one day the one further down comes first, those without a day last", () => {
  const days = ["2026-03-02", "", "2026-03-01", "2026-03-02", "2026-03-03", "2026-03-02", ""];
  const rows = days.map((day, at) => [`batch-00${at}`, day === "" ? "" : dateCell(day)]);
  const { batches } = batchesOf(["Id", "Date"], ...rows);
  expect(batches.map(({ id }) => Number(id.slice(-1)))).toEqual([4, 5, 3, 0, 2, 6, 1]);
});

test("a cell that cannot be read leaves the day of its row, a day that cannot be read leaves none", () => {
  const { batches, problems } = batchesOf(
    ["Id", "Date", "Litres"],
    ["batch-001", dateCell("2026-03-01"), "a can"],
    ["batch-002", "soon", 10],
  );
  expect(batches.map(({ day, litres }) => [day, litres])).toEqual([
    ["2026-03-01", null],
    [null, 10],
  ]);
  expect(problems).toEqual([
    expect.stringMatching(/Litres in row 2 of Batch log is "a can"/),
    expect.stringMatching(/Date in row 3 of Batch log is "soon"/),
  ]);
});

test.each<[heading: string, told: boolean]>([
  ["Id", true],
  ["Date", true],
  ["Litres", true],
  ["Doses", true],
  ["Measured EC", true],
  ["Measured pH", true],
  ["Note", false],
])("a column %s that is not there is told: %s", (heading, told) => {
  const book = bookWith({});
  const at = book.values("Batch log")[0]?.indexOf(heading) ?? -1;
  book.grid.tab("Batch log").deleteColumns(at + 1, 1);
  expect(load(book).problems).toEqual(told ? [expect.stringContaining(`“Batch log” has no column “${heading}”`)] : []);
});

test("a workbook without the tab has no batches, and older ones used nothing", () => {
  const book = bookWith({});
  book.grid.removeTab(book.grid.tab("Batch log").id);
  expect(load(book)).toMatchObject({ batches: [], usedBefore: { used: [], unread: [] } });
});
