/** What a day's rows of the care log say of a reservoir, by hand. */

import { describe, expect, test } from "vitest";
import { eventRule } from "../../src/core/events.ts";
import { type CareRow, fillKind, indexFills, lastDisturbedDay } from "../../src/core/fills.ts";

const rule = eventRule();
const row = (given: Partial<CareRow> = {}): CareRow => ({
  day: 100,
  plant: "Fern",
  event: "Top up",
  amountMl: 200,
  who: "",
  ...given,
});
const fills = (...rows: readonly CareRow[]) => indexFills(rows, rule).get("fern") ?? [];
/** Top-ups of one day: "Ana 200", "Ben" for one without an amount, "190" for one without a name. */
const poured = (...pours: readonly string[]): number | null | undefined =>
  fills(
    ...pours.map((pour) => {
      const [, who = "", amount] = /^([a-z]*)\s*(\d*)\s*$/i.exec(pour) ?? [];
      return row({ who, amountMl: amount ? Number(amount) : null });
    }),
  )[0]?.topUpMl;

describe("top-ups of one day", () => {
  test.each<[readonly string[], number | null]>([
    [["Ana 200"], 200],
    [["Ana"], null],
    [["200"], 200],
    // two members wrote the same pour down, a tenth apart at most
    [["Ana 200", "Ben 190"], 200],
    [["Ana 180", "Ben 200"], 200],
    [["Ana 200", "Ben 179"], 379],
    [["Ana 200", "Ben 195", "Cleo 190"], 200],
    // one member poured twice
    [["Ana 200", "Ana 190"], 390],
    [["Ana 200", "ANA 190"], 390],
    [["Ana 200", "Ben 200", "Ana 200"], 400],
    [["Ana 200", "Ana 200", "Ben 200", "Ben 200"], 400],
    // nobody is named: one and the same, but for what a member wrote twice
    [["200", "190"], 200],
    [["Ana 200", "190"], 200],
    [["200", "Ana 190"], 200],
    [["Ana 200", "Ana 200", "200"], 400],
    [["200", "Ana 200", "Ana 200"], 400],
    // a pour without an amount: by the same member more went in than is known
    [["Ana 200", "Ana"], null],
    [["Ana 200", "Ben"], 200],
    [["Ana 200", ""], 200],
    [["Ana 200", "Ben 100", "Ana"], 300],
    [["Ana", "Ben"], null],
    [["Ana", "Ana"], null],
    [["", ""], null],
    // nobody wrote down whose it was, so it may be the one that is known
    [["200", ""], 200],
  ])("%j are %j mL", (pours, ml) => expect(poured(...pours)).toBe(ml));

  test("of none is no amount, whatever else was done", () => {
    expect(fills(row({ event: "Solution change", amountMl: 900 }))).toEqual([
      { day: 100, topUpMl: null, flushed: false, changed: true, disturbed: false },
    ]);
    expect(fills(row({ event: "Solution change", amountMl: 900 }), row({ amountMl: 50 }))[0]).toMatchObject({
      topUpMl: 50,
      changed: true,
    });
  });
});

describe("fill days", () => {
  test("say all that was done on the day", () => {
    expect(fills(row(), row({ event: "Flush in place" }), row({ event: "Repot", amountMl: null }))).toEqual([
      { day: 100, topUpMl: 200, flushed: true, changed: false, disturbed: true },
    ]);
    const kinds = ["top up", "Solution  change", "FLUSH IN PLACE", "Repot", "Note", "New leaf", "What?"];
    expect(kinds.map((event) => fillKind(event, rule))).toEqual([
      "top up",
      "change",
      "flush",
      "disturbance",
      null,
      null,
      null,
    ]);
  });

  test("come oldest first, whatever the order of rows, each day once", () => {
    const days = [103, 101, 103, 100, 102, 101];
    expect(
      fills(...days.map((day, at) => row({ day, who: `w${at}`, amountMl: 100 + 50 * at }))).map(({ day }) => day),
    ).toEqual([100, 101, 102, 103]);
    expect(fills(row({ day: 1 }), row({ day: 2 }), row({ day: 3 })).map(({ day }) => day)).toEqual([1, 2, 3]);
  });

  test("go by the plant's name, case and spaces ignored, and leave out rows that fill nothing", () => {
    const rows = [
      row({ plant: " FERN ", day: 1 }),
      row({ plant: "Fern", day: 2 }),
      row({ plant: "fern", day: 3 }),
      row({ plant: "  ", day: 4 }),
      row({ plant: "", day: 5 }),
      row({ amountMl: 0, day: 6 }),
      row({ amountMl: 0, day: 7, event: "Solution change" }),
      row({ day: 8.5 }),
      row({ day: Number.NaN }),
      row({ event: "Note", day: 9 }),
      row({ plant: "Fig", day: 10 }),
    ];
    const all = indexFills(rows, rule);
    expect([...all.keys()].sort()).toEqual(["fern", "fig"]);
    expect(all.get("fern")?.map(({ day }) => day)).toEqual([1, 2, 3, 7]);
  });
});

test("the last disturbance is the last up to the day, that day included", () => {
  const days = fills(row({ day: 1, event: "Repot" }), row({ day: 5, event: "Repot" }), row({ day: 7 }));
  expect([0, 1, 4, 5, 9].map((asOf) => lastDisturbedDay(days, asOf))).toEqual([null, 1, 1, 5, 5]);
  expect(lastDisturbedDay([], 9)).toBeNull();
});
