/** The acid or base of a batch: how much, in which two steps, and how much is left to add after measuring. */

import { type AcidDose, acidDose, afterStanding, FIRST_SHARE, stateAfter } from "../src/core/acid-dose.ts";
import { type Acid, parseAcid } from "../src/core/acids.ts";
import { isBadInput } from "../src/core/errors.ts";
import { type State, solveState } from "../src/core/speciation.ts";
import type { AcidDraft } from "./acid-draft.ts";
import { type Typed, typedNumber } from "./typed.ts";

export interface MixAcid {
  readonly acid: Acid;
  readonly dose: AcidDose;
  readonly targetPH: number;
  /** In balance with the air after the whole dose. */
  readonly standing: State;
  /** mL or g a litre still to add, from the pH measured after the first part; null while none was typed. */
  readonly rest: number | null;
}

export interface AcidAnswer {
  readonly strength: Typed;
  readonly target: Typed;
  readonly measured: Typed;
  readonly result: MixAcid | null;
  /** Why there is no dose, or no rest. */
  readonly problem: string | null;
}

/** Solids are sold pure; a strength makes them a solution. */
const NEEDS_STRENGTH = /phosphoric|nitric|sulfuric/;

export function readAcid(draft: AcidDraft): Acid | null {
  if (draft.acid === "") return null;
  const strength = draft.strength.trim();
  if (strength === "" && NEEDS_STRENGTH.test(draft.acid)) return null;
  const { value } = typedNumber(strength, { what: "The strength", unit: "%", min: 0, max: 100 });
  return parseAcid(strength === "" || value === null ? draft.acid : `${draft.acid} ${value}%`);
}

export function mixAcid(draft: AcidDraft, now: State): AcidAnswer {
  const strength = typedNumber(draft.strength, { what: "The strength", unit: "%", min: 0, max: 100 });
  const target = typedNumber(draft.targetPH, { what: "The target pH", min: 4, max: 9 });
  const measured = typedNumber(draft.measuredPH, { what: "The measured pH", min: 2, max: 12 });
  const answer = { strength, target, measured, result: null };
  if (draft.acid === "" || strength.problem !== null || target.value === null) return { ...answer, problem: null };
  try {
    const acid = readAcid(draft);
    if (acid === null) return { ...answer, problem: "Type the strength in percent, as printed on the bottle." };
    const targetPH = target.value;
    const dose = acidDose(now, targetPH, acid);
    const result = { acid, dose, targetPH, standing: afterStanding(dose.state), rest: null };
    if (measured.value === null) return { ...answer, result, problem: null };
    return { ...answer, ...withRest(result, now, measured.value) };
  } catch (error) {
    if (isBadInput(error)) return { ...answer, problem: error.message };
    throw error;
  }
}

/** The solution after the first part, at the pH it was found to have, and from there to the target. */
function withRest(result: MixAcid, now: State, measuredPH: number): Pick<AcidAnswer, "result" | "problem"> {
  const { acid, dose, targetPH } = result;
  const past = acid.kind === "acid" ? measuredPH <= targetPH : measuredPH >= targetPH;
  if (past) return { result: { ...result, rest: 0 }, problem: null };
  const first = stateAfter(now, acid, FIRST_SHARE * dose.molPerL);
  const found = solveState({
    totals: first.totals,
    carbon: { totalMolKg: first.totalCarbonMolKg },
    pH: measuredPH,
    tempC: first.tempC,
  });
  return { result: { ...result, rest: acidDose(found, targetPH, acid).perLitre }, problem: null };
}
