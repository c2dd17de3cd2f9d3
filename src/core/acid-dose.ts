/** How much acid or base takes a water or a mix to a pH, what it adds, and where the pH ends once the CO2 has left. */

import { type Acid, equivalentsPerMole } from "./acids.ts";
import { type Amounts, ATOMIC_WEIGHTS } from "./elements.ts";
import { BadInput, NoConvergence } from "./errors.ts";
import { CACO3_MG_PER_MEQ } from "./ions.ts";
import { sayGiven, sayNumber } from "./saying.ts";
import { type State, solveState, type Totals } from "./speciation.ts";
import { AIR_LOG_PCO2 } from "./species.ts";

export interface AcidDose {
  /** mL or g (acid.unit) for one litre. */
  readonly perLitre: number;
  readonly unit: "mL" | "g";
  readonly molPerL: number;
  /** Equivalents a mole really gives on the way; null where none is needed. */
  readonly equivalentsPerMole: number | null;
  /** mg/L of the element it adds (P, N, S or K), to be counted in the mix. */
  readonly adds: Amounts;
  /** Before any CO2 has left. */
  readonly state: State;
}

/**
 * Dose that takes `start` to `targetPH` in a closed vessel. It follows the protons, not the charges, so a report that
 * does not quite balance does not move it. Throws BadInput for a target on the wrong side of the pH, or one that this
 * acid or base cannot reach within 20 mmol/L.
 */
export function acidDose(start: State, targetPH: number, acid: Acid): AcidDose {
  const acidWanted = targetPH < start.pH;
  if (targetPH !== start.pH && acidWanted !== (acid.kind === "acid")) {
    throw new BadInput(
      "wrong-way",
      acidWanted
        ? `${acid.name} raises the pH, but ${sayGiven(targetPH)} is below ${sayNumber(start.pH)}. Take an acid.`
        : `${acid.name} lowers the pH, but ${sayGiven(targetPH)} is above ${sayNumber(start.pH)}. Take potassium bicarbonate or potassium hydroxide.`,
    );
  }
  const at = (molKg: number) => stateWith(start, targetPH, { acid, molKg });
  /** Protons still missing at the target after `molKg` of the acid; falls as it grows. */
  const missing = (state: State, molKg: number) => state.protonsMolKg - start.protonsMolKg - acid.protons * molKg;

  let previous = 0;
  let state = at(0);
  const needed = missing(state, 0);
  let previousMissing = needed;
  if (targetPH === start.pH) return readDose(state, 0, { acid, molKg: 0 });
  let molKg = Math.abs(previousMissing) / Math.max(Math.abs(equivalentsPerMole(acid, targetPH)), 0.05);
  for (let round = 0; round < 30; round++) {
    if (!(molKg >= 0 && molKg <= MOST_MOL_KG)) throw cannotReach(acid, targetPH);
    state = at(molKg);
    const nowMissing = missing(state, molKg);
    if (Math.abs(nowMissing) <= 1e-10 + 1e-8 * Math.abs(acid.protons) * molKg) {
      return readDose(state, needed, { acid, molKg });
    }
    // secant; the function is monotone and nearly straight, since only activities and pairs bend it
    const next = molKg - (nowMissing * (molKg - previous)) / (nowMissing - previousMissing);
    previous = molKg;
    previousMissing = nowMissing;
    molKg = next;
  }
  throw new NoConvergence(`The dose of ${acid.name} did not settle; mol/kg of protons are missing.`, previousMissing);
}

/** 20 mmol/L is 100 times what a drinking water needs: beyond it a solution is no plant's. */
const MOST_MOL_KG = 0.02;

function cannotReach(acid: Acid, targetPH: number): BadInput {
  return new BadInput(
    "target-out-of-reach",
    `${acid.name} cannot bring this water to pH ${sayGiven(targetPH)} within 20 mmol/L. Choose a target nearer, or another one.`,
  );
}

interface Addition {
  readonly acid: Acid;
  readonly molKg: number;
}

function totalsWith(totals: Totals, { acid, molKg }: Addition): Totals {
  const sum: { -readonly [part in keyof Totals]: number } = { ...totals };
  for (const part of Object.keys(acid.adds) as (keyof Totals)[]) {
    sum[part] = (sum[part] ?? 0) + (acid.adds[part] ?? 0) * molKg;
  }
  return sum;
}

