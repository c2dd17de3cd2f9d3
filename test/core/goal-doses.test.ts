/** Doses of a goal by hand: weights, what is left, ratios worth holding, price, what is to be used up, measured amounts. */

import { describe, expect, it } from "vitest";
import { BadInput } from "../../src/core/errors.ts";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { type DoseWishes, type GoalDoses, goalDoses, LIGHT, withLowerLimits } from "../../src/core/goal-doses.ts";
import type { NamedLimit } from "../../src/core/goal-limits.ts";
import type { Measure } from "../../src/core/grid.ts";
import { parseLabel } from "../../src/core/label.ts";

const feed = (name: string, label: string): Feed => feedOf(name, parseLabel(label), null);
/** 1 g/L brings 100 mg/L of N; of K; 200 of N. */
const A = feed("A", "N 10");
const B = feed("B", "K 10 elemental");
const C = feed("C", "N 20");

const wishes = (feeds: DoseWishes["feeds"], more: Partial<DoseWishes> = {}): DoseWishes => ({
  feeds,
  water: {},
  litres: 10,
  weights: {},
  equalities: [],
  limits: [],
  prefer: { kind: "closest" },
  ...more,
});
const steps = (...sizes: number[]): Measure[] => sizes.map((step) => ({ kind: "step", step }));
const limit = (coefficients: number[], atLeast: number, words: string): NamedLimit => ({
  coefficients,
  atLeast,
  words,
});

function expectDoses(found: GoalDoses, x: readonly number[], digits = 9): void {
  expect(found.x).toHaveLength(x.length);
  x.forEach((value, j) => {
    expect(found.x[j]).toBeCloseTo(value, digits);
  });
}

/** Code and sentence of the refusal. */
function refused(call: () => unknown): [string, string] {
  try {
    call();
  } catch (error) {
    if (error instanceof BadInput) return [error.code, error.message];
    throw error;
  }
  throw new Error("not refused");
}

describe("the closest doses", () => {
  it("weigh each element: (d − 1)² + 4 (d/2 − 1)² is least at 3/2, and is 1/2 there", () => {
    const found = goalDoses(
      { N: 100, K: 100 },
      wishes([{ feed: feed("F", "N 10 K 5 elemental") }], { weights: { K: 4 } }),
    );
    expectDoses(found, [1.5]);
    expect(found.misfit).toBeCloseTo(0.5, 9);
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])("a weight of %d is refused", (weight) => {
    expect(refused(() => goalDoses({ N: 100 }, wishes([{ feed: A }], { weights: { N: weight } })))[0]).toBe(
      "bad-weight",
    );
  });

  it("use no more than is left: 5 g for 10 L are 0.5 g/L, less than nothing is nothing", () => {
    const left = (onHand: number) => goalDoses({ N: 100 }, wishes([{ feed: A, onHand }]));
    expectDoses(left(5), [0.5]);
    expectDoses(left(-1), [0]);
    // What is left is none of the limits that were asked for.
    expect(left(5).binding).toEqual([]);
  });

  it("limits that cannot all be kept are named, those that stand in the way and no others", () => {
    const limits = [
      limit([100, 0], 100, "at least 100 mg/L nitrogen"),
      limit([0, -100], -500, "at most 500 mg/L potassium"),
    ];
    for (const more of [{}, { prefer: { kind: "use up", tolerance: 0.1 } }, { equalities: [limit([1, -1], 0, "")] }]) {
      const task = wishes([{ feed: A, onHand: 5 }, { feed: B }], { limits, ...more } as Partial<DoseWishes>);
      const [code, sentence] = refused(() => goalDoses({ N: 100, K: 100 }, task));
      expect(code).toBe("limits-conflict");
      const [, cures = ""] = sentence.split("It works without");
      expect(cures).toContain("at least 100 mg/L nitrogen");
      expect(cures).toContain("no more A than is left");
      expect(cures).not.toContain("potassium");
    }
  });
});

