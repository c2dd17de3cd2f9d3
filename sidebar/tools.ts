/** What the household measures with, as Settings say: scale, syringe, spoons and stock solutions that stand ready. */

import { nameKey } from "../src/core/cell.ts";
import { isBadInput } from "../src/core/errors.ts";
import { readSpoons, readStocks, type SpoonsOf, type StockOf } from "../src/core/tool-text.ts";
import { typedNumber } from "./typed.ts";

export interface HouseTools {
  /** null where Settings leave it blank. */
  readonly scaleStepG: number | null;
  readonly scaleMostG: number | null;
  readonly syringeStepMl: number | null;
  readonly syringeMostMl: number | null;
  readonly spoons: readonly SpoonsOf[];
  readonly mostSpoonfuls: number;
  readonly stocks: readonly StockOf[];
  /** Sentences on what cannot be read; what they are about counts as blank. */
  readonly problems: readonly string[];
}

/** Rows of Settings, in the order of the form. */
export const TOOL_ROWS = {
  scaleStep: "Scale step g",
  scaleMost: "Scale most g",
  syringeStep: "Syringe step mL",
  syringeMost: "Syringe most mL",
  spoons: "Spoons",
  mostSpoonfuls: "Spoonfuls at most",
  stocks: "Stock solutions",
} as const;

export type ToolKey = keyof typeof TOOL_ROWS;
export type ToolTexts = Readonly<Record<ToolKey, string>>;

/** Common practice, no source: nobody counts a dozen spoonfuls twice without losing count. */
const USUAL_SPOONFULS = 12;

export function toolTexts(settings: Readonly<Record<string, string>>): ToolTexts {
  const byKey = new Map(Object.entries(settings).map(([name, value]) => [nameKey(name), value.trim()]));
  const text = (key: ToolKey): string => byKey.get(nameKey(TOOL_ROWS[key])) ?? "";
  return {
    scaleStep: text("scaleStep"),
    scaleMost: text("scaleMost"),
    syringeStep: text("syringeStep"),
    syringeMost: text("syringeMost"),
    spoons: text("spoons"),
    mostSpoonfuls: text("mostSpoonfuls"),
    stocks: text("stocks"),
  };
}

const RULES = {
  scaleStep: { what: "The scale’s step", unit: "g", min: 0.0001, max: 100 },
  scaleMost: { what: "The most the scale takes", unit: "g", min: 0.01, max: 100_000 },
  syringeStep: { what: "The syringe’s step", unit: "mL", min: 0.0001, max: 100 },
  syringeMost: { what: "The most the syringe holds", unit: "mL", min: 0.01, max: 10_000 },
  mostSpoonfuls: { what: "The count of spoonfuls", min: 1, max: 50 },
} as const;

/** What is wrong with each text, null where nothing is. */
export function toolProblems(texts: ToolTexts): Readonly<Record<ToolKey, string | null>> {
  const numbers = (key: keyof typeof RULES) => typedNumber(texts[key], RULES[key]).problem;
  const list = (read: (text: string) => unknown, text: string) => {
    try {
      read(text);
      return null;
    } catch (error) {
      if (isBadInput(error)) return error.message;
      throw error;
    }
  };
  return {
    scaleStep: numbers("scaleStep"),
    scaleMost: numbers("scaleMost"),
    syringeStep: numbers("syringeStep"),
    syringeMost: numbers("syringeMost"),
    spoons: list(readSpoons, texts.spoons),
    mostSpoonfuls: numbers("mostSpoonfuls"),
    stocks: list(readStocks, texts.stocks),
  };
}

export function readTools(settings: Readonly<Record<string, string>>): HouseTools {
  const texts = toolTexts(settings);
  const problems = toolProblems(texts);
  const number = (key: keyof typeof RULES) => typedNumber(texts[key], RULES[key]).value;
  return {
    scaleStepG: number("scaleStep"),
    scaleMostG: number("scaleMost"),
    syringeStepMl: number("syringeStep"),
    syringeMostMl: number("syringeMost"),
    spoons: problems.spoons === null ? readSpoons(texts.spoons) : [],
    mostSpoonfuls: Math.round(number("mostSpoonfuls") ?? USUAL_SPOONFULS),
    stocks: problems.stocks === null ? readStocks(texts.stocks) : [],
    problems: Object.values(problems).filter((problem): problem is string => problem !== null),
  };
}

/** "0.1 g scale up to 200 g, 0.5 mL syringe up to 20 mL". */
export function toolWords({ scaleStepG, scaleMostG, syringeStepMl, syringeMostMl }: HouseTools): string {
  const upTo = (most: number | null, unit: string): string => (most === null ? "" : ` up to ${most} ${unit}`);
  const words = [
    ...(scaleStepG === null ? [] : [`scale in steps of ${scaleStepG} g${upTo(scaleMostG, "g")}`]),
    ...(syringeStepMl === null ? [] : [`syringe in steps of ${syringeStepMl} mL${upTo(syringeMostMl, "mL")}`]),
  ];
  return words.length === 0 ? "none given yet" : words.join(", ");
}
