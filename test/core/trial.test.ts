/** Trials: pairs, draws, measures, what is said at each stage, and how often chance alone is taken for a difference. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { drawPairs, drawRepeats, drawTogether, proposePairs, type TrialPlant } from "../../src/core/assignment.ts";
import { randomOf } from "../../src/core/random.ts";
import { countTrial, type Trial, trialState } from "../../src/core/trial.ts";
import { type MeasuredRow, measurePlants, scoreOf } from "../../src/core/trial-measure.ts";
import { drawn } from "../drawn.ts";

const plant = (name: string, kind: string, place: string, potMl: number | null): TrialPlant => ({
  plant: name,
  kind,
  place,
  potMl,
});

describe("pairs", () => {
  it("are alike by kind first, then place, then pot; the odd one stays out", () => {
    const { pairs, left } = proposePairs([
      plant("Fern two", "Fern", "Bath", 900),
      plant("Ivy", "Ivy", "Hall", 500),
      plant("Fern one", "Fern", "Bath", 1000),
      plant("Fern three", "Fern", "Hall", 4000),
      plant("Moss", "Moss", "Hall", 500),
      plant("Fern four", "Fern", "Bath", null),
      plant("Zebra", "Tradescantia", "Attic", 100),
    ]);
    expect(pairs).toEqual([
      { first: "Fern one", second: "Fern two", differs: [] },
      { first: "Fern four", second: "Fern three", differs: ["place", "pot"] },
      { first: "Ivy", second: "Moss", differs: ["kind"] },
    ]);
    expect(left).toBe("Zebra");
    expect(proposePairs([])).toEqual({ pairs: [], left: null });
  });

  it("the draw can be repeated from the names, and each side is as likely", () => {
    const pairs = [
      ["B", "a"],
      ["C", "D"],
      ["E", "F"],
    ] as const;
    let first = 0;
    for (let draw = 0; draw < 2000; draw++) {
      const groups = drawPairs(pairs, draw);
      expect(drawRepeats(groups, "Pairs", draw)).toBe(true);
      if (groups.a[0] === "a") first += 1;
    }
    // Binomial, 2000 at one half: standard deviation 22.4.
    expect(Math.abs(first - 1000)).toBeLessThan(3.3 * 22.4);
    const groups = drawPairs(pairs, 5);
    const swapped = {
      a: [groups.b[0] as string, ...groups.a.slice(1)],
      b: [groups.a[0] as string, ...groups.b.slice(1)],
    };
    expect(drawRepeats(swapped, "Pairs", 5)).toBe(false);
  });

  it("without pairs half of the plants get it, in whatever order they were typed", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.string({ minLength: 1 }), {
          minLength: 2,
          maxLength: 20,
          selector: (name) => name.trim().toLowerCase().replace(/\s+/g, " "),
        }),
        fc.nat(99_999_999),
        (names, draw) => {
          const groups = drawTogether(names, draw);
          expect([...groups.a, ...groups.b].sort()).toEqual([...names].sort());
          expect(groups.a.length - groups.b.length).toBe(names.length % 2);
          expect(drawTogether([...names].reverse(), draw)).toEqual(groups);
          expect(drawRepeats(groups, "Together", draw)).toBe(true);
        },
      ),
      { numRuns: drawn(100) },
    );
  });
});

const row = (day: number, name: string, event: string, note = ""): MeasuredRow => ({ day, plant: name, event, note });

describe("measures from the log", () => {
  const rows = [
    row(100, "Fern", "New leaf"),
    row(101, "fern ", "new leaf"),
    row(103, "Fern", "New root"),
    row(110, "Fern", "New leaf"),
    row(111, "Fern", "New leaf"),
    row(105, "Ivy", "Top up"),
    row(104, "Moss", "Note", "Score 6,5, greener"),
    row(106, "Moss", "Note", "score: 7"),
    row(106, "Moss", "Note", "scored by Bo"),
  ];
  const span = { started: 100, until: 110 };
  const of = (measure: Parameters<typeof measurePlants>[0]) =>
    measurePlants(measure, ["Fern", "Ivy", "Moss", "Reed"], { rows, span }).map(({ value, notYet }) => [value, notYet]);

  it("count after the first day up to the last, and nothing where the log says nothing", () => {
    expect(of("New leaves")).toEqual([
      [2, false],
      [0, false],
      [0, false],
      [null, false],
    ]);
    expect(of("Days to first new leaf")).toEqual([
      [1, false],
      [10, true],
      [10, true],
      [null, false],
    ]);
    expect(of("Days to first new root")).toEqual([
      [3, false],
      [10, true],
      [10, true],
      [null, false],
    ]);
    expect(of("Score")).toEqual([
      [null, false],
      [null, false],
      [7, false],
      [null, false],
    ]);
  });

  it("the newest score counts, of one day the one that stands last, whatever the order of days", () => {
    const notes = [
      row(106, "Fern", "Note", "score 7"),
      row(106, "Fern", "Note", "score 8"),
      row(104, "Fern", "Note", "score 2"),
    ];
    expect(measurePlants("Score", ["Fern"], { rows: notes, span })[0]?.value).toBe(8);
  });

  it.each([
    ["score 7", 7],
    ["Score: 6.5 of 10", 6.5],
    ["score=-1", -1],
    ["score 6,5", 6.5],
    ["  score 7.25", 7.25],
    ["score 1234", 1234],
    ["highscore 7", null],
    ["score", null],
    ["the score 7", null],
    ["score 1,234", null],
    ["scores 7", null],
  ])("%j is %s", (note, score) => {
    expect(scoreOf(note)).toBe(score);
  });
});

describe("what is said", () => {
  const names = (count: number, side: string) => Array.from({ length: count }, (_, k) => `${side}${k + 1}`);
  const trial: Trial = {
    measure: "New leaves",
    design: "Pairs",
    started: 20_500,
    ends: 20_560,
    plantsA: names(6, "A"),
    plantsB: names(6, "B"),
  };
  const leaves = (counts: Readonly<Record<string, number>>) =>
    Object.entries(counts).flatMap(([name, count]) => [
      row(20_501, name, "Top up"),
      ...Array.from({ length: count }, (_, k) => row(20_510 + k, name, "New leaf")),
    ]);
  const six = (a: readonly number[], b: readonly number[]) =>
    leaves(
      Object.fromEntries([
        ...trial.plantsA.map((name, k) => [name, a[k] ?? 0] as const),
        ...trial.plantsB.map((name, k) => [name, b[k] ?? 0] as const),
      ]),
    );

  it("before and during it there is no p, however the numbers look", () => {
    const rows = six([9, 9, 9, 9, 9, 9], [0, 0, 0, 0, 0, 0]);
    expect(trialState(trial, [], 20_500)).toMatchObject({ verdict: "not begun", test: null });
    const running = trialState(trial, rows, 20_559);
    expect(running).toMatchObject({ verdict: "running", test: null, interval: null, counted: 12 });
    expect(running.sentence).toBe(
      "It runs until 2026-04-17, 1 day to go. The result comes after that; looking before does not end it.",
    );
    expect(trialState(trial, rows, 20_560).sentence).toContain("today is its last day");
    expect(trialState(trial, rows, 20_561).verdict).toBe("difference");
  });

  it("a difference: 2 of 64 ways by hand", () => {
    const state = trialState(trial, six([3, 4, 5, 4, 3, 5], [1, 1, 3, 3, 1, 3]), 20_600);
    expect(state.test).toMatchObject({ difference: 2, splits: 64, asExtreme: 2 });
    expect(state.sentence).toBe(
      "A difference: group A had 2 more new leaves a plant than group B. Chance alone would part the groups as much in 3 of 100 draws (exact p 0.031, 6 pairs). By the 95 % interval the true difference may be anything from 1 more to 3 more. Of trials in which nothing helps, 1 in 20 ends like this.",
    );
  });

  it("cannot tell yet, and that this is no proof of the contrary", () => {
    const state = trialState(trial, six([3, 2, 5, 4, 3, 1], [1, 2, 3, 4, 4, 3]), 20_600);
    expect(state.verdict).toBe("cannot tell");
    expect(state.sentence).toMatch(
      /^Cannot tell yet: group A had 0\.167 more new leaves a plant than group B, but chance alone would part the groups as much in (every draw|\d+ of 100 draws) \(exact p [\d.]+, 6 pairs\)\. By the 95 % interval the true difference may be anything from [\d.]+ fewer to [\d.]+ more\. This does not show that there is no difference\.$/,
    );
    expect(trialState(trial, six([1, 1, 1, 1, 1, 1], [1, 1, 1, 1, 1, 1]), 20_600).sentence).toMatch(
      /^Cannot tell yet: the groups came out alike \(exact p 1, 6 pairs\)/,
    );
  });

  it("days waited in vain count to the end, and that is said", () => {
    const roots: Trial = { ...trial, measure: "Days to first new root" };
    const rows = [...trial.plantsA, ...trial.plantsB].map((name, k) =>
      row(20_500 + (name.startsWith("A") ? 5 + k : 40), name, name === "B6" ? "Top up" : "New root"),
    );
    const state = trialState(roots, rows, 20_600);
    // By hand: A 5, 6, 7, 8, 9, 10; B five times 40, once 60: −(260 − 45) / 6.
    expect(state.test?.difference).toBeCloseTo(-215 / 6, 9);
    expect(state.sentence).toMatch(
      /^A difference: group A took 35\.8 fewer days to the first new root than group B\. /,
    );
    expect(state.sentence).toMatch(/ 1 plant had none by the end and counts as 60 days\.$/);
  });

  it("too few: five pairs, or a pair lost on the way, which is named", () => {
    const rows = six([3, 4, 5, 4, 3, 5], [1, 2, 3, 2, 1, 3]).filter((one) => one.plant !== "B3");
    const state = trialState(trial, rows, 20_600);
    expect(state).toMatchObject({ verdict: "too few", counted: 10, test: null });
    expect(state.sentence).toBe(
      "Cannot tell: with so few plants not even the largest difference could be told from chance. It takes 6 pairs at least. The log says nothing about B3.",
    );
    const together: Trial = { ...trial, design: "Together", plantsA: names(3, "A"), plantsB: names(3, "B") };
    expect(trialState(together, rows, 20_600).verdict).toBe("too few");
    const four: Trial = { ...together, plantsA: names(4, "A"), plantsB: ["B1", "B2", "B4", "B5"] };
    expect(trialState(four, six([9, 9, 9, 9], [0, 0, 0, 0, 0]), 20_600)).toMatchObject({
      verdict: "difference",
      test: { splits: 70, asExtreme: 2 },
    });
  });
});

describe("when nothing helps", () => {
  const RUNS = 2000;
  const HALF_WAY = 30;
  const DAYS = 60;

  /** New leaves at random, the same for both groups; plants differ from one another, pairs less so. */
  function rowsOf(names: readonly (readonly [string, string])[], random: ReturnType<typeof randomOf>): MeasuredRow[] {
    return names.flatMap((pair) => {
      const rate = 0.05 + 0.1 * random.fraction();
      return pair.flatMap((name) => {
        const own = rate * (0.7 + 0.6 * random.fraction());
        const rows = [row(1, name, "Top up")];
        for (let day = 1; day <= DAYS; day++) if (random.fraction() < own) rows.push(row(day, name, "New leaf"));
        return rows;
      });
    });
  }

  it.each([
    { design: "Pairs", seed: 31 },
    { design: "Together", seed: 32 },
  ] as const)(
    "$design: p ≤ 0.05 in at most 5 % of 2,000 trials, also when the household looks half-way",
    ({ design, seed }) => {
      const random = randomOf(seed);
      const pairs = Array.from({ length: 8 }, (_, k) => [`x${k}`, `y${k}`] as const);
      let told = 0;
      let toldEarly = 0;
      let wouldHaveStopped = 0;
      for (let run = 0; run < RUNS; run++) {
        const rows = rowsOf(pairs, random);
        const draw = random.below(100_000_000);
        const { a, b } = design === "Pairs" ? drawPairs(pairs, draw) : drawTogether(pairs.flat(), draw);
        const trial: Trial = { measure: "New leaves", design, started: 0, ends: DAYS, plantsA: a, plantsB: b };
        const look = countTrial(trial, rows, HALF_WAY);
        if (look.verdict !== "running" || look.test !== null) toldEarly += 1;
        const end = countTrial(trial, rows, DAYS + 1);
        if (end.verdict === "difference") told += 1;
        // Whoever stopped at the look when it looked good would be misled more often.
        const stopped = countTrial({ ...trial, ends: HALF_WAY - 1 }, rows, HALF_WAY);
        if (end.verdict === "difference" || stopped.verdict === "difference") wouldHaveStopped += 1;
      }
      expect(toldEarly).toBe(0);
      expect(told / RUNS).toBeLessThanOrEqual(0.05);
      expect(told).toBeGreaterThan(0.02 * RUNS);
      expect(wouldHaveStopped / RUNS).toBeGreaterThan(0.05);
    },
  );
});
