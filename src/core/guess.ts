/** Where the equilibrium solver starts: the pH and free ions a solution would have if no ion pairs formed. */

import { CHARGES, CO3, type Constants, H, PROTONS, speciesIndex } from "./reactions.ts";
import type { Problem, Totals } from "./speciation.ts";
import { COMPONENT_CHARGES, COMPONENTS, type Component } from "./species.ts";

export interface Guess {
  readonly ionicStrengthMolKg: number;
  readonly holdsCarbon: boolean;
  readonly pHGiven: boolean;
}

/** The forms of each component that only differ in protons. */
const ACID_FORMS: readonly (readonly [component: Component, species: readonly string[]])[] = [
  ["CO3", ["CO3-2", "HCO3-", "CO2"]],
  ["NH4", ["NH4+", "NH3"]],
  ["SO4", ["SO4-2", "HSO4-"]],
  ["PO4", ["PO4-3", "HPO4-2", "H2PO4-", "H3PO4"]],
  ["B", ["H3BO3", "H2BO3-"]],
  ["Cit", ["Cit-3", "HCit-2", "H2Cit-", "H3Cit"]],
];
const SYSTEMS = ACID_FORMS.map(([component, names]) => ({
  component: COMPONENTS.indexOf(component),
  forms: names.map(speciesIndex),
}));
/** Less than this counts as none: it is a ten-millionth of what any report resolves. */
const LEAST_MOL_KG = 1e-12;
const OH = speciesIndex("OH-");
const CO2 = speciesIndex("CO2");

/**
 * Fills `wanted` (total of each component, for H the total that charge balance or the proton excess asks for; mol/kg)
 * and `x` (ln activities to start from).
 */
export function startingPoint(
  problem: Problem,
  constants: Constants,
  { wanted, x }: { readonly wanted: Float64Array; readonly x: Float64Array },
): Guess {
  const { totals, carbon, pH } = problem;
  let charge = 0;
  let strength = 0;
  for (let i = 2; i < COMPONENTS.length; i++) {
    const given = totals[COMPONENTS[i] as keyof Totals] ?? 0;
    const total = given < LEAST_MOL_KG ? 0 : given;
    const z = COMPONENT_CHARGES[i] ?? 0;
    wanted[i] = total;
    charge += z * total;
    // three charges on phosphate and citrate are rare in these waters; two come nearer
    strength += 0.5 * Math.min(z * z, 4) * total;
  }
  const open = "logPco2" in carbon;
  const total = "totalMolKg" in carbon ? carbon.totalMolKg : "alkalinityEqKg" in carbon ? carbon.alkalinityEqKg : 0;
  wanted[CO3] = open || total < LEAST_MOL_KG ? 0 : total;
  const held = wanted[CO3] ?? 0;
  wanted[H] = typeof pH === "object" ? pH.protonsMolKg + 2 * held : -charge + 2 * held;
  strength += 0.5 * held + 1e-7;
  const root = Math.sqrt(Math.min(strength, 0.5));
  /** ln γ of a singly charged ion, Davies. */
  const lnGamma1 = -constants.lnA * (root / (1 + root) - 0.3 * root * root);
  const lnCo2 = open ? (carbon.logPco2 + constants.logKCo2Gas) * Math.LN10 : Number.NaN;
  const mix: Mix = { wanted, constants, lnGamma1, lnCo2: open ? lnCo2 : null };

  const lnH = typeof pH === "number" ? -pH * Math.LN10 : balancedLnH(mix);
  x[H] = lnH;
  for (let i = 1; i < COMPONENTS.length; i++) {
    const z = COMPONENT_CHARGES[i] ?? 0;
    x[i] = Math.log(Math.max(wanted[i] ?? 0, 1e-14)) + z * z * lnGamma1;
  }
  for (const { component, forms } of SYSTEMS) {
    let sum = 0;
    for (const s of forms) sum += weight(mix, component, s, lnH);
    x[component] = (x[component] ?? 0) - Math.log(sum);
  }
  if (open) x[CO3] = lnCo2 - (constants.lnK[CO2] ?? 0) - 2 * lnH;
  return {
    ionicStrengthMolKg: Math.min(strength, 0.5),
    holdsCarbon: open || "alkalinityEqKg" in carbon || held > 0,
    pHGiven: typeof pH === "number",
  };
}

interface Mix {
  readonly wanted: Float64Array;
  readonly constants: Constants;
  readonly lnGamma1: number;
  readonly lnCo2: number | null;
}

/** Amount of form `s` relative to the free form of its component. */
function weight(mix: Mix, component: number, s: number, lnH: number): number {
  const z = COMPONENT_CHARGES[component] ?? 0;
  const zs = CHARGES[s] ?? 0;
  return Math.exp((mix.constants.lnK[s] ?? 0) + (PROTONS[s] ?? 0) * lnH + (z * z - zs * zs) * mix.lnGamma1);
}

/** ln activity of H at which the protons add up; they rise with it, so bisection always finds it. */
function balancedLnH(mix: Mix): number {
  let low = -34;
  let high = -1;
  for (let step = 0; step < 26; step++) {
    const middle = (low + high) / 2;
    if (protons(mix, middle) > (mix.wanted[H] ?? 0)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

function protons(mix: Mix, lnH: number): number {
  const { wanted, constants, lnGamma1, lnCo2 } = mix;
  let sum = Math.exp(lnH - lnGamma1) - Math.exp((constants.lnK[OH] ?? 0) - lnH - lnGamma1);
  for (const { component, forms } of SYSTEMS) {
    if (component === CO3 && lnCo2 !== null) {
      for (const s of forms) {
        const z = CHARGES[s] ?? 0;
        const missing = (PROTONS[s] ?? 0) - 2;
        const ln = lnCo2 - (constants.lnK[CO2] ?? 0) + (constants.lnK[s] ?? 0) + missing * lnH - z * z * lnGamma1;
        sum += missing * Math.exp(ln);
      }
      continue;
    }
    const total = wanted[component] ?? 0;
    if (total <= 0) continue;
    let all = 0;
    let held = 0;
    for (const s of forms) {
      const w = weight(mix, component, s, lnH);
      all += w;
      held += (PROTONS[s] ?? 0) * w;
    }
    sum += (total * held) / all;
  }
  return sum;
}
