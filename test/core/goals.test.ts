/** Goals: strength, ratios, limits, weights, cost and what is to be used up, by hand and by their own conditions. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Amounts } from "../../src/core/elements.ts";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { type GoalTask, solveGoals } from "../../src/core/goals.ts";
import { parseLabel } from "../../src/core/label.ts";
import { type Mixture, mixtureOf, nitrogenShares } from "../../src/core/mixture.ts";
import { solveDoses } from "../../src/core/solve.ts";
import { drawn } from "../drawn.ts";
import { percentOf } from "./formula.ts";
import { refusal } from "./refusal.ts";

const salt = (formula: string): Feed => feedOf(formula, { ...parseLabel("0-0-0"), percent: percentOf(formula) }, null);
const feed = (name: string, label: string, densityGPerMl: number | null = null): Feed =>
  feedOf(name, parseLabel(label, densityGPerMl), densityGPerMl);
const goal = (feeds: readonly Feed[], more: Partial<GoalTask>): GoalTask => ({
  feeds: feeds.map((one) => ({ feed: one })),
  water: {},
  litres: 10,
  ...more,
});

const HOAGLAND = ["KNO3", "Ca(NO3)2.4H2O", "KH2PO4", "MgSO4.7H2O"].map(salt);
const SIX: Amounts = { N: 210, P: 31, K: 235, Ca: 200, Mg: 48.6, S: 64 };
/** Sum of cations, meq/L, over 10: the rule of thumb for dS/m. It rises with strength, which is all that counts here. */
const thumb = ({ amounts, nitrogenMgL }: Mixture) =>
  ((amounts.K ?? 0) / 39.1 +
    (amounts.Ca ?? 0) / 20.04 +
    (amounts.Mg ?? 0) / 12.15 +
    (amounts.Na ?? 0) / 23 +
    nitrogenMgL.ammonium / 14) /
  10;

describe("strength", () => {
  it("by N with a ratio, by hand: N:P:K 3:1:2 at 90 mg/L N is P 30, K 60", () => {
    const feeds = ["NH4NO3", "KH2PO4", "K2SO4", "NH4H2PO4"].map(salt);
    const { mixture, ratios, notices } = solveGoals(
      goal(feeds, { ratios: [{ N: 3, P: 1, K: 2 }], strength: { kind: "N", nitrogenMgL: 90 } }),
    );
    expect(mixture.amounts.N).toBeCloseTo(90, 6);
    expect(mixture.amounts.P).toBeCloseTo(30, 6);
    expect(mixture.amounts.K).toBeCloseTo(60, 6);
    expect(ratios[0]?.off).toBeLessThan(1e-9);
    expect(notices).toEqual([]);
  });

  it("one ratio leads to the next: N:P:K 3:1:2 and K:Ca 2:1 at 90 mg/L N is Ca 30", () => {
    const feeds = [...HOAGLAND, salt("NH4H2PO4"), salt("NH4NO3")];
    const { aimed } = solveGoals(
      goal(feeds, {
        ratios: [
          { K: 2, Ca: 1 },
          { N: 3, P: 1, K: 2 },
        ],
        strength: { kind: "N", nitrogenMgL: 90 },
      }),
    );
    expect(aimed).toEqual({ N: 90, P: 30, K: 60, Ca: 30 });
  });

  it("by EC: Hoagland's proportions at 1 mS/cm by the rule of thumb are half of the 20 meq/L of the full strength", () => {
    // Hoagland & Arnon 1950, solution 1, has 20 meq/L of cations: 2 dS/m by the rule of thumb.
    const found = solveGoals(goal(HOAGLAND, { wanted: SIX, strength: { kind: "EC", ecMsCm: 1, ecOf: thumb } }));
    expect(found.ecMsCm).toBeCloseTo(1, 3);
    expect((found.mixture.amounts.N ?? 0) / 210).toBeCloseTo(0.5, 2);
    expect((found.mixture.amounts.K ?? 0) / 235).toBeCloseTo(0.5, 2);
  });

  it("by EC with a ratio alone", () => {
    const found = solveGoals(
      goal(HOAGLAND, { ratios: [{ K: 4, Ca: 2, Mg: 1 }], strength: { kind: "EC", ecMsCm: 1.4, ecOf: thumb } }),
    );
    expect(found.ecMsCm).toBeCloseTo(1.4, 3);
    expect((found.mixture.amounts.K ?? 0) / (found.mixture.amounts.Mg ?? 1)).toBeCloseTo(4, 6);
    expect((found.mixture.amounts.Ca ?? 0) / (found.mixture.amounts.Mg ?? 1)).toBeCloseTo(2, 6);
  });

  it.each<[Partial<GoalTask>, string]>([
    [{ strength: { kind: "N", nitrogenMgL: 0 }, wanted: SIX }, "The strength is 0 mg/L N. Give a number above 0."],
    [
      { strength: { kind: "EC", ecMsCm: 650, ecOf: thumb }, wanted: SIX },
      "The strength is 650 mS/cm. Give a number above 0, up to 20.",
    ],
    [
      { strength: { kind: "EC", ecMsCm: 0.2, ecOf: thumb }, wanted: SIX, water: { Ca: 80 } },
      "The water alone reads 0.399 mS/cm, and 0.2 is asked for. Blend it with low-mineral water or ask for more.",
    ],
    [
      { strength: { kind: "EC", ecMsCm: 2, ecOf: thumb }, wanted: SIX, limits: { atMost: { K: 50, Ca: 50, Mg: 20 } } },
      "With these feeds and limits the EC stays at 0.542 mS/cm, and 2 is asked for. Loosen a limit or ask for less.",
    ],
    [
      { ratios: [{ N: 3, P: 1, K: 2 }] },
      "N:P:K 3:1:2 has no amount to go by. Give one of its elements in mg/L, or the strength as N.",
    ],
    [
      { ratios: [{ N: 3 }], strength: { kind: "N", nitrogenMgL: 90 } },
      "A ratio names at least two elements, like N:P:K 3:1:2.",
    ],
    [
      { ratios: [{ N: 3, K: -1 }], wanted: SIX },
      "The part of potassium in a ratio is -1. Give a number above 0, or leave K out.",
    ],
    [
      {
        ratios: [
          { N: 3, K: 2 },
          { N: 1, K: 1 },
        ],
        strength: { kind: "N", nitrogenMgL: 90 },
      },
      "N:K 1:1 does not fit with the other ratios: they set potassium twice. Leave one out.",
    ],
  ])("%j is refused", (more, sentence) => {
    expect(refusal(() => solveGoals(goal(HOAGLAND, more)))).toBe(sentence);
  });
});

