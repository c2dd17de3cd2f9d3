/** Records that only some sections need, and rows of the logs that no longer count. */

import { describe, expect, test } from "vitest";
import { records } from "../../src/app/contract.ts";
import { dateCell, openTestBook, readyBook } from "../sheet/workbook.ts";
import { bookWith, load } from "./book.ts";

const read = (book: ReturnType<typeof bookWith>) => book.reply({ ask: "records" });

describe("records", () => {
  test("of a workbook just set up are empty, and travel", () => {
    const reply = read(readyBook());
    expect(records.safeParse(reply).success).toBe(true);
    expect(reply).toEqual({ purchases: [], meterLog: [], claims: [], trials: [], problems: [] });
  });

  test("of a workbook without the tabs are empty, with one sentence", () => {
    expect(read(openTestBook()).problems).toEqual([
      expect.stringMatching(/no tab “Purchases”, “Meter log”, “Claims”, “Trials”/),
    ]);
  });

  test("leave out rows that were corrected, with the row that takes them back", () => {
    const book = bookWith({
      Purchases: [
        ["Id", "Feed", "Amount", "Unit", "Corrects"],
        ["buy-00001", "Potassium nitrate", 500, "g", ""],
        ["buy-00002", "Potassium nitrate", 50, "g", "buy-00001"],
      ],
    });
    expect(read(book).purchases.map(({ fields }) => fields)).toEqual([
      { Id: "buy-00002", Feed: "Potassium nitrate", Amount: 50, Unit: "g", Corrects: "buy-00001" },
    ]);
  });

  test("tell a cell that cannot be read, and send the row", () => {
    const reply = read(
      bookWith({
        Purchases: [
          ["Id", "Feed", "Amount"],
          ["buy-00001", "Iron", "a bag"],
        ],
      }),
    );
    expect(reply.purchases[0]?.fields.Amount).toBe("a bag");
    expect(reply.problems).toEqual([expect.stringMatching(/Amount in row 2 of Purchases/)]);
  });
});

describe("the care log on loading", () => {
  const book = () =>
    bookWith({
      Plants: [["Plant"], ["Fern"]],
      "Care log": [
        ["Id", "Date", "Plant", "Event", "Amount mL", "Who", "Corrects"],
        ["care-00001", dateCell("2026-03-01"), "Fern", "Repot", "", "Ana", ""],
        ["care-00002", dateCell("2026-03-03"), "Fern", "Top up", 200, "Ana", ""],
        ["care-00003", dateCell("2026-03-03"), "Fern", "Top up", 100, "Ben", "care-00002"],
        ["care-00004", dateCell("2026-03-08"), "Fern", "Repot", "", "Ana", ""],
        ["care-00005", dateCell("2026-03-08"), "Fern", "Taken back", "", "Ana", "care-00004"],
      ],
    });

  test("sends standing rows, newest first, and counts no row that was taken back", () => {
    const { care, plants } = load(book());
    expect(care.rows.map(({ id, amountMl }) => [id, amountMl])).toEqual([
      ["care-00003", 100],
      ["care-00001", null],
    ]);
    expect(care).toMatchObject({ from: "2026-03-01", all: true });
    expect(plants[0]?.restDays).toBe(9);
  });

  test("sends at most 4,000 rows, and says that there are more", () => {
    const rows = Array.from({ length: 4100 }, (_, at) => [
      `care-${10_000 + at}`,
      dateCell("2026-03-01"),
      "Fern",
      "Note",
    ]);
    const { care } = load(bookWith({ "Care log": [["Id", "Date", "Plant", "Event"], ...rows] }));
    expect(care.rows).toHaveLength(4000);
    expect(care.rows[0]?.id).toBe("care-14099");
    expect(care.all).toBe(false);
  });
});

test("a planned batch is sent as planned, and not once it was mixed", () => {
  const head = ["Id", "Date", "Litres", "Doses", "N", "State", "Corrects"];
  const planned = ["batch-001", dateCell("2026-03-01"), 10, "Iron 1 g/L", 105, "planned", ""];
  const batches = (rows: (typeof head)[]) => load(bookWith({ "Batch log": [head, ...rows] })).batches;
  expect(batches([planned as never])).toMatchObject([{ state: "planned", reached: { N: 105 } }]);
  expect(
    batches([planned as never, ["batch-002", dateCell("2026-03-02"), 8, "Iron 1 g/L", "", "", "batch-001"] as never]),
  ).toMatchObject([{ id: "batch-002", state: "mixed", corrects: "batch-001" }]);
});

test("settings travel as text, whatever they are called", () => {
  const { settings } = load(
    bookWith({
      Settings: [
        ["Setting", "Value"],
        ["Rest days", 200],
        ["Own word", "yes"],
      ],
    }),
  );
  expect(settings).toMatchObject({ "Rest days": "200", "Own word": "yes" });
});
