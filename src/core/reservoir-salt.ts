/** What stays behind in a reservoir when a plant drinks: ions, or the EC as their sum, by mass balance. */

import { BadInput } from "./errors.ts";
import { checkNumber } from "./reading.ts";
import { sayGiven } from "./saying.ts";

/** Refuses 0, less, and what is no number. */
export function needMoreThan0(value: number, what: string, unit: string): void {
  if (value > 0 && Number.isFinite(value)) return;
  throw new BadInput("out-of-bounds", `${what} is ${sayGiven(value)}${unit}. Give more than 0.`);
}

export interface Use {
  /** Level in the full reservoir at the start and in the water that replaces what is drunk; one unit for both. */
  readonly fill: number;
  readonly topUp: number;
  /** Water drunk and replaced since, and what the full reservoir holds; one unit for both. */
  readonly used: number;
  readonly volume: number;
}

/**
 * Level in the full reservoir of an ion that the plant leaves behind whole, after `used` has been drunk and replaced:
 * c = c0 + ct W / V (mass balance). An ion that is taken up stays below it. Throws BadInput for a volume of 0 or less.
 */
export function levelAfterUse({ fill, topUp, used, volume }: Use): number {
  needMoreThan0(volume, "The volume of the reservoir", "");
  return fill + (topUp * used) / volume;
}

/** What happens to a reservoir on a day. */
export type ReservoirStep =
  /** Filled to the mark: `amountMl` was drunk since the step before. */
  | { readonly kind: "top up"; readonly day: number; readonly amountMl: number; readonly level: number }
  /** `amountMl` run through the full reservoir, which stays well mixed; it ends up full. */
  | { readonly kind: "flush"; readonly day: number; readonly amountMl: number; readonly level: number }
  | { readonly kind: "change"; readonly day: number; readonly level: number };

export interface Reservoir {
  /** What the full reservoir holds, pot water included. */
  readonly volumeMl: number;
  /** Level when it was filled: EC in mS/cm, or an ion in mg/L; one unit for all levels. */
  readonly fillLevel: number;
  /** What the plant takes up with the water, as the level of what it drinks; 0 for an ion that stays behind whole. */
  readonly uptakeLevel: number;
}

export interface ReservoirDay {
  readonly day: number;
  /** Level just before the step; null when the reservoir had been drunk dry. */
  readonly before: number | null;
  /** Level in the full reservoir after it. */
  readonly after: number;
}

/**
 * Levels along the steps by mass balance: drinking w from V leaves c V − u w in V − w (never below 0), a top-up adds
 * ct w, a well-mixed flush of volume F leaves exp(−F/V) of the difference to its own level. EC is taken to add up like an
 * ion, which is within a few percent below 3 mS/cm. Nothing is known of what was drunk between the last top-up and a flush
 * or a change, so `before` stands there as after that top-up. Throws BadInput for a volume of 0 or less or an amount
 * below 0.
 */
export function walkReservoir(reservoir: Reservoir, steps: readonly ReservoirStep[]): ReservoirDay[] {
  const { volumeMl, fillLevel, uptakeLevel } = reservoir;
  needMoreThan0(volumeMl, "The volume of the reservoir", " mL");
  let level = fillLevel;
  return steps.map((step) => {
    if (step.kind !== "change") checkNumber(step.amountMl, { what: "An amount", unit: "mL", min: 0 });
    let before: number | null = level;
    if (step.kind === "change") level = step.level;
    else if (step.kind === "flush") {
      level = step.level + (level - step.level) * Math.exp(-step.amountMl / volumeMl);
    } else {
      const drunkMl = step.amountMl;
      const left = Math.max(level * volumeMl - uptakeLevel * drunkMl, 0);
      before = drunkMl < volumeMl ? left / (volumeMl - drunkMl) : null;
      level = (left + step.level * Math.min(drunkMl, volumeMl)) / volumeMl;
    }
    return { day: step.day, before, after: level };
  });
}

/** Halvings of the search for an uptake: down to a millionth of a millionth of where it starts. */
const HALVINGS = 60;

/**
 * What the plant takes up with each litre, as a level, so that the walk along the steps ends at the level `measured` in
 * the full reservoir: found by halving, as the end falls steadily with the uptake. 0 where all salts are still
 * there, or more; null where nothing was drunk since the last change, so that a reading says nothing.
 */
export function uptakeFrom(
  reservoir: Omit<Reservoir, "uptakeLevel">,
  steps: readonly ReservoirStep[],
  measured: number,
): number | null {
  const end = (uptakeLevel: number): number => {
    const walked = walkReservoir({ ...reservoir, uptakeLevel }, steps);
    return walked[walked.length - 1]?.after ?? reservoir.fillLevel;
  };
  const allStay = end(0);
  if (measured >= allStay) return end(Number.MAX_VALUE) === allStay ? null : 0;
  let high = 1;
  while (end(high) > measured) {
    high *= 2;
    // Nothing drunk, or the last top-up alone brings more than was measured.
    if (high > 1e6) return null;
  }
  let low = 0;
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (low + high) / 2;
    if (end(middle) > measured) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export interface CeilingTask {
  readonly level: number;
  readonly topUpLevel: number;
  readonly uptakeLevel: number;
  readonly ceiling: number;
  readonly volumeMl: number;
  readonly useMlDay: number;
}

/** Days until the full reservoir reads the ceiling; 0 when it does already, null when it never will with such top-ups. */
export function daysToCeiling(task: CeilingTask): number | null {
  const { level, topUpLevel, uptakeLevel, ceiling, volumeMl, useMlDay } = task;
  if (level >= ceiling) return 0;
  const risePerDay = ((topUpLevel - uptakeLevel) * useMlDay) / volumeMl;
  return risePerDay > 0 ? (ceiling - level) / risePerDay : null;
}

/**
 * mL of water with `flushLevel` to run through a full, well-mixed reservoir to bring it from `level` to `wanted`:
 * V ln((c − cf) / (wanted − cf)). 0 when it reads no more already, null when such water cannot bring it that low.
 */
export function flushMl({ level, wanted, flushLevel, volumeMl }: FlushTask): number | null {
  if (level <= wanted) return 0;
  return wanted <= flushLevel ? null : volumeMl * Math.log((level - flushLevel) / (wanted - flushLevel));
}

export interface FlushTask {
  readonly level: number;
  readonly wanted: number;
  readonly flushLevel: number;
  readonly volumeMl: number;
}