describe("ratios", () => {
  it("that the feeds cannot make are followed as closely as they allow, and it is said", () => {
    const { ratios, notices } = solveGoals(
      goal([feed("A", "N 10 K 10 elemental")], { ratios: [{ N: 2, K: 1 }], wanted: { N: 100, K: 50 } }),
    );
    expect(ratios[0]?.off).toBeCloseTo(0.5, 9);
    expect(notices[0]).toBe("N:K 2:1 is off by up to 50 %: these feeds and limits do not allow it.");
  });

  it("are held with the water counted", () => {
    const { mixture } = solveGoals(
      goal(HOAGLAND, { water: { Ca: 40, Mg: 10 }, wanted: SIX, ratios: [{ K: 4, Ca: 3, Mg: 1 }] }),
    );
    expect((mixture.amounts.K ?? 0) / (mixture.amounts.Ca ?? 1)).toBeCloseTo(4 / 3, 6);
    expect((mixture.amounts.Ca ?? 0) / (mixture.amounts.Mg ?? 1)).toBeCloseTo(3, 6);
  });
});

describe("limits", () => {
  it("by hand: 10-10 elemental wanted at N 100, K no more than 60", () => {
    const { mixture, notices } = solveGoals(
      goal([feed("A", "N 10 K 10 elemental")], { wanted: { N: 100 }, limits: { atMost: { K: 60 } } }),
    );
    expect(mixture.amounts.N).toBeCloseTo(60, 9);
    expect(notices).toEqual([
      "The mix would come closer without the limit of at most 60 mg/L potassium.",
      "Not every label says which form its nitrogen has. What is not said counts as ammonium here.",
    ]);
  });

  it("by hand: ammonium no more than a quarter of N from ammonium nitrate (half) and potassium nitrate (none)", () => {
    const feeds = ["NH4NO3", "KNO3"].map(salt);
    const { ammoniumShare, mixture } = solveGoals(
      goal(feeds, { wanted: { N: 100 }, limits: { ammoniumShareAtMost: 0.25 } }),
    );
    expect(ammoniumShare).toBeLessThanOrEqual(0.25 + 1e-9);
    expect(mixture.amounts.N).toBeCloseTo(100, 6);
  });

  it("a lower limit on what is not in the target is met and no more", () => {
    const feeds = [...HOAGLAND, feed("Iron", "Fe 13")];
    const { mixture } = solveGoals(goal(feeds, { wanted: SIX, limits: { atLeast: { Fe: 2 } } }));
    expect(mixture.amounts.Fe).toBeCloseTo(2, 6);
  });

  it("a heavier weight brings an element closer", () => {
    const feeds = [feed("A", "N 10 K 5 elemental")];
    // (d − 1)² + w (d/2 − 1)²: with w = 4 least at d = (1 + 2) / (1 + 1) = 1.5.
    const found = solveGoals(goal(feeds, { wanted: { N: 100, K: 100 }, weights: { K: 4 } }));
    expect(found.doses[0]?.perLitre).toBeCloseTo(1.5, 9);
  });

  const shelf = [
    ...HOAGLAND,
    ...["NH4NO3", "K2SO4", "NH4H2PO4", "CaCl2.2H2O"].map(salt),
    feed("All in one", "10-5-5 Ca 4 Mg 1.2"),
  ];
  it("are kept in 150 goals, measured out or not, and the measured one is never closer", () => {
    const share = fc.integer({ min: 20, max: 200 }).map((n) => n / 100);
    const cases = fc.record({
      n: share,
      k: share,
      ca: share,
      cl: fc.integer({ min: 0, max: 60 }),
      s: fc.integer({ min: 10, max: 90 }),
      ammonium: fc.integer({ min: 0, max: 40 }),
    });
    let measured = 0;
    for (const one of fc.sample(cases, { numRuns: drawn(150), seed: 17 })) {
      const wanted = { ...SIX, N: 210 * one.n, K: 235 * one.k, Ca: 200 * one.ca };
      const limits = { atMost: { Cl: one.cl, S: one.s }, ammoniumShareAtMost: one.ammonium / 100 };
      const exact = solveGoals(goal(shelf, { wanted, limits }));
      const steps = solveGoals(
        goal(shelf, { wanted, limits, measures: shelf.map(() => ({ kind: "step", step: 0.1 })) }),
      );
      for (const { mixture, ammoniumShare } of [exact, steps]) {
        expect(mixture.amounts.Cl ?? 0).toBeLessThanOrEqual(one.cl + 1e-6);
        expect(mixture.amounts.S ?? 0).toBeLessThanOrEqual(one.s + 1e-6);
        expect(ammoniumShare ?? 0).toBeLessThanOrEqual(one.ammonium / 100 + 1e-7);
      }
      expect(steps.misfit).toBeGreaterThanOrEqual(exact.misfit - 1e-9);
      for (const { perBatch } of steps.doses)
        expect(Math.abs(perBatch * 10 - Math.round(perBatch * 10))).toBeLessThan(1e-9);
      measured += 1;
    }
    expect(measured).toBe(drawn(150));
  });

  it.each<[Partial<GoalTask>, string]>([
    [
      { wanted: SIX, limits: { atMost: { Na: 10 } }, water: { Na: 30 } },
      "The water alone brings 30 mg/L sodium, more than the 10 allowed. Blend it with low-mineral water or raise the limit.",
    ],
    [
      { wanted: SIX, limits: { atLeast: { B: 0.3 } } },
      "At least 0.3 mg/L boron is asked for, but none of these feeds holds boron. Add one that does.",
    ],
    [
      { wanted: SIX, limits: { atLeast: { S: 80 }, atMost: { S: 60 } } },
      "At least 80 and at most 60 mg/L sulfur cannot both hold. Change one of them.",
    ],
    [
      { wanted: SIX, limits: { atLeast: { S: 80 }, atMost: { Mg: 20 } } },
      'At most 20 mg/L magnesium and at least 80 mg/L sulfur cannot all hold with these feeds and this water. It works without "at most 20 mg/L magnesium" or "at least 80 mg/L sulfur".',
    ],
    [
      { wanted: SIX, limits: { ammoniumShareAtMost: 1.5 } },
      "The ammonium share is 150 %. Give a number from 0 to 100 %.",
    ],
    [{ wanted: SIX, limits: { atMost: { Cl: -1 } } }, "The upper limit for Cl is -1 mg/L. Give 0 or more."],
    [{ wanted: SIX, weights: { N: 0 } }, "The weight of N is 0. Give a number above 0."],
  ])("%j is refused", (more, sentence) => {
    expect(refusal(() => solveGoals(goal(HOAGLAND, more)))).toBe(sentence);
  });
});

