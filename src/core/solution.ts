/** From mg/L of elements to ions: what a label implies, the counter-ion it does not print, and the assumptions made. */

import { type Amounts, ATOMIC_WEIGHTS } from "./elements.ts";
import { CACO3_MG_PER_MEQ } from "./ions.ts";
import { sayNumber } from "./saying.ts";
import { type State, solveState, type Totals } from "./speciation.ts";
import { AIR_LOG_PCO2 } from "./species.ts";

/** mg/L of N in each form; null where it is not known. */
export interface NitrogenMgL {
  readonly nitrate: number | null;
  readonly ammonium: number | null;
  readonly urea: number | null;
}

export interface Elements {
  /** mg/L of the element. */
  readonly amounts: Amounts;
  readonly nitrogen?: NitrogenMgL;
  /** Of the water in the mix, before any acid; mg/L as CaCO3. */
  readonly alkalinityMgCaCO3L?: number;
}

export interface Implied {
  /** mol/L, taken for mol/kg (at most 0.3 % low, see ions.ts). */
  readonly totals: Totals;
  /** Urea carries no charge and does not conduct. */
  readonly ureaMolL: number;
  /** What was added to make the charges meet, as no label prints it; null where nothing was needed. */
  readonly counterIon: { readonly ion: "Cl" | "SO4" | "Na" | "H"; readonly meqL: number } | null;
  /** Whole sentences, for the person who reads the result. */
  readonly assumptions: readonly string[];
}

/** Of two or three ions nobody minds a tenth of a meq/L: weighing and rounding of labels leave as much. */
const UNNOTICED_MEQ_L = 0.1;

/**
 * Ions behind amounts of elements. P is counted as H2PO4- (as in potassium and ammonium phosphate), S as sulfate, B as
 * boric acid; Fe, Mn, Zn, Cu, Mo are chelated or too little to conduct (below 1 % of the EC) and are left out; urea has
 * no charge. Nitrogen of unknown form is split into nitrate and ammonium so that the charges meet. What is still
 * missing is a counter-ion that labels need not print: chloride (sulfate where chloride is stated) or sodium (hydrogen
 * where sodium is stated: an acid feed).
 */
export function impliedIons({ amounts, nitrogen, alkalinityMgCaCO3L = 0 }: Elements): Implied {
  const mmol = (symbol: keyof Amounts & keyof typeof ATOMIC_WEIGHTS) => (amounts[symbol] ?? 0) / ATOMIC_WEIGHTS[symbol];
  const assumptions: string[] = [];
  const asMmol = (mgN: number | null | undefined) => (mgN ?? 0) / ATOMIC_WEIGHTS.N;
  let nitrate = asMmol(nitrogen?.nitrate);
  let ammonium = asMmol(nitrogen?.ammonium);
  const urea = asMmol(nitrogen?.urea);
  const unknown = Math.max(mmol("N") - nitrate - ammonium - urea, 0);
  let [chloride, sulfate, sodium] = [mmol("Cl"), mmol("S"), mmol("Na")];
  const bases = 2 * mmol("Ca") + 2 * mmol("Mg") + mmol("K");
  const excess = () =>
    bases + sodium + ammonium - nitrate - 2 * sulfate - chloride - mmol("P") - alkalinityMgCaCO3L / CACO3_MG_PER_MEQ;

  if (unknown > 0.005 * mmol("N")) {
    const asNitrate = Math.min(Math.max((unknown + excess()) / 2, 0), unknown);
    nitrate += asNitrate;
    ammonium += unknown - asNitrate;
    assumptions.push(
      `${sayNumber(unknown * ATOMIC_WEIGHTS.N)} mg/L of nitrogen of unknown form is counted as ${sayNumber((100 * asNitrate) / unknown)} % nitrate and the rest ammonium, as the charges ask for; urea among it would lower the EC.`,
    );
  }
  const missing = excess();
  let counterIon: Implied["counterIon"] = null;
  const size = Math.abs(missing);
  if (missing > 0) {
    const ion = amounts.Cl === undefined || amounts.S !== undefined ? "Cl" : "SO4";
    if (ion === "Cl") chloride += missing;
    else sulfate += missing / 2;
    counterIon = { ion, meqL: missing };
  } else if (missing < 0) {
    const ion = amounts.Na === undefined ? "Na" : "H";
    if (ion === "Na") sodium += size;
    counterIon = { ion, meqL: size };
  }
  if (counterIon !== null && size > UNNOTICED_MEQ_L) {
    const name = { Cl: "chloride", SO4: "sulfate", Na: "sodium", H: "hydrogen, so an acid feed" }[counterIon.ion];
    assumptions.push(`${sayNumber(size)} meq/L of a counter-ion that is not on the label is taken to be ${name}.`);
  }
  if (mmol("P") > 0) assumptions.push("Phosphorus is counted as H2PO4, as in potassium and ammonium phosphates.");
  const millimoles: Totals = {
    Ca: mmol("Ca"),
    Mg: mmol("Mg"),
    K: mmol("K"),
    Na: sodium,
    NH4: ammonium,
    NO3: nitrate,
    SO4: sulfate,
    Cl: chloride,
    PO4: mmol("P"),
    B: mmol("B"),
  };
  const totals: Record<string, number> = {};
  for (const [part, amount] of Object.entries(millimoles)) totals[part] = amount / 1000;
  return { totals: totals as Totals, ureaMolL: urea / 1000, counterIon, assumptions };
}

