/** Logging care and batches: what is written, and what is refused with nothing written. */

import { describe, expect, test } from "vitest";
import { dosesText } from "../../src/core/dose-text.ts";
import { ALL_SAMPLES, sampleTabs } from "../shared/samples.ts";
import { batch, careEntry, openTestBook, readyBook, serialOf } from "../sheet/workbook.ts";

describe("a batch", () => {
  test("is one row with its numbers as they were", () => {
    const book = readyBook();
    const entry = batch({ note: "=1+1", acid: "Nitric acid 67 %: 2.1 mL, to pH 5.8" });
    expect(book.reply({ ask: "log batch", who: "Ana", batch: entry })).toEqual({
      written: 1,
      already: 0,
      differing: [],
    });
    const [headings, row] = book.values("Batch log");
    const fields = Object.fromEntries((headings ?? []).map((heading, index) => [heading, row?.[index] ?? null]));
    expect(fields).toEqual({
      Id: entry.id,
      Date: serialOf("2026-03-10"),
      Who: "Ana",
      Litres: 10,
      Water: "Tap",
      Target: "Half strength",
      Doses: 'Calcium nitrate 1.25 g/L (12.5 g); "Green 10-5-5; old" 0.5 mL/L (5 mL)',
      ...{
        N: 105.5,
        P: 15,
        K: 117,
        Ca: 80,
        Mg: 24,
        S: null,
        Fe: null,
        Mn: null,
        Zn: null,
        B: null,
        Cu: null,
        Mo: null,
      },
      "Predicted EC": 1.05,
      Acid: "Nitric acid 67 %: 2.1 mL, to pH 5.8",
      "Measured EC": null,
      "Measured pH": null,
      Verdict: null,
      Note: "=1+1",
      State: null,
      Corrects: null,
    });
    expect(book.values("Batch log")).toHaveLength(2);
  });

  test("pressed twice is one row, also after the readings were entered", () => {
    const book = readyBook();
    const entry = batch();
    book.reply({ ask: "log batch", who: "", batch: entry });
    book.reply({ ask: "log readings", batchId: entry.id, ecMsCm: 1.4, pH: 6, verdict: "" });
    expect(book.reply({ ask: "log batch", who: "", batch: entry })).toEqual({ written: 0, already: 1, differing: [] });
    expect(book.values("Batch log")).toHaveLength(2);
    expect(book.reply({ ask: "load" }).batches[0]?.doses).toBe(dosesText(entry.doses));
  });
});

test("a batch sent again with other litres is not written, and row and column are named, not what was typed since", () => {
  const book = readyBook();
  const entry = batch();
  const again = (given: object) => book.reply({ ask: "log batch", who: "", batch: { ...entry, ...given } });
  again({});
  const at = (heading: string) => (book.values("Batch log")[0]?.indexOf(heading) ?? -1) + 1;
  book.grid.tab("Batch log").write(2, at("State"), [[{ value: "mixed" }]]);
  book.grid.tab("Batch log").write(2, at("Corrects"), [[{ value: "batch-0000" }]]);
  expect(again({})).toEqual({ written: 0, already: 1, differing: [] });
  expect(again({ litres: 12 }).differing).toEqual([expect.stringMatching(/row 2 .* another Litres\./)]);
});

describe("who", () => {
  test("is the name kept for this person when the request has none", () => {
    const book = readyBook();
    expect(book.reply({ ask: "set name", who: "  Ana " })).toEqual({ who: "Ana" });
    expect(book.reply({ ask: "load" }).who).toBe("Ana");
    book.reply({ ask: "log care", who: "", entries: [careEntry()] });
    book.reply({ ask: "log care", who: "Ben", entries: [careEntry({ plant: "Fern" })] });
    expect([2, 3].map((row) => book.cell("Care log", row, "Who"))).toEqual(["Ana", "Ben"]);
  });

  const signed = ALL_SAMPLES.filter(({ request }) => "who" in request && request.ask !== "set name");

  test.each(signed.map((sample) => [sample.what, sample] as const))(
    "is the name kept or the one in the request, which goes before it: %s",
    (_, { request }) => {
      const logs = ["Care log", "Batch log", "Purchases", "Meter log", "Claims", "Trials"];
      const written = (kept: string, who: string) => {
        const book = openTestBook({ tabs: sampleTabs() });
        book.setUp();
        // Rows that are corrected or taken back have to be the person's own.
        for (const name of ["Care log", "Batch log"]) {
          const [headings = [], ...rows] = book.values(name);
          const cell = { value: "Cleo" };
          book.grid.tab(name).write(
            2,
            headings.indexOf("Who") + 1,
            rows.map(() => [cell]),
          );
        }
        book.reply({ ask: "set name", who: kept });
        book.reply({ ...request, who } as typeof request);
        return logs.map((name) => book.values(name));
      };
      const given = written("Dora", "Cleo");
      expect(written("Cleo", "")).toEqual(given);
      expect(JSON.stringify(given)).not.toContain("Dora");
    },
  );

  test("cannot be a blank name", () => {
    expect(readyBook().refusal({ ask: "set name", who: "  " }).code).toBe("no-name");
  });
});

