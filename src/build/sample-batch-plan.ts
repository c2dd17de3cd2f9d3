/** When the sample household mixed which solution: forty batches in two years. Invented. */

import { day } from "./sample-cell.ts";
import { LOG_STARTS, type Person, TODAY } from "./sample-household.ts";
import { randomStream } from "./sample-random.ts";
import { isRoundDay, keeperOn, summer } from "./sample-season.ts";
import { TRIAL_A, TRIAL_FROM, TRIAL_TO } from "./sample-trial.ts";

export interface PlannedBatch {
  readonly id: string;
  readonly day: number;
  readonly who: Person;
  readonly litres: number;
  readonly water: string;
  readonly target: string;
  /** Roughly what a meter shows, for the invented readings of reservoirs. */
  readonly nominalEcMsCm: number;
}

const BATCHES = 40;
const LOW_MINERAL_FROM = "2025-04-27";
const BLEND_FROM = "2025-11-01";

function targetFor(on: number, index: number): string {
  if (inTrial(on)) return index % 2 === 1 ? "Hoagland 2, half" : "Steiner, half";
  if (index % 9 === 5) return "Hoagland 1, quarter";
  return summer(on) > 0.55 ? "Steiner, half" : "Steiner, quarter";
}

function waterFor(on: number, index: number): string {
  if (on < day(LOW_MINERAL_FROM)) return "Town tap";
  if (on < day(BLEND_FROM)) return "Low-mineral water";
  return index % 3 === 0 ? "Low-mineral water" : "One part tap in four";
}

/** mS/cm: the strengths' own, and about 0.65 brought by the whole tap water. */
function nominalEc(target: string, water: string): number {
  const salts = target.endsWith("half") ? 1.1 : 0.58;
  const brought = water === "Town tap" ? 0.42 : water === "One part tap in four" ? 0.08 : 0.02;
  return salts + brought;
}

function planned(): readonly PlannedBatch[] {
  const random = randomStream("batches");
  const first = day(LOG_STARTS);
  const step = (day(TODAY) - 4 - first) / (BATCHES - 1);
  return Array.from({ length: BATCHES }, (_, index) => {
    let on = Math.round(first + index * step + (index === 0 ? 0 : random.between(-3, 3)));
    while (index > 0 && !isRoundDay(on)) on += 1;
    on = Math.min(on, day(TODAY) - 2);
    const target = targetFor(on, index);
    const water = waterFor(on, index);
    return {
      id: `batch-${String(index + 1).padStart(4, "0")}`,
      day: on,
      who: keeperOn(on, random.chance(0.6) ? "Kitchen" : "Study", random),
      litres: random.pick([15, 20, 20, 20, 25]),
      water,
      target,
      nominalEcMsCm: nominalEc(target, water),
    };
  });
}

export const BATCH_PLAN: readonly PlannedBatch[] = planned();

function inTrial(on: number): boolean {
  return on >= day(TRIAL_FROM) && on <= day(TRIAL_TO);
}

/** The batch a plant gets on a day: the newest, and during the trial the newest of its side. */
export function batchFor(plant: string, on: number): PlannedBatch {
  const side = TRIAL_A.includes(plant) ? "Hoagland" : "Steiner";
  const [first] = BATCH_PLAN;
  if (first === undefined) throw new Error("No batch is planned.");
  return BATCH_PLAN.reduce(
    (found, batch) => (batch.day <= on && (!inTrial(on) || batch.target.startsWith(side)) ? batch : found),
    first,
  );
}
