/** Limits of a mix as linear limits on its doses, by hand. */

import { describe, expect, it } from "vitest";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { namedLimits, sayConflict } from "../../src/core/goal-limits.ts";
import { parseLabel } from "../../src/core/label.ts";
import { refusal } from "./refusal.ts";

const feed = (name: string, label: string): Feed => feedOf(name, parseLabel(label), null);
// mg/L for a g/L of each: N 100 (60 nitrate, 40 ammonium), K 50; N 200 of unstated form.
const feeds = [feed("A", "N 10 NO3-N 6 NH4-N 4 K 5 elemental"), feed("B", "N 20")];
const perUnit = [{ N: 100, K: 50 }, { N: 200 }];
const limits = (wishes: Parameters<typeof namedLimits>[0], water = {}) =>
  namedLimits(wishes, { feeds, perUnit, water });
const kept = ({ coefficients, atLeast }: { coefficients: readonly number[]; atLeast: number }, x: readonly number[]) =>
  coefficients.reduce((sum, part, j) => sum + part * (x[j] ?? 0), 0) >= atLeast - 1e-9;

describe("what is kept and what is not, the water counted", () => {
  it.each([
    ["at most 150 N of 30 in the water: 1.2 g of A", { atMost: { N: 150 } }, { N: 30 }, [1.2, 0], [1.21, 0]],
    ["at most as much as the water has", { atMost: { N: 30 } }, { N: 30 }, [0, 0], [0.01, 0]],
    ["at least 150 N of 30 in the water: 0.6 g of B", { atLeast: { N: 150 } }, { N: 30 }, [0, 0.6], [0, 0.59]],
    // 40 of 100 of A is ammonium; at most 40 % holds for A alone and for no B, which counts as ammonium.
    ["ammonium 40 %", { ammoniumShareAtMost: 0.4 }, {}, [5, 0], [5, 0.01]],
    // With 100 of nitrate in the water, 1 g of B makes 200 of 300; 0.5 g makes 100 of 200.
    ["ammonium half, nitrate in the water", { ammoniumShareAtMost: 0.5 }, { N: 100 }, [0, 0.5], [0, 0.51]],
    ["no ammonium at all", { ammoniumShareAtMost: 0 }, {}, [0, 0], [0.01, 0]],
    ["all of it ammonium", { ammoniumShareAtMost: 1 }, {}, [0, 5], null],
  ] as const)("%s", (_, wishes, water, inside, outside) => {
    const [limit, ...more] = limits(wishes, water);
    expect(more).toEqual([]);
    if (limit === undefined) throw new Error("no limit");
    expect(kept(limit, inside)).toBe(true);
    if (outside !== null) expect(kept(limit, outside)).toBe(false);
  });

  it("each says what it is", () => {
    expect(
      limits({ atMost: { N: 150 }, atLeast: { N: 0.5, K: 20 }, ammoniumShareAtMost: 0.25 }).map(({ words }) => words),
    ).toEqual([
      "at most 150 mg/L nitrogen",
      "at least 0.5 mg/L nitrogen",
      "at least 20 mg/L potassium",
      "at most 25 % of the nitrogen as ammonium",
    ]);
    expect(limits({})).toEqual([]);
  });

  it("equal limits from above and below may both stand, and 0 of what no feed holds", () => {
    expect(limits({ atMost: { N: 100 }, atLeast: { N: 100 } })).toHaveLength(2);
    expect(limits({ atLeast: { Fe: 0 } })).toHaveLength(1);
    expect(limits({ atLeast: { Fe: 2 } }, { Fe: 2 })).toHaveLength(1);
  });
});

describe("what no doses can keep is refused", () => {
  it.each([
    [{ atMost: { N: -1 } }, {}, "The upper limit for N is -1 mg/L. Give 0 or more."],
    [{ atMost: { N: Number.POSITIVE_INFINITY } }, {}, "The upper limit for N is Infinity mg/L. Give 0 or more."],
    [{ atLeast: { N: -1 } }, {}, "The lower limit for N is -1 mg/L. Give 0 or more."],
    [{ atMost: { N: 20 } }, { N: 30 }, "The water alone brings 30 mg/L nitrogen, more than the 20 allowed."],
    [{ atMost: { N: 20 }, atLeast: { N: 21 } }, {}, "At least 21 and at most 20 mg/L nitrogen cannot both hold."],
    [{ atLeast: { Fe: 2 } }, { Fe: 1 }, "At least 2 mg/L iron is asked for, but none of these feeds holds iron."],
    [{ ammoniumShareAtMost: -0.1 }, {}, "The ammonium share is -10 %. Give a number from 0 to 100 %."],
    [{ ammoniumShareAtMost: 1.1 }, {}, /The ammonium share is 110.* %\. Give a number from 0 to 100 %\./],
  ])("%j with %j in the water", (wishes, water, sentence) => {
    const said = refusal(() => limits(wishes, water));
    if (typeof sentence === "string") expect(said).toContain(sentence);
    else expect(said).toMatch(sentence);
  });
});

it("a conflict names all limits, and those whose loosening alone would help", () => {
  const [most, least] = limits({ atMost: { N: 20 }, atLeast: { K: 30 } });
  if (most === undefined || least === undefined) throw new Error("no limits");
  expect(sayConflict([most, least], [least])).toMatch(
    /^At most 20 mg\/L nitrogen and at least 30 mg\/L potassium cannot all hold.*without "at least 30 mg\/L potassium"\.$/,
  );
  expect(sayConflict([most, least], [most, least])).toMatch(/"at most 20 mg\/L nitrogen" or "at least 30/);
  expect(sayConflict([most, least], [])).toMatch(/^At most 20 .* and at least 30 .*more than one/);
});
