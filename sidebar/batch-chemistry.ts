/** What the log keeps of a batch's chemistry: the EC to expect, the acid or base, and what that brings. */

import type { FieldRow } from "../src/app/contract.ts";
import { conductivity } from "../src/core/conductivity.ts";
import { type Amounts, type ElementSymbol, SYMBOLS } from "../src/core/elements.ts";
import { isBadInput } from "../src/core/errors.ts";
import { sayNumber } from "../src/core/saying.ts";
import type { AcidDraft } from "./acid-draft.ts";
import type { Worked } from "./batch.ts";
import { type MixAcid, mixAcid } from "./mix-acid.ts";
import { mixChemistry } from "./mix-state.ts";
import { showDose } from "./show.ts";

export interface BatchChemistry {
  /** At 25 °C, with the acid or base; null where it cannot be worked out. */
  readonly predictedEcMsCm: number | null;
  /** "Phosphoric acid 85 %: 1.48 mL, to pH 5.8"; "" for none. */
  readonly acid: string;
  /** mg/L that the acid or base adds. */
  readonly adds: Amounts;
}

function acidWords({ acid, dose, targetPH }: MixAcid, litres: number): string {
  const strength = acid.percent === 100 ? "" : ` ${sayNumber(acid.percent)} %`;
  return `${acid.name}${strength}: ${showDose(dose.perLitre * litres, dose.unit)}, to pH ${sayNumber(targetPH)}`;
}

export function batchChemistry(worked: Worked, draft: AcidDraft, waters: readonly FieldRow[]): BatchChemistry {
  try {
    const mix = mixChemistry(worked, waters);
    if (mix === null) return { predictedEcMsCm: null, acid: "", adds: {} };
    const acid = mix.standing === null ? null : mixAcid(draft, mix.now).result;
    return {
      predictedEcMsCm: conductivity(acid?.dose.state ?? mix.now).at25MsCm,
      acid: acid === null ? "" : acidWords(acid, worked.litres.value ?? 0),
      adds: acid?.dose.adds ?? {},
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
