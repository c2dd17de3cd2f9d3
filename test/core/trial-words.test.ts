/** What is said of a trial, on numbers small enough to count the draws by hand. */

import { describe, expect, test } from "vitest";
import { meanOf, resultText, type Trial, trialState } from "../../src/core/trial.ts";
import type { MeasuredRow } from "../../src/core/trial-measure.ts";
import { type Design, plantsNeeded } from "../../src/core/trial-power.ts";
import { refusal } from "./refusal.ts";

type Values = readonly (number | null)[];

const named = (group: string, values: Values): string[] => values.map((_, k) => `${group}${k + 1}`);
const trialOf = (a: Values, b: Values, rest: Partial<Trial> = {}): Trial => ({
  ...{ measure: "Score", design: "Together", started: 0, ends: 10 },
  plantsA: named("A", a),
  plantsB: named("B", b),
  ...rest,
});

/** Scores noted on the fifth day; null for a plant that no row speaks of. */
function scores(a: Values, b: Values, design: Design, today = 11) {
  const rows = [...named("A", a), ...named("B", b)].flatMap((plant, k): MeasuredRow[] => {
    const value = [...a, ...b][k] ?? null;
    return value === null ? [] : [{ day: 5, plant, event: "Note", note: `Score ${value}` }];
  });
  return trialState(trialOf(a, b, { design }), rows, today);
}

describe("a trial without pairs", () => {
  test("of four and four whose groups part wholly: 2 of 70 ways", () => {
    const { verdict, counted, test: exact, sentence } = scores([5, 6, 7, 8], [1, 2, 3, 4], "Together");
    expect([verdict, counted]).toEqual(["difference", 8]);
    expect(exact?.p).toBeCloseTo(2 / 70, 12);
    expect(sentence).toContain("group A had 4 more points than group B");
    expect(sentence).toContain("in 3 of 100 draws (exact p 0.029, 4 and 4 plants)");
    expect(sentence).toMatch(/By the 95 % interval the true difference may be anything from .* to .*\./);
  });

  test("of fewer is too few: 2 of 20, or of 35, is more than 1 in 20; of five and three it is 2 of 56", () => {
    for (const [a, b] of [
      [
        [5, 6, 7],
        [1, 2, 3],
      ],
      [
        [5, 6, 7, 8],
        [1, 2, 3],
      ],
    ] as const) {
      const { verdict, sentence, test: exact } = scores(a, b, "Together");
      expect([verdict, exact]).toEqual(["too few", null]);
      expect(sentence).toMatch(/at least/);
      expect(sentence).toContain("4 plants in each group");
    }
    expect(scores([5, 6, 7, 8, 9], [1, 2, 3], "Together").verdict).toBe("difference");
  });

  test("leaves out plants that the log does not speak of, and names them", () => {
    const { counted, verdict, sentence } = scores([5, 6, 7, 8, null], [1, null, 2, 3, 4], "Together");
    expect([counted, verdict]).toEqual([8, "difference"]);
    expect(sentence).toContain("4 and 4 plants");
    expect(sentence).toMatch(/The log says nothing about A5 and B2\.$/);
  });

  test("with an empty group counts nobody", () => {
    for (const [a, b] of [
      [
        [1, 2, 3, 4, 5],
        [null, null],
      ],
      [
        [null, null],
        [1, 2, 3, 4, 5],
      ],
    ] as const) {
      expect(scores(a, b, "Together")).toMatchObject({ verdict: "too few", counted: 0, test: null, interval: null });
    }
  });
});

