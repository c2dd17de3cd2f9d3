/** The ways in which a number on a label can be read when its words leave more than one. */

import type { LabelTerm } from "./analysis.ts";
import { ATOMIC_WEIGHTS, type ElementSymbol } from "./elements.ts";
import type { Ion } from "./label-tokens.ts";
import { OXIDES, oxideElement } from "./oxides.ts";

/** One way to read a number. */
export interface Reading {
  readonly term: LabelTerm;
  /** The printed percent times this is what goes under `term`. */
  readonly factor: number;
  /** As it stands in a question: "phosphate as P2O5". */
  readonly words: string;
}

export const asItIs = (term: LabelTerm, words: string): Reading => ({ term, factor: 1, words });

export const OXIDE_OF: ReadonlyMap<ElementSymbol, LabelTerm> = new Map(
  OXIDES.map((oxide): [ElementSymbol, LabelTerm] => [oxideElement(oxide), oxide]),
);

const { H, N, O, S, P, C } = ATOMIC_WEIGHTS;
/** Share of an ion or of urea that is the element. */
export const ION_READINGS: Readonly<Record<Ion, readonly Reading[]>> = {
  NO3: [
    asItIs("NO3-N", "nitrogen in the nitrate"),
    { term: "NO3-N", factor: N / (N + 3 * O), words: "nitrate as NO3" },
  ],
  NH4: [
    asItIs("NH4-N", "nitrogen in the ammonium"),
    { term: "NH4-N", factor: N / (N + 4 * H), words: "ammonium as NH4" },
  ],
  SO4: [asItIs("S", "sulfur"), { term: "S", factor: S / (S + 4 * O), words: "sulfate as SO4" }],
  PO4: [asItIs("P", "phosphorus"), { term: "P", factor: P / (P + 4 * O), words: "phosphate as PO4" }],
};
export const PHOSPHORIC_ACID: readonly Reading[] = [
  asItIs("P2O5", "phosphate as P2O5"),
  { term: "P2O5", factor: (2 * P + 5 * O) / (2 * (3 * H + P + 4 * O)), words: "phosphoric acid H3PO4 itself" },
];
/** Urea is named as the nitrogen in it or as the substance. */
export const UREA: readonly Reading[] = [
  asItIs("Urea-N", "nitrogen in the urea"),
  { term: "Urea-N", factor: (2 * N) / (C + 4 * H + 2 * N + O), words: "urea itself" },
];

export function oxideOrElement(symbol: ElementSymbol): readonly Reading[] {
  const oxide = OXIDE_OF.get(symbol) as LabelTerm;
  return [asItIs(oxide, `the oxide ${oxide}`), asItIs(symbol, `the element ${symbol}`)];
}
