/** How each feed of a batch is measured out: scale, syringe, level spoons, or the millilitres of a stock solution. */

import { nameKey } from "../src/core/cell.ts";
import { BadInput } from "../src/core/errors.ts";
import type { Feed } from "../src/core/feeds.ts";
import { type Measure, spoonAmounts, spoonfulsFor } from "../src/core/grid.ts";
import { fillings, measureWith } from "../src/core/measurable.ts";
import { sayList } from "../src/core/saying.ts";
import type { StockOf } from "../src/core/tool-text.ts";
import { showMeasured } from "./show.ts";
import type { HouseTools } from "./tools.ts";

/** "any": doses are left as they are worked out. */
export type MeasureBy = "scale" | "spoons" | "any";

export interface Way {
  readonly kind: "tool" | "spoons" | "stock";
  readonly measure: Measure;
  /** g or mL of the feed in one mL of the stock it is dosed from; null where it is measured as it is. */
  readonly stock: (StockOf & { readonly perMl: number }) | null;
  /** "27.2 mL of the stock", "2 level spoons of 4.8 g": how to measure so much; "" where g or mL say it all. */
  words(perBatch: number): string;
}

function goes(amount: number, most: number | null): string {
  const times = most === null ? 1 : fillings(amount, most);
  return times > 1 ? `in ${times} goes` : "";
}

/** mL of a stock that hold this much of the feed. */
export function stockMl(perBatch: number, perMl: number): number {
  return Number((perBatch / perMl).toPrecision(10));
}

function stockWay(stock: StockOf, tools: HouseTools): Way | null {
  const { syringeStepMl, syringeMostMl } = tools;
  if (syringeStepMl === null) return null;
  const perMl = stock.solute / stock.bottleMl;
  return {
    kind: "stock",
    measure: { kind: "step", step: syringeStepMl * perMl },
    stock: { ...stock, perMl },
    words: (perBatch) => {
      const millilitres = stockMl(perBatch, perMl);
      return [`${showMeasured(millilitres, "mL")} of the stock`, goes(millilitres, syringeMostMl)]
        .filter(Boolean)
        .join(", ");
    },
  };
}

function spoonWay(feed: Feed, tools: HouseTools): Way | null {
  const spoonG = tools.spoons.find((one) => nameKey(one.feed) === nameKey(feed.name))?.spoonG;
  if (feed.liquid || spoonG === undefined) return null;
  const set = { spoonG, mostSpoonfuls: tools.mostSpoonfuls };
  return {
    kind: "spoons",
    measure: { kind: "amounts", amounts: spoonAmounts(set) },
    stock: null,
    words: (perBatch) =>
      sayList(
        (spoonfulsFor(perBatch, set) ?? []).flatMap((many, k) =>
          many === 0 ? [] : [`${many} level ${many === 1 ? "spoon" : "spoons"} of ${spoonG[k]} g`],
        ),
        "and",
      ),
  };
}

export interface Measuring {
  readonly tools: HouseTools;
  readonly by: MeasureBy;
  /** Stocks chosen for this batch, beside those that Settings name. */
  readonly stocks: readonly StockOf[];
}

/** Throws BadInput, naming the feed, when nothing at hand measures it. */
export function wayOf(feed: Feed, { tools, by, stocks }: Measuring): Way {
  const stock = stocks.find(
    (one) => nameKey(one.feed) === nameKey(feed.name) && one.unit === (feed.liquid ? "mL" : "g"),
  );
  const dissolved = stock === undefined ? null : stockWay(stock, tools);
  if (dissolved !== null) return dissolved;
  const spooned = by === "spoons" ? spoonWay(feed, tools) : null;
  if (spooned !== null) return spooned;
  if (by === "spoons" && !feed.liquid) {
    throw new BadInput(
      "no-spoon",
      `No level spoon of ${feed.name} is known. Weigh one once and write its grams under “Level spoons”.`,
    );
  }
  const measure = measureWith(feed, {
    scaleStepG: tools.scaleStepG ?? undefined,
    syringeStepMl: tools.syringeStepMl ?? undefined,
  });
  const most = feed.liquid ? tools.syringeMostMl : tools.scaleMostG;
  return { kind: "tool", measure, stock: null, words: (perBatch) => goes(perBatch, most) };
}