/** Common practice, no source: nutrient solutions for plants without soil are kept at pH 5.5 to 6.5. */
export const USUAL_PH = 6;

/**
 * A finished solution at a given pH. Its carbonate is taken as what the water's alkalinity began with, as in a closed
 * vessel just after mixing; without an alkalinity, none. For EC and for what may fall out.
 */
export function solutionAt(elements: Elements, { pH = USUAL_PH, tempC = 25 }): State {
  const carbonMolKg = (elements.alkalinityMgCaCO3L ?? 0) / CACO3_MG_PER_MEQ / 1000;
  return solveState({ totals: impliedIons(elements).totals, carbon: { totalMolKg: carbonMolKg }, pH, tempC });
}

export interface MixAsk {
  /** Ions of the water, mol/kg, with its alkalinity (eq/kg) and pH as measured. */
  readonly water: { readonly totals: Totals; readonly alkalinityEqKg: number; readonly pH: number };
  /** What the feeds alone bring. */
  readonly feeds: Elements;
  readonly tempC: number;
}

export interface Mix {
  /** As mixed, before CO2 leaves or comes. */
  readonly now: State;
  /** In balance with outdoor air. */
  readonly standing: State;
  readonly assumptions: readonly string[];
}

/**
 * The solution that water and feeds make. The pH follows from the protons of the water (alkalinity, pH) and two for
 * every phosphate of the feeds (H2PO4-), so a report that does not quite balance does not move it; a feed with free
 * phosphoric acid or with K2HPO4 will differ, so the measured pH decides.
 */
export function mixStates({ water, feeds, tempC }: MixAsk): Mix {
  const { totals: waterTotals, alkalinityEqKg, pH } = water;
  const start = solveState({ totals: waterTotals, carbon: { alkalinityEqKg }, pH, tempC });
  const implied = impliedIons(feeds);
  const totals: { -readonly [part in keyof Totals]: number } = { ...waterTotals };
  for (const part of Object.keys(implied.totals) as (keyof Totals)[]) {
    totals[part] = (totals[part] ?? 0) + (implied.totals[part] ?? 0);
  }
  const acidMolKg = implied.counterIon?.ion === "H" ? implied.counterIon.meqL / 1000 : 0;
  const held = { protonsMolKg: start.protonsMolKg + 2 * (implied.totals.PO4 ?? 0) + acidMolKg };
  return {
    now: solveState({ totals, carbon: { totalMolKg: start.totalCarbonMolKg }, pH: held, tempC }),
    standing: solveState({ totals, carbon: { logPco2: AIR_LOG_PCO2 }, pH: held, tempC }),
    assumptions: implied.assumptions,
  };
}
