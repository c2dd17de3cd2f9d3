/** What a batch costs, by hand. */

import { describe, expect, it } from "vitest";
import { batchCost, pricePerUnit } from "../../src/core/cost.ts";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { refusal } from "./refusal.ts";

const feed = (name: string): Feed => feedOf(name, parseLabel("10-5-5"), null);

it("a pack of 500 g for 10 is 0.02 a gram, and what was given costs nothing", () => {
  expect(pricePerUnit({ price: 10, holds: 500 }, "A")).toBe(0.02);
  expect(pricePerUnit({ price: 0, holds: 500 }, "A")).toBe(0);
});

describe("a pack that cannot be is refused, with the feed's name and the number", () => {
  it.each([
    [{ price: -1, holds: 500 }, "The price of Grains is -1. Give 0 or more."],
    [{ price: Number.POSITIVE_INFINITY, holds: 500 }, /^The price of Grains is /],
    [{ price: Number.NaN, holds: 500 }, /^The price of Grains is /],
    [{ price: 10, holds: 0 }, "The pack of Grains holds 0. Give a number above 0."],
    [{ price: 10, holds: -5 }, "The pack of Grains holds -5. Give a number above 0."],
    [{ price: 10, holds: Number.POSITIVE_INFINITY }, /^The pack of Grains holds /],
  ])("%j", (pack, sentence) => expect(refusal(() => pricePerUnit(pack, "Grains"))).toMatch(sentence));
});

it("5 g at 0.02 and 2 g of unknown price in 4 L: 0.10, 0.25 for 10 L, and who has no price; what is not in it is not named", () => {
  const [priced, unknown, absent] = [feed("Priced"), feed("Unknown"), feed("Absent")];
  const packs = new Map([[priced, { price: 10, holds: 500 }]]);
  const cost = batchCost(
    [
      { feed: priced, perBatch: 5 },
      { feed: unknown, perBatch: 2 },
      { feed: absent, perBatch: 0 },
    ],
    4,
    (one) => packs.get(one) ?? null,
  );
  expect(cost.perBatch).toBeCloseTo(0.1, 12);
  expect(cost.per10L).toBeCloseTo(0.25, 12);
  expect(cost.unpriced).toEqual([unknown]);
});
