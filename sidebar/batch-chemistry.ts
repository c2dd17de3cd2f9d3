/** What the log keeps of a batch's chemistry: the EC to expect, the acid or base, and what that brings. */

import { thinWords } from "../src/core/acid-measure.ts";
import { conductivity } from "../src/core/conductivity.ts";
import { type Amounts, type ElementSymbol, SYMBOLS } from "../src/core/elements.ts";
import { isBadInput } from "../src/core/errors.ts";
import { sayNumber } from "../src/core/saying.ts";
import type { State } from "../src/core/speciation.ts";
import type { AcidDraft } from "./acid-draft.ts";
import { type AcidPlan, acidPlan } from "./acid-plan.ts";
import type { Worked } from "./batch.ts";
import type { Shelf } from "./batch-shelf.ts";
import { type MixAcid, mixAcid } from "./mix-acid.ts";
import { type MixChemistry, mixChemistry } from "./mix-state.ts";
import { acidForVolume } from "./past-batch.ts";

export interface BatchChemistry {
  /** At 25 °C, with the acid or base; null where it cannot be worked out. */
  readonly predictedEcMsCm: number | null;
  /** "Phosphoric acid 85 %: 1.48 mL, to pH 5.8"; "" for none. */
  readonly acid: string;
  /** mg/L that the acid or base adds. */
  readonly adds: Amounts;
}

/** "phosphoric acid 85 %: 1.5 mL, to pH 5.8"; with the bottle where it was thinned. */
function acidWords(plan: AcidPlan, targetPH: number): string {
  const name = plan.thin === null ? plan.name : thinWords(plan.name, plan.thin);
  return `${name}: ${plan.whole}, to pH ${sayNumber(targetPH)}`;
}

export interface ChemistryOf {
  readonly mix: MixChemistry;
  readonly acid: MixAcid | null;
  readonly plan: AcidPlan | null;
  /** With the acid or base. */
  readonly state: State;
}

/** Null while something is missing. Throws BadInput for a mix beyond the range of the model. */
export function chemistryOf(
  worked: Worked,
  draft: AcidDraft,
  { waterRows, tools }: ChemistryShelf,
): ChemistryOf | null {
  const mix = mixChemistry(worked, waterRows);
  if (mix === null) return null;
  const acid = mix.standing === null ? null : mixAcid(draft, mix.now).result;
  const plan = acid === null ? null : acidPlan(acid, worked.litres.value || 1, { tools, thin: draft.thin });
  return { mix, acid, plan, state: acid?.dose.state ?? mix.now };
}

type ChemistryShelf = Pick<Shelf, "waterRows" | "tools">;

export function batchChemistry(worked: Worked, draft: AcidDraft, shelf: ChemistryShelf): BatchChemistry {
  const { asLogged } = worked;
  if (asLogged !== null) {
    const acid = acidForVolume(asLogged.acid, (worked.litres.value ?? asLogged.litres) / asLogged.litres);
    // What the acid brings is in the numbers of the log already.
    return { predictedEcMsCm: asLogged.predictedEcMsCm, acid, adds: {} };
  }
  try {
    const all = chemistryOf(worked, draft, shelf);
    if (all === null) return { predictedEcMsCm: null, acid: "", adds: {} };
    return {
      predictedEcMsCm: conductivity(all.state).at25MsCm,
      acid: all.plan === null || all.acid === null ? "" : acidWords(all.plan, all.acid.targetPH),
      adds: all.acid?.dose.adds ?? {},
    };
  } catch (error) {
    if (isBadInput(error)) return { predictedEcMsCm: null, acid: "", adds: {} };
    throw error;
  }
}

/** What is in the water after feeds and acid, mg/L. */
export function withAcid(reached: Amounts, adds: Amounts): Partial<Record<ElementSymbol, number>> {
  const all: Partial<Record<ElementSymbol, number>> = { ...reached };
  for (const symbol of SYMBOLS) {
    const more = adds[symbol];
    if (more !== undefined) all[symbol] = (all[symbol] ?? 0) + more;
  }
  return all;
}