describe("a trial in pairs", () => {
  test("of six that all go one way: 2 of 64 ways, and one point is one", () => {
    const { verdict, sentence } = scores([2, 3, 4, 5, 6, 7], [1, 2, 3, 4, 5, 6], "Pairs");
    expect(verdict).toBe("difference");
    expect(sentence).toContain("group A had 1 more point than group B");
    expect(sentence).toContain("in 3 of 100 draws (exact p 0.031, 6 pairs)");
  });

  test("says fewer where A has fewer", () => {
    const { sentence } = scores([1, 2, 3, 4, 5, 6], [3, 4, 5, 6, 7, 8], "Pairs");
    expect(sentence).toContain("group A had 2 fewer points than group B");
  });

  test("counts a pair only when both are known", () => {
    const { counted, verdict, sentence } = scores([2, 3, 4, 5, 6, 7, null, 9], [1, 2, 3, 4, 5, 6, 7, null], "Pairs");
    expect([counted, verdict]).toEqual([12, "difference"]);
    expect(sentence).toContain("6 pairs");
    expect(sentence).toMatch(/nothing about A7 and B8\.$/);
    const uneven = trialState(trialOf([1, 2, 3], [1, 2], { design: "Pairs" }), [], 11);
    expect(uneven).toMatchObject({ verdict: "too few", counted: 0 });
    expect(uneven.sentence).toContain("6 pairs");
  });

  test("of twelve that all go one way: 2 of 4096", () => {
    const b = Array.from({ length: 12 }, (_, k) => k);
    const { sentence } = scores(
      b.map((value, k) => value + 1 + k / 4),
      b,
      "Pairs",
    );
    expect(sentence).toContain("in fewer than 1 of 100 draws (exact p below 0.001, 12 pairs)");
  });

  test("that came out alike says so and no more", () => {
    const { verdict, sentence } = scores([1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 5, 6], "Pairs");
    expect(verdict).toBe("cannot tell");
    expect(sentence).toMatch(/^Cannot tell yet: the groups came out alike \(exact p 1, 6 pairs\)\./);
    expect(sentence).not.toContain("chance alone");
  });

  test("whose difference every draw reaches: seven pairs, four one way and three the other by as much", () => {
    const { verdict, sentence } = scores([2, 2, 2, 2, 1, 1, 1], [1, 1, 1, 1, 2, 2, 2], "Pairs");
    expect(verdict).toBe("cannot tell");
    expect(sentence).toContain("in every draw (exact p 1, 7 pairs)");
  });

  test("of many has an interval that is said to be approximate", () => {
    const b = Array.from({ length: 30 }, () => 0);
    const { sentence } = scores(
      b.map((_, k) => k + 1),
      b,
      "Pairs",
    );
    expect(sentence).toContain("By the 95 % interval, approximately, the true difference");
    // only the difference within a pair counts
    const high = scores(
      b.map((_, k) => k + 8),
      b.map(() => 7),
      "Pairs",
    );
    expect(high.sentence).toBe(sentence);
  });
});

describe("leaves and roots", () => {
  const six = [1, 2, 3, 4, 5, 6];
  /** Rows of one kind of event, on these days. */
  const on = (plant: string, event: string, days: readonly number[]): MeasuredRow[] =>
    days.map((day) => ({ day, plant, event, note: "" }));

  test.each([
    ["Days to first new leaf", "New leaf", 1, "group A took 1 more day to the first new leaf than group B"],
    ["Days to first new leaf", "New leaf", 3, "group A took 3 more days to the first new leaf than group B"],
    ["Days to first new root", "New root", 1, "group A took 1 more day to the first new root than group B"],
    ["Days to first new root", "New root", 2, "group A took 2 more days to the first new root than group B"],
  ] as const)("%s, %s: %d", (measure, event, later, words) => {
    const rows = six.flatMap((k) => [...on(`A${k}`, event, [k + later]), ...on(`B${k}`, event, [k])]);
    const { sentence } = trialState(trialOf(six, six, { measure, design: "Pairs" }), rows, 11);
    expect(sentence).toContain(words);
  });

  test.each([
    [1, "group A had 1 more new leaf a plant than group B"],
    [2, "group A had 2 more new leaves a plant than group B"],
  ])("new leaves: %d", (more, words) => {
    const rows = six.flatMap((k) => [
      ...on(`A${k}`, "New leaf", Array(more).fill(4)),
      ...on(`A${k}`, "Note", [5]),
      ...on(`B${k}`, "Note", [5]),
    ]);
    const { sentence } = trialState(trialOf(six, six, { measure: "New leaves", design: "Pairs" }), rows, 11);
    expect(sentence).toContain(words);
  });

  test("waited for in vain count to the end, and it is said how many", () => {
    const measure = "Days to first new leaf" as const;
    for (const [late, words] of [
      [1, "1 plant had none by the end and counts as 10 days."],
      [2, "2 plants had none by the end and count as 10 days."],
    ] as const) {
      const rows = six.flatMap((k) => [
        ...on(`A${k}`, k <= late ? "Note" : "New leaf", [9]),
        ...on(`B${k}`, "New leaf", [k]),
      ]);
      const trial = trialOf(six, six, { measure, design: "Pairs" });
      expect(trialState(trial, rows, 11).sentence).toContain(words);
      // while it runs nobody has waited in vain yet
      expect(trialState(trial, rows, 10).sentence).not.toContain("none by the end");
    }
  });
});

