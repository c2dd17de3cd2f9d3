/** Guaranteed analyses of pure salts, worked out from their formulas and atomic weights. */

/** Abridged standard atomic weights, CIAAW 2021 [1]. Carbon and hydrogen are here because the core has no use for them. */
const ATOMIC_WEIGHTS: Readonly<Record<string, number>> = {
  H: 1.008,
  B: 10.81,
  C: 12.011,
  N: 14.007,
  O: 15.999,
  Na: 22.99,
  Mg: 24.305,
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

/** Atoms in one formula unit: "Ca(NO3)2·4H2O" holds 1 Ca, 2 N, 10 O, 8 H. */
export function countAtoms(formula: string): Map<string, number> {
  const atoms = new Map<string, number>();
  for (const part of formula.split("·")) {
    const [, times = "", body = ""] = /^(\d*)(.*)$/.exec(part) ?? [];
    addGroup(body, times === "" ? 1 : Number(times), atoms);
  }
  return atoms;
}

function addGroup(group: string, factor: number, atoms: Map<string, number>): void {
  const token = /\(([^()]*)\)(\d*)|([A-Z][a-z]?)(\d*)/y;
  while (token.lastIndex < group.length) {
    const at = token.lastIndex;
    const found = token.exec(group);
    if (found === null) throw new Error(`The formula part "${group}" cannot be read from "${group.slice(at)}" on.`);
    const [, inner, innerCount, symbol, count] = found;
    if (inner !== undefined) addGroup(inner, factor * Number(innerCount || 1), atoms);
    else if (symbol !== undefined) atoms.set(symbol, (atoms.get(symbol) ?? 0) + factor * Number(count || 1));
  }
}

function weightOf(symbol: string): number {
  const weight = ATOMIC_WEIGHTS[symbol];
  if (weight === undefined) throw new Error(`There is no atomic weight for "${symbol}" here.`);
  return weight;
}

/** g/mol. */
export function molarMass(formula: string): number {
  let sum = 0;
  for (const [symbol, count] of countAtoms(formula)) sum += count * weightOf(symbol);
  return sum;
}

/** Percent by weight of an element in the pure salt; `as` "P2O5" or "K2O" gives it the way a grade does. */
export function percentOf(formula: string, symbol: string, as?: string): number {
  const atoms = countAtoms(formula).get(symbol) ?? 0;
  if (as === undefined) return (100 * atoms * weightOf(symbol)) / molarMass(formula);
  const inOxide = countAtoms(as).get(symbol);
  if (inOxide === undefined) throw new Error(`${as} holds no ${symbol}.`);
  return (100 * (atoms / inOxide) * molarMass(as)) / molarMass(formula);
}

/** mg/L of an element in `mmolL` millimoles of it a litre. */
export function mgLFromMmolL(symbol: string, mmolL: number): number {
  return mmolL * weightOf(symbol);
}

// [1] Commission on Isotopic Abundances and Atomic Weights, Standard Atomic Weights 2021, abridged to five digits:
//     Prohaska et al. 2022, Pure Appl. Chem. 94, 573.
