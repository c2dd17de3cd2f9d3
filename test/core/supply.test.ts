/** What is left of feeds, by hand and as a sum that always comes out. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { baseOf, entriesByFeed, unitOfEntries } from "../../src/core/supply.ts";
import { type Supply, type SupplyTask, supplies } from "../../src/core/supply-left.ts";
import { dosesUsed, unreadFor } from "../../src/core/supply-log.ts";
import { refusal } from "./refusal.ts";

const task = (more: Partial<SupplyTask>): SupplyTask => ({
  bought: [],
  used: [],
  today: 100,
  densityOf: () => null,
  ...more,
});
const only = (more: Partial<SupplyTask>): Supply => supplies(task(more))[0] as Supply;

describe("on hand", () => {
  it("by hand: 1 kg bought, three batches of 12 g, one of them tomorrow", () => {
    const used = [80, 90, 101].map((day) => ({ feed: "salt", day, amount: 12, unit: "g" as const }));
    const left = only({ bought: [{ feed: "Salt", day: 50, amount: 1, unit: "kg" }], used });
    expect(left).toMatchObject({ feed: "Salt", unit: "g", bought: 1000, used: 24, onHand: 976, batchesLeft: 81 });
    // 24 g over the 21 days from the first batch to today.
    expect(left.perDay).toBeCloseTo(24 / 21, 12);
    expect(left.daysLeft).toBeCloseTo(976 / (24 / 21), 9);
    expect(left.sentence).toBe("976 g of Salt are left, enough for 81 batches.");
  });

  it("by hand: bought in millilitres, used in grams, with a density of 1.25", () => {
    const left = only({
      bought: [{ feed: "Liquid", day: null, amount: 0.5, unit: "L" }],
      used: [{ feed: "Liquid", day: 99, amount: 25, unit: "g" }],
      densityOf: () => 1.25,
    });
    expect(left).toMatchObject({ unit: "mL", onHand: 480, used: 20 });
  });

  it("exactly one batch left is one batch, in spite of binary sums", () => {
    const used = Array.from({ length: 9 }, (_, k) => ({ feed: "S", day: 90 + k, amount: 0.1, unit: "g" as const }));
    expect(only({ bought: [{ feed: "S", day: 1, amount: 1, unit: "g" }], used }).batchesLeft).toBe(1);
  });

  it("the last ninety days count, and only batches with a day that used something", () => {
    const bought = [{ feed: " S ", day: 1, amount: 100, unit: "g" as const }];
    const use = (day: number | null, amount: number) => ({ feed: "S", day, amount, unit: "g" as const });
    const used = [use(10, 30), use(11, 8), use(50, 0), use(51, 0), use(99, 4), use(null, 5)];
    const left = only({ bought, used });
    expect(left).toMatchObject({ feed: "S", used: 47, onHand: 53 });
    // 8 + 4 within 90 days of day 100; the log reaches further back, so 90 days. The middle batch is the smaller one.
    expect(left.perDay).toBeCloseTo(12 / 90, 12);
    expect(left.batchesLeft).toBe(13);
    expect(only({ bought, used: [use(null, 5)] })).toMatchObject({ used: 5, perDay: null });
    expect(only({ bought, used: [use(99, 0)] })).toMatchObject({ perDay: null, batchesLeft: null });
    // From day 90 on: eleven days, taken as fourteen.
    expect(only({ bought, used: [use(null, 5), use(90, 14)] }).perDay).toBeCloseTo(1, 12);
  });

  it("used up to the last gram is none left, not too much used; one batch is said as one", () => {
    const bought = [{ feed: "S", day: 1, amount: 12, unit: "g" as const }];
    const used = (amount: number) => only({ bought, used: [{ feed: "S", day: 99, amount, unit: "g" }] }).sentence;
    expect(used(12)).toBe("0 g of S are left, enough for 0 batches.");
    const spilled = [...bought, { feed: "S", day: 2, amount: -12, unit: "g" as const }];
    expect(only({ bought: spilled }).sentence).toBe("0 g of S are left; none was used lately.");
    expect(only({ bought: spilled, used: [{ feed: "S", day: 99, amount: 3, unit: "g" }] }).sentence).toMatch(
      /^The log used 3 g of S, but only 0 g were bought/,
    );
    expect(used(6)).toBe("6 g of S are left, enough for 1 batch.");
  });

  it("what is bought tomorrow is not there today", () => {
    expect(only({ bought: [{ feed: "S", day: 101, amount: 10, unit: "g" }] })).toMatchObject({ bought: 0, onHand: 0 });
    const entries = entriesByFeed({
      bought: [
        { feed: "S", day: 101, amount: 10, unit: "g" },
        { feed: "S", day: null, amount: 5, unit: "g" },
      ],
      used: [],
      today: 100,
    });
    expect(entries.get("s")?.bought.map(({ amount }) => amount)).toEqual([5]);
    const all = entriesByFeed({ bought: [{ feed: "S", day: 101, amount: 10, unit: "g" }], used: [], today: null });
    expect(all.get("s")?.bought).toHaveLength(1);
  });

  it("more used than bought is said, not hidden", () => {
    const left = only({
      bought: [{ feed: "S", day: 1, amount: 10, unit: "g" }],
      used: [{ feed: "S", day: 99, amount: 12, unit: "g" }],
    });
    expect(left.onHand).toBe(-2);
    expect(left.daysLeft).toBe(0);
    expect(left.sentence).toBe(
      "The log used 12 g of S, but only 10 g were bought. A purchase is missing, or a batch was logged wrongly.",
    );
  });

  it("nothing bought, nothing used lately", () => {
    expect(only({ used: [{ feed: "S", day: 99, amount: 12, unit: "g" }] }).sentence).toBe(
      "No purchase of S is on record, so nobody can say how much is left.",
    );
    const idle = only({ bought: [{ feed: "S", day: 1, amount: 10, unit: "g" }] });
    expect([idle.perDay, idle.daysLeft, idle.batchesLeft]).toEqual([null, null, null]);
    expect(idle.sentence).toBe("10 g of S are left; none was used lately.");
  });

  it("is always what was bought less what was used", () => {
    const amounts = fc.array(
      fc.record({ day: fc.integer({ min: 0, max: 100 }), amount: fc.integer({ min: 0, max: 500 }) }),
    );
    fc.assert(
      fc.property(amounts, amounts, (inward, outward) => {
        fc.pre(inward.length + outward.length > 0);
        const left = only({
          bought: inward.map((one) => ({ feed: "S", unit: "g" as const, ...one })),
          used: outward.map((one) => ({ feed: " s ", unit: "g" as const, ...one })),
        });
        const total = (list: typeof inward) => list.reduce((sum, { amount }) => sum + amount, 0);
        expect(left.onHand).toBe(total(inward) - total(outward));
      }),
    );
  });
});

it("grams against millilitres need a density, and a batch uses nothing below 0", () => {
  const bought = [{ feed: "L", day: 1, amount: 1, unit: "L" as const }];
  expect(refusal(() => supplies(task({ bought, used: [{ feed: "L", day: 2, amount: 5, unit: "g" }] })))).toBe(
    "L is counted in mL, but some of it was bought or used in g. Give its density in g/mL, so that the two can be counted together.",
  );
  expect(refusal(() => supplies(task({ bought, used: [{ feed: "L", day: 2, amount: -5, unit: "mL" }] })))).toBe(
    "A batch used -5 mL of L. Give 0 or more.",
  );
});

it("millilitres are turned into grams as well, and no amount may be no number", () => {
  const bought = [{ feed: "L", day: 1, amount: 1, unit: "kg" as const }];
  const used = [{ feed: "L", day: 2, amount: 20, unit: "mL" as const }];
  expect(only({ bought, used, densityOf: () => 1.25 })).toMatchObject({ unit: "g", used: 25, onHand: 975 });
  const bad = [{ feed: "L", day: 2, amount: Number.NaN, unit: "g" as const }];
  expect(refusal(() => supplies(task({ bought, used: bad })))).toBe("An amount of L is NaN g. Give a number.");
});

it("a purchase without a day came first, whatever the order of rows; without any the first use names the unit", () => {
  const dated = { feed: "L", day: 0, amount: 1, unit: "kg" as const };
  const undated = { feed: "L", day: null, amount: 1, unit: "L" as const };
  for (const bought of [
    [dated, undated],
    [undated, dated],
  ]) {
    expect(only({ bought, densityOf: () => 1 }).unit).toBe("g");
  }
  expect(only({ used: [{ feed: "L", day: 2, amount: 5, unit: "mL" }] }).unit).toBe("mL");
  expect(unitOfEntries({ bought: [], used: [] })).toBe("g");
  expect([baseOf("kg"), baseOf("L")]).toEqual([
    { unit: "g", factor: 1000 },
    { unit: "mL", factor: 1000 },
  ]);
});

it("what was spilled or given away counts as a purchase below 0, and the latest day names the unit, not the last row", () => {
  const bought = [
    { feed: "L", day: 40, amount: -100, unit: "mL" as const },
    { feed: "L", day: 30, amount: 0.5, unit: "L" as const },
    { feed: "L", day: 10, amount: 1250, unit: "g" as const },
  ];
  // 500 mL + 1250 g at 1.25 g/mL - 100 mL.
  expect(only({ bought, densityOf: () => 1.25 })).toMatchObject({ unit: "mL", bought: 1400, onHand: 1400 });
});

describe("doses of the log", () => {
  const batch = (day: number | null, doses: string) => ({ day, doses, where: "row 7 of Batch log" });

  it("are read from their text; a row without any uses nothing", () => {
    expect(dosesUsed([batch(5, 'A 1 g/L (10 g); "B; C" 2 mL/L (20 mL)'), batch(6, " ")])).toEqual({
      used: [
        { feed: "A", day: 5, amount: 10, unit: "g" },
        { feed: "B; C", day: 5, amount: 20, unit: "mL" },
      ],
      unread: [],
    });
  });

  it("that cannot be read are about the feed they begin with, else about any", () => {
    const { used, unread } = dosesUsed([batch(5, "A 1 g/L (10 g); Calcium nitrate a spoon; a pinch of salt")]);
    expect(used).toHaveLength(1);
    const known = ["A", "Calcium", "Calcium nitrate"];
    const [spoon, pinch] = unread;
    if (spoon === undefined || pinch === undefined) throw new Error("There should be two.");
    expect(unreadFor("calcium nitrate", [spoon], known)).toMatch(
      /^Doses in row 7 of Batch log: “Calcium nitrate a spoon” is not a dose\./,
    );
    expect(unreadFor("Calcium", [spoon], known)).toBeNull();
    expect(unreadFor("Zinc", [pinch], ["Zinc", "Calcium"])).toContain("a pinch of salt");
    expect(unreadFor("A", [], known)).toBeNull();
    // A name left blank on the shelf is no name of anything.
    expect(unreadFor("Zinc", [pinch], ["Zinc", " "])).toContain("a pinch of salt");
  });

  it("a name in quotes, or with a quote inside, is the name it stands for", () => {
    const { unread } = dosesUsed([batch(5, '"B; C" a spoon'), batch(6, '5" lava a spoon')]);
    expect(unread).toHaveLength(2);
    expect(unreadFor("Zinc", unread, ["Zinc", "B; C", '5" lava'])).toBeNull();
    expect(unreadFor("B; C", unread, ["Zinc", "B; C", '5" lava'])).toContain("row 7");
    expect(unreadFor('5" lava', unread, ["Zinc", "B; C", '5" lava'])).toContain("row 7");
  });
});
