/** A search over measurable amounts that is stopped at once: the first amounts it takes, and what it has proven by then. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Grid, gridOf } from "../../src/core/grid.ts";
import { type GridTask, searchGrid as searchWith } from "../../src/core/grid-search.ts";
import { drawn } from "../drawn.ts";

const steps = (...most: number[]): Grid[] => most.map((one, j) => gridOf({ kind: "step", step: 1, most: one }, `${j}`));
/** Limits without a price: then the first amounts are those next to the closest mix, whatever the limits. */
const searchGrid = (task: GridTask) =>
  searchWith(
    task,
    (task.limits ?? []).map(() => 0),
  );
const misfitOf = ({ columns, wanted }: GridTask, x: readonly number[]) =>
  wanted.reduce(
    (sum, b, i) => sum + columns.reduce((rest, column, j) => rest - (column[i] ?? 0) * (x[j] ?? 0), b) ** 2,
    0,
  );

describe("the first amounts, by hand: 0.3 and 0.4 of 1 each, so 10/3 and 5/2 would be exact", () => {
  const plain: GridTask = {
    columns: [
      [0.3, 0],
      [0, 0.4],
    ],
    wanted: [1, 1],
    grids: steps(9, 9),
    mostNodes: 1,
  };
  it.each<[string, Partial<GridTask>, number[]]>([
    ["are the nearest, of two as near the smaller", {}, [3, 2]],
    ["are the most there is", { grids: steps(3, 1) }, [3, 1]],
    ["step down where a limit asks for it", { limits: [{ coefficients: [1, 0], most: 2.5 }] }, [2, 2]],
    ["step up where a limit asks for it", { limits: [{ coefficients: [-1, 0], most: -4 }] }, [4, 2]],
    ["step down to nothing", { wanted: [0.3, 1], limits: [{ coefficients: [1, 0], most: 0.5 }] }, [0, 2]],
  ])("%s", (_, change, x) => {
    const task = { ...plain, ...change };
    const found = searchGrid(task);
    expect(found?.x).toEqual(x);
    expect(found?.misfit).toBeCloseTo(misfitOf(task, x), 12);
  });

  it.each<[string, Partial<GridTask>]>([
    ["less than nothing", { wanted: [1, 0], limits: [{ coefficients: [0, 1], most: -0.5 }] }],
    ["more than there is", { grids: steps(9, 2), limits: [{ coefficients: [0, -1], most: -3 }] }],
  ])("are none where a limit asks for %s", (_, change) => {
    for (const mostNodes of [1, 1000]) expect(searchGrid({ ...plain, ...change, mostNodes })).toBeNull();
  });

  it("are none where all miss tenfold and more, so that a limit that is absurd is not kept at any price", () => {
    // At least 60 of the first: 18 of 1 wanted, off by 17² = 289 > 100 times 1² + 1².
    const far = { ...plain, grids: steps(90, 9), limits: [{ coefficients: [-1, 0], most: -60 }] };
    expect(searchGrid({ ...far, mostNodes: 1000 })).toBeNull();
    // At least 40: off by 11² = 121, below the 200 let pass.
    const near = { ...far, limits: [{ coefficients: [-1, 0], most: -40 }], mostNodes: 1000 };
    expect(searchGrid(near)?.x).toEqual([40, 2]);
  });
});

describe("stopped early", () => {
  const part = fc.integer({ min: 0, max: 9 }).map((n) => n / 10);
  const tasks = fc.record({
    columns: fc.array(fc.array(part, { minLength: 4, maxLength: 4 }), { minLength: 4, maxLength: 4 }),
    wanted: fc.array(
      fc.integer({ min: 5, max: 40 }).map((n) => n / 10),
      { minLength: 4, maxLength: 4 },
    ),
  });
  const grids = steps(5, 5, 5, 5);
  const all = Array.from({ length: 6 ** 4 }, (_, k) => [0, 1, 2, 3].map((j) => Math.floor(k / 6 ** j) % 6));

  it("says so, has looked at hardly more than it may, and has proven what is true of all amounts", () => {
    let stopped = 0;
    for (const { columns, wanted } of fc.sample(tasks, { numRuns: drawn(150), seed: 21 })) {
      const task = {
        columns: columns.map((column) => (column.some((one) => one > 0) ? column : [1, 0, 0, 0])),
        wanted,
        grids,
      };
      const best = Math.min(...all.map((x) => misfitOf(task, x)));
      for (const mostNodes of [1, 8, 15, 30]) {
        const found = searchGrid({ ...task, mostNodes });
        if (found === null) throw new Error("without limits there always are some");
        expect(found.bound).toBeLessThanOrEqual(best + 1e-9);
        expect(found.bound).toBeGreaterThanOrEqual(0);
        expect(found.misfit).toBeCloseTo(misfitOf(task, found.x), 9);
        expect(found.misfit).toBeGreaterThanOrEqual(best - 1e-9);
        // Two looks at each of four feeds on the way down the first time, two of the root, and one that is the last.
        expect(found.nodes).toBeLessThanOrEqual(mostNodes + 4 + 2 * 4 + 2 + 1);
        if (found.complete) {
          expect(found.misfit).toBeCloseTo(best, 9);
          expect(found.bound).toBeCloseTo(best, 9);
        } else stopped += 1;
      }
    }
    expect(stopped).toBeGreaterThan(drawn(150) / 2);
  });
});
