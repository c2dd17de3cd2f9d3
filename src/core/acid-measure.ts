/** An acid or base in amounts that can be measured: as it is, or thinned first where the dose is too small for that. */

import { BadInput } from "./errors.ts";
import { sayGiven, sayNumber } from "./saying.ts";

export interface AcidMeasureTask {
  /** "Phosphoric acid 85 %". */
  readonly name: string;
  readonly kind: "acid" | "base";
  /** Sulfuric acid, which gets hot in water. */
  readonly hot: boolean;
  /** mL of a liquid or g of a solid for the batch. */
  readonly perBatch: number;
  readonly unit: "mL" | "g";
  readonly scaleStepG: number | null;
  readonly syringeStepMl: number;
  /** The most the syringe draws at once; 60 where absent. */
  readonly syringeMostMl?: number | undefined;
}

/** A bottle with so much acid or base in so much, all told. */
export interface ThinAcid {
  readonly solute: number;
  readonly unit: "mL" | "g";
  readonly bottleMl: number;
}

/** mL of the thinned acid or base that hold so much of it, to the nearest step of the syringe. */
export function thinMl(amount: number, { solute, bottleMl }: ThinAcid, syringeStepMl: number): number {
  const steps = Math.round((amount * bottleMl) / solute / syringeStepMl);
  return Number((steps * syringeStepMl).toPrecision(12));
}

/** To the nearest step, for an amount that is measured as it is. */
export function toStep(amount: number, step: number): number {
  return Number((Math.round(amount / step) * step).toPrecision(12));
}

/** Ten steps: half a step is then 5 % of the dose, and the pH is read before the last fifth goes in. */
const LEAST_STEPS = 10;
const BOTTLES_ML = [100, 250, 500, 1000] as const;
/** Thinned tenfold an acid burns less and warms the water little; sulfuric twentyfold [common practice, no source]. */
const MOST_SHARE = 0.1;
const MOST_SHARE_HOT = 0.05;
const MOST_G_PER_ML = 0.1;
/** 1, 2, 5 and their tenfolds: easy to measure and to remember. */
const EASY = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100];

/** Whether the dose is at least ten steps of what measures it. Throws BadInput for steps that are not above 0. */
export function measurableAsIs({ perBatch, unit, scaleStepG, syringeStepMl }: AcidMeasureTask): boolean {
  const step = unit === "mL" ? syringeStepMl : scaleStepG;
  if (step === null) return false;
  if (!(step > 0)) throw new BadInput("bad-step", `The step is ${sayGiven(step)} ${unit}. Give a number above 0.`);
  return perBatch === 0 || perBatch / step >= LEAST_STEPS;
}

/**
 * The weakest sensible thinning of a dose that cannot be measured as it is: the smallest bottle, and in it the dose
 * that is most steps of the syringe. Null when none of these makes it measurable.
 */
export function thinAcid(task: AcidMeasureTask): ThinAcid | null {
  const { perBatch, unit, hot, scaleStepG, syringeStepMl, syringeMostMl = 60 } = task;
  const step = unit === "mL" ? syringeStepMl : scaleStepG;
  if (step === null) return null;
  const mostShare = unit === "g" ? MOST_G_PER_ML : hot ? MOST_SHARE_HOT : MOST_SHARE;
  for (const bottleMl of BOTTLES_ML) {
    const fits = EASY.filter((solute) => {
      const steps = solute / step;
      const doseMl = (perBatch * bottleMl) / solute;
      return (
        steps >= LEAST_STEPS &&
        Math.abs(steps - Math.round(steps)) < 1e-9 &&
        solute / bottleMl <= mostShare &&
        doseMl / syringeStepMl >= LEAST_STEPS &&
        doseMl <= Math.min(syringeMostMl, bottleMl)
      );
    });
    const [solute] = fits;
    if (solute !== undefined) return { solute, unit, bottleMl };
  }
  return null;
}

/** How to thin it, in order; the cautions of the acid or base go with it. */
export function thinSteps(
  { name, kind, hot }: Pick<AcidMeasureTask, "name" | "kind" | "hot">,
  thin: ThinAcid,
): string[] {
  const { solute, unit, bottleMl } = thin;
  const into = Math.round(bottleMl * 0.8);
  const much = `${sayGiven(solute)} ${unit} of ${name}`;
  return [
    `Goggles and gloves on. Pour ${into} mL of cold low-mineral water into a clean bottle that acids do not harm.`,
    unit === "mL"
      ? `Let ${much} run slowly into the water${kind === "acid" ? ": acid into water, never water into acid" : ""}.${
          hot ? " It gets hot: drop by drop, the bottle standing in cold water." : ""
        }`
      : `Stir in ${much}, a little at a time, until nothing is left on the bottom.`,
    `When it is cool, fill up to ${bottleMl} mL and write on the bottle: ${name}, ${sayGiven(solute)} ${unit} in ${bottleMl} mL, and the day. Keep it locked away from children and pets.`,
  ];
}

/** "Phosphoric acid 85 %, 5 mL in 100 mL". */
export function thinWords(name: string, { solute, unit, bottleMl }: ThinAcid): string {
  return `${name}, ${sayNumber(solute)} ${unit} in ${sayNumber(bottleMl)} mL`;
}
