/** Oxides that labels print instead of elements, and the share of each that is the element. */

import { ATOMIC_WEIGHTS, type ElementSymbol } from "./elements.ts";

export const OXIDES = ["P2O5", "K2O", "CaO", "MgO", "SO3", "Na2O", "SiO2"] as const;

export type Oxide = (typeof OXIDES)[number];

interface OxideMakeup {
  readonly element: ElementSymbol;
  readonly atoms: number;
  readonly oxygens: number;
}

/**
 * P2O5 and K2O are how a grade is printed [US state fertilizer law]; CaO, MgO, Na2O and SO3 how European
 * labels may print the rest [Reg. (EC) 2003/2003 Art. 21(3)]. SiO2: common practice, no source.
 */
const MAKEUP: Readonly<Record<Oxide, OxideMakeup>> = {
  P2O5: { element: "P", atoms: 2, oxygens: 5 },
  K2O: { element: "K", atoms: 2, oxygens: 1 },
  CaO: { element: "Ca", atoms: 1, oxygens: 1 },
  MgO: { element: "Mg", atoms: 1, oxygens: 1 },
  SO3: { element: "S", atoms: 1, oxygens: 3 },
  Na2O: { element: "Na", atoms: 2, oxygens: 1 },
  SiO2: { element: "Si", atoms: 1, oxygens: 2 },
};

export function oxideElement(oxide: Oxide): ElementSymbol {
  return MAKEUP[oxide].element;
}

/** Mass of the element in one unit of mass of its oxide, from the atomic weights: P2O5 0.43643, K2O 0.83015. */
export function oxideFactor(oxide: Oxide): number {
  const { element, atoms, oxygens } = MAKEUP[oxide];
  const elementMass = atoms * ATOMIC_WEIGHTS[element];
  return elementMass / (elementMass + oxygens * ATOMIC_WEIGHTS.O);
}