describe("refused, with nothing written:", () => {
  const care = (given: object) => ({ ask: "log care", who: "", entries: [careEntry(), { ...careEntry(), ...given }] });
  const mixed = (given: object) => ({ ask: "log batch", who: "", batch: { ...batch(), ...given } });
  const dosed = (given: object) => mixed({ doses: [{ feed: "Salt", perLitre: 1, unit: "g", perBatch: 10, ...given }] });
  test.each<[string, object, RegExp]>([
    [
      "a negative amount",
      care({ amountMl: -5 }),
      /^The amount in mL of entry 2 is -5: it must be 0 or more\. Nothing was written\.$/,
    ],
    ["text for an amount", care({ amountMl: "much" }), /The amount in mL of entry 2 is "much": a number is needed/],
    ["a pH of 15", care({ pH: 15 }), /The pH of entry 2 is 15: it must be 14 or less/],
    [
      "an EC in µS/cm",
      care({ ecMsCm: 1650, plant: "Hoya" }),
      /EC for Hoya is 1650 mS\/cm\. Give a number from 0 to 100 mS\/cm/,
    ],
    ["no plant", care({ plant: "" }), /The plant of entry 2 is "": it must not be blank/],
    ["a day that does not exist", care({ day: "2026-02-30" }), /There is no day 2026-02-30/],
    [
      "a day in words",
      care({ day: "3/4/2026" }),
      /The day of entry 2 is "3\/4\/2026": it is not written as it should be/,
    ],
    [
      "a note of 3,000 characters",
      care({ note: "long ".repeat(600) }),
      /The note of entry 2 is "long long.*: at most 2000 characters/,
    ],
    [
      "no plants at all",
      { ask: "log care", who: "", entries: [] },
      /The list of entries is \[\]: at least one is needed/,
    ],
    ["a negative dose", dosed({ perLitre: -1 }), /The dose per litre of entry 1 is -1: it must be 0 or more/],
    ["an absurd dose", dosed({ perLitre: 5000 }), /The dose of Salt is 5000 g\/L\. Give a number from 0 to 2000 g\/L/],
    ["no litres", mixed({ litres: 0 }), /The number of litres is 0: it must be more than 0/],
    ["a swimming pool", mixed({ litres: 1e6 }), /The batch is 1000000 L\. Give a number from 0 to 10000 L/],
    ["no doses", mixed({ doses: [] }), /The list of doses is \[\]: at least one is needed/],
    ["a dose in drops", dosed({ unit: "drops" }), /The unit of entry 1 is "drops": one of g, mL is needed/],
    ["an Id that is none", mixed({ id: "=1+1" }), /is "=1\+1": it is not written as it should be/],
    ["an element there is not", mixed({ reached: { N: 1, Xx: 2 } }), /The mg\/L reached is .*: there is no Xx/],
    ["a negative amount of an element", mixed({ reached: { N: -1 } }), /N is -1: it must be 0 or more/],
    [
      "a measured EC in µS/cm",
      mixed({ corrects: "batch-0001", measured: { ecMsCm: 1650, pH: null } }),
      /^The measured EC is 1650 mS\/cm\. Give a number from 0 to 100/,
    ],
    ["nothing that can be asked", { ask: "constructor" }, /asked for something the sheet does not know/],
    ["a missing field", mixed({ reached: undefined }), /The mg\/L reached is missing/],
  ])("%s", (_, request, sentence) => {
    const book = readyBook();
    expect(book.refusal(request).sentence).toMatch(sentence);
    expect(book.values("Care log")).toHaveLength(1);
    expect(book.values("Batch log")).toHaveLength(1);
    expect(book.calls).toEqual([]);
  });
});