test("chance is said in whole draws of 100, from 1 on", () => {
  // nine pairs all one way: 2 of 2 to the 9th is 0.0039, below half of 1 in 100; eight: 0.0078, so 1
  const pairs = (count: number) => scores(Array(count).fill(2), Array(count).fill(1), "Pairs").sentence;
  expect(pairs(9)).toContain("in fewer than 1 of 100 draws");
  expect(pairs(8)).toContain("in 1 of 100 draws");
});

describe("before the end", () => {
  test.each([
    [0, "not begun", "It begins on 1970-01-01."],
    [8, "running", "It runs until 1970-01-11, 2 days to go."],
    [9, "running", "It runs until 1970-01-11, 1 day to go."],
    [10, "running", "It runs until 1970-01-11, today is its last day."],
  ])("on day %d it is %s", (today, verdict, words) => {
    const state = scores([1, 2, 3, 4], [5, 6, 7, 8], "Together", today);
    expect([state.verdict, state.test, state.interval]).toEqual([verdict, null, null]);
    expect(state.sentence).toContain(words);
  });

  test("nobody is missed before it begins, and whoever is once it runs", () => {
    expect(scores([1, null], [2, 3], "Together", 0).sentence).toBe("It begins on 1970-01-01.");
    expect(scores([1, null], [2, 3], "Together", 9).sentence).toMatch(/nothing about A2\.$/);
  });
});

test("what is kept beside a trial is both means and the sentence", () => {
  const state = scores([5, 6, 7, 8, null], [1, 2, 3, 4], "Together");
  expect(resultText(state)).toBe(`On average A 6.5, B 2.5. ${state.sentence}`);
  expect(resultText(scores([1, 2], [null], "Together"))).toMatch(/^On average A 1\.5, B nothing\. Cannot tell/);
  expect(meanOf(state.a)).toBe(6.5);
  expect(meanOf([])).toBeNull();
  expect(meanOf([{ plant: "A", value: null, notYet: false }])).toBeNull();
});

describe("plants that a trial takes, from 21 on by Student's t", () => {
  // Cohen 1988, Statistical Power Analysis, 2nd ed., table 2.4.1, from memory: two-sided 0.05 and power 0.8 take 17
  // plants in each group for a difference of one standard deviation; the paired table gives 24 pairs for 0.6.
  test.each<[Design, number, number, number]>([
    ["Together", 1, 1, 34],
    ["Together", 3, 3, 34],
    ["Pairs", 0.6, 1, 48],
    ["Pairs", 1.2, 2, 48],
  ])("%s, difference %d and spread %d: about %d", (design, difference, spread, plants) => {
    const { found } = plantsNeeded({ design, difference, spread });
    expect(Math.abs((found?.plants ?? 0) - plants)).toBeLessThanOrEqual(4);
    expect(found?.power).toBeGreaterThanOrEqual(0.8);
    expect(found?.power).toBeLessThan(0.9);
  });

  test("are not counted for a spread of nothing", () => {
    expect(refusal(() => plantsNeeded({ design: "Pairs", difference: 1, spread: 0 }))).toContain("The spread is 0.");
  });

  test("are not counted beyond 52", () => {
    expect(plantsNeeded({ design: "Pairs", difference: 0.5, spread: 1 }).found).toBeNull();
    expect(plantsNeeded({ design: "Together", difference: 0.7, spread: 1 }).found).toBeNull();
    expect(plantsNeeded({ design: "Together", difference: 0.01, spread: 1 }).found).toBeNull();
  });
});