function stateWith(start: State, pH: number | { protonsMolKg: number }, addition: Addition): State {
  return solveState({
    totals: totalsWith(start.totals, addition),
    carbon: { totalMolKg: start.totalCarbonMolKg + addition.acid.carbon * addition.molKg },
    pH,
    tempC: start.tempC,
  });
}

/** The closed solution after `molPerL` of the acid, for instance the first four fifths of a dose. */
export function stateAfter(start: State, acid: Acid, molPerL: number): State {
  return stateWith(start, { protonsMolKg: start.protonsMolKg + acid.protons * molPerL }, { acid, molKg: molPerL });
}

function readDose(state: State, neededEqKg: number, { acid, molKg }: Addition): AcidDose {
  const { element } = acid;
  return {
    perLitre: molKg / acid.molPerUnit,
    unit: acid.unit,
    molPerL: molKg,
    equivalentsPerMole: molKg === 0 ? null : Math.abs(neededEqKg) / molKg,
    adds: element === null ? {} : { [element]: molKg * 1000 * ATOMIC_WEIGHTS[element] },
    state,
  };
}

/** The same solution once it has come to balance with outdoor air: in a wide reservoir hours to days (common practice, no source). */
export function afterStanding(state: State): State {
  return solveState({
    totals: state.totals,
    carbon: { logPco2: AIR_LOG_PCO2 },
    pH: { protonsMolKg: state.protonsMolKg },
    tempC: state.tempC,
  });
}

export interface WaterAcidAsk {
  readonly alkalinityMgCaCO3L: number;
  readonly pH: number;
  readonly targetPH: number;
  readonly acid: Acid;
  readonly tempC?: number;
}

/**
 * Dose for a water of which only alkalinity and pH are known: WATER_ACID. The ions behind the alkalinity are taken as
 * two thirds calcium and one third sodium. They set the activity coefficients and hold some phosphate back; for four
 * real waters, from soft to rich in sodium, the dose is within 3 % of that from the whole composition. For citric acid
 * they are taken as sodium alone: calcium binds citrate and frees more of its acid, so a hard water takes up to a
 * quarter less, and how much calcium there is nobody has said: in such a water the first four fifths are the whole dose.
 */
export function waterAcidDose({ alkalinityMgCaCO3L, pH, targetPH, acid, tempC = 25 }: WaterAcidAsk): AcidDose {
  const alkalinityEqKg = alkalinityMgCaCO3L / CACO3_MG_PER_MEQ / 1000;
  return acidDose(
    solveState({ totals: typicalIons(alkalinityEqKg, acid), carbon: { alkalinityEqKg }, pH, tempC }),
    targetPH,
    acid,
  );
}

function typicalIons(alkalinityEqKg: number, acid: Acid): Totals {
  const eq = Math.max(alkalinityEqKg, 0);
  return acid.adds.Cit === undefined ? { Ca: eq / 3, Na: eq / 3 } : { Na: eq };
}

/** The two steps of a careful dose: four fifths at once, then stir, measure, and ask again from the pH that was measured. */
export const FIRST_SHARE = 0.8;

/** Short enough to stand beside every dose; the label and local rules come first. */
export const ACID_CAUTION =
  "Acid into water, never water into acid. Goggles and gloves, fresh air, never together with bleach. Keep it away from children and pets. The product label and local rules come first; take leftovers to where your town collects chemicals.";
export const BASE_CAUTION =
  "Potassium hydroxide burns skin and eyes: goggles and gloves, a little at a time into plenty of cold water, never together with acid. Keep it away from children and pets. The product label and local rules come first.";

/** What standing does to the pH, in words; `now` closed, `standing` in balance with air. */
export function standingSentence(nowPH: number, standingPH: number): string {
  const climb = standingPH - nowPH;
  if (climb < 0.1) return `The pH stays near ${nowPH.toFixed(1)} when the water stands.`;
  return `Now pH ${nowPH.toFixed(1)}; once the CO2 has left, within a day or two in an open reservoir, about ${standingPH.toFixed(1)}. ${
    climb > 1
      ? "Little is left that holds the pH: neutralise more of the alkalinity, or use an acid that buffers, such as phosphoric."
      : "What is left of the alkalinity and phosphate holds it there."
  }`;
}
