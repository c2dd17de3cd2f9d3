/** What the test plan costs and what it catches, in simulated kitchens with normal scatter and a meter that shows hundredths. */

import { describe, expect, it } from "vitest";
import { checkEvery, type Every } from "../../src/core/check-every.ts";
import { type RandomNumbers, randomOf } from "../../src/core/random.ts";

const range = { low: 5.5, high: 6 };
const shown = (pH: number) => Math.round(pH * 100) / 100;

interface Kitchen {
  readonly readings: readonly number[];
  readonly every: Every;
  /** Tests in each hundred batches. */
  readonly tests: readonly number[];
}

/** Mixes `batches` batches, testing when asked; `levelOf` is the true pH of each. */
function kitchen(
  levelOf: (batch: number) => number,
  batches: number,
  { sigma, random }: { sigma: number; random: RandomNumbers },
): Kitchen {
  const readings: number[] = [];
  const tests: number[] = [];
  let every: Every = 1;
  let untested = 0;
  for (let batch = 0; batch < batches; batch++) {
    untested += 1;
    if (untested < every) continue;
    untested = 0;
    readings.push(shown(levelOf(batch) + sigma * random.normal()));
    const hundred = Math.floor(batch / 100);
    tests[hundred] = (tests[hundred] ?? 0) + 1;
    every = checkEvery(readings, range);
  }
  return { readings, every, tests };
}

const RUNS = 200;

describe.each([
  { pH: 5.75, sigma: 0.02, seed: 1 },
  { pH: 5.75, sigma: 0.05, seed: 2 },
  { pH: 5.65, sigma: 0.03, seed: 3 },
])("steady at pH $pH, scatter $sigma", ({ pH, sigma, seed }) => {
  const random = randomOf(seed);
  const kitchens = Array.from({ length: RUNS }, () => kitchen(() => pH, 200, { sigma, random }));
  const meanTests = (hundred: number) => kitchens.reduce((sum, { tests }) => sum + (tests[hundred] ?? 0), 0) / RUNS;

  it("comes down to a quarter of the tests in the first hundred batches, and to less in the next", () => {
    expect(meanTests(0)).toBeLessThanOrEqual(25);
    expect(meanTests(1)).toBeLessThanOrEqual(17);
  });

  it("sees a change of 0.4 up or down at the next test in 95 % of runs", () => {
    let seen = 0;
    let changes = 0;
    for (const { readings, every } of kitchens) {
      if (every === 1) continue;
      for (const change of [0.4, -0.4]) {
        changes += 1;
        const reading = shown(pH + change + sigma * random.normal());
        if (checkEvery([...readings, reading], range) === 1) seen += 1;
      }
    }
    expect(changes).toBeGreaterThan(RUNS);
    expect(seen / changes).toBeGreaterThanOrEqual(0.95);
  });
});

it("a kitchen of wide scatter is never let off so far that a change of 0.4 slips by", () => {
  const random = randomOf(4);
  let seen = 0;
  let changes = 0;
  for (const sigma of [0.07, 0.08, 0.1]) {
    for (let run = 0; run < RUNS; run++) {
      const { readings, every } = kitchen(() => 5.75, 60, { sigma, random });
      if (every === 1) continue;
      changes += 1;
      const change = run % 2 === 0 ? 0.4 : -0.4;
      if (checkEvery([...readings, shown(5.75 + change + sigma * random.normal())], range) === 1) seen += 1;
    }
  }
  expect(changes).toBeGreaterThan(100);
  expect(seen / changes).toBeGreaterThanOrEqual(0.95);
});

describe.each([
  { perBatch: 0.005, moved: 0.25, seed: 5 },
  { perBatch: 0.01, moved: 0.25, seed: 6 },
  { perBatch: -0.02, moved: 0.4, seed: 7 },
])("a drift of $perBatch pH a batch, after sixty steady ones", ({ perBatch, moved, seed }) => {
  it(`is back at every batch before the mean has moved ${moved} pH, in 95 % of runs`, () => {
    const random = randomOf(seed);
    let back = 0;
    let runs = 0;
    for (let run = 0; run < RUNS; run++) {
      const before = kitchen(() => 5.75, 60, { sigma: 0.04, random });
      if (before.every === 1) continue;
      runs += 1;
      const readings = [...before.readings];
      let every: Every = before.every;
      let untested = 0;
      for (let batch = 1; Math.abs(batch * perBatch) <= moved && every !== 1; batch++) {
        untested += 1;
        if (untested < every) continue;
        untested = 0;
        readings.push(shown(5.75 + batch * perBatch + 0.04 * random.normal()));
        every = checkEvery(readings, range);
      }
      if (every === 1) back += 1;
    }
    expect(back / runs).toBeGreaterThanOrEqual(0.95);
  });
});