describe("cost and what is to be used up", () => {
  const cheap = feed("Cheap", "N 10 K 10 elemental");
  const dear = feed("Dear", "N 10 K 11 elemental");
  const packs = { Cheap: { price: 5, holds: 1000 }, Dear: { price: 50, holds: 1000 } };
  const feeds = [cheap, dear].map((one) => ({ feed: one, pack: packs[one.name as "Cheap" | "Dear"] }));

  it("by hand: 1 g/L of the cheap one in 10 L is 10 g at half a cent", () => {
    const { cost, doses } = solveGoals({ feeds, water: {}, litres: 5, wanted: { N: 100, K: 100 } });
    expect(doses.map(({ perBatch }) => Number(perBatch.toFixed(6)))).toEqual([5, 0]);
    expect(cost.perBatch).toBeCloseTo(0.025, 9);
    expect(cost.per10L).toBeCloseTo(0.05, 9);
    expect(cost.unpriced).toEqual([]);
  });

  it("the cheapest that is close enough leaves the dear one out", () => {
    const wanted = { N: 100, K: 110 };
    const closest = solveGoals({ feeds, water: {}, litres: 10, wanted });
    const cheapest = solveGoals({
      feeds,
      water: {},
      litres: 10,
      wanted,
      prefer: { kind: "cheapest", tolerance: 0.06 },
    });
    expect(closest.doses[1]?.perLitre).toBeCloseTo(1, 6);
    expect(cheapest.cost.perBatch).toBeLessThan(0.2 * closest.cost.perBatch);
    expect(Math.sqrt(cheapest.misfit / 2)).toBeLessThanOrEqual(Math.sqrt(closest.misfit / 2) + 0.06 + 1e-9);
  });

  it("what is to be used up comes first, but no more than is left", () => {
    const stale = [{ feed: cheap, useFirst: true, onHand: 6 }, { feed: dear }];
    const found = solveGoals({
      feeds: stale,
      water: {},
      litres: 10,
      wanted: { N: 100, K: 110 },
      prefer: { kind: "use up", tolerance: 0.05 },
    });
    expect(found.doses[0]?.perBatch).toBeCloseTo(6, 6);
    expect(found.doses[1]?.perBatch).toBeGreaterThan(3);
  });

  it("a price that is not known is refused for the cheapest, and named otherwise", () => {
    const some = [{ feed: cheap, pack: packs.Cheap }, { feed: dear }];
    const wanted = { N: 100, K: 110 };
    expect(
      refusal(() =>
        solveGoals({ feeds: some, water: {}, litres: 10, wanted, prefer: { kind: "cheapest", tolerance: 0.05 } }),
      ),
    ).toBe("The price of Dear is not known. Give price and pack size, or leave it out.");
    expect(solveGoals({ feeds: some, water: {}, litres: 10, wanted }).cost.unpriced.map(({ name }) => name)).toEqual([
      "Dear",
    ]);
  });
});