describe("ratios", () => {
  const equalities = [{ coefficients: [1, -1], atLeast: 0 }];
  it("are held where that is worth while: as much N as K, 100 and 90 wanted", () => {
    // (a − 1)² + (a / 0.9 − 1)²: a = (1 + 1/0.9) / (1 + 1/0.81).
    const a = (1 + 1 / 0.9) / (1 + 1 / 0.81);
    const found = goalDoses({ N: 100, K: 90 }, wishes([{ feed: A }, { feed: B }], { equalities }));
    expectDoses(found, [a, a]);
    expect(found.held).toBe(true);
  });

  it("are given up where each element would be off by 25 % more on average", () => {
    // N 100, K 10: a = 11 / 101, 0.89 off in N, 0.09 in K.
    const found = goalDoses({ N: 100, K: 10 }, wishes([{ feed: A }, { feed: B }], { equalities }));
    expectDoses(found, [1, 0.1]);
    expect(found.held).toBe(false);
  });

  it("the average counts what is off anyhow: calcium of no feed leaves room of 3 (√(1/3) + 1/4)² = 2.05", () => {
    const off = (weight: number) =>
      goalDoses({ N: 100, K: 10, Ca: 100 }, wishes([{ feed: A }, { feed: B }], { equalities, weights: { N: weight } }));
    // Weight 1: 1 + 0.80. Weight 4: a = 14 / 104, 1 + 4 · 0.749 + 0.12 = 4.1.
    expect(off(1).held).toBe(true);
    expect(off(4).held).toBe(false);
  });

  it("are given up where a limit leaves them no room", () => {
    const limits = [limit([100, 0], 50, "at least 50 mg/L nitrogen")];
    const task = wishes([{ feed: A }, { feed: B, onHand: 1 }], { equalities, limits });
    const found = goalDoses({ N: 100, K: 100 }, task);
    expectDoses(found, [1, 0.1]);
    expect(found.held).toBe(false);
    expect(found.binding).toEqual([false]);
  });
});

describe("a preference", () => {
  const pack = (price: number) => ({ price, holds: 1000 });
  // 100 mg/L of N cost 0.01 with A, 0.015 with C.
  const priced = [
    { feed: A, pack: pack(10) },
    { feed: C, pack: pack(30) },
  ];
  const cheapest = (tolerance: number) => ({ prefer: { kind: "cheapest", tolerance } as const });

  it("the cheapest stops at the tolerance: 5 % short, all from the cheaper", () => {
    expectDoses(goalDoses({ N: 100 }, wishes(priced, cheapest(0.05))), [0.95, 0], 4);
  });

  it("counts the tolerance on the average of what is off: √(1/2) + 0.05 for two elements, potassium of no feed", () => {
    // 2 (0.7071 + 0.05)² = 1.1464, of which potassium takes 1: nitrogen may be off by √0.1464 = 0.3826.
    expectDoses(goalDoses({ N: 100, K: 100 }, wishes(priced, cheapest(0.05))), [1 - 0.3826, 0], 3);
  });

  it("does not depend on the money's unit; where nothing costs anything, it is the closest", () => {
    for (const unit of [1e-5, 1e5]) {
      const feeds = priced.map(({ feed: some, pack: { price } }) => ({ feed: some, pack: pack(price * unit) }));
      expectDoses(goalDoses({ N: 100 }, wishes(feeds, cheapest(0.05))), [0.95, 0], 4);
    }
    expectDoses(goalDoses({ N: 100 }, wishes([{ feed: A, pack: pack(0) }], cheapest(0.05))), [1]);
  });

  it.each([null, undefined])("a price of %s is asked for by the feed's name", (none) => {
    const [code, sentence] = refused(() => goalDoses({ N: 100 }, wishes([{ feed: A, pack: none }], cheapest(0.05))));
    expect(code).toBe("no-price");
    expect(sentence).toContain("price of A");
  });

  it("what is to be used up comes first, as far as the tolerance allows: a feed with magnesium unasked", () => {
    // Of E, 20 % N and 1 % Mg against 10 mg/L: r = a + 2e − 1 and e. With price s on A: r = −s/2, e = s, 1.25 s² off.
    // 5 % on average of two: 1.25 s² = 2 · 0.05², s = 0.0632. 40 %: a is 0, (2e − 1)² + e² is least at 2/5.
    const feeds = [{ feed: A }, { feed: feed("E", "N 20 Mg 1"), useFirst: true }];
    const usedUp = (tolerance: number) =>
      goalDoses({ N: 100, Mg: 0 }, wishes(feeds, { prefer: { kind: "use up", tolerance } }));
    expectDoses(usedUp(0.05), [0.8419, 0.0632], 3);
    expectDoses(usedUp(0.4), [0, 0.4], 4);
  });

  it.each([0, -0.1, 1.01, Number.NaN])("a tolerance of %d is refused", (tolerance) => {
    expect(refused(() => goalDoses({ N: 100 }, wishes(priced, cheapest(tolerance))))[0]).toBe("out-of-bounds");
  });

  it("a tolerance of 100 % is met by nothing at all", () => {
    expectDoses(goalDoses({ N: 100 }, wishes(priced, cheapest(1))), [0, 0], 4);
  });
});

