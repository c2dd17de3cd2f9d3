/** Element shares of a salt from its formula, for tests: atomic weights are typed here again, not taken from the code under test. */

/** CIAAW 2021, abridged: Prohaska et al. 2022, Pure Appl. Chem. 94, 573. */
const WEIGHTS: Readonly<Record<string, number>> = {
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

/** Atoms of a formula like "Ca(NO3)2.4H2O"; a point starts a part with its own count. */
export function atomsOf(formula: string): Map<string, number> {
  const atoms = new Map<string, number>();
  const add = (symbol: string, count: number) => atoms.set(symbol, (atoms.get(symbol) ?? 0) + count);
  for (const part of formula.split(".")) {
    const [, times = "", body = ""] = /^(\d*)(.*)$/.exec(part) ?? [];
    const flat = body.replace(/\(([^)]*)\)(\d*)/g, (_, inside: string, count: string) =>
      inside.repeat(Number(count || "1")),
    );
    for (const [, symbol = "", count = ""] of flat.matchAll(/([A-Z][a-z]?)(\d*)/g)) {
      add(symbol, Number(count || "1") * Number(times || "1"));
    }
  }
  return atoms;
}

export function gramsPerMole(formula: string): number {
  let grams = 0;
  for (const [symbol, count] of atomsOf(formula)) grams += count * (WEIGHTS[symbol] ?? Number.NaN);
  return grams;
}

/** Percent by weight of the elements a label states; hydrogen, carbon and oxygen are left out. */
export function percentOf(formula: string): Record<string, number> {
  const percent: Record<string, number> = {};
  for (const [symbol, count] of atomsOf(formula)) {
    if (symbol === "H" || symbol === "C" || symbol === "O") continue;
    percent[symbol] = (100 * count * (WEIGHTS[symbol] ?? Number.NaN)) / gramsPerMole(formula);
  }
  return percent;
}
