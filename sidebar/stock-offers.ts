/** Stock solutions for what a batch wants more finely than the tools can measure. */

import { nameKey } from "../src/core/cell.ts";
import type { TooCoarse } from "../src/core/coarse.ts";
import { isBadInput } from "../src/core/errors.ts";
import { saltOf } from "../src/core/salts.ts";
import { offerStock, type StockOffer } from "../src/core/stock.ts";
import type { StockOf } from "../src/core/tool-text.ts";
import type { BatchDraft } from "./batch-draft.ts";
import type { HouseTools } from "./tools.ts";
import { type Typed, typedNumber } from "./typed.ts";

export interface OfferLine {
  readonly coarse: TooCoarse;
  readonly offer: StockOffer;
  /** The number on the label would help: it is asked for. */
  readonly asksSolubility: boolean;
  readonly solubility: Typed;
}

/** Water itself weighs a kilogram; sugar dissolves to about 2000 g/L. */
const MOST_G_PER_L = 3000;

function offerFor(coarse: TooCoarse, tools: HouseTools, solubilityGPerL: number | null): StockOffer {
  const { scaleStepG, syringeStepMl, syringeMostMl } = tools;
  if (syringeStepMl === null || (scaleStepG === null && !coarse.feed.liquid)) {
    return {
      stock: null,
      reason: "A stock solution takes a scale and a syringe: give their steps under “Measured with”.",
    };
  }
  try {
    return offerStock({
      feed: coarse.feed,
      wantedPerBatch: coarse.wantedPerBatch,
      scaleStepG: scaleStepG ?? 1,
      syringeStepMl,
      syringeMostMl: syringeMostMl ?? undefined,
      labelSolubilityGPerL: solubilityGPerL ?? undefined,
    });
  } catch (error) {
    if (isBadInput(error)) return { stock: null, reason: error.message };
    throw error;
  }
}

export function offersFor(
  coarse: readonly TooCoarse[],
  tools: HouseTools,
  solubility: BatchDraft["solubility"],
): readonly OfferLine[] {
  return coarse.map((one) => {
    const typed = typedNumber(solubility[one.feed.name] ?? "", {
      what: "What dissolves",
      unit: "g/L",
      min: 0.1,
      max: MOST_G_PER_L,
    });
    const offer = offerFor(one, tools, typed.value);
    const unknown = !one.feed.liquid && (saltOf(one.feed)?.solubilityGPerL ?? null) === null;
    return { coarse: one, offer, asksSolubility: unknown, solubility: typed };
  });
}

/** The draft with these stocks taken up. */
export function takeStocks(draft: BatchDraft, lines: readonly OfferLine[]): BatchDraft {
  const taken = lines.flatMap(({ coarse, offer: { stock } }): StockOf[] =>
    stock === null
      ? []
      : [{ feed: coarse.feed.name, solute: stock.solute, unit: stock.unit, bottleMl: stock.bottleMl }],
  );
  const keys = new Set(taken.map(({ feed }) => nameKey(feed)));
  return {
    ...draft,
    stocks: [...draft.stocks.filter(({ feed }) => !keys.has(nameKey(feed))), ...taken],
    dry: draft.dry.filter((name) => !keys.has(nameKey(name))),
  };
}

/** The draft with a feed measured as it is again. */
export function leaveStock(draft: BatchDraft, feed: string): BatchDraft {
  const others = draft.dry.filter((name) => nameKey(name) !== nameKey(feed));
  return {
    ...draft,
    stocks: draft.stocks.filter((stock) => nameKey(stock.feed) !== nameKey(feed)),
    dry: [...others, feed],
  };
}