describe("forms of nitrogen", () => {
  it("come from the label, else from a salt's formula, else are not known", () => {
    expect(nitrogenShares(feed("A", "N 10 NO3-N 6 NH4-N 4"))).toMatchObject({
      nitrate: 0.6,
      ammonium: 0.4,
      urea: 0,
      unstated: 0,
    });
    expect(nitrogenShares(salt("NH4NO3"))).toMatchObject({ nitrate: 0.5, ammonium: 0.5, unstated: 0 });
    expect(nitrogenShares(feed("A", "10-5-5"))).toMatchObject({ unstated: 1 });
    expect(nitrogenShares(feed("A", "0-5-5"))).toMatchObject({ nitrate: 0, unstated: 0 });
  });

  it("by hand: 1 g/L of N 10 with 6 nitrate and 4 ammonium, and a water with 5 mg/L N", () => {
    const { nitrogenMgL, amounts } = mixtureOf([{ feed: feed("A", "N 10 NO3-N 6 NH4-N 4"), perLitre: 1 }], { N: 5 });
    expect(amounts.N).toBeCloseTo(105, 9);
    expect(nitrogenMgL.nitrate).toBeCloseTo(65, 9);
    expect(nitrogenMgL.ammonium).toBeCloseTo(40, 9);
  });
});

it("without any of it, the answer is that of solveDoses", () => {
  const plain = solveDoses({ wanted: SIX, feeds: HOAGLAND, water: {} });
  const { doses } = solveGoals(goal(HOAGLAND, { wanted: SIX }));
  doses.forEach(({ perLitre }, j) => {
    expect(perLitre).toBeCloseTo(plain.doses[j]?.perLitre ?? Number.NaN, 8);
  });
});
