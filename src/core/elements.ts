/** The elements a feed is counted in, and their atomic weights. */

import { BadInput } from "./errors.ts";

/** In the order of every table and result: six by the gram, six by the milligram. */
export const ELEMENTS = ["N", "P", "K", "Ca", "Mg", "S", "Fe", "Mn", "Zn", "B", "Cu", "Mo"] as const;

/** What a label or a water may state besides. */
export const SYMBOLS = [...ELEMENTS, "Si", "Na", "Cl"] as const;

export type ElementSymbol = (typeof SYMBOLS)[number];

/** Amounts by element, mg/L or percent as the name around it says; an element that is not there was not stated. */
export type Amounts = Readonly<Partial<Record<ElementSymbol, number>>>;

export const ELEMENT_NAMES: Readonly<Record<ElementSymbol, string>> = {
  N: "nitrogen",
  P: "phosphorus",
  K: "potassium",
  Ca: "calcium",
  Mg: "magnesium",
  S: "sulfur",
  Fe: "iron",
  Mn: "manganese",
  Zn: "zinc",
  B: "boron",
  Cu: "copper",
  Mo: "molybdenum",
  Si: "silicon",
  Na: "sodium",
  Cl: "chlorine",
};

/** Standard atomic weights, abridged to five figures [CIAAW 2021]. */
export const ATOMIC_WEIGHTS: Readonly<Record<ElementSymbol | "H" | "C" | "O", number>> = {
  H: 1.008,
  B: 10.81,
  C: 12.011,
  N: 14.007,
  O: 15.999,
  Na: 22.99,
  Mg: 24.305,
  Si: 28.085,
  P: 30.974,
  S: 32.06,
  Cl: 35.45,
  K: 39.098,
  Ca: 40.078,
  Mn: 54.938,
  Fe: 55.845,
  Cu: 63.546,
  Zn: 65.38,
  Mo: 95.95,
};

const BY_KEY: ReadonlyMap<string, ElementSymbol> = new Map(
  SYMBOLS.flatMap((symbol): [string, ElementSymbol][] => [
    [symbol.toLowerCase(), symbol],
    [ELEMENT_NAMES[symbol], symbol],
  ]),
);

/** The element a word means, by symbol or by name, whatever its case; null when it is none of ours. */
export function elementOf(word: string): ElementSymbol | null {
  return BY_KEY.get(word.trim().toLowerCase()) ?? null;
}

/**
 * Reads a list of elements, "N P K" or "N, P, K" or "iron", in the order they are asked for.
 * Throws BadInput for an unknown word, an element named twice, or no element at all.
 */
export function parseElements(text: string): ElementSymbol[] {
  const found: ElementSymbol[] = [];
  for (const word of text.split(/[\s,;]+/)) {
    if (word === "") continue;
    const symbol = elementOf(word);
    if (symbol === null) {
      throw new BadInput("unknown-element", `"${word}" is no element known here. Use ${SYMBOLS.join(" ")}.`);
    }
    if (found.includes(symbol)) {
      throw new BadInput("element-twice", `${symbol} is asked for twice in "${text.trim()}". Name each element once.`);
    }
    found.push(symbol);
  }
  if (found.length === 0) {
    throw new BadInput("no-element", `The list of elements is empty. Name one or more of ${SYMBOLS.join(" ")}.`);
  }
  return found;
}

/*
 * CIAAW 2021: Commission on Isotopic Abundances and Atomic Weights, Standard atomic weights 2021
 * (Prohaska et al. 2022, Pure Appl. Chem. 94, 573), abridged values.
 */
