/** Chemical formulas: their atoms, molar mass, and the percent of each nutrient. */

import { ATOMIC_WEIGHTS, type ElementSymbol, SYMBOLS } from "./elements.ts";
import { BadInput } from "./errors.ts";

type Atom = keyof typeof ATOMIC_WEIGHTS;

/**
 * Atoms in one formula unit. Parts are joined by "·" and may begin with a count: "5Ca(NO3)2·NH4NO3·10H2O".
 * BadInput for a part that cannot be read and for an atom without an atomic weight here.
 */
export function atomsIn(formula: string): ReadonlyMap<Atom, number> {
  const atoms = new Map<Atom, number>();
  const addGroup = (group: string, times: number): void => {
    const token = /\(([^()]*)\)(\d*)|([A-Z][a-z]?)(\d*)/y;
    while (token.lastIndex < group.length) {
      const rest = group.slice(token.lastIndex);
      const [, inner, innerCount, symbol, count] = token.exec(group) ?? [];
      if (inner !== undefined) addGroup(inner, times * Number(innerCount || "1"));
      else if (symbol !== undefined && symbol in ATOMIC_WEIGHTS) {
        const atom = symbol as Atom;
        atoms.set(atom, (atoms.get(atom) ?? 0) + times * Number(count || "1"));
      } else throw new BadInput("formula", `The formula "${formula}" cannot be read from "${rest}" on.`);
    }
  };
  for (const part of formula.split("·")) {
    const body = part.replace(/^\d+/, "");
    addGroup(body, Number(part.slice(0, part.length - body.length) || "1"));
  }
  return atoms;
}

/** g/mol, from the abridged atomic weights. */
export function gramsPerMole(formula: string): number {
  let grams = 0;
  for (const [atom, count] of atomsIn(formula)) grams += count * ATOMIC_WEIGHTS[atom];
  return grams;
}

/** Percent by weight of a nutrient in the pure substance. */
export function percentIn(formula: string, symbol: ElementSymbol): number {
  const count = atomsIn(formula).get(symbol) ?? 0;
  return (100 * count * ATOMIC_WEIGHTS[symbol]) / gramsPerMole(formula);
}

/** Nutrients that a formula holds, in the order of all tables. */
export function nutrientsIn(formula: string): ElementSymbol[] {
  const atoms = atomsIn(formula);
  return SYMBOLS.filter((symbol) => atoms.has(symbol));
}
