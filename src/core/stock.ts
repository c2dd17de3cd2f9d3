/** Stock solutions: what is too little to weigh for one batch is dissolved once and dosed by the millilitre. */

import { type Amounts, type ElementSymbol, SYMBOLS } from "./elements.ts";
import { BadInput } from "./errors.ts";
import { type Feed, feedOf } from "./feeds.ts";
import { saltOf } from "./salts.ts";
import { sayGiven, sayNumber } from "./saying.ts";
import type { StockOf } from "./tool-text.ts";

export interface StockTask {
  readonly feed: Feed;
  /** g of a solid or mL of a liquid that one batch wants. */
  readonly wantedPerBatch: number;
  readonly scaleStepG: number;
  readonly syringeStepMl: number;
  /** The most the syringe draws at once; 60 where absent. */
  readonly syringeMostMl?: number | undefined;
  /** g that dissolve in a litre, as the feed's own label says; needed where no published number is known. */
  readonly labelSolubilityGPerL?: number | undefined;
}

export interface Stock {
  /** g of a solid or mL of a liquid that go into the bottle. */
  readonly solute: number;
  readonly unit: "g" | "mL";
  /** mL in the bottle when it is filled up. */
  readonly bottleMl: number;
  /** mL of the stock for one batch, a multiple of the syringe's step. */
  readonly doseMl: number;
  /** How far the measured amounts can be off, as a share: half a step of each tool, and the rounding of the dose. */
  readonly error: number;
  /** Share of what would dissolve that is in the bottle; null for a liquid. */
  readonly shareOfSolubility: number | null;
  /** Key into SOLUBILITY_SOURCES, "label" for the feed's own, null for a liquid. */
  readonly source: string | null;
  /** The stock as a feed of its own: a liquid with a label by volume. */
  readonly feed: Feed;
  readonly steps: readonly string[];
}

export type StockOffer =
  | { readonly stock: Stock; readonly reason: null }
  /** `reason` is the sentence that says why there is none. */
  | { readonly stock: null; readonly reason: string };

/** Half of what dissolves at 20 °C stays dissolved in a cold cupboard too [common practice, no source]. */
const SAFE_SHARE = 0.5;
/** Above this a filled-up litre holds clearly less than a litre of water, and the published number no longer fits. */
const MOST_G_PER_L = 200;
const BOTTLES_ML = [100, 250, 500, 1000] as const;
const GOOD_ERROR = 0.015;
/** Weigh at least this many steps, draw at least this many: 2.5 % and 5 % at worst. */
const LEAST_SOLUTE_STEPS = 20;
const LEAST_DOSE_STEPS = 10;

function positive(value: number, what: string, unit: string): void {
  if (!(value > 0 && Number.isFinite(value))) {
    throw new BadInput("out-of-bounds", `${what} is ${sayGiven(value)} ${unit}. Give a number above 0.`);
  }
}

/** The stock as a feed: percent w/v is grams of nutrient in 100 mL of it. */
function stockFeed(feed: Feed, perMl: number): Feed {
  const { label, densityGPerMl } = feed;
  // What the label's percents count on, in one mL of stock: g for w/w, mL for w/v.
  const counted = feed.liquid && label.basis === "w/w" ? perMl * (densityGPerMl as number) : perMl;
  const percent: Partial<Record<ElementSymbol, number>> = {};
  for (const symbol of SYMBOLS) {
    const share = label.percent[symbol];
    if (share !== undefined) percent[symbol] = share * counted;
  }
  const form = (share: number | null) => (share === null ? null : share * counted);
  const { nitrate, ammonium, urea, other } = label.nitrogen;
  const nitrogen = { nitrate: form(nitrate), ammonium: form(ammonium), urea: form(urea), other: form(other) };
  return feedOf(`${feed.name} stock`, { basis: "w/v", percent: percent as Amounts, nitrogen }, null);
}

/** 1, 2, 2.5, 5 and their tenfolds from 0.1 to 200: amounts that are easy to weigh and to remember. */
const EASY = [0.1, 1, 10, 100].flatMap((ten) => [1, 2, 2.5, 5].map((one) => Number((one * ten).toPrecision(3))));

interface Choice {
  readonly solute: number;
  readonly bottleMl: number;
  readonly doseMl: number;
  readonly error: number;
}

