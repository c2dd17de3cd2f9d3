/** The acid or base of a batch as it is measured: in steps of the tool, thinned first where the dose is too small. */

import { FIRST_SHARE } from "../src/core/acid-dose.ts";
import {
  type AcidMeasureTask,
  measurableAsIs,
  type ThinAcid,
  thinAcid,
  thinMl,
  toStep,
} from "../src/core/acid-measure.ts";
import type { OrderAcid } from "../src/core/order.ts";
import { sayGiven, sayNumber } from "../src/core/saying.ts";
import type { MixAcid } from "./mix-acid.ts";
import { showDose, showMeasured } from "./show.ts";
import type { HouseTools } from "./tools.ts";

export interface AcidPlan {
  /** "Phosphoric acid 85 %". */
  readonly name: string;
  readonly order: OrderAcid;
  /** The whole dose as it is measured: "1.5 mL", "3.8 mL of the thinned acid". */
  readonly whole: string;
  /** Shown where the dose is too small to be measured as it is: why, and the thinning offered; null else. */
  readonly tooSmall: { readonly why: string; readonly offer: ThinAcid | null; readonly offerMl: number | null } | null;
  /** The thinning in use. */
  readonly thin: ThinAcid | null;
  readonly task: AcidMeasureTask;
  /** So much in the words of what measures it. */
  say(amount: number): string;
}

export function acidName({ acid }: Pick<MixAcid, "acid">): string {
  return acid.percent === 100 ? acid.name : `${acid.name} ${sayNumber(acid.percent)} %`;
}

/** `litres`: of the batch; one litre where none is typed. */
export function acidPlan(result: MixAcid, litres: number, { tools, thin }: AcidTools): AcidPlan {
  const { acid, dose } = result;
  const name = acidName(result);
  const { unit } = dose;
  const perBatch = dose.perLitre * litres;
  const step = unit === "mL" ? tools.syringeStepMl : tools.scaleStepG;
  const task: AcidMeasureTask = {
    name,
    kind: acid.kind,
    hot: acid.name.startsWith("sulfuric"),
    perBatch,
    unit,
    scaleStepG: tools.scaleStepG,
    syringeStepMl: tools.syringeStepMl ?? 1,
    syringeMostMl: tools.syringeMostMl ?? undefined,
  };
  const known = tools.syringeStepMl !== null && step !== null;
  const used = known && thin !== null && thin.unit === unit ? thin : null;
  const small = known && used === null && !measurableAsIs(task);
  const thinned = acid.kind === "acid" ? "the thinned acid" : "the thinned base";
  const say = (amount: number): string => {
    if (used !== null) return `${showMeasured(thinMl(amount, used, task.syringeStepMl), "mL")} of ${thinned}`;
    return step !== null && !small
      ? showMeasured(toStep(amount, step), unit)
      : small
        ? `about ${showDose(amount, unit)}`
        : showDose(amount, unit);
  };
  const offer = small ? thinAcid(task) : null;
  const of = used === null ? ` of ${name}` : ` (${name}, ${sayGiven(used.solute)} ${unit} in ${used.bottleMl} mL)`;
  return {
    name,
    order: {
      name,
      kind: acid.kind,
      amount: perBatch,
      unit,
      first: `${say(FIRST_SHARE * perBatch)}${of}`,
      // The list of steps says "about" itself.
      rest: say((1 - FIRST_SHARE) * perBatch).replace("about ", ""),
    },
    whole: say(perBatch),
    tooSmall: small
      ? {
          why: `${showDose(perBatch, unit)} of ${name} is too little to measure in steps of ${sayGiven(step)} ${unit}.`,
          offer,
          offerMl: offer === null ? null : thinMl(perBatch, offer, task.syringeStepMl),
        }
      : null,
    thin: used,
    task,
    say,
  };
}

export interface AcidTools {
  readonly tools: HouseTools;
  readonly thin: ThinAcid | null;
}
