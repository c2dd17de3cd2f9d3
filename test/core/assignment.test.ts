/** Pairs and draws at their edges: what is not known, names in any order, groups that no draw gives. */

import { describe, expect, it } from "vitest";
import { drawPairs, drawRepeats, drawTogether, proposePairs, type TrialPlant } from "../../src/core/assignment.ts";
import { nameKey } from "../../src/core/cell.ts";
import { randomOf } from "../../src/core/random.ts";

const fern = (plant: string, potMl: number | null, more: Partial<TrialPlant> = {}): TrialPlant => ({
  plant,
  kind: "Fern",
  place: "Bath",
  potMl,
  ...more,
});
const differs = (...plants: TrialPlant[]) => proposePairs(plants).pairs[0]?.differs;

describe("in what two plants differ", () => {
  it.each([
    // log2 of 1000 / 750 is 0.415, of 1000 / 600 it is 0.737; half a doubling is alike.
    [1000, 750, []],
    [750, 1000, []],
    [1000, 600, ["pot"]],
    [1000, null, ["pot"]],
    [null, 1000, ["pot"]],
    [null, null, ["pot"]],
    [0, 0, ["pot"]],
  ])("pots of %s and %s mL", (a, b, expected) => {
    expect(differs(fern("A", a), fern("B", b))).toEqual(expected);
  });

  it("a kind or a place that nobody wrote down is like none", () => {
    expect(differs(fern("A", 500, { kind: " " }), fern("B", 500, { kind: "" }))).toEqual(["kind"]);
    expect(differs(fern("A", 500, { place: "" }), fern("B", 500, { place: " " }))).toEqual(["place"]);
  });

  // 300 mL is 1.58 doublings of 100 mL; one doubling, as for a pot of unknown size, is nearer.
  it.each([
    ["A", null],
    ["A", 0],
    ["Z", null],
    ["Z", 0],
  ])("%s with a pot of %s mL is as unlike as one of twice the size", (name, potMl) => {
    const plants = [fern("M", 100), fern("N", 300), fern(name, potMl)];
    expect(proposePairs(plants).pairs).toHaveLength(1);
    expect([proposePairs(plants).pairs[0]?.first, proposePairs(plants).pairs[0]?.second]).toContain(name);
  });
});

describe("a draw", () => {
  const PAIRS = [
    ["X", "Y"],
    ["b", "A"],
    ["M", "N"],
  ] as const;

  it("0 of two is the one whose name comes first, pair after pair", () => {
    for (let draw = 0; draw < 50; draw++) {
      const random = randomOf(draw);
      const chosen = [["X", "Y"] as const, ["A", "b"] as const, ["M", "N"] as const].map(
        (pair) => pair[random.below(2)],
      );
      expect(drawPairs(PAIRS, draw).a).toEqual(chosen);
    }
  });

  it("of pairs is known again in the order of the pairs, whatever their names", () => {
    for (let draw = 0; draw < 50; draw++) expect(drawRepeats(drawPairs(PAIRS, draw), "Pairs", draw)).toBe(true);
  });

  it("of halves is named in order, and known again in any order", () => {
    const names = ["Moss", "fern", "Ivy", "reed", "Aloe"];
    for (let draw = 0; draw < 50; draw++) {
      const { a, b } = drawTogether(names, draw);
      for (const group of [a, b]) expect(group.map(nameKey)).toEqual(group.map(nameKey).sort());
      expect(drawRepeats({ a: [...a].reverse(), b: [...b].reverse() }, "Together", draw)).toBe(true);
    }
  });

  it("never gives groups of other sizes", () => {
    for (let draw = 0; draw < 50; draw++) {
      expect(drawRepeats({ a: ["A", "B"], b: [] }, "Together", draw)).toBe(false);
      expect(drawRepeats({ a: ["A", "C"], b: ["B"] }, "Pairs", draw)).toBe(false);
    }
  });

  it("leaves the lists it is given as they are", () => {
    const names = Object.freeze(["C", "A", "B"]);
    const groups = Object.freeze({ a: Object.freeze(["C", "A"]), b: Object.freeze(["B"]) });
    const plants = Object.freeze([fern("C", 1), fern("A", 2), fern("B", 3)]);
    expect(() => drawTogether(names, 1)).not.toThrow();
    expect(() => drawRepeats(groups, "Together", 1)).not.toThrow();
    expect(() => proposePairs(plants)).not.toThrow();
  });
});
