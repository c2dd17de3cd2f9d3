/** Each step of a batch: what it names, how much, in which unit, and its caution. */

import { describe, expect, it } from "vitest";
import { ACID_CAUTION, BASE_CAUTION } from "../../src/core/acid-dose.ts";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { keepApart, mixingSteps, type OrderAcid, type OrderTask, partOf } from "../../src/core/order.ts";

const feed = (name: string, label: string, density: number | null = null): Feed =>
  feedOf(name, parseLabel(label, density), density);
const SALT = feed("Salt", "N 10");
const CALCIUM = feed("Lime", "Ca 20");
const THIN_CALCIUM = feed("Lime water", "Ca 10", 1.1);
const LIQUID = feed("Green", "N 8", 1.2);
const SULFATE = feed("Bitter", "Mg 9 S 12");
const ALL = feed("All in one", "10-5-5 Ca 4");
const SILICATE = feed("Glass", "Si 5", 1.2);
const ACID: OrderAcid = {
  name: "Citric acid",
  kind: "acid",
  amount: 2,
  unit: "g",
  first: "1.6 g of Citric acid",
  rest: "0.4 g",
};
const BASE: OrderAcid = { name: "Lye", kind: "base", amount: 3, unit: "mL", first: "2.4 mL of Lye", rest: "0.6 mL" };

const steps = (given: Partial<OrderTask>) =>
  mixingSteps({ litres: 10, doses: [], acid: null, alkalinityMgCaCO3L: 100, ...given });

describe("a step", () => {
  it("of water, filling up and reading says litres and warns of nothing", () => {
    expect(steps({})).toEqual([
      { kind: "water", what: "", amount: 8, unit: "L", caution: "", text: expect.stringMatching(/^Pour 8 L /) },
      { kind: "fill", what: "", amount: 10, unit: "L", caution: "", text: expect.stringMatching(/ 10 L /) },
      {
        kind: "measure",
        what: "",
        amount: 0,
        unit: "",
        caution: "",
        text: expect.stringMatching(/read EC and pH.*write/),
      },
    ]);
  });

  it.each([
    [SALT, "g", /^Add 5 g of Salt /, ""],
    [LIQUID, "mL", /^Stir in 5 mL of Green\.$/, ""],
    [CALCIUM, "g", /^Dissolve 5 g of Lime in a cup of water apart/, ""],
    [THIN_CALCIUM, "mL", /^Thin 5 mL of Lime water /, ""],
    [ALL, "g", /^Add 5 g of All in one /, ""],
    [SILICATE, "mL", /^Thin 5 mL of Glass .*until the water is clear/, "gloves"],
  ] as const)("of a feed says how, and only silicate burns: %#", (one, unit, text, caution) => {
    const step = steps({ doses: [{ feed: one, perBatch: 5 }] })[1];
    expect(step).toMatchObject({ kind: "feed", what: one.name, amount: 5, unit, text: expect.stringMatching(text) });
    expect(step?.caution === "").toBe(caution === "");
    expect(step?.caution).toContain(caution);
  });

  it("of a stock says millilitres of it, and counts the syringe's goes", () => {
    const doses = [{ feed: CALCIUM, perBatch: 5, stockMl: 50 }];
    expect(steps({ doses, syringeMostMl: 20, scaleMostG: 1 })[1]?.text).toMatch(
      /^Thin 50 mL of the stock of Lime, in 3 goes /,
    );
    expect(steps({ doses: [{ feed: SALT, perBatch: 5 }], syringeMostMl: 1, scaleMostG: 2 })[1]?.text).toMatch(
      /5 g of Salt, in 3 goes/,
    );
    expect(steps({ doses: [{ feed: SALT, perBatch: 5 }], scaleMostG: 5 })[1]?.text).not.toMatch(/goes/);
  });

  it("of spoons says spoons, and the grams they are", () => {
    const [, step] = steps({ doses: [{ feed: SALT, perBatch: 4.8, how: "1 level spoon of 4.8 g" }], scaleMostG: 1 });
    expect(step?.text).toMatch(/^Add 1 level spoon of 4\.8 g of Salt \(4\.8 g\) /);
  });
});

describe("the acid", () => {
  const kinds = (given: Partial<OrderTask>) =>
    steps({
      doses: [
        { feed: SALT, perBatch: 5 },
        { feed: SILICATE, perBatch: 1 },
      ],
      ...given,
    }).map(({ kind, what }) => `${kind} ${what}`.trim());

  it("comes after silicate and before all else in alkaline water, once", () => {
    expect(kinds({ acid: ACID })).toEqual(["water", "feed Glass", "acid Citric acid", "feed Salt", "fill", "measure"]);
    expect(kinds({ acid: ACID, alkalinityMgCaCO3L: null })).toEqual(kinds({ acid: ACID }));
    expect(kinds({ acid: ACID, alkalinityMgCaCO3L: 41 })).toEqual(kinds({ acid: ACID }));
  });

  it("comes after filling up in soft water, as a base always does", () => {
    const late = (name: string) => ["water", "feed Glass", "feed Salt", "fill", `acid ${name}`, "measure"];
    expect(kinds({ acid: ACID, alkalinityMgCaCO3L: 40 })).toEqual(late("Citric acid"));
    expect(kinds({ acid: BASE })).toEqual(late("Lye"));
    expect(kinds({ acid: BASE, alkalinityMgCaCO3L: 5 })).toEqual(late("Lye"));
    expect(kinds({})).toEqual(["water", "feed Glass", "feed Salt", "fill", "measure"]);
  });

  it("says the first part and the rest, with its own caution, also where the rest is added", () => {
    const early = steps({ acid: ACID });
    expect(early[1]).toMatchObject({ kind: "acid", amount: 2, unit: "g", caution: ACID_CAUTION });
    expect(early[1]?.text).toMatch(/^Stir in 1\.6 g of Citric acid, four fifths.*rest follows at the end/);
    expect(early[3]).toMatchObject({ kind: "measure", caution: ACID_CAUTION });
    expect(early[3]?.text).toMatch(/rest of the acid, about 0\.4 g/);
    const late = steps({ acid: ACID, alkalinityMgCaCO3L: 10 });
    expect(late[2]?.text).toMatch(/^Stir in 1\.6 g of Citric acid, wait a minute.*about 0\.4 g/);
    expect(late[2]?.text).not.toMatch(/follows at the end/);
    expect(late[3]?.caution).toBe("");
    expect(steps({ acid: BASE })[2]).toMatchObject({ unit: "mL", caution: BASE_CAUTION });
  });
});

it("a trace on a label does not matter for what falls out", () => {
  expect(partOf(feed("A", "N 10 Ca 0.5"))).toBe("plain");
  expect(partOf(feed("A", "N 10 Ca 0.6"))).toBe("calcium");
  expect(partOf(feed("A", "Mg 9 S 0.5"))).toBe("plain");
});

it("calcium of either kind is kept apart from sulfate and phosphate, all by name", () => {
  const words = keepApart([CALCIUM, ALL, SULFATE, feed("MKP", "0-52-34"), SALT]);
  expect(words).toMatch(/^Never mix Lime or All in one with Bitter or MKP undiluted/);
  expect(keepApart([ALL, SULFATE])).toMatch(/All in one with Bitter/);
  expect(keepApart([CALCIUM, ALL, SALT])).toBeNull();
});
