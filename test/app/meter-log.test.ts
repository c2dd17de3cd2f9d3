/** Readings in a standard: a row each, once, and taken back by a row that points at them. */

import { describe, expect, test } from "vitest";
import type { MeterEntry } from "../../src/app/contract.ts";
import { newId, readyBook } from "../sheet/workbook.ts";

const entry = (given: Partial<MeterEntry> = {}): MeterEntry => ({
  id: newId(),
  day: "2026-03-10",
  meter: "EC",
  standard: 1.413,
  reading: 1.38,
  tempC: 21,
  calibrated: true,
  note: "",
  ...given,
});
const ask = (given: MeterEntry) => ({ ask: "log meter", who: "Ana", entry: given }) as const;

test("a reading sent again with another number is told by row and column, and left as it is", () => {
  const book = readyBook();
  const sent = ask(entry());
  book.reply(sent);
  const { written, differing } = book.reply({ ...sent, entry: { ...sent.entry, reading: 1.4 } });
  expect(written).toBe(0);
  expect(differing).toEqual([expect.stringMatching(/row 2 .* another Reading\./)]);
  expect(book.cell("Meter log", 2, "Reading")).toBe(1.38);
});

describe("a reading in a standard", () => {
  test("is a row of the Meter log, once, with its note as literal text", () => {
    const book = readyBook();
    const sent = ask(entry({ note: "=1+1" }));
    expect(book.reply(sent)).toEqual({ written: 1, already: 0, differing: [] });
    expect(book.reply(sent)).toEqual({ written: 0, already: 1, differing: [] });
    expect(book.reply({ ask: "records" }).meterLog.map(({ fields }) => fields)).toEqual([
      {
        Id: sent.entry.id,
        Date: "2026-03-10",
        Meter: "EC",
        Standard: 1.413,
        Reading: 1.38,
        "Temp C": 21,
        Calibrated: true,
        Who: "Ana",
        Note: "=1+1",
      },
    ]);
  });

  test("that is sent again with other numbers is not written, and row and column are named", () => {
    const book = readyBook();
    const first = entry();
    book.reply(ask(first));
    expect(book.reply(ask({ ...first, reading: 1.4 }))).toEqual({
      written: 0,
      already: 1,
      differing: [expect.stringMatching(/row 2 .* another Reading\./)],
    });
    expect(book.cell("Meter log", 2, "Reading")).toBe(1.38);
  });

  test("after which the meter was left as it was says so", () => {
    const book = readyBook();
    book.reply(ask(entry({ calibrated: false, reading: 0, tempC: null })));
    const cells = ["Calibrated", "Reading", "Temp C"].map((heading) => book.cell("Meter log", 2, heading));
    expect(cells).toEqual(["no", 0, null]);
  });

  test("that was taken back no longer counts, and its row still stands", () => {
    const book = readyBook();
    const first = entry();
    book.reply(ask(first));
    const back = { ask: "take back", who: "Ana", log: "Meter log", id: newId(), takes: first.id } as const;
    expect(book.reply(back).written).toBe(1);
    expect(book.values("Meter log")).toHaveLength(3);
    expect(book.reply({ ask: "records" }).meterLog).toEqual([]);
  });

  test("in µS/cm or beyond pH 14 is refused, and nothing is written", () => {
    const book = readyBook();
    expect(book.refusal(ask(entry({ standard: 1413 }))).sentence).toBe(
      "The standard is 1413 mS/cm. Give a number from 0 to 100 mS/cm.",
    );
    expect(book.refusal(ask(entry({ meter: "pH", standard: 7.01, reading: 15 }))).sentence).toBe(
      "The reading is 15. Give a number from 0 to 14.",
    );
    expect(book.values("Meter log")).toHaveLength(1);
  });
});