function choices(task: StockTask, mostPerMl: number): Choice[] {
  const { feed, wantedPerBatch, scaleStepG, syringeStepMl, syringeMostMl = 60 } = task;
  const soluteStep = feed.liquid ? syringeStepMl : scaleStepG;
  const found: Choice[] = [];
  for (const bottleMl of BOTTLES_ML) {
    for (const solute of EASY) {
      const steps = solute / soluteStep;
      if (steps < LEAST_SOLUTE_STEPS || Math.abs(steps - Math.round(steps)) > 1e-9) continue;
      const perMl = solute / bottleMl;
      if (perMl > mostPerMl) continue;
      const exactMl = wantedPerBatch / perMl;
      const doseSteps = Math.round(exactMl / syringeStepMl);
      const doseMl = Number((doseSteps * syringeStepMl).toPrecision(12));
      if (doseSteps < LEAST_DOSE_STEPS || doseMl > syringeMostMl || doseMl > bottleMl) continue;
      const error = 0.5 / steps + 0.5 / doseSteps + Math.abs(doseMl - exactMl) / exactMl;
      found.push({ solute, bottleMl, doseMl, error });
    }
  }
  return found;
}

/** How to make a bottle of it. */
export function bottleSteps({ feed, solute, unit, bottleMl }: StockOf): string[] {
  const much = `${sayGiven(solute)} ${unit}`;
  return [
    `${unit === "mL" ? "Measure" : "Weigh"} ${much} of ${feed} into a clean bottle.`,
    `Add about ${Math.round(bottleMl * 0.7)} mL of low-mineral water, shake until it is clear, then fill up to ${sayGiven(bottleMl)} mL.`,
    `Write on the bottle: ${feed}, ${much} in ${sayGiven(bottleMl)} mL, and the day. Keep it dark, shut, and out of reach of children and pets.`,
  ];
}

function stepsOf(feed: Feed, unit: "g" | "mL", { solute, bottleMl, doseMl }: Choice): string[] {
  return [
    ...bottleSteps({ feed: feed.name, solute, unit, bottleMl }),
    `For this batch, draw ${sayGiven(doseMl)} mL of it.`,
  ];
}

/**
 * A stock solution for a feed of which one batch wants too little to measure. Its strength stays at or below half of
 * the published solubility at room temperature and 200 g/L. Throws BadInput for amounts and steps not above 0.
 */
export function offerStock(task: StockTask): StockOffer {
  const { feed, wantedPerBatch, labelSolubilityGPerL } = task;
  const unit = feed.liquid ? "mL" : "g";
  positive(wantedPerBatch, `The dose of ${feed.name}`, unit);
  positive(task.scaleStepG, "The step of the scale", "g");
  positive(task.syringeStepMl, "The step of the syringe", "mL");
  const salt = saltOf(feed);
  const solubility = labelSolubilityGPerL ?? salt?.solubilityGPerL ?? null;
  if (!feed.liquid && solubility === null) {
    return {
      stock: null,
      reason: `There is no published solubility for ${feed.name} here. If its label says how many grams dissolve in a litre, give that number; otherwise mix a larger batch.`,
    };
  }
  if (solubility !== null) positive(solubility, `The solubility of ${feed.name}`, "g/L");
  // A liquid is thinned to half at most, so that there is something to gain.
  const mostPerMl = feed.liquid ? 0.5 : Math.min(SAFE_SHARE * (solubility as number), MOST_G_PER_L) / 1000;
  const all = choices(task, mostPerMl);
  const good = all.filter(({ error }) => error <= GOOD_ERROR);
  // The smallest bottle that is exact enough, in it the most exact; else whatever is most exact.
  const ranked =
    good.length > 0
      ? good.sort((a, b) => a.bottleMl - b.bottleMl || a.error - b.error)
      : all.sort((a, b) => a.error - b.error);
  const best = ranked[0];
  if (best === undefined) {
    return {
      stock: null,
      reason: `No stock solution of ${feed.name} makes ${sayNumber(wantedPerBatch)} ${unit} easy to measure with these tools. Mix a larger batch, or use a finer syringe.`,
    };
  }
  const perMl = best.solute / best.bottleMl;
  return {
    stock: {
      ...best,
      unit,
      shareOfSolubility: feed.liquid ? null : (perMl * 1000) / (solubility as number),
      source: feed.liquid ? null : labelSolubilityGPerL !== undefined ? "label" : (salt?.source ?? null),
      feed: stockFeed(feed, perMl),
      steps: stepsOf(feed, unit, best),
    },
    reason: null,
  };
}
