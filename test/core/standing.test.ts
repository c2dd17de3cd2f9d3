/** Rows that still stand: corrections, taking back, and what people may do to the Ids. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Pointing, voidRows } from "../../src/core/standing.ts";

/** "b>a" is a row b that points at a. */
const rows = (...texts: readonly string[]): Pointing[] =>
  texts.map((text) => {
    const [id = "", corrects = ""] = text.split(">");
    return { id, corrects };
  });

const gone = (...texts: readonly string[]): string[] => {
  const all = rows(...texts);
  return [...voidRows(all)].sort((a, b) => a - b).map((at) => texts[at] ?? "");
};

describe("a row", () => {
  test("that nobody points at stands", () => {
    expect(gone("a", "b", "c")).toEqual([]);
  });

  test("that is corrected is void, and its correction stands, in either order", () => {
    expect(gone("a", "b>a")).toEqual(["a"]);
    expect(gone("b>a", "a")).toEqual(["a"]);
  });

  test("comes back when its correction is taken back", () => {
    expect(gone("a", "b>a", "c>b")).toEqual(["b>a"]);
    expect(gone("c>b", "a", "b>a", "d>c")).toEqual(["c>b", "a"]);
  });

  test("corrected twice is void, also when one of the two is taken back", () => {
    expect(gone("a", "b>a", "c>a", "d>b")).toEqual(["a", "b>a"]);
  });

  test("copied by hand is void in both places", () => {
    expect(gone("a", "a", "b>a")).toEqual(["a", "a"]);
  });

  test("stands when the pointer leads nowhere, to itself, or round in a ring", () => {
    expect(gone("a", "b>zz")).toEqual([]);
    expect(gone("a>a")).toEqual([]);
    expect(gone("a>a", "a>c", "c")).toEqual(["c"]);
    expect(gone("a>b", "b>a")).toEqual([]);
    expect(gone("a>b", "b>a", "c>a")).toEqual(["a>b"]);
  });

  test("without an Id cannot be pointed at", () => {
    expect(gone("", ">a", "a")).toEqual(["a"]);
    expect(gone("", "x", "b>x")).toEqual(["x"]);
  });
});

test("of any log, in any order, is void just when a standing row points at it, unless rows run in a ring", () => {
  const logs = fc
    .integer({ min: 1, max: 30 })
    .chain((count) =>
      fc.tuple(
        fc.array(fc.integer({ min: -1, max: count - 1 }), { minLength: count, maxLength: count }),
        fc.shuffledSubarray([...Array(count).keys()], { minLength: count, maxLength: count }),
      ),
    );
  fc.assert(
    fc.property(logs, ([targets, order]) => {
      // A row points at an earlier one only, so there is no ring.
      const all = targets.map((target, at) => ({
        id: `r${at}`,
        corrects: target >= 0 && target < at ? `r${target}` : "",
      }));
      const shuffled = order.map((at) => all[at] as Pointing);
      const empty = voidRows(shuffled);
      shuffled.forEach(({ id }, at) => {
        const pointed = shuffled.some(({ corrects }, other) => corrects === id && !empty.has(other));
        expect(empty.has(at)).toBe(pointed);
      });
    }),
  );
});

test("a chain of 100,000 corrections is followed without running out of stack", () => {
  const chain = Array.from({ length: 100_000 }, (_, at) => ({ id: `r${at}`, corrects: at === 0 ? "" : `r${at - 1}` }));
  expect(voidRows(chain).size).toBe(50_000);
});
