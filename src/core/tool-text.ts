/**
 * What measures feeds besides a scale and a syringe, as texts in Settings that people write and the panel reads:
 *
 *     spoons := "Epsom salt: 1.1 g, 4.9 g; Calcium nitrate: 1.3 g"        grams of a level spoon of that feed
 *     stocks := "Monopotassium phosphate: 5 g in 100 mL; Drops: 10 mL in 250 mL"
 *
 * Names as in Feeds, in quotes where they hold a semicolon; decimals with a point or a comma.
 */

import { nameOfText, nameText, numberText, parts } from "./dose-text.ts";
import { BadInput } from "./errors.ts";

export interface SpoonsOf {
  readonly feed: string;
  /** Grams in one level spoon, for each spoon. */
  readonly spoonG: readonly number[];
}

/** A stock solution that stands ready: so much of a feed in a bottle filled up to so much. */
export interface StockOf {
  readonly feed: string;
  /** g of a solid or mL of a liquid. */
  readonly solute: number;
  readonly unit: "g" | "mL";
  readonly bottleMl: number;
}

const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
const SPOONS = new RegExp(`^([\\s\\S]+):\\s*(${NUMBER}\\s*g(?:\\s*,\\s*${NUMBER}\\s*g)*)$`);
const STOCK = new RegExp(`^([\\s\\S]+):\\s*(${NUMBER})\\s*(g|mL) in (${NUMBER})\\s*mL$`);

const number = (text: string): number => Number(text.replace(",", "."));

function entries(text: string): string[] {
  return parts(text.split("\n").join("; "))
    .map((part) => part.trim())
    .filter((part) => part !== "");
}

/** Throws BadInput, quoting the part that cannot be read, or names a spoon that holds nothing. */
export function readSpoons(text: string): SpoonsOf[] {
  return entries(text).map((part) => {
    const [, name = "", list = ""] = SPOONS.exec(part) ?? [];
    const spoonG = list.split(/g\s*,?\s*/).filter((one) => one !== "");
    const grams = spoonG.map(number);
    if (grams.length === 0 || grams.some((one) => !(one > 0))) {
      throw new BadInput(
        "spoons",
        `Spoons: “${part}” cannot be read. Write the feed and the grams of each level spoon, like this: Epsom salt: 1.1 g, 4.9 g; the next feed follows after a semicolon.`,
      );
    }
    return { feed: nameOfText(name.trim()), spoonG: grams };
  });
}

/** Throws BadInput, quoting the part that cannot be read. */
export function readStocks(text: string): StockOf[] {
  return entries(text).map((part) => {
    const [, name = "", solute = "", unit, bottle = ""] = STOCK.exec(part) ?? [];
    const read = { solute: number(solute), bottleMl: number(bottle) };
    if (!(read.solute > 0) || !(read.bottleMl > 0)) {
      throw new BadInput(
        "stocks",
        `Stock solutions: “${part}” cannot be read. Write what is in which bottle, like this: Monopotassium phosphate: 5 g in 100 mL; the next one follows after a semicolon.`,
      );
    }
    return { feed: nameOfText(name.trim()), unit: unit === "mL" ? "mL" : "g", ...read };
  });
}

export function spoonsText(spoons: readonly SpoonsOf[]): string {
  return spoons
    .map(({ feed, spoonG }) => `${nameText(feed)}: ${spoonG.map((grams) => `${numberText(grams)} g`).join(", ")}`)
    .join("; ");
}

export function stocksText(stocks: readonly StockOf[]): string {
  return stocks
    .map(
      ({ feed, solute, unit, bottleMl }) =>
        `${nameText(feed)}: ${numberText(solute)} ${unit} in ${numberText(bottleMl)} mL`,
    )
    .join("; ");
}