describe("measured amounts, for 10 L", () => {
  it("steps of 3 g: 9 g are 0.9 g/L, off by a tenth", () => {
    const found = goalDoses({ N: 100 }, wishes([{ feed: A }], { measures: steps(3) }));
    expectDoses(found, [0.9]);
    expect(found.misfit).toBeCloseTo(0.01, 9);
    expect(found.held).toBe(true);
  });

  it("without any feed are off by the whole: (0 − 1)² for each of two elements, as without measuring", () => {
    for (const measures of [undefined, []]) {
      expect(goalDoses({ N: 100, K: 100 }, wishes([], { measures }))).toMatchObject({ x: [], misfit: 2 });
    }
  });

  it("keep the limits: of 6.4 and 9.6 g only the first is at most 95 mg/L", () => {
    const limits = [limit([-100], -95, "at most 95 mg/L nitrogen")];
    const measures = steps(3.2);
    expectDoses(goalDoses({ N: 100 }, wishes([{ feed: A }], { measures })), [0.96]);
    const found = goalDoses({ N: 100 }, wishes([{ feed: A, onHand: 50 }], { measures, limits }));
    expectDoses(found, [0.64]);
    expect(found.binding).toEqual([true]);
  });

  it("between 5 and 6 g there is no step of 4 g", () => {
    const limits = [limit([100], 50, "at least 50 mg/L nitrogen"), limit([-100], -60, "at most 60 mg/L nitrogen")];
    const task = wishes([{ feed: A }], { measures: steps(4), limits });
    expect(refused(() => goalDoses({ N: 100 }, task))[0]).toBe("no-measurable");
  });

  it("a feed that the exact doses leave out may help: 8 g of A and 1 g of what brings potassium unasked", () => {
    // A in steps of 8 g is 0.8 g/L. Of D, 5 % N and 1 % K against 10 mg/L: (0.2 − d/2)² + d², 0.0325 at 0.1, 0.04 at 0.
    const task = wishes([{ feed: A }, { feed: feed("D", "N 5 K 1 elemental") }], { measures: steps(8, 1) });
    expectDoses(goalDoses({ N: 100, K: 0 }, task), [0.8, 0.1]);
  });

  it("under a preference keep close to the mix it chose, of the feeds it chose", () => {
    const pack = (price: number) => ({ price, holds: 1000 });
    const feeds = [
      { feed: A, pack: pack(10) },
      { feed: C, pack: pack(30) },
    ];
    const prefer = { kind: "cheapest", tolerance: 0.1 } as const;
    // 9 g of A for 10 L were chosen; in steps of 4 g these are 8, and C does not make up for it.
    expectDoses(goalDoses({ N: 100 }, wishes(feeds, { prefer, measures: steps(1, 0.5) })), [0.9, 0]);
    expectDoses(goalDoses({ N: 100 }, wishes(feeds, { prefer, measures: steps(4, 0.5) })), [0.8, 0]);
  });

  it("with a ratio held keep close to the mix that holds it: 9.45 g of each are 9 g of each", () => {
    const equalities = [{ coefficients: [1, -1], atLeast: 0 }];
    const task = wishes([{ feed: A }, { feed: B }], { equalities, measures: steps(1, 1) });
    const found = goalDoses({ N: 100, K: 90 }, task);
    expectDoses(found, [0.9, 0.9]);
    // Whether the ratio stands in measured amounts is for the caller to see.
    expect(found.held).toBe(false);
  });
});

it("what only has a lower limit counts as wanted there, lightly; a limit of 0 and what is wanted stay as they are", () => {
  expect(withLowerLimits({ N: 100 }, { N: 50, K: 20, Ca: 0 }, { N: 2, K: 3 })).toEqual({
    wanted: { N: 100, K: 20 },
    weights: { N: 2, K: LIGHT },
  });
});
