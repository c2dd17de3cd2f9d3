/** Feeds that a batch wants more finely than the tools measure, by hand. */

import { expect, it } from "vitest";
import { type RoundedDoses, tooCoarseFeeds } from "../../src/core/coarse.ts";
import { feedOf } from "../../src/core/feeds.ts";
import { gridOf, type Measure } from "../../src/core/grid.ts";
import { parseLabel } from "../../src/core/label.ts";

interface One {
  readonly measure: Measure;
  readonly wanted: number;
  readonly measured: number;
  readonly column?: readonly number[];
  readonly avoidable?: readonly number[];
}

/** One feed that brings a tenth of a wanted element with each gram, unless said otherwise. */
function coarse({ measure, wanted, measured, column = [0.1], avoidable = [0] }: One) {
  const feeds = [feedOf("Salt", parseLabel("N 10"), null)];
  const task: RoundedDoses = {
    feeds,
    wanted: [wanted],
    measured: [measured],
    grids: [gridOf(measure, "Salt")],
    columns: [column],
    avoidable,
  };
  return tooCoarseFeeds(task);
}

const spoons: Measure = { kind: "amounts", amounts: [2, 5] };

it("more than the tools hold: the step is the last one there is", () => {
  const [one] = coarse({ measure: spoons, wanted: 9, measured: 5 });
  expect(one).toMatchObject({ wantedPerBatch: 9, smallest: 2, step: 3, overshoots: false });
  expect(one?.why).toMatch(/Salt.* 3 g.* 9 g/);
});

it("a single amount is a step of its own", () => {
  expect(coarse({ measure: { kind: "amounts", amounts: [2] }, wanted: 3, measured: 2 })).toMatchObject([{ step: 2 }]);
});

it("nothing is said of a feed that is not wanted, nor of one that no tool measures", () => {
  expect(coarse({ measure: spoons, wanted: 0, measured: 2 })).toEqual([]);
  expect(coarse({ measure: { kind: "step", step: 1, most: 0.5 }, wanted: 3, measured: 0 })).toEqual([]);
});

it("a least amount above what is wanted overshoots when it throws one of its elements off by over 1 %", () => {
  const task = { measure: spoons, wanted: 1, measured: 0, avoidable: [] };
  expect(coarse({ ...task, column: [0.3, 0] })).toMatchObject([{ overshoots: true }]);
  // 1 g off at 0.5 % a gram is 0.5 %.
  expect(coarse({ ...task, column: [0.005, 0] })).toEqual([]);
});

it("what counts is how far off the amount is, not how long the step: 0.05 g off is 0.5 %", () => {
  expect(coarse({ measure: spoons, wanted: 4.95, measured: 5 })).toEqual([]);
  expect(coarse({ measure: spoons, wanted: 4.8, measured: 5 })).toHaveLength(1);
});
